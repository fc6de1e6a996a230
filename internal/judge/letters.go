package judge

import (
	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Letters are the readings that the formulas of a point start from. Every sheet
// with figures of this package has them.
var Letters = sheet.Group[Result]{Figures: []sheet.Def[Result]{
	{Letter: "D", Label: "diameter", Kind: quantity.Size, Work: sheet.AsRead, Of: "size",
		Value: func(r *Result) float64 { return r.Drill.D }},
	{Letter: "k1", Label: "lip 1 to the axis", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: sheet.AsRead, Of: "lip-angle",
		Value: func(r *Result) float64 { return r.Point.K1 }},
	{Letter: "k2", Label: "lip 2 to the axis", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: sheet.AsRead, Of: "lip-angle",
		Value: func(r *Result) float64 { return r.Point.K2 }},
}}

// FeedLetter is the feed, where no figure of the sheet is.
var FeedLetter = sheet.Group[Result]{Figures: []sheet.Def[Result]{
	{Letter: "f", Label: "feed", Kind: quantity.Feed, Work: sheet.AsRead, Of: "feed",
		Value: func(r *Result) float64 { return r.Drill.Feed }},
}}

// ThrustLetters are the handbook's equation of the thrust without the factors of work,
// wear and chisel edge, in the units that results are printed in.
var ThrustLetters = sheet.Group[Result]{Figures: []sheet.Def[Result]{
	{Letter: "Dm", Label: "diameter, mm", Kind: quantity.Number, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return r.Drill.D }},
	{Letter: "fm", Label: "feed, mm", Kind: quantity.Number, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return r.Drill.Feed }},
	{Letter: "Di", Label: "diameter, in", Kind: quantity.Number, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return r.Drill.D / handbook.InchMM }},
	{Letter: "fi", Label: "feed, in", Kind: quantity.Number, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return r.Drill.Feed / handbook.InchMM }},
	{Letter: "N", Label: "one newton", Kind: quantity.Force, Work: sheet.AsRead, Value: func(*Result) float64 { return 1 }},
	{Letter: "lb", Label: "one pound", Kind: quantity.Force, Work: sheet.AsRead, Value: func(*Result) float64 { return cutting.PoundForce }},
	{Letter: "uB", Label: "thrust for B = 1, Kd and W apart", Kind: quantity.Force, Value: func(r *Result) float64 { return r.Drill.terms().PerB },
		Works: func(r *Result) (work, source string) {
			if r.Drill.System == quantity.Inch {
				return "2 * fi^0.8 * Di^0.8 * lb", ForceSource
			}
			return "0.05 * fm^0.8 * Dm^0.8 * N", ForceSource
		}},
	{Letter: "uJ", Label: "thrust for J = 1, Kd and W apart", Kind: quantity.Force, Value: func(r *Result) float64 { return r.Drill.terms().PerJ },
		Works: func(r *Result) (work, source string) {
			if r.Drill.System == quantity.Inch {
				return "Di^2 * lb", ForceSource
			}
			return "0.007 * Dm^2 * N", ForceSource
		}},
}}

// terms are those of the equations for work and wear of 1.
func (b *Basics) terms() cutting.Terms {
	return cutting.Load{D: b.D, Feed: b.Feed, KdThrust: 1, KdTorque: 1, Wear: 1, System: b.System}.Terms()
}
