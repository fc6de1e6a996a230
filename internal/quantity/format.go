package quantity

import (
	"math"
	"strconv"
)

// Gauges is what the shop's gauges can resolve: the caliper and the indicator
// in millimetres, the protractor in radians. A field that is not above zero
// stands for the usual one.
type Gauges struct {
	Caliper, Protractor, Indicator float64
}

// DefaultGauges are the usual ones: a caliper and an indicator that read to
// 0.01 mm, and a protractor that is read to half a degree. Source: common
// practice.
var DefaultGauges = Gauges{
	Caliper:    0.01,
	Protractor: 0.5 * math.Pi / 180,
	Indicator:  0.01,
}

// Format prints quantities in a system of units, as finely as the gauges
// behind them allow and no finer.
type Format struct {
	System System // Unset prints metric
	Gauges Gauges
	Finer  int // decimals beyond what the gauges allow
	// Bench rounds a spindle speed to set to three significant figures: no machine
	// is set closer.
	Bench bool
	// Screen prints numbers as finely as they can be ground or set, and no finer: what
	// a person reads at the bench.
	Screen bool
}

// none stands where there is no number to show.
const none = "-"

// significant is the number of figures to which a computed force is shown: the
// material factors behind it are no better.
const significant = 3

// Digits prints v to n significant digits, without an exponent.
func Digits(v float64, n int) string {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', n, 64), 64)
	if err != nil || math.IsNaN(v) {
		return none
	}
	if math.Abs(r) < 1e-12 {
		r = 0
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}

// InSystem returns v, in millimetres, radians or the kind's own unit, in the
// unit that f prints: millimetres or inches, degrees, per cent, N or lbf.
func (f Format) InSystem(k Kind, v float64) float64 {
	sc := f.shown(k)
	return v * sc.div / sc.mul
}

// Unit returns the unit that f prints a kind in; empty for a plain number.
func (f Format) Unit(k Kind) string { return f.shown(k).unit }

// shown returns the unit of print of a kind. It is the unit that a bare number
// is taken to be in, except that a share is shown as a percentage.
func (f Format) shown(k Kind) scale {
	switch {
	case f.Screen && k == Feed:
		k = Length // a turn: the sentence says so
	case f.Screen && k == Taper:
		return scale{mul: 1, div: 1}
	case f.Screen && k == Force && f.System != Inch:
		return scale{"kN", "kN", Metric, 1000, 1}
	}
	switch k {
	case Share:
		return scale{"%", "%", Unset, 1, 100}
	case Duration:
		return scale{"s", "s", Unset, 1, 1}
	}
	if sc, ok := assumed(k, f.System); ok {
		return sc
	}
	return scale{mul: 1, div: 1}
}

// Number returns the digits of v without a unit: "1.86". Forces, torques and
// stresses are rounded to three significant figures. A NaN, and any value of a kind
// that is no number, gives "-"; an infinity gives "∞".
func (f Format) Number(k Kind, g Gauge, v float64) string {
	var room [32]byte
	return string(f.appendNumber(room[:0], k, g, v))
}

func (f Format) appendNumber(b []byte, k Kind, g Gauge, v float64) []byte {
	switch {
	case math.IsNaN(v) || !k.Number():
		return append(b, none...)
	case math.IsInf(v, 1):
		return append(b, "∞"...)
	case math.IsInf(v, -1):
		return append(b, "-∞"...)
	}
	x := tidy(f.InSystem(k, v))
	if !f.Screen && (k.threeFigures() || f.Bench && k == Rpm && g == Setting) && f.Finer == 0 {
		x = toFigures(x)
	}
	from := len(b)
	if f.Screen {
		b = f.appendScreen(b, k, g, x)
	} else {
		b = strconv.AppendFloat(b, x, 'f', f.Decimals(k, g, v)+f.Finer, 64)
	}
	if b[from] == '-' && isZero(string(b[from:])) {
		b = append(b[:from], b[from+1:]...)
	}
	return b
}

// Text returns v with its unit: "1.86 mm", "118.0°", "54 %"; "-" for a NaN.
func (f Format) Text(k Kind, g Gauge, v float64) string {
	var room [32]byte
	return string(f.AppendText(room[:0], k, g, v))
}

// AppendText appends what Text returns.
func (f Format) AppendText(b []byte, k Kind, g Gauge, v float64) []byte {
	from := len(b)
	b = f.appendNumber(b, k, g, v)
	unit := f.Unit(k)
	if unit == "" || string(b[from:]) == none {
		return b
	}
	if unit != degree {
		b = append(b, ' ')
	}
	return append(b, unit...)
}

// Decimals returns how many decimals v is shown with. A length or an angle has
// as many as the resolution of its gauge needs: 0.01 mm two, in inches four;
// half a degree one. A gauge that does not measure the kind counts as the
// caliper or the protractor. Forces, torques and stresses have what three significant
// figures leave, other kinds a fixed number.
func (f Format) Decimals(k Kind, g Gauge, v float64) int {
	switch k {
	case Length, Size, Angle:
		if k == Size && g == NoGauge {
			return f.either(3, 4) // a nominal size is exact
		}
		return decimalsOf(f.InSystem(k, f.resolution(k, g)))
	case Force, Torque, Stress:
		return decimalsOfFigures(f.InSystem(k, v))
	case Number:
		return 3
	case Feed:
		return f.either(3, 4)
	case Taper:
		return 4
	case Cutting, Surface:
		return f.either(1, 0)
	case Power:
		return 2
	}
	return 0
}

// threeFigures reports whether a kind is a force, or follows from one.
func (k Kind) threeFigures() bool { return k == Force || k == Torque || k == Stress }

func (f Format) either(metric, inch int) int {
	if f.System == Inch {
		return inch
	}
	return metric
}

// resolution returns what the gauge behind a length or an angle resolves.
func (f Format) resolution(k Kind, g Gauge) float64 {
	switch {
	case k == Angle && g == Setting:
		return min(DefaultGauges.Protractor, orDefault(f.Gauges.Protractor, DefaultGauges.Protractor))
	case k == Angle:
		return orDefault(f.Gauges.Protractor, DefaultGauges.Protractor)
	case g == Indicator:
		return orDefault(f.Gauges.Indicator, DefaultGauges.Indicator)
	}
	return orDefault(f.Gauges.Caliper, DefaultGauges.Caliper)
}

func orDefault(resolution, usual float64) float64 {
	if resolution > 0 && !math.IsInf(resolution, 1) {
		return resolution
	}
	return usual
}

// mostDecimals is as fine as any number is shown.
const mostDecimals = 6

// decimalsOf returns the number of decimals at which the last one is no
// coarser than a resolution. The slack keeps a resolution of exactly 0.01, less
// a rounding error, at two.
func decimalsOf(resolution float64) int {
	n := 0
	for last := 1.0; n < mostDecimals && last > resolution*(1+2e-9); last /= 10 {
		n++
	}
	return n
}

// decimalsOfFigures returns the decimals that three significant figures of x
// need.
func decimalsOfFigures(x float64) int {
	x = math.Abs(toFigures(x))
	if x == 0 || math.IsInf(x, 1) || math.IsNaN(x) {
		return 0
	}
	// Above a power of ten by less than a float64's error still counts as one.
	exponent := math.Floor(math.Log10(x) + 1e-12)
	return int(min(max(significant-1-exponent, 0), mostDecimals))
}

// toFigures rounds x to three significant figures.
func toFigures(x float64) float64 {
	return rounded(x, significant-1)
}

// Export returns v as JSON and CSV carry it: an angle in degrees, everything
// else in the kind's own unit, whatever system is printed.
func Export(k Kind, v float64) float64 {
	switch k {
	case Angle:
		return round(v * 180 / math.Pi)
	case Length, Size, Feed:
		return round(v)
	}
	return v
}

// round takes off what changing units adds in the last digits, so that 60 degrees
// do not come out as 59.99999999999999, nor 7/8 in as 22.224999999999998 mm.
func round(v float64) float64 {
	const places = 1e12
	if math.Abs(v) > 1e3 || math.IsNaN(v) {
		return v
	}
	return math.Round(v*places) / places
}

// tidy takes off what changing units adds in the last digits, so that 3/32 in
// rounds to 0.0938 and not, by way of 2.38125 mm, to 0.0937.
func tidy(x float64) float64 {
	return rounded(x, 13)
}

// rounded returns x with so many digits behind the first one.
func rounded(x float64, digits int) float64 {
	var room [32]byte
	// The text of a finite number always reads back.
	out, _ := strconv.ParseFloat(string(strconv.AppendFloat(room[:0], x, 'e', digits, 64)), 64)
	return out
}
