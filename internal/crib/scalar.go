package crib

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
)

// scalar writes a text in YAML, in the quotes given where it stood in some.
func scalar(text string, quote byte) string {
	switch {
	case quote == '\'' && !strings.ContainsFunc(text, odd):
		return "'" + strings.ReplaceAll(text, "'", "''") + "'"
	case quote == 0 && isPlain(text):
		return text
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(text); err != nil { // no string fails to encode
		return fmt.Sprintf("%q", text)
	}
	return strings.TrimRight(b.String(), "\n")
}

// odd reports whether a rune is better written as an escape.
func odd(r rune) bool { return r < ' ' || r >= 0x7f && r != '°' }

// isPlain reports whether a text means itself to YAML without quotes.
func isPlain(text string) bool {
	if text == "" || text != strings.TrimSpace(text) || strings.EqualFold(text, "null") {
		return false
	}
	head := strings.TrimLeft(text, "-+.")
	if len(text)-len(head) > 1 || head == "" || !isLetterOrDigit(rune(head[0])) {
		return false
	}
	return !strings.ContainsFunc(text, func(r rune) bool { return !isLetterOrDigit(r) && !strings.ContainsRune(` .,_+-/°()'"%;`, r) })
}

func isLetterOrDigit(r rune) bool {
	return r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
}
