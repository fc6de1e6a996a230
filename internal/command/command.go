// Package command is what the commands on a drill have in common: what one says of
// itself, which readings it takes, and the way from a drill to its answer.
package command

import (
	"slices"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Info is what a command says of itself.
type Info struct {
	Name, Short, Long string
	Group             string // of the help page; "drill" when empty
	Answers           string // what its headline may say, for the help
	Examples          string
	Readings          []drill.Reading
	Rule              func() []drill.Reading // gives the readings where they are not listed
	Grinder           bool                   // is about the grinder: no drill, no files, no questions
	Pictured          bool                   // a wide screen shows the point from the end
	Safety            *Safety                // what a screen warns of
}

// About returns i itself.
func (i *Info) About() *Info { return i }

// Takes returns the readings of the command.
func (i *Info) Takes() []drill.Reading {
	if i.Rule != nil {
		return i.Rule()
	}
	return i.Readings
}

// Command turns the readings of a drill into a sheet.
type Command interface {
	About() *Info
	// Refuse returns what only this command knows of readings that are possible by
	// themselves and cannot be all the same.
	Refuse(*drill.Drill) fault.List
	// Sheet works the drill out.
	Sheet(d *drill.Drill, explain bool) *sheet.Sheet
	// Draw works out one draw of many: figures and verdict alone, without what only
	// shows them.
	Draw(*drill.Drill) *sheet.Sheet
	// Declare returns what answers have: readings, figures, limits and lists, all without
	// values.
	Declare() *sheet.Sheet
}

// Of is a command whose results are an R.
type Of[R any] struct {
	Info
	Cannot  func(*drill.Drill) fault.List // what Refuse returns; may be nil
	Compute func(*drill.Drill) R
	Figures func(*R, *sheet.Sheet)
	Rest    func(*R, *sheet.Sheet)               // lists, remarks, the verdict; may be nil
	Screen  func(*R, *sheet.Sheet) *sheet.Screen // what a person is shown first
	// Declares adds to a declaration what Rest adds to an answer: lists, without their
	// rows, and limits of another sheet; may be nil.
	Declares func(*sheet.Sheet)
}

// Declare implements Command.
func (c *Of[R]) Declare() *sheet.Sheet {
	s := &sheet.Sheet{Command: c.Name, Drawing: true, Declaring: true, Inputs: declared(c.Takes())}
	c.Figures(new(R), s)
	if c.Declares != nil {
		c.Declares(s)
	}
	return s
}

// declared lists readings with all the keys that their values may have.
func declared(readings []drill.Reading) []sheet.Input {
	inputs := make([]sheet.Input, len(readings))
	for i, r := range readings {
		spec := r.Spec()
		in := sheet.Input{Name: spec.Name, Kind: kindOf(spec)}
		if in.Kind.Number() {
			in.Keys = slices.Concat(r.KeysOf(1), spec.Keys[:])
			in.Keys = slices.DeleteFunc(in.Keys, func(key string) bool { return key == "" })
			slices.Sort(in.Keys)
			in.Keys = slices.Compact(in.Keys)
		}
		inputs[i] = in
	}
	return inputs
}

// kindOf is the kind of a reading's value as scripts read it.
func kindOf(s *drill.Spec) quantity.Kind {
	if s.Switch {
		return quantity.Switch
	}
	return s.Kind
}

// Refuse implements Command.
func (c *Of[R]) Refuse(d *drill.Drill) fault.List {
	if c.Cannot == nil {
		return nil
	}
	return c.Cannot(d)
}

// Sheet implements Command. Readings that are hardly meant are told first, but of a drill
// that is scrap.
func (c *Of[R]) Sheet(d *drill.Drill, explain bool) *sheet.Sheet {
	s := sheet.New(c.Name, explain)
	r := c.Compute(d)
	if !d.Has(drill.Cracked) {
		judge.Plausible(d, s)
	}
	c.Figures(&r, s)
	if c.Rest != nil {
		c.Rest(&r, s)
	}
	if c.Screen != nil {
		s.Screen = func() *sheet.Screen { return Finished(c.Screen(&r, s), s, &c.Info) }
	}
	return s
}

// Draw implements Command.
func (c *Of[R]) Draw(d *drill.Drill) *sheet.Sheet {
	s := sheet.New(c.Name, false)
	s.Drawing = true
	r := c.Compute(d)
	c.Figures(&r, s)
	return s
}

// Possible returns everything about the readings of d, a step of rd or its drill, that
// cannot be. Where some were not understood, it tells of the others what cannot be
// whatever those are; where it is not known what bare numbers are, nothing.
func Possible(c Command, rd *drill.Read, d *drill.Drill, understood bool) fault.List {
	if !rd.UnitsKnown() {
		return nil
	}
	found := d.Possible()
	if len(found) == 0 && understood {
		found = c.Refuse(d)
	}
	return found
}

// Options are what an answer depends on beside the drill.
type Options struct {
	Explain bool
	Gauges  quantity.Gauges // what they can resolve; zero claims nothing
}
