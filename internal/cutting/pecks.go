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
// after each to clear the chips. A hole that the first stroke leaves less than
// the least of is drilled in that one. Deeper down no stroke is shorter than the
// least: what the last lacks, those before it give up, the nearest first. Only a
// hole that is itself shorter has a shorter stroke.
//
// A *point.DomainError names an impossible input: d and depth above zero, depth
// at most 200 d, First >= Next >= Least > 0, First >= 2 Least, so that there is
// something to give up, and 0 < Shrink <= 1.
func Pecks(depth, d float64, rule PeckRule) ([]float64, error) {
	if err := cmp.Or(
		wantsPositive("drill diameter", d),
		wants(depth > 0 && depth <= deepest*d, "depth", depth, "must be above 0, and 200 diameters at most"),
		rule.err(),
	); err != nil {
		return nil, err
	}
	least := rule.Least * d
	if depth < rule.First*d+least*(1-rounding) {
		return []float64{depth}, nil
	}
	var pecks []float64
	at, stroke, next := 0.0, rule.First*d, rule.Next*d
	for depth-at > stroke*(1+rounding) {
		at += stroke
		pecks = append(pecks, at)
		stroke, next = next, max(next*rule.Shrink, least)
	}
	drawUp(pecks, depth, least)
	return append(pecks, depth), nil
}

// rounding is what a sum of strokes may be off by, part of it.
const rounding = 1e-12

// drawUp ends strokes earlier, the last first, until from each to the next, and
// from the last to the depth, it is the least or more.
func drawUp(pecks []float64, depth, least float64) {
	below := depth
	for i := len(pecks) - 1; i >= 0; i-- {
		pecks[i] = min(pecks[i], below-least)
		below = pecks[i]
	}
}

// err returns an error unless the strokes shrink, stay above zero and leave
// enough to make up a short one.
func (r PeckRule) err() error {
	return cmp.Or(
		wantsPositive("least stroke", r.Least),
		wants(r.Next >= r.Least && finite(r.Next), "second stroke", r.Next, "must not be less than the least stroke"),
		wants(r.First >= r.Next && finite(r.First), "first stroke", r.First, "must not be less than the second"),
		wants(r.First >= 2*r.Least, "first stroke", r.First, "must be twice the least stroke or more"),
		wants(r.Shrink > 0 && r.Shrink <= 1, "shrinking of the strokes", r.Shrink, "must be above 0, and 1 at most"),
	)
}
