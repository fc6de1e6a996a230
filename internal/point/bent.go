package point

import "math"

// BentLip is a lip ground to another point angle than its flute was made for. The
// flute's face is what a straight lip of the angle that it was made for leaves behind
// when the helix carries it along the drill. The flank of another angle meets that
// face higher up or lower down, the more so the nearer to the axis, and there the
// helix has turned it: the lip is curved.
//
// Seen from the end, x along the lip and y the way it moves, the straight lip runs at
// y = web/2 from its corner at x = outer = sqrt(d^2 - web^2)/2. Over the corner its
// place at x stands (outer - x)/tan(made) high. The helix carries that place along the
// face, and turns it by tan(helix)/(d/2) per height on the way, until it meets the
// new flank, the plane of half angle k and slope g,
//
//	z = (outer - x)/tan(k) + g (y - web/2)
//
// The place comes to stand turned about the axis by an angle t, at X, Y:
//
//	X = x cos t - (web/2) sin t    Y = x sin t + (web/2) cos t
//	t = ((outer - X)/tan(k) + g (Y - web/2) - (outer - x)/tan(made)) tan(helix)/(d/2)
//
// The corner stays where it is, and on the angle that it was made for the lip is
// straight. A cone in place of the plane makes no difference that counts: it departs
// from the plane with the square of the bow.
type BentLip struct {
	flank       Flank
	outer, made float64 // of the lip, along it; cot of the angle that the flute was made for
	twist       float64 // turn of the helix per height
}

// NewBentLip returns the lip in which a flank meets a flute made for straight lips of
// the half angle made, with the helix angle helix at the periphery.
// Domain: 0 < made < pi/2, |helix| < pi/2; a lip that answers NaN outside.
func NewBentLip(flank Flank, made, helix float64) BentLip {
	if !between(made, 0, math.Pi/2) || !between(helix, -math.Pi/2, math.Pi/2) {
		made = math.NaN()
	}
	return BentLip{flank, AlongLip(flank.d/2, flank.web), cot(made), math.Tan(helix) / (flank.d / 2)}
}

// At returns where the place that a straight lip has at x stands, seen from the end:
// along the straight lip from the axis, and the way the lip moves.
// Domain: 0 <= x <= outer; NaN outside, and where flank and face do not meet within
// a quarter of a turn.
func (l BentLip) At(x float64) (along, ahead float64) {
	half, f := l.flank.web/2, &l.flank
	if !(x >= 0 && x <= l.outer) {
		return math.NaN(), math.NaN()
	}
	turned := func(t float64) (along, ahead float64) {
		sin, cos := math.Sincos(t)
		return x*cos - half*sin, x*sin + half*cos
	}
	return turned(solve(func(t float64) float64 {
		along, ahead := turned(t)
		return t - ((l.outer-along)*f.cotan+f.slope*(ahead-half)-(l.outer-x)*l.made)*l.twist
	}, -math.Pi/2, math.Pi/2))
}

// Bow returns how far, seen from the end, the lip departs at most from the straight
// line between its corner and its inner end, the place at x = inner. It is positive
// where the lip stands ahead of that line, as a point sharper than the flute's makes
// it, and negative where it is hollow.
// Domain: 0 <= inner < outer; NaN outside.
func (l BentLip) Bow(inner float64) float64 {
	x0, y0 := l.At(inner)
	x1, y1 := l.At(l.outer)
	long := math.Hypot(x1-x0, y1-y0)
	off := func(x float64) float64 {
		along, ahead := l.At(x)
		return ((x1-x0)*(ahead-y0) - (y1-y0)*(along-x0)) / long
	}
	return off(summit(func(x float64) float64 { return math.Abs(off(x)) }, inner, l.outer, 5e-5*l.outer))
}
