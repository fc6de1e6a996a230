package crib

import (
	"math"
	"strconv"
	"strings"
	"time"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/strict"
)

func has(n strict.Node, key string) bool {
	_, there := n.Lookup(key)
	return there
}

// orNone is what to do with a word that no drill has to have.
const orNone = "leave the line out if it is none of these"

func (rd *reader) oneOf(key string, n strict.Node, hint string, words []string) string {
	for _, w := range words {
		if n.IsScalar() && n.Text() == w {
			return w
		}
	}
	rd.Fault(n, key+": cannot read "+strconv.Quote(n.Text())+": takes "+strings.Join(words, ", "), hint)
	return ""
}

func (rd *reader) units(n strict.Node) quantity.System {
	u, err := quantity.ParseUnits(n.Text())
	if err != nil || !n.IsScalar() {
		rd.Fault(n, "units: takes mm or in", "")
		rd.unsure = true
	}
	return u
}

// mostCount bounds a count: no crib keeps more of one size.
const mostCount = 9999

// count reads a whole number. The YAML library would take 1.5 for 1 and 010
// for 8, so the digits are looked at here.
func (rd *reader) count(n strict.Node) (int, bool) {
	text := n.Text()
	v, err := strconv.Atoi(text)
	if !n.IsScalar() || n.Quote() != 0 || err != nil || strconv.Itoa(v) != text || v < 0 || v > mostCount {
		rd.Fault(n, "cannot read "+strconv.Quote(text)+": takes a whole number from 0 to "+strconv.Itoa(mostCount), "")
		return 0, false
	}
	return v, true
}

func (rd *reader) event(n strict.Node, units quantity.System) Event {
	e := Event{Stock: math.NaN()}
	rd.Entries(n,
		strict.On("date", func(n strict.Node) { e.Date = rd.date(n) }),
		strict.On("what", func(n strict.Node) {
			e.What = What(rd.oneOf("what", n, "", whats))
		}),
		strict.On("stock", func(n strict.Node) { e.Stock = rd.stock(n, units) }),
		strict.On("note", func(n strict.Node) { e.Note = rd.Word(n) }),
		strict.On("before", func(n strict.Node) { e.Before = rd.before(n, units) }),
	)
	if !n.IsMap() {
		return e
	}
	for _, key := range [...]string{"date", "what"} {
		if !has(n, key) {
			rd.Fault(n, "an entry of the history without "+key, "such as {date: 2026-03-02, what: grind, stock: 0.5mm}")
		}
	}
	if e.What != Grind && e.What != "" && has(n, "stock") {
		rd.Fault(n, "stock comes off in a grind, not with "+string(e.What), "take the stock out, or write what: grind")
	}
	return e
}

func (rd *reader) date(n strict.Node) string {
	if _, err := ParseDate(n.Text()); err != nil || !n.IsScalar() {
		rd.Fault(n, "date: cannot read "+strconv.Quote(n.Text())+": takes year-month-day, such as 2026-03-02", "")
		return ""
	}
	return n.Text()
}

// ParseDate reads a date as it stands in a history: 2026-03-02.
func ParseDate(text string) (time.Time, error) { return time.Parse(time.DateOnly, text) }

func (rd *reader) stock(n strict.Node, units quantity.System) float64 {
	if !n.IsScalar() {
		rd.Fault(n, "stock: takes one length", "")
		return math.NaN()
	}
	v, err := quantity.Parse(quantity.Length, n.Text(), units)
	switch {
	case err != nil:
		rd.Refuse(n, err)
	case v.V <= 0:
		rd.Fault(n, "stock: takes a length above zero", "leave it out if it was not measured")
	}
	return v.V
}

// before reads the readings that an event did away with.
func (rd *reader) before(n strict.Node, units quantity.System) []Was {
	given, faults := drill.OfMap(rd.File, n, func(e strict.Entry) bool {
		rd.Fault(e.Key, "no reading is called "+strconv.Quote(e.Key.Text()), "the keys are the flags' names: evenlip crib record --help")
		return true
	})
	var read drill.Read
	faults = append(faults, read.Resolve(given, drill.Options{Units: units})...)
	rd.Errs = append(rd.Errs, faults...)
	rd.useful(given)
	if read.Has(drill.Size) {
		rd.Errs = append(rd.Errs, fault.New("take the line out; a drill that is ground to another size is another drill", "no drill changes its size").In(read.At(drill.Size), drill.Size.String()))
	}
	var out []Was
	for _, g := range read.Given() {
		out = append(out, Was{g.Reading, g.Text})
	}
	return out
}
