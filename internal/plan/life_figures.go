package plan

import (
	"math"

	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// thinning adds whether the web is to be thinned after this grind, and to what.
func (p *Plan) thinning(s *sheet.Sheet) {
	b, g, d := &p.Body, &p.Ground, &p.Done
	s.Open("Web thinning, after the grind")
	if p.Waits {
		s.Sections[len(s.Sections)-1].Title = "Web thinning, without a grind"
	}
	thin, to, web, notch := "", math.NaN(), math.NaN(), math.NaN()
	if p.Made && sheet.Known(g.Ratio) {
		thin = yes(d.Thinned)
	}
	if p.Made && d.Thinned {
		to, web, notch = d.Ratio, d.Web, (g.Web-d.Web)/2
	}
	f := word("thin", "thin the web", thin)
	f.Wants = p.wants(p.chisel())
	s.Add(f)
	s.Add(ratio("chisel_ratio_unthinned", "chisel edge / D, unthinned", p.made(g.Ratio), ""))
	s.Work(judge.Geometry, "q = w' / sin(psi) / D", "{} / sin({}) / {}", quantity.MM(g.Web), quantity.Rad(b.ChiselAfter), quantity.MM(b.D))
	p.thinOver(s)
	s.Add(ratio("thin_to_ratio", "thin to chisel edge / D", to, ""))
	s.Work(handbook.StandardChiselSource().String(), "as new: q = c / D", "{} / {}", quantity.MM(d.Chisel), quantity.MM(b.D))
	s.Add(length("thin_to_web_mm", "thin to web", web, ""))
	s.Work(judge.Geometry, "w = q D sin(psi)", "{} * {} * sin({})", quantity.Num(to), quantity.MM(b.D), quantity.Rad(b.ChiselAfter))
	s.Add(length("notch_depth_mm", "notch, each side", notch, ""))
	s.Work(judge.Geometry, "(w' - w) / 2", "({} - {}) / 2", quantity.MM(g.Body), quantity.MM(web))
}

// thinOver adds the ratio over which the web is thinned.
func (p *Plan) thinOver(s *sheet.Sheet) {
	b, source := &p.Body, p.Found.Limit(judge.ChiselRatioLimit).Source
	f := ratio("thin_over_ratio", "thinned when over", p.made(b.MostChisel), "")
	f.Shop = source.OfShop()
	s.Add(f)
	if f.Shop {
		s.Work(source.String(), "q as the shop has set it", "{}", quantity.Num(b.MostChisel))
		return
	}
	s.Work(source.String(), "times a new drill's, times q as new", "{} * {}", quantity.Num(b.MostChisel/b.NewChisel), quantity.Num(b.NewChisel))
}

// after adds the figures of the drill when it is done; a table has them in the
// grid of states.
func (p *Plan) after(s *sheet.Sheet) {
	b, d := &p.Body, &p.Done
	s.Open("When it is done")
	s.Sections[len(s.Sections)-1].Quiet = true
	total := quantity.MM(p.Stock.Total)
	s.Add(length("flute_after_mm", "flute when done", p.made(d.Flute), ""))
	s.Work(judge.Geometry, "flute - stock, not under 0", "max(0, {} - {})", quantity.MM(b.Flute), total)
	s.Add(length("length_after_mm", "overall length when done", p.made(d.Length), ""))
	s.Work(judge.Geometry, "length - stock, not under 0", "max(0, {} - {})", quantity.MM(b.Length), total)
	s.Add(length("point_length_after_mm", "point length when done", p.made(p.pointLength()), ""))
	s.Work(judge.Geometry, "L = (D / 2) / tan(kt)", "({} / 2) / tan({})", quantity.MM(b.D), quantity.Rad(p.halfAngleAfter()))
	s.Add(length("web_after_mm", "web when done", p.made(d.Web), ""))
	if d.Thinned {
		s.Work(judge.Geometry, "w = q D sin(psi), thinned", "{} * {} * sin({})", quantity.Num(d.Ratio), quantity.MM(b.D), quantity.Rad(b.ChiselAfter))
	} else {
		web := b.Web
		if p.Stock.Total == 0 {
			web = p.Now.Web
		}
		s.Work(judge.Geometry, "w' = w + taper * stock", "{} + {} * {}", quantity.MM(web), quantity.Of(quantity.Taper, b.Taper), total)
	}
	s.Add(length("chisel_length_after_mm", "chisel edge when done", p.made(d.Chisel), ""))
	s.Work(judge.Geometry, "c' = w' / sin(psi)", "{} / sin({})", quantity.MM(d.Web), quantity.Rad(b.ChiselAfter))
	s.Add(ratio("chisel_ratio_after", "chisel edge / D when done", p.made(d.Ratio), ""))
	s.Work(judge.Geometry, "q' = c' / D", "{} / {}", quantity.MM(d.Chisel), quantity.MM(b.D))
	p.thrustFigure(s, "thrust_now_n", "thrust now, were it sharp", p.Now.Ratio)
	p.thrustFigure(s, "thrust_after_n", "thrust when done", d.Ratio)
	s.Add(ratio("thrust_ratio", "thrust when done / now", p.Body.ThrustRatio(d), ""))
	judge.WorkThrustRatio(s, b.D, b.Feed, d.Ratio, p.Now.Ratio)
}

func (p *Plan) thrustFigure(s *sheet.Sheet, key, label string, q float64) {
	b := &p.Body
	s.Add(sheet.Figure{Key: key, Label: label, Value: p.thrust(q), Kind: quantity.Force})
	if !s.Explaining || !p.Made || !sheet.Known(p.thrust(q)) {
		return
	}
	f, mm := cutting.FactorsOf(q), func(v float64) quantity.Arg { return quantity.Of(quantity.Number, v) }
	kd, newton := mm(p.Found.Drill.Material.KdThrust), quantity.Of(quantity.Force, 1)
	s.Work(handbook.ForceSource().String(), "T = (0.05 Kd f^0.8 D^0.8 B + 0.007 Kd D^2 J) N, f and D in mm, B = (1 - q)/(1 + q)^0.2 + 2.2 q^0.8, J = q^2",
		"(0.05 * {} * {}^0.8 * {}^0.8 * {} + 0.007 * {} * {}^2 * {}) * {}", kd, mm(b.Feed), mm(b.D), mm(f.B), kd, mm(b.D), mm(f.J), newton)
}

// thrust returns the thrust of a sharp drill at the chisel ratio q, N; NaN where
// it or the work's factor is not known.
func (p *Plan) thrust(q float64) float64 {
	m, b := p.Found.Drill.Material, &p.Body
	if !p.Made || m == nil || !m.HasForce() {
		return math.NaN()
	}
	load := cutting.Load{D: b.D, Feed: b.Feed, Chisel: q * b.D, KdThrust: m.KdThrust, KdTorque: m.KdTorque,
		Wear: 1, Efficiency: math.NaN(), Rpm: math.NaN()}
	res, err := load.Result()
	if err != nil {
		return math.NaN()
	}
	return res.Thrust
}

// halfAngleAfter is the lips' angle to the axis when it is done: their own, where
// nothing comes off.
func (p *Plan) halfAngleAfter() float64 {
	if p.Stock.Total == 0 {
		return p.Found.Point.K()
	}
	return p.Lips.Target
}

func (p *Plan) pointLength() float64 { return point.Height(p.Body.D, 2*p.halfAngleAfter()) }

// life adds how many grinds are left and what ends them.
func (p *Plan) life(s *sheet.Sheet) {
	b := &p.Body
	s.Open("Life")
	usual, flute := length("usual_stock_mm", "usual stock per grind", p.made(p.Usual), ""), length("flute_needed_mm", "flute needed", p.made(b.LeastFlute), "")
	usual.Shop, flute.Shop = p.EveryShop, p.Found.Limit(judge.FluteLimit).Source.OfShop()
	s.Add(usual)
	p.workUsual(s)
	s.Add(flute)
	depth := b.LeastFlute - p.Found.Drill.Book.FluteNeeded(b.D, 0).Low
	s.Work(p.Found.Limit(judge.FluteLimit).Source.String(), "depth of the hole + room for the chips", "{} + {}", quantity.MM(depth), quantity.MM(b.LeastFlute-depth))
	label := "grinds at most, with this"
	if p.Waits {
		label = "grinds at most"
	}
	s.Add(sheet.Figure{Key: "regrinds_left", Label: label, Value: p.Left, Kind: quantity.Count, Wants: p.wants(p.flute())})
	p.workLeft(s)
	s.Add(word("retire_reason", "then retired for", p.Reason))
}

func (p *Plan) workUsual(s *sheet.Sheet) {
	st := &p.Would
	usual := st.Usual(p.Deepest)
	switch {
	case p.EveryPast:
		s.Work("the drill's history", "mean of the grinds whose stock was noted", "{}", quantity.MM(p.Every))
	case p.EveryShop:
		s.Work(p.Found.Drill.Book.Source.String(), "every, as the shop has set it", "{}", quantity.MM(p.Every))
	case sheet.Known(p.Every):
		s.Work("as given", "every, as given", "{}", quantity.MM(p.Every))
	case p.Mishap():
		s.Work(handbook.MostUsualWearSource().String()+"; "+handbook.LeastUsualStockSource().String(),
			"deepest of land, corner and margin within a twentieth of the diameter + clean-up, or the least usual", "max({} + {}, {})",
			quantity.MM(st.Habit(p.Deepest)), quantity.MM(st.CleanUp), quantity.MM(p.Least))
	case usual == 0:
		s.Work(handbook.LeastUsualStockSource().String(), "the least that a usual grind takes", "{}", quantity.MM(p.Least))
	default:
		s.Work(handbook.UsualStockSource().String()+"; "+handbook.LeastUsualStockSource().String(),
			"deepest of land, corner and margin + clean-up, or the least usual", "max({} + {}, {})",
			quantity.MM(usual-st.CleanUp), quantity.MM(st.CleanUp), quantity.MM(p.Least))
	}
}

// Mishap reports whether there is wear that a usual grind is counted without, and
// would take more with.
func (p *Plan) Mishap() bool {
	st := &p.Would
	return p.Made && !sheet.Known(p.Every) && st.Wear() > p.Deepest && st.Wear()+st.CleanUp > p.Usual
}

// workLeft counts the grinds in one line: the stock there is, less the first
// grind's, by the usual one.
func (p *Plan) workLeft(s *sheet.Sheet) {
	b := &p.Body
	first, every, hair := p.First, quantity.MM(p.Usual), quantity.Num(Hair)
	switch {
	case p.Do == Retire || !p.Made:
		s.Work(rules.String(), "none: it is retired now", "0")
	case p.End == FluteShort:
		s.Work(judge.Geometry, "(flute - flute needed - first stock) / usual stock, whole (a hair under counts), + 1", "max(0, floor(({} - {} - {}) / {} + {}) + 1)",
			quantity.MM(b.Flute), quantity.MM(b.LeastFlute), quantity.MM(first), every, hair)
	case p.End == WebSpent:
		s.Work(judge.Geometry, "((most web - web) / web taper - first stock) / usual stock, whole (a hair under counts), + 1", "max(0, floor((({} * {} - {}) / {} - {}) / {} + {}) + 1)",
			quantity.Num(b.MostWeb), quantity.MM(b.D), quantity.MM(b.Web), quantity.Of(quantity.Taper, b.Taper), quantity.MM(first), every, hair)
	case p.End == DiameterLow:
		s.Work(judge.Geometry, "((diameter - least) / back taper - first stock) / usual stock, whole (a hair under counts), + 1", "max(0, floor((({} - {}) / {} - {}) / {} + {}) + 1)",
			quantity.Fine(quantity.MM(b.D)), quantity.Fine(quantity.MM(b.LeastDiameter)), quantity.Fine(quantity.Of(quantity.Taper, b.BackTaper)), quantity.MM(first), every, hair)
	case p.End == NotCounted:
		s.Work(rules.String(), "counted no further", "{}", quantity.Num(MostGrinds))
	}
}

// first is the stock of the schedule's first grind.
func (p *Plan) first() float64 {
	if p.Stock.Total > 0 {
		return p.Stock.Total
	}
	return p.Usual
}
