package plan

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// hinges adds, aside, what decides whether the next grind is the drill's last,
// whether the web is thinned after it, and how many are counted: where a gauge
// cannot tell on which side of these limits the drill will be, it cannot tell the
// one from the other.
func (p *Plan) hinges(s *sheet.Sheet) {
	if !p.Made {
		return
	}
	b := &p.Body
	next := b.Ground(p.First)
	s.OpenAside("What the plan turns on")
	add := func(key, label string, kind quantity.Kind, v, low, high float64) {
		if sheet.Known(v, low, high) {
			s.Add(sheet.Figure{Key: key, Label: label, Kind: kind, Value: v, Limit: &handbook.Band{Low: low, High: high}})
		}
	}
	inf := math.Inf(1)
	add("next_flute_mm", "flute after this grind", quantity.Length, next.Flute, b.LeastFlute, inf)
	add("next_web_ratio", "web / D after this grind", quantity.Number, next.Body/b.D, 0, b.MostWeb)
	add("next_diameter_mm", "diameter after this grind", quantity.Size, next.Diameter, b.LeastDiameter, inf)
	add("next_chisel_ratio", "chisel edge / D, unthinned", quantity.Number, p.Ground.Ratio, 0, b.MostChisel)
	left := p.exactlyLeft()
	add("part_of_a_grind_left", "", quantity.Number, left-math.Round(left), 0, inf)
}

// exactlyLeft is how many grinds are left, parts of one too; NaN where it is not
// flute, web or diameter that ends them.
func (p *Plan) exactlyLeft() float64 {
	if p.End == NotKnown || p.End == NotCounted {
		return math.NaN()
	}
	return (p.Body.spare()[p.End]-p.First)/p.Usual + 1 + Hair
}
