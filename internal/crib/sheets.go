package crib

import (
	"fmt"
	"math"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/figure"
	"evenlip/internal/quantity"
	"evenlip/internal/report"
)

// Sheets are printed for people, or with every figure for scripts.
type Audience bool

// The audiences.
const (
	People  Audience = false
	Scripts Audience = true
)

func word(key, label string) figure.Column {
	return figure.Column{Key: key, Label: label, Kind: quantity.Word}
}

func count(key, label string) figure.Column {
	return figure.Column{Key: key, Label: label, Kind: quantity.Count}
}

func mm(key, label string) figure.Column {
	return figure.Column{Key: key, Label: label, Kind: quantity.Length, Gauge: quantity.Caliper}
}

func (c *Crib) sheet(command string) *figure.Sheet {
	name := c.Name
	if name == "" {
		name = c.File
	}
	title := name + ", " + command
	if c.Sample {
		title = "SAMPLE, all of it invented: " + title
	}
	return &figure.Sheet{Command: command, Title: title, Sample: c.Sample}
}

// rows makes the grid that is the results of a sheet, one row a drill.
func rows(columns []figure.Column) figure.Grid {
	return figure.Grid{Key: report.ResultList, Main: true, Columns: columns}
}

// List returns the sheet of all drills as they stand in the file. Scripts also
// get every reading as it was written.
func (c *Crib) List(drills []Judged, to Audience) *figure.Sheet {
	s := c.sheet("crib list")
	columns := []figure.Column{word("id", "id"), word("size", "size"), word("series", "series"), word("shank", "shank"), count("grinds", "grinds"), word("last", "last entry"), word("note", "note")}
	if to == Scripts {
		columns = append(columns, readingColumns()...)
	}
	g := rows(columns)
	for i := range drills {
		d := &drills[i]
		n, _ := d.Grinds()
		row := []figure.Cell{figure.W(d.ID), figure.W(d.sizeText()), figure.W(d.Series), figure.W(d.Shank), figure.V(float64(n)), figure.W(d.last()), figure.W(d.Note)}
		if to == Scripts {
			row = append(row, d.readingCells()...)
		}
		g.Rows = append(g.Rows, row)
	}
	s.Grids = []figure.Grid{g}
	return s
}

// readingColumns has a column for each value of each reading, under its name in
// JSON.
func readingColumns() []figure.Column {
	var out []figure.Column
	for _, r := range Kept {
		spec := r.Spec()
		for _, key := range spec.Keys {
			if key != "" {
				out = append(out, figure.Column{Key: key, Label: spec.Name, Kind: spec.Kind, Gauge: spec.Gauge})
			}
		}
	}
	return out
}

func (d *Drill) readingCells() []figure.Cell {
	var out []figure.Cell
	for _, r := range Kept {
		values := d.Readings.Values(r)
		for i, key := range r.Spec().Keys {
			switch {
			case key == "":
			case r.Spec().Kind == quantity.Word:
				out = append(out, figure.W(d.Readings.Word(r)))
			case i < len(values):
				out = append(out, figure.V(values[i].V))
			default:
				out = append(out, figure.V(math.NaN()))
			}
		}
	}
	return out
}

// sizeText returns the size as it was written, its unit made plain.
func (d *Drill) sizeText() string { return d.Readings.Values(drill.Size)[0].Echo() }

// Audit returns the sheet of the drills, which Judge has put in order, and how
// many there are of each verdict. Scripts also get every figure of inspect.
func (c *Crib) Audit(drills []Judged, to Audience) *figure.Sheet {
	s := c.sheet("crib audit")
	columns := []figure.Column{word("id", "id"), word("size", "size"), word("material", "for"), word("verdict", "verdict"), word("reasons", "because")}
	var keys []string
	if to == Scripts {
		keys = figureKeys(drills, &columns)
	}
	g := rows(columns)
	for i := range drills {
		d := &drills[i]
		row := []figure.Cell{figure.W(d.ID), figure.W(d.sizeText()), figure.W(d.material()), figure.W(d.Word()), figure.W(d.why())}
		for _, key := range keys {
			row = append(row, cellOf(d.Sheet.Lookup(key)))
		}
		g.Rows = append(g.Rows, row)
	}
	s.Grids = []figure.Grid{g}
	s.Find("counts", figure.Note, "{}", figure.Say(counts(drills)))
	return s
}

// figureKeys adds a column for every figure that any of the drills has.
func figureKeys(drills []Judged, columns *[]figure.Column) []string {
	var keys []string
	seen := map[string]bool{}
	for i := range drills {
		drills[i].Sheet.Each(func(f *figure.Figure) {
			if !seen[f.Key] {
				seen[f.Key] = true
				keys = append(keys, f.Key)
				*columns = append(*columns, figure.Column{Key: f.Key, Label: f.Label, Kind: f.Kind, Gauge: f.Gauge})
			}
		})
	}
	return keys
}

func cellOf(f *figure.Figure) figure.Cell {
	switch {
	case f == nil:
		return figure.W("")
	case f.Word != "":
		return figure.W(f.Word)
	}
	return figure.V(f.Value)
}

// counts says how many drills there are of each verdict.
func counts(drills []Judged) string {
	of := map[string]int{}
	for i := range drills {
		of[drills[i].Word()]++
	}
	parts := make([]string, 0, len(Verdicts))
	for _, v := range Verdicts {
		if of[v] > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", of[v], v))
		}
	}
	text := fmt.Sprintf("%d drills", len(drills))
	if len(drills) == 1 {
		text = "1 drill"
	}
	if len(parts) > 0 {
		text += ": " + strings.Join(parts, ", ")
	}
	return text
}
