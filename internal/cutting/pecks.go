package cutting

import "cmp"

// PeckRule says how a hole is divided into strokes, in diameters: the first,
// the second, the factor from each to the next, and the least. Strokes do not
// grow as the hole gets deeper.
type PeckRule struct{ First, Next, Shrink, Least float64 }

// deepest bounds the number of strokes, diameters: no twist drill is longer.
const deepest = 200

// Pecks returns the depths, mm, to which a hole of that depth is drilled, one a
// stroke: they rise and the last is the depth itself. The drill is withdrawn
// after each to clear the chips. A rest that would make the last stroke shorter
// than half the least is shared between the last two.
//
// A *point.DomainError names an impossible input: d and depth above zero, depth
// at most 200 d, First >= Next >= Least > 0 and 0 < Shrink <= 1.
func Pecks(depth, d float64, rule PeckRule) ([]float64, error) {
	if err := cmp.Or(
		wantsPositive("drill diameter", d),
		wants(depth > 0 && depth <= deepest*d, "depth", depth, "must be above 0, and 200 diameters at most"),
		rule.err(),
	); err != nil {
		return nil, err
	}
	var pecks []float64
	least := rule.Least * d
	at, stroke, next := 0.0, rule.First*d, rule.Next*d
	for {
		rest := depth - at
		if rest <= stroke*(1+1e-12) {
			return append(pecks, depth), nil
		}
		if rest-stroke < least/2 {
			return append(pecks, at+rest/2, depth), nil
		}
		at += stroke
		pecks = append(pecks, at)
		stroke, next = next, max(next*rule.Shrink, least)
	}
}

// err returns an error unless the strokes shrink and stay above zero.
func (r PeckRule) err() error {
	return cmp.Or(
		wantsPositive("least stroke", r.Least),
		wants(r.Next >= r.Least && finite(r.Next), "second stroke", r.Next, "must not be less than the least stroke"),
		wants(r.First >= r.Next && finite(r.First), "first stroke", r.First, "must not be less than the second"),
		wants(r.Shrink > 0 && r.Shrink <= 1, "shrinking of the strokes", r.Shrink, "must be above 0, and 1 at most"),
	)
}
