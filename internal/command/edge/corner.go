package edge

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// cornerFigures are the first row again, at the outer corner, with the working
// behind each angle; a table shows them in the row.
func (l *lip) cornerFigures(s *sheet.Sheet) {
	s.Sections = append(s.Sections, sheet.Section{Title: "At the outer corner", Quiet: true})
	r := l.Drill.D / 2
	a, b, f := l.edge.At(r, l.Drill.Feed), point.WebAngle(l.web, r), l.Drill.Feed
	k, bb, g := quantity.Rad(l.k), quantity.Rad(b), quantity.Num(l.flank.Slope())
	angle := func(key, label string, v float64, wants string) {
		s.Add(sheet.Figure{Key: key, Label: label, Value: v, Kind: quantity.Angle, Gauge: quantity.Protractor, Wants: wants})
	}
	angle("corner_inclination_deg", "inclination, outer corner", a.Inclination, l.wants())
	s.Work(judge.Geometry, "sin(lam) = sin(k) sin(b), sin(b) = w / (2 r)", "asin(sin({}) * {} / (2 * {}))", k, quantity.MM(l.web), quantity.MM(r))
	angle("corner_normal_rake_deg", "normal rake, outer corner", a.NormalRake, l.wantsHelix())
	s.Work(judge.Geometry, "tan(gn) = tan(H) (1 - sin^2 k sin^2 b) / (sin k cos b) - cos k tan b",
		"atan(tan({}) * (1 - sin({})^2 * sin({})^2) / (sin({}) * cos({})) - cos({}) * tan({}))", quantity.Rad(l.helix), k, bb, k, bb, k, bb)
	angle("corner_normal_clearance_deg", "normal clearance, outer corner", a.NormalClearance, l.wants())
	s.Work(judge.Geometry, "an = atan(g sin k) + atan(cos k tan b), g = (tan Cl - sin b / tan k) / cos b",
		"atan((tan({}) - sin({}) / tan({})) / cos({}) * sin({})) + atan(cos({}) * tan({}))", quantity.Rad(l.clearance), bb, k, bb, k, k, bb)
	angle("corner_wedge_angle_deg", "wedge angle, outer corner", wedge(a), l.wantsHelix())
	s.Work(judge.Geometry, "wedge = 90 - gn - an", "90 - {} - {}", quantity.Rad(a.NormalRake), quantity.Rad(a.NormalClearance))
	s.Add(sheet.Figure{Key: "corner_lip_clearance_deg", Label: "lip clearance, outer corner", Value: a.Clearance, Kind: quantity.Angle, Gauge: quantity.Protractor,
		Shop: l.taken.clearance && l.Clearance.Recommended.Source.OfShop(), Wants: l.wants()})
	s.Work(judge.Geometry, "tan(Cl) = g cos(b) + sin(b) / tan(k)", "atan({} * cos({}) + sin({}) / tan({}))", g, bb, bb, k)
	angle("corner_feed_angle_deg", "feed angle, outer corner", a.FeedAngle, l.wants())
	s.Work(judge.Geometry, "e = atan(f / (2 pi r))", "atan({} / (2 * pi * {}))", quantity.Of(quantity.Feed, f), quantity.MM(r))
	angle("corner_working_clearance_deg", "working clearance, outer corner", a.Working, l.wants())
	s.Work(judge.Geometry, "Cl_w = Cl - e", "{} - {}", quantity.Rad(a.Clearance), quantity.Rad(a.FeedAngle))
	s.Add(sheet.Figure{Key: "corner_cutting_speed_m_min", Label: "cutting speed, outer corner", Value: l.speed(r), Kind: quantity.Cutting, Shop: l.taken.rpm && l.speedSource().OfShop(), Wants: l.wantsSpeed()})
	l.workSpeed(s, 2*r)
}

// assumptions says what was taken for want of a reading.
func (l *lip) assumptions(s *sheet.Sheet) {
	t, b := l.taken, &l.Drill
	if !sheet.Known(b.D) {
		return
	}
	note := func(taken bool, code, format string, arg quantity.Arg, src *handbook.Source, usual string) {
		if taken && !math.IsNaN(arg.Value) {
			s.Find(code, sheet.Note, format, arg, quantity.Say(src.How(usual)))
			if src != nil {
				s.Extra = append(s.Extra, src)
			}
		}
	}
	note(t.k, "point-angle-assumed", "no point or lip angle was given: {} is taken, {}", quantity.Rad(2*l.k), b.PointSource(), "as the work wants")
	l.Point.MeanTaken(s)
	l.Point.WantedUnused(s)
	note(t.web, "web-assumed", "no web was read: {} is taken, {}", quantity.MM(l.web), handbook.NewWebSource(), "as on a new drill")
	note(t.chisel, "chisel-angle-assumed", "no chisel-edge angle was read: {} is taken, {}", quantity.Rad(math.Pi-l.chisel), handbook.HandbookChiselSource(), "as the handbook's table does")
	note(t.clearance, "clearance-assumed", "no clearance was read: {} is taken, {}", quantity.Rad(l.clearance), l.Clearance.Recommended.Source, "as recommended for the size")
	l.Clearance.LesserTaken(s)
	l.Clearance.Contradiction(s)
	l.Chisel.Contradiction(s)
	note(t.helix, "helix-assumed", "no helix was given: {} is taken, {}", quantity.Rad(l.helix), l.helixSource(), "the middle for general work at this size")
	b.FeedAssumption(s)
	note(t.rpm, "rpm-assumed", "no rpm was given: {} is taken, from the work material's cutting speed, {}", quantity.Of(quantity.Rpm, l.rpm), l.speedSource(), "as published")
	if t.rpm && b.Material != nil && !b.Given {
		s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(b.Material.Name))
	}
}

func (l *lip) helixSource() *handbook.Source {
	band, _ := handbook.Helix(l.Drill.D, handbook.TypeN)
	return band.Source
}

func (l *lip) speedSource() *handbook.Source {
	if m := l.Drill.Material; m != nil {
		return m.Speed.Source
	}
	return nil
}
