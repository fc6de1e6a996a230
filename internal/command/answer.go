package command

import (
	"slices"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/plan"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/uncertainty"
)

// Answer computes the sheet of a drill: the figures with what the gauges leave in
// doubt, what was read, and what the command made no use of.
func Answer(c Command, d *drill.Drill, o Options) *sheet.Sheet {
	return Finish(c, d, Compute(c, d, o))
}

// Compute is Answer without what was read.
func Compute(c Command, d *drill.Drill, o Options) *sheet.Sheet {
	if o.Gauges != (quantity.Gauges{}) && !d.Gauged {
		d = d.Copy()
		d.Gauged = true
	}
	s := c.Sheet(d, o.Explain)
	Doubt(c, d, s, o.Gauges)
	return s
}

// Finish adds to a computed sheet what was read, and what the command made no use of.
func Finish(c Command, d *drill.Drill, s *sheet.Sheet) *sheet.Sheet {
	s.Title, s.Sample = Title(c.About().Name, d), d.Sample
	s.Drill = Drill(d)
	s.Origin.Name = d.Name
	s.Inputs = Echo(s.Inputs, d)
	unused(c.About(), d, s)
	if s.Cautions == nil {
		s.Cautions = sheet.Cautions
	}
	return s
}

// Doubt says what the gauges leave in doubt, where any were named, and takes back of
// the verdict what they do not bear out.
func Doubt(c Command, d *drill.Drill, s *sheet.Sheet, g quantity.Gauges) {
	if g != (quantity.Gauges{}) {
		uncertainty.Tell(s, d, g, c.Draw)
		plan.Settle(s)
	}
}

// unused tells of readings in a file that this command has no use for, so that
// nobody takes them for heeded; the sample drill has something for everyone.
func unused(c *Info, d *drill.Drill, s *sheet.Sheet) {
	takes := c.Takes()
	var names []string
	taken := d.Taken()
	for i := range taken {
		if r := taken[i].Reading; !slices.Contains(takes, r) && d.Has(r) {
			names = append(names, r.String())
		}
	}
	if len(names) == 0 {
		return
	}
	s.Inputs = slices.DeleteFunc(s.Inputs, func(in sheet.Input) bool { return slices.Contains(names, in.Name) })
	if !d.Sample && !d.Kept {
		s.Find("not-used", sheet.Note, "{} makes no use of {}", quantity.Say(c.Name), quantity.Say(strings.Join(names, ", ")))
	}
}

// Drill names the drill by its size, the wheel by its diameter.
func Drill(d *drill.Drill) string {
	if size := d.AsRead(drill.Size); len(size) > 0 {
		return size[0].Spaced() + " drill"
	}
	if wheel := d.AsRead(drill.Wheel); len(wheel) > 0 {
		return wheel[0].Spaced() + " wheel"
	}
	return ""
}

// Title names the drill; the sample's says that it is one.
func Title(command string, d *drill.Drill) string {
	out := command
	if size := d.AsRead(drill.Size); len(size) > 0 {
		out = size[0].Echo() + " drill, " + command
	} else if wheel := d.AsRead(drill.Wheel); len(wheel) > 0 {
		out = wheel[0].Echo() + " wheel"
	}
	if d.Name != "" {
		out += " - " + d.Name
	}
	return out
}

// Echo lists what was read, as it was read, behind what out holds already. What was
// given as a range stands last.
func Echo(out []sheet.Input, d *drill.Drill) []sheet.Input {
	taken := d.Taken()
	for i := range taken {
		t := &taken[i]
		if !d.Has(t.Reading) || t.Swept != nil {
			continue
		}
		s := t.Spec()
		in := sheet.Input{Name: s.Name, Text: t.Text, Kind: s.Kind}
		if s.Switch {
			in.Kind, in.Word, in.Echo = quantity.Switch, "yes", in.Text
		} else if s.Kind == quantity.Word {
			in.Word, in.Echo = in.Text, in.Text
		} else {
			in.Values = t.Values[:t.N]
			in.Keys = t.KeysOf(t.N)
		}
		out = append(out, in)
	}
	for i := range taken {
		if t := &taken[i]; t.Swept != nil {
			key := t.KeyOf()
			out = append(out, sheet.Input{Name: t.Reading.String(), Echo: t.Text, Text: t.Text, Kind: t.Spec().Kind,
				Keys: []string{"from_" + key, "to_" + key, "step_" + key}, Values: []quantity.Value{t.Swept.From, t.Swept.To, t.Swept.Step}})
		}
	}
	return out
}
