package quantity

import (
	"math"
	"strings"
)

// degree is the one unit that is printed without a space before it.
const degree = "°"

// scale is one way of writing a unit, and what the unit is worth in the kind's
// own unit: mul/div. Two whole factors keep the conversion as exact as a
// float64 can be.
type scale struct {
	name     string // as typed, upper and lower case alike
	unit     string // as echoed
	system   System
	mul, div float64
}

func (s scale) of(f float64) float64 { return f * s.mul / s.div }

// Exact by definition: the international inch and foot, the pound-force
// (0.45359237 kg at 9.80665 m/s2) and the horsepower of 550 foot-pounds a second.
const (
	mmPerInch   = 25.4
	mPerFoot    = 0.3048
	newtonLbf   = 4.4482216152605
	kWPerHP     = 550 * mPerFoot * newtonLbf / 1000
	nmPerInLb   = newtonLbf * mmPerInch / 1000
	newtonKgf   = 9.80665
	secPerMin   = 60
	thouInch    = 1000
	degHalfTurn = 180
)

var lengths = []scale{
	{"mm", "mm", Metric, 1, 1},
	{"in", "in", Inch, mmPerInch, 1},
	{"thou", "thou", Inch, mmPerInch, thouInch},
	{`"`, "in", Inch, mmPerInch, 1},
	{"um", "µm", Metric, 1, 1000},
	{"cm", "cm", Metric, 10, 1},
	{"inch", "in", Inch, mmPerInch, 1},
	{"inches", "in", Inch, mmPerInch, 1},
	{"in.", "in", Inch, mmPerInch, 1},
	{"mil", "thou", Inch, mmPerInch, thouInch},
	{"mils", "thou", Inch, mmPerInch, thouInch},
	{"micron", "µm", Metric, 1, 1000},
	{"microns", "µm", Metric, 1, 1000},
}

var plainNumber = []scale{{"", "", Unset, 1, 1}}

// scales lists how each kind may be written. The first entry is what a bare
// number means, the second what it means under inches if that is an inch unit.
var scales = [kinds][]scale{
	Number: plainNumber,
	Length: lengths,
	Size:   lengths,
	Angle: {
		{degree, degree, Unset, math.Pi, degHalfTurn},
		{"deg", degree, Unset, math.Pi, degHalfTurn},
		{"degree", degree, Unset, math.Pi, degHalfTurn},
		{"degrees", degree, Unset, math.Pi, degHalfTurn},
		{"rad", "rad", Unset, 1, 1},
	},
	Feed: {
		{"mm/rev", "mm/rev", Metric, 1, 1},
		{"in/rev", "in/rev", Inch, mmPerInch, 1},
		{"mm", "mm/rev", Metric, 1, 1},
		{"in", "in/rev", Inch, mmPerInch, 1},
		{"mm/r", "mm/rev", Metric, 1, 1},
		{"ipr", "in/rev", Inch, mmPerInch, 1},
		{`"`, "in/rev", Inch, mmPerInch, 1},
		{`"/rev`, "in/rev", Inch, mmPerInch, 1},
		{"thou", "thou/rev", Inch, mmPerInch, thouInch},
		{"thou/rev", "thou/rev", Inch, mmPerInch, thouInch},
		{"um", "µm/rev", Metric, 1, 1000},
		{"um/rev", "µm/rev", Metric, 1, 1000},
	},
	Taper: {
		{"mm/mm", "mm/mm", Metric, 1, 1},
		{"in/in", "in/in", Inch, 1, 1},
		{"in/ft", "in/ft", Inch, 1, 12},
		{"mm/m", "mm/m", Metric, 1, 1000},
		{"mm/100mm", "mm/100mm", Metric, 1, 100},
		{"%", "%", Unset, 1, 100},
	},
	Share: {
		{"", "", Unset, 1, 1},
		{"%", "%", Unset, 1, 100},
	},
	Count: plainNumber,
	Rpm: {
		{"rpm", "rpm", Unset, 1, 1},
		{"rev/min", "rpm", Unset, 1, 1},
		{"r/min", "rpm", Unset, 1, 1},
		{"/min", "rpm", Unset, 1, 1},
	},
	Cutting: {
		{"m/min", "m/min", Metric, 1, 1},
		{"ft/min", "ft/min", Inch, mPerFoot, 1},
		{"sfm", "ft/min", Inch, mPerFoot, 1},
		{"sfpm", "ft/min", Inch, mPerFoot, 1},
		{"fpm", "ft/min", Inch, mPerFoot, 1},
		{"m/s", "m/s", Metric, secPerMin, 1},
	},
	Surface: {
		{"m/s", "m/s", Metric, 1, 1},
		{"ft/min", "ft/min", Inch, mPerFoot, secPerMin},
		{"sfm", "ft/min", Inch, mPerFoot, secPerMin},
		{"sfpm", "ft/min", Inch, mPerFoot, secPerMin},
		{"fpm", "ft/min", Inch, mPerFoot, secPerMin},
		{"m/min", "m/min", Metric, 1, secPerMin},
	},
	Force: {
		{"N", "N", Metric, 1, 1},
		{"lbf", "lbf", Inch, newtonLbf, 1},
		{"lb", "lbf", Inch, newtonLbf, 1},
		{"kN", "kN", Metric, 1000, 1},
		{"daN", "daN", Metric, 10, 1},
		{"kgf", "kgf", Metric, newtonKgf, 1},
	},
	Torque: {
		{"N m", "N m", Metric, 1, 1},
		{"in lb", "in lb", Inch, nmPerInLb, 1},
	},
	Power: {
		{"kW", "kW", Metric, 1, 1},
		{"hp", "hp", Inch, kWPerHP, 1},
	},
	Stress: {
		{"MPa", "MPa", Metric, 1, 1},
		{"psi", "psi", Inch, newtonLbf, mmPerInch * mmPerInch},
	},
}

// find looks a unit up among those of a kind.
func find(kind Kind, name string) (scale, bool) {
	for _, sc := range scales[kind] {
		if len(sc.name) == len(name) && strings.EqualFold(sc.name, name) {
			return sc, true
		}
	}
	return scale{}, false
}

// assumed returns the unit that a bare number of a kind is in.
func assumed(kind Kind, bare System) (scale, bool) {
	list := scales[kind]
	if len(list) == 0 {
		return scale{}, false
	}
	if bare == Inch && len(list) > 1 && list[1].system == Inch {
		return list[1], true
	}
	return list[0], true
}

// takesFraction reports whether a kind may be written as 1/2 or 1-1/4.
func (k Kind) takesFraction() bool {
	switch k {
	case Number, Length, Size, Angle, Feed, Taper:
		return true
	}
	return false
}

// takesSign reports whether a negative value of a kind can mean something.
func (k Kind) takesSign() bool {
	switch k {
	case Number, Length, Angle, Taper:
		return true
	}
	return false
}
