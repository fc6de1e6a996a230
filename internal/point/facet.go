package point

import (
	"cmp"
	"math"
)

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
// Errors: [*DomainError]; [*UnreachableError] when the second facet would have
// to rise above the first, that is when the wanted acute angle exceeds what
// the first facet gives alone.
func SecondFacet(g1, halfAngle, angle float64) (float64, error) {
	if err := cmp.Or(requireFinite("slope of the first facet", g1), requireHalfAngle("half point angle", halfAngle)); err != nil {
		return math.NaN(), err
	}
	if !between(angle, 0, math.Pi) {
		return math.NaN(), &DomainError{"chisel-edge angle", "must lie between 0 and 180 degrees", angle}
	}
	acute, alone := Acute(angle), FacetChisel(g1, halfAngle)
	if acute > alone {
		const why = "the second facet would have to stand above the first"
		return math.NaN(), &UnreachableError{"chisel-edge angle", why, acute, 0, alone}
	}
	return math.Max(g1, 2*cot(acute)*cot(halfAngle)-g1), nil
}
