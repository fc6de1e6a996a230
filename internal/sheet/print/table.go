package print

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
)

type tableWriter struct {
	w      io.Writer
	o      Options
	pen    style.Pen
	f      quantity.Format
	row    rowCells
	headed bool // the heads of the columns are written
	err    error
}

func (t *tableWriter) line(parts ...string) {
	if _, err := fmt.Fprintln(t.w, strings.TrimRight(strings.Join(parts, ""), " ")); err != nil && t.err == nil {
		t.err = err
	}
}

// behind prints lines behind a lead, those after the first as far in.
func (t *tableWriter) behind(lead string, lines []string) {
	for _, l := range lines {
		t.line(lead, l)
		lead = pad("", style.Width(lead))
	}
}

func (t *tableWriter) sheet(j Job) {
	t.f = quantity.Format{System: j.System, Gauges: t.o.Gauges, Bench: true}
	s := j.Sheet
	if s.Screen != nil && !t.o.Full && !t.o.Explain {
		t.f.Bench, t.f.Screen = false, true
		t.screen(s)
		return
	}
	t.row, t.headed = t.measured(s), false
	t.title(s)
	t.inputs(s)
	for i := range s.Sections {
		t.section(s, &s.Sections[i])
	}
	for i := range s.Grids {
		if t.o.Explain || !s.Grids[i].Explained {
			t.grid(&s.Grids[i])
		}
	}
	t.findings(s)
	if t.o.Explain {
		t.workings(worked(s))
	}
	t.verdict(s)
	t.answer(s)
	t.cautions(s)
}

func (t *tableWriter) title(s *sheet.Sheet) {
	title := s.Title
	if title == "" {
		title = s.Command
	}
	for _, l := range wrap(t.ascii(quantity.Clean(title)), t.o.Width) {
		t.line(t.pen.Title(l))
	}
}

func (t *tableWriter) inputs(s *sheet.Sheet) {
	if len(s.Inputs) == 0 {
		return
	}
	echoes := make([]string, len(s.Inputs))
	for i := range s.Inputs {
		echoes[i] = s.Inputs[i].Name + " " + t.ascii(quantity.Clean(s.Inputs[i].Shown()))
	}
	t.behind(t.pen.Faint("as read "), wrapItems(echoes, "; ", t.o.Width-8))
}

// section prints figures under their title. The first that holds one against a
// limit has the heads of the columns beside its title.
func (t *tableWriter) section(s *sheet.Sheet, sec *sheet.Section) {
	if sec.Quiet || !sectionShown(s, sec) {
		return
	}
	t.line()
	lines := wrap(sec.Title, t.o.Width)
	for _, l := range lines[:len(lines)-1] {
		t.line(t.pen.Heading(l))
	}
	head := t.pen.Heading(pad(lines[len(lines)-1], t.row.label+2))
	if !t.headed && t.o.Width >= narrow && slices.ContainsFunc(sec.Figures, judged) {
		head += " " + t.pen.Faint(padLeft("found", t.row.value)+" "+pad("limit", t.row.limit)+" "+pad("", t.row.state)+" basis")
		t.headed = true
	}
	t.line(head)
	for i := range sec.Figures {
		if fig := &sec.Figures[i]; fig.Known() {
			t.figure(fig)
		}
	}
	t.unknown(s, sec)
}

func judged(f sheet.Figure) bool { return f.State() != sheet.Unjudged }

func sectionShown(s *sheet.Sheet, sec *sheet.Section) bool {
	for i := range sec.Figures {
		if f := &sec.Figures[i]; f.Known() || s.Missing(f) != "" {
			return true
		}
	}
	return false
}

func (t *tableWriter) figure(fig *sheet.Figure) {
	value, limit, state, basis := t.value(fig), limitText(fig, t.f), stateWord(fig), basis(fig)
	paint := t.pen.Bad
	switch fig.State() {
	case sheet.Within:
		paint = t.pen.Good
	case sheet.Unjudged:
		paint = func(blank string) string { return blank }
	}
	if t.o.Width < narrow {
		if basis != "" {
			basis = " (" + basis + ")"
		}
		if limit == "" {
			t.wrapped("  ", fig.Label+": "+value+basis)
			return
		}
		t.wrapped("  ", fig.Label+": "+value)
		t.wrapped("    ", limit+": "+paint(state)+basis)
		return
	}
	row := []string{"  ", pad(t.ascii(fig.Label), t.row.label), " ", padLeft(t.ascii(value), t.row.value), " ", pad(t.limit(fig), t.row.limit), " "}
	used := style.Width(strings.Join(row, ""))
	if used+max(t.row.state, style.Width(state))+1+style.Width(basis) > t.o.Width {
		t.line(append(row, paint(state))...)
		t.line(pad("", used), t.pen.Faint(basis))
		return
	}
	t.line(append(row, paint(pad(state, t.row.state)), " ", t.pen.Faint(basis))...)
}

// value is a figure as a row has it, with what is uncertain of it.
func (t *tableWriter) value(fig *sheet.Figure) string {
	if fig.Word != "" {
		return quantity.Clean(fig.Word)
	}
	return withDoubt(fig, t.f)
}

// limit is a figure's limit as a row has it, without the unit where that is too long:
// the figure has it.
func (t *tableWriter) limit(fig *sheet.Figure) string {
	limit := limitText(fig, t.f)
	if style.Width(t.ascii(limit)) > limitCells {
		limit = strings.TrimSpace(strings.TrimSuffix(limit, t.f.Unit(fig.Kind)))
	}
	return t.ascii(limit)
}

// unknown tells, in few lines, what could not be computed and for want of what.
// Where a section knows nothing at all, what it wants first is enough.
func (t *tableWriter) unknown(s *sheet.Sheet, sec *sheet.Section) {
	var order []string
	labels := map[string][]string{}
	for i := range sec.Figures {
		f := &sec.Figures[i]
		wants := s.Missing(f)
		if wants == "" {
			continue
		}
		if labels[wants] == nil {
			order = append(order, wants)
		}
		labels[wants] = append(labels[wants], t.ascii(f.Label))
	}
	bare := !slices.ContainsFunc(sec.Figures, func(f sheet.Figure) bool { return f.Known() })
	if bare && len(order) > 1 {
		order = order[:1]
	}
	for _, wants := range order {
		items := []string{"wants " + wants}
		if !bare {
			items = labels[wants]
			items[0] = "wants " + wants + ": " + items[0]
		}
		lines := wrapItems(items, "; ", t.o.Width-4)
		for i := range lines {
			lines[i] = t.pen.Faint(lines[i])
		}
		t.behind("  - ", lines)
	}
}

func (t *tableWriter) findings(s *sheet.Sheet) {
	if len(s.Findings) == 0 {
		return
	}
	t.line()
	t.line(t.pen.Heading("Remarks"))
	for _, f := range s.Findings {
		paint := t.pen.Bad
		if f.Severity == sheet.Note {
			paint = t.pen.Faint
		}
		t.behind("  "+paint(f.Severity.String())+"  ", wrap(t.ascii(f.Text.In(t.f)), t.o.Width-8))
	}
}

func (t *tableWriter) verdict(s *sheet.Sheet) {
	v := s.Verdict
	if v == nil {
		return
	}
	t.line()
	if v.Word != "" {
		paint := t.pen.Bad
		if v.Word == "fit" {
			paint = t.pen.Good
		}
		t.line(t.pen.Heading("Verdict: "), paint(strings.ToUpper(v.Word)), t.pen.Faint(borneOut(s)))
	} else {
		t.line(t.pen.Heading("Verdict: "), "none yet")
	}
	if len(v.Missing) == 0 {
		return
	}
	t.wrapped("  ", "still wanted: "+strings.Join(v.Missing, "; "))
}

// borneOut says in how many of the draws a verdict came out, where not in all.
func borneOut(s *sheet.Sheet) string {
	if percent := math.Round(100 * s.Verdict.Share); s.Gauged && percent < 100 {
		return " in " + strconv.FormatFloat(percent, 'f', 0, 64) + " % of the draws"
	}
	return ""
}

// answer repeats in one sentence what was asked for, where a terminal that has
// scrolled still shows it.
func (t *tableWriter) answer(s *sheet.Sheet) {
	if s.Answer == nil {
		return
	}
	t.line()
	const head = "In short: "
	for i, l := range wrap(head+t.ascii(s.Answer.In(t.f)), t.o.Width-2) {
		if i == 0 {
			l = t.pen.Heading(strings.TrimSpace(head)) + strings.TrimPrefix(l, strings.TrimSpace(head))
		} else {
			l = "  " + l
		}
		t.line(l)
	}
}

func (t *tableWriter) cautions(s *sheet.Sheet) {
	if s.Cautions == nil {
		return
	}
	t.line()
	t.behind(t.pen.Heading("safety")+"  ", wrapItems(s.Cautions, "; ", t.o.Width-8)) // never faint: it is to be read
}

// narrow is the width below which a figure takes two lines and not one row.
const narrow = 80

// The columns of a row at 80: label, value, limit, state, basis.
const (
	labelCells = 26
	valueCells = 12
	limitCells = 16
	stateCells = 7
	basisCells = 8
	// spreadCells is what an uncertainty needs beside the value.
	spreadCells = 5
)

// rowCells are the widths of a row's columns, the last left out.
type rowCells struct{ label, value, limit, state int }

// measured returns the columns for a sheet. Where a state is in doubt, its column
// takes the cells it needs from what the width has to spare, and else from what the
// others do not fill.
func (t *tableWriter) measured(s *sheet.Sheet) rowCells {
	row := rowCells{labelCells, valueCells, limitCells, stateCells}
	if !s.Gauged {
		return row
	}
	row.value += spreadCells
	room := t.o.Width - (2 + row.label + 1 + row.value + 1 + row.limit + 1 + row.state + 1 + basisCells)
	row.state += max(0, min(doubtCells-row.state, room))
	full, doubt := t.filled(s)
	if !doubt {
		return row
	}
	for _, c := range [...]struct{ cells, full *int }{{&row.label, &full.label}, {&row.value, &full.value}, {&row.limit, &full.limit}} {
		spare := max(0, min(doubtCells-row.state, *c.cells-*c.full))
		*c.cells -= spare
		row.state += spare
	}
	return row
}

var doubtCells = len(sheet.Unsure.String())

// filled returns how wide the cells of the rows are, and whether a state is in doubt.
func (t *tableWriter) filled(s *sheet.Sheet) (full rowCells, doubt bool) {
	for i := range s.Sections {
		sec := &s.Sections[i]
		if sec.Quiet {
			continue
		}
		for j := range sec.Figures {
			fig := &sec.Figures[j]
			if !fig.Known() {
				continue
			}
			full.label = max(full.label, style.Width(t.ascii(fig.Label)))
			full.value = max(full.value, style.Width(t.ascii(t.value(fig))))
			full.limit = max(full.limit, style.Width(t.limit(fig)))
			doubt = doubt || fig.State() == sheet.Unsure
		}
	}
	return full, doubt
}
