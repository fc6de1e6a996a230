package lip

import (
	"math"

	"evenlip/internal/figure"
	"evenlip/internal/inspect"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/reference"
)

// cornerFigures are the first row again, at the outer corner, with the working
// behind each angle; a table shows them in the row.
func (l *lip) cornerFigures(s *figure.Sheet) {
	s.Sections = append(s.Sections, figure.Section{Title: "At the outer corner", Quiet: true})
	r := l.Drill.D / 2
	a, b, f := l.edge.At(r, l.Drill.Feed), point.WebAngle(l.web, r), l.Drill.Feed
	k, bb, g := figure.Deg(l.k), figure.Deg(b), figure.Num(l.flank.Slope())
	angle := func(key, label string, v float64, wants string) {
		s.Add(figure.Figure{Key: key, Label: label, Value: v, Kind: quantity.Angle, Gauge: quantity.Protractor, Wants: wants})
	}
	angle("corner_inclination_deg", "inclination, outer corner", a.Inclination, l.wants())
	s.Work(inspect.Geometry, "sin(lam) = sin(k) sin(b), sin(b) = w / (2 r)", "asin(sin({}) * {} / (2 * {}))", k, figure.Len(l.web), figure.Len(r))
	angle("corner_normal_rake_deg", "normal rake, outer corner", a.NormalRake, l.wantsHelix())
	s.Work(inspect.Geometry, "tan(gn) = tan(H) (1 - sin^2 k sin^2 b) / (sin k cos b) - cos k tan b",
		"atan(tan({}) * (1 - sin({})^2 * sin({})^2) / (sin({}) * cos({})) - cos({}) * tan({}))", figure.Deg(l.helix), k, bb, k, bb, k, bb)
	angle("corner_normal_clearance_deg", "normal clearance, outer corner", a.NormalClearance, l.wants())
	s.Work(inspect.Geometry, "an = atan(g sin k) + atan(cos k tan b), g = (tan Cl - sin b / tan k) / cos b",
		"atan((tan({}) - sin({}) / tan({})) / cos({}) * sin({})) + atan(cos({}) * tan({}))", figure.Deg(l.clearance), bb, k, bb, k, k, bb)
	angle("corner_wedge_angle_deg", "wedge angle, outer corner", wedge(a), l.wantsHelix())
	s.Work(inspect.Geometry, "wedge = 90 - gn - an", "90 - {} - {}", figure.Deg(a.NormalRake), figure.Deg(a.NormalClearance))
	s.Add(figure.Figure{Key: "corner_lip_clearance_deg", Label: "lip clearance, outer corner", Value: a.Clearance, Kind: quantity.Angle, Gauge: quantity.Protractor,
		Shop: l.taken.clearance && l.Clearance.Recommended.Source.OfShop(), Wants: l.wants()})
	s.Work(inspect.Geometry, "tan(Cl) = g cos(b) + sin(b) / tan(k)", "atan({} * cos({}) + sin({}) / tan({}))", g, bb, bb, k)
	angle("corner_feed_angle_deg", "feed angle, outer corner", a.FeedAngle, l.wants())
	s.Work(inspect.Geometry, "e = atan(f / (2 pi r))", "atan({} / (2 * pi * {}))", figure.Feed(f), figure.Len(r))
	angle("corner_working_clearance_deg", "working clearance, outer corner", a.Working, l.wants())
	s.Work(inspect.Geometry, "Cl_w = Cl - e", "{} - {}", figure.Deg(a.Clearance), figure.Deg(a.FeedAngle))
	s.Add(figure.Figure{Key: "corner_cutting_speed_m_min", Label: "cutting speed, outer corner", Value: l.speed(r), Kind: quantity.Cutting, Shop: l.taken.rpm && l.speedSource().OfShop(), Wants: l.wantsSpeed()})
	l.workSpeed(s, 2*r)
}

// assumptions says what was taken for want of a reading.
func (l *lip) assumptions(s *figure.Sheet) {
	t, b := l.taken, &l.Drill
	if !figure.Known(b.D) {
		return
	}
	note := func(taken bool, code, format string, arg figure.Arg, src *reference.Source, usual string) {
		if taken && !math.IsNaN(arg.Value) {
			s.Find(code, figure.Note, format, arg, figure.Say(src.How(usual)))
			if src != nil {
				s.Extra = append(s.Extra, src)
			}
		}
	}
	note(t.k, "point-angle-assumed", "no point or lip angle was given: {} is taken, {}", figure.Deg(2*l.k), b.PointSource(), "as the work wants")
	l.Point.MeanTaken(s)
	l.Point.WantedUnused(s)
	note(t.web, "web-assumed", "no web was read: {} is taken, {}", figure.Len(l.web), reference.NewWebSource(), "as on a new drill")
	note(t.chisel, "chisel-angle-assumed", "no chisel-edge angle was read: {} is taken, {}", figure.Deg(math.Pi-l.chisel), reference.HandbookChiselSource(), "as the handbook's table does")
	note(t.clearance, "clearance-assumed", "no clearance was read: {} is taken, {}", figure.Deg(l.clearance), l.Clearance.Recommended.Source, "as recommended for the size")
	l.Clearance.LesserTaken(s)
	l.Clearance.Contradiction(s)
	l.Chisel.Contradiction(s)
	note(t.helix, "helix-assumed", "no helix was given: {} is taken, {}", figure.Deg(l.helix), l.helixSource(), "the middle for general work at this size")
	b.FeedAssumption(s)
	note(t.rpm, "rpm-assumed", "no rpm was given: {} is taken, from the work material's cutting speed, {}", figure.Of(quantity.Rpm, l.rpm), l.speedSource(), "as published")
	if t.rpm && b.Material != nil && !b.Given {
		s.Find("material-assumed", figure.Note, "no material was given: {} is taken", figure.Say(b.Material.Name))
	}
}

func (l *lip) helixSource() *reference.Source {
	band, _ := reference.Helix(l.Drill.D, reference.TypeN)
	return band.Source
}

func (l *lip) speedSource() *reference.Source {
	if m := l.Drill.Material; m != nil {
		return m.Speed.Source
	}
	return nil
}
