package spindle

import (
	"math"

	"evenlip/internal/command"
	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Thrust is evenlip thrust.
var Thrust = command.Of[work]{Info: command.Info{
	Name: "thrust", Safety: &command.AtSpindle, Short: "thrust, torque and power, and the chisel edge's part in them",
	Long: `Thrust, torque and power by the Machinery's Handbook's method, from the chisel
edge as measured or from web and angle; what the chisel edge alone takes; sharp
against dull; and this drill beside a new one. The inch equations are used where
the size is in inches, the metric ones elsewhere.`,
	Examples: `  evenlip thrust --size 7/8 --material steel-200 --chisel-length 0.1575in --feed 0.008in --rpm 350 --wear-factor 1.3 --efficiency 0.8
  evenlip thrust --size 12mm --web 2.1mm --chisel-angle 126 --feed 0.2mm --rpm 600 --drive belt`,
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.ChiselAngle, drill.ChiselLength,
		drill.Feed, drill.Rpm, drill.FlankWear, drill.WearFactor, drill.Efficiency, drill.Drive},
}, Cannot: cannot, Compute: workOf, Figures: (*work).thrustFigures, Rest: (*work).thrustRest, Declares: thrustDeclares, Screen: (*work).thrustScreen}

func (w *work) thrustFigures(s *sheet.Sheet) {
	w.letters(s, &spindleSpeed)
	sheet.Put(s, w, w.held[:], &factors, &forces, &ways, &besideNew)
}

// spindleSpeed is the speed, where no figure of the sheet is.
var spindleSpeed = group{Figures: []def{
	{Letter: "n", Label: "spindle speed", Kind: quantity.Rpm, Work: sheet.AsRead, Of: "rpm", Value: func(w *work) float64 { return w.load.Rpm }},
}}

// ways sets the thrust beside the one that a second published way gives, which knows
// no chisel edge.
var ways = group{Title: "By both published ways", Figures: []def{
	{Letter: "K", Label: "constant of the work", Kind: quantity.Number, Work: sheet.AsRead, Source: handbook.ForceConstantSource.String(), Of: noConstant,
		Value: func(w *work) float64 { return handbook.ForceConstant(w.Found.Drill.Material) }},
	{Letter: "T2", Label: "thrust by one constant", Kind: quantity.Force, Work: "570 * K * Dm * fm^0.85 * W * N", Source: handbook.ForceConstantSource.String(),
		Value: func(w *work) float64 { return w.second }, Of: noConstant},
	{Key: "thrust_low_n", Label: "thrust, from", Kind: quantity.Force, Work: "min(T, T2)", Of: noConstant,
		Value: func(w *work) float64 { return math.Min(w.force.Thrust, w.second) }},
	{Key: "thrust_high_n", Label: "thrust, to", Kind: quantity.Force, Work: "max(T, T2)", Of: noConstant,
		Value: func(w *work) float64 { return math.Max(w.force.Thrust, w.second) }},
}}

// noConstant is what is missing where the second way has no constant for the work.
const noConstant = "a material that a second way is published for"

// besideNew sets the drill beside a new one under the same load.
var besideNew = group{Title: "Beside a new drill", Figures: []def{
	{Key: "new_chisel_ratio", Label: "its chisel-edge length / D", Kind: quantity.Number, Value: (*work).newRatio, Work: "q0"},
	{Letter: "A0", Label: "factor A of a new drill", Kind: quantity.Number, Work: "(1 - q0^2) / (1 + q0)^0.2 + 3.2 * q0^1.8", Source: judge.ForceSource,
		Value: func(w *work) float64 { return cutting.FactorsOf(w.newRatio()).A }},
	{Letter: "B0", Label: "factor B of a new drill", Kind: quantity.Number, Work: "(1 - q0) / (1 + q0)^0.2 + 2.2 * q0^0.8", Source: judge.ForceSource,
		Value: func(w *work) float64 { return cutting.FactorsOf(w.newRatio()).B }},
	{Key: "new_thrust_n", Label: "its thrust", Kind: quantity.Force, Value: func(w *work) float64 { return w.at(w.newRatio()).Thrust },
		Work: "TB * B0 + TJ * q0^2", Source: judge.ForceSource},
	{Key: "thrust_over_new", Label: "thrust, this / new", Kind: quantity.Number,
		Value: func(w *work) float64 {
			return cutting.ThrustRatio(w.load.System, w.load.D, w.load.Feed, w.ratio(), w.newRatio())
		},
		Work: "(uB * B + uJ * J) / (uB * B0 + uJ * q0^2)", Source: judge.ForceSource},
	{Key: "torque_over_new", Label: "torque, this / new", Kind: quantity.Number, Value: func(w *work) float64 { return w.force.A / cutting.FactorsOf(w.newRatio()).A },
		Work: "A / A0", Source: judge.ForceSource},
}}

func (w *work) thrustRest(s *sheet.Sheet) {
	s.Cautions = cautions
	s.Grids = append(s.Grids, w.conditions())
	w.assumptions(s)
	w.driveUnused(s)
	w.edgeAssumption(s, true)
	w.loadAssumptions(s)
	if m := w.Found.Drill.Material; m != nil && m.KdHigh && !m.KdThrustSource.OfShop() {
		s.Find("thrust-high", sheet.Note, "for this work the handbook's thrust lies a third and more over two other published ways; it is reckoned with all the same, since it knows the chisel edge and errs to the safe side")
	}
	if w.ratio() > cutting.PrintedRatio {
		s.Find("beyond-table", sheet.Warn, "the handbook's table ends at a chisel edge of {} of the diameter: beyond it the forces are only carried on", quantity.Num(cutting.PrintedRatio))
	}
	if w.held[chiselLimit].Outside() && sheet.Known(w.force.ChiselShare) {
		s.Find("chisel-long", sheet.Warn, "the chisel edge takes {} of the thrust: thin the web (evenlip thin)", quantity.Of(quantity.Share, w.force.ChiselShare))
	}
}

func thrustDeclares(s *sheet.Sheet) { s.Grids = append(s.Grids, conditionsList()) }

// conditionsList is the list from sharp to dull, without its rows.
func conditionsList() sheet.Grid {
	return sheet.Grid{Key: "conditions", Title: "Sharp and dull", Columns: append([]sheet.Column{
		{Key: "condition", Label: "drill", Kind: quantity.Word}, {Key: "wear_factor", Label: "W", Kind: quantity.Number}}, loadColumns()...)}
}

// conditions is the grid of thrust and torque from sharp to dull.
func (w *work) conditions() sheet.Grid {
	g := conditionsList()
	if !sheet.Known(w.load.KdThrust, w.load.D) {
		return g
	}
	for _, f := range handbook.WearFactors {
		l := w.load
		l.Wear, l.WearTorque = f.Mid(), 0
		g.Rows = append(g.Rows, append([]sheet.Cell{sheet.W(f.Name), sheet.V(l.Wear)}, loadCells(l.With(w.force.Factors))...))
	}
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
