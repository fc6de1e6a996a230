package print

import (
	"strings"

	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
)

// steps prints a range: the figures of each step, and the bar of one of them. As many
// figures are shown as leave the bar its room.
func (w *screenWriter) steps(st *sheet.Steps) {
	_, cells := w.t.cells(&sheet.Grid{Columns: st.Columns, Rows: st.Rows})
	widths, least := make([]int, len(cells[0])), leastWidths(cells)
	for n, row := range cells {
		for i, c := range row {
			widths[i] = max(widths[i], style.Width(c))
			if n > 0 {
				least[i] = max(least[i], style.Width(c))
			}
		}
	}
	room := w.t.o.Width - (2 + w.lay.left + 1 + w.lay.cells + 1 + w.lay.right) - len("  lip 1")
	if widthOf(widths) > room {
		widths = least
	}
	for len(widths) > 2 && widthOf(widths) > room {
		widths = widths[:len(widths)-1]
	}
	banded := bandedOf(st.Bars)
	if w.lay == smallLayout || widthOf(widths) > room {
		banded = nil
	}
	numbers := make([]bool, len(widths))
	head := rowLines(cells[0][:len(widths)], numbers, widths)
	for i, l := range head {
		if banded != nil && i == len(head)-1 {
			l += w.stepHead(banded)
		}
		w.line(w.t.pen.Faint(l))
	}
	for n, row := range cells[1:] {
		l := rowLines(row[:len(widths)], numbers, widths)[0]
		if bar := &st.Bars[n]; banded != nil && bar.Band != nil {
			l += "  " + w.marksOf(bar)
		}
		w.line(l)
	}
}

// bandedOf returns the first bar that has a band to draw.
func bandedOf(bars []sheet.Row) *sheet.Row {
	for i := range bars {
		if b := bars[i].Band; b != nil && !none(b) && !aboveNothing(b) {
			return &bars[i]
		}
	}
	return nil
}

// marksOf draws what stands in a bar without its caps and line, which the head has, and
// the word behind it.
func (w *screenWriter) marksOf(r *sheet.Row) string {
	_, b, _ := w.bar(r)
	var out string
	for i, text := range b.text {
		if b.roles[i] == faint {
			text = " "
		}
		out += w.paint(b.roles[i])(text)
	}
	if word, paint := rowWord(r); word != "" {
		out += "  " + w.paint(paint)(word)
	}
	return out
}

// stepHead is the empty band over the bars of a range, its limits on both sides.
func (w *screenWriter) stepHead(of *sheet.Row) string {
	row := sheet.Row{Kind: of.Kind, Gauge: of.Gauge, Band: of.Band}
	low, b, high := w.bar(&row)
	gap := max(1, 2+w.lay.left-style.Width(low)-1)
	return strings.Repeat(" ", gap) + low + " " + strings.TrimSpace(strings.Join(b.text, "")) + " " + high
}

// widthOf is the width of columns with the gaps before them.
func widthOf(widths []int) int {
	sum := 0
	for _, n := range widths {
		sum += gap + n
	}
	return sum
}
