package cli

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print"
)

// swept are the readings of a drill that were given as ranges.
func swept(d *drill.Drill) []*drill.Taken {
	var out []*drill.Taken
	taken := d.Taken()
	for i := range taken {
		if taken[i].Swept != nil {
			out = append(out, &taken[i])
		}
	}
	return out
}

// columnOf is a range's column in the table.
func columnOf(t *drill.Taken) sheet.Column {
	return sheet.Column{Key: t.KeyOf(), Label: t.Label(), Kind: t.Spec().Kind, Gauge: t.Spec().Gauge}
}

// at names the step at which the ranges have these values.
func at(ranges []*drill.Taken, values []float64) quantity.Text {
	var t quantity.Text
	for i, r := range ranges {
		if i > 0 {
			t.Format += ", "
		}
		t.Format += r.Label() + " {}"
		t.Args = append(t.Args, quantity.Arg{Kind: r.Spec().Kind, Gauge: r.Spec().Gauge, Value: values[i]})
	}
	return t
}

// steps computes the drill of every step of its ranges as one table.
func (a *app) steps(c command.Command, h *held) (print.Job, fault.List) {
	ranges := swept(&h.Drill)
	t := &steps{ranges: ranges, quiet: map[string]bool{}}
	o := a.set.answering()
	err := h.Steps(func(values []float64, d *drill.Drill) error {
		for _, f := range command.Possible(c, &h.Read, d, true) {
			f.Text = "at " + at(ranges, values).In(quantity.Format{System: d.System()}) + ": " + f.Text
			return f
		}
		o.Explain = a.set.Explain && t.first == nil
		t.add(values, command.Compute(c, d, o))
		return nil
	})
	if err != nil {
		return print.Job{}, fault.Of(err)
	}
	if a.set.check && t.outside {
		a.outside = true
	}
	d := &h.Drill
	s := &sheet.Sheet{Command: c.About().Name, Cautions: t.cautions, Extra: t.sources, Gauged: t.first.Gauged}
	if a.set.Form == print.Table {
		s.Grids = t.forPeople(quantity.Format{System: a.system(d), Gauges: a.set.Gauges, Bench: true}, a.set.ASCII)
	} else {
		s.Grids = []sheet.Grid{t.forScripts()}
	}
	s.Findings = t.remarks()
	command.Finish(c, d, s)
	for _, r := range ranges {
		s.StopsShort(r.Label(), r.Swept.Range, r.Spec().Kind, r.Spec().Gauge)
	}
	if a.set.Explain {
		s.First = t.first
		s.Find("explained-at", sheet.Note, "the working is shown for the first step, "+t.firstAt.Format, t.firstAt.Args...)
	}
	h.tell(s)
	if a.set.Form == print.Table {
		f := quantity.Format{System: a.system(d), Gauges: a.set.Gauges, Screen: true}
		s.Screen = func() *sheet.Screen { return command.Finished(t.screen(s, f), s, c.About()) }
	}
	return print.Job{Sheet: s, System: a.system(d)}, nil
}
