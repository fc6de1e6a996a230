package print

import (
	"math"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
)

// grid prints a list. Uncertainties stand beside their numbers where the line
// has room for them, else the largest of each column stands underneath.
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
	words, cells := t.cells(g, true)
	roomy := t.roomFor(cells)
	if !roomy {
		words, cells = t.cells(g, false)
	}
	if g.Turned {
		t.columns(words, cells)
	} else {
		cells, words = t.plotted(g, cells, words)
		t.blocks(g, words, cells)
	}
	if most := t.mostDoubt(g); !roomy && most != "" {
		t.wrapped("  ", most)
	}
	if anyOfShop(g) {
		t.wrapped("  ", shopMark+" as the shop has set it")
	}
}

// cells returns a list as texts under its head, and which columns are words; a
// turned one on its side.
func (t *tableWriter) cells(g *sheet.Grid, doubt bool) (words []bool, cells [][]string) {
	head := make([]string, len(g.Columns))
	for i, c := range g.Columns {
		head[i] = c.Label
		if !c.Bare {
			head[i] = strings.TrimSpace(c.Label + " " + t.f.Unit(c.Kind))
		}
		head[i] = t.ascii(head[i])
		words = append(words, c.Kind == quantity.Word)
	}
	cells = append(cells, head)
	for _, row := range briefly(g) {
		out := make([]string, len(row))
		for i, c := range row {
			out[i] = t.cell(g.Columns[i], c)
			if u := plusMinus(g.Columns[i].Kind, g.Columns[i].Gauge, c.Value, c.Spread, t.f); doubt && u != "" {
				out[i] += " ±" + u
			}
			if c.Shop {
				out[i] += shopMark
			}
			out[i] = t.ascii(out[i])
		}
		cells = append(cells, out)
	}
	if g.Turned {
		cells, words = turned(cells)
	}
	return words, cells
}

// roomFor reports whether a line holds the cells with none of them wrapped.
func (t *tableWriter) roomFor(cells [][]string) bool {
	used := 0
	for i := range cells[0] {
		widest := 0
		for _, row := range cells {
			widest = max(widest, style.Width(row[i]))
		}
		used += gap + widest
	}
	return used <= t.o.Width
}

// mostDoubt is the largest uncertainty of each column, in one line.
func (t *tableWriter) mostDoubt(g *sheet.Grid) string {
	var items []string
	for i, c := range g.Columns {
		most := sheet.Cell{}
		for _, row := range briefly(g) {
			if row[i].Spread > most.Spread {
				most = row[i]
			}
		}
		if u := plusMinus(c.Kind, c.Gauge, most.Value, most.Spread, t.f); u != "" {
			items = append(items, strings.TrimSpace(c.Label+" "+u+" "+t.f.Unit(c.Kind)))
		}
	}
	if len(items) == 0 {
		return ""
	}
	return "uncertain by at most: " + strings.Join(items, "; ")
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
	if v.Word != "" || c.Kind == quantity.Word {
		return quantity.Clean(v.In(t.f.System))
	}
	if math.IsNaN(v.Value) {
		return "-"
	}
	return t.f.Number(c.Kind, c.Gauge, v.Value)
}
