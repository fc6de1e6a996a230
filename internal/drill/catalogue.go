// Package drill holds what was read off one drill: the catalogue of readings, and
// the way from text to numbers. A source, such as a file or the flags, returns a list
// of [Given]; [Read.Resolve] understands it, wherever it came from, by the same rules.
package drill

import (
	"slices"

	"evenlip/internal/quantity"
)

// Reading names one entry of the catalogue.
type Reading uint8

// The readings. The order is the order of help pages, forms and echoes.
const (
	Size Reading = iota
	Material
	Web
	SecondWeb
	SecondWebAt
	WebTaper
	ChiselAngle
	ChiselLength
	PointAngle
	LipAngle
	LipLength
	LipHeight
	Clearance
	HeelDrop
	HeelTurn
	Helix
	FlutePoint
	LipFlat
	Flute
	FlankWear
	CornerWear
	MarginWear
	LipChip
	Cracked
	Remove
	Feed
	Rpm
	Depth

	// What a drill is to do at the spindle.
	WearFactor
	Efficiency
	Drive
	ShankDiameter
	Pilot
	ToChiselRatio
	ToWeb
	ToThrust

	// The grinder's wheel.
	Wheel
	WornTo
	WheelRpm
	MarkedSpeed
	MarkedRpm
	RestGap
	TongueGap

	// What a regrind is to keep to.
	CleanUp
	Every
	Length
	BackTaper
	LeastDiameter

	// A swing fixture, and places on a lip.
	SemiAngle
	Vertex
	AxisAngle
	AxisOffset
	At

	readings // how many there are
)

// What a list of what was read tells beside the readings.
const (
	Name  Reading = readings + iota // what a file calls the drill
	Units                           // mm or in, of bare numbers
	entries
)

// Group parts the readings by what they are about.
type Group uint8

// The groups. Point is the drill and its point, and the hole it is wanted for.
const (
	Point   Group = iota
	Spindle       // what a drill is to do at the spindle
	Grinder       // the grinder's wheel
	Plan          // what a regrind is to keep to
	Fixture       // a swing fixture
	Lip           // places on a lip
)

// Means is what a reading is taken with at the bench.
type Means uint8

// The means, in the order in which a bench takes them up.
const (
	ForTheJob Means = iota // it is wanted or set, and read off no drill
	ByEye                  // at the most a magnifier and a scale
	ByCaliper
	ByGauge // for angles, or a protractor
	ByIndicator
	ByMarking // the maker's, on wheel or machine
	AtFixture // its scales
)

// AllMeans lists the means in the order of a help page: what was read, then the job.
var AllMeans = [...]Means{ByEye, ByCaliper, ByGauge, ByIndicator, ByMarking, AtFixture, ForTheJob}

// String returns the word for it in a help page.
func (m Means) String() string {
	return [...]string{ForTheJob: "the job", ByEye: "by eye", ByCaliper: "caliper", ByGauge: "gauge", ByIndicator: "indicator",
		ByMarking: "marking", AtFixture: "fixture"}[m]
}

// Gauge reports whether it is a gauge that a bench may or may not have.
func (m Means) Gauge() bool { return m == ByCaliper || m == ByGauge || m == ByIndicator }

// Ground is what a grind does to a reading.
type Ground uint8

// What a grind does.
const (
	Stays      Ground = iota
	ReadAnew          // is another one after
	WornAway          // is taken as ground away
	TakenOff          // is done
	Shortens          // is less by the stock; nothing left of it, the grind cannot be
	WearsOff          // is less by the stock; nothing left of it, it goes
	Thickens          // grows with the web
	KeepsPlace        // is nearer to the point by the stock
)

// Domain is what a reading lies between, without the ends, in the kind's own unit,
// and why. The zero Domain bounds nothing.
type Domain struct {
	Low, High float64
	Why, Hint string
}

// Spec is all there is to know of a reading.
type Spec struct {
	Name   string // the flag's name and the key in files
	Kind   quantity.Kind
	Gauge  quantity.Gauge
	Pair   bool // one value a lip: "A,B", or "A" for both
	Signed bool // may be negative
	Switch bool // yes or no
	Apart  bool // one value alone is what the lips differ by, and not both lips'
	Meant  bool // nominal, wished or set, and not taken with a gauge
	Group  Group
	By     Means  // what it is taken with at the bench
	Typed  string // what may be typed, as an example
	Asked  uint8  // its place among the questions at the bench, from 1; 0: on request alone

	Help  string    // one line, for the flag
	How   string    // how to take it at the bench
	Usual [2]string // a sane range, in words; then in inches, where that is another
	// Keys are the names of its values in JSON, one or two.
	Keys [2]string
	Both [1]string // of a pair, the name of one value that stands for both lips
	// AsNew is what the word "new" stands for on a drill of diameter d, mm; nil
	// where it is not taken.
	AsNew func(d float64) float64

	Domain    Domain
	AboveZero bool
	UnderSize bool // less than the drill's diameter
	// Cannot returns what else of it cannot be, beside what was read with it; a zero
	// text where it can.
	Cannot func(*Drill) (why quantity.Text, hint string)
	// Moot reports whether it would tell nothing beside what was read.
	Moot   func(*Drill) bool
	Ground Ground
}

// Spec returns the reading's entry in the catalogue.
func (r Reading) Spec() *Spec { return &specs[r] }

// String returns the flag's name.
func (r Reading) String() string {
	switch r {
	case Name:
		return "name"
	case Units:
		return "units"
	}
	return specs[r].Name
}

// KeysOf returns the names in JSON of n values that were read.
func (r Reading) KeysOf(n int) []string {
	if n == 1 && specs[r].Pair {
		return specs[r].Both[:]
	}
	return specs[r].Keys[:n]
}

// All returns every reading in the catalogue's order.
func All() []Reading {
	all := make([]Reading, readings)
	for i := range all {
		all[i] = Reading(i)
	}
	return all
}

// Of returns the readings of some groups, in the catalogue's order.
func Of(groups ...Group) []Reading {
	return slices.DeleteFunc(All(), func(r Reading) bool { return !slices.Contains(groups, specs[r].Group) })
}

// ForBench parts readings into those that are asked for at the bench, in its order,
// and the rest.
func ForBench(of []Reading) (usual, rest []Reading) {
	for _, r := range of {
		if specs[r].Asked == 0 {
			rest = append(rest, r)
		} else {
			usual = append(usual, r)
		}
	}
	slices.SortFunc(usual, func(a, b Reading) int { return int(specs[a].Asked) - int(specs[b].Asked) })
	return usual, rest
}

// Find returns the reading of that name.
func Find(name string) (Reading, bool) {
	r, ok := find(name)
	return r, ok && r < readings
}
