package judge

import (
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
