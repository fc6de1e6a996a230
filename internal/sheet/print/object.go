package print

import (
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
	b []byte
}

func (j *object) comma() {
	if c := j.b[len(j.b)-1]; c != '{' && c != '[' {
		j.b = append(j.b, ',')
	}
}

// name appends the name of a member. Names are the program's own, and need no
// encoder.
func (j *object) name(name string) {
	j.comma()
	j.b = append(j.b, '"')
	j.b = append(j.b, name...)
	j.b = append(j.b, '"', ':')
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

// textOrNull appends null where there is no text.
func (j *object) textOrNull(name, v string) {
	if v == "" {
		j.raw(name, "null")
		return
	}
	j.text(name, v)
}

// numberOrNull appends null for 0.
func (j *object) numberOrNull(name string, n int) {
	if n == 0 {
		j.raw(name, "null")
		return
	}
	j.raw(name, strconv.Itoa(n))
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
	j.name(name)
	j.elements(items)
}

// elements appends a list of texts.
func (j *object) elements(items []string) {
	j.b = append(j.b, '[')
	for _, item := range items {
		j.comma()
		j.b = appendQuoted(j.b, item)
	}
	j.close(']')
}

// trillion bounds the decimals of a number that needs no search for its shortest
// digits: what is exported in millimetres or degrees has twelve or fewer.
const trillion = 1e12

// appendNumber appends full precision; JSON has no NaN and no infinity, so
// those are null.
func appendNumber(b []byte, v float64) []byte {
	switch size := math.Abs(v); {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return append(b, "null"...)
	case v == 0:
		return append(b, '0') // a negative zero too: no gauge reads minus nought
	case size >= 0.001 && size < 1000: // no exponent, and fifteen digits at the most
		if n := math.Round(v * trillion); n/trillion == v {
			return appendTrillionths(b, int64(n))
		}
	}
	return strconv.AppendFloat(b, v, 'g', -1, 64)
}

// appendTrillionths appends n / 1e12 with as many decimals as it needs.
func appendTrillionths(b []byte, n int64) []byte {
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/trillion, 10)
	if n %= trillion; n > 0 {
		b = append(b, '.')
	}
	for ; n > 0; n %= trillion {
		n *= 10
		b = append(b, byte('0'+n/trillion))
	}
	return b
}

// appendQuoted appends a JSON string. Most are plain ASCII.
func appendQuoted[T string | []byte](b []byte, s T) []byte {
	b = append(b, '"')
	from := 0
	for i := 0; i < len(s); {
		if c := s[i]; c >= ' ' && c < 0x7f && c != '"' && c != '\\' {
			i++
			continue
		}
		r, n := utf8.DecodeRuneInString(string(s[i:min(i+utf8.UTFMax, len(s))]))
		if harmless(r) && (r != utf8.RuneError || n > 1) {
			i += n
			continue
		}
		b = append(b, s[from:i]...)
		b = appendEscaped(b, r)
		i += n
		from = i
	}
	return append(append(b, s[from:]...), '"')
}

// harmless reports whether a character stands for itself in a string that a
// terminal may show: it is none of the control characters and of the marks that
// turn the direction of writing.
func harmless(r rune) bool {
	return r != '"' && r != '\\' && !unicode.IsControl(r) && !unicode.Is(unicode.Cf, r) && r != '\u2028' && r != '\u2029'
}

// word appends a member whose value is one of the program's own words.
func (j *object) word(name, v string) {
	j.name(name)
	j.b = append(j.b, '"')
	j.b = append(j.b, v...)
	j.b = append(j.b, '"')
}

// appendEscaped appends a character in a way that whoever decodes the JSON gets
// it back.
func appendEscaped(b []byte, r rune) []byte {
	switch r {
	case '"', '\\':
		return append(b, '\\', byte(r))
	case '\n':
		return append(b, `\n`...)
	case '\r':
		return append(b, `\r`...)
	case '\t':
		return append(b, `\t`...)
	}
	if r1, r2 := utf16.EncodeRune(r); r1 != unicode.ReplacementChar {
		return fmt.Appendf(b, `\u%04x\u%04x`, r1, r2)
	}
	return fmt.Appendf(b, `\u%04x`, r)
}
