package point

import "math"

// OffsetOfCorners returns how far the point sits off the axis, from the
// lip-height difference dh read at the distance x along the lips and the two
// half angles, equal or not:
//
//	offset = ( dh - x (1/tan k2 - 1/tan k1) ) / ( 1/tan k1 + 1/tan k2 )
//
// positive toward lip 1; the inverse of [LipsFromLengths] at the corner, and
// [OffsetOfHeight] where the angles are equal.
// Domain: dh finite, x >= 0, 0 < k1, k2 < pi/2; NaN outside. Where the angles
// are equal x counts for nothing and may be NaN.
func OffsetOfCorners(dh, x, k1, k2 float64) float64 {
	if k1 == k2 {
		return OffsetOfHeight(dh, k1)
	}
	if !finite(dh) {
		return math.NaN()
	}
	return (dh - HeightDifferenceOfAngles(x, k1, k2)) / (cot(k1) + cot(k2))
}

// LengthDifference returns lip 1's true length less lip 2's, for a point off
// the axis by offset (positive toward lip 1) whose lips show the mean length
// seen in the end view: (seen - offset)/sin k1 - (seen + offset)/sin k2.
// Domain: offset finite, seen >= |offset|, 0 < k1, k2 < pi/2; NaN outside.
// Where the angles are equal seen counts for nothing and may be NaN.
func LengthDifference(offset, seen, k1, k2 float64) float64 {
	if !finite(offset) || !between(k1, 0, math.Pi/2) || !between(k2, 0, math.Pi/2) {
		return math.NaN()
	}
	if k1 == k2 {
		return -2 * offset / math.Sin(k1)
	}
	if !finite(seen) || seen < math.Abs(offset) {
		return math.NaN()
	}
	return (seen-offset)/math.Sin(k1) - (seen+offset)/math.Sin(k2)
}

// LipThrough returns the lip of that half angle whose line passes height at
// the distance x from the axis. Domain: 0 < halfAngle < pi/2; a lip at height
// NaN outside.
func LipThrough(x, height, halfAngle float64) Lip {
	if !between(halfAngle, 0, math.Pi/2) {
		return Lip{math.NaN(), halfAngle}
	}
	return Lip{height + x*cot(halfAngle), halfAngle}
}
