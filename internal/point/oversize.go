package point

import "math"

// OversizeOfLips returns the bound on how much larger than the drill a hole can
// come out, from the point's offset and the lip-height difference dh at the
// outer corners:
//
//	bound = 2 max( |offset|, |dh| / (1/tan k1 + 1/tan k2) )
//
// A drill that is free to wander turns about the place from which its lips
// share the cut: the point itself while only the chisel and the inner lips cut,
// and with unequal angles the place that brings the outer corners level once
// they do. The hole is twice that place's distance from the axis larger. With
// equal angles both are dh tan(k) / 2, and the bound is dh tan k. Held rigidly
// the hole is the drill's size: this is an upper bound and no forecast.
// Domain: offset, dh finite, 0 < k1, k2 < pi/2; NaN outside.
func OversizeOfLips(offset, dh, k1, k2 float64) float64 {
	if !finite(offset) || !finite(dh) || !between(k1, 0, math.Pi/2) || !between(k2, 0, math.Pi/2) {
		return math.NaN()
	}
	return 2 * math.Max(math.Abs(offset), math.Abs(dh)/(cot(k1)+cot(k2)))
}
