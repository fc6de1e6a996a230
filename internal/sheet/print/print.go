// Package print prints what a calculation found: as a table for people, as
// plain tab-separated text, as CSV and as JSON. It computes nothing.
package print

import (
	"fmt"
	"io"

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
	Width   int  // columns of a table
	Colour  bool // styles in a table
	Explain bool // the working behind each figure
	ASCII   bool // no block characters: the terminal may not show them
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
		return writeCSV(w, jobs)
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
