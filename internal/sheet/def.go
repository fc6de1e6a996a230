package sheet

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
)

// Def defines a figure of the answer to a result R: everything about it is said
// here, and nowhere else.
type Def[R any] struct {
	// Key is the figure's name in JSON and CSV, its unit as suffix. Without one the
	// figure is a step on the way to others, or a reading that they start from: only
	// their working shows it.
	Key    string
	Letter string // what formulas of the same sheet call it
	Label  string // its name on a screen
	Kind   quantity.Kind
	Gauge  quantity.Gauge // whose fineness bounds the digits shown
	Exact  bool           // by definition: printed with all its digits
	Fine   bool           // twelve digits in formulas, where eight would cancel away

	// Value is in millimetres, radians or the kind's own unit, NaN where it cannot
	// be worked out; Word takes its place where the result is a word.
	Value func(*R) float64
	Word  func(*R) string
	Limit Limit

	// Work is the formula in letters, or AsRead. Source says where it comes from:
	// the point's geometry if nothing else does. Works gives both where they depend
	// on the result.
	Work, Source string
	Works        func(*R) (work, source string)
	// Read reports whether the figure was read, so that its Work is AsRead.
	Read func(*R) bool
	// Of is the reading, or the choice of readings, that is missing where the figure
	// is AsRead and has no value.
	Of string
	// OfWays is in place of Of where it depends on what else was read.
	OfWays func(*R) string

	GaugeOf func(*R) quantity.Gauge // in place of Gauge, where it depends on the result
	LabelOf func(*R) string         // in place of Label, likewise
	Shop    func(*R) bool           // reports whether the shop has set the value
}

// AsRead is the Work of a reading.
const AsRead = "as read"

// Geometry is the Source of what follows from the point's shape alone.
const Geometry = "derived from the point's geometry"

// Limit is the place of a limit among those that a result holds its figures
// against.
type Limit uint8

// NoLimit is the limit of a figure that is held against none.
const NoLimit Limit = 0

// Held is a value and the band it is held against. A band that is not known has
// NaN for its ends. Within Give beyond an end a bench gauge cannot tell.
type Held struct {
	Value, Give float64
	handbook.Band
}

// rounding is the part of a limit that arithmetic may be off by; no gauge shows it.
const rounding = 1e-9

// State holds the value against the band, whose ends are within.
func (h *Held) State() State {
	switch {
	case h.Value < h.Low-rounding*math.Abs(h.Low):
		if h.Value >= h.Low-rounding*math.Abs(h.Low)-h.Give {
			return NearLow
		}
		return Under
	case h.Value > h.High+rounding*math.Abs(h.High):
		if h.Value <= h.High+rounding*math.Abs(h.High)+h.Give {
			return NearHigh
		}
		return Over
	case h.Value >= math.Inf(-1) && h.Low <= h.High:
		return Within
	}
	return Unjudged
}

// Outside reports whether the value is known to break the limit.
func (h *Held) Outside() bool { return h.State().Outside() }

// Side is a side of a limit.
type Side uint8

// The sides.
const (
	Either Side = iota
	Low
	High
)

// On reports whether a figure in that state is outside its limit on the side.
func (s State) On(side Side) bool {
	return s == Under && side != High || s == Over && side != Low
}

// Near reports whether a figure in that state is past its limit on the side by no
// more than a bench gauge can tell.
func (s State) Near(side Side) bool {
	return s == NearLow && side != High || s == NearHigh && side != Low
}

// Group is figures under one heading.
type Group[R any] struct {
	Title   string
	Quiet   bool // as of a Section
	Figures []Def[R]
}

// Put adds to s the figures of groups as r has them, which does not change after; held
// are the limits that they name. Each group is a section; one without a title goes on
// with the section that is open.
func Put[R any](s *Sheet, r *R, held []Held, groups ...*Group[R]) {
	for _, g := range groups {
		opened := false
		for i := range g.Figures {
			d := &g.Figures[i]
			if d.Key == "" {
				continue // a step
			}
			if !opened && (g.Title != "" || len(s.Sections) == 0) {
				s.Open(g.Title)
				s.Sections[len(s.Sections)-1].Quiet = g.Quiet
			}
			opened = true
			d.fill(s.next(), r, held, s)
		}
	}
	if s.Drawing {
		return
	}
	s.later(func() {
		for _, g := range groups {
			for i := range g.Figures {
				if d := &g.Figures[i]; d.Key == "" {
					d.fill(s.nextStep(), r, held, s)
				}
			}
		}
	})
}

// PutHeld adds to s the figures of groups that are held against a limit, and nothing
// of their working.
func PutHeld[R any](s *Sheet, r *R, held []Held, groups ...*Group[R]) {
	for _, g := range groups {
		for i := range g.Figures {
			if d := &g.Figures[i]; d.Limit != NoLimit {
				if len(s.Sections) == 0 {
					s.Open("")
				}
				d.fill(s.next(), r, held, s)
			}
		}
	}
}

// Letters adds the figures of groups to s as steps alone, for formulas that start
// from what the sheet does not show.
func Letters[R any](s *Sheet, r *R, groups ...*Group[R]) {
	if s.Drawing {
		return
	}
	s.later(func() {
		for _, g := range groups {
			for i := range g.Figures {
				d := g.Figures[i]
				d.Key, d.Limit = "", NoLimit
				d.fill(s.nextStep(), r, nil, s)
			}
		}
	})
}

// fill makes f, which is empty, the figure that d defines, as r has it: its number and
// state alone, if s is Drawing; with how it is got, if that is asked for or will tell
// what is missing.
func (d *Def[R]) fill(f *Figure, r *R, held []Held, s *Sheet) {
	f.Key, f.Kind, f.Value = d.Key, d.Kind, math.NaN()
	if s.Declaring {
		f.Label = d.Label
		if d.Limit != NoLimit {
			f.Limit = new(handbook.Band)
		}
		return
	}
	if d.Value != nil {
		f.Value = d.Value(r)
	}
	if d.Word != nil {
		f.Word = d.Word(r)
	}
	if d.Limit != NoLimit {
		f.Limit, f.Give = held[d.Limit].limit(f.Value), held[d.Limit].Give
	}
	if s.Drawing {
		return
	}
	f.Label, f.Gauge, f.Exact = d.Label, d.Gauge, d.Exact
	if d.GaugeOf != nil {
		f.Gauge = d.GaugeOf(r)
	}
	if d.LabelOf != nil {
		f.Label = d.LabelOf(r)
	}
	f.Shop = d.Shop != nil && d.Shop(r)
	if s.Explaining || !f.Known() {
		d.work(f, r)
	}
}

// work says in f how it is got, and what it wants.
func (d *Def[R]) work(f *Figure, r *R) {
	f.Letter, f.Fine, f.Of = d.Letter, d.Fine, d.Of
	f.Work, f.Source = d.Work, d.Source
	if d.Works != nil {
		f.Work, f.Source = d.Works(r)
	}
	switch {
	case d.Read != nil && d.Read(r):
		f.Work, f.Source = AsRead, AsRead
	case f.Source == "":
		f.Source = Geometry
	}
	if d.OfWays != nil {
		f.Of = d.OfWays(r)
	}
}

// limit returns the band, nil where it is not known, bounds nothing, or nothing is held
// against it.
func (h *Held) limit(v float64) *handbook.Band {
	if math.IsInf(h.Low, -1) && math.IsInf(h.High, 1) || math.IsNaN(h.Low) || math.IsNaN(h.High) || math.IsNaN(h.Value) && !math.IsNaN(v) {
		return nil
	}
	return &h.Band
}

// Need is a value that a figure depends on and the reading that gives it.
type Need struct {
	Reading string
	Value   float64
}

// Wanted lists the readings that are still missing, "" when none is.
func Wanted(needs ...Need) string {
	out := ""
	for _, n := range needs {
		if math.IsNaN(n.Value) {
			if out != "" {
				out += " and "
			}
			out += n.Reading
		}
	}
	return out
}

// Known reports whether no value is NaN.
func Known(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) {
			return false
		}
	}
	return true
}
