package cli

import (
	"math"
	"slices"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print"
)

// steps gathers the answers of a range, one row a step; where the answer is a
// list itself, a row for each of its rows.
type steps struct {
	ranges  []*drill.Taken
	columns []sheet.Column  // after the ranges'; they are the same at each step
	quiet   map[string]bool // columns, by key, that no person is shown
	rows    [][]sheet.Cell  // the ranges' values first
	// scripts is what a script reads beside the figures: which are outside their
	// limit, the verdict, the findings' codes.
	scripts  [][3]string
	limits   []breach
	found    []remark
	sources  []*handbook.Source
	cautions []string
	outside  bool
	judged   bool // there are verdicts
	lists    bool // the answers are lists
	count    int
	first    *sheet.Sheet // the answer of the first step
	firstAt  quantity.Text
	shown    [][]sheet.Row // of the screen of each step
	reasons  []string      // of any verdict
}

// breach is a figure outside its limit in some of the rows.
type breach struct {
	key, label string
	rows       int
	first      quantity.Text
}

// remark is a finding and where it came up.
type remark struct {
	sheet.Finding
	rows  int
	same  bool // its numbers do not change
	first quantity.Text
}

func (t *steps) add(values []float64, s *sheet.Sheet) {
	t.count++
	where := at(t.ranges, values)
	if t.first == nil {
		t.first, t.firstAt = s, where
	}
	t.outside = t.outside || s.Outside()
	t.remember(s, where)
	if s.Screen != nil {
		t.shown = append(t.shown, s.Screen().Rows)
	}
	script := [3]string{t.breaches(s, where), "", codes(s)}
	if s.Verdict != nil {
		script[1], t.judged = s.Verdict.Word, true
		t.reasons = append(t.reasons, s.Verdict.Reasons...)
	}
	for i := range s.Grids {
		if g := &s.Grids[i]; g.Main {
			t.lists, t.columns = true, g.Columns
			for _, row := range g.Rows {
				t.row(values, script, row)
			}
			return
		}
	}
	var row []sheet.Cell
	t.columns = t.columns[:0]
	for _, section := range s.Sections {
		for i := range section.Figures {
			f := &section.Figures[i]
			t.columns = append(t.columns, sheet.Column{Key: f.Key, Label: f.Label, Kind: f.Kind, Gauge: f.Gauge})
			t.quiet[f.Key] = section.Quiet
			row = append(row, sheet.CellOf(f))
		}
	}
	t.row(values, script, row)
}

// row adds one row.
func (t *steps) row(values []float64, script [3]string, cells []sheet.Cell) {
	var row []sheet.Cell
	for _, v := range values {
		row = append(row, sheet.V(v))
	}
	t.rows, t.scripts = append(t.rows, append(row, cells...)), append(t.scripts, script)
}

// breaches notes the figures outside their limits and returns their names.
func (t *steps) breaches(s *sheet.Sheet, where quantity.Text) string {
	var keys []string
	s.Each(func(f *sheet.Figure) {
		if !f.State().Outside() {
			return
		}
		keys = append(keys, f.Key)
		i := slices.IndexFunc(t.limits, func(b breach) bool { return b.key == f.Key })
		if i < 0 {
			i = len(t.limits)
			t.limits = append(t.limits, breach{key: f.Key, label: f.Label, first: where})
		}
		t.limits[i].rows++
	})
	return strings.Join(keys, " ")
}

func codes(s *sheet.Sheet) string {
	out := make([]string, len(s.Findings))
	for i, f := range s.Findings {
		out[i] = f.Code
	}
	return strings.Join(out, " ")
}

// remember keeps the sheet's findings, sources and cautions, each once.
func (t *steps) remember(s *sheet.Sheet, where quantity.Text) {
	for _, f := range s.Findings {
		i := slices.IndexFunc(t.found, func(r remark) bool { return r.Code == f.Code && r.Text.Format == f.Text.Format })
		if i < 0 {
			i = len(t.found)
			t.found = append(t.found, remark{Finding: f, same: true, first: where})
		}
		t.found[i].rows++
		t.found[i].same = t.found[i].same && slices.Equal(t.found[i].Text.Args, f.Text.Args)
	}
	source := func(src *handbook.Source) {
		if src != nil && !slices.Contains(t.sources, src) {
			t.sources = append(t.sources, src)
		}
	}
	s.Each(func(f *sheet.Figure) {
		if f.Limit != nil {
			source(f.Limit.Source)
		}
	})
	for _, src := range s.Extra {
		source(src)
	}
	t.cautions = s.Cautions
	if t.cautions == nil {
		t.cautions = sheet.Cautions
	}
}

// remarks are the findings of all the steps, each once, with the first step
// where it came up unless it holds for all alike.
func (t *steps) remarks() []sheet.Finding {
	var out []sheet.Finding
	for _, b := range t.limits {
		text := quantity.Text{Format: b.label + ": outside its limit in {} of {} steps, first at " + b.first.Format}
		text.Args = append([]quantity.Arg{quantity.Of(quantity.Count, float64(b.rows)), quantity.Of(quantity.Count, float64(t.count))}, b.first.Args...)
		out = append(out, sheet.Finding{Code: "outside-limit", Severity: sheet.Warn, Text: text})
	}
	for _, r := range t.found {
		f := r.Finding
		if !r.same || r.rows < t.count {
			f.Text = quantity.Text{Format: "first at " + r.first.Format + ": " + f.Text.Format, Args: slices.Concat(r.first.Args, f.Text.Args)}
		}
		out = append(out, f)
	}
	return out
}

// forScripts is the table with every figure.
func (t *steps) forScripts() sheet.Grid {
	g := t.grid(func(int) bool { return true })
	if t.lists {
		return g
	}
	for i, c := range [...]sheet.Column{{Key: "outside", Kind: quantity.Words}, {Key: "verdict", Kind: quantity.Word}, {Key: "findings", Kind: quantity.Words}} {
		if c.Key == "verdict" && !t.judged {
			continue
		}
		c.Label = c.Key
		g.Columns = append(g.Columns, c)
		for n := range g.Rows {
			g.Rows[n] = append(g.Rows[n], sheet.W(t.scripts[n][i]))
		}
	}
	return g
}

// grid is the ranges' columns and those of the figures that are kept.
func (t *steps) grid(keep func(column int) bool) sheet.Grid {
	lead := len(t.ranges)
	g := sheet.Grid{Key: "rows", Title: "Step by step", Main: true, Lead: lead}
	for i := range t.ranges {
		c := columnOf(t.ranges[i])
		if slices.ContainsFunc(t.columns, func(other sheet.Column) bool { return other.Key == c.Key }) {
			c.Key = "given_" + c.Key
		}
		g.Columns = append(g.Columns, c)
	}
	var kept []int
	for i, c := range t.columns {
		if keep(i) {
			kept = append(kept, i)
			g.Columns = append(g.Columns, c)
		}
	}
	for _, row := range t.rows {
		out := slices.Clone(row[:lead])
		for _, i := range kept {
			out = append(out, row[lead+i])
		}
		g.Rows = append(g.Rows, out)
	}
	return g
}

// column returns the cells of one figure, row by row.
func (t *steps) column(i int) []sheet.Cell {
	out := make([]sheet.Cell, len(t.rows))
	for n, row := range t.rows {
		out[n] = row[len(t.ranges)+i]
	}
	return out
}

// tells reports whether a figure is worth a person's eye: it differs somewhere
// from its first row, is not a range's own value again, and is no step on the
// way to another figure.
func (t *steps) tells(i int) bool {
	if t.quiet[t.columns[i].Key] {
		return false
	}
	cells := t.column(i)
	for n := range t.ranges {
		again := t.columns[i].Kind == columnOf(t.ranges[n]).Kind
		for row := 0; again && row < len(cells); row++ {
			again = alike(cells[row], t.rows[row][n])
		}
		if again {
			return false
		}
	}
	return slices.ContainsFunc(cells, func(c sheet.Cell) bool { return !alike(c, cells[0]) })
}

func alike(a, b sheet.Cell) bool {
	const rounding = 1e-9
	return a.Word == b.Word && (math.IsNaN(a.Value) && math.IsNaN(b.Value) ||
		math.Abs(a.Value-b.Value) <= rounding*math.Max(math.Abs(a.Value), math.Abs(b.Value)))
}

// sparkCells is the width of a trend.
const sparkCells = 16

// forPeople is the trend of each figure that changes, where there is one range,
// and the table of the figures that change; of two ranges a table a figure.
func (t *steps) forPeople(f quantity.Format, ascii bool) []sheet.Grid {
	if t.crossed() {
		if tables := t.across(f); len(tables) > 0 {
			return tables
		}
	}
	g := t.grid(t.tells)
	if t.judged {
		g.Columns = append(g.Columns, sheet.Column{Key: "verdict", Label: "verdict", Kind: quantity.Word})
		for n := range g.Rows {
			g.Rows[n] = append(g.Rows[n], sheet.W(t.scripts[n][1]))
		}
	}
	if len(g.Columns) == len(t.ranges) {
		g.Note = "nothing that is worked out here depends on it"
	}
	if len(t.ranges) > 1 || t.lists {
		return []sheet.Grid{g}
	}
	trend := sheet.Grid{Key: "trend", Title: "How it changes"}
	for _, key := range [...]string{"figure", "trend", "first", "last", "change"} {
		trend.Columns = append(trend.Columns, sheet.Column{Key: key, Label: key, Kind: quantity.Word})
	}
	for i, c := range t.columns {
		if row := t.trend(i, f, ascii); row != nil && t.tells(i) {
			trend.Rows = append(trend.Rows, append([]sheet.Cell{sheet.W(c.Label)}, row...))
		}
	}
	return []sheet.Grid{trend, g}
}

// trend is the sparkline of one figure, its first and last value, and by how
// much they differ; nil for words.
func (t *steps) trend(i int, f quantity.Format, ascii bool) []sheet.Cell {
	var values []float64
	for _, c := range t.column(i) {
		if c.Word != "" {
			return nil
		}
		values = append(values, c.Value)
	}
	c := t.columns[i]
	first, last := values[0], values[len(values)-1]
	sign := ""
	if last > first {
		sign = "+"
	}
	text := func(v float64) sheet.Cell { return sheet.W(f.Text(c.Kind, c.Gauge, v)) }
	return []sheet.Cell{sheet.W(print.Spark(values, sparkCells, ascii)), text(first), text(last), sheet.W(sign + text(last-first).Word)}
}
