package spindle

import (
	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

type (
	def   = sheet.Def[work]
	group = sheet.Group[work]
)

// 1 in lb and 1 hp in N m and kW.
const (
	inchPound  = cutting.PoundForce * 0.0254
	horsepower = 0.55 * 0.3048 * cutting.PoundForce
)

// noForce is what is missing where the work has no force factor.
const noForce = "a material whose force factor is published"

// letters puts what the formulas of every sheet start from, and as steps the figures
// of groups.
func (w *work) letters(s *sheet.Sheet, groups ...*group) {
	sheet.Letters(s, &w.Found, &judge.Letters, &judge.ThrustLetters)
	sheet.Letters(s, w, &units, &edgeLetters, &newEdge, &loadLetters)
	sheet.Letters(s, w, groups...)
}

// units are readings in the units of an equation, and one of each unit of a result.
var units = group{Figures: []def{
	{Letter: "VBm", Label: "worn land, mm", Kind: quantity.Number, Work: sheet.AsRead, Of: "flank-wear", Value: func(w *work) float64 { return w.land }},
	{Letter: "Nm", Label: "one newton metre", Kind: quantity.Torque, Work: sheet.AsRead, Value: func(*work) float64 { return 1 }},
	{Letter: "inlb", Label: "one inch pound", Kind: quantity.Torque, Work: sheet.AsRead, Value: func(*work) float64 { return inchPound }},
	{Letter: "kW", Label: "one kilowatt", Kind: quantity.Power, Work: sheet.AsRead, Value: func(*work) float64 { return 1 }},
	{Letter: "hp", Label: "one horsepower", Kind: quantity.Power, Work: sheet.AsRead, Value: func(*work) float64 { return horsepower }},
}}

// edgeLetters are web and angle of the chisel edge that is reckoned with.
var edgeLetters = group{Figures: []def{
	{Letter: "w", Label: "web", Kind: quantity.Length, Gauge: quantity.Caliper, Value: func(w *work) float64 { return w.edge.web },
		Works: func(w *work) (work, source string) {
			switch {
			case w.Found.Chisel.WebRead:
				return sheet.AsRead, sheet.AsRead
			case w.edge.from == asNew:
				return "w0", "a new drill's, for want of a reading"
			}
			return "c * sin(psi)", ""
		}},
	{Letter: "psi", Label: "chisel-edge angle, acute", Kind: quantity.Angle, Gauge: quantity.Protractor, Value: func(w *work) float64 { return w.edge.acute },
		Works: func(w *work) (work, source string) {
			switch {
			case w.Found.Chisel.AngleRead:
				return sheet.AsRead, sheet.AsRead
			case w.edge.from == angleAssumed:
				return sheet.AsRead, handbook.HandbookChiselSource.String()
			}
			return "asin(w / c)", ""
		}},
}}

// newEdge defines the chisel edge of a new drill.
var newEdge = group{Figures: []def{
	{Letter: "x", Label: "diameter in inches, from 1/8 to 1", Kind: quantity.Number, Work: "max(0.125, min(1, Dm / 25.4))",
		Value: func(w *work) float64 { return max(0.125, min(1, w.load.D/handbook.InchMM)) }},
	{Letter: "w0", Label: "web of a new drill", Kind: quantity.Length, Gauge: quantity.Caliper, Value: func(w *work) float64 { return handbook.NewWeb(w.load.D) },
		Works: func(*work) (work, source string) {
			return "0.12 * D * x^(-0.245)", handbook.NewWebSource.String()
		}},
	{Letter: "qs", Label: "chisel edge / D of a standard drill", Kind: quantity.Number, Work: sheet.AsRead, Value: func(*work) float64 { return handbook.StandardChiselRatio }},
	{Letter: "q0", Label: "chisel edge / D of a new drill", Kind: quantity.Number, Value: (*work).newRatio,
		Works: func(*work) (work, source string) {
			return "max(qs, w0 / D / sin(60))", handbook.StandardChiselSource.String() + "; " + handbook.NewWebSource.String()
		}},
}}

// loadLetters are the handbook's equations without the chisel-edge factors.
var loadLetters = group{Figures: []def{
	{Letter: "TB", Label: "thrust for B = 1", Kind: quantity.Force, Value: func(w *work) float64 { return w.load.Terms().PerB },
		Work: "uB * Kd * W", Source: judge.ForceSource},
	{Letter: "TJ", Label: "thrust for J = 1", Kind: quantity.Force, Value: func(w *work) float64 { return w.load.Terms().PerJ },
		Work: "uJ * Kd * W", Source: judge.ForceSource},
	{Letter: "MA", Label: "torque for A = 1", Kind: quantity.Torque, Value: func(w *work) float64 { return w.load.Terms().PerA },
		Works: func(w *work) (work, source string) {
			if w.inch() {
				return "Km * fi^0.8 * Di^1.8 * Wm * inlb", judge.ForceSource
			}
			return "Km * fm^0.8 * Dm^1.8 * Wm / 40000 * Nm", judge.ForceSource
		}},
}}

// factors defines the chisel edge that is reckoned with, its factors, and those of
// work and wear.
var factors = group{Title: "Thrust, torque and power", Figures: []def{
	{Key: "chisel_length_mm", Letter: "c", Label: "chisel-edge length", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(w *work) float64 { return w.edge.length },
		Works: func(w *work) (work, source string) {
			switch {
			case w.edge.from == asNew:
				return "q0 * D", handbook.StandardChiselSource.String()
			case w.Found.Chisel.LengthRead:
				return sheet.AsRead, sheet.AsRead
			}
			return "w / sin(psi)", ""
		}},
	{Key: "chisel_ratio", Letter: "q", Label: "chisel-edge length / D", Kind: quantity.Number, Limit: chiselLimit, Value: (*work).ratio, Work: "c / D"},
	{Key: "factor_a", Letter: "A", Label: "factor A, of torque", Kind: quantity.Number, Work: "(1 - q^2) / (1 + q)^0.2 + 3.2 * q^1.8", Source: judge.ForceSource,
		Value: func(w *work) float64 { return w.force.A }},
	{Letter: "L", Label: "the lips' part of factor B", Kind: quantity.Number, Work: "(1 - q) / (1 + q)^0.2", Source: judge.ForceSource,
		Value: func(w *work) float64 { return w.force.Lips }},
	{Key: "factor_b", Letter: "B", Label: "factor B, of thrust", Kind: quantity.Number, Work: "L + 2.2 * q^0.8", Source: judge.ForceSource,
		Value: func(w *work) float64 { return w.force.B }},
	{Key: "factor_j", Letter: "J", Label: "factor J, of indenting", Kind: quantity.Number, Work: "q^2", Source: judge.ForceSource,
		Value: func(w *work) float64 { return w.force.J }},
	{Key: "kd_thrust", Letter: "Kd", Label: "work factor Kd, thrust", Kind: quantity.Count, Of: noForce, Value: func(w *work) float64 { return w.load.KdThrust },
		Works: func(w *work) (work, source string) { return factorRead(w.kdThrust()) },
		Shop:  func(w *work) bool { return w.kdThrust().OfShop() }},
	{Key: "kd_torque", Letter: "Km", Label: "work factor Kd, torque", Kind: quantity.Count, Of: noForce, Value: func(w *work) float64 { return w.load.KdTorque },
		Works: func(w *work) (work, source string) { return factorRead(w.kdTorque()) },
		Shop:  func(w *work) bool { return w.kdTorque().OfShop() }},
	{Key: "wear_factor_thrust", Letter: "W", Label: "tool-wear factor, thrust", Kind: quantity.Number, Value: func(w *work) float64 { return w.load.Wear },
		Works: func(w *work) (work, source string) {
			switch {
			case sheet.Known(w.land):
				return "1 + 0.1242 * VBm / (0.325 * fm + 0.00755 + 0.0022 * Dm)", handbook.WornLandSource.String()
			case w.wearTaken:
				return factorRead(handbook.NormalWear.Source)
			}
			return sheet.AsRead, sheet.AsRead
		}},
	{Key: "wear_factor_torque", Letter: "Wm", Label: "tool-wear factor, torque", Kind: quantity.Number, Value: (*work).wearTorque,
		Works: func(w *work) (work, source string) {
			if sheet.Known(w.land) {
				return "1 + 0.0487 * VBm / (0.125 * fm + 0.00289)", handbook.WornLandSource.String()
			}
			return "W", ""
		}},
}}

func factorRead(source *handbook.Source) (work, from string) {
	if source == nil {
		return sheet.AsRead, sheet.AsRead
	}
	return sheet.AsRead, source.String()
}

// wearTorque is the torque's wear factor.
func (w *work) wearTorque() float64 {
	if w.load.WearTorque != 0 {
		return w.load.WearTorque
	}
	return w.load.Wear
}

// kdThrust and kdTorque are where the work's factors come from; nil where it has none.
func (w *work) kdThrust() *handbook.Source {
	if m := w.Found.Drill.Material; m != nil {
		return m.KdThrustSource
	}
	return nil
}

func (w *work) kdTorque() *handbook.Source {
	if m := w.Found.Drill.Material; m != nil {
		return m.KdTorqueSource
	}
	return nil
}

// thrustWork and torqueWork are thrust and torque with the whole chisel edge at work.
const (
	thrustWork = "TB * B + TJ * J"
	torqueWork = "MA * A"
)

// forces defines thrust, torque and power.
var forces = group{Figures: []def{
	{Key: "thrust_n", Letter: "T", Label: "thrust", Kind: quantity.Force, Value: func(w *work) float64 { return w.told(w.force.Thrust) },
		Work: thrustWork, Source: judge.ForceSource, OfWays: edgeMissing},
	{Key: "chisel_share", Label: "chisel edge's share", Kind: quantity.Share, Value: func(w *work) float64 { return w.told(w.force.ChiselShare) },
		Work: "1 - TB * L / (" + thrustWork + ")", Source: judge.ForceSource, OfWays: edgeMissing},
	{Key: "torque_nm", Letter: "M", Label: "torque", Kind: quantity.Torque, Value: func(w *work) float64 { return w.told(w.force.Torque) },
		Work: torqueWork, Source: judge.ForceSource, OfWays: edgeMissing},
	{Key: "power_cutter_kw", Letter: "Pc", Label: "power at the cutter", Kind: quantity.Power, Value: func(w *work) float64 { return w.told(w.force.PowerCutter) },
		Works: func(w *work) (work, source string) {
			if w.inch() {
				return "M / inlb * n / 63025 * hp", judge.ForceSource
			}
			return "M / Nm * n / 9550 * kW", judge.ForceSource
		}, OfWays: edgeMissing},
	{Key: "power_motor_kw", Label: "power at the motor", Kind: quantity.Power, Value: func(w *work) float64 { return w.told(w.force.PowerMotor) },
		Work: "Pc / E", Source: judge.ForceSource, OfWays: edgeMissing},
	{Letter: "E", Label: "efficiency of the machine", Kind: quantity.Number, Work: sheet.AsRead, Of: "efficiency or drive", Value: func(w *work) float64 { return w.load.Efficiency }},
}}

// edgeMissing asks for the chisel edge where nothing else is missing of a force.
func edgeMissing(w *work) string {
	if w.edgeWanted && sheet.Known(w.force.Thrust) {
		return "web or chisel-length"
	}
	return ""
}
