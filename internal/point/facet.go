package point

import "math"

// FacetChisel returns the acute chisel-edge angle of a point ground with one
// flat facet a lip: tan(angle) = 1 / (g tan k), g the facet's slope along the
// lip's direction of motion ([Flank.Slope]).
// Domain: g >= 0, 0 < halfAngle < pi/2; NaN outside.
func FacetChisel(g, halfAngle float64) float64 {
	return TwoFacetChisel(g, g, halfAngle)
}

// TwoFacetChisel returns the acute chisel-edge angle of a point ground with
// two flat facets a lip that meet in a line through the drill axis parallel to
// the lip: tan(angle) = 2 / ((g1 + g2) tan k).
// Domain: g1, g2 finite, g1 + g2 >= 0, 0 < halfAngle < pi/2; NaN outside.
func TwoFacetChisel(g1, g2, halfAngle float64) float64 {
	if !notNegative(g1+g2) || !between(halfAngle, 0, math.Pi/2) {
		return math.NaN()
	}
	return math.Atan2(2, (g1+g2)*math.Tan(halfAngle))
}

// SecondFacet returns the slope of the second facet that gives the wanted
// chisel-edge angle, acute or obtuse, behind a first facet of slope g1:
// g2 = 2 / (tan(angle) tan k) - g1. A first facet that rises behind the lip,
// g1 below zero, leaves every angle within reach.
// Domain: g1 finite, 0 < halfAngle < pi/2, 0 < angle < pi, and an acute angle no larger
// than the first facet gives alone, or the second would have to rise above it; NaN
// outside.
func SecondFacet(g1, halfAngle, angle float64) float64 {
	if !finite(g1) || !between(halfAngle, 0, math.Pi/2) || Acute(angle) > FacetChisel(g1, halfAngle) {
		return math.NaN()
	}
	return math.Max(g1, 2*cot(Acute(angle))*cot(halfAngle)-g1)
}
