package print

import (
	"slices"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
)

// wordCells is where the lines of a list begin behind the word of their group, and
// bareCells where there is none.
const wordCells, bareCells = 9, 2

// leastSays is the room that is wanted for what is wrong with a drill: where there is
// less, it stands under its line. A name of more than mostCell widens no column.
const leastSays, mostCell = 24, 20

// listLine is a line of a list as texts.
type listLine struct{ cells, says []string }

// lists prints the lists of the answer, or those below it.
func (w *screenWriter) lists(lists []sheet.List, below bool) {
	for i := range lists {
		if lists[i].Below == below {
			w.list(&lists[i])
		}
	}
}

// list prints the drills of a list.
func (w *screenWriter) list(l *sheet.List) {
	lead := bareCells
	groups := make([][]listLine, len(l.Groups))
	var widths []int
	for i, g := range l.Groups {
		if g.Word != "" {
			lead = wordCells
		}
		groups[i] = w.listLines(g.Lines)
		if !g.Flow {
			alignPoints(groups[i], l.Columns)
			widths = widened(widths, groups[i], mostCell)
		}
	}
	if l.Columns != nil {
		var heads listLine
		for i, c := range l.Columns {
			if i < len(widths) {
				heads.cells = append(heads.cells, w.t.ascii(c.Label))
			} else {
				heads.says = append(heads.says, c.Label)
			}
		}
		widths = widened(widths, []listLine{heads}, mostCell)
		if !w.saysBeside(lead, widths) {
			heads.says = nil
		}
		w.listLine(pad("", lead), heads, l.Columns, widths, w.t.pen.Faint)
	}
	for i, g := range l.Groups {
		start := w.groupWord(g.Word) + pad("", lead-style.Width(g.Word))
		if g.Flow {
			w.flow(start, lead, groups[i])
			continue
		}
		for _, line := range groups[i] {
			w.listLine(start, line, l.Columns, widths, w.t.pen.Plain)
			start = pad("", lead)
		}
	}
}

// widened returns the widths of columns that hold those lines, too, but for cells of
// more than most.
func widened(widths []int, lines []listLine, most int) []int {
	for _, line := range lines {
		for i, c := range line.cells {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			if n := style.Width(c); n <= most {
				widths[i] = max(widths[i], n)
			}
		}
	}
	return widths
}

// saysBeside reports whether there is room behind the columns for what is wrong.
func (w *screenWriter) saysBeside(lead int, widths []int) bool {
	for _, width := range widths {
		lead += width + gap
	}
	return w.t.o.Width-lead >= leastSays
}

// groupWord paints the word of a group: a verdict as it is painted alone.
func (w *screenWriter) groupWord(word string) string {
	if slices.Contains(style.Verdicts, word) {
		return w.t.pen.Verdict(word)
	}
	return w.t.pen.Bold(word)
}

// listLines prints the numbers of lines, each in its own units where the reader asked
// for none.
func (w *screenWriter) listLines(lines []sheet.ListLine) []listLine {
	out := make([]listLine, len(lines))
	asked := w.t.f.System
	for i, line := range lines {
		if asked == quantity.Unset {
			w.t.f.System = line.System
		}
		for _, c := range line.Cells {
			out[i].cells = append(out[i].cells, w.text(c))
		}
		for _, s := range line.Says {
			out[i].says = append(out[i].says, w.text(s))
		}
	}
	w.t.f.System = asked
	return out
}

// alignPoints sets the points of the lengths of a column under one another, and their
// units, too: "0.026 in" over "13.1   mm".
func alignPoints(lines []listLine, columns []sheet.Column) {
	for i, c := range columns {
		if c.Kind != quantity.Length {
			continue
		}
		most := 0
		for _, line := range lines {
			_, frac, _ := parted(line.cells[i])
			most = max(most, len(frac))
		}
		for _, line := range lines {
			if whole, frac, unit := parted(line.cells[i]); unit != "" {
				line.cells[i] = whole + pad(frac, most) + unit
			}
		}
	}
}

// parted takes a number apart: "13.1 mm" into "13", ".1" and " mm".
func parted(text string) (whole, frac, unit string) {
	at := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("-0123456789.", r) })
	if at < 0 {
		at = len(text)
	}
	number, unit := text[:at], text[at:]
	if point := strings.IndexByte(number, '.'); point >= 0 {
		return number[:point], number[point:], unit
	}
	return number, "", unit
}

// listLine prints a line in its columns, and what is wrong behind them.
func (w *screenWriter) listLine(start string, line listLine, columns []sheet.Column, widths []int, paint func(string) string) {
	lead, column := style.Width(start), style.Width(start)
	text := ""
	for i, c := range line.cells {
		if i < len(columns) && columns[i].Kind != quantity.Word {
			c = padLeft(c, widths[i])
		}
		text += pad(c, widths[i]) + pad("", gap)
		column += widths[i] + gap
	}
	text = strings.TrimRight(text, " ")
	if len(line.says) == 0 {
		w.line(start, paint(text))
		return
	}
	if lead+style.Width(text)+gap > column || !w.saysBeside(lead, widths) {
		w.line(start, paint(text))
		column = lead + gap
		if len(columns) > 0 && columns[0].Kind != quantity.Word { // under the name, not its number
			column += widths[0]
		}
		start = pad("", column)
	} else {
		start += paint(pad(text, column-lead))
	}
	for _, l := range wrapItems(line.says, ", ", w.t.o.Width-column) {
		w.line(start, paint(l))
		start = pad("", column)
	}
}

// flow prints lines one behind the other: bare names a blank apart, those of which
// more is told three.
func (w *screenWriter) flow(start string, lead int, lines []listLine) {
	between := " "
	entries := make([]string, len(lines))
	for i, l := range lines {
		entries[i] = strings.Join(l.cells, " ")
		if len(l.says) > 0 {
			entries[i] += ": " + strings.Join(l.says, ", ")
		}
		if strings.Contains(entries[i], " ") {
			between = "   "
		}
	}
	text, used := start, lead
	for i, e := range entries {
		parts := wrap(e, w.t.o.Width-lead)
		if i > 0 && (used+len(between)+style.Width(e) > w.t.o.Width || len(parts) > 1) {
			w.line(text)
			text, used = pad("", lead), lead
		} else if i > 0 {
			text, used = text+between, used+len(between)
		}
		for _, p := range parts[:len(parts)-1] {
			w.line(text, p)
			text, used = pad("", lead), lead
		}
		last := parts[len(parts)-1]
		text, used = text+last, used+style.Width(last)
	}
	w.line(text)
}
