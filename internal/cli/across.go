package cli

import (
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// mostAcross is how many values of the second range stand side by side.
const mostAcross = 8

// crossed reports whether two ranges are shown as tables with the first range
// down and the second across, a table a figure.
func (t *steps) crossed() bool {
	return len(t.ranges) == 2 && !t.lists && t.ranges[1].Swept.Len() <= mostAcross
}

// across is one such table for the verdict and each figure that changes.
func (t *steps) across(f quantity.Format) []sheet.Grid {
	var out []sheet.Grid
	if t.judged {
		verdicts := make([]sheet.Cell, len(t.rows))
		for n := range verdicts {
			verdicts[n] = sheet.W(t.scripts[n][1])
		}
		out = append(out, t.cross(f, sheet.Column{Key: "verdict", Label: "verdict", Kind: quantity.Word}, verdicts))
	}
	for i, c := range t.columns {
		if t.tells(i) {
			out = append(out, t.cross(f, c, t.column(i)))
		}
	}
	return out
}

// cross lays the cells of one figure out, row by row.
func (t *steps) cross(f quantity.Format, c sheet.Column, cells []sheet.Cell) sheet.Grid {
	down, over := t.ranges[0], t.ranges[1]
	title := c.Label
	if unit := f.Unit(c.Kind); unit != "" {
		title += ", " + unit
	}
	g := sheet.Grid{Key: c.Key, Title: title, Note: "across: " + over.Label(), Lead: 1, Columns: []sheet.Column{columnOf(down)}}
	head, values := columnOf(over), over.Swept.Values()
	for _, v := range values {
		g.Columns = append(g.Columns, sheet.Column{Key: c.Key, Label: f.Text(head.Kind, head.Gauge, v), Kind: c.Kind, Gauge: c.Gauge, Bare: true})
	}
	width := len(values)
	for n, v := range down.Swept.Values() {
		g.Rows = append(g.Rows, append([]sheet.Cell{sheet.V(v)}, cells[n*width:(n+1)*width]...))
	}
	return g
}
