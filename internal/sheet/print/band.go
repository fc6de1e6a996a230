package print

import (
	"math"

	"evenlip/internal/sheet"
)

// A bar shows a value within the band it is held against:
//
//	57.5 ├─────2───1─────┤ 60.5
//
// Its caps are the limits. A value outside stands past its cap, a cell for each part
// of the band that a cell is, as far as there is room; farther it is a mark of its own.
// A band with one end has one cap, and its line reaches to twice the limit.

// barMarks are what a bar is drawn with.
type barMarks struct{ line, low, high, value, way, under, over string }

var (
	barUTF8  = barMarks{"─", "├", "┤", "●", "·", "«", "»"}
	barASCII = barMarks{"-", "|", "|", "o", ".", "<", ">"}
)

// BarShown is a short bar with its value in the middle, to explain what a bar is.
func BarShown(ascii bool) string {
	m := barUTF8
	if ascii {
		m = barASCII
	}
	return m.low + m.line + m.line + m.value + m.line + m.line + m.high
}

// part is a piece of a bar and how it is painted.
type part struct {
	text string
	role role
}

// role says how a piece of text is painted.
type role uint8

const (
	plain role = iota
	bold
	faint
	bad      // outside its limit
	doubtful // cannot be told
)

// bar is a bar of so many cells between its caps, with room for some past each.
type band struct {
	cells       int
	left, right int // room past the caps
	low, high   float64
	noCap       bool // at the upper end
	marks       barMarks
	text        []string // from left past the lower cap to right past the upper
	roles       []role
}

// newBand draws the empty band.
func newBand(low, high float64, cells, left, right int, marks barMarks) *band {
	b := &band{cells: cells, left: left, right: right, low: low, high: high, marks: marks}
	if math.IsInf(high, 1) {
		b.high, b.noCap = 2*low, true
	}
	n := left + 1 + cells + 1 + right
	b.text, b.roles = make([]string, n), make([]role, n)
	for i := range n {
		b.text[i], b.roles[i] = " ", faint
	}
	for i := range cells {
		b.put(i, marks.line, faint)
	}
	b.put(-1, marks.low, faint)
	if b.noCap {
		b.put(cells, marks.line, faint)
	} else {
		b.put(cells, marks.high, faint)
	}
	return b
}

// put sets a cell, counted from the one behind the lower cap.
func (b *band) put(cell int, text string, r role) {
	b.text[cell+b.left+1], b.roles[cell+b.left+1] = text, r
}

// at returns the cell of a value: from 0 within the band; before -1 and past the
// upper cap outside of it; far where there is no room for it.
func (b *band) at(v float64) (cell int, far bool) {
	last := float64(b.cells - 1)
	width := b.high - b.low
	slack := rounding * math.Max(math.Abs(b.low), math.Abs(b.high))
	switch {
	case v < b.low-slack:
		past := math.Ceil((b.low-v)/width*float64(b.cells) - rounding)
		return -1 - int(math.Min(past, float64(b.left))), past > float64(b.left)
	case v > b.high+slack && b.noCap:
		return b.cells, true
	case v > b.high+slack:
		past := math.Ceil((v-b.high)/width*float64(b.cells) - rounding)
		return b.cells + int(math.Min(past, float64(b.right))), past > float64(b.right)
	}
	return int(math.Floor(math.Min(math.Max((v-b.low)/width, 0), 1)*last + 0.5)), false
}

// rounding is the part of a limit that arithmetic may be off by.
const rounding = 1e-9

// draw puts the marks of a row into the bar.
func (b *band) draw(marks []sheet.Mark) {
	for i := range marks {
		b.doubt(&marks[i])
	}
	names := []string{b.marks.value}
	if len(marks) == 2 {
		one, _ := b.at(marks[0].Value)
		two, _ := b.at(marks[1].Value)
		names = []string{"1", "2"}
		if one-two < 2 && two-one < 2 {
			both := marks[0]
			if marks[1].State.Outside() {
				both = marks[1]
			}
			marks, names = []sheet.Mark{both}, []string{b.marks.value}
		}
	}
	for i, m := range marks {
		b.mark(m, names[i])
	}
}

func (b *band) mark(m sheet.Mark, name string) {
	if math.IsNaN(m.Value) {
		return
	}
	paint := bold
	switch {
	case m.State.Outside():
		paint = bad
	case m.State == sheet.Unsure || m.State == sheet.NearLow || m.State == sheet.NearHigh:
		paint = doubtful
	}
	cell, far := b.at(m.Value)
	if cell < -1 {
		b.way(cell, -2, paint)
	}
	if cell > b.cells {
		b.way(b.cells+1, cell, paint)
	}
	switch {
	case !far:
		b.put(cell, name, paint)
	case cell < 0:
		b.put(cell, b.marks.under, paint)
		if name != b.marks.value && b.left > 1 {
			b.put(cell+1, name, paint)
		}
	default:
		b.put(cell, b.marks.over, paint)
		if name != b.marks.value && !b.noCap && b.right > 1 {
			b.put(cell-1, name, paint)
		}
	}
}

// way leads from a cap to a mark outside of it.
func (b *band) way(from, to int, paint role) {
	for c := from; c <= to; c++ {
		if t := b.text[c+b.left+1]; t == " " {
			b.put(c, b.marks.way, paint)
		}
	}
}

// doubt puts parentheses around what a value may be, where that is a cell or more.
func (b *band) doubt(m *sheet.Mark) {
	if math.IsNaN(m.Low) || math.IsNaN(m.High) || math.IsInf(m.High, 0) || math.IsInf(m.Low, 0) {
		return
	}
	low, _ := b.at(m.Low)
	high, _ := b.at(m.High)
	at, _ := b.at(m.Value)
	if math.IsNaN(m.Value) {
		at = (low + high) / 2
	}
	paint := bold
	if m.State == sheet.Unsure {
		paint = doubtful
	}
	if low < at {
		b.put(low, "(", paint)
	}
	if high > at {
		b.put(high, ")", paint)
	}
	if high > b.cells {
		b.way(b.cells+1, high, paint)
	}
	if low < -1 {
		b.way(low, -2, paint)
	}
}

// parts returns the bar in pieces of one paint each, blanks at its ends left out: how
// many cells are left of the lower cap is told beside them.
func (b *band) parts() (parts []part, past int) {
	from, to := 0, len(b.text)
	for from < b.left && b.text[from] == " " {
		from++
	}
	for to > 0 && b.text[to-1] == " " {
		to--
	}
	for i := from; i < to; i++ {
		if n := len(parts); n > 0 && parts[n-1].role == b.roles[i] {
			parts[n-1].text += b.text[i]
		} else {
			parts = append(parts, part{b.text[i], b.roles[i]})
		}
	}
	return parts, b.left - from
}
