package judge

import (
	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Wear is what dullness was read, and what is left of the drill.
type Wear struct {
	Flank, Corner, Margin float64
	Chip                  float64 // depth of the deepest chip in a lip, along the axis
	Flute, Depth          float64
	Cracked               bool
}

func wearOf(dr *drill.Drill) Wear {
	return Wear{
		Flank: dr.Value(drill.FlankWear), Corner: dr.Value(drill.CornerWear), Margin: dr.Value(drill.MarginWear), Chip: dr.Value(drill.LipChip),
		Flute: dr.Value(drill.Flute), Depth: dr.Value(drill.Depth), Cracked: dr.Has(drill.Cracked),
	}
}

// WearFigures defines the wear that was read, and what is left.
var WearFigures = sheet.Group[Result]{Title: "Wear and what is left", Figures: []sheet.Def[Result]{
	{Key: "flank_wear_mm", Letter: "VB", Label: "wear land", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Wear.Flank }, Limit: FlankLimit, Work: sheet.AsRead, Source: sheet.AsRead},
	{Key: "corner_wear_mm", Letter: "cw", Label: "rounded corner", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Wear.Corner }, Limit: CornerLimit, Work: sheet.AsRead, Source: sheet.AsRead},
	{Key: "margin_wear_mm", Label: "margin worn back by", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Wear.Margin }, Limit: MarginLimit, Work: sheet.AsRead, Source: sheet.AsRead},
	{Key: "margin_wear_far_mm", Label: "past grinding out", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Wear.Margin }, Limit: MarginFarLimit, Work: sheet.AsRead, Source: sheet.AsRead},
	{Key: "lip_chip_mm", Label: "chip in a lip, depth", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Wear.Chip }, Limit: ChipLimit, Work: sheet.AsRead, Source: sheet.AsRead},
	{Key: "flute_mm", Letter: "F", Label: "usable flute", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Wear.Flute }, Limit: FluteLimit, Work: sheet.AsRead, Source: sheet.AsRead},
	{Key: "web_ratio", Label: "web / D", Kind: quantity.Number,
		Value: func(r *Result) float64 { return r.Chisel.WebRatio }, Limit: WebLimit, Works: webRatioWorks},
	{Key: "web_ratio_spent", Label: "past thinning", Kind: quantity.Number,
		Value: func(r *Result) float64 { return r.Chisel.WebRatio }, Limit: WebSpentLimit, Works: webRatioWorks},
}}

func webRatioWorks(r *Result) (work, source string) {
	if r.Chisel.Behind > 0 {
		return "wr / D", ""
	}
	return "w / D", ""
}
