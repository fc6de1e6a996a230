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

func straight(r rune) string {
	switch r {
	case '\u00a0', '\u2007', '\u2009', '\u202f': // no-break, figure, thin and narrow spaces
		return " "
	case '‐', '‑', '‒', '–', '−':
		return "-"
	case '′', '’', '‘', 'ʹ', '´':
		return "'"
	case '″', '”', '“', 'ʺ':
		return `"`
	case '⁄', '∕':
		return "/"
	case 'º', '˚':
		return degree
	case 'µ', 'μ':
		return "u"
	case '·', '⋅':
		return " "
	case '№':
		return "#"
	}
	return string(r)
}

func vulgar(r rune) string {
	switch r {
	case '½':
		return "1/2"
	case '¼':
		return "1/4"
	case '¾':
		return "3/4"
	case '⅛':
		return "1/8"
	case '⅜':
		return "3/8"
	case '⅝':
		return "5/8"
	case '⅞':
		return "7/8"
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
