package drill

import (
	"math"
	"slices"
	"strings"

	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
)

// Drill is one drill as it was read. The zero value is a drill of which
// nothing is known.
type Drill struct {
	Name   string // what a file calls it
	Sample bool   // the built-in sample
	Kept   bool   // one of a crib, with more readings than one command asks for
	Past   Past   // what its history tells
	// Units is what the user asked for, for bare numbers and for printing.
	Units quantity.System
	// Book is the limits and materials in force; nil is the embedded ones.
	Book *handbook.Book

	text  [readings]string
	value [readings]*pair // nil for none; copies of a Drill share what it points to
	count [readings]uint8 // values read: 0, 1 or 2
}

// Past is what the history of a drill tells beyond its readings, in millimetres;
// zero for what it does not tell.
type Past struct {
	Usual float64 // stock of its grinds, their mean
	Body  float64 // web behind a point that was thinned and not ground since
}

// pair is what was read for the two lips, or one value. It is never changed once
// a Drill holds it, but replaced.
type pair [2]quantity.Value

// at returns the values of a reading.
func (d *Drill) at(r Reading) *pair {
	if p := d.value[r]; p != nil {
		return p
	}
	return new(pair)
}

// Error says which reading could not be taken, and why.
type Error struct {
	Reading Reading
	Err     *fault.Fault
}

// Error implements error; the reading's name stands first.
func (e *Error) Error() string { return e.Reading.String() + ": " + e.Err.Error() }

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Err }

// Set takes a reading as it was written. Nothing is understood before Resolve,
// since a bare number's unit hangs on the size.
func (d *Drill) Set(r Reading, text string) { d.text[r] = text }

// Written reports the text a reading was given as, "" when it was not.
func (d *Drill) Written(r Reading) string { return d.text[r] }

// System returns the units that bare numbers take and that results are printed
// in: those asked for, else those of the size or the wheel, else metric.
func (d *Drill) System() quantity.System {
	if d.Units != quantity.Unset {
		return d.Units
	}
	for _, r := range unitGivers {
		if s := d.at(r)[0].System; s != quantity.Unset {
			return s
		}
	}
	return quantity.Metric
}

// unitGivers are the readings whose units bare numbers take, the first that
// was read.
var unitGivers = [...]Reading{Size, Wheel}

// GivesUnits reports whether bare numbers may take their units from the reading.
func (r Reading) GivesUnits() bool { return slices.Contains(unitGivers[:], r) }

// Resolve understands all that was set. It returns every error, not only the
// first, in the catalogue's order.
func (d *Drill) Resolve() []*Error {
	var faults [readings]*fault.Fault
	for _, r := range unitGivers {
		faults[r] = d.resolve(r)
	}
	var errs []*Error
	for r := range readings {
		if d.text[r] == "" {
			continue
		}
		if !r.GivesUnits() {
			faults[r] = d.resolve(r)
		}
		if faults[r] != nil {
			errs = append(errs, &Error{r, faults[r]})
		}
	}
	return errs
}

func (d *Drill) resolve(r Reading) *fault.Fault {
	if d.text[r] == "" {
		return nil
	}
	s := &specs[r]
	d.value[r], d.count[r] = nil, 0
	switch {
	case s.Switch:
		return d.resolveSwitch(r)
	case s.Kind == quantity.Word:
		return d.resolveWord(r)
	case s.AsNew != nil && strings.EqualFold(strings.TrimSpace(d.text[r]), asNew):
		return d.resolveNew(r)
	}
	bare := d.Units
	if r != Size {
		bare = d.System()
	}
	parse := quantity.ParsePair
	if s.Signed {
		parse = quantity.ParsePairSigned
	}
	a, b, n, err := parse(s.Kind, d.text[r], bare)
	if err != nil {
		return s.aboutSpace(err, d.text[r], func(word string) bool {
			_, _, n, err := parse(s.Kind, word, bare)
			return err == nil && n == 1
		})
	}
	if n == 2 && !s.Pair {
		return quantity.Refusal(d.text[r], "one value", aboutComma(a.Text, b.Text))
	}
	d.value[r] = &pair{a, b}
	d.count[r] = uint8(n)
	return nil
}

// aboutSpace explains the readings of two lips that only a space parts.
func (s *Spec) aboutSpace(err *fault.Fault, text string, reads func(word string) bool) *fault.Fault {
	words := strings.Fields(text)
	if s.Pair && len(words) == 2 && reads(words[0]) && reads(words[1]) {
		err.Hint = "the readings of two lips go together: " + words[0] + "," + words[1]
	}
	return err
}

// asNew is the word for a new drill's.
const asNew = "new"

// resolveNew takes what the reading is on a new drill of this size.
func (d *Drill) resolveNew(r Reading) *fault.Fault {
	size, ok := d.Get(Size)
	if !ok {
		return quantity.Refusal(d.text[r], "a length", "new goes by the drill's size: give size too")
	}
	d.value[r] = &pair{{V: specs[r].AsNew(size), Text: asNew}}
	d.count[r] = 1
	return nil
}

// AsNew reports whether the reading was given as a new drill's.
func (d *Drill) AsNew(r Reading) bool { return d.Has(r) && d.at(r)[0].Text == asNew }

// aboutComma explains two values where one is wanted.
func aboutComma(first, second string) string {
	if strings.Trim(first, "0123456789") != "" || strings.IndexAny(second, "0123456789") != 0 {
		return "a comma stands only between the readings of two lips"
	}
	return "a comma is never a decimal point: write " + first + "." + second
}

func (d *Drill) resolveWord(r Reading) *fault.Fault {
	word := strings.TrimSpace(d.text[r])
	if word == "" {
		return quantity.Refusal(d.text[r], "a word", "nothing was written")
	}
	d.text[r], d.count[r] = word, 1
	return nil
}

func (d *Drill) resolveSwitch(r Reading) *fault.Fault {
	switch strings.ToLower(strings.TrimSpace(d.text[r])) {
	case "true", "yes":
		d.count[r] = 1
	case "false", "no":
	default:
		return quantity.Refusal(d.text[r], "yes or no", "")
	}
	return nil
}

// Put gives a reading a value directly, in millimetres or radians. What was
// given as a new drill's goes with the size.
func (d *Drill) Put(r Reading, values ...float64) {
	p := *d.at(r)
	for i, v := range values {
		p[i].V = v
	}
	d.value[r], d.count[r] = &p, uint8(len(values))
	for other := range readings {
		if r == Size && d.AsNew(other) {
			d.Put(other, specs[other].AsNew(p[0].V))
		}
	}
}

// Nudged returns a copy of d in which one value of a reading is larger by that
// much.
func (d *Drill) Nudged(r Reading, value int, by float64) *Drill {
	out := *d
	p := *d.at(r)
	p[value].V += by
	out.value[r] = &p
	return &out
}

// Drop forgets a reading.
func (d *Drill) Drop(r Reading) {
	d.text[r], d.value[r], d.count[r] = "", nil, 0
}

// Has reports whether the reading was taken.
func (d *Drill) Has(r Reading) bool { return d.count[r] > 0 }

// Get returns a reading's first value in millimetres or radians.
func (d *Drill) Get(r Reading) (v float64, ok bool) {
	return d.at(r)[0].V, d.count[r] > 0
}

// Value returns a reading's first value in millimetres or radians, NaN when it
// was not taken.
func (d *Drill) Value(r Reading) float64 {
	if v, ok := d.Get(r); ok {
		return v
	}
	return math.NaN()
}

// Pair returns both values of a paired reading and how many were written.
func (d *Drill) Pair(r Reading) (a, b float64, n int) {
	p := d.at(r)
	return p[0].V, p[1].V, int(d.count[r])
}

// Word returns a reading that is a word.
func (d *Drill) Word(r Reading) string {
	if d.count[r] == 0 {
		return ""
	}
	return d.text[r]
}

// Values returns a reading's values as they were read, units and all.
func (d *Drill) Values(r Reading) []quantity.Value {
	if p := d.value[r]; p != nil {
		return p[:d.count[r]]
	}
	return make([]quantity.Value, d.count[r]) // a word has no value of its own
}
