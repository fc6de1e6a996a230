package crib

import (
	"cmp"
	"math"
	"path/filepath"

	"evenlip/internal/figure"
	"evenlip/internal/inspect"
	"evenlip/internal/quantity"
)

// Sheet says what a record has changed, or would change.
func (o *Outcome) Sheet(file string, dryRun bool, judge Inspector) *figure.Sheet {
	s := &figure.Sheet{Command: "crib record", Title: o.ID + ": " + string(o.Event.What) + " of " + o.Event.Date + ", " + file}
	written := "yes"
	if dryRun {
		s.Title += " - dry run"
		written = "no"
	}
	was, is := judge(o.Old), judge(o.New)
	s.Open("Recorded")
	for _, f := range [...]struct{ key, label, word string }{
		{"id", "drill", o.ID}, {"what", "what", string(o.Event.What)}, {"date", "date", o.Event.Date}, {"written", "written to the file", written},
		{"verdict_before", "verdict before", cmp.Or(was.Verdict.Word, Undecided)}, {"verdict", "verdict now", cmp.Or(is.Verdict.Word, Undecided)},
	} {
		s.Add(figure.Figure{Key: f.key, Label: f.label, Word: f.word, Value: math.NaN(), Kind: quantity.Word})
	}
	s.Add(figure.Figure{Key: "stock_mm", Label: "stock", Value: o.Event.Stock, Kind: quantity.Length, Gauge: quantity.Caliper})
	g := figure.Grid{Key: "changes", Title: "Readings", Columns: []figure.Column{word("reading", "reading"), word("before", "before"), word("now", "now"), word("because", "because")}}
	for _, m := range o.Moves {
		g.Rows = append(g.Rows, []figure.Cell{figure.W(m.Reading.String()), figure.W(m.From), figure.W(m.To), figure.W(m.Why)})
	}
	s.Grids = []figure.Grid{g}
	if o.muchOff() {
		s.Find("much-stock", figure.Warn, "{} is over a quarter of the diameter: if that is a slip, put the file back as it was", figure.Len(o.Event.Stock))
	}
	inspect.Plausible(o.New, s)
	if dryRun {
		s.Find("dry-run", figure.Note, "nothing was written")
	}
	if is.Verdict.Word == "" {
		for _, wants := range is.Verdict.Missing {
			s.Find("to-be-read", figure.Note, "to be read anew: {}", figure.Say(wants))
		}
	}
	return s
}

// Started says that a crib's file was written.
func (c *Crib) Started(sample bool) *figure.Sheet {
	s := &figure.Sheet{Command: "crib new", Title: c.File + ": a new crib", Sample: sample}
	if sample {
		s.Title = c.File + ": the SAMPLE crib, all of it invented"
	}
	s.Open("Written")
	s.Add(figure.Figure{Key: "file", Label: "file", Word: c.File, Value: math.NaN(), Kind: quantity.Word})
	s.Add(figure.Figure{Key: "drills", Label: "drills in it", Value: float64(len(c.Drills)), Kind: quantity.Count})
	s.Find("lock-file", figure.Note, "a record leaves an empty {} beside it: keep that out of version control", figure.Say(filepath.Base(LockName(c.File))))
	return s
}
