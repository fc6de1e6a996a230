package crib

import (
	"cmp"
	"math"
	"path/filepath"
	"strings"

	"evenlip/internal/crib/store"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/plan"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Sheet says what a record has changed, or would change, and what verdict the gauges
// bear out.
func (o *Outcome) Sheet(file string, dryRun bool, gauges quantity.Gauges) *sheet.Sheet {
	s := &sheet.Sheet{Command: "crib record", Title: o.ID + ": " + string(o.Event.What) + " of " + o.Event.Date + ", " + file, Origin: sheet.Origin{ID: o.ID}}
	written := "yes"
	if dryRun {
		s.Title += " - dry run"
		written = "no"
	}
	was, is := verdictOn(o.Old, gauges), verdictOn(o.New, gauges)
	recorded(s, &o.Event, written, was.Word, is.Word)
	g := &s.Grids[0]
	for _, m := range o.Moves {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(m.Reading.String()), sheet.W(m.From), sheet.W(m.To), sheet.W(m.Why)})
	}
	if o.muchOff() {
		s.Find("much-stock", sheet.Warn, "{} is over a quarter of the diameter: if that is a slip, put the file back as it was", quantity.MM(o.Event.Stock))
	}
	o.lengths(s)
	o.wearLeft(s)
	judge.Plausible(o.New, s)
	if dryRun {
		s.Find("dry-run", sheet.Note, "nothing was written")
	}
	if o.Event.What == Retired {
		o.gone(s)
	} else if is.Word == "" {
		for _, wants := range is.Missing {
			s.Find("to-be-read", sheet.Note, "to be read anew: {}", quantity.Say(wants))
		}
	}
	s.Screen = func() *sheet.Screen { return o.screen(s, dryRun, was, is) }
	return s
}

// recorded adds to s what was recorded, and the list of what that changes, without its
// rows.
func recorded(s *sheet.Sheet, e *Event, written, was, is string) {
	s.Open("Recorded")
	for _, f := range [...]sheet.Figure{
		{Key: "what", Label: "what", Word: string(e.What), Kind: quantity.Word}, {Key: "date", Label: "date", Word: e.Date, Kind: quantity.Word},
		{Key: "written", Label: "written to the file", Word: written, Kind: quantity.Switch},
		{Key: "verdict_before", Label: "verdict before", Word: cmp.Or(was, Undecided), Open: was == "", Kind: quantity.Word},
		{Key: "verdict", Label: "verdict now", Word: cmp.Or(is, Undecided), Open: is == "", Kind: quantity.Word},
	} {
		f.Value = math.NaN()
		s.Add(f)
	}
	s.Add(sheet.Figure{Key: "stock_mm", Label: "stock", Value: e.Stock, Kind: quantity.Length, Gauge: quantity.Caliper})
	s.Grids = append(s.Grids, sheet.Grid{Key: "changes", Title: "Readings", Columns: []sheet.Column{word("reading", "reading"), word("before", "before"), word("now", "now"), word("because", "because")}})
}

func verdictOn(d *drill.Drill, g quantity.Gauges) *sheet.Verdict {
	r := judge.Compute(d)
	return r.JudgementOn(d, g)
}

// gone says that the drill is in no count any more, and warns where it still had
// work in it.
func (o *Outcome) gone(s *sheet.Sheet) {
	s.Find("retired", sheet.Note, "{} counts no more: the audit and the plan leave it out", quantity.Say(o.ID))
	if p := plan.Of(o.New); p.Do != plan.Retire {
		s.Find("not-due", sheet.Warn, "nothing in its readings retires it: if that is a slip, take the entry out of its history by hand")
	}
}

// lengths warns where a drill got shorter by other than what came off it.
func (o *Outcome) lengths(s *sheet.Sheet) {
	for _, r := range [...]drill.Reading{drill.Flute, drill.Length} {
		was, is := o.Old.Value(r), o.New.Value(r)
		switch e := &o.Event; {
		case e.What == Grind && e.contradicts(r, was, is):
			s.Find("other-than-ground", sheet.Warn, "{} was {} and is {}, where {} came off: if one of these is a slip, put the file back as it was",
				quantity.Say(r.String()), quantity.MM(was), quantity.MM(is), quantity.MM(e.Stock))
		case e.What != Grind && e.What != Correction && was-is > lengthSlack:
			s.Find("shorter-unsaid", sheet.Warn, "{} was {} and is {}, and no grind says why: if it was ground, put the file back as it was and record that; if it is a slip, add --correction",
				quantity.Say(r.String()), quantity.MM(was), quantity.MM(is))
		}
	}
}

// wearLeft warns where less came off than the plan takes to clear the wear: that
// it is out was only taken for granted.
func (o *Outcome) wearLeft(s *sheet.Sheet) {
	const reading = 0.01 // mm; as near as a caliper tells
	p := plan.Of(o.Old)
	if o.Event.What != Grind || !p.Made || o.Event.Stock >= p.Would.Total-p.Would.CleanUp-reading {
		return
	}
	var wear, flags []string
	for _, x := range [...]struct {
		r    drill.Reading
		what string
	}{{drill.FlankWear, "the worn land"}, {drill.CornerWear, "the rounded corner"}} {
		if o.Old.Has(x.r) && !o.New.Has(x.r) {
			wear, flags = append(wear, x.what), append(flags, "--"+x.r.String())
		}
	}
	if len(wear) > 0 {
		s.Find("wear-may-be-left", sheet.Warn, "{} came off where the plan takes {}: {} may not be out yet; look, and record what is left with {}",
			quantity.MM(o.Event.Stock), quantity.MM(p.Would.Total), quantity.Say(strings.Join(wear, " and ")), quantity.Say(strings.Join(flags, " and ")))
	}
}

// Started says that a crib's file was written.
func (c *Crib) Started(sample bool) *sheet.Sheet {
	s := &sheet.Sheet{Command: "crib new", Title: c.File + ": a new crib", Sample: sample, Origin: sheet.Origin{Name: c.Name, File: c.File}}
	if sample {
		s.From = invented
		s.Title = c.File + ": the SAMPLE crib, all of it invented"
	}
	s.Open("Written")
	s.Add(sheet.Figure{Key: "drills", Label: "drills in it", Value: float64(len(c.Drills)), Kind: quantity.Count})
	s.Find("lock-file", sheet.Note, "a record leaves an empty {} beside it: keep that out of version control", quantity.Say(filepath.Base(store.LockName(c.File))))
	s.Screen = func() *sheet.Screen { return c.newScreen(s) }
	return s
}
