package cutting

import (
	"math"

	"evenlip/internal/quantity"
)

// Load is a drill at work.
type Load struct {
	D      float64 // drill diameter, mm
	Feed   float64 // mm per revolution
	Chisel float64 // chisel-edge length, mm; 0 for none
	// KdThrust and KdTorque are the work-material factors for a sharp drill;
	// the same number serves inch and metric equations.
	KdThrust, KdTorque float64
	Wear               float64 // tool-wear factor W, 1 when sharp
	WearTorque         float64 // that of the torque where it differs; 0 where it does not
	Efficiency         float64 // of the machine, E, to 1; NaN when not known
	Rpm                float64 // NaN when not known
	// System picks the handbook's inch or metric equations, whose rounded
	// constants differ by up to 1 %. Unset takes the metric ones.
	System quantity.System
}

// Terms are a load's equations without the chisel-edge factors.
type Terms struct {
	// Ff, FT and FM are feed^0.8, D^0.8 and D^1.8 in the unit of the equations
	// that were used: mm or inches.
	Ff, FT, FM float64
	PerB, PerJ float64 // N: the thrust for each of the factors B and J
	PerA       float64 // N m: the torque for each of the factor A
}

// Result is what a load comes to; all but Factors is NaN for an impossible one.
type Result struct {
	Factors
	Terms
	Thrust      float64 // N
	Torque      float64 // N m
	PowerCutter float64 // kW; NaN without a speed
	PowerMotor  float64 // kW; NaN without a speed or an efficiency
	ChiselShare float64 // the chisel edge's part of the thrust, 0 to 1
}

// PoundForce is 1 lbf in N, exactly.
const PoundForce = 4.4482216152605

// equations are the constants of the handbook's equations in one system, and
// the program's unit of each of their results.
type equations struct {
	lips, chisel, torque, power float64
	length, force, moment, work float64
}

var (
	metric = equations{lips: 0.05, chisel: 0.007, torque: 0.000025, power: 9550, length: 1, force: 1, moment: 1, work: 1}
	// 1 hp is 550 ft lbf/s, exactly.
	inch = equations{lips: 2, chisel: 1, torque: 1, power: 63025, length: 25.4,
		force: PoundForce, moment: PoundForce * 0.0254, work: 0.55 * 0.3048 * PoundForce}
)

// equationsIn returns the equations of a system.
func equationsIn(system quantity.System) *equations {
	if system == quantity.Inch {
		return &inch
	}
	return &metric
}

// Result returns thrust, torque and power:
//
//	metric  T = 0.05 Kd Ff FT B W + 0.007 Kd D^2 J W  N     M = Kd Ff FM A W / 40000  N m   Pc = M N / 9550  kW
//	inch    T = 2 Kd Ff FT B W + Kd D^2 J W           lb    M = Kd Ff FM A W          in lb  Pc = M N / 63025 hp
//	        Ff = feed^0.8, FT = D^0.8, FM = D^1.8, A, B, J from [FactorsOf] at c/D, Pm = Pc / E
//
// and the chisel edge's part of the thrust: its part of B and the whole of the J
// term. Domain: d and feed above zero, 0 <= chisel < d, factors of the work above zero,
// W and the torque's own 1 or more, 0 < E <= 1, N not negative; NaN outside. Source:
// Machinery's Handbook, 31st ed., pp. 1152-1153, equations (1) to (7).
func (l Load) Result() Result { return l.With(FactorsOf(l.Chisel / l.D)) }

// With is [Load.Result] with chisel-edge factors from elsewhere; the chisel-edge length
// is not looked at.
func (l Load) With(f Factors) Result {
	if !l.possible() {
		nan := math.NaN()
		return Result{Factors: f, Thrust: nan, Torque: nan, PowerCutter: nan, PowerMotor: nan, ChiselShare: nan}
	}
	r := Result{Factors: f, Terms: l.Terms()}
	r.Thrust, r.Torque = r.thrust(f), r.PerA*f.A
	r.ChiselShare = 1 - r.PerB*f.Lips/r.Thrust
	e := equationsIn(l.System)
	r.PowerCutter = r.Torque / e.moment * l.Rpm / e.power * e.work
	r.PowerMotor = r.PowerCutter / l.Efficiency
	return r
}

// OverPilot is [Load.Result] over a pilot hole at least as wide as the web, mm:
// the chisel edge's part is gone, and a pilot wider than the chisel edge takes
// that much of the lips out of the cut as well. Compare its thrust with that of
// [Load.Result]. Domain: that of Result, and 0 < pilot < d; NaN outside. The lips'
// terms are those of [FactorsOverPilot]; that the chisel edge then removes nothing is
// common practice.
func (l Load) OverPilot(pilot float64) Result {
	if !(pilot > 0) || !(l.Chisel >= 0) {
		pilot = math.NaN()
	}
	return l.With(FactorsOverPilot(max(pilot, l.Chisel) / l.D))
}

// Terms returns the terms of the equations of [Load.Result], NaN where one of their
// readings is.
func (l Load) Terms() Terms {
	e := equationsIn(l.System)
	d := l.D / e.length
	t := Terms{Ff: math.Pow(l.Feed/e.length, 0.8), FT: math.Pow(d, 0.8), FM: math.Pow(d, 1.8)}
	t.PerB = e.lips * l.KdThrust * t.Ff * t.FT * l.Wear * e.force
	t.PerJ = e.chisel * l.KdThrust * d * d * l.Wear * e.force
	wear := l.Wear
	if l.WearTorque != 0 {
		wear = l.WearTorque
	}
	t.PerA = e.torque * l.KdTorque * t.Ff * t.FM * wear * e.moment
	return t
}

// thrust returns the thrust with those factors.
func (t *Terms) thrust(f Factors) float64 { return t.PerB*f.B + t.PerJ*f.J }

// ThrustRatio returns the thrust at the chisel ratio q1 over that at q0, for a
// drill of diameter d mm at a feed in mm per revolution: independent of the
// work material and of wear. By the inch equations it differs from that by the
// metric ones in the third digit. NaN unless d and feed are above zero and both
// ratios in 0 to 1. Source: the Machinery's Handbook's thrust equation.
func ThrustRatio(system quantity.System, d, feed, q1, q0 float64) float64 {
	if !positive(d) || !positive(feed) {
		return math.NaN()
	}
	t := Load{D: d, Feed: feed, KdThrust: 1, Wear: 1, System: system}.Terms()
	return t.thrust(FactorsOf(q1)) / t.thrust(FactorsOf(q0))
}

// possible reports whether everything but the chisel edge makes sense.
func (l Load) possible() bool {
	return positive(l.D) && positive(l.Feed) && positive(l.KdThrust) && positive(l.KdTorque) &&
		l.Wear >= 1 && finite(l.Wear) && (l.WearTorque == 0 || l.WearTorque >= 1 && finite(l.WearTorque)) &&
		(l.Efficiency > 0 && l.Efficiency <= 1 || math.IsNaN(l.Efficiency)) && (notNegative(l.Rpm) || math.IsNaN(l.Rpm))
}
