package cli

import (
	"math"
	"strconv"

	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// materialList is the list of work materials with what is published of each:
// bands in one column for people, their ends apart for scripts.
func materialList(book *handbook.Book, people bool, system quantity.System) *sheet.Sheet {
	s := &sheet.Sheet{Command: "material", Title: "Work materials"}
	if people {
		s.Grids = []sheet.Grid{materialWords(book, quantity.Format{System: system})}
	} else {
		s.Grids = []sheet.Grid{materialNumbers(book)}
	}
	for _, t := range handbook.MaterialTables() {
		src := t.Source
		s.Extra = append(s.Extra, &src)
	}
	return s
}

func materialWords(book *handbook.Book, f quantity.Format) sheet.Grid {
	g := sheet.Grid{Key: "materials", Note: "Lip clearance over all sizes; cutting speed of high-speed steel. A dash: nothing is published.", Columns: []sheet.Column{
		{Key: "name", Label: "name", Kind: quantity.Word}, {Key: "point", Label: "point", Kind: quantity.Word}, {Key: "clearance", Label: "clearance", Kind: quantity.Word},
		{Key: "speed", Label: f.Unit(quantity.Cutting), Kind: quantity.Word}, {Key: "title", Label: "what it is", Kind: quantity.Word},
	}}
	for _, m := range book.Materials() {
		point := handbook.Band{Low: m.PointAim, High: m.PointAim, Source: m.PointSource}
		cell := func(kind quantity.Kind, b handbook.Band) sheet.Cell {
			return sheet.Cell{Value: math.NaN(), Word: inWords(f, kind, b), Shop: b.Source.OfShop()}
		}
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(m.Name), cell(quantity.Angle, point), cell(quantity.Angle, m.Clearance), cell(quantity.Cutting, m.Speed), sheet.W(m.Title)})
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

func materialNumbers(book *handbook.Book) sheet.Grid {
	g := sheet.Grid{Key: "materials", Main: true, Columns: []sheet.Column{{Key: "name", Label: "name", Kind: quantity.Word}, {Key: "title", Label: "title", Kind: quantity.Word}}}
	column := func(key, label string, kind quantity.Kind) {
		g.Columns = append(g.Columns, sheet.Column{Key: key, Label: label, Kind: kind})
	}
	column("point_angle_deg", "point", quantity.Angle)
	for _, c := range [...]struct {
		key, label, unit string
		kind             quantity.Kind
	}{{"point_angle", "point", "_deg", quantity.Angle}, {"chisel_angle", "chisel", "_deg", quantity.Angle}, {"clearance", "clearance", "_deg", quantity.Angle},
		{"helix", "helix", "_deg", quantity.Angle}, {"cutting_speed", "speed", "_m_min", quantity.Cutting}} {
		column(c.key+"_low"+c.unit, c.label+" from", c.kind)
		column(c.key+"_high"+c.unit, c.label+" to", c.kind)
	}
	column("kd_thrust", "Kd thrust", quantity.Count)
	column("kd_torque", "Kd torque", quantity.Count)
	for _, m := range book.Materials() {
		cell := func(v float64, source *handbook.Source) sheet.Cell {
			return sheet.Cell{Value: v, Shop: source.OfShop()}
		}
		row := []sheet.Cell{sheet.W(m.Name), sheet.W(m.Title), cell(m.PointAim, m.PointSource)}
		for _, b := range [...]handbook.Band{m.Point, m.Chisel, m.Clearance, m.Helix, m.Speed} {
			row = append(row, cell(b.Low, b.Source), cell(b.High, b.Source))
		}
		g.Rows = append(g.Rows, append(row, cell(m.KdThrust, m.KdThrustSource), cell(m.KdTorque, m.KdTorqueSource)))
	}
	return g
}

// published is one published band of a material's sheet.
type published struct {
	key, label string // the key without _low and its unit
	unit       string
	band       handbook.Band
	kind       quantity.Kind
}

// materialSheet is what is published of one material, at a size if one is given.
func materialSheet(m *handbook.Material, book *handbook.Book, size quantity.Value, explain bool) *sheet.Sheet {
	s := &sheet.Sheet{Command: "material", Title: m.Title + " (" + m.Name + ")", Explaining: explain}
	s.Inputs = []sheet.Input{{Name: "material", Echo: m.Name, Text: m.Name, Kind: quantity.Word, Word: m.Name}}
	s.Open("Point")
	one(s, sheet.Figure{Key: "point_angle_deg", Label: "point angle to grind", Value: m.PointAim, Kind: quantity.Angle, Gauge: quantity.Protractor}, m.PointSource)
	both(s, published{"point_angle", "published", "_deg", m.Point, quantity.Angle})
	both(s, published{"point_angle_accepted", "accepted", "_deg", judge.AcceptedPoint(book, m), quantity.Angle})
	s.Open("Chisel edge")
	both(s, published{"chisel_angle", m.Chisel.Source.Whose(), "_deg", m.Chisel, quantity.Angle})
	both(s, published{"chisel_angle_accepted", "accepted", "_deg", book.ChiselAngle(), quantity.Angle})
	s.Open("Lip clearance")
	both(s, published{"clearance", "over all sizes", "_deg", m.Clearance, quantity.Angle})
	sizeFigures(s, m, size)
	s.Open("Helix")
	both(s, published{"helix", m.Helix.Source.Whose(), "_deg", m.Helix, quantity.Angle})
	s.Open("Speed and force")
	both(s, published{"cutting_speed", "cutting speed", "_m_min", m.Speed, quantity.Cutting})
	one(s, sheet.Figure{Key: "kd_thrust", Label: "force factor Kd, thrust", Value: m.KdThrust, Kind: quantity.Count}, m.KdThrustSource)
	one(s, sheet.Figure{Key: "kd_torque", Label: "force factor Kd, torque", Value: m.KdTorque, Kind: quantity.Count}, m.KdTorqueSource)
	materialFindings(s, m)
	return s
}

// sizeFigures adds what hangs on the drill's size.
func sizeFigures(s *sheet.Sheet, m *handbook.Material, size quantity.Value) {
	nan := math.NaN()
	at, aim := handbook.Band{Low: nan, High: nan}, nan
	if !math.IsNaN(size.V) {
		aim, at = judge.Recommended(size.V, m)
		s.Inputs = append(s.Inputs, sheet.Input{Name: "size", Text: size.Text, Kind: quantity.Size, Keys: []string{"size_mm"}, Values: []quantity.Value{size}})
	}
	one(s, sheet.Figure{Key: "clearance_aim_deg", Label: "to grind at this size", Value: aim, Kind: quantity.Angle, Gauge: quantity.Protractor, Wants: sizeMissing(aim)}, at.Source)
	both(s, published{"recommended", "for this size", "_deg", at, quantity.Angle})
	accepted := at
	if !math.IsNaN(size.V) {
		accepted = judge.AcceptedClearance(at, m)
	}
	both(s, published{"clearance_accepted", "accepted", "_deg", accepted, quantity.Angle})
	s.Open("At this size")
	feed := judge.UsualFeed(size.V, m)
	s.Add(sheet.Figure{Key: "feed_mm", Label: "feed taken", Value: feed, Kind: quantity.Feed, Wants: sizeMissing(feed)})
	judge.WorkFeed(s, size.V, m, 0)
	both(s, published{"feed", "feed published", "_mm", handbook.FeedBand(size.V), quantity.Feed})
	rpm := handbook.Band{Low: cutting.Rpm(m.Speed.Low, size.V), High: cutting.Rpm(m.Speed.High, size.V), Source: m.Speed.Source}
	both(s, published{"rpm", "spindle speed", "", rpm, quantity.Rpm})
}

func sizeMissing(v float64) string {
	if math.IsNaN(v) {
		return "size"
	}
	return ""
}

// one adds a figure that was looked up.
func one(s *sheet.Sheet, f sheet.Figure, source *handbook.Source) {
	f.Shop = source.OfShop()
	s.Add(f)
	if source == nil {
		return
	}
	s.Work(source.String(), source.How("as published"), "{}", quantity.Of(f.Kind, f.Value))
	s.Extra = append(s.Extra, source)
}

// both adds the two ends of a band.
func both(s *sheet.Sheet, p published) {
	one(s, sheet.Figure{Key: p.key + "_low" + p.unit, Label: p.label + ", from", Value: p.band.Low, Kind: p.kind, Gauge: p.gauge()}, p.band.Source)
	one(s, sheet.Figure{Key: p.key + "_high" + p.unit, Label: p.label + ", to", Value: p.band.High, Kind: p.kind, Gauge: p.gauge()}, p.band.Source)
}

// gauge is that of a spindle speed to set; everything else is as published.
func (p *published) gauge() quantity.Gauge {
	if p.kind == quantity.Rpm {
		return quantity.Setting
	}
	return quantity.NoGauge
}

func materialFindings(s *sheet.Sheet, m *handbook.Material) {
	judge.DigsIn(s, m)
	judge.Hardens(s, m)
	if burns, source := handbook.Burns(m); burns {
		s.Find("fire", sheet.Warn, "chips and grinding dust of this metal burn: keep them swept up and dry, no water on a fire; ask for the shop's own rules before you start")
		s.Extra = append(s.Extra, source)
	}
	s.Find("class-of-work", sheet.Note, "for lip clearance and feed this is {}", quantity.Say(m.Relief.String()))
	if !m.HasForce() {
		s.Find("no-force-factor", sheet.Note, "no force factor is published: thrust and torque cannot be given")
	}
	if !m.HasSpeed() {
		s.Find("no-speed", sheet.Note, "no cutting speed is published")
	}
}
