// Package print prints what a calculation found: as a table for people, as
// plain tab-separated text, as CSV and as JSON. It computes nothing.
package print

import (
	"fmt"
	"io"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
)

// Form is a way of printing.
type Form string

// The forms.
const (
	Table Form = "table"
	Plain Form = "plain"
	CSV   Form = "csv"
	JSON  Form = "json"
)

// Forms lists them for help and completion.
var Forms = []string{string(Table), string(Plain), string(CSV), string(JSON)}

// Options say how to print.
type Options struct {
	Form    Form
	Gauges  quantity.Gauges
	Width   int    // columns of a table
	Colour  bool   // styles in a table
	Explain bool   // the working behind each figure
	Full    bool   // every figure, limit and basis in a table, not what matters alone
	ASCII   bool   // no block characters: the terminal may not show them
	CRLF    bool   // lines of CSV end in carriage return and line feed
	Version string // of the program, for JSON
}

// Job is one sheet and the units its reader wants.
type Job struct {
	Sheet  *sheet.Sheet
	System quantity.System
}

// Write prints the jobs, one after the other.
func Write(w io.Writer, jobs []Job, o Options) error {
	switch o.Form {
	case JSON:
		return writeJSON(w, jobs, o)
	case CSV:
		return writeCSV(w, jobs, o.CRLF)
	case Plain:
		return writePlain(w, jobs, o)
	case Table:
		t := tableWriter{w: w, o: o, pen: style.New(o.Colour)}
		for i, j := range jobs {
			if i > 0 {
				fmt.Fprintln(w)
			}
			t.sheet(j)
		}
		return t.err
	}
	return fmt.Errorf("no form is called %q", o.Form)
}

// ReadyForColour has the console behind out take colours, where it wants to be
// told, and reports whether it will.
func ReadyForColour(out io.Writer) bool { return style.Ready(out) }

// shopMark stands behind what a shop has set in a table's list; a figure by itself
// has the shop for its basis.
const shopMark = "*"

// ofShopKey is where a script finds what the shop has set: in JSON beside the
// figures, or in the row of a list; in CSV a column.
const ofShopKey = "set_by_shop"

// anyOfShop reports whether a shop has set anything in a list.
func anyOfShop(g *sheet.Grid) bool {
	for _, row := range g.Rows {
		for _, c := range row {
			if c.Shop {
				return true
			}
		}
	}
	return false
}

// ofShop names the columns of a row that a shop has set, apart by blanks.
func ofShop(g *sheet.Grid, row []sheet.Cell) string {
	var keys []string
	for i, c := range row {
		if c.Shop {
			keys = append(keys, g.Columns[i].Key)
		}
	}
	return strings.Join(keys, " ")
}

// setByShop names the figures of a sheet that a shop has set.
func setByShop(s *sheet.Sheet) []string {
	var keys []string
	s.Each(func(f *sheet.Figure) {
		if f.Shop {
			keys = append(keys, f.Key)
		}
	})
	return keys
}
