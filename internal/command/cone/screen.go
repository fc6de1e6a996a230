package cone

import (
	"math"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// screen is the setting of the fixture, the point that it grinds, and which way to turn
// what.
func (r *Result) screen(s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: s.Drill}
	if scr.Want(s, "axis_angle_deg") {
		return scr
	}
	set := r.cone.Setting()
	scr.Head = quantity.Sayf("SET AXIS {}, OFFSET {}, VERTEX {}", quantity.Set(set.AxisAngle), quantity.MM(set.Offset), quantity.MM(set.Vertex))
	scr.About += ", wheel at " + quantity.Format{Screen: true}.Text(quantity.Angle, quantity.Setting, set.SemiAngle)
	setting := func(row sheet.Row, says string) {
		if row.Kind == quantity.Angle {
			row.Gauge = quantity.Setting
		}
		scr.Show(row.Saying(says))
	}
	setting(s.Row("axis to wheel face", "cone_semi_angle_deg"), "chosen; the others follow from it")
	setting(s.Row("axis to drill axis", "axis_angle_deg"), "")
	setting(s.Row("axes miss by", "axis_offset_mm"), "")
	setting(s.Row("vertex past the axis", "vertex_distance_mm"), "away from the lip being ground")
	scr.Show(s.Row("point angle", "point_angle_deg").Saying("what it grinds"))
	scr.Show(s.Row("lip clearance", "lip_clearance_deg"))
	scr.Show(s.Row("chisel-edge angle", "chisel_angle_deg"))
	scr.Show(s.Row("chisel edge", "chisel_length_mm").HeldAs(s, "chisel_ratio", r.wish.D))
	scr.Tables, scr.Behind = append(scr.Tables, r.turnTable()), true
	scr.Note("else", "heel, thicker web, flats, and the same swing by hand: --full")
	return scr
}

// turnTable says for each figure of the point which setting raises it most for what else
// it moves.
func (r *Result) turnTable() sheet.Grid {
	g := sheet.Grid{Columns: []sheet.Column{
		{Label: "to raise", Kind: quantity.Word}, {Label: "turn this up", Kind: quantity.Word}, {Label: "by", Kind: quantity.Word},
		{Label: "", Kind: quantity.Angle, Gauge: quantity.Setting, Bare: true}, {Label: "which also moves", Kind: quantity.Word},
	}}
	knobs := r.knobs()
	f := quantity.Format{Screen: true}
	for _, x := range [...]struct {
		name, knob string
		at, other  int // columns of the outcome
		otherName  string
	}{{"point angle", "axis-angle", 2, 4, "chisel angle"}, {"clearance", "axis-offset", 3, 4, "chisel angle"}, {"chisel-edge angle", "vertex", 4, 3, "clearance"}} {
		for _, row := range knobs.Rows {
			if row[0].Word != x.knob {
				continue
			}
			by, moves, other := row[1], row[x.at].Value, row[x.other].Value
			if math.IsNaN(moves) || math.IsNaN(other) {
				continue
			}
			if moves < 0 { // turned down
				by.Word, moves, other = "-"+by.Word, -moves, -other
				if by.Inch != "" {
					by.Inch = "-" + by.Inch
				}
			}
			sign := "+"
			if other < 0 {
				sign = ""
			}
			g.Rows = append(g.Rows, []sheet.Cell{sheet.W(x.name), sheet.W(x.knob), by, sheet.V(moves),
				sheet.W(x.otherName + " " + sign + f.Text(quantity.Angle, quantity.Setting, other))})
		}
	}
	return g
}
