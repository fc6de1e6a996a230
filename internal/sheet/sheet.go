package sheet

import (
	"math"
	"sync"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
)

// Sheet is the whole answer of one calculation on one drill.
type Sheet struct {
	Command  string
	Title    string // "12 mm drill"
	Origin   Origin
	Sample   bool // the built-in sample: every title says so
	Inputs   []Input
	Sections []Section
	Grids    []Grid
	Findings []Finding
	Verdict  *Verdict
	// Found is the figures of the drill as it was found, whose limits an answer rests on.
	Found *Sheet
	// Answer is what was asked for in one sentence, for the end of a long table.
	Answer   *quantity.Text
	Unfit    bool     // not fit, or in doubt, though the sheet has no verdict of its own
	Wants    []string // what is to be read before the answer can be had, where there is none
	Cautions []string
	Gauged   bool // gauges were named, so figures carry their uncertainty
	Shop     bool // a shop's own settings are in force, and what it has set is marked
	// First is the sheet whose working is shown in place of this one's: of the
	// answers or the places that are its rows, the first.
	First *Sheet
	// Drill names what the answer is about: "12 mm drill"; From says where it comes
	// from: "M120-2 of crib.yaml".
	Drill, From string
	// Again returns how a command line gives the same drill to another command, or of a
	// whole crib the drill of that id, and whether it can be given.
	Again func(command, id string) (args string, can bool)
	// Picture draws the drill in so many columns, for a screen that is wide enough to
	// have it beside the figures.
	Picture func(columns int, ascii bool) []string
	// Screen makes what a person is shown first; nil where there is but the whole.
	Screen func() *Screen

	// Explaining says that the working of each figure is asked for.
	Explaining bool
	// Extra are sources that no limit or working names.
	Extra []*handbook.Source

	// Drawing keeps numbers and states alone: the sheet is one of many whose figures
	// are only counted.
	Drawing bool

	// Declaring makes the sheet one of definitions: its figures and lists are those that
	// answers of a command have, and without values. Answers that are Partial may lack some.
	Declaring, Partial bool

	args  []quantity.Arg // of the findings and the answer
	steps []Figure       // on the way to others, and readings that formulas start from
	puts  []func()       // put more steps, once any is asked for
}

// Origin says which drill or list a sheet is about, as far as it is known.
type Origin struct {
	ID   string // of a drill in a crib
	Name string // what the drill or the crib is called
	File string
	Line int // from 1
}

// Input is one reading as it was taken.
type Input struct {
	Name   string // the flag's name
	Text   string // as written
	Kind   quantity.Kind
	Keys   []string // the JSON names of the values, unit as suffix
	Values []quantity.Value
	Word   string
	// Echo is how it is shown where Values do not tell, as for a word.
	Echo string
}

// Shown returns the reading as it was taken, the unit spelled out.
func (in *Input) Shown() string {
	if in.Echo != "" {
		return in.Echo
	}
	var out string
	for i, v := range in.Values {
		if i > 0 {
			out += ", "
		}
		out += v.Echo()
	}
	return out
}

// Section groups figures under a heading.
type Section struct {
	Title   string
	Figures []Figure
	// Quiet keeps the figures out of a table, where a grid shows them; their
	// working, JSON, CSV and plain have them.
	Quiet bool
}

// Verdict is the one word on the drill, and the codes of the findings behind it.
type Verdict struct {
	Word    string
	Reasons []string
	// Hidden are the lighter findings that a heavier reason stands before, by its
	// code: they are told where the heavier one is in doubt.
	Hidden map[string]Finding
	// Missing says what must be read before there can be a verdict.
	Missing []string
	// What the draws leave of it, where gauges were named: the share of them that gave
	// the word of the readings by themselves; where that is too small, so that Word is
	// empty, all the words with their shares, and what to read again on which gauge.
	Share float64
	Words []Counted
	Finer string
}

// Counted is a word and the share of the draws that gave it.
type Counted struct {
	Word  string
	Share float64
}

// Column is one column of a Grid.
type Column struct {
	Key, Label string
	Kind       quantity.Kind
	Gauge      quantity.Gauge
	// Bare leaves the unit out of the head, where the title has it.
	Bare bool
	// Sometimes says that only some answers have the column.
	Sometimes bool
	// Plot draws a bar beside each number in a table.
	Plot bool
}

// Lengths makes a column of lengths, mm, as fine as a caliper.
func Lengths(key, label string) Column {
	return Column{Key: key, Label: label, Kind: quantity.Length, Gauge: quantity.Caliper}
}

// Grid is a list of like rows: a schedule, the places along a lip.
type Grid struct {
	Key     string // the JSON name of the list
	Title   string
	Note    string // a line under the title
	Columns []Column
	Rows    [][]Cell
	// Main makes the grid, and not the figures, the rows of CSV and plain.
	Main bool
	// Turned makes a table show each row as a column, under what the first
	// column says.
	Turned bool
	// Lead is how many columns, from the first, a table repeats when the grid is
	// too wide for it and goes on underneath.
	Lead int
	// Explained keeps the grid out of a table that shows no working.
	Explained bool
	// Limits returns the sheet whose limits a row rests on, for JSON; the caller frees
	// it. May be nil.
	Limits func(row int) *Sheet
	// Brief lists the rows that a table shows, where it shows not all.
	Brief []int
}

// Cell is one entry of a Grid; NaN shows as a dash. An empty word is not known.
type Cell struct {
	Value float64
	Word  string
	Inch  string // takes the place of Word where inches are printed for people
	Shop  bool   // as in Figure
}

// In returns the cell's word as a reader of those units wants it.
func (c Cell) In(s quantity.System) string {
	if s == quantity.Inch && c.Inch != "" {
		return c.Inch
	}
	return c.Word
}

// CellOf makes the cell of a figure.
func CellOf(f *Figure) Cell {
	return Cell{Value: f.Value, Word: f.Word, Shop: f.Shop}
}

// V makes the cell of a number, in the unit of its column's kind.
func V(v float64) Cell { return Cell{Value: v} }

// W makes the cell of a word.
func W(s string) Cell { return Cell{Value: math.NaN(), Word: s} }

// usual is how many figures a section has room for from the start: few have
// more, and to grow to it would copy them four times.
const usual = 8

// Open starts a section.
func (s *Sheet) Open(title string) {
	n := len(s.Sections)
	if n == cap(s.Sections) {
		s.Sections = append(s.Sections, Section{Figures: make([]Figure, 0, usual)})
	}
	s.Sections = s.Sections[:n+1]
	s.Sections[n] = Section{Title: title, Figures: s.Sections[n].Figures[:0]}
}

// Add puts a figure into the section that was opened last.
func (s *Sheet) Add(f Figure) { *s.next() = f }

// next returns an empty figure of the section that was opened last.
func (s *Sheet) next() *Figure {
	if len(s.Sections) == 0 {
		s.Open("")
	}
	return grow(&s.Sections[len(s.Sections)-1].Figures)
}

// nextStep returns an empty step.
func (s *Sheet) nextStep() *Figure { return grow(&s.steps) }

func grow(fs *[]Figure) *Figure {
	*fs = append(*fs, Figure{})
	return &(*fs)[len(*fs)-1]
}

// later keeps what puts steps until one is asked for: most sheets are printed without.
func (s *Sheet) later(put func()) { s.puts = append(s.puts, put) }

// allSteps returns every step.
func (s *Sheet) allSteps() []Figure {
	for _, put := range s.puts {
		put()
	}
	clear(s.puts) // what they hold of the result
	s.puts = s.puts[:0]
	return s.steps
}

// Find adds a finding.
func (s *Sheet) Find(code string, sev Severity, format string, args ...quantity.Arg) {
	s.Findings = append(s.Findings, Finding{Code: code, Severity: sev, Text: quantity.Text{Format: format, Args: s.keep(args)}})
}

// InShort sets the answer.
func (s *Sheet) InShort(format string, args ...quantity.Arg) {
	s.Answer = &quantity.Text{Format: format, Args: s.keep(args)}
}

// keep copies arguments, so that a caller's need not outlive the call.
func (s *Sheet) keep(args []quantity.Arg) []quantity.Arg {
	from := len(s.args)
	s.args = append(s.args, args...)
	return s.args[from:len(s.args):len(s.args)]
}

// Each calls f for every figure in order, steps on the way to one left out.
func (s *Sheet) Each(f func(*Figure)) {
	for i := range s.Sections {
		sec := &s.Sections[i]
		for j := range sec.Figures {
			f(&sec.Figures[j])
		}
	}
}

// Lookup returns the figure of that key, or nil.
func (s *Sheet) Lookup(key string) *Figure {
	var found *Figure
	s.Each(func(f *Figure) {
		if f.Key == key {
			found = f
		}
	})
	return found
}

// Outside reports whether any figure breaks its limit or the verdict is
// anything but fit; --check turns it into the exit status.
func (s *Sheet) Outside() bool {
	if s.Verdict != nil {
		return s.Verdict.Word != "fit"
	}
	out := s.Unfit
	s.Each(func(f *Figure) {
		if st := f.State(); st.Outside() || st == Unsure {
			out = true
		}
	})
	for _, f := range s.Findings {
		if f.Severity == Stop {
			out = true
		}
	}
	return out
}

// pool keeps the memory of sheets that nobody needs any more: a batch of a
// million drills makes as many.
var pool = sync.Pool{New: func() any { return new(Sheet) }}

// New returns an empty sheet for the answer of a command.
func New(command string, explaining bool) *Sheet {
	s := pool.Get().(*Sheet)
	s.Command, s.Explaining = command, explaining
	return s
}

// Free gives the sheet's memory back. Nothing of the sheet may be used after.
func (s *Sheet) Free() {
	if s.Found != nil {
		s.Found.Free()
	}
	clear(s.puts)
	sections, inputs, findings, extra, args, steps, puts := s.Sections[:0], s.Inputs[:0], s.Findings[:0], s.Extra[:0], s.args[:0], s.steps[:0], s.puts[:0]
	*s = Sheet{Sections: sections, Inputs: inputs, Findings: findings, Extra: extra, args: args, steps: steps, puts: puts}
	pool.Put(s)
}

// StopsShort notes that the steps of the range that was given for a reading do
// not meet its end, so that nobody takes the last row for it.
func (s *Sheet) StopsShort(reading string, r quantity.Range, kind quantity.Kind, gauge quantity.Gauge) {
	last, short := r.StopsShort()
	if !short {
		return
	}
	arg := func(v float64) quantity.Arg { return quantity.Arg{Kind: kind, Gauge: gauge, Value: v} }
	s.Find("range-stops-short", Note, "the range of {} stops at {}: steps of {} do not meet {}", quantity.Say(reading), arg(last), arg(r.Step.V), arg(r.To.V))
}

// Cautions are what anyone at a grinder is to keep in mind; docs/safety.md has
// the long form with its sources.
var Cautions = []string{
	"wear eye protection; keep the guard in place",
	"rest within 1/8 in (3 mm) of the wheel, tongue within 1/4 in (6 mm); set them with the wheel stopped",
	"ring-test a wheel before mounting it",
	"no gloves, no loose clothing",
	"grind lightly and quench lightly",
	"work to the shop's own rules and the local code; ask a qualified person when unsure",
}
