package print

import (
	"math"
	"strings"

	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
)

// The marks of a plot, for terminals that show block characters and for those
// that do not.
var (
	blockLevels = []rune("▁▂▃▄▅▆▇█")
	asciiLevels = []rune("_.-:=+*#")
)

// Spark draws values as one line of at most so many cells, the lowest at the
// bottom and the highest at the top; a longer row is thinned evenly. A value
// that is not known leaves a gap.
func Spark(values []float64, cells int, ascii bool) string {
	levels, gone := blockLevels, '·'
	if ascii {
		levels, gone = asciiLevels, '?'
	}
	low, high := span(values)
	n := min(len(values), cells)
	var b strings.Builder
	for i := range n {
		at := i
		if len(values) > n && n > 1 {
			at = int(math.Round(float64(i) * float64(len(values)-1) / float64(n-1)))
		}
		v := values[at]
		switch {
		case math.IsNaN(v) || math.IsInf(v, 0):
			b.WriteRune(gone)
		case high/2 == low/2:
			b.WriteRune(levels[len(levels)/2])
		default:
			part := (v/2 - low/2) / (high/2 - low/2) // halved, so that no difference overflows
			b.WriteRune(levels[int(math.Round(part*float64(len(levels)-1)))])
		}
	}
	return b.String()
}

// span returns the lowest and the highest of the values that are known.
func span(values []float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			low, high = math.Min(low, v), math.Max(high, v)
		}
	}
	return low, high
}

// plotCells is the width of a bar.
const plotCells = 10

// bars draws each value as a bar from zero; where some are negative, zero is a
// mark and their bars go to the left of it.
func bars(values []float64, ascii bool) []string {
	low, high := span(values)
	low, high = math.Min(low, 0), math.Max(high, 0)
	out := make([]string, len(values))
	perCell := (high - low) / plotCells
	if !(perCell > 0) || math.IsInf(perCell, 0) {
		return out
	}
	left := int(math.Round(-low / perCell))
	for i, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			out[i] = bar(v/perCell, left, ascii)
		}
	}
	return out
}

// bar draws a bar of a length in cells, zero standing after so many cells.
func bar(length float64, left int, ascii bool) string {
	full, half, backHalf, zero, track := "█", "▌", "▐", "│", "·"
	if ascii {
		full, half, backHalf, zero, track = "#", "", "", "|", "."
	}
	halves := int(math.Round(2 * math.Abs(length)))
	body := strings.Repeat(full, halves/2)
	if left == 0 {
		return body + strings.Repeat(half, halves%2)
	}
	if length >= 0 {
		return strings.Repeat(track, left) + zero + body + strings.Repeat(half, halves%2)
	}
	body = strings.Repeat(backHalf, halves%2) + body
	return strings.Repeat(track, max(0, left-style.Width(body))) + body + zero
}

// plotted returns the cells of a grid with a column of bars after each one
// that is to be plotted, and which columns are words.
func (t *tableWriter) plotted(g *sheet.Grid, cells [][]string, words []bool) ([][]string, []bool) {
	rows := briefly(g)
	for i := len(g.Columns) - 1; i >= 0; i-- {
		if !g.Columns[i].Plot {
			continue
		}
		values := make([]float64, len(rows))
		for n, row := range rows {
			values[n] = row[i].Value
		}
		cells[0] = inserted(cells[0], i+1, "")
		for n, b := range bars(values, t.o.ASCII) {
			cells[n+1] = inserted(cells[n+1], i+1, b)
		}
		words = inserted(words, i+1, true)
	}
	return cells, words
}

func inserted[T any](list []T, at int, item T) []T {
	out := append([]T(nil), list[:at]...)
	return append(append(out, item), list[at:]...)
}
