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
	labelCells = 28
	valueCells = 10
	limitCells = 16
	stateCells = 11
	// spreadCells is what an uncertainty needs beside the value; the basis makes
	// room for it.
	spreadCells = 8
)

type tableWriter struct {
	w   io.Writer
	o   Options
	pen style.Pen
	f   quantity.Format
	// valueCells is wider where figures carry their uncertainty.
	valueCells int
	err        error
}

func (t *tableWriter) line(parts ...string) {
	if _, err := fmt.Fprintln(t.w, strings.TrimRight(strings.Join(parts, ""), " ")); err != nil && t.err == nil {
		t.err = err
	}
}

func (t *tableWriter) sheet(j Job) {
	t.f = quantity.Format{System: j.System, Gauges: t.o.Gauges}
	s := j.Sheet
	t.valueCells = valueCells
	if s.Gauged {
		t.valueCells += spreadCells
	}
	t.title(s)
	t.inputs(s)
	for i := range s.Sections {
		t.section(&s.Sections[i], i == 0)
	}
	for i := range s.Grids {
		t.grid(&s.Grids[i])
	}
	t.findings(s)
	t.verdict(s)
	if t.o.Explain {
		t.workings(worked(s))
	}
	t.cautions(s)
}

func (t *tableWriter) title(s *figure.Sheet) {
	title := s.Title
	if title == "" {
		title = s.Command
	}
	for _, l := range wrap(clean(title), t.o.Width) {
		t.line(t.pen.Title(l))
	}
}

func (t *tableWriter) inputs(s *figure.Sheet) {
	if len(s.Inputs) == 0 {
		return
	}
	echoes := make([]string, len(s.Inputs))
	for i := range s.Inputs {
		echoes[i] = s.Inputs[i].Name + " " + clean(s.Inputs[i].Shown())
	}
	for i, l := range wrapItems(echoes, "; ", t.o.Width-8) {
		head := "as read"
		if i > 0 {
			head = "       "
		}
		t.line(t.pen.Faint(head+" "), l)
	}
}

func (t *tableWriter) section(sec *figure.Section, first bool) {
	if sec.Quiet || !sectionShown(sec) {
		return
	}
	t.line()
	head := t.pen.Heading(pad(sec.Title, labelCells+2))
	if first && t.o.Width >= narrow {
		basis := " basis"
		if t.valueCells > valueCells {
			basis = ""
		}
		head += " " + t.pen.Faint(padLeft("found", t.valueCells)+" "+pad("limit", limitCells)+" "+pad("", stateCells)+basis)
	}
	t.line(head)
	for i := range sec.Figures {
		if fig := &sec.Figures[i]; fig.Known() {
			t.figure(fig)
		}
	}
	t.unknown(sec)
}

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
	limit, state := limitText(fig, t.f), stateWord(fig)
	if u := spread(fig, t.f); u != "" {
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
		t.wrapped("  ", fig.Label+": "+value)
		if limit != "" {
			t.wrapped("    ", limit+": "+paint(state)+" "+basis(fig.Limit))
		}
		return
	}
	limit = pad(limit, limitCells)
	room := stateCells - (style.Width(limit) - limitCells) // a long limit takes from the state's blanks
	t.line("  ", pad(fig.Label, labelCells), " ", padLeft(value, t.valueCells), " ", limit, " ",
		paint(pad(state, room)), " ", t.pen.Faint(t.basis(fig)))
}

func (t *tableWriter) basis(fig *figure.Figure) string {
	if t.valueCells > valueCells {
		return ""
	}
	return basis(fig.Limit)
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
		labels[f.Wants] = append(labels[f.Wants], f.Label)
	}
	bare := !slices.ContainsFunc(sec.Figures, func(f figure.Figure) bool { return f.Known() })
	if bare && len(order) > 1 {
		order = order[:1]
	}
	for _, wants := range order {
		text := "wants " + wants
		if !bare {
			text += ": " + strings.Join(labels[wants], "; ")
		}
		for i, l := range wrap(text, t.o.Width-4) {
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
		for i, l := range wrap(fill(f.Text, t.f), t.o.Width-8) {
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
	text := "still wanted: " + strings.Join(v.Missing, "; ")
	for _, l := range wrap(text, t.o.Width-2) {
		t.line("  ", l)
	}
}
