package drill

import (
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/strict"
)

// Lines reads drills that stand one a line, as JSON or as CSV. What it returns
// is overwritten by the next line, so that a million lines take the memory of
// one.
type Lines struct {
	File  string
	Units quantity.System
	Book  *handbook.Book

	drill  Drill
	places Places
	number int // of the line
	seen   [entriesKnown]bool
	taken  int // readings
	errs   []error
	row    *rowReader
}

// The keys that are no readings, beside which a line has readings.
const (
	nameEntry = readings + iota
	unitsEntry
	entriesKnown
)

// begin makes room for the drill of a line.
func (l *Lines) begin(number int, text string) {
	l.drill = Drill{Units: l.Units, Book: l.Book}
	l.places = Places{File: l.File, text: text}
	l.number, l.seen, l.taken, l.errs = number, [entriesKnown]bool{}, 0, nil
}

// fault tells what is wrong at a byte of the line.
func (l *Lines) fault(offset int, text, hint string) {
	down, column := l.places.spot(offset + 1)
	l.errs = append(l.errs, &strict.Error{File: l.File, Line: l.number + down, Column: column, Text: text, Hint: hint})
}

// misread tells what is wrong with what stands under a key.
func (l *Lines) misread(offset int, key, text, hint string) {
	l.fault(offset, text, hint)
	l.places.misread(key)
}

// entry finds what a key stands for; false says that it was told as a fault.
func (l *Lines) entry(offset int, key string) (Reading, bool) {
	r, ok := Find(key)
	switch {
	case ok:
	case key == keyName:
		r = nameEntry
	case key == keyUnits:
		r = unitsEntry
	default:
		text, hint := unknown(key)
		l.misread(offset, meant(key), text, hint)
		return 0, false
	}
	if l.seen[r] {
		l.misread(offset, key, strconv.Quote(key)+" stands twice", "keep one of them")
		return 0, false
	}
	l.seen[r] = true
	return r, true
}

// take gives the drill what stands under a key.
func (l *Lines) take(offset int, r Reading, key, text string) {
	switch {
	case strings.TrimSpace(text) == "":
		l.misread(offset, key, key+": takes a value", "leave it out if it was not read")
	case r == nameEntry:
		l.drill.Name = text
	case r == unitsEntry:
		u, err := quantity.ParseUnits(text)
		if err != nil {
			l.misread(offset, key, "units: "+err.Error(), "")
		} else if l.Units == quantity.Unset {
			l.drill.Units = u
		}
	default:
		l.drill.Set(r, text)
		l.taken++
		l.places.at[r] = place{l.number, offset + 1}
	}
}

// end understands the readings. It returns the drill and everything that is
// wrong with the line, in its order.
func (l *Lines) end() (*Drill, *Places, []error) {
	for _, f := range l.drill.Resolve() {
		l.places.misread(f.Reading.String())
		fault := l.places.Fault(f.Reading, f.Err)
		if quantity.IsRange(l.drill.Written(f.Reading)) {
			fault.Hint = "a range is for a drill whose readings are flags: write a line for each step"
		}
		l.errs = append(l.errs, fault)
	}
	if len(l.errs) == 0 && l.taken == 0 {
		l.fault(0, "no reading was given", "leave the line out")
	}
	slices.SortStableFunc(l.errs, strict.ByPlace)
	return &l.drill, &l.places, l.errs
}
