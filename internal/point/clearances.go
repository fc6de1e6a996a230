package point

import "math"

// OffsetOfSlopes returns how far the middle of the chisel edge sits off the axis,
// along the lips, for flat flanks whose slopes along the lips differ:
//
//	u' = (slope2 - slope1) web / (2 (1/tan k1 + 1/tan k2))
//
// positive toward lip 1; the part of the offset that the lips' heights and angles
// make comes on top. A flank ground as a cone moves it further, 1.2 to 1.7 times as
// far for a chisel at 120 to 135 degrees.
// Domain: web > 0, slopes finite, 0 < k1, k2 < pi/2; NaN outside.
func OffsetOfSlopes(slope1, slope2, web, k1, k2 float64) float64 {
	if !positive(web) || !finite(slope1) || !finite(slope2) || !between(k1, 0, math.Pi/2) || !between(k2, 0, math.Pi/2) {
		return math.NaN()
	}
	return (slope2 - slope1) * web / (2 * (cot(k1) + cot(k2)))
}

// HeightOfOffset returns the lip-height difference at the distance x along the lips
// of a point that sits offset off the axis: the inverse of [OffsetOfCorners].
//
//	dh = offset (1/tan k1 + 1/tan k2) + x (1/tan k2 - 1/tan k1)
//
// Domain: offset finite, x >= 0, 0 < k1, k2 < pi/2; NaN outside.
func HeightOfOffset(offset, x, k1, k2 float64) float64 {
	if !finite(offset) || !between(k1, 0, math.Pi/2) || !between(k2, 0, math.Pi/2) {
		return math.NaN()
	}
	return offset*(cot(k1)+cot(k2)) + HeightDifferenceOfAngles(x, k1, k2)
}

// SlopeDifferenceAt returns how much the slopes of two flat flanks may differ until
// the chisel edge sits as far off the axis as lips apart by dh put it:
// 2 dh / web. Domain: dh >= 0, web > 0; NaN outside.
func SlopeDifferenceAt(dh, web float64) float64 {
	if !notNegative(dh) || !positive(web) {
		return math.NaN()
	}
	return 2 * dh / web
}

// AngleDifferenceOf returns how far apart two half angles about the mean k lie whose
// cotangents differ by rise: lips that stand apart by rise, part of the distance
// between, along the lip. With 2 sin(a) / (cos(a) - cos 2k) = rise it is
//
//	a = atan(rise/2) + asin( -rise cos 2k / sqrt(4 + rise^2) )
//
// Domain: rise >= 0, 0 < k < pi/2; NaN outside.
func AngleDifferenceOf(rise, k float64) float64 {
	if !notNegative(rise) || !between(k, 0, math.Pi/2) {
		return math.NaN()
	}
	return math.Atan(rise/2) + math.Asin(-rise*math.Cos(2*k)/math.Sqrt(4+rise*rise))
}
