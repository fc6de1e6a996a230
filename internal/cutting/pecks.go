package cutting

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
// Domain: d and depth above zero, depth at most 200 d, First >= Next >= Least > 0,
// First >= 2 Least, so that there is something to give up, and 0 < Shrink <= 1; no
// strokes outside.
func Pecks(depth, d float64, rule PeckRule) []float64 {
	if !(positive(d) && depth > 0 && depth <= deepest*d && rule.possible()) {
		return nil
	}
	least := rule.Least * d
	if depth < rule.First*d+least*(1-rounding) {
		return []float64{depth}
	}
	var pecks []float64
	at, stroke, next := 0.0, rule.First*d, rule.Next*d
	for depth-at > stroke*(1+rounding) {
		at += stroke
		pecks = append(pecks, at)
		stroke, next = next, max(next*rule.Shrink, least)
	}
	drawUp(pecks, depth, least)
	return append(pecks, depth)
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

// possible reports whether the strokes shrink, stay above zero and leave enough to make
// up a short one.
func (r PeckRule) possible() bool {
	return r.Least > 0 && r.Next >= r.Least && r.First >= r.Next && r.First >= 2*r.Least && finite(r.First) && r.Shrink > 0 && r.Shrink <= 1
}
