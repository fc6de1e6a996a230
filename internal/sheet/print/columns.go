package print

import (
	"slices"
	"strings"

	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
)

// gap is the room between two columns, and before the first.
const gap = 2

// columns lays the cells out under their head, words to the left and numbers to
// the right. Columns too wide for the line are wrapped, the widest first; where
// not even that fits, each row becomes a paragraph.
func (t *tableWriter) columns(words []bool, cells [][]string) {
	widths, fits := t.columnWidths(cells)
	if !fits {
		t.paragraphs(cells)
		return
	}
	for n, row := range cells {
		for _, l := range rowLines(row, words, widths) {
			if n == 0 {
				l = t.pen.Faint(l)
			}
			t.line(l)
		}
	}
}

// columnWidths returns the cells each column gets, and whether the line holds
// them all with no word broken.
func (t *tableWriter) columnWidths(cells [][]string) (widths []int, fits bool) {
	widths = make([]int, len(cells[0]))
	for _, row := range cells {
		for i, c := range row {
			widths[i] = max(widths[i], style.Width(c))
		}
	}
	least := leastWidths(cells)
	over := gap*len(widths) - t.o.Width
	for _, w := range widths {
		over += w
	}
	for ; over > 0; over-- {
		widest := -1
		for i, w := range widths {
			if w > least[i] && (widest < 0 || w > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			return nil, false
		}
		widths[widest]--
	}
	return widths, true
}

// rowLines sets one row in as many lines as its longest cell takes.
func rowLines(row []string, words []bool, widths []int) []string {
	var lines []string
	indent := 0
	for i, c := range row {
		for n, part := range wrap(c, widths[i]) {
			if n == len(lines) {
				lines = append(lines, "")
			}
			lead := pad(lines[n], indent) + strings.Repeat(" ", gap)
			if words[i] {
				lines[n] = lead + pad(part, widths[i])
			} else {
				lines[n] = lead + padLeft(part, widths[i])
			}
		}
		indent += gap + widths[i]
	}
	return lines
}

// paragraphs sets each row as text: "head cell; head cell".
func (t *tableWriter) paragraphs(cells [][]string) {
	for _, row := range cells[1:] {
		items := slices.Clone(row)
		for i, head := range cells[0] {
			items[i] = strings.TrimSpace(head + " " + row[i])
		}
		for i, l := range wrapItems(items, "; ", t.o.Width-2*gap) {
			if i > 0 {
				l = strings.Repeat(" ", gap) + l
			}
			t.line(strings.Repeat(" ", gap), l)
		}
	}
}

// blocks lays out a grid that may be wider than the table: where it is, the
// columns that find no room go on underneath, beside the leading ones repeated.
func (t *tableWriter) blocks(g *sheet.Grid, words []bool, cells [][]string) {
	if g.Lead == 0 {
		t.columns(words, cells)
		return
	}
	least := leastWidths(cells)
	for from := g.Lead; from < len(words); {
		used := 0
		for _, w := range least[:g.Lead] {
			used += w + gap
		}
		to := from
		for to < len(words) && (to == from || used+gap+least[to] <= t.o.Width) {
			used += gap + least[to]
			to++
		}
		if from > g.Lead {
			t.line()
		}
		block := make([][]string, len(cells))
		for n, row := range cells {
			block[n] = picked(row, g.Lead, from, to)
		}
		t.columns(picked(words, g.Lead, from, to), block)
		from = to
	}
}

// picked returns the leading items and those from one to another.
func picked[T any](list []T, lead, from, to int) []T {
	return append(append([]T(nil), list[:lead]...), list[from:to]...)
}

// leastWidths returns the cells that each column needs with no word broken.
func leastWidths(cells [][]string) []int {
	least := make([]int, len(cells[0]))
	for _, row := range cells {
		for i, c := range row {
			for _, word := range strings.Fields(c) {
				least[i] = max(least[i], style.Width(word))
			}
		}
	}
	return least
}
