package spindle

import (
	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// equations are the handbook's equations of one system as they are shown. The
// inch ones end in the unit of their result, which reads 1 in inches and its
// metric worth where the answer is metric, as in JSON.
type equations struct {
	length                 float64 // mm
	thrust, torque, power  equation
	share                  equation
	force, moment, working quantity.Arg
	inch                   bool
}

type equation struct{ formula, numbers string }

var metricEquations = equations{
	length: 1,
	thrust: equation{"T = 0.05 Kd f^0.8 D^0.8 B W + 0.007 Kd D^2 J W, f and D in mm", "0.05 * {} * {}^0.8 * {}^0.8 * {} * {} + 0.007 * {} * {}^2 * {} * {}"},
	torque: equation{"M = Kd f^0.8 D^1.8 A W / 40000, f and D in mm", "{} * {}^0.8 * {}^1.8 * {} * {} / 40000"},
	power:  equation{"Pc = M N / 9550", "{} * {} / 9550"},
	share: equation{"share = 1 - 0.05 f^0.8 D^0.8 L / (0.05 f^0.8 D^0.8 B + 0.007 D^2 J), L = (1 - q)/(1 + q)^0.2, f and D in mm",
		"100 * (1 - 0.05 * {}^0.8 * {}^0.8 * {} / (0.05 * {}^0.8 * {}^0.8 * {} + 0.007 * {}^2 * {}))"},
}

// 1 lbf, 1 in lb and 1 hp in N, N m and kW.
const (
	poundForce = 4.4482216152605
	inchPound  = poundForce * 0.0254
	horsepower = 0.55 * 0.3048 * poundForce
)

var inchEquations = equations{
	length: handbook.InchMM, inch: true,
	thrust: equation{"T = (2 Kd f^0.8 D^0.8 B W + Kd D^2 J W) * 1 lb, f and D in inches", "(2 * {} * {}^0.8 * {}^0.8 * {} * {} + {} * {}^2 * {} * {}) * {}"},
	torque: equation{"M = Kd f^0.8 D^1.8 A W * 1 in lb, f and D in inches", "{} * {}^0.8 * {}^1.8 * {} * {} * {}"},
	power:  equation{"Pc = M N / 63025 * 1 hp, M in in lb", "{} * {} / 63025 * {}"},
	share: equation{"share = 1 - 2 f^0.8 D^0.8 L / (2 f^0.8 D^0.8 B + D^2 J), L = (1 - q)/(1 + q)^0.2, f and D in inches",
		"100 * (1 - 2 * {}^0.8 * {}^0.8 * {} / (2 * {}^0.8 * {}^0.8 * {} + {}^2 * {}))"},
	force:   quantity.Of(quantity.Force, poundForce),
	moment:  quantity.Of(quantity.Torque, inchPound),
	working: quantity.Of(quantity.Power, horsepower),
}

func equationsOf(l *cutting.Load) *equations {
	if l.System == quantity.Inch {
		return &inchEquations
	}
	return &metricEquations
}

func num(v float64) quantity.Arg { return quantity.Num(v) }

// work leaves the working with the figure added to s last.
func (e *equations) work(s *sheet.Sheet, q equation, unit quantity.Arg, args ...quantity.Arg) {
	if e.inch && unit != (quantity.Arg{}) {
		args = append(args, unit)
	}
	s.Work(handbook.ForceSource().String(), q.formula, q.numbers, args...)
}

func workThrust(s *sheet.Sheet, l *cutting.Load, f cutting.Factors) {
	e := equationsOf(l)
	feed, d := num(l.Feed/e.length), num(l.D/e.length)
	e.work(s, e.thrust, e.force, num(l.KdThrust), feed, d, num(f.B), num(l.Wear), num(l.KdThrust), d, num(f.J), num(l.Wear))
}

func workTorque(s *sheet.Sheet, l *cutting.Load, f cutting.Factors) {
	e := equationsOf(l)
	e.work(s, e.torque, e.moment, num(l.KdTorque), num(l.Feed/e.length), num(l.D/e.length), num(f.A), num(l.Wear))
}

func workPower(s *sheet.Sheet, l *cutting.Load, torque float64) {
	e := equationsOf(l)
	if e.inch {
		torque /= inchPound
	}
	e.work(s, e.power, e.working, num(torque), num(l.Rpm))
}

func workShare(s *sheet.Sheet, l *cutting.Load, f cutting.Factors) {
	e := equationsOf(l)
	feed, d := num(l.Feed/e.length), num(l.D/e.length)
	e.work(s, e.share, quantity.Arg{}, feed, d, num(f.Lips), feed, d, num(f.B), d, num(f.J))
}

// factorFigures adds the chisel-edge factors to s.
func factorFigures(s *sheet.Sheet, q float64, f cutting.Factors, wants string) {
	source := handbook.ForceSource().String() + ", closed forms of its Table 7"
	s.Add(sheet.Figure{Key: "factor_a", Label: "factor A, of torque", Value: f.A, Kind: quantity.Number, Wants: wants})
	s.Work(source, "A = (1 - q^2)/(1 + q)^0.2 + 3.2 q^1.8", "(1 - {}^2) / (1 + {})^0.2 + 3.2 * {}^1.8", num(q), num(q), num(q))
	s.Add(sheet.Figure{Key: "factor_b", Label: "factor B, of thrust", Value: f.B, Kind: quantity.Number, Wants: wants})
	s.Work(source, "B = (1 - q)/(1 + q)^0.2 + 2.2 q^0.8", "(1 - {}) / (1 + {})^0.2 + 2.2 * {}^0.8", num(q), num(q), num(q))
	s.Add(sheet.Figure{Key: "factor_j", Label: "factor J, of indenting", Value: f.J, Kind: quantity.Number, Wants: wants})
	s.Work(source, "J = q^2", "{}^2", num(q))
}

// forceFigures adds thrust, torque and power under a load to s.
func forceFigures(s *sheet.Sheet, l *cutting.Load, res cutting.Result, wants string) {
	s.Add(sheet.Figure{Key: "thrust_n", Label: "thrust", Value: res.Thrust, Kind: quantity.Force, Wants: wants})
	workThrust(s, l, res.Factors)
	s.Add(sheet.Figure{Key: "chisel_share", Label: "chisel edge's share", Value: res.ChiselShare, Kind: quantity.Share, Wants: wants})
	workShare(s, l, res.Factors)
	s.Add(sheet.Figure{Key: "torque_nm", Label: "torque", Value: res.Torque, Kind: quantity.Torque, Wants: wants})
	workTorque(s, l, res.Factors)
	powerFigures(s, l, res, wants)
}

func powerFigures(s *sheet.Sheet, l *cutting.Load, res cutting.Result, wants string) {
	cutter, motor := wants, wants
	if wants == "" {
		cutter = sheet.Wanted(sheet.Need{Reading: "rpm", Value: l.Rpm})
		motor = sheet.Wanted(sheet.Need{Reading: "rpm", Value: l.Rpm}, sheet.Need{Reading: "efficiency or drive", Value: l.Efficiency})
	}
	s.Add(sheet.Figure{Key: "power_cutter_kw", Label: "power at the cutter", Value: res.PowerCutter, Kind: quantity.Power, Wants: cutter})
	workPower(s, l, res.Torque)
	s.Add(sheet.Figure{Key: "power_motor_kw", Label: "power at the motor", Value: res.PowerMotor, Kind: quantity.Power, Wants: motor})
	s.Work(handbook.ForceSource().String(), "Pm = Pc / E", "{} / {}", quantity.Of(quantity.Power, res.PowerCutter), num(l.Efficiency))
}
