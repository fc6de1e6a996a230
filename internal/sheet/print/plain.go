package print

import (
	"bufio"
	"io"
	"math"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// writePlain prints one figure a line, tab-separated under a header, in the
// reader's units; a list under a header of its own.
func writePlain(w io.Writer, jobs []Job, o Options) error {
	b := bufio.NewWriter(w)
	for n, j := range jobs {
		f := quantity.Format{System: j.System, Gauges: o.Gauges}
		if len(j.Sheet.Sections) > 0 || j.Sheet.Verdict != nil {
			plainFigures(b, j.Sheet, f, len(jobs) > 1, n == 0)
		}
		for i := range j.Sheet.Grids {
			plainGrid(b, &j.Sheet.Grids[i], f)
		}
	}
	return b.Flush()
}

func plainFigures(b *bufio.Writer, s *sheet.Sheet, f quantity.Format, named, headed bool) {
	lead, head := "", ""
	if named {
		lead, head = tabless(s.Title)+"\t", "drill\t"
	}
	if headed {
		tabbed(b, head+"figure", "value", "unit", "low", "high", "state", "basis", "uncertainty")
	}
	s.Each(func(fig *sheet.Figure) {
		value := tabless(fig.Word)
		if value == "" {
			value = number(fig, f)
		}
		low, high := "", ""
		if fig.Limit != nil {
			fine := apart(fig, f)
			low, high = bound(fig, fig.Limit.Low, fine), bound(fig, fig.Limit.High, fine)
		}
		tabbed(b, lead+fig.Label, value, f.Unit(fig.Kind), low, high, stateWord(fig), basis(fig), plusMinus(fig, f))
	})
	if s.Verdict != nil {
		tabbed(b, lead+"verdict", s.Verdict.Word, "", "", "", strings.Join(s.Verdict.Reasons, " "), "", "")
	}
}

// bound prints an end of a limit; where a limit has no such end, the field is
// empty, as JSON has null.
func bound(fig *sheet.Figure, v float64, f quantity.Format) string {
	if math.IsInf(v, 0) {
		return ""
	}
	return f.Number(fig.Kind, fig.Gauge, v)
}

func plainGrid(b *bufio.Writer, g *sheet.Grid, f quantity.Format) {
	head := make([]string, len(g.Columns))
	for i, c := range g.Columns {
		head[i] = strings.TrimSpace(c.Label + " " + f.Unit(c.Kind))
	}
	marked := anyOfShop(g)
	if marked {
		head = append(head, "set by shop")
	}
	tabbed(b, head...)
	for _, row := range g.Rows {
		out := make([]string, len(row))
		for i, c := range row {
			out[i] = tabless(c.In(f.System))
			if c.Word == "" && !math.IsNaN(c.Value) {
				out[i] = f.Number(g.Columns[i].Kind, g.Columns[i].Gauge, c.Value)
			}
		}
		if marked {
			out = append(out, ofShop(g, row))
		}
		tabbed(b, out...)
	}
}

func tabbed(b *bufio.Writer, cells ...string) {
	b.WriteString(strings.Join(cells, "\t"))
	b.WriteByte('\n')
}

func tabless(s string) string { return quantity.Clean(strings.ReplaceAll(s, "\t", " ")) }
