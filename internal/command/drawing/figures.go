package drawing

import (
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

type (
	def   = sheet.Def[Result]
	group = sheet.Group[Result]
)

// letters are what the formulas start from. With x along lip 1, y ahead of it and z
// out of the point, lip 1 runs at y = w / 2 from its corner to the chisel edge.
var letters = group{Figures: []def{
	{Letter: "D", Label: "diameter", Kind: quantity.Size, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.Now.D }},
	{Letter: "h1", Label: "height of lip 1's corner, lip 2's as measured being zero", Kind: quantity.Length, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.Now.Lips[0].Corner }},
	{Letter: "h2", Label: "height of lip 2's corner", Kind: quantity.Length, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.Now.Lips[1].Corner }},
	{Letter: "wb", Label: "web behind the point", Kind: quantity.Length, Work: sheet.AsRead, Value: (*Result).grownFrom},
	{Letter: "t", Label: "web taper", Kind: quantity.Taper, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.Web.Taper }},
	{Letter: "off", Label: "ground off", Kind: quantity.Length, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.Web.Remove }},
	{Letter: "x1", Label: "lips' outer ends, along the lip", Kind: quantity.Length, Fine: true, Work: "sqrt(D^2 - w^2) / 2",
		Value: func(r *Result) float64 { return point.AlongLip(r.Now.D/2, r.Now.Web) }},
	{Letter: "psi", Label: "chisel-edge angle, acute", Kind: quantity.Angle, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.Now.Chisel }},
	{Letter: "Hl", Label: "usual helix, least", Kind: quantity.Angle, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.helixes.Low }},
	{Letter: "Hh", Label: "usual helix, most", Kind: quantity.Angle, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.helixes.High }},
}}

var drawnFigures = group{Title: "As drawn", Figures: []def{
	{Key: "point_angle_deg", Label: "point angle", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: "k1 + k2",
		Value: func(r *Result) float64 { return r.Now.Lips[0].HalfAngle + r.Now.Lips[1].HalfAngle }},
	{Key: "lip_angle_1_deg", Letter: "k1", Label: "lip 1 to the axis", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Now.Lips[0].HalfAngle }, Works: lipAngleWorks},
	{Key: "lip_angle_2_deg", Letter: "k2", Label: "lip 2 to the axis", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Now.Lips[1].HalfAngle }, Works: lipAngleWorks},
	{Key: "lip_height_difference_mm", Letter: "dh", Label: "lip 1 higher by", Kind: quantity.Length, GaugeOf: heightGauge,
		Value: func(r *Result) float64 { return r.Now.Lips[0].Corner - r.Now.Lips[1].Corner }, Work: "h1 - h2"},
	{Key: "point_offset_mm", Letter: "u", Label: "point off toward lip 1 by", Kind: quantity.Length, GaugeOf: heightGauge,
		Value: func(r *Result) float64 { return r.Now.Offset }, Works: func(r *Result) (work, source string) {
			if r.trued {
				return "0", "the grind evens the lips up"
			}
			return "(dh - x1 * (1 / tan(k2) - 1 / tan(k1))) / (1 / tan(k1) + 1 / tan(k2)) + uc", ""
		}},
	{Letter: "uc", Label: "of that by unequal clearances", Kind: quantity.Length, Work: sheet.AsRead, Source: "as evenlip lips works it out",
		Value: func(r *Result) float64 { return r.Lips.OfClearance }},
	{Key: "lip_clearance_1_deg", Label: "clearance, lip 1", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Now.Lips[0].Clearance }, Works: clearanceWorks},
	{Key: "lip_clearance_2_deg", Label: "clearance, lip 2", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Now.Lips[1].Clearance }, Works: clearanceWorks},
	{Key: "web_mm", Letter: "w", Label: "web at the point", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Now.Web }, Works: func(r *Result) (work, source string) {
			switch {
			case r.Before != nil:
				return "wb + t * off", ""
			case r.webUsual:
				return sheet.AsRead, handbook.NewWebSource.String()
			}
			return sheet.AsRead, "as read, or from chisel length and angle"
		}},
	{Key: "chisel_angle_deg", Label: "chisel-edge angle, obtuse", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return point.Obtuse(r.Now.Chisel) }, Work: "180 - psi"},
	{Key: "chisel_length_mm", Label: "chisel-edge length", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return point.ChiselLength(r.Now.Web, r.Now.Chisel) }, Work: "w / sin(psi)"},
	{Key: "helix_deg", Letter: "H", Label: "helix", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Now.Helix }, Works: func(r *Result) (work, source string) {
			if r.helixUsual {
				return "(Hl + Hh) / 2", r.helixes.Source.String()
			}
			return sheet.AsRead, sheet.AsRead
		}},
}}

func lipAngleWorks(r *Result) (work, source string) {
	if r.trued {
		return sheet.AsRead, "what the lips are trued to: evenlip lips"
	}
	return sheet.AsRead, sheet.AsRead
}

func clearanceWorks(r *Result) (work, source string) {
	if r.clearanceUsual {
		return sheet.AsRead, r.Limit(judge.Clearance1Limit).Source.String()
	}
	return sheet.AsRead, "as read, or from the heel drop"
}

// heightGauge is what the lips' height difference was read with.
func heightGauge(r *Result) quantity.Gauge {
	if r.Lips.From == judge.LipsFromLengths {
		return quantity.Caliper
	}
	return quantity.Indicator
}
