package plan

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// causes adds what each kind of wear would take by itself.
func (p *Plan) causes(s *sheet.Sheet) {
	st, w := &p.Would, &p.Wear
	by := func(c Cause) float64 { return p.made(st.By[c]) }
	s.Open("Stock by cause, along the axis")
	if p.Waits {
		s.Sections[len(s.Sections)-1].Title = "What a grind would take, by cause"
	}
	s.Add(length("stock_flank_mm", "land behind the lip", by(FlankLand), ""))
	s.Work(judge.Geometry, "dz = VB (tan(Cl) - tan(e)), e = 0 unless a feed was read", "{} * (tan({}) - tan({}))", quantity.MM(w.Land), quantity.Rad(w.Clearance), quantity.Rad(w.FeedAngle))
	s.Add(length("stock_corner_mm", "rounded corner, at least", by(Corner), ""))
	s.Work(judge.Geometry, "dz = width / tan(k)", "{} / tan({})", quantity.MM(w.Corner), quantity.Rad(w.HalfAngle))
	s.Add(length("stock_margin_mm", "worn margin", by(Margin), ""))
	s.Work(judge.Geometry, "dz = length worn", "{}", quantity.MM(w.Margin))
	s.Add(length("stock_chip_mm", "chip in a lip", by(LipChip), ""))
	s.Work("as read", "dz = depth of the chip", "{}", quantity.MM(w.Chip))
	steep, most := math.NaN(), w.Steep.Most()
	if sheet.Known(most) {
		steep = by(Reshaping)
	}
	s.Add(length("stock_steep_mm", "too much clearance", steep, ""))
	s.Work(handbook.SteepFlankSource().String(), "dz = width (tan(Cl) - tan(aim)), width = 0.15 D", "{} * {} * (tan({}) - tan({}))", quantity.Num(w.Steep.Width/p.Body.D), quantity.MM(p.Body.D), quantity.Rad(most), quantity.Rad(w.Steep.Aim))
	anew := math.NaN()
	if st.By[Reshaping] > 0 && !sheet.Known(most) {
		anew = by(Reshaping)
	}
	s.Add(length("stock_reshape_mm", "flanks anew: the clean-up", anew, ""))
	s.Work(handbook.CleanUpSource().String(), "the clean-up alone: the metal comes off behind the lip", "{}", quantity.MM(st.CleanUp))
	s.Add(length("stock_truing_mm", "truing up the lips", by(Truing), ""))
	p.workTruing(s)
	f := length("stock_clean_up_mm", "clean-up beyond the wear", p.made(st.CleanUp), "")
	f.Shop = p.CleanUpFrom.OfShop() && st.CleanUp > 0
	s.Add(f)
	p.workCleanUp(s)
}

func (p *Plan) workCleanUp(s *sheet.Sheet) {
	st := &p.Would
	switch {
	case st.CleanUp == 0:
		s.Work(handbook.CleanUpSource().String(), "none: nothing is worn", "0")
	case p.CleanUpFrom == nil:
		s.Work("as given", "allowance as given", "{}", quantity.MM(st.CleanUp))
	default:
		s.Work(p.CleanUpFrom.String(), p.CleanUpFrom.How("allowance"), "{}", quantity.MM(st.CleanUp))
	}
}
