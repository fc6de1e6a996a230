package lookup

import (
	"math"
	"strconv"

	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Materials is the sheet of the work materials with what is published of each: bands
// in one column for people, their ends apart for scripts.
func Materials(book *handbook.Book, people bool, system quantity.System) *sheet.Sheet {
	s := sheet.New("material", false)
	s.Title = "Work materials"
	if people {
		s.Grids = append(s.Grids, bandsInWords(book, quantity.Format{System: system}))
	} else {
		s.Grids = append(s.Grids, bandsInNumbers(book))
	}
	sources(s, handbook.MaterialTables())
	s.Screen = func() *sheet.Screen { return listScreen(book, quantity.Format{System: system}) }
	return s
}

func bandsInWords(book *handbook.Book, f quantity.Format) sheet.Grid {
	g := sheet.Grid{Key: "materials", Note: "Lip clearance over all sizes; cutting speed of high-speed steel. A dash: nothing is published.", Columns: []sheet.Column{
		word("name", "name"), word("point", "point"), word("clearance", "clearance"), word("speed", f.Unit(quantity.Cutting)), word("title", "what it is"),
	}}
	band := func(kind quantity.Kind, b handbook.Band) sheet.Cell {
		return sheet.Cell{Value: math.NaN(), Word: inWords(f, kind, b), Shop: b.Source.OfShop()}
	}
	for _, m := range book.Materials() {
		point := handbook.Band{Low: m.PointAim, High: m.PointAim, Source: m.PointSource}
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(m.Name), band(quantity.Angle, point), band(quantity.Angle, m.Clearance), band(quantity.Cutting, m.Speed), sheet.W(m.Title)})
	}
	return g
}

// inWords prints a band in whole numbers: "7-24°", "21-24", "-".
func inWords(f quantity.Format, kind quantity.Kind, b handbook.Band) string {
	if math.IsNaN(b.Low) {
		return "-"
	}
	whole := func(v float64) string { return strconv.FormatFloat(f.InSystem(kind, v), 'f', 0, 64) }
	out := whole(b.Low)
	if high := whole(b.High); high != out {
		out += "-" + high
	}
	if kind == quantity.Angle {
		out += "°"
	}
	return out
}

func bandsInNumbers(book *handbook.Book) sheet.Grid {
	g := sheet.Grid{Key: "materials", Main: true, Columns: []sheet.Column{word("name", "name"), word("title", "title"), {Key: "point_angle_deg", Label: "point", Kind: quantity.Angle}}}
	for _, c := range [...]struct {
		key, label, unit string
		kind             quantity.Kind
	}{
		{"point_angle", "point", "_deg", quantity.Angle}, {"chisel_angle", "chisel", "_deg", quantity.Angle}, {"clearance", "clearance", "_deg", quantity.Angle},
		{"helix", "helix", "_deg", quantity.Angle}, {"cutting_speed", "speed", "_m_min", quantity.Cutting},
	} {
		g.Columns = append(g.Columns, sheet.Column{Key: c.key + "_low" + c.unit, Label: c.label + " from", Kind: c.kind},
			sheet.Column{Key: c.key + "_high" + c.unit, Label: c.label + " to", Kind: c.kind})
	}
	g.Columns = append(g.Columns, sheet.Column{Key: "kd_thrust", Label: "Kd thrust", Kind: quantity.Count}, sheet.Column{Key: "kd_torque", Label: "Kd torque", Kind: quantity.Count})
	cell := func(v float64, source *handbook.Source) sheet.Cell {
		return sheet.Cell{Value: v, Shop: source.OfShop()}
	}
	for _, m := range book.Materials() {
		row := []sheet.Cell{sheet.W(m.Name), sheet.W(m.Title), cell(m.PointAim, m.PointSource)}
		for _, b := range [...]handbook.Band{m.Point, m.Chisel, m.Clearance, m.Helix, m.Speed} {
			row = append(row, cell(b.Low, b.Source), cell(b.High, b.Source))
		}
		g.Rows = append(g.Rows, append(row, cell(m.KdThrust, m.KdThrustSource), cell(m.KdTorque, m.KdTorqueSource)))
	}
	return g
}

// Material is the sheet of what is published of one material, for a drill of a size
// if there is one: its zero Value is none.
func Material(m *handbook.Material, book *handbook.Book, size quantity.Value, explain bool) *sheet.Sheet {
	s := sheet.New("material", explain)
	s.Title = m.Title + " (" + m.Name + ")"
	s.Inputs = append(s.Inputs, sheet.Input{Name: "material", Echo: m.Name, Text: m.Name, Kind: quantity.Word, Word: m.Name})
	at := atSize{m, math.NaN()}
	if size.V > 0 {
		at.d = size.V
		s.Inputs = append(s.Inputs, sizeInput(size))
		judge.SizePlausible(size, s)
		s.Extra = append(s.Extra, handbook.FeedBand(at.d).Source)
	}
	aim, recommended := judge.Recommended(at.d, m)
	accepted := judge.AcceptedClearance(at.d, recommended, m)
	if !(at.d > 0) {
		aim, recommended = math.NaN(), nothing
		accepted = nothing
	}

	s.Open("Point")
	one(s, sheet.Figure{Key: "point_angle_deg", Label: "point angle to grind", Value: m.PointAim, Kind: quantity.Angle, Gauge: quantity.Protractor}, m.PointSource)
	both(s, "point_angle", "published", m.Point)
	both(s, "point_angle_accepted", "accepted", judge.AcceptedPoint(book, m))
	s.Open("Chisel edge")
	both(s, "chisel_angle", m.Chisel.Source.Whose(), m.Chisel)
	both(s, "chisel_angle_accepted", "accepted", book.ChiselAngle())
	s.Open("Lip clearance")
	both(s, "clearance", "over all sizes", m.Clearance)
	one(s, sheet.Figure{Key: "clearance_aim_deg", Label: "to grind at this size", Value: aim, Kind: quantity.Angle, Gauge: quantity.Protractor, Of: "size"}, recommended.Source)
	both(s, "recommended", "for this size", recommended)
	both(s, "clearance_accepted", "accepted", accepted)
	sheet.Put(s, &at, nil, &atSizeFigures)
	s.Open("Helix")
	both(s, "helix", m.Helix.Source.Whose(), m.Helix)
	s.Open("Speed and force")
	one(s, sheet.Figure{Key: "cutting_speed_low_m_min", Label: "cutting speed, from", Value: m.Speed.Low, Kind: quantity.Cutting}, m.Speed.Source)
	one(s, sheet.Figure{Key: "cutting_speed_high_m_min", Label: "cutting speed, to", Value: m.Speed.High, Kind: quantity.Cutting}, m.Speed.Source)
	one(s, sheet.Figure{Key: "kd_thrust", Label: "force factor Kd, thrust", Value: m.KdThrust, Kind: quantity.Count}, m.KdThrustSource)
	one(s, sheet.Figure{Key: "kd_torque", Label: "force factor Kd, torque", Value: m.KdTorque, Kind: quantity.Count}, m.KdTorqueSource)
	remarks(s, m)
	s.Screen = func() *sheet.Screen { return materialScreen(m, at.d, size, book, s) }
	return s
}

// nothing is a band that is not published.
var nothing = handbook.Band{Low: math.NaN(), High: math.NaN()}

// one adds a figure that was looked up.
func one(s *sheet.Sheet, f sheet.Figure, source *handbook.Source) {
	if source != nil {
		f.Work, f.Source, f.Shop = sheet.AsRead, source.String(), source.OfShop()
		s.Extra = append(s.Extra, handbook.FireSource)
	}
	s.Add(f)
}

// both adds the two ends of a band of angles.
func both(s *sheet.Sheet, key, label string, b handbook.Band) {
	one(s, sheet.Figure{Key: key + "_low_deg", Label: label + ", from", Value: b.Low, Kind: quantity.Angle}, b.Source)
	one(s, sheet.Figure{Key: key + "_high_deg", Label: label + ", to", Value: b.High, Kind: quantity.Angle}, b.Source)
}

// atSize is a drill of a size, mm, in a material; NaN is no size.
type atSize struct {
	*handbook.Material
	d float64
}

var atSizeFigures = sheet.Group[atSize]{Title: "At this size", Figures: []sheet.Def[atSize]{
	{Letter: "D", Label: "diameter", Kind: quantity.Size, Work: sheet.AsRead, Of: "size", Value: func(a *atSize) float64 { return a.d }},
	{Letter: "Dm", Label: "diameter, mm", Kind: quantity.Number, Work: sheet.AsRead, Of: "size", Value: func(a *atSize) float64 { return a.d }},
	{Letter: "D1", Label: "diameter from which these feeds hold", Kind: quantity.Length, Work: sheet.AsRead, Value: func(a *atSize) float64 { return handbook.FeedOf(a.d).From }},
	{Letter: "D2", Label: "diameter up to which they hold", Kind: quantity.Length, Work: sheet.AsRead, Value: func(a *atSize) float64 { return handbook.FeedOf(a.d).To }},
	{Letter: "a", Label: "how fast the feed rises in them, by the work", Kind: quantity.Number, Work: sheet.AsRead, Value: func(a *atSize) float64 { rise, _ := a.Relief.FeedEnd().Line(); return rise }},
	{Letter: "b", Label: "how late it does", Kind: quantity.Number, Work: sheet.AsRead, Value: func(a *atSize) float64 { _, late := a.Relief.FeedEnd().Line(); return late }},
	{Letter: "x", Label: "how far up in these feeds", Kind: quantity.Number,
		Value: func(a *atSize) float64 { return handbook.FeedOf(a.d).Share(a.d, a.Relief.FeedEnd()) },
		Works: func(a *atSize) (work, source string) {
			return "max(0, min(1, a * (D - D1) / (D2 - D1) - b))", handbook.FeedTakenSource.String()
		}},
	{Key: "feed_mm", Label: "feed taken", Kind: quantity.Feed, Work: "f1 + (f2 - f1) * x", Source: "of the feeds published for this size",
		Value: func(a *atSize) float64 { return judge.UsualFeed(a.d, a.Material) }},
	{Key: "feed_low_mm", Letter: "f1", Label: "feed published, from", Kind: quantity.Feed, Of: "size", Value: func(a *atSize) float64 { return handbook.FeedBand(a.d).Low }, Works: feedWorks},
	{Key: "feed_high_mm", Letter: "f2", Label: "feed published, to", Kind: quantity.Feed, Of: "size", Value: func(a *atSize) float64 { return handbook.FeedBand(a.d).High }, Works: feedWorks},
	{Letter: "v1", Label: "cutting speed from, m/min", Kind: quantity.Number, Work: sheet.AsRead, Value: func(a *atSize) float64 { return a.Speed.Low }},
	{Letter: "v2", Label: "cutting speed to, m/min", Kind: quantity.Number, Work: sheet.AsRead, Value: func(a *atSize) float64 { return a.Speed.High }},
	{Key: "rpm_low", Label: "spindle speed, from", Kind: quantity.Rpm, Gauge: quantity.Setting, Work: "1000 * v1 / (pi * Dm)", Source: speedSource,
		Value: func(a *atSize) float64 { return cutting.Rpm(a.Speed.Low, a.d) }, Shop: func(a *atSize) bool { return a.Speed.Source.OfShop() }},
	{Key: "rpm_high", Label: "spindle speed, to", Kind: quantity.Rpm, Gauge: quantity.Setting, Work: "1000 * v2 / (pi * Dm)", Source: speedSource,
		Value: func(a *atSize) float64 { return cutting.Rpm(a.Speed.High, a.d) }, Shop: func(a *atSize) bool { return a.Speed.Source.OfShop() }},
}}

const speedSource = "common practice: cutting speed is circumference times speed of turning"

func feedWorks(a *atSize) (work, source string) {
	if of := handbook.FeedBand(a.d).Source; of != nil {
		return sheet.AsRead, of.String()
	}
	return "", ""
}

func remarks(s *sheet.Sheet, m *handbook.Material) {
	judge.DigsIn(s, m)
	judge.Hardens(s, m)
	judge.Burns(s, m)
	s.Find("class-of-work", sheet.Note, "for lip clearance and feed this is {}", quantity.Say(m.Relief.String()))
	if !m.HasForce() {
		s.Find("no-force-factor", sheet.Note, "no force factor is published: thrust and torque cannot be given")
	}
	if !m.HasSpeed() {
		s.Find("no-speed", sheet.Note, "no cutting speed is published")
	}
}
