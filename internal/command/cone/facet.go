package cone

import (
	"math"

	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// facets works out what one flat facet of the same clearance gives, and the
// second facets that bring the chisel into its band.
func (v *view) facets() {
	k := v.ground.HalfAngle
	v.facet, v.facetAngle = point.FacetChisel(v.slope, k), math.Atan(v.slope)
	band := v.Limit(judge.ChiselAngleLimit)
	v.low, v.high = second(v.slope, k, band.Low), second(v.slope, k, band.High)
}

// second returns the slope angle of the second facet for a chisel-edge angle;
// NaN where one facet gives as much already.
func second(slope, k, chisel float64) float64 {
	g, err := point.SecondFacet(slope, k, chisel)
	if err != nil {
		return math.NaN()
	}
	return math.Atan(g)
}

func (v *view) facetFigures(s *sheet.Sheet) {
	if !v.made {
		return
	}
	s.Open("With flat facets instead")
	k, band := v.ground.HalfAngle, v.Limit(judge.ChiselAngleLimit)
	b := point.WebAngle(v.web, v.d/2)
	v.add(s, "facet_angle_deg", "facet across the lip", v.facetAngle, quantity.Angle, nil)
	s.Work(judge.Geometry, "g = (tan(Cl) - sin(b) / tan(k)) / cos(b), sin(b) = w / D", "atan((tan({}) - sin({}) / tan({})) / cos({}))",
		deg(v.ground.Clearance), deg(b), deg(k), deg(b))
	v.add(s, "facet_chisel_angle_deg", "chisel angle, one facet", point.Obtuse(v.facet), quantity.Angle, nil)
	s.Work(judge.Geometry, "psi' = 180 - atan(1 / (g tan(k))): the chisel runs along n1 x n2 = (-2 g, -2 / tan(k), 0), n1 = (1 / tan(k), -g, 1) and n2 = (-1 / tan(k), g, 1) the facets' normals", "180 - atan(1 / ({} * tan({})))", num(v.slope), deg(k))
	for _, f := range [...]struct {
		key            string
		chisel, facet2 float64
	}{{"second_facet_low_deg", band.Low, v.low}, {"second_facet_high_deg", band.High, v.high}} {
		label := "second facet for " + quantity.Format{}.Number(quantity.Angle, quantity.Protractor, f.chisel) + "°"
		s.Add(sheet.Figure{Key: f.key, Label: label, Value: f.facet2, Kind: quantity.Angle, Gauge: quantity.Protractor})
		s.Work(judge.Geometry, "g2 = 2 / (tan(psi) tan(k)) - g", "atan(2 / (tan({}) * tan({})) - {})", deg(point.Acute(f.chisel)), deg(k), num(v.slope))
	}
	if point.Obtuse(v.facet) < band.Low {
		s.Find("second-facet", sheet.Note, "one flat facet of this clearance leaves the chisel at {}, under {}: a flat-ground point needs the second facet",
			deg(point.Obtuse(v.facet)), deg(band.Low))
	}
}
