package cli

import (
	"math"
	"slices"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// mostSteps is how many rows of a range a screen shows, and mostFigures how many figures
// beside each of them.
const mostSteps, mostFigures = 12, 4

// screen is what a person is shown of a range: where a limit is crossed, and the figures
// of each step's own screen that change, one of them drawn within its band.
func (t *steps) screen(s *sheet.Sheet, f quantity.Format) *sheet.Screen {
	scr := &sheet.Screen{About: s.Drill, Told: "outside-limit " + t.changing()}
	var ranges []string
	for _, r := range t.ranges {
		ranges = append(ranges, r.Label()+" "+r.Text)
	}
	if t.lists || len(t.ranges) > 1 {
		scr.Tables = t.likeliest(f)
	} else if lines := t.lines(); slices.ContainsFunc(lines, func(l []*sheet.Row) bool { return telling(l) > 0 }) {
		scr.Steps = t.table(scr, lines)
	} else {
		g := t.grid(t.tells)
		g.Title, g.Columns = "", g.Columns[:min(len(g.Columns), 1+mostFigures)]
		for i := range g.Rows {
			g.Rows[i] = g.Rows[i][:len(g.Columns)]
		}
		scr.Tables = append(scr.Tables, t.thinned(g, scr))
	}
	scr.Head = t.head(scr)
	scr.About += ", " + strings.Join(ranges, ", ")
	return scr
}

// changing lists the codes of findings that do not hold at every step, and those of
// reasons, which the figures show.
func (t *steps) changing() string {
	var codes []string
	for _, r := range t.found {
		if !r.same || r.rows < t.count || slices.Contains(t.reasons, r.Code) {
			codes = append(codes, r.Code)
		}
	}
	return strings.Join(codes, " ")
}

// likeliest is the table that tells most of two ranges: of the verdict, else of what
// breaks its limit.
func (t *steps) likeliest(f quantity.Format) []sheet.Grid {
	tables := t.forPeople(f, false)
	for _, g := range tables {
		if g.Key == "verdict" || len(t.limits) > 0 && g.Key == t.limits[0].key {
			tables = []sheet.Grid{g}
			break
		}
	}
	tables = tables[:1]
	if note := tables[0].Note; note != "" {
		tables[0].Title += "; " + note
	}
	return tables
}

// head says at which step a verdict changes, or a limit is first broken, and adds to the
// screen which.
func (t *steps) head(scr *sheet.Screen) quantity.Text {
	if t.judged {
		words := make([]string, len(t.scripts))
		for i := range t.scripts {
			words[i] = "MEASURE"
			if w := t.scripts[i][1]; w != "" {
				words[i] = strings.ToUpper(w)
			}
		}
		change := slices.IndexFunc(words, func(w string) bool { return w != words[0] })
		if change < 0 {
			return quantity.Sayf(words[0] + " AT EVERY STEP")
		}
		where := at(t.ranges, t.values(change))
		return quantity.Text{Format: words[0] + " AT FIRST, " + words[change] + " FROM " + where.Format + " ON", Args: where.Args}
	}
	if len(t.limits) == 0 {
		return quantity.Sayf("NO LIMIT IS CROSSED")
	}
	b := t.limits[0]
	scr.About += ": " + b.label
	if b.rows == t.count {
		return quantity.Sayf("OUTSIDE ITS LIMIT AT EVERY STEP")
	}
	return quantity.Text{Format: "OUTSIDE ITS LIMIT FROM " + b.first.Format + " ON", Args: b.first.Args}
}

// values are those of the ranges at a step.
func (t *steps) values(step int) []float64 {
	out := make([]float64, len(t.ranges))
	for i := range out {
		out[i] = t.rows[step][i].Value
	}
	return out
}

// named is what a row of a screen is called whatever its numbers.
func named(r *sheet.Row) string {
	return strings.TrimSpace(strings.ReplaceAll(r.Label.Format, "{}", ""))
}

// lines are the rows of the steps' screens that change, figure by figure; nil where a
// step has none.
func (t *steps) lines() [][]*sheet.Row {
	var keys []string
	for _, rows := range t.shown {
		for i := range rows {
			if n := rowKey(&rows[i]); len(rows[i].Marks) > 0 && !slices.Contains(keys, n) {
				keys = append(keys, n)
			}
		}
	}
	lines := make([][]*sheet.Row, len(keys))
	for i, key := range keys {
		lines[i] = make([]*sheet.Row, len(t.shown))
		for step, rows := range t.shown {
			if at := slices.IndexFunc(rows, func(r sheet.Row) bool { return rowKey(&r) == key && len(r.Marks) > 0 }); at >= 0 {
				lines[i][step] = &rows[at]
			}
		}
	}
	return slices.DeleteFunc(lines, func(line []*sheet.Row) bool { return !changes(line) })
}

// rowKey tells rows apart: by their figure, or their name where there is none.
func rowKey(r *sheet.Row) string {
	if r.Key != "" {
		return r.Key
	}
	return named(r)
}

// table is the figures that change from step to step.
func (t *steps) table(scr *sheet.Screen, lines [][]*sheet.Row) *sheet.Steps {
	barred := slices.MaxFunc(lines, func(a, b []*sheet.Row) int { return telling(a) - telling(b) })
	if i := slices.IndexFunc(lines, func(l []*sheet.Row) bool { return &l[0] == &barred[0] }); i >= mostFigures {
		lines[mostFigures-1] = lines[i]
	}
	lines = lines[:min(len(lines), mostFigures)]
	out := &sheet.Steps{Columns: []sheet.Column{columnOf(t.ranges[0])}}
	for _, line := range lines {
		r := some(line)
		for lip := range r.Marks {
			label := named(r)
			if len(r.Marks) > 1 {
				label += [...]string{", lip 1", ", lip 2"}[lip]
			}
			out.Columns = append(out.Columns, sheet.Column{Label: label, Kind: r.Kind, Gauge: r.Gauge})
		}
	}
	steps := picked(len(t.shown), slices.IndexFunc(barred, func(r *sheet.Row) bool { return r != nil && r.Outside() }))
	for _, step := range steps {
		row := []sheet.Cell{sheet.V(t.rows[step][0].Value)}
		for _, line := range lines {
			for lip := range some(line).Marks {
				v := math.NaN()
				if r := line[step]; r != nil && lip < len(r.Marks) {
					v = r.Marks[lip].Value
				}
				row = append(row, sheet.V(v))
			}
		}
		out.Rows = append(out.Rows, row)
		bar := sheet.Row{}
		if r := barred[step]; r != nil {
			bar = *r
		}
		out.Bars = append(out.Bars, bar)
	}
	if len(steps) < len(t.shown) {
		scr.Note("note", "{} of {} steps are shown", quantity.Of(quantity.Count, float64(len(steps))), quantity.Of(quantity.Count, float64(len(t.shown))))
	}
	return out
}

// some returns a row of a line that has one, with as many marks as any.
func some(line []*sheet.Row) *sheet.Row {
	var out *sheet.Row
	for _, r := range line {
		if r != nil && (out == nil || len(r.Marks) > len(out.Marks)) {
			out = r
		}
	}
	return out
}

// changes reports whether a line is not the same at every step.
func changes(line []*sheet.Row) bool {
	first := line[0]
	return slices.ContainsFunc(line, func(r *sheet.Row) bool {
		if r == nil || first == nil || len(r.Marks) != len(first.Marks) {
			return r != first
		}
		for i := range r.Marks {
			if !alike(sheet.V(r.Marks[i].Value), sheet.V(first.Marks[i].Value)) {
				return true
			}
		}
		return false
	})
}

// telling ranks a line by how much its bar tells: most where a limit is crossed, then
// where one is broken, then where there is one.
func telling(line []*sheet.Row) int {
	outside, banded := 0, 0
	for _, r := range line {
		if r != nil && r.Band != nil {
			banded++
			if r.Outside() {
				outside++
			}
		}
	}
	switch {
	case outside > 0 && outside < banded:
		return 3
	case outside > 0:
		return 2
	case banded > 0:
		return 1
	}
	return 0
}

// picked lists the steps that are shown of so many: evenly, with the first, the last and
// the one at which a limit is crossed.
func picked(n, crossed int) []int {
	if n <= mostSteps {
		out := make([]int, n)
		for i := range out {
			out[i] = i
		}
		return out
	}
	var out []int
	for i := range mostSteps - 1 {
		out = append(out, i*(n-1)/(mostSteps-2))
	}
	if crossed >= 0 && !slices.Contains(out, crossed) {
		out = append(out, crossed)
		slices.Sort(out)
	}
	return slices.Compact(out)
}

// thinned is a table with as many of its rows as a screen shows.
func (t *steps) thinned(g sheet.Grid, scr *sheet.Screen) sheet.Grid {
	steps := picked(len(g.Rows), -1)
	if len(steps) < len(g.Rows) {
		g.Brief = steps
		scr.Note("note", "{} of {} steps are shown", quantity.Of(quantity.Count, float64(len(steps))), quantity.Of(quantity.Count, float64(len(g.Rows))))
	}
	return g
}
