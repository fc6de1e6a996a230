// Package quantity reads lengths, angles, feeds and drill sizes as people at a
// bench write them, and prints them back as finely as the gauge behind them
// allows. Inside the program a length is in millimetres and an angle in
// radians; this package is where they change.
package quantity

// System is a system of units.
type System uint8

// The systems; Unset stands for "nobody has said".
const (
	Unset System = iota
	Metric
	Inch
)

// Kind is what a number measures.
type Kind uint8

// The kinds.
const (
	Number   Kind = iota // a plain number: a ratio, a factor
	Length               // mm
	Size                 // mm; a length that may be written as a drill size
	Angle                // radians
	Feed                 // mm per revolution
	Taper                // mm per mm
	Share                // a part of one, shown as a percentage
	Count                // a whole number
	Rpm                  // revolutions per minute
	Cutting              // cutting speed, m/min
	Surface              // a wheel's surface speed, m/s
	Force                // N
	Torque               // N m
	Power                // kW
	Stress               // MPa
	Duration             // s
	Word                 // no number: a name, a verdict
	Switch               // no number: yes or no
	Words                // no number: any number of words, apart by blanks
	Phrases              // no number: the same, of words together, apart by semicolons

	kinds // how many there are
)

// Number reports whether a value of the kind is one.
func (k Kind) Number() bool { return k < Word }

// Gauge is what a reading was taken with.
type Gauge uint8

// The gauges.
const (
	NoGauge Gauge = iota
	Caliper
	Protractor
	Indicator
	Setting // no gauge: something to set, as finely as the usual gauges or a machine tell
	OffHand // no gauge: what comes off by hand, to 0.05 mm or 0.005 in
)
