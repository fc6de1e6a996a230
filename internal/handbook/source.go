// Package handbook holds every figure that evenlip did not compute, each
// with the place it comes from and a label that says how far to trust it.
//
// Tables keep the figures as they were published (inches, degrees); the
// functions that look a figure up return millimetres and radians, as the rest
// of the program uses. Nothing here is written anywhere else in the program.
package handbook

import (
	"math"
	"slices"
	"strconv"
)

// InchMM is the inch, exactly 25.4 mm by definition.
const InchMM = 25.4

const deg = math.Pi / 180

// edge keeps a diameter that differs from a row's end in its last digits only in that
// row, mm.
const edge = 1e-9

// nan stands for a figure that nobody has published.
var nan = math.NaN()

// unpublished is a band that nobody has published.
var unpublished = Band{Low: nan, High: nan}

// Label says how a figure was come by, and so how far it may be trusted.
type Label uint8

// The labels, most trustworthy first.
const (
	InPrint  Label = iota + 1 // the printed source named was read
	Practice                  // a fact of the trade without one authority
	Memory                    // recalled, not read again
	Derived                   // follows from geometry or from another figure here
	Own                       // a rule of this program, for want of a published one
	Shop                      // set by the shop that uses the program
)

// String returns the label in the words that a user sees.
func (l Label) String() string {
	switch l {
	case InPrint:
		return "read in print"
	case Practice:
		return "common practice"
	case Memory:
		return "from memory"
	case Derived:
		return "derived"
	case Own:
		return "own rule"
	case Shop:
		return "the shop's"
	}
	return "no source"
}

// Source is where a figure comes from.
type Source struct {
	Label Label
	// Sureness qualifies a remembered figure: "high", "medium", "low".
	Sureness string
	// Text names the work, edition and table, or says what the figure rests on.
	Text string
}

// String returns the source as one line: "from memory (medium): ASME B94.11M, ...".
func (s Source) String() string {
	out := s.Label.String()
	if s.Sureness != "" {
		out += " (" + s.Sureness + ")"
	}
	if s.Text != "" {
		out += ": " + s.Text
	}
	return out
}

// OfShop reports whether the shop that uses the program has set the figure; a nil
// Source is nobody's.
func (s *Source) OfShop() bool { return s != nil && s.Label == Shop }

// Whose says in words where a figure of the trade comes from: the shop, or print.
func (s *Source) Whose() string {
	if s.OfShop() {
		return Shop.String()
	}
	return "published"
}

// How says in words why a figure is what it is: as usual says, unless the shop has
// set it.
func (s *Source) How(usual string) string {
	if s.OfShop() {
		return "as the shop has set it"
	}
	return usual
}

// Band is a range of acceptable values, ends included, in millimetres or
// radians. An open end is an infinity.
type Band struct {
	Low, High float64
	Source    *Source
}

// in prints a band in a unit as a table does: "118", "118-135", or a dash for one that
// nobody has published.
func (b Band) in(unit float64) string {
	const digits = 1e6 // that the conversion leaves alone
	low, high := math.Round(b.Low/unit*digits)/digits, math.Round(b.High/unit*digits)/digits
	switch {
	case math.IsNaN(low):
		return "-"
	case low == high:
		return cell(low)
	}
	return cell(low) + "-" + cell(high)
}

// Holds reports whether v lies in the band. NaN lies in none.
func (b Band) Holds(v float64) bool { return v >= b.Low && v <= b.High }

// Table is one embedded table as the sources command shows it.
type Table struct {
	Name   string // kebab-case, unique: "lip-clearance-by-size"
	Title  string
	Source *Source
	Head   []string
	Rows   [][]string // the cells as published
}

// Tables returns every embedded table, in the order that sources prints them.
func Tables() []Table {
	return slices.Concat(toleranceTables(), clearanceTables(), webTables(), wearTables(), regrindTables(),
		MaterialTables(), forceTables(), feedTables(), holeTables(), shankTables(), thinningTables(),
		SizeTables(), grinderTables(), bodyTables())
}

// rows returns a row for each entry of a list.
func rows[T any](list []T, row func(T) []string) [][]string {
	out := make([][]string, len(list))
	for i, entry := range list {
		out[i] = row(entry)
	}
	return out
}

// row prints published figures as the cells of a row.
func row(figures ...float64) []string {
	out := make([]string, len(figures))
	for i, v := range figures {
		out[i] = cell(v)
	}
	return out
}

// cell prints a published figure without adding or losing digits.
func cell(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
