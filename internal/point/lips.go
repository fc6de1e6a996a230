package point

import (
	"cmp"
	"math"
)

// Lip is one lip as a straight line: its height along the drill axis, positive
// out of the point, is Height0 - r/tan(HalfAngle) at the distance r from the
// axis. Distances run along the lip in the end view; for a web that is thin
// beside the drill they are the radius, and [AlongLip] is exact.
type Lip struct {
	Height0   float64 // height where the lip's line passes the drill axis
	HalfAngle float64 // angle from the lip to the drill axis, 0 to pi/2
}

// At returns the lip's height at the distance r from the axis.
func (l Lip) At(r float64) float64 { return l.Height0 - r*cot(l.HalfAngle) }

// HeightDifference returns the lip-height difference at the distance r from
// the axis, lip 1 minus lip 2: positive when lip 1 stands further out.
func HeightDifference(l1, l2 Lip, r float64) float64 { return l1.At(r) - l2.At(r) }

// OffsetOfHeight returns how far the point of a drill with equal lip angles
// sits off the axis, along the lips, from its lip-height difference, then the
// same at every radius: dh tan(halfAngle) / 2, positive toward lip 1, which is
// then the shorter and the higher.
// Domain: dh finite, 0 < halfAngle < pi/2; NaN outside.
func OffsetOfHeight(dh, halfAngle float64) float64 {
	if !finite(dh) || !between(halfAngle, 0, math.Pi/2) {
		return math.NaN()
	}
	return dh * math.Tan(halfAngle) / 2
}

// OffsetOfEndView returns how far the point sits off the axis from the lip
// lengths seen in the end view, (length2 - length1) / 2: positive toward
// lip 1, which is then the shorter. Domain: lengths > 0; NaN outside.
func OffsetOfEndView(length1, length2 float64) float64 {
	if !positive(length1) || !positive(length2) {
		return math.NaN()
	}
	return (length2 - length1) / 2
}

// HeightDifferenceOfAngles returns the lip-height difference that unequal lip
// angles alone make at the distance r from the axis, the point on the axis:
// r (1/tan k2 - 1/tan k1). The blunter lip stands higher.
// Domain: r >= 0, 0 < k1, k2 < pi/2; NaN outside.
func HeightDifferenceOfAngles(r, k1, k2 float64) float64 {
	if !notNegative(r) || !between(k1, 0, math.Pi/2) || !between(k2, 0, math.Pi/2) {
		return math.NaN()
	}
	return r * (cot(k2) - cot(k1))
}

// ChipShare returns each lip's share of the feed when the drill is held on its
// axis: 1/2 + dh/feed for lip 1 and the rest for lip 2, and all of it for the
// higher lip once the difference reaches half the feed.
// Domain: feed > 0, dh finite; NaN outside.
func ChipShare(feed, dh float64) (share1, share2 float64) {
	if !positive(feed) || !finite(dh) {
		return math.NaN(), math.NaN()
	}
	share1 = math.Min(1, math.Max(0, 0.5+dh/feed))
	return share1, 1 - share1
}

// UnevenPoint is what lip lengths and lip angles together say about a point.
type UnevenPoint struct {
	Lip1, Lip2 Lip     // heights counted from where the two lips' lines cross in the side view
	Offset     float64 // how far the point sits off the axis, positive toward lip 1
	AtCorner   float64 // lip-height difference at the outer corners, lip 1 minus lip 2
	AtMidLip   float64 // the same at the middle of the mean lip
}

// LipsFromLengths works out both lips from the lengths read along them, from
// the outer corner to the chisel edge, and the two half angles, equal or not.
//
// Model: both outer corners lie on the drill's cylinder, so they are
// [AlongLip](d/2, web) from the axis. The chisel edge is centred on the point,
// which sits off the axis by u along the lips, and the lips' lines, seen from
// the side, cross there; for flat flanks of one slope that is where the two
// flanks meet. Each lip shows length x sin k in the end view, so
// u = (length2 sin k2 - length1 sin k1) / 2, and at x along the lips the
// difference in height is u (1/tan k1 + 1/tan k2) + x (1/tan k2 - 1/tan k1).
//
// Domain: lengths > 0, 0 < k1, k2 < pi/2, 0 < web < d, a point inside the
// drill and a lip that does not reach past the axis by more than it reaches
// out; a [*DomainError] outside.
func LipsFromLengths(length1, length2, k1, k2, d, web float64) (UnevenPoint, error) {
	if err := cmp.Or(
		requirePositive("length of lip 1", length1), requirePositive("length of lip 2", length2),
		requireHalfAngle("angle of lip 1", k1), requireHalfAngle("angle of lip 2", k2),
		requireWeb(d, web),
	); err != nil {
		return UnevenPoint{}, err
	}
	corner := AlongLip(d/2, web)
	seen1, seen2 := length1*math.Sin(k1), length2*math.Sin(k2)
	if seen1 >= 2*corner {
		return UnevenPoint{}, &DomainError{"length of lip 1", "is longer than the drill is wide", length1}
	}
	if seen2 >= 2*corner {
		return UnevenPoint{}, &DomainError{"length of lip 2", "is longer than the drill is wide", length2}
	}
	p := UnevenPoint{Offset: OffsetOfEndView(seen1, seen2)}
	p.Lip1 = Lip{p.Offset * cot(k1), k1}
	p.Lip2 = Lip{-p.Offset * cot(k2), k2}
	p.AtCorner = HeightDifference(p.Lip1, p.Lip2, corner)
	p.AtMidLip = HeightDifference(p.Lip1, p.Lip2, corner-(seen1+seen2)/4)
	return p, nil
}
