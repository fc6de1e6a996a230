package crib

import (
	"fmt"
	"math"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Sheets are printed for people, or with every figure for scripts.
type Audience bool

// The audiences.
const (
	People  Audience = false
	Scripts Audience = true
)

func word(key, label string) sheet.Column {
	return sheet.Column{Key: key, Label: label, Kind: quantity.Word}
}

func count(key, label string) sheet.Column {
	return sheet.Column{Key: key, Label: label, Kind: quantity.Count}
}

// invented says of an answer that it is about the embedded crib.
const invented = "sample: all invented"

func (c *Crib) sheet(command string) *sheet.Sheet {
	name := c.Name
	if name == "" {
		name = c.File
	}
	title := name + ", " + command
	if c.Sample {
		title = "SAMPLE, all of it invented: " + title
	}
	s := &sheet.Sheet{Command: command, Title: title, Sample: c.Sample, Origin: sheet.Origin{Name: c.Name}, From: invented}
	if !c.Sample {
		s.From, s.Origin.File = c.File, c.File
	}
	return s
}

// rows makes the grid that is the results of a sheet, one row a drill.
func rows(columns []sheet.Column) sheet.Grid {
	return sheet.Grid{Key: "rows", Main: true, Columns: columns}
}

// verdictColumns are the verdict as scripts read it.
func verdictColumns() []sheet.Column {
	return []sheet.Column{word("verdict", "verdict"), {Key: "verdict_reasons", Label: "reasons", Kind: quantity.Words},
		{Key: "verdict_wants", Label: "wants", Kind: quantity.Phrases}}
}

func verdictCells(v *sheet.Verdict) []sheet.Cell {
	return []sheet.Cell{sheet.W(v.Word), sheet.W(strings.Join(v.Reasons, " ")), sheet.W(strings.Join(v.Missing, "; "))}
}

// List returns the sheet of the drills as they stand in the file. Scripts also
// get every reading as it was written.
func (c *Crib) List(drills []*Drill, to Audience) *sheet.Sheet {
	s := c.sheet("crib list")
	columns := []sheet.Column{word("id", "id"), word("size", "size"), word("series", "series"), word("shank", "shank"), count("grinds", "grinds"), word("last", "last entry"), word("retired", "retired"), word("note", "note")}
	if to == Scripts {
		columns = append(columns, readingColumns()...)
	}
	g := rows(columns)
	for _, d := range drills {
		n, _ := d.Grinds()
		row := []sheet.Cell{sheet.W(d.ID), sheet.W(d.sizeText()), sheet.W(d.Series), sheet.W(d.Shank), sheet.V(float64(n)), sheet.W(d.last()), sheet.W(d.Retired()), sheet.W(d.Note)}
		if to == Scripts {
			row = append(row, d.readingCells()...)
		}
		g.Rows = append(g.Rows, row)
	}
	s.Grids = []sheet.Grid{g}
	tellDoubts(s, drills)
	s.Screen = func() *sheet.Screen { return c.listScreen(drills, s) }
	return s
}

// readingColumns has a column for each value of each reading, under its name in
// JSON.
func readingColumns() []sheet.Column {
	var out []sheet.Column
	for _, r := range Kept() {
		spec := r.Spec()
		for _, key := range spec.Keys {
			if key != "" {
				c := sheet.Column{Key: key, Label: spec.Name, Kind: spec.Kind, Gauge: spec.Gauge}
				if spec.Switch {
					c.Kind = quantity.Switch
				}
				out = append(out, c)
			}
		}
	}
	return out
}

func (d *Drill) readingCells() []sheet.Cell {
	var out []sheet.Cell
	for _, r := range Kept() {
		values := d.Readings.Values(r)
		for i, key := range r.Spec().Keys {
			switch {
			case key == "":
			case r.Spec().Switch && d.Readings.Written(r) != "":
				out = append(out, sheet.W(map[bool]string{true: "yes", false: "no"}[d.Readings.Has(r)]))
			case r.Spec().Kind == quantity.Word:
				out = append(out, sheet.W(d.Readings.Written(r)))
			case i < len(values):
				out = append(out, sheet.V(values[i]))
			default:
				out = append(out, sheet.V(math.NaN()))
			}
		}
	}
	return out
}

// sizeText returns the size as it was written, its unit made plain.
func (d *Drill) sizeText() string { return d.Readings.AsRead(drill.Size)[0].Echo() }

// Audit returns the sheet of the drills, which Judge has put in order, and how
// many there are of each verdict. Scripts also get every figure of inspect.
func (c *Crib) Audit(drills []Judged, to Audience) *sheet.Sheet {
	s := c.sheet("crib audit")
	g := rows([]sheet.Column{word("id", "id"), word("size", "size"), word("material", "for")})
	if to == Scripts {
		g.Columns = append(g.Columns, verdictColumns()...)
	} else {
		g.Columns = append(g.Columns, word("verdict", "verdict"), word("reasons", "because"))
	}
	for i := range drills {
		d := &drills[i]
		row := []sheet.Cell{sheet.W(d.ID), sheet.W(d.sizeText()), sheet.W(d.Material)}
		if to == Scripts {
			row = append(row, verdictCells(d.Verdict)...)
		} else {
			row = append(row, sheet.W(d.Word()), sheet.W(d.why()))
		}
		g.Rows = append(g.Rows, row)
	}
	if to == Scripts {
		c.addShares(&g, drills)
		c.addFigures(&g, drills)
		g.Limits = func(row int) *sheet.Sheet { return figures(drills[row].Readings) }
	}
	s.Grids = []sheet.Grid{g}
	s.Find("counts", sheet.Note, "{}", quantity.Say(counts(drills)+c.andGone()))
	shown := make([]*Drill, len(drills))
	for i := range drills {
		shown[i] = drills[i].Drill
	}
	tellDoubts(s, shown)
	s.Screen = func() *sheet.Screen { return c.auditScreen(drills, s) }
	return s
}

// andGone says how many drills are in no count, since they are no longer there.
func (c *Crib) andGone() string {
	if n := c.gone(); n > 0 {
		return fmt.Sprintf("; %d retired and gone", n)
	}
	return ""
}

// addShares adds, where gauges were named, in what share of the draws each verdict came
// out, and what to read again where that is too small.
func (c *Crib) addShares(g *sheet.Grid, drills []Judged) {
	if c.Gauges == (quantity.Gauges{}) {
		return
	}
	g.Columns = append(g.Columns, shareColumns()...)
	for i := range drills {
		g.Rows[i] = append(g.Rows[i], sheet.V(drills[i].Verdict.Share), sheet.W(drills[i].Verdict.Finer))
	}
}

func shareColumns() []sheet.Column {
	return []sheet.Column{{Key: "verdict_share", Label: "share of the draws", Kind: quantity.Number}, word("verdict_finer", "read again")}
}

// Declared returns what the answer of a command on a crib has, without values; nil where
// no command has the name.
func Declared(command string) *sheet.Sheet {
	c := new(Crib)
	switch command {
	case "crib list":
		return c.List(nil, Scripts)
	case "crib audit":
		s := c.Audit(nil, Scripts)
		g := &s.Grids[0]
		sometimes := func(c sheet.Column) {
			c.Sometimes = true
			g.Columns = append(g.Columns, c)
		}
		for _, c := range shareColumns() {
			sometimes(c)
		}
		declared := &sheet.Sheet{Drawing: true, Declaring: true}
		judge.Figures(new(judge.Result), declared)
		g.Limits = func(int) *sheet.Sheet { return declared }
		declared.Each(func(f *sheet.Figure) { sometimes(sheet.Column{Key: f.Key, Label: f.Label, Kind: f.Kind}) })
		return s
	case "crib plan":
		return c.Plan(new(Day), Scripts)
	case "crib record":
		s := &sheet.Sheet{Command: command}
		recorded(s, new(Event), "", "", "")
		return s
	case "crib new":
		return c.Started(false)
	}
	return nil
}

// addFigures adds a column for every figure that any of the drills has. No sheet
// is kept: those of a large crib would fill the memory.
func (c *Crib) addFigures(g *sheet.Grid, drills []Judged) {
	at := map[string]int{}
	fill := func(row []sheet.Cell) []sheet.Cell {
		for len(row) < len(g.Columns) {
			row = append(row, sheet.W(""))
		}
		return row
	}
	for i := range drills {
		row := fill(g.Rows[i])
		s := figures(drills[i].Readings)
		s.Each(func(f *sheet.Figure) {
			if _, there := at[f.Key]; !there {
				at[f.Key] = len(g.Columns)
				g.Columns = append(g.Columns, sheet.Column{Key: f.Key, Label: f.Label, Kind: f.Kind, Gauge: f.Gauge})
				row = fill(row)
			}
			row[at[f.Key]] = sheet.CellOf(f)
		})
		g.Rows[i] = row
	}
	for i := range g.Rows {
		g.Rows[i] = fill(g.Rows[i])
	}
}

// figures is a sheet of the figures that inspect has.
func figures(d *drill.Drill) *sheet.Sheet {
	r, s := judge.Compute(d), sheet.New("", false)
	judge.Figures(&r, s)
	return s
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
	text := drillsOf(len(drills))
	if len(parts) > 0 {
		text += ": " + strings.Join(parts, ", ")
	}
	return text
}
