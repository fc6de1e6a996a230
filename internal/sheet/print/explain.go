package print

import (
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// worked returns the sheet whose working is shown for s.
func worked(s *sheet.Sheet) *sheet.Sheet {
	for s.First != nil {
		s = s.First
	}
	return s
}

// workings prints how each figure was got.
func (t *tableWriter) workings(s *sheet.Sheet) {
	first := true
	s.Worked(func(f *sheet.Figure, step bool) {
		if first {
			t.line()
			t.line(t.pen.Heading("How each figure is got"))
			t.line("  ", t.pen.Faint("(calculator in degrees)"))
			first = false
		}
		t.wrapped("  ", f.Label)
		t.wrapped("    ", s.Formula(f))
		sum := s.Sum(f, t.f)
		if t.o.ASCII {
			sum = strings.ReplaceAll(sum, "°", "")
		}
		terms, equals := strings.Fields(sum), "= "+t.ascii(result(f, step, t.f))
		for _, l := range wrapItems(append(terms, equals), " ", t.o.Width-4) {
			t.line("    ", l)
		}
		t.wrapped("    ", f.Source)
		t.doubt(f)
	})
	t.letters(s)
	t.limitSources(s)
}

// doubt prints what the gauges leave in doubt of a figure, and for want of what.
func (t *tableWriter) doubt(f *sheet.Figure) {
	u := plusMinus(f, t.f)
	if u == "" {
		return
	}
	text := "± " + u + " " + t.f.Unit(f.Kind)
	if aside(f, t.f) {
		text = ends(f, t.f)
	}
	text += " (95 %, JCGM 101:2008)"
	if f.Doubt.Mostly != "" {
		text += ", mostly from " + f.Doubt.Mostly
	}
	t.wrapped("    ", text)
}

// letters lists what the formulas call each figure.
func (t *tableWriter) letters(s *sheet.Sheet) {
	letters := s.Letters()
	if len(letters) == 0 {
		return
	}
	widest := 0
	for _, f := range letters {
		widest = max(widest, len(f.Letter))
	}
	t.line()
	t.line(t.pen.Heading("Letters"))
	for _, f := range letters {
		t.behind("  "+pad(f.Letter, widest+2), wrap(t.ascii(f.Label+": "+result(f, true, t.f)), t.o.Width-widest-4))
	}
}

// limitSources prints where each limit comes from.
func (t *tableWriter) limitSources(s *sheet.Sheet) {
	first := true
	s.Each(func(f *sheet.Figure) {
		if f.Limit == nil || f.Limit.Source == nil {
			return
		}
		if first {
			t.line()
			t.line(t.pen.Heading("Where the limits come from"))
			first = false
		}
		t.wrapped("  ", f.Label+": "+limitText(f, t.f)+"; "+f.Limit.Source.String())
	})
}

// result prints a figure as its working ends in it. A step on the way has all the
// digits with which later workings take it up.
func result(fig *sheet.Figure, step bool, f quantity.Format) string {
	f.Bench = false
	if step {
		unit := f.Unit(fig.Kind)
		if unit != "" && unit != "°" {
			unit = " " + unit
		}
		return fig.Digits(f.InSystem(fig.Kind, fig.Value)) + unit
	}
	return shown(fig, f)
}

func (t *tableWriter) wrapped(indent, text string) {
	for _, l := range wrap(t.ascii(text), t.o.Width-len(indent)) {
		t.line(indent, l)
	}
}
