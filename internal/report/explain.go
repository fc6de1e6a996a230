package report

import "evenlip/internal/figure"

// worked returns the sheet whose working is shown for s.
func worked(s *figure.Sheet) *figure.Sheet {
	if s.Worked != nil {
		return s.Worked
	}
	return s
}

// workings prints how each figure was got.
func (t *tableWriter) workings(s *figure.Sheet) {
	first := true
	s.Each(func(f *figure.Figure) {
		if f.Working == nil {
			return
		}
		if first {
			t.line()
			t.line(t.pen.Heading("How each figure is got"))
			t.line("  ", t.pen.Faint("(calculator in degrees)"))
			first = false
		}
		t.line("  ", f.Label)
		result := shown(f, t.f)
		t.wrapped("    ", f.Working.Formula)
		t.wrapped("    ", arithmetic(f.Working.Numbers, t.f)+" = "+result)
		t.wrapped("    ", f.Working.Source)
		if u := spread(f, t.f); u != "" {
			t.wrapped("    ", "± "+u+" "+t.f.Unit(f.Kind)+" (k = 2, JCGM 100:2008), mostly from "+f.Mostly)
		}
	})
	t.limitSources(s)
}

// limitSources prints where each limit comes from.
func (t *tableWriter) limitSources(s *figure.Sheet) {
	first := true
	s.Each(func(f *figure.Figure) {
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

func (t *tableWriter) wrapped(indent, text string) {
	for _, l := range wrap(text, t.o.Width-len(indent)) {
		t.line(indent, l)
	}
}
