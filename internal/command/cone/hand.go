package cone

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// bowFigure is how far the S of the chisel edge departs from straight.
func (v *view) bowFigure(s *sheet.Sheet) {
	bow, radius, angle := math.NaN(), math.NaN(), math.NaN()
	if v.made {
		bow, radius, angle = v.cone.ChiselBow()
	}
	v.add(s, "chisel_bow_mm", "chisel edge off straight", bow, quantity.Length, nil)
	s.Work(judge.Geometry, "r |sin(a - psi)| where it is most: there the edge is r from the axis, under a to the lip", "{} * sin({})",
		quantity.MM(radius), deg(math.Abs(angle-v.chord)))
}

// heelTurn is how far behind the corner the heel is looked at: as asked, or at
// the end of a usual land.
func (g *grind) heelTurn() float64 {
	if turn := g.Clearance.Turn; sheet.Known(turn) {
		return turn
	}
	return math.Pi - handbook.FluteAngle
}

// heelFigures are how the flank stands at the heel.
func (v *view) heelFigures(s *sheet.Sheet) {
	turn, drop, clearance := v.heelTurn(), math.NaN(), math.NaN()
	if v.made {
		drop, clearance = v.cone.Drop(v.d/2, turn), v.cone.HeelClearance(v.d/2, turn)
	}
	s.Open("At the heel")
	v.add(s, "heel_turn_deg", "heel behind the corner by", turn, quantity.Angle, nil)
	if sheet.Known(v.Clearance.Turn) {
		s.Work(given, "turn as read", "{}", deg(turn))
	} else {
		s.Work(handbook.BodySource().String(), "180 less the flute", "180 - {}", deg(handbook.FluteAngle))
	}
	v.add(s, "heel_drop_mm", "flank dropped there by", drop, quantity.Length, nil)
	v.workDrop(s, turn, drop)
	v.add(s, "heel_clearance_deg", "clearance over that turn", clearance, quantity.Angle, nil)
	s.Work(judge.Geometry, "atan(drop * 360 / (pi D * turn))", "atan({} * 360 / (pi * {} * {}))", quantity.MM(drop), quantity.MM(v.d), deg(turn))
	if v.made && !sheet.Known(drop) {
		s.Find("heel-gone", sheet.Note, "{} behind the corner this cone leaves no metal: the heel is ground away before; --heel-turn looks nearer the lip", deg(turn))
	}
}

// workDrop shows the drop: the height of the corner less that of the cone over
// the heel's place, where a t^2 + 2 b t + e = 0.
func (v *view) workDrop(s *sheet.Sheet, turn, drop float64) {
	if !s.Explaining || !sheet.Known(drop) {
		return
	}
	k := v.ground.HalfAngle
	corner := -point.AlongLip(v.d/2, v.web) / math.Tan(k)
	s.Work(judge.Geometry, "height of the corner, -x1 / tan(k), less that of the flank over the heel, x1 = (D^2 - w^2)^0.5 / 2",
		"-(({}^2 - {}^2)^0.5 / 2) / tan({}) - {}", quantity.MM(v.d), quantity.MM(v.web), deg(k), quantity.MM(corner-drop))
}

// handFigures are the same swing as a hand does it on a pedestal grinder.
func (v *view) handFigures(s *sheet.Sheet) {
	if !v.made {
		return
	}
	s.Open("By hand on a pedestal")
	h, k, n, a := v.cone.Hand(), deg(v.ground.HalfAngle), num(v.n), v.cone.Axis()
	v.add(s, "hand_face_angle_deg", "to wheel face, from above", h.Plan, quantity.Angle, nil)
	s.Work(judge.Geometry, "tan(plan) = 1 / (N cos(k))", "atan(1 / ({} * cos({})))", n, k)
	v.add(s, "hand_shank_low_deg", "shank low, lip on wheel", h.ShankLow, quantity.Angle, nil)
	s.Work(judge.Geometry, "sin(low) = g sin(k) / N: the part of the drill axis along the upright in the face, n x u", "asin({} * sin({}) / {})", num(v.slope), k, n)
	s.Add(sheet.Figure{Key: "hand_drop_per_roll", Label: "drop, per degree of roll", Value: h.Drop, Kind: quantity.Number})
	s.Work(judge.Geometry, "drop / roll = tan(phi)", "tan({})", deg(v.setting.AxisAngle))
	v.add(s, "hand_pivot_mm", "pivot behind the point", h.Pivot, quantity.Length, nil)
	s.Work(judge.Geometry, "-(d / tan(k) + az (d ax - (w / 2) ay) / (ax^2 + ay^2)), a the swing axis", "-({} / tan({}) + {} * ({} * {} - {} / 2 * {}) / ({}^2 + {}^2))",
		quantity.MM(v.setting.Vertex), k, num(a.Z), quantity.MM(v.setting.Vertex), num(a.X), quantity.MM(v.ground.Web), num(a.Y), num(a.X), num(a.Y))
}

// How wrong the hand is in the table of its faults, and over what turn the
// clearance is read.
const (
	handLow   = 2 * degree
	handMore  = 1.25
	handRoll  = 5 * degree
	handTurn  = 30 * degree
	handLeast = 1 / handMore
)

// byHand is the grid of what a hand's faults make of the point.
func (g *grind) byHand() sheet.Grid {
	grid := sheet.Grid{Key: "hand", Title: "By hand: what goes wrong when",
		Note: "read: what an indicator at the corner shows over 30° of turn; a drill rolled too soon rubs behind the lip",
		Columns: append([]sheet.Column{{Key: "fault", Label: "fault", Kind: quantity.Word}},
			sheet.Column{Key: "lip_clearance_deg", Label: "lip clearance", Kind: quantity.Angle, Gauge: quantity.Protractor},
			sheet.Column{Key: "read_clearance_deg", Label: "read", Kind: quantity.Angle, Gauge: quantity.Protractor},
			sheet.Column{Key: "chisel_angle_deg", Label: "chisel angle", Kind: quantity.Angle, Gauge: quantity.Protractor},
			sheet.Lengths("chisel_length_mm", "chisel length"))}
	add := func(fault string, values ...float64) {
		row := []sheet.Cell{sheet.W(fault)}
		for _, v := range values {
			row = append(row, sheet.V(v))
		}
		grid.Rows = append(grid.Rows, row)
	}
	r, c := g.d/2, g.cone
	ground := func(fault string, c point.Cone, err error) {
		if err != nil {
			nan := math.NaN()
			add(fault, nan, nan, nan, nan)
			return
		}
		add(fault, c.Point().Clearance, c.HeelClearance(r, handTurn), point.Obtuse(c.Chisel()), c.ChiselLength())
	}
	ground("none", c, nil)
	swung := func(fault string, change func(float64) (point.Cone, error), by float64) {
		c, err := change(by)
		ground(fault, c, err)
	}
	swung("shank 2° too low", c.ShankLowered, handLow)
	swung("shank 2° too high", c.ShankLowered, -handLow)
	swung("1/4 too much drop", c.DropTimes, handMore)
	swung("1/5 too little drop", c.DropTimes, handLeast)
	chisel := c.RolledFirstChisel(handRoll)
	add("rolled 5° too soon", 0, c.RolledFirst(r, handTurn, handRoll), point.Obtuse(chisel), point.ChiselLength(c.Point().Web, chisel))
	return grid
}
