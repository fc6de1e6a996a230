package plan

import (
	"math"

	"evenlip/internal/figure"
	"evenlip/internal/inspect"
	"evenlip/internal/point"
	"evenlip/internal/reference"
	"evenlip/internal/regrind"
)

// causes adds what each kind of wear would take by itself.
func (p *Plan) causes(s *figure.Sheet) {
	st, w := &p.Ahead.Stock, &p.Job.Wear
	by := func(c regrind.Cause) float64 { return p.made(st.By[c]) }
	s.Open("Stock by cause, along the axis")
	s.Add(length("stock_flank_mm", "land behind the lip", by(regrind.FlankLand), ""))
	s.Work(inspect.Geometry, "dz = VB (tan(Cl) - tan(e)), e = 0 unless a feed was read", "{} * (tan({}) - tan({}))", figure.Len(w.Land), figure.Deg(w.Clearance), figure.Deg(w.FeedAngle))
	s.Add(length("stock_corner_mm", "rounded corner, at least", by(regrind.Corner), ""))
	s.Work(inspect.Geometry, "dz = width / tan(k)", "{} / tan({})", figure.Len(w.Corner), figure.Deg(w.HalfAngle))
	s.Add(length("stock_margin_mm", "worn margin", by(regrind.Margin), ""))
	s.Work(inspect.Geometry, "dz = length worn", "{}", figure.Len(w.Margin))
	s.Add(length("stock_chip_mm", "chip in a lip", by(regrind.LipChip), ""))
	s.Work("as read", "dz = depth of the chip", "{}", figure.Len(w.Chip))
	steep := math.NaN()
	if figure.Known(w.Steep) {
		steep = by(regrind.Reshaping)
	}
	s.Add(length("stock_steep_mm", "flank of too much clearance", steep, ""))
	s.Work(reference.SteepFlankSource().String(), "dz = width (tan(Cl) - tan(aim)), width = 0.15 D", "{} * {} * (tan({}) - tan({}))", figure.Num(w.Steep/p.Job.Body.D), figure.Len(p.Job.Body.D), figure.Deg(w.Clearance), figure.Deg(w.Aim))
	s.Add(length("stock_truing_mm", "truing up the lips", by(regrind.Truing), ""))
	p.workTruing(s)
	s.Add(length("stock_clean_up_mm", "clean-up beyond the wear", p.made(st.CleanUp), ""))
	p.workCleanUp(s)
}

// workTruing shows the most that truing alone takes: the highest of the four
// ends above the lowest, each carried to the axis at the angle wanted.
func (p *Plan) workTruing(s *figure.Sheet) {
	if !s.Explaining || !p.Made {
		return
	}
	l := &p.Job.Lips
	ends := [...]figure.Arg{
		figure.Len(l.Carried(l.Lip1, l.Inner)), figure.Len(l.Carried(l.Lip1, l.Outer)),
		figure.Len(l.Carried(l.Lip2, l.Inner)), figure.Len(l.Carried(l.Lip2, l.Outer)),
	}
	args := append(ends[:], ends[:]...)
	s.Work(inspect.Geometry, "highest less lowest of the lips' four ends, H = h + x / tan(kt): h an end's height above lip 2's corner, carried from its distance x to the axis at the angle wanted",
		"max(max({}, {}), max({}, {})) - min(min({}, {}), min({}, {}))", args...)
}

func (p *Plan) workCleanUp(s *figure.Sheet) {
	st := &p.Ahead.Stock
	switch {
	case st.CleanUp == 0:
		s.Work(reference.CleanUpSource().String(), "none: nothing is worn", "0")
	case st.CleanUp != reference.CleanUp:
		s.Work("as given", "allowance as given", "{}", figure.Len(st.CleanUp))
	default:
		s.Work(reference.CleanUpSource().String(), "allowance", "{}", figure.Len(st.CleanUp))
	}
}

// ends adds what comes off each lip at each of its ends.
func (p *Plan) ends(s *figure.Sheet) {
	st, l := &p.Ahead.Stock, &p.Job.Lips
	s.Open("Off each lip, clean-up included")
	for _, e := range [...]struct {
		key, label string
		lip        point.Lip
		at, stock  float64
	}{
		{"take_1_inner_mm", "lip 1, inner end", l.Lip1, l.Inner, st.Lip1.Inner},
		{"take_1_outer_mm", "lip 1, outer end", l.Lip1, l.Outer, st.Lip1.Outer},
		{"take_2_inner_mm", "lip 2, inner end", l.Lip2, l.Inner, st.Lip2.Inner},
		{"take_2_outer_mm", "lip 2, outer end", l.Lip2, l.Outer, st.Lip2.Outer},
	} {
		s.Add(length(e.key, e.label, p.made(e.stock), ""))
		in, out := figure.Len(st.Worn.Inner), figure.Len(st.Worn.Outer)
		s.Work(inspect.Geometry, "H - (lowest of the four ends, each H less its wear) + clean-up, H as for truing up", "{} - min(min({} - {}, {} - {}), min({} - {}, {} - {})) + {}",
			figure.Len(l.Carried(e.lip, e.at)), figure.Len(l.Carried(l.Lip1, l.Inner)), in, figure.Len(l.Carried(l.Lip1, l.Outer)), out,
			figure.Len(l.Carried(l.Lip2, l.Inner)), in, figure.Len(l.Carried(l.Lip2, l.Outer)), out, figure.Len(st.CleanUp))
	}
}
