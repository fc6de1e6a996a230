package point

import "math"

// ShareLine is lip 1's part of the feed along the lips, held on the drill's axis:
// at the distance x it takes A + B x of it, cut off at nothing and at all, between
// Inner and Outer.
type ShareLine struct {
	A, B         float64
	Inner, Outer float64
}

// ShareOf returns the line of lip 1's part of the feed, 1/2 + dh(x)/feed, for the
// lips from inner to outer, distances along the lip in the end view.
// Domain: feed > 0, 0 <= inner < outer, lips with angles in (0, pi/2); a line of
// NaN outside.
func ShareOf(feed float64, l1, l2 Lip, inner, outer float64) ShareLine {
	axis, far := HeightDifference(l1, l2, 0), HeightDifference(l1, l2, 1)
	if !positive(feed) || !finite(axis) || !finite(far) || !(inner >= 0 && inner < outer) {
		nan := math.NaN()
		return ShareLine{nan, nan, nan, nan}
	}
	return ShareLine{0.5 + axis/feed, (far - axis) / feed, inner, outer}
}

// Ends returns the distances at which lip 1 takes nothing and all of the feed, or
// the end of the lip that lies nearest.
func (s ShareLine) Ends() (none, all float64) {
	within := func(x float64) float64 { return math.Min(s.Outer, math.Max(s.Inner, x)) }
	return within(-s.A / s.B), within((1 - s.A) / s.B)
}

// Metal returns the part of the metal removed that lip 1 takes. A place at the
// distance x along a lip cuts a ring of radius r, and r dr = x dx, so
//
//	share 1 = 2 / (outer^2 - inner^2) * integral of x s(x) dx,
//	s(x) = A + B x, from 0 to 1
//
// which is closed in the pieces on either side of [ShareLine.Ends]: nothing, s
// itself, all.
func (s ShareLine) Metal() float64 {
	whole := s.Outer*s.Outer - s.Inner*s.Inner
	if math.Abs(s.B)*(s.Outer-s.Inner) < 1e-12 {
		return math.Min(1, math.Max(0, s.A+s.B*s.Outer))
	}
	none, all := s.Ends()
	from, to, full := none, all, s.Outer*s.Outer-all*all
	if s.B < 0 {
		from, to, full = all, none, all*all-s.Inner*s.Inner
	}
	part := s.A*(to*to-from*from)/2 + s.B*(to*to*to-from*from*from)/3 + full/2
	return math.Min(1, math.Max(0, 2*part/whole)) // rounding may pass the ends
}
