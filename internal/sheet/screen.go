package sheet

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
)

// Screen is what a person is shown of an answer: what to do, the figures that matter,
// and a foot. It is made when it is printed, of a sheet that is finished.
type Screen struct {
	// Verdict is the word that the answer begins with, FIT or REGRIND; Head goes on
	// from it, or is the whole answer where there is none.
	Verdict string
	Head    quantity.Text
	About   string // what it is about: "12 mm drill, steel-200"
	Items   []Item
	Says    []quantity.Text // sentences in place of items, where nothing is wrong
	Lists   []List          // of many drills: what to type next stands behind them
	Next    []Next
	Rows    []Row
	Tables  []Grid // in front of the rows, or behind them
	Behind  bool
	Steps   *Steps   // of a range
	Picture []string // lines of a drawing, under the answer
	Foot    []Foot
	Told    string // codes of findings that it tells itself, apart by blanks
	Scrap   bool   // the drill is never to be run again
}

// Item is what is wrong, and what is done about it.
type Item struct{ Fault, Cure quantity.Text }

// Next is a command to type next. The readings of the drill, or where they came from,
// are put behind its name, and Args behind those.
type Next struct {
	Lead    string // "next" if empty
	Command string
	Args    string
	Says    string // what it tells
	Bare    bool   // Command is complete: no reading is put behind it
	Drill   string // the id of a drill of the crib, where the command is about that one
}

// Row is a figure beside the band it is held against: one value, or one a lip.
type Row struct {
	Label quantity.Text
	Key   string // of the figure, the first of two
	Under bool   // it explains the row before it, and stays behind that
	Marks []Mark
	Kind  quantity.Kind
	Gauge quantity.Gauge
	Word  string // in place of a number
	// Band is drawn as a bar with the marks in it; Text stands where there is none.
	Band *handbook.Band
	Text quantity.Text
}

// Mark is a value in a row: where it lies between Low and High, that is its doubt.
type Mark struct {
	Value, Low, High float64
	State            State
}

// Steps is a range step by step: figures, and one of them drawn within its band.
type Steps struct {
	Columns []Column
	Rows    [][]Cell
	Bars    []Row // one a row; without a band it draws none
}

// Foot is a line under the figures.
type Foot struct {
	Lead string // gauges, note, read, usual, unread, else, safety, more
	Text quantity.Text
	Inch quantity.Text // in place of Text where inches are printed
}

// The leads of a foot, in the order in which they stand.
var FootLeads = []string{"gauges", "note", "read", "usual", "unread", "else", "safety", "more"}

// Row makes the row of the figures with these keys, one a lip, with their limits and
// states. A figure that is not known makes no row of it: its Marks are empty.
func (s *Sheet) Row(label string, keys ...string) Row {
	row := Row{Label: quantity.Sayf(label), Key: keys[0]}
	for _, key := range keys {
		f := s.Lookup(key)
		if f == nil || !f.Known() {
			continue
		}
		row.Kind, row.Gauge, row.Band = f.Kind, f.Gauge, f.Limit
		if f.Word != "" {
			row.Word = f.Word
		}
		m := Mark{Value: f.Value, Low: math.NaN(), High: math.NaN(), State: f.State()}
		if f.Doubt != nil && f.Word == "" {
			m.Low, m.High = f.Doubt.Low, f.Doubt.High
		}
		row.Marks = append(row.Marks, m)
	}
	return row
}

// HeldAs returns the row with the limit of another figure, times scale: a chisel edge
// in millimetres is held to a part of the diameter.
func (r Row) HeldAs(s *Sheet, key string, scale float64) Row {
	r.Band = nil
	f := s.Lookup(key)
	if f == nil || f.Limit == nil {
		return r
	}
	r.Band = &handbook.Band{Low: f.Limit.Low * scale, High: f.Limit.High * scale, Source: f.Limit.Source}
	for i := range r.Marks {
		r.Marks[i].State = f.State()
	}
	return r
}

// HeldTo returns the row with a limit that no figure shows, times scale.
func (r Row) HeldTo(held Held, scale float64) Row {
	r.Band = nil
	if math.IsNaN(held.Low) || math.IsNaN(held.High) {
		return r
	}
	r.Band = &handbook.Band{Low: held.Low * scale, High: held.High * scale, Source: held.Source}
	for i := range r.Marks {
		r.Marks[i].State = held.State()
	}
	return r
}

// Size returns the row with the sizes of its values alone, held to the upper limit:
// the label says which way.
func (r Row) Size() Row {
	for i := range r.Marks {
		m := &r.Marks[i]
		if m.Value < 0 {
			m.Value, m.Low, m.High = -m.Value, -m.High, -m.Low
		}
		m.Low = math.Max(m.Low, 0)
		switch m.State {
		case Under:
			m.State = Over
		case NearLow:
			m.State = NearHigh
		}
	}
	if r.Band != nil {
		r.Band = &handbook.Band{Low: 0, High: r.Band.High, Source: r.Band.Source}
	}
	return r
}

// Called returns the row under a name with numbers in it.
func (r Row) Called(format string, args ...quantity.Arg) Row {
	r.Label = quantity.Sayf(format, args...)
	return r
}

// Saying returns the row with a text where its bar would be.
func (r Row) Saying(format string, args ...quantity.Arg) Row {
	r.Band, r.Text = nil, quantity.Sayf(format, args...)
	return r
}

// Show adds a row, if it has anything to show.
func (s *Screen) Show(r Row) {
	if len(r.Marks) > 0 || r.Word != "" || r.Text.Format != "" && r.Kind == quantity.Word {
		s.Rows = append(s.Rows, r)
	}
}

// Say adds a sentence.
func (s *Screen) Say(format string, args ...quantity.Arg) {
	s.Says = append(s.Says, quantity.Sayf(format, args...))
}

// Item adds a fault and its cure.
func (s *Screen) Item(fault, cure quantity.Text) {
	s.Items = append(s.Items, Item{fault, cure})
}

// Want makes the screen say what is to be read, where the figure of that key has no
// value for want of it, and reports whether that is so.
func (s *Screen) Want(of *Sheet, key string) bool {
	f := of.Lookup(key)
	if f == nil || f.Known() {
		return false
	}
	s.Verdict = "MEASURE"
	missing := of.Missing(f)
	if missing == "" {
		s.Item(quantity.Sayf("no "+f.Label), quantity.Sayf("these readings give none"))
		return true
	}
	s.Item(quantity.Sayf("no "+f.Label+" yet"), quantity.Sayf("give "+missing))
	s.Next = append(s.Next, Next{Command: of.Command, Args: "--ask", Says: "asks for it"})
	return true
}

// Note adds a line to the foot.
func (s *Screen) Note(lead, format string, args ...quantity.Arg) {
	s.Foot = append(s.Foot, Foot{Lead: lead, Text: quantity.Sayf(format, args...)})
}

// Outside reports whether the row has a value that breaks its limit, and Unsure
// whether it has one of which that cannot be told.
func (r *Row) Outside() bool { return r.has(State.Outside) }

// Unsure is told of by Outside.
func (r *Row) Unsure() bool { return r.has(func(s State) bool { return s == Unsure }) }

func (r *Row) has(is func(State) bool) bool {
	for i := range r.Marks {
		if is(r.Marks[i].State) {
			return true
		}
	}
	return false
}
