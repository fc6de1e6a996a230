package spindle

import (
	"math"

	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Thrust is the sheet of thrust, torque and power.
func Thrust(d *drill.Drill, explain bool) *sheet.Sheet {
	w := workOf(d)
	s := sheet.New("thrust", explain)
	s.Cautions = drillingCautions
	judge.Plausible(d, s)
	res := w.result()
	s.Open("Thrust, torque and power")
	w.edgeFigures(s)
	factorFigures(s, w.ratio(), res.Factors, sheet.Wanted(sheet.Need{Reading: "size", Value: w.Drill.D}))
	w.conditionFigures(s)
	forceFigures(s, &w.load, res, w.wants())
	w.newFigures(s, res)
	s.Grids = append(s.Grids, w.conditions(), w.methods(res))
	w.assumptions(s)
	w.driveUnused(s)
	w.lengthAssumption(s)
	w.loadAssumptions(s)
	w.chiselFindings(s, res)
	return s
}

// edgeFigures adds the chisel edge that is reckoned with.
func (w *work) edgeFigures(s *sheet.Sheet) {
	e, d := &w.edge, w.Drill.D
	size := sheet.Wanted(sheet.Need{Reading: "size", Value: e.length})
	s.Add(sheet.Figure{Key: "chisel_length_mm", Label: "chisel-edge length", Value: e.length, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: size})
	switch {
	case e.from == asNew:
		s.Work(handbook.StandardChiselSource().String(), "c = q D, q a new drill's", "{} * {}", num(w.ratio()), quantity.MM(d))
	case w.Chisel.LengthRead:
		s.Work("as read", "c as read", "{}", quantity.MM(e.length))
	default:
		s.Work(judge.Geometry, "c = w / sin(psi)", "{} / sin({})", quantity.MM(e.web), quantity.Rad(e.acute))
	}
	f := sheet.Figure{Key: "chisel_ratio", Label: "chisel-edge length / D", Value: w.ratio(), Kind: quantity.Number,
		Wants: sheet.Wanted(sheet.Need{Reading: "size", Value: d})}
	if sheet.Known(d) {
		f.Limit = w.Limit(judge.ChiselRatioLimit)
	}
	s.Add(f)
	s.Work(judge.Geometry, "q = c / D", "{} / {}", quantity.MM(e.length), quantity.MM(d))
}

// conditionFigures adds the factors of work and wear.
func (w *work) conditionFigures(s *sheet.Sheet) {
	var thrust, torque *handbook.Source
	if m := w.Drill.Material; m != nil {
		thrust, torque = m.KdThrustSource, m.KdTorqueSource
	}
	for _, f := range [...]struct {
		key, label string
		value      float64
		source     *handbook.Source
	}{{"kd_thrust", "work factor Kd, thrust", w.load.KdThrust, thrust}, {"kd_torque", "work factor Kd, torque", w.load.KdTorque, torque}} {
		s.Add(sheet.Figure{Key: f.key, Label: f.label, Value: f.value, Kind: quantity.Count, Shop: f.source.OfShop(), Wants: w.wants()})
		if sheet.Known(f.value) {
			s.Work(f.source.String(), "Kd "+f.source.How("as published")+", for a sharp drill", "{}", num(f.value))
		}
	}
	s.Add(sheet.Figure{Key: "wear_factor", Label: "tool-wear factor W", Value: w.load.Wear, Kind: quantity.Number})
	source := "as read"
	if w.wearAssumed {
		normal, _ := handbook.WearFactor("normal")
		source = normal.Source.String()
	}
	s.Work(source, "W", "{}", num(w.load.Wear))
}

// newFigures sets the drill beside a new one under the same load.
func (w *work) newFigures(s *sheet.Sheet, res cutting.Result) {
	d := w.Drill.D
	q0 := newEdge(d).length / d
	f0 := cutting.FactorsOf(q0)
	was := w.with(f0)
	size := sheet.Wanted(sheet.Need{Reading: "size", Value: d})
	s.Open("Beside a new drill")
	s.Add(sheet.Figure{Key: "new_chisel_ratio", Label: "its chisel-edge length / D", Value: q0, Kind: quantity.Number, Wants: size})
	s.Work(newChiselSource(), "q0 = max(0.18, w0 / D / sin(60)), w0 a new drill's web",
		"max({}, {} / {} / sin(60))", num(handbook.StandardChiselRatio), quantity.MM(handbook.NewWeb(d)), quantity.MM(d))
	s.Add(sheet.Figure{Key: "new_thrust_n", Label: "its thrust", Value: was.Thrust, Kind: quantity.Force, Wants: w.wants()})
	workThrust(s, &w.load, f0)
	s.Add(sheet.Figure{Key: "thrust_ratio", Label: "thrust, this / new", Value: cutting.ThrustRatio(d, w.Drill.Feed, w.ratio(), q0), Kind: quantity.Number, Wants: size})
	judge.WorkThrustRatio(s, d, w.Drill.Feed, w.ratio(), q0)
	s.Add(sheet.Figure{Key: "torque_ratio", Label: "torque, this / new", Value: res.A / f0.A, Kind: quantity.Number, Wants: size})
	s.Work(handbook.ForceSource().String(), "M / M0 = A / A0", "{} / {}", num(res.A), num(f0.A))
}

// conditions is the grid of thrust and torque from sharp to dull.
func (w *work) conditions() sheet.Grid {
	g := sheet.Grid{Key: "conditions", Title: "Sharp and dull", Columns: append([]sheet.Column{
		{Key: "condition", Label: "drill", Kind: quantity.Word}, {Key: "wear_factor", Label: "W", Kind: quantity.Number}}, loadColumns()...)}
	if !sheet.Known(w.load.KdThrust, w.Drill.D) {
		return g
	}
	for _, f := range handbook.WearFactors() {
		l := w.load
		l.Wear = f.Mid()
		g.Rows = append(g.Rows, append([]sheet.Cell{sheet.W(f.Name), sheet.V(l.Wear)}, loadCells(resultOf(l, cutting.FactorsOf(w.ratio())))...))
	}
	return g
}

// methods is the grid of the two ways to the chisel-edge factors: for who checks
// the method, not for who drills.
func (w *work) methods(res cutting.Result) sheet.Grid {
	g := sheet.Grid{Key: "methods", Title: "By the handbook's printed table beside it", Explained: true,
		Columns: append([]sheet.Column{{Key: "factors", Label: "factors", Kind: quantity.Word},
			{Key: "factor_a", Label: "A", Kind: quantity.Number}, {Key: "factor_b", Label: "B", Kind: quantity.Number}, {Key: "factor_j", Label: "J", Kind: quantity.Number}},
			loadColumns()...)}
	a, b, j, ok := handbook.PrintedFactors(w.ratio())
	if !ok || !sheet.Known(res.Thrust) {
		return g
	}
	row := func(name string, r cutting.Result) {
		g.Rows = append(g.Rows, append([]sheet.Cell{sheet.W(name), sheet.V(r.A), sheet.V(r.B), sheet.V(r.J)}, loadCells(r)...))
	}
	row("closed", res)
	row("printed", w.with(cutting.Factors{A: a, B: b, J: j, Lips: math.Min(res.Lips, b)}))
	g.Note = "Table 7 is rounded, J most of all, and is read here in a straight line between rows; the closed forms behind it are what evenlip goes by."
	return g
}

func loadColumns() []sheet.Column {
	return []sheet.Column{
		{Key: "thrust_n", Label: "thrust", Kind: quantity.Force}, {Key: "torque_nm", Label: "torque", Kind: quantity.Torque},
		{Key: "power_cutter_kw", Label: "cutter", Kind: quantity.Power}, {Key: "power_motor_kw", Label: "motor", Kind: quantity.Power},
	}
}

func loadCells(r cutting.Result) []sheet.Cell {
	return []sheet.Cell{sheet.V(r.Thrust), sheet.V(r.Torque), sheet.V(r.PowerCutter), sheet.V(r.PowerMotor)}
}

// chiselFindings warns of a chisel edge that costs too much.
func (w *work) chiselFindings(s *sheet.Sheet, res cutting.Result) {
	if w.ratio() > cutting.PrintedRatio {
		s.Find("beyond-table", sheet.Warn, "the handbook's table ends at a chisel edge of {} of the diameter: beyond it the forces are only carried on", num(cutting.PrintedRatio))
	}
	if w.ratio() > w.Limit(judge.ChiselRatioLimit).High*(1+1e-9) && sheet.Known(res.ChiselShare) {
		s.Find("chisel-long", sheet.Warn, "the chisel edge takes {} of the thrust: thin the web (evenlip thin)", quantity.Of(quantity.Share, res.ChiselShare))
	}
}
