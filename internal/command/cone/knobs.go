package cone

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// turn is how far a knob is moved, either way, to find what it does, as a part
// of the step that is shown: near enough for a slope, far enough for a float64.
const turn = 1.0 / 256

// knobs is the grid of what a degree or a tenth of a millimetre on each knob
// does to the point, the others left alone.
func (g *grind) knobs() sheet.Grid {
	grid := sheet.Grid{Key: "knobs", Title: "What each setting changes, the others left alone",
		Note: "semi-angle and axis angle make the point angle, the offset the clearance, the vertex the chisel",
		Columns: append([]sheet.Column{
			{Key: "knob", Label: "setting", Kind: quantity.Word}, {Key: "per", Label: "per", Kind: quantity.Word}}, outcomes("change_")...)}
	degrees, tenths := sheet.W("1°"), sheet.W("0.1 mm")
	tenths.Inch = "0.0039 in"
	for _, k := range [...]struct {
		name string
		per  sheet.Cell
		step float64
		at   func(*point.Setting) *float64
	}{
		{"semi-angle", degrees, degree, func(s *point.Setting) *float64 { return &s.SemiAngle }},
		{"axis-angle", degrees, degree, func(s *point.Setting) *float64 { return &s.AxisAngle }},
		{"axis-offset", tenths, 0.1, func(s *point.Setting) *float64 { return &s.Offset }},
		{"vertex", tenths, 0.1, func(s *point.Setting) *float64 { return &s.Vertex }},
	} {
		up, down := g.setting, g.setting
		*k.at(&up) += k.step * turn
		*k.at(&down) -= k.step * turn
		a, b := g.outcome(up, g.web), g.outcome(down, g.web)
		row := []sheet.Cell{sheet.W(k.name), k.per}
		for i := range a {
			row = append(row, sheet.V((a[i]-b[i])/(2*turn)))
		}
		grid.Rows = append(grid.Rows, row)
	}
	return grid
}

// outcomes are the columns of what a setting gives, lead before each name.
func outcomes(lead string) []sheet.Column {
	out := []sheet.Column{
		{Key: "point_angle_deg", Label: "point angle", Kind: quantity.Angle, Gauge: quantity.Protractor},
		{Key: "lip_clearance_deg", Label: "lip clearance", Kind: quantity.Angle, Gauge: quantity.Protractor},
		{Key: "chisel_angle_deg", Label: "chisel angle", Kind: quantity.Angle, Gauge: quantity.Protractor},
		sheet.Lengths("chisel_length_mm", "chisel length"),
	}
	for i := range out {
		out[i].Key = lead + out[i].Key
	}
	return out
}

// outcome is what a setting gives on a web, in the order of outcomes; NaN where
// it leaves no point.
func (g *grind) outcome(st point.Setting, web float64) [4]float64 {
	c, err := st.Point(g.d, web)
	if err != nil {
		nan := math.NaN()
		return [4]float64{nan, nan, nan, nan}
	}
	return [4]float64{2 * c.Point().HalfAngle, c.Point().Clearance, point.Obtuse(c.Chisel()), c.ChiselLength()}
}

// thickerWebs is the grid of what the same setting does to this drill as grind
// after grind thickens its web.
func (g *grind) thickerWebs() sheet.Grid {
	grid := sheet.Grid{Key: "webs", Title: "The same setting on a thicker web", Note: "what the drill is like some grinds on, with the usual web taper", Columns: append([]sheet.Column{
		sheet.Lengths("ground_off_mm", "ground off, about"),
		{Key: "web_ratio", Label: "web / D", Kind: quantity.Number},
		sheet.Lengths("web_mm", "web")}, outcomes("")...)}
	for _, more := range [...]float64{1, 1.1, 1.25, 1.5} {
		web := g.web * more
		if web >= g.d {
			break
		}
		row := []sheet.Cell{sheet.V((web - g.web) / g.Web.Taper), sheet.V(web / g.d), sheet.V(web)}
		for _, v := range g.outcome(g.setting, web) {
			row = append(row, sheet.V(v))
		}
		grid.Rows = append(grid.Rows, row)
	}
	return grid
}

// assumptions says what was taken for want of a reading.
func (g *grind) assumptions(s *sheet.Sheet) {
	if !sheet.Known(g.d) {
		return
	}
	if g.made && math.Abs(g.cone.ChiselTangent()-g.cone.Chisel()) > degree {
		s.Find("chisel-curved", sheet.Note, "a cone leaves the chisel slightly curved: {} corner to corner, which a protractor reads, and {} at the axis",
			deg(point.Obtuse(g.cone.Chisel())), deg(math.Pi-g.cone.ChiselTangent()))
	}
	if g.taken.web {
		s.Find("web-assumed", sheet.Note, "no web was read: {} is taken, as on a new drill", quantity.MM(g.web))
		s.Extra = append(s.Extra, handbook.NewWebSource())
	}
	if g.basis == fromSetting {
		return
	}
	if g.taken.pointAngle {
		s.Find("point-angle-assumed", sheet.Note, "no point angle was wished: {} is taken, {}", deg(2*g.wish.HalfAngle), quantity.Say(g.Drill.PointSource().How("as the work wants")))
	}
	if g.taken.clearance {
		s.Find("clearance-assumed", sheet.Note, "no clearance was wished: {} is taken, {}", deg(g.wish.Clearance), quantity.Say(g.Clearance.Recommended.Source.How("as recommended for the size")))
	}
	g.Clearance.LesserTaken(s)
	g.Clearance.Contradiction(s)
	g.Chisel.Contradiction(s)
	if g.taken.semiAngle {
		s.Find("semi-angle-assumed", sheet.Note, "no semi-angle was given: {} is taken; it is the one free choice, so use the fixture's own", deg(g.wish.SemiAngle))
	}
}
