package strict

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// illegible finds bytes that are no text. The library refuses them too, but does
// not say where. It returns the line and the column of the first, from 1, and what
// is wrong; nil for nothing.
func illegible(text string) (line, column int, f *fault) {
	for at := 0; at < len(text); {
		if ' ' <= text[at] && text[at] < 0x7f { // nearly all there is
			at++
			continue
		}
		r, size := utf8.DecodeRuneInString(text[at:])
		if r == utf8.RuneError && size == 1 {
			f = &fault{"the bytes from here are not UTF-8", "save the file as UTF-8 text"}
		} else if isControl(r) {
			f = &fault{fmt.Sprintf("control character U+%04X", r), "take it out"}
		}
		if f != nil {
			line, column = place(text, at)
			return line, column, f
		}
		at += size
	}
	return 0, 0, nil
}

// isControl reports whether YAML 1.2 (section 5.1) keeps r out of a file.
func isControl(r rune) bool {
	switch {
	case r == '\t' || r == '\n' || r == '\r' || r == 0x85:
		return false
	case r < ' ' || r >= 0x7f && r < 0xa0:
		return true
	}
	return r == 0xfffe || r == 0xffff
}

// place returns the line and the column, in characters, of a byte; from 1.
func place(text string, at int) (line, column int) {
	before := linesOf(text[:at])
	n := len(before)
	if n == 0 || breakOf(before[n-1]) != "" {
		return n + 1, 1
	}
	return n, utf8.RuneCountInString(before[n-1]) + 1
}

// said takes the library's complaint apart: the line, which is often another than
// the one at fault, and 0 on the first; and what it says.
func said(err error) (line int, text string) {
	text = strings.TrimPrefix(err.Error(), "yaml: ")
	if rest, ok := strings.CutPrefix(text, "line "); ok {
		number, after, _ := strings.Cut(rest, ": ")
		if line, err := strconv.Atoi(number); err == nil {
			return line, after
		}
	}
	return 0, text
}
