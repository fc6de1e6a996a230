package quantity

import "strings"

// straighten replaces the marks that a word processor, a phone or a drawing
// puts into a quantity by those of a plain keyboard. What it does not know it
// leaves, to be refused.
func straighten(s string) string {
	var b strings.Builder
	b.Grow(len(s) + 4)
	for _, r := range s {
		if f := vulgar(r); f != "" {
			// The spaces keep neighbouring digits out: "1½5" must not become 1 1/25.
			if out := b.String(); out != "" && digits(out[len(out)-1:]) == 1 {
				b.WriteByte(' ')
			}
			b.WriteString(f)
			b.WriteByte(' ')
			continue
		}
		b.WriteString(straight(r))
	}
	return strings.TrimRight(strings.ReplaceAll(b.String(), "''", `"`), " ")
}

// onKeyboard lists marks and what stands for them on a plain keyboard.
var onKeyboard = [...]struct{ marks, plain string }{
	{"\u00a0\u2007\u2009\u202f·⋅", " "}, // no-break, figure, thin and narrow spaces
	{"‐‑‒–−", "-"},
	{"′’‘ʹ´", "'"},
	{"″”“ʺ", `"`},
	{"⁄∕", "/"},
	{"º˚", degree},
	{"µμ", "u"},
	{"№", "#"},
}

func straight(r rune) string {
	for _, k := range onKeyboard {
		if strings.ContainsRune(k.marks, r) {
			return k.plain
		}
	}
	return string(r)
}

// fractions are those that are one character.
var fractions = [...]struct {
	mark rune
	text string
}{{'½', "1/2"}, {'¼', "1/4"}, {'¾', "3/4"}, {'⅛', "1/8"}, {'⅜', "3/8"}, {'⅝', "5/8"}, {'⅞', "7/8"}}

func vulgar(r rune) string {
	for _, f := range fractions {
		if f.mark == r {
			return f.text
		}
	}
	return ""
}

// cutDiameterMark drops the sign for a diameter in front of a size.
func cutDiameterMark(s string) string {
	for _, mark := range [...]string{"Ø", "ø", "⌀", "Φ", "φ"} {
		if rest, ok := strings.CutPrefix(s, mark); ok {
			return strings.TrimLeft(rest, " ")
		}
	}
	return s
}

func cutSign(s string) string {
	if s != "" && (s[0] == '+' || s[0] == '-') {
		return s[1:]
	}
	return s
}
