package judge

import (
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Wear is what dullness was read, and what is left of the drill.
type Wear struct {
	Flank, Corner, Margin float64
	Chip                  float64 // depth of the deepest chip in a lip, along the axis
	Flute, Depth          float64
	Cracked               bool
	FlankLimit            handbook.Band
	MarginLimit           handbook.Band
	FluteLimit            handbook.Band
	WebLimit              handbook.Band
}

func wearOf(dr *drill.Drill, b *Basics) Wear {
	w := Wear{
		Flank: dr.Value(drill.FlankWear), Corner: dr.Value(drill.CornerWear), Margin: dr.Value(drill.MarginWear), Chip: dr.Value(drill.LipChip),
		Flute: dr.Value(drill.Flute), Depth: dr.Value(drill.Depth), Cracked: dr.Has(drill.Cracked),
		FlankLimit: b.Book.FlankWear(b.D), WebLimit: b.Book.WebLimit(),
	}
	w.FluteLimit = b.Book.FluteNeeded(b.D, w.Depth)
	w.MarginLimit = b.Book.MarginWear(b.D, w.Flute-w.FluteLimit.Low)
	return w
}

// WearSheet adds the wear that was read to s.
func (r *Result) WearSheet(s *sheet.Sheet) {
	w := &r.Wear
	s.Open("Wear and what is left")
	add := func(key, label string, v float64, k quantity.Kind, limit *handbook.Band) {
		s.Add(sheet.Figure{Key: key, Label: label, Value: v, Kind: k, Gauge: quantity.Caliper, Limit: limit})
		s.Work("as read", "as read", "{}", quantity.Of(k, v))
	}
	add("flank_wear_mm", "worn land behind the lip", w.Flank, quantity.Length, &w.FlankLimit)
	add("corner_wear_mm", "rounded corner", w.Corner, quantity.Length, nil)
	add("margin_wear_mm", "margin worn back by", w.Margin, quantity.Length, limitIf(&w.MarginLimit, r.Drill.D))
	add("lip_chip_mm", "chip in a lip, depth", w.Chip, quantity.Length, nil)
	add("flute_mm", "usable flute", w.Flute, quantity.Length, limitIf(&w.FluteLimit, w.FluteLimit.Low))
	s.Add(sheet.Figure{Key: "web_ratio", Label: "web / D", Value: r.Chisel.WebRatio, Kind: quantity.Number, Limit: &w.WebLimit})
	s.Work(geometry, "w / D", "{} / {}", quantity.MM(r.Chisel.Web), quantity.MM(r.Drill.D))
}
