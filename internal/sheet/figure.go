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
	NearLow  // under, by no more than a bench gauge can tell
	NearHigh // over, by no more than that
	Unsure   // these gauges cannot tell
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
	case NearLow, NearHigh:
		return "borderline"
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
	// could not be computed; Missing then names the readings it needs.
	Value float64
	// Word takes the place of Value where the result is a word; where the gauges cannot
	// tell which, it names all that it may be.
	Word  string
	Kind  quantity.Kind
	Gauge quantity.Gauge // the gauge whose fineness bounds the digits shown
	Limit *handbook.Band
	Give  float64 // what a bench gauge cannot tell of Value
	// Open says that Word is for people alone: what it stands for is not known.
	Open bool
	// How the value is got, as Def says: on a sheet that is Explaining, and where there
	// is no value, to tell what is missing.
	Letter, Work, Source, Of string
	Fine                     bool
	// Shop says that the shop that uses the program has set the value.
	Shop bool
	// Exact prints all the digits: the figure is by definition, not by a gauge.
	Exact bool
	Doubt *Doubt // nil where no gauge was named
}

// Doubt is what the gauges leave in doubt of a figure.
type Doubt struct {
	// Low and High are what it lies within with a chance of 95 %, as likely below as
	// above; NaN for a word.
	Low, High float64
	Known     float64 // the share of the draws in which there was a figure
	// Unsure says that too many of the draws gave another word, or another state of
	// the limit, than the readings by themselves.
	Unsure bool
	Words  []string // what an unsure word may be, that of the readings first
	Finer  string   // what to read again, and how, where it is unsure
	Mostly string   // the reading that accounts for most of the interval, for its working
}

// Known reports whether the figure has a value.
func (f *Figure) Known() bool { return f.Word != "" || !math.IsNaN(f.Value) }

// State returns how the figure stands to its limit.
func (f *Figure) State() State {
	if f.Limit == nil || f.Word != "" {
		return Unjudged
	}
	held := Held{Value: f.Value, Give: f.Give, Band: *f.Limit}
	state := held.State()
	if state != Unjudged && f.Doubt != nil && f.Doubt.Unsure {
		return Unsure
	}
	return state
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
