package print

import (
	"strings"

	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
)

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
