package print

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
)

// A screen has three blocks with a blank line between: the answer, the figures, the
// foot. Columns at 80: figures from 2, value up to 34, bar from 46, word from 73.
type layout struct {
	value, unit, bar, cells, left, right, word int
}

var (
	wideLayout   = layout{value: 34, unit: 41, bar: 46, cells: 15, left: 3, right: 3, word: 73}
	middleLayout = layout{value: 28, unit: 33, bar: 38, cells: 7, left: 1, right: 2, word: 55}
	smallLayout  = layout{}
)

// The widths from which a screen has the wideLayout bars, and bars at all.
const wideFrom, barsFrom = 72, 60

// most is how many lines one drill's screen has: with the line typed and the prompt it
// fills a terminal of 24.
const most, mostRows = 22, 12

type screenWriter struct {
	t   *tableWriter
	s   *sheet.Sheet
	lay layout
	out []string
}

func (t *tableWriter) screen(s *sheet.Sheet) {
	columns := t.o.Width - besideFrom
	if s.Picture == nil || t.o.Width < PictureFrom {
		columns = 0
	} else {
		t.o.Width = besideFrom - 4
		defer func() { t.o.Width = columns + besideFrom }()
	}
	lines, figures := t.screenLines(s)
	if columns > 0 {
		beside(lines, figures, s.Picture(min(columns, mostPicture, 2*len(lines)-3), t.o.ASCII))
	}
	for _, l := range lines {
		t.line(l)
	}
}

// PictureFrom is the width from which a screen has room for the drill's picture beside
// it, besideFrom where that begins, and mostPicture how wide it is at the most.
const PictureFrom, besideFrom, mostPicture = 110, 84, 32

// beside sets a picture right of lines, from the one on which the figures begin, or
// higher where it would not fit else; one that does not fit at all is left out.
func beside(lines []string, figures int, picture []string) {
	at := max(0, min(figures, len(lines)-len(picture)))
	if at+len(picture) > len(lines) {
		return
	}
	for i, l := range picture {
		if l = strings.TrimRight(l, " "); l != "" {
			lines[at+i] = pad(lines[at+i], besideFrom) + l
		}
	}
}

// screenLines makes the lines of a screen; figures is where the first block behind the
// answer begins.
func (t *tableWriter) screenLines(s *sheet.Sheet) (lines []string, figuresAt int) {
	scr := s.Screen()
	w := &screenWriter{t: t, s: s, lay: smallLayout}
	switch {
	case t.o.Width >= wideFrom:
		w.lay = wideLayout
	case t.o.Width >= barsFrom:
		w.lay = middleLayout
	}
	answer := w.block(func() { w.answer(scr) })
	foot := w.block(func() { w.foot(scr) })
	tables := w.block(func() {
		w.tables(scr.Tables)
		w.lists(scr.Lists, true)
		if scr.Steps != nil {
			w.steps(scr.Steps)
		}
	})
	rows := ordered(scr.Rows)
	figures := w.block(func() { w.rows(rows) })
	for len(rows) > 0 && (len(rows) > mostRows || t.o.Width >= wideFrom && len(answer)+len(tables)+len(figures)+len(foot)+3 > most) {
		rows = rows[:len(rows)-1]
		figures = w.block(func() { w.rows(rows) })
	}
	if scr.Behind {
		tables, figures = figures, tables
	}
	for _, block := range [][]string{answer, scr.Picture, tables, figures, foot} {
		if len(block) > 0 && len(lines) > 0 {
			lines = append(lines, "")
		}
		lines = append(lines, block...)
	}
	return lines, len(answer) + 1
}

// block gathers the lines that write puts out.
func (w *screenWriter) block(write func()) []string {
	w.out = nil
	write()
	return w.out
}

func (w *screenWriter) line(parts ...string) {
	w.out = append(w.out, strings.TrimRight(strings.Join(parts, ""), " "))
}

func (w *screenWriter) text(t quantity.Text) string {
	return w.t.ascii(quantity.Clean(strings.TrimSpace(t.In(w.t.f))))
}

// answer prints the headline, what is wrong and its cure, and what to type next.
func (w *screenWriter) answer(scr *sheet.Screen) {
	pen, width := w.t.pen, w.t.o.Width
	head := w.text(scr.Head)
	about := w.t.ascii(quantity.Clean(scr.About))
	from := w.t.ascii(quantity.Clean(w.s.From))
	badge := scr.Verdict
	plainHead := head
	if badge != "" {
		if head != "" && !strings.HasPrefix(head, ",") {
			head = " " + head
		}
		plainHead = badge + head
	}
	lines := wrap(plainHead, width)
	for i, l := range lines {
		painted := pen.Bold(l)
		if i == 0 && badge != "" {
			painted = pen.Badge(badge) + pen.Bold(strings.TrimPrefix(l, badge))
		}
		if i < len(lines)-1 {
			w.line(painted)
			continue
		}
		used := style.Width(l)
		rest := wrap(about, width-5)
		switch {
		case about == "":
			w.line(painted, w.flush(from, used))
		case used+2+style.Width(about) <= width:
			w.line(painted, "  ", about, w.flush(from, used+2+style.Width(about)))
		default:
			w.line(painted)
			for j, r := range rest {
				line := "     " + r
				if j == len(rest)-1 {
					line += w.flush(from, style.Width(line))
				}
				w.line(line)
			}
		}
	}
	if out := len(w.out); w.s.Sample && from != "" && !strings.Contains(w.out[out-1], "sample") {
		w.line("     ", w.t.pen.Faint(from))
	}
	w.items(scr.Items)
	for _, say := range scr.Says {
		text := w.text(say)
		lines := []string{text}
		if style.Width(text) > width-5 {
			lines = wrap(text, width-5)
		}
		for _, l := range lines {
			w.line("     ", l)
		}
	}
	w.lists(scr.Lists, false)
	for i := range scr.Next {
		w.next(&scr.Next[i])
	}
}

// flush sets where an answer comes from against the right edge, where there is room.
func (w *screenWriter) flush(from string, used int) string {
	if from == "" {
		return ""
	}
	if short, _, cut := strings.Cut(from, ":"); cut && used+2+style.Width(from) > w.t.o.Width {
		from = short
	}
	room := w.t.o.Width - used - style.Width(from)
	if room < 2 {
		return ""
	}
	return strings.Repeat(" ", room) + w.t.pen.Faint(from)
}

// cureColumn is where the cures of the numbered lines begin, or past the longest fault.
const cureColumn, longestFault = 34, 40

func (w *screenWriter) items(items []sheet.Item) {
	column := cureColumn
	for _, it := range items {
		if n := style.Width(w.text(it.Fault)); n <= longestFault && 5+n+2 > column {
			column = 5 + n + 2
		}
	}
	under := w.lay != wideLayout
	for i, it := range items {
		fault, cure := w.text(it.Fault), w.text(it.Cure)
		number := fmt.Sprintf("%3d  ", i+1)
		if fault == "" {
			number, fault = "     ", ""
		}
		if under || style.Width(fault) > longestFault {
			w.behind(number, fault, w.t.pen.Bold)
			if cure != "" {
				w.behind("     ", cure, w.t.pen.Plain)
			}
			continue
		}
		lead := pad(number+fault, column)
		lines := wrap(cure, w.t.o.Width-column)
		w.line(number, w.t.pen.Bold(fault), strings.Repeat(" ", style.Width(lead)-style.Width(number+fault)), lines[0])
		for _, l := range lines[1:] {
			w.line(pad("", column), l)
		}
	}
}

// behind prints a text behind a lead, the lines after the first as far in.
func (w *screenWriter) behind(lead, text string, paint func(string) string) {
	for _, l := range wrap(text, w.t.o.Width-style.Width(lead)) {
		w.line(lead, paint(l))
		lead = pad("", style.Width(lead))
	}
}

// mostNext is how many lines a command to type next may take.
const mostNext = 3

// leadCells is the width of next, safety and the other leads.
const leadCells = 8

// next prints a command to type, broken where it is too long as a shell takes it.
func (w *screenWriter) next(n *sheet.Next) {
	lead := n.Lead
	if lead == "" {
		lead = "next"
	}
	words := []string{"evenlip", n.Command}
	if !n.Bare && w.s.Again != nil {
		again, can := w.s.Again(n.Command, n.Drill)
		if !can {
			return
		}
		words = append(words, again)
	}
	if n.Args != "" {
		words = append(words, n.Args)
	}
	lines := commandLines(w.t.ascii(quantity.Clean(strings.Join(words, " "))), w.t.o.Width-leadCells)
	if len(lines) > mostNext && w.t.o.Width >= barsFrom { // the reader has the readings in front of him
		lines = []string{"evenlip " + n.Command + " with the same readings"}
	}
	for i, l := range lines {
		start := pad("", leadCells)
		if i == 0 {
			start = w.t.pen.Faint(lead) + pad("", leadCells-len(lead))
		} else {
			start += "    "
		}
		says := ""
		if i == len(lines)-1 && n.Says != "" && style.Width(start)+style.Width(l)+3+style.Width(n.Says) <= w.t.o.Width {
			says = "   " + n.Says
		}
		w.line(start, w.t.pen.Bold(l), says)
	}
}

// commandLines breaks a command between its words; those of one flag stay together.
func commandLines(command string, width int) []string {
	var items []string
	for _, word := range splitWords(command) {
		if n := len(items); n > 0 && strings.HasPrefix(items[n-1], "--") && !strings.Contains(items[n-1], " ") && !strings.HasPrefix(word, "--") {
			items[n-1] += " " + word
		} else {
			items = append(items, word)
		}
	}
	var lines []string
	line := ""
	for _, item := range items {
		room := width - 2
		if len(lines) > 0 {
			room -= 4
		}
		switch {
		case line == "":
			line = item
		case style.Width(line)+1+style.Width(item) <= room:
			line += " " + item
		default:
			lines = append(lines, line+` \`)
			line = item
		}
	}
	return append(lines, line)
}

// splitWords takes a command line apart at its blanks, quoted words whole.
func splitWords(line string) []string {
	var words []string
	quote := rune(0)
	start := true
	for _, r := range line {
		if r == ' ' && quote == 0 {
			start = true
			continue
		}
		if start {
			words, start = append(words, ""), false
		}
		switch {
		case quote == 0 && (r == '\'' || r == '"'):
			quote = r
		case r == quote:
			quote = 0
		}
		words[len(words)-1] += string(r)
	}
	return words
}

// ordered returns the rows with those outside their limits first, then those in
// doubt, else as they come; a row that explains the one before it goes with it.
func ordered(rows []sheet.Row) []sheet.Row {
	var groups [3][]sheet.Row
	at := 2
	for _, r := range rows {
		if !r.Under {
			at = 2
			switch {
			case r.Outside():
				at = 0
			case r.Unsure():
				at = 1
			}
		}
		groups[at] = append(groups[at], r)
	}
	return slices.Concat(groups[0], groups[1], groups[2])
}

func (w *screenWriter) rows(rows []sheet.Row) {
	for i := range rows {
		w.row(&rows[i])
	}
}

// row prints a figure: its name, its value, its bar within its limits, and a word
// where something is wrong.
func (w *screenWriter) row(r *sheet.Row) {
	label := w.text(r.Label)
	if r.Under {
		label = "  " + label
	}
	if len(r.Marks) == 0 && r.Word == "" {
		lead := pad("  "+label, 24)
		w.behind(lead, w.text(r.Text), w.t.pen.Plain)
		return
	}
	values, unit, painted := w.values(r)
	word, paint := rowWord(r)
	if w.lay == smallLayout {
		text := label + ": " + values + unit
		if limits := w.limits(r); limits != "" {
			text += ", " + limits
		}
		if word != "" {
			text += ": " + word
		}
		w.behind("  ", text, w.t.pen.Plain)
		return
	}
	lead := pad("  "+label, w.lay.value-style.Width(values))
	over := max(0, style.Width(lead)+style.Width(values)-w.lay.value)
	if over > 0 {
		lead = "  " + label + "  "
	}
	start := lead + painted + unit
	used := style.Width(lead) + style.Width(values) + style.Width(unit)
	if r.Band == nil || none(r.Band) || aboveNothing(r.Band) {
		text := w.text(r.Text)
		if r.Band != nil {
			text = "none allowed"
			if aboveNothing(r.Band) {
				text = "has to be more than none"
			}
		}
		w.beside(start, used, text, word, paint)
		return
	}
	low, b, high := w.bar(r)
	parts, past := b.parts()
	gap := w.lay.bar - past - 1 - style.Width(low) - used
	if gap < 1 {
		gap = 1
	}
	line := start + strings.Repeat(" ", gap) + w.t.pen.Faint(low) + " "
	used += gap + style.Width(low) + 1
	for _, p := range parts {
		line += w.paint(p.role)(p.text)
		used += style.Width(p.text)
	}
	if high != "" {
		line += " " + w.t.pen.Faint(high)
		used += 1 + style.Width(high)
	}
	if word != "" {
		line += strings.Repeat(" ", max(1, w.lay.word-used)) + w.paint(paint)(word)
	}
	w.line(line)
}

// beside prints a text where a bar would be, and a word behind it.
func (w *screenWriter) beside(start string, used int, text, word string, paint role) {
	if text == "" && word == "" {
		w.line(start)
		return
	}
	column := max(w.lay.unit, used+2)
	room := w.t.o.Width - column
	if word != "" {
		room = w.lay.word - 1 - column
	}
	lines := wrap(text, max(room, 10))
	line := start + strings.Repeat(" ", column-used) + lines[0]
	if word != "" {
		line += strings.Repeat(" ", max(1, w.lay.word-column-style.Width(lines[0]))) + w.paint(paint)(word)
	}
	w.line(line)
	for _, l := range lines[1:] {
		w.line(pad("", column), l)
	}
}

// values prints the values of a row, one a lip, and their unit; painted is the same
// with those outside their limit marked.
func (w *screenWriter) values(r *sheet.Row) (values, unit, painted string) {
	if r.Word != "" {
		text := w.t.ascii(quantity.Clean(r.Word))
		return text, "", text
	}
	unit = w.t.f.Unit(r.Kind)
	if unit != "" && unit != "°" {
		unit = " " + unit
	}
	texts := make([]string, len(r.Marks))
	for i := range r.Marks {
		texts[i] = w.number(r, &r.Marks[i])
	}
	evenDecimals(texts)
	for i, text := range texts {
		text = w.t.ascii(text)
		if i > 0 {
			values, painted = values+", ", painted+", "
		}
		values += text
		paint := w.t.pen.Plain
		switch st := r.Marks[i].State; {
		case st.Outside():
			paint = w.t.pen.Bad
		case st == sheet.Unsure:
			paint = w.t.pen.Doubt
		}
		painted += paint(text)
	}
	return values, w.t.ascii(unit), painted
}

// number prints one value, with what is uncertain of it, and so finely that one that
// breaks its limit is told from it.
func (w *screenWriter) number(r *sheet.Row, m *sheet.Mark) string {
	f := w.finely(r)
	text := func(v float64) string { return f.Number(r.Kind, r.Gauge, v) }
	half := (m.High - m.Low) / 2
	switch {
	case math.IsNaN(m.Value) && !math.IsNaN(half):
		return text(m.Low) + " to " + text(m.High)
	case math.IsNaN(half) || math.IsInf(half, 0) || len(r.Marks) > 1 || strings.Trim(text(half), "0.") == "":
		return text(m.Value)
	}
	return text(m.Value) + " ±" + text(half)
}

// finely returns the format of a row's numbers: with as many decimals more as tell a
// value that breaks its limit from that limit.
func (w *screenWriter) finely(r *sheet.Row) quantity.Format {
	const most = 3
	same := func(f quantity.Format) bool {
		for i := range r.Marks {
			if !r.Marks[i].State.Outside() {
				continue
			}
			v := f.Number(r.Kind, r.Gauge, r.Marks[i].Value)
			if v == f.Number(r.Kind, limitGauge(r), r.Band.Low) || v == f.Number(r.Kind, limitGauge(r), r.Band.High) {
				return true
			}
		}
		return false
	}
	f := w.t.f
	for r.Band != nil && same(f) && f.Finer < most {
		f.Finer++
	}
	return f
}

// evenDecimals gives two numbers the same decimals: "61.0, 58.5".
func evenDecimals(texts []string) {
	most := 0
	number := func(t string) bool {
		return strings.Trim(t, "-0123456789.") == "" && strings.ContainsAny(t, "0123456789")
	}
	for _, t := range texts {
		if _, frac, ok := strings.Cut(t, "."); ok && number(t) {
			most = max(most, len(frac))
		}
	}
	for i, t := range texts {
		whole, frac, _ := strings.Cut(t, ".")
		if most > 0 && len(frac) < most && number(t) {
			texts[i] = whole + "." + frac + strings.Repeat("0", most-len(frac))
		}
	}
}

// bar draws the band of a row with its marks, and the limits as printed, "" where
// there is none.
func (w *screenWriter) bar(r *sheet.Row) (low string, b *band, high string) {
	marks := barUTF8
	if w.t.o.ASCII {
		marks = barASCII
	}
	b = newBand(r.Band.Low, r.Band.High, w.lay.cells, w.lay.left, w.lay.right, marks)
	b.draw(r.Marks)
	f := w.finely(r)
	number := func(v float64) string { return w.t.ascii(f.Number(r.Kind, limitGauge(r), v)) }
	low = number(r.Band.Low)
	if r.Band.Low == 0 {
		low = "0"
	}
	if !math.IsInf(r.Band.High, 1) {
		high = number(r.Band.High)
	}
	return low, b, high
}

// limitGauge is how finely a limit is printed: never rounded as what is set is.
func limitGauge(r *sheet.Row) quantity.Gauge {
	if r.Gauge == quantity.Setting {
		return quantity.NoGauge
	}
	return r.Gauge
}

// limits prints a band in words, for screens without bars.
func (w *screenWriter) limits(r *sheet.Row) string {
	number := func(v float64) string { return w.t.ascii(w.t.f.Number(r.Kind, limitGauge(r), v)) }
	switch b := r.Band; {
	case b == nil:
		return w.text(r.Text)
	case none(b):
		return "none allowed"
	case aboveNothing(b):
		return "has to be more than none"
	case math.IsInf(b.High, 1):
		return number(b.Low) + " or more"
	case b.Low == 0:
		return "up to " + number(b.High)
	default:
		return number(b.Low) + " to " + number(b.High)
	}
}

// paint returns what paints a piece of its role.
func (w *screenWriter) paint(r role) func(string) string {
	pen := w.t.pen
	return [...]func(string) string{plain: pen.Plain, bold: pen.Bold, faint: pen.Faint, bad: pen.Bad, doubtful: pen.Doubt}[r]
}

func none(b *handbook.Band) bool { return b.Low == 0 && b.High == 0 }

func aboveNothing(b *handbook.Band) bool {
	return math.IsInf(b.High, 1) && b.Low >= 0 && b.Low <= math.SmallestNonzeroFloat64
}

// rowWord says what is wrong with a row: over or under, or which lip.
func rowWord(r *sheet.Row) (string, role) {
	var lips []string
	for i := range r.Marks {
		if r.Marks[i].State.Outside() {
			lips = append(lips, [...]string{"lip 1", "lip 2"}[i])
		}
	}
	switch {
	case len(r.Marks) == 2 && len(lips) == 2:
		return "both", bad
	case len(r.Marks) == 2 && len(lips) == 1:
		return lips[0], bad
	case len(lips) == 1:
		return r.Marks[0].State.String(), bad
	case r.Unsure():
		return "unsure", doubtful
	}
	for i := range r.Marks {
		if s := r.Marks[i].State; s == sheet.NearLow || s == sheet.NearHigh {
			return "close", doubtful
		}
	}
	return "", plain
}

// tables prints lists, a blank line between.
func (w *screenWriter) tables(grids []sheet.Grid) {
	for i := range grids {
		var b strings.Builder
		inner := *w.t
		inner.w = &b
		inner.screenGrid(&grids[i])
		if i > 0 {
			w.line()
		}
		w.out = append(w.out, strings.Split(strings.TrimRight(b.String(), "\n"), "\n")...)
	}
}

// screenGrid prints a list without a title.
func (t *tableWriter) screenGrid(g *sheet.Grid) {
	if g.Title != "" {
		t.line(t.pen.Faint(g.Title))
	}
	words, cells := t.cells(g)
	if g.Turned {
		t.columns(words, cells)
		return
	}
	cells, words = t.plotted(g, cells, words)
	t.blocks(g, words, cells)
}

// foot prints the lines under the figures.
func (w *screenWriter) foot(scr *sheet.Screen) {
	for _, lead := range sheet.FootLeads {
		var texts []string
		for _, f := range scr.Foot {
			if f.Lead == lead {
				text := f.Text
				if f.Inch.Format != "" && w.t.f.System == quantity.Inch {
					text = f.Inch
				}
				texts = append(texts, w.text(text))
			}
		}
		if texts == nil {
			continue
		}
		glue := "; "
		if lead == "usual" || lead == "read" || lead == "unread" {
			glue = ", "
		}
		lines := wrapItems(texts, glue, w.t.o.Width-leadCells)
		if lead == "more" {
			lines = nil
			for _, text := range texts {
				lines = append(lines, wrap(text, w.t.o.Width-leadCells)...)
			}
			if one := strings.Join(texts, "    "); style.Width(one) <= w.t.o.Width-leadCells {
				lines = []string{one}
			}
		}
		for i, l := range lines {
			start := pad("", leadCells)
			if i == 0 {
				start = w.t.pen.Faint(lead) + pad("", leadCells-len(lead))
			}
			w.line(start, l)
		}
	}
}
