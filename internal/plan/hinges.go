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
	add := func(f sheet.Figure, low, high float64) {
		if f.Limit = (&handbook.Band{Low: low, High: high}); sheet.Known(f.Value, low, high) {
			s.Add(f)
		}
	}
	inf := math.Inf(1)
	add(length("next_flute_mm", "flute after this grind", next.Flute, ""), b.LeastFlute, inf)
	add(ratio("next_web_ratio", "web / D after this grind", next.Body/b.D, ""), 0, b.MostWeb)
	add(sheet.Figure{Key: "next_diameter_mm", Label: "diameter after this grind", Value: next.Diameter, Kind: quantity.Size}, b.LeastDiameter, inf)
	add(ratio("next_chisel_ratio", "chisel edge / D, unthinned", p.Ground.Ratio, ""), 0, b.MostChisel)
	left := p.exactlyLeft()
	add(ratio("part_of_a_grind_left", "", left-math.Round(left), ""), 0, inf)
}

// exactlyLeft is how many grinds are left, parts of one too; NaN where it is not
// flute, web or diameter that ends them.
func (p *Plan) exactlyLeft() float64 {
	if p.End == NotKnown || p.End == NotCounted {
		return math.NaN()
	}
	return (p.Body.spare()[p.End]-p.First)/p.Usual + 1 + Hair
}
