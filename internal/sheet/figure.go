// Package sheet is what a calculation hands to whoever prints it: named
// figures with unit and limit, findings, lists, and the working behind each
// figure. It knows no terminal, no file format and no formula.
package sheet

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
)

// State says how a figure stands to its limit.
type State uint8

// The states.
const (
	Unjudged State = iota // no limit, or no value
	Within
	Under
	Over
	Unsure // the limit lies inside the uncertainty: this gauge cannot tell
)

// String returns the state in the word that is printed.
func (s State) String() string {
	switch s {
	case Within:
		return "within"
	case Under:
		return "under"
	case Over:
		return "over"
	case Unsure:
		return "cannot tell"
	}
	return ""
}

// Outside reports whether the figure is known to break its limit.
func (s State) Outside() bool { return s == Under || s == Over }

// Figure is one computed result.
type Figure struct {
	Key   string // the name in JSON and CSV, its unit as suffix: "point_angle_deg"
	Label string // the name on a screen: "point angle"
	// Value is in millimetres, radians or the kind's own unit. NaN says that it
	// could not be computed; Wants then names the readings it needs.
	Value float64
	// Word takes the place of Value where the result is a word. Either says that it
	// names more than one, since the gauges cannot tell which.
	Word   string
	Either bool
	Kind   quantity.Kind
	Gauge  quantity.Gauge // the gauge whose fineness bounds the digits shown
	Limit  *handbook.Band
	Wants  string
	// How the value is got, as Def says.
	Letter, Work, Source, Of string
	Fine                     bool
	// Shop says that the shop that uses the program has set the value.
	Shop bool
	// Exact prints all the digits: the figure is by definition, not by a gauge.
	Exact bool
	// Spread is the expanded uncertainty (k = 2), in the unit of Value; zero
	// claims nothing.
	Spread float64
	Mostly string // the reading that adds most to Spread
	// Gaps are what is uncertain of Value less either end of Limit, which may follow
	// from readings as Value does; nil where no gauge was reckoned with, and Spread
	// counts.
	Gaps *Gaps
	// Otherwise is what Value would be, but for its spread, on the other side of a
	// limit that the gauges cannot tell the drill from; nil where it would be the same.
	Otherwise *float64
	// OtherHigh is what the high end of Limit would be there.
	OtherHigh *float64
	// Turns says that another figure, or the answer, is another beyond this one's
	// limit, and that the gauges cannot tell on which side of it the drill is.
	Turns   bool
	Working *Working
}

// Gaps are the uncertainties of a value less the low and the high end of its limit.
type Gaps struct{ Low, High Doubt }

// Doubt is an expanded uncertainty (k = 2), and the reading that adds most to it.
type Doubt struct {
	Spread float64
	Mostly string
}

// Known reports whether the figure has a value.
func (f *Figure) Known() bool { return f.Word != "" || !math.IsNaN(f.Value) }

// State holds the figure against its limit. With an uncertainty, a figure is
// within only if it stays within over its whole spread, and outside only if it
// stays outside (guard bands in the way of ISO 14253-1); the spread is that of the
// value less the limit.
func (f *Figure) State() State {
	if f.Limit == nil || f.Word != "" || math.IsNaN(f.Value) {
		return Unjudged
	}
	low, high := f.bounds()
	gaps := f.gaps()
	switch {
	case f.Value+gaps.Low.Spread < low:
		return Under
	case f.Value-gaps.High.Spread > high:
		return Over
	case f.Value-gaps.Low.Spread >= low && f.Value+gaps.High.Spread <= high:
		return Within
	}
	return Unsure
}

// bounds are the ends of the limit, with what rounding may take or give.
func (f *Figure) bounds() (low, high float64) {
	const rounding = 1e-9
	low, high = f.Limit.Low, f.Limit.High
	return low - rounding*math.Abs(low), high + rounding*math.Abs(high)
}

func (f *Figure) gaps() Gaps {
	if f.Gaps != nil {
		return *f.Gaps
	}
	whole := Doubt{f.Spread, f.Mostly}
	return Gaps{whole, whole}
}

// Inside reports whether the value by itself, without its spread, is on the right
// side of an end of its limit.
func (f *Figure) Inside(e End) bool {
	low, high := f.bounds()
	if e == LowEnd {
		return f.Value >= low
	}
	return f.Value <= high
}

// InDoubt reports whether the spread reaches over an end of the limit.
func (f *Figure) InDoubt(e End) bool {
	low, high := f.bounds()
	gaps := f.gaps()
	if e == LowEnd {
		return math.Abs(f.Value-low) <= gaps.Low.Spread
	}
	return math.Abs(f.Value-high) <= gaps.High.Spread
}

// Finer names the reading to take on a finer gauge where the state is Unsure: the
// one that adds most to the doubt about the end of the limit that is in doubt.
func (f *Figure) Finer() string {
	gaps := f.gaps()
	if f.InDoubt(LowEnd) {
		return gaps.Low.Mostly
	}
	return gaps.High.Mostly
}

// Working is how a figure was got: the formula in symbols, then with the
// numbers in it, ready for a pocket calculator in degree mode.
type Working struct {
	Formula string
	Numbers quantity.Text
	Source  string
}

// Severity ranks a finding.
type Severity uint8

// The severities.
const (
	Note Severity = iota
	Warn
	Stop
)

// String returns the severity's name in JSON.
func (s Severity) String() string { return [...]string{"note", "warn", "stop"}[s] }

// Finding is a remark on the drill or on what was typed.
type Finding struct {
	Code     string // kebab-case, stable: "lips-uneven"
	Severity Severity
	Text     quantity.Text
}
