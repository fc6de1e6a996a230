package report

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"
)

// object appends JSON with its members in the order they are named; the
// standard encoder would sort or reflect.
type object struct {
	b    []byte
	lean bool // without sources and cautions
}

func (j *object) comma() {
	if c := j.b[len(j.b)-1]; c != '{' && c != '[' {
		j.b = append(j.b, ',')
	}
}

func (j *object) name(name string) {
	j.comma()
	j.b = append(appendQuoted(j.b, name), ':')
}

func (j *object) open(name string, bracket byte) {
	j.name(name)
	j.b = append(j.b, bracket)
}

func (j *object) openElement(bracket byte) {
	j.comma()
	j.b = append(j.b, bracket)
}

func (j *object) close(bracket byte) { j.b = append(j.b, bracket) }

func (j *object) text(name, v string) {
	j.name(name)
	j.b = appendQuoted(j.b, v)
}

func (j *object) raw(name, v string) {
	j.name(name)
	j.b = append(j.b, v...)
}

func (j *object) number(name string, v float64) {
	j.name(name)
	j.b = appendNumber(j.b, v)
}

func (j *object) list(name string, items []string) {
	j.open(name, '[')
	for _, item := range items {
		j.comma()
		j.b = appendQuoted(j.b, item)
	}
	j.close(']')
}

// appendNumber appends full precision; JSON has no NaN and no infinity, so
// those are null.
func appendNumber(b []byte, v float64) []byte {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return append(b, "null"...)
	}
	return strconv.AppendFloat(b, unsigned(v), 'g', -1, 64)
}

// unsigned takes the sign off a zero: no gauge reads minus nought.
func unsigned(v float64) float64 {
	if v == 0 {
		return 0
	}
	return v
}

// appendQuoted appends a JSON string. Most are plain ASCII and need no encoder.
func appendQuoted(b []byte, s string) []byte {
	for i := 0; i < len(s); i++ {
		if c := s[i]; c < ' ' || c >= 0x7f || c == '"' || c == '\\' {
			quoted, err := json.Marshal(s)
			if err != nil { // no string fails to encode
				return append(b, `""`...)
			}
			return appendHarmless(b, quoted)
		}
	}
	return append(append(append(b, '"'), s...), '"')
}

// appendHarmless escapes what the encoder lets through and a terminal might
// act on: the control characters past ASCII and the marks that turn the
// direction of writing. Whoever decodes the JSON gets them back.
func appendHarmless(b, quoted []byte) []byte {
	for _, r := range string(quoted) {
		if !unicode.IsControl(r) && !unicode.Is(unicode.Cf, r) {
			b = utf8.AppendRune(b, r)
			continue
		}
		for _, unit := range utf16.Encode([]rune{r}) {
			b = fmt.Appendf(b, `\u%04x`, unit)
		}
	}
	return b
}
