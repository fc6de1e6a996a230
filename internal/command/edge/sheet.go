package edge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Sheet is the angles along the lip and on the chisel edge.
func Sheet(d *drill.Drill, explain bool) *sheet.Sheet {
	l := lipOf(d)
	s := sheet.New("edge", explain)
	judge.Plausible(d, s)
	s.Grids = append(s.Grids, l.rows(l.places(d)))
	l.cornerFigures(s)
	l.vectorFigures(s)
	l.alongFigures(s)
	l.chiselFigures(s)
	placesStopShort(d, s)
	l.assumptions(s)
	return s
}

// angleColumn is a column of angles.
func angleColumn(key, label string) sheet.Column {
	return sheet.Column{Key: key, Label: label, Kind: quantity.Angle, Gauge: quantity.Protractor}
}

// rows is the grid of the angles at each place.
func (l *lip) rows(places []float64) sheet.Grid {
	rake, working := angleColumn("normal_rake_deg", "normal rake"), angleColumn("working_clearance_deg", "working clearance")
	rake.Plot, working.Plot = true, true
	g := sheet.Grid{Key: "rows", Title: "Along the lip, margin to chisel corner", Main: true, Lead: 1, Columns: []sheet.Column{
		{Key: "radius_ratio", Label: "r/R", Kind: quantity.Number},
		angleColumn("inclination_deg", "inclination"), rake, angleColumn("working_rake_deg", "rake at feed"),
		angleColumn("normal_clearance_deg", "normal clearance"), angleColumn("wedge_angle_deg", "wedge angle"),
		angleColumn("lip_clearance_deg", "lip clearance"), angleColumn("feed_angle_deg", "feed angle"), working,
		{Key: "cutting_speed_m_min", Label: "cutting speed", Kind: quantity.Cutting},
	}}
	for _, p := range places {
		r := p * l.Drill.D / 2
		a := l.edge.At(r, l.Drill.Feed)
		row := []sheet.Cell{sheet.V(p)}
		for _, v := range [...]float64{a.Inclination, a.NormalRake, a.WorkingRake, a.NormalClearance, wedge(a), a.Clearance, a.FeedAngle, a.Working, l.speed(r)} {
			row = append(row, sheet.V(v))
		}
		g.Rows = append(g.Rows, row)
	}
	if !sheet.Known(l.Drill.D) {
		g.Rows = nil
	}
	return g
}

// alongFigures tells where the rake changes sign and where least clearance is
// left.
func (l *lip) alongFigures(s *sheet.Sheet) {
	s.Open("Along the lip")
	inner, outer := l.ends()
	zero := l.edge.RakeZero()
	if zero < inner {
		zero = math.NaN()
	}
	lead := quantity.Num(l.web / l.Drill.D * math.Tan(l.helix))
	s.Add(sheet.Figure{Key: "rake_zero_ratio", Label: "rake is zero at r/R", Value: zero / outer, Kind: quantity.Number, Wants: l.wantsHelix()})
	s.Work(judge.Geometry, "r / R = (w / D) ((sin k cos k + T sin^2 k) / T)^0.5, T = (w / D) tan H",
		"{} * ((sin({}) * cos({}) + {} * sin({})^2) / {})^0.5", quantity.Num(l.web/l.Drill.D), quantity.Rad(l.k), quantity.Rad(l.k),
		lead, quantity.Rad(l.k), lead)
	at, least := l.flank.LeastWorking(l.Drill.Feed, inner, outer)
	s.Add(sheet.Figure{Key: "least_working_clearance_deg", Label: "least working clearance", Value: least, Kind: quantity.Angle,
		Gauge: quantity.Protractor, Limit: &clears, Wants: l.wants()})
	s.Work(judge.Geometry, "Cl_w = Cl(r) - atan(f / (2 pi r))", "{} - atan({} / (2 * pi * {}))",
		quantity.Rad(l.flank.Clearance(at)), quantity.Of(quantity.Feed, l.Drill.Feed), quantity.MM(at))
	s.Add(sheet.Figure{Key: "least_working_at_ratio", Label: "least at r/R", Value: at / outer, Kind: quantity.Number, Wants: l.wants()})
	s.Work(judge.Geometry, "r / (D / 2), r where the least was found", "{} / ({} / 2)", quantity.MM(at), quantity.MM(l.Drill.D))
	if sheet.Known(l.Drill.D, l.helix) && math.IsNaN(zero) {
		s.Find("rake-one-sign", sheet.Note, "the rake keeps its sign over the whole lip")
	}
	if least <= 0 {
		s.Find("flank-rubs", sheet.Warn, "at this feed the flank rubs where r/R is {}: nothing is left of the clearance", quantity.Num(at/outer))
	}
}

// clears is the bound of a clearance that does not rub.
var clears = handbook.Band{Low: 0, High: math.Inf(1), Source: &handbook.Source{Label: handbook.Derived, Text: "a flank without clearance rubs"}}

// chiselFigures tells what the chisel edge does.
func (l *lip) chiselFigures(s *sheet.Sheet) {
	s.Open("Chisel edge")
	inner, outer := l.ends()
	rake, pushed := point.ChiselRake(l.k, l.chisel), point.IndentationRadius(l.Drill.Feed, l.k, l.chisel)
	s.Add(sheet.Figure{Key: "chisel_corner_ratio", Label: "chisel's corner at r/R", Value: inner / outer, Kind: quantity.Number, Wants: l.wants()})
	s.Work(judge.Geometry, "(w / sin(psi)) / D", "({} / sin({})) / {}", quantity.MM(l.web), quantity.Rad(l.chisel), quantity.MM(l.Drill.D))
	s.Add(sheet.Figure{Key: "chisel_rake_deg", Label: "rake, flat flanks", Value: rake, Kind: quantity.Angle, Gauge: quantity.Protractor})
	s.Work(judge.Geometry, "gc = -atan(tan(k) sin(psi))", "-atan(tan({}) * sin({}))", quantity.Rad(l.k), quantity.Rad(l.chisel))
	s.Add(sheet.Figure{Key: "indentation_radius_mm", Label: "cuts no chip within", Value: pushed, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: l.wants()})
	s.Work(judge.Geometry, "q0 = f / (2 pi) tan(k) sin(psi)", "{} / (2 * pi) * tan({}) * sin({})", quantity.Of(quantity.Feed, l.Drill.Feed), quantity.Rad(l.k), quantity.Rad(l.chisel))
	s.Add(sheet.Figure{Key: "chisel_corner_speed_m_min", Label: "cutting speed, its corner", Value: l.speed(inner), Kind: quantity.Cutting, Wants: l.wantsSpeed()})
	l.workSpeed(s, 2*inner)
	if pushed < inner && sheet.Known(l.rpm) {
		s.Find("chisel-pushes", sheet.Note, "on the chisel edge the cutting speed falls from {} at its corner to nothing on the axis; within {} of the axis it cuts no chip and only pushes the metal aside",
			quantity.Of(quantity.Cutting, l.speed(inner)), quantity.MM(pushed))
	}
}

func (l *lip) wantsSpeed() string {
	return sheet.Wanted(sheet.Need{Reading: "size", Value: l.Drill.D}, sheet.Need{Reading: "rpm", Value: l.rpm})
}

// workSpeed leaves the working of the cutting speed at a diameter. Where inches
// are printed it ends in the unit of its result: 1 ft/min, which reads as its
// metric worth where the answer is metric, as in JSON.
func (l *lip) workSpeed(s *sheet.Sheet, d float64) {
	const source = "common practice: cutting speed is circumference times speed of turning"
	rpm := quantity.Of(quantity.Rpm, l.rpm)
	if l.inch {
		s.Work(source, "v = pi D N / 12 * 1 ft/min, D in inches", "pi * {} * {} / 12 * {}",
			quantity.Num(d/handbook.InchMM), rpm, quantity.Of(quantity.Cutting, 12*handbook.InchMM/1000))
		return
	}
	s.Work(source, "v = pi D N / 1000", "pi * {} * {} / 1000", quantity.MM(d), rpm)
}
