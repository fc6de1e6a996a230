package cli

import (
	"math"
	"slices"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print"
)

// mostRows bounds the table that ranges, or two of them together, ask for.
const mostRows = 10_000

// sweep is a reading given as a range: "0mm..6mm by 0.5mm".
type sweep struct {
	reading drill.Reading
	text    string
	span    quantity.Range
	values  []float64
}

// sweeps takes the readings that were given as ranges out of d, whose other
// readings are resolved on the way.
func (a *app) sweeps(h *held) ([]sweep, error) {
	d := h.Drill
	var out []sweep
	for _, r := range drill.All() {
		if s := r.Spec(); s.Kind != quantity.Word && !s.Switch && quantity.IsRange(d.Written(r)) {
			out = append(out, sweep{reading: r, text: strings.TrimSpace(d.Written(r))})
			d.Drop(r)
		}
	}
	if len(out) == 0 {
		return nil, nil
	}
	rows := 1
	var errs fault.List
	for i := range out {
		if err := out[i].read(d); err != nil {
			errs = append(errs, h.fault(out[i].reading, err.Text, err.Hint))
			continue
		}
		rows *= len(out[i].values)
		if rows > mostRows {
			return nil, fault.Flag(out[i].reading.String(), "take larger steps or fewer ranges", "makes over %d rows", mostRows)
		}
	}
	for _, e := range resolveFor(d, out) {
		errs = append(errs, h.fault(e.Reading, e.Err.Text, e.Err.Hint))
	}
	if len(errs) > 0 {
		return nil, errs
	}
	return out, nil
}

// resolveFor understands the readings of d beside the sweeps. Where the size is
// swept, a new drill's reading is not known before each step's size is put.
func resolveFor(d *drill.Drill, sweeps []sweep) []*drill.Error {
	if sweeps[0].reading == drill.Size {
		d.Put(drill.Size, math.NaN())
		defer d.Drop(drill.Size)
	}
	return d.Resolve()
}

// read understands the range. The size, or the wheel, settles what bare numbers
// are, and comes before the rest.
func (s *sweep) read(d *drill.Drill) (err *fault.Fault) {
	gives := s.reading == drill.Size || s.reading == drill.Wheel
	bare := d.Units
	if !gives {
		d.Resolve() // its complaints come later, all together
		bare = d.System()
	}
	parse := quantity.ParseRange
	if s.reading.Spec().Signed {
		parse = quantity.ParseRangeSigned
	}
	if s.span, err = parse(s.reading.Spec().Kind, s.text, bare); err != nil {
		return err
	}
	if gives && d.Units == quantity.Unset {
		d.Units = s.span.From.System
	}
	s.values = s.span.Values()
	return nil
}

// column is the sweep's column in the table.
func (s *sweep) column() sheet.Column {
	spec := s.reading.Spec()
	return sheet.Column{Key: s.key(), Label: spec.Name, Kind: spec.Kind, Gauge: spec.Gauge}
}

func (s *sweep) key() string { return s.reading.KeysOf(1)[0] }

// input is the range as it was read.
func (s *sweep) input() sheet.Input {
	key := s.key()
	return sheet.Input{Name: s.reading.String(), Echo: s.text, Text: s.text, Kind: s.reading.Spec().Kind,
		Keys: []string{"from_" + key, "to_" + key, "step_" + key}, Values: []quantity.Value{s.span.From, s.span.To, s.span.Step}}
}

// at names the step at which the sweeps have these values.
func at(sweeps []sweep, values []float64) quantity.Text {
	t := quantity.Text{}
	for i, s := range sweeps {
		if i > 0 {
			t.Format += ", "
		}
		spec := s.reading.Spec()
		t.Format += spec.Name + " {}"
		t.Args = append(t.Args, quantity.Arg{Kind: spec.Kind, Gauge: spec.Gauge, Value: values[i]})
	}
	return t
}

// firsts are the values of the first step.
func firsts(sweeps []sweep) []float64 {
	out := make([]float64, len(sweeps))
	for i, s := range sweeps {
		out[i] = s.values[0]
	}
	return out
}

// each calls f for every combination of the sweeps' values, the last one
// changing fastest, until f fails.
func each(sweeps []sweep, f func(values []float64) error) error {
	values := make([]float64, len(sweeps))
	var step func(n int) error
	step = func(n int) error {
		if n == len(sweeps) {
			return f(values)
		}
		for _, v := range sweeps[n].values {
			values[n] = v
			if err := step(n + 1); err != nil {
				return err
			}
		}
		return nil
	}
	return step(0)
}

// ranged computes the drill of every step and prints them as one table.
func (a *app) ranged(c calculation, d *drill.Drill, sweeps []sweep) error {
	t := newSteps(sweeps)
	err := each(sweeps, func(values []float64) error {
		one := *d
		for i, s := range sweeps {
			one.Put(s.reading, values[i])
		}
		for _, im := range c.impossible(&one, true) {
			where := at(sweeps, values).In(quantity.Format{System: d.System()})
			return fault.Flag(im.Reading.String(), im.Hint, "at %s: %s", where, a.say(im, &one))
		}
		s := c.compute(&one, a.global.explain && t.first == nil)
		a.doubt(c, &one, s)
		t.add(values, s)
		return nil
	})
	if err != nil {
		return err
	}
	if a.global.check && t.outside {
		a.outside = true
	}
	s := &sheet.Sheet{Command: c.name, Title: title(c.name, d), Sample: d.Sample, Inputs: echo(nil, d), Cautions: t.cautions, Extra: t.sources, Gauged: t.first.Gauged}
	for i := range sweeps {
		s.Inputs = append(s.Inputs, sweeps[i].input())
	}
	if a.global.format == string(print.Table) {
		g, err := a.gauges()
		if err != nil {
			return err
		}
		s.Grids = t.forPeople(quantity.Format{System: d.System(), Gauges: g, Bench: true}, !showsUTF8())
	} else {
		s.Grids = []sheet.Grid{t.forScripts()}
	}
	s.Findings = t.remarks()
	for i := range sweeps {
		spec := sweeps[i].reading.Spec()
		s.StopsShort(spec.Name, sweeps[i].span, spec.Kind, spec.Gauge)
	}
	if a.global.explain {
		s.First = t.first
		where := at(sweeps, firsts(sweeps))
		s.Find("explained-at", sheet.Note, "the working is shown for the first step, "+where.Format, where.Args...)
	}
	return a.print([]print.Job{{Sheet: s, System: d.System()}})
}

// rangeHelp ends the help of every command whose readings may be ranges.
const rangeHelp = `Any quantity may be a range, "0mm..6mm by 0.5mm": one row a step.`

// unquoted complains of a range that the shell took apart at its spaces.
func unquoted(command string, args []string) error {
	if at := slices.Index(args, "by"); at >= 0 {
		return fault.New(`a range wants quotes: "0mm..6mm by 0.5mm"`, "%s: %q stands alone", command, strings.Join(args[at:], " "))
	}
	return nil
}
