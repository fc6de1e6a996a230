package quantity

import (
	"bytes"
	"math"
	"strconv"
)

// appendScreen appends x, in the unit of print, as finely as a person at the bench can
// make use of: a length to a hundredth of a millimetre or a thousandth of an inch, an
// angle to half a degree, a spindle speed, a force or a torque to two figures. What
// comes off by hand is to 0.05 mm or 0.005 in. Named gauges that read finer make a
// length or an angle finer. Zeros at the end of an angle, and of a length that is over
// 20 mm or an inch, are left out.
func (f Format) appendScreen(b []byte, k Kind, g Gauge, x float64) []byte {
	decimals, trim := f.Decimals(k, g, x), false
	switch k {
	case Length:
		x, decimals, trim = f.lengthOnScreen(g, x)
	case Angle:
		step := 0.5
		switch fine := f.Gauges.Protractor * 180 / math.Pi; {
		case g == Setting:
			step = 0.1
		case fine > 0 && fine < step:
			step = fine
		}
		step /= math.Pow10(f.Finer)
		x, decimals, trim = math.Round(x/step)*step, decimalsOf(step), true
	case Feed:
		decimals = f.either(2, 3)
	case Number:
		trim = true
		if math.Abs(x) >= 1 {
			decimals = 2
		}
	case Rpm:
		if g == Setting {
			x = rounded(x, 1)
		}
		decimals = 0
	case Force, Torque, Stress, Power:
		figures := 2 + f.Finer
		x = rounded(x, figures-1)
		decimals = int(min(max(float64(figures-1)-math.Floor(math.Log10(math.Max(math.Abs(x), 1e-9))+1e-12), 0), 3))
		if x == 0 {
			decimals = 0
		}
		return strconv.AppendFloat(b, x, 'f', decimals, 64)
	case Taper:
		decimals = 3
	case Cutting:
		decimals = 0
	case Duration:
		if x >= 60 {
			x = math.Round(x/10) * 10
		}
		decimals = 0
	}
	if k != Angle && k != Length || k == Length && g != OffHand {
		decimals += f.Finer
	}
	from := len(b)
	b = strconv.AppendFloat(b, x, 'f', decimals, 64)
	if trim && bytes.IndexByte(b[from:], '.') >= 0 {
		b = bytes.TrimRight(bytes.TrimRight(b, "0"), ".")
	}
	return b
}

// lengthOnScreen returns a length, mm or in, as finely as it is shown.
func (f Format) lengthOnScreen(g Gauge, x float64) (shown float64, decimals int, trim bool) {
	inch := f.System == Inch
	long := 20.0
	if inch {
		long = 1
	}
	switch fine := f.Gauges.Indicator; {
	case g == OffHand && inch:
		return math.Round(x/0.005) * 0.005, 3, false
	case g == OffHand:
		return math.Round(x/0.05) * 0.05, 2, false
	case math.Abs(x) >= long && f.Finer == 0:
		return x, f.either(1, 2), true
	case g == Indicator && fine > 0 && fine < 0.01:
		return x, f.either(3, 4), false
	}
	return x, f.either(2, 3), false
}
