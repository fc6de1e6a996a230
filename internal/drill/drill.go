package drill

import (
	"math"
	"slices"

	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
)

// Drill is one drill as it was read, in millimetres and radians. The zero value is a
// drill of which nothing is known. A copy is a drill of its own.
type Drill struct {
	Name   string // what a file calls it
	Sample bool   // the built-in sample
	Kept   bool   // one of a crib, with more readings than one command asks for
	Past   Past   // what its history tells
	Gauged bool   // gauges were named, and what they cannot tell is reckoned with
	// Units is what bare numbers were taken in and results are printed in.
	Units quantity.System
	// Book is the limits and materials in force; nil is the embedded ones.
	Book *handbook.Book

	value [readings][2]float64
	count [readings]uint8 // values: 0, 1 or 2

	// How the readings were written, in the catalogue's order: shared by copies, and
	// not changed once Resolve has filled it.
	taken []Taken
}

// Past is what the history of a drill tells beyond its readings, in millimetres;
// zero for what it does not tell.
type Past struct {
	Usual float64 // stock of its grinds, their mean
	Body  float64 // web behind a point that was thinned and not ground since
}

// System returns the units that results are printed in.
func (d *Drill) System() quantity.System {
	if d.Units == quantity.Unset {
		return quantity.Metric
	}
	return d.Units
}

// Has reports whether the reading was taken.
func (d *Drill) Has(r Reading) bool { return d.count[r] > 0 }

// Get returns a reading's first value.
func (d *Drill) Get(r Reading) (v float64, ok bool) { return d.value[r][0], d.count[r] > 0 }

// Value returns a reading's first value, NaN when it was not taken.
func (d *Drill) Value(r Reading) float64 {
	if d.count[r] > 0 {
		return d.value[r][0]
	}
	return math.NaN()
}

// Pair returns both values of a paired reading and how many were written.
func (d *Drill) Pair(r Reading) (a, b float64, n int) {
	return d.value[r][0], d.value[r][1], int(d.count[r])
}

// Values returns all values of a reading. They may be read, not changed.
func (d *Drill) Values(r Reading) []float64 { return d.value[r][:d.count[r]] }

// Put gives a reading its values; one value stands for both lips. What was given as a
// new drill's goes with the size.
func (d *Drill) Put(r Reading, values ...float64) {
	d.value[r] = [2]float64{values[0], values[len(values)-1]}
	d.count[r] = uint8(len(values))
	for other := range readings {
		if r == Size && d.AsNew(other) {
			d.Put(other, specs[other].AsNew(values[0]))
		}
	}
}

// Copy returns a drill of its own.
func (d *Drill) Copy() *Drill {
	own := *d
	return &own
}

// Move gives one lip's value of a reading, 0 or 1, another number. How many values
// were read stays: where one stands for both lips, either lip's can be moved.
func (d *Drill) Move(r Reading, lip int, to float64) { d.value[r][lip] = to }

// Drop forgets a reading.
func (d *Drill) Drop(r Reading) {
	d.value[r], d.count[r] = [2]float64{}, 0
	d.taken = slices.DeleteFunc(slices.Clone(d.taken), func(t Taken) bool { return t.Reading == r })
}

// written returns how a reading was written, nil for one that was not.
func (d *Drill) written(r Reading) *Taken {
	for i := range d.taken {
		if d.taken[i].Reading == r {
			return &d.taken[i]
		}
	}
	return nil
}

// Written returns the text that a reading was given as, "" when it was not.
func (d *Drill) Written(r Reading) string {
	if t := d.written(r); t != nil {
		return t.Text
	}
	return ""
}

// AsRead returns a reading's values as they were written, units and all; none for a
// range, or for what was put.
func (d *Drill) AsRead(r Reading) []quantity.Value {
	if t := d.written(r); t != nil && t.Swept == nil {
		return t.Values[:t.N]
	}
	return nil
}

// AsNew reports whether the reading was given as a new drill's.
func (d *Drill) AsNew(r Reading) bool {
	t := d.written(r)
	return t != nil && t.N == 1 && t.Values[0].Text == asNew
}

// Taken returns the readings as they were written, in the catalogue's order.
func (d *Drill) Taken() []Taken { return d.taken }

// Given returns what was understood as a list to begin again with.
func (d *Drill) Given() []Given {
	out := make([]Given, len(d.taken))
	for i := range d.taken {
		out[i] = d.taken[i].Given
	}
	return out
}

// At returns where a reading was given. One that was not has the place of the others:
// their file, or the flags.
func (d *Drill) At(r Reading) fault.Place {
	if t := d.written(r); t != nil && t.At != (fault.Place{}) {
		return t.At
	}
	if i := slices.IndexFunc(d.taken, func(t Taken) bool { return t.At.File != "" }); i >= 0 {
		return fault.Place{File: d.taken[i].At.File}
	}
	return fault.Place{Flag: r.String()}
}
