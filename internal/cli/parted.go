package cli

import (
	"slices"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
)

// parted says how a flag is written that a blank has broken in two, as in
// --size 12 mm, --lip-angle 59 58 or --material mild steel, word being its second
// piece; "" where the word does not go on with what stands before it.
func (a *app) parted(word string) string {
	at := slices.Index(a.args, word)
	first := at
	for first > 0 && !strings.HasPrefix(a.args[first], "--") {
		first--
	}
	if at < 1 || !strings.HasPrefix(a.args[first], "--") {
		return ""
	}
	name, whole, one := strings.Cut(a.args[first][len("--"):], "=")
	if !one {
		first++
		whole = a.args[first]
	}
	if first == at || whole == "" {
		return ""
	}
	r, reading := drill.Find(name)
	switch {
	case r == drill.Material && reading:
		return a.partedMaterial(whole, word)
	case reading && r.Spec().Pair && first+1 == at:
		lip1 := strings.TrimSuffix(whole, ",")
		if both := lip1 + "," + word; !strings.Contains(lip1, ",") && isQuantity(name, both) {
			return `the readings of two lips go together, in PowerShell in quotes: --` + name + ` "` + both + `"`
		}
	}
	out := ""
	for i, piece := range a.args[first+1:] {
		between, ok := joint(whole, piece)
		if !ok {
			break
		}
		if whole += between + piece; first+1+i >= at && isQuantity(name, whole) {
			out = whole
		}
	}
	if out == "" {
		return ""
	}
	return "join them: --" + name + " " + shellQuoted(out)
}

// joint is what stands between two pieces of one quantity: a dash between a whole number
// and a fraction, else nothing. Two numbers are no pieces of one.
func joint(whole, piece string) (between string, ok bool) {
	const digits = "0123456789"
	numbers := strings.ContainsAny(whole[len(whole)-1:], digits) && strings.ContainsAny(piece[:min(1, len(piece))], digits+".")
	switch {
	case piece == "" || piece[0] == '-' || strings.HasSuffix(whole, ","):
		return "", false
	case numbers && strings.Contains(piece, "/") && strings.Trim(whole, digits) == "":
		return "-", true
	}
	return "", !numbers
}

// isQuantity reports whether a flag can be read so. One of no reading is a length.
func isQuantity(flag, text string) bool {
	as := quantity.Reader{Kind: quantity.Length}
	if r, ok := drill.Find(flag); ok {
		as = quantity.Reader{Kind: r.Spec().Kind, Signed: r.Spec().Signed}
	}
	_, _, _, f := as.Pair(text)
	return f == nil
}

// partedMaterial is parted of the name of a material, which may have two words.
func (a *app) partedMaterial(first, second string) string {
	if _, ok := a.set.book.Material(first); ok {
		return ""
	}
	name := first + " " + second
	if _, ok := a.set.book.Material(name); ok {
		return "in quotes: --material " + shellQuoted(name)
	}
	return handbook.MaterialHint(name)
}
