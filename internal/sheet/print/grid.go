package print

import (
	"math"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// grid prints a list.
func (t *tableWriter) grid(g *sheet.Grid) {
	if len(g.Rows) == 0 {
		return
	}
	t.line()
	if g.Title != "" {
		for _, l := range wrap(g.Title, t.o.Width) {
			t.line(t.pen.Heading(l))
		}
	}
	if g.Note != "" {
		for _, l := range wrap(t.ascii(g.Note), t.o.Width-2) {
			t.line("  ", t.pen.Faint(l))
		}
	}
	words, cells := t.cells(g)
	if g.Turned {
		t.columns(words, cells)
	} else {
		cells, words = t.plotted(g, cells, words)
		t.blocks(g, words, cells)
	}
	if anyOfShop(g) {
		t.wrapped("  ", shopMark+" as the shop has set it")
	}
}

// cells returns a list as texts under its head, and which columns are words; a
// turned one on its side.
func (t *tableWriter) cells(g *sheet.Grid) (words []bool, cells [][]string) {
	head := make([]string, len(g.Columns))
	for i, c := range g.Columns {
		head[i] = c.Label
		if !c.Bare {
			head[i] = strings.TrimSpace(c.Label + " " + t.f.Unit(c.Kind))
		}
		head[i] = t.ascii(head[i])
		words = append(words, !c.Kind.Number())
	}
	cells = append(cells, head)
	for _, row := range briefly(g) {
		out := make([]string, len(row))
		for i, c := range row {
			out[i] = t.cell(g.Columns[i], c)
			if c.Shop {
				out[i] += shopMark
			}
			out[i] = t.ascii(out[i])
		}
		cells = append(cells, out)
	}
	if t.f.Screen {
		for i := range g.Columns {
			column := make([]string, len(cells)-1)
			for n, row := range cells[1:] {
				column[n] = row[i]
			}
			evenDecimals(column)
			for n, text := range column {
				cells[n+1][i] = text
			}
		}
	}
	if g.Turned {
		cells, words = turned(cells)
	}
	return words, cells
}

// briefly returns the rows that a table shows.
func briefly(g *sheet.Grid) [][]sheet.Cell {
	if g.Brief == nil {
		return g.Rows
	}
	rows := make([][]sheet.Cell, len(g.Brief))
	for i, n := range g.Brief {
		rows[i] = g.Rows[n]
	}
	return rows
}

// turned swaps rows and columns: names on the left, numbers under each head. A
// line that has no number is left out.
func turned(cells [][]string) (out [][]string, words []bool) {
	for i := range cells[0] {
		line, empty := make([]string, len(cells)), true
		for n, row := range cells {
			line[n] = row[i]
			empty = empty && (n == 0 || row[i] == "-")
		}
		if !empty {
			out = append(out, line)
		}
	}
	words = make([]bool, len(cells))
	words[0] = true
	return out, words
}

func (t *tableWriter) cell(c sheet.Column, v sheet.Cell) string {
	if v.Word != "" || !c.Kind.Number() {
		return quantity.Clean(v.In(t.f.System))
	}
	if math.IsNaN(v.Value) {
		return "-"
	}
	return t.f.Number(c.Kind, c.Gauge, v.Value)
}
