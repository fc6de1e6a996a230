package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"evenlip/internal/figure"
	"evenlip/internal/quantity"
	"evenlip/internal/report/style"
)

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

type tableWriter struct {
	w   io.Writer
	o   Options
	pen style.Pen
	f   quantity.Format
	// valueCells and stateCells are wider where figures carry their uncertainty.
	valueCells, stateCells int
	headed                 bool // the heads of the columns are written
	err                    error
}

func (t *tableWriter) line(parts ...string) {
	if _, err := fmt.Fprintln(t.w, strings.TrimRight(strings.Join(parts, ""), " ")); err != nil && t.err == nil {
		t.err = err
	}
}

func (t *tableWriter) sheet(j Job) {
	t.f = quantity.Format{System: j.System, Gauges: t.o.Gauges, Bench: true}
	s := j.Sheet
	t.measure(s)
	t.title(s)
	t.inputs(s)
	for i := range s.Sections {
		t.section(&s.Sections[i])
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

// measure sets the columns; a state in doubt gets its cells where they are to
// spare.
func (t *tableWriter) measure(s *figure.Sheet) {
	t.valueCells, t.stateCells, t.headed = valueCells, stateCells, false
	if !s.Gauged {
		return
	}
	t.valueCells += spreadCells
	used := 2 + labelCells + 1 + t.valueCells + 1 + limitCells + 1 + 1 + basisCells
	t.stateCells = max(stateCells, min(len(figure.Unsure.String()), t.o.Width-used))
}

func (t *tableWriter) title(s *figure.Sheet) {
	title := s.Title
	if title == "" {
		title = s.Command
	}
	for _, l := range wrap(t.ascii(clean(title)), t.o.Width) {
		t.line(t.pen.Title(l))
	}
}

func (t *tableWriter) inputs(s *figure.Sheet) {
	if len(s.Inputs) == 0 {
		return
	}
	echoes := make([]string, len(s.Inputs))
	for i := range s.Inputs {
		echoes[i] = s.Inputs[i].Name + " " + t.ascii(clean(s.Inputs[i].Shown()))
	}
	for i, l := range wrapItems(echoes, "; ", t.o.Width-8) {
		head := "as read"
		if i > 0 {
			head = "       "
		}
		t.line(t.pen.Faint(head+" "), l)
	}
}

// section prints figures under their title. The first that holds one against a
// limit has the heads of the columns beside its title.
func (t *tableWriter) section(sec *figure.Section) {
	if sec.Quiet || sec.Aside || !sectionShown(sec) {
		return
	}
	t.line()
	lines := wrap(sec.Title, t.o.Width)
	for _, l := range lines[:len(lines)-1] {
		t.line(t.pen.Heading(l))
	}
	head := t.pen.Heading(pad(lines[len(lines)-1], labelCells+2))
	if !t.headed && t.o.Width >= narrow && slices.ContainsFunc(sec.Figures, judged) {
		head += " " + t.pen.Faint(padLeft("found", t.valueCells)+" "+pad("limit", limitCells)+" "+pad("", t.stateCells)+" basis")
		t.headed = true
	}
	t.line(head)
	for i := range sec.Figures {
		if fig := &sec.Figures[i]; fig.Known() {
			t.figure(fig)
		}
	}
	t.unknown(sec)
}

func judged(f figure.Figure) bool { return f.State() != figure.Unjudged }

func sectionShown(sec *figure.Section) bool {
	for i := range sec.Figures {
		if f := &sec.Figures[i]; f.Known() || f.Wants != "" {
			return true
		}
	}
	return false
}

func (t *tableWriter) figure(fig *figure.Figure) {
	value := clean(fig.Word)
	if value == "" {
		value = shown(fig, t.f)
	}
	limit, state, basis := limitText(fig, t.f), stateWord(fig), basis(fig)
	switch u := spread(fig, t.f); {
	case fig.Otherwise != nil:
		value = number(fig, t.f) + " or " + otherwise(fig, t.f)
	case u != "":
		value += " ±" + u
	}
	paint := t.pen.Bad
	switch fig.State() {
	case figure.Within:
		paint = t.pen.Good
	case figure.Unjudged:
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
	if style.Width(t.ascii(limit)) > limitCells {
		limit = strings.TrimSpace(strings.TrimSuffix(limit, t.f.Unit(fig.Kind))) // the figure has it
	}
	row := []string{"  ", pad(t.ascii(fig.Label), labelCells), " ", padLeft(t.ascii(value), t.valueCells), " ", pad(t.ascii(limit), limitCells), " "}
	used := style.Width(strings.Join(row, ""))
	if used+max(t.stateCells, style.Width(state))+1+style.Width(basis) > t.o.Width {
		basis = "" // beside "cannot tell" there may be no room
	}
	t.line(append(row, paint(pad(state, t.stateCells)), " ", t.pen.Faint(basis))...)
}

// unknown tells, in few lines, what could not be computed and for want of what.
// Where a section knows nothing at all, what it wants first is enough.
func (t *tableWriter) unknown(sec *figure.Section) {
	var order []string
	labels := map[string][]string{}
	for i := range sec.Figures {
		f := &sec.Figures[i]
		if f.Known() || f.Wants == "" {
			continue
		}
		if labels[f.Wants] == nil {
			order = append(order, f.Wants)
		}
		labels[f.Wants] = append(labels[f.Wants], t.ascii(f.Label))
	}
	bare := !slices.ContainsFunc(sec.Figures, func(f figure.Figure) bool { return f.Known() })
	if bare && len(order) > 1 {
		order = order[:1]
	}
	for _, wants := range order {
		items := []string{"wants " + wants}
		if !bare {
			items = labels[wants]
			items[0] = "wants " + wants + ": " + items[0]
		}
		for i, l := range wrapItems(items, "; ", t.o.Width-4) {
			head := "  - "
			if i > 0 {
				head = "    "
			}
			t.line(head, t.pen.Faint(l))
		}
	}
}

func (t *tableWriter) findings(s *figure.Sheet) {
	if len(s.Findings) == 0 {
		return
	}
	t.line()
	t.line(t.pen.Heading("Remarks"))
	for _, f := range s.Findings {
		mark := [...]string{"note", "warn", "stop"}[f.Severity]
		for i, l := range wrap(t.ascii(fill(f.Text, t.f)), t.o.Width-8) {
			switch {
			case i > 0:
				t.line("        ", l)
			case f.Severity == figure.Note:
				t.line("  ", t.pen.Faint(mark), "  ", l)
			default:
				t.line("  ", t.pen.Bad(mark), "  ", l)
			}
		}
	}
}

func (t *tableWriter) verdict(s *figure.Sheet) {
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
		t.line(t.pen.Heading("Verdict: "), paint(strings.ToUpper(v.Word)))
	} else {
		t.line(t.pen.Heading("Verdict: "), "none yet")
	}
	if len(v.Missing) == 0 {
		return
	}
	t.wrapped("  ", "still wanted: "+strings.Join(v.Missing, "; "))
}

// answer repeats in one sentence what was asked for, where a terminal that has
// scrolled still shows it.
func (t *tableWriter) answer(s *figure.Sheet) {
	if s.Answer == nil {
		return
	}
	t.line()
	const head = "In short: "
	for i, l := range wrap(head+t.ascii(fill(*s.Answer, t.f)), t.o.Width-2) {
		if i == 0 {
			l = t.pen.Heading(strings.TrimSpace(head)) + strings.TrimPrefix(l, strings.TrimSpace(head))
		} else {
			l = "  " + l
		}
		t.line(l)
	}
}
