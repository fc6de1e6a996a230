package cone

import (
	"math"

	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// turn is how far a knob is moved, either way, to find what it does, as a part
// of the step that is shown: near enough for a slope, far enough for a float64.
const turn = 1.0 / 256

func declares(s *sheet.Sheet) { s.Grids = append(s.Grids, knobsList(), websList(), handList()) }

// knobsList is the list of what each setting does, without its rows.
func knobsList() sheet.Grid {
	return sheet.Grid{Key: "knobs", Title: "What each setting changes, the others left alone",
		Note: "semi-angle and axis angle make the point angle, the offset the clearance, the vertex the chisel",
		Columns: append([]sheet.Column{
			{Key: "knob", Label: "setting", Kind: quantity.Word}, {Key: "per", Label: "per", Kind: quantity.Word}}, outcomes("change_")...)}
}

// knobs is the list of what a degree or a tenth of a millimetre on each knob
// does to the point, the others left alone.
func (r *Result) knobs() sheet.Grid {
	grid := knobsList()
	degrees, tenths := sheet.W("1°"), sheet.W("0.1 mm")
	tenths.Inch = "0.0039 in"
	up, down := r.cone.Setting(), r.cone.Setting()
	for _, k := range [...]struct {
		name     string
		per      sheet.Cell
		step     float64
		up, down *float64
	}{
		{"semi-angle", degrees, degree, &up.SemiAngle, &down.SemiAngle},
		{"axis-angle", degrees, degree, &up.AxisAngle, &down.AxisAngle},
		{"axis-offset", tenths, 0.1, &up.Offset, &down.Offset},
		{"vertex", tenths, 0.1, &up.Vertex, &down.Vertex},
	} {
		at := *k.up
		*k.up, *k.down = at+k.step*turn, at-k.step*turn
		a, b := r.outcome(up, r.wish.Web), r.outcome(down, r.wish.Web)
		*k.up, *k.down = at, at
		for i := range a {
			a[i] = (a[i] - b[i]) / (2 * turn)
		}
		grid.Rows = append(grid.Rows, row([]sheet.Cell{sheet.W(k.name), k.per}, a[:]...))
	}
	return grid
}

// outcomes are the columns of what a setting gives, lead before each name.
func outcomes(lead string) []sheet.Column {
	return []sheet.Column{
		angle(lead+"point_angle_deg", "point angle"), angle(lead+"lip_clearance_deg", "lip clearance"),
		angle(lead+"chisel_angle_deg", "chisel angle"), sheet.Lengths(lead+"chisel_length_mm", "chisel length"),
	}
}

func angle(key, label string) sheet.Column {
	return sheet.Column{Key: key, Label: label, Kind: quantity.Angle, Gauge: quantity.Protractor}
}

// row adds the cells of numbers to those of words.
func row(cells []sheet.Cell, values ...float64) []sheet.Cell {
	for _, v := range values {
		cells = append(cells, sheet.V(v))
	}
	return cells
}

// outcome is what a setting gives on a web, in the order of outcomes; NaN where
// it leaves no point.
func (r *Result) outcome(st point.Setting, web float64) [4]float64 {
	c, err := st.Point(r.wish.D, web)
	if err != nil {
		nan := math.NaN()
		return [4]float64{nan, nan, nan, nan}
	}
	return [4]float64{2 * halfAngle(c), clearance(c), point.Obtuse(c.Chisel()), c.ChiselLength()}
}

// websList is the list of what thicker webs do, without its rows.
func websList() sheet.Grid {
	return sheet.Grid{Key: "webs", Title: "The same setting on a thicker web", Note: "what the drill is like some grinds on, with the usual web taper", Columns: append([]sheet.Column{
		sheet.Lengths("ground_off_mm", "ground off, about"),
		{Key: "web_ratio", Label: "web / D", Kind: quantity.Number},
		sheet.Lengths("web_mm", "web")}, outcomes("")...)}
}

// thickerWebs is the list of what the same setting does to this drill as grind
// after grind thickens its web.
func (r *Result) thickerWebs() sheet.Grid {
	grid := websList()
	for _, more := range [...]float64{1, 1.1, 1.25, 1.5} {
		web := r.wish.Web * more
		if web >= r.wish.D {
			break
		}
		out := r.outcome(r.cone.Setting(), web)
		grid.Rows = append(grid.Rows, row(row(nil, (web-r.wish.Web)/r.Web.Taper, web/r.wish.D, web), out[:]...))
	}
	return grid
}

// How wrong the hand is in the list of its faults, and over what turn the
// clearance is read.
const (
	handLow   = 2 * degree
	handMore  = 1.25
	handRoll  = 5 * degree
	handTurn  = 30 * degree
	handLeast = 1 / handMore
)

// handList is the list of a hand's faults, without its rows.
func handList() sheet.Grid {
	return sheet.Grid{Key: "hand", Title: "By hand: what goes wrong when",
		Note: "read: what an indicator at the corner shows over 30° of turn; a drill rolled too soon rubs behind the lip",
		Columns: []sheet.Column{{Key: "fault", Label: "fault", Kind: quantity.Word},
			angle("lip_clearance_deg", "lip clearance"), angle("read_clearance_deg", "read"), angle("chisel_angle_deg", "chisel angle"), sheet.Lengths("chisel_length_mm", "chisel length")}}
}

// byHand is the list of what a hand's faults make of the point.
func (r *Result) byHand() sheet.Grid {
	grid := handList()
	add := func(fault string, values ...float64) {
		grid.Rows = append(grid.Rows, row([]sheet.Cell{sheet.W(fault)}, values...))
	}
	radius := r.wish.D / 2
	swung := func(fault string, c point.Cone, err error) {
		if err != nil {
			nan := math.NaN()
			add(fault, nan, nan, nan, nan)
			return
		}
		add(fault, clearance(c), c.HeelClearance(radius, handTurn), point.Obtuse(c.Chisel()), c.ChiselLength())
	}
	changed := func(fault string, change func(float64) (point.Cone, error), by float64) {
		c, err := change(by)
		swung(fault, c, err)
	}
	c := r.cone
	swung("none", c, nil)
	changed("shank 2° too low", c.ShankLowered, handLow)
	changed("shank 2° too high", c.ShankLowered, -handLow)
	changed("1/4 too much drop", c.DropTimes, handMore)
	changed("1/5 too little drop", c.DropTimes, handLeast)
	chisel := c.RolledFirstChisel(handRoll)
	add("rolled 5° too soon", 0, c.RolledFirst(radius, handTurn, handRoll), point.Obtuse(chisel), point.ChiselLength(r.wish.Web, chisel))
	return grid
}
