package report

import (
	"bytes"
	"math"
	"testing"

	"evenlip/internal/figure"
	"evenlip/internal/quantity"
	"evenlip/internal/reference"
)

// evil is a name as someone with bad intentions, or a broken editor, would
// leave it in a file: colours, a bell, a carriage return, C1 controls, marks
// that turn the writing round, a tab, a line break, and bytes that are no text.
const evil = "red\x1b[31m\a\rturned\u202e \u2066C1\u009b2J\x7f\ttab\nline\xff\"quoted\", comma"

// sheet is an answer with everything in it that a form has to cope with.
func sheet() *figure.Sheet {
	s := &figure.Sheet{Command: "inspect", Title: evil, Cautions: Cautions, Explaining: true}
	s.Inputs = []figure.Input{{Name: "size", Echo: evil, Text: evil, Kind: quantity.Size, Keys: []string{"size_mm"}, Values: []quantity.Value{{V: 12}}}}
	limit := reference.Band{Low: 1, High: 3, Source: &reference.Source{Label: reference.Practice, Text: "a rule of thumb"}}
	s.Open("First")
	s.Add(figure.Figure{Key: "length_mm", Label: "a length", Value: 2, Kind: quantity.Length, Gauge: quantity.Caliper, Limit: &limit})
	s.Work("by hand", "1 + 1", "{} + {}", figure.Len(1), figure.Len(1))
	s.Add(figure.Figure{Key: "unknown_mm", Label: "unknown", Value: math.NaN(), Kind: quantity.Length, Wants: "size"})
	s.Add(figure.Figure{Key: "boundless_mm", Label: "boundless", Value: math.Inf(1), Kind: quantity.Length,
		Limit: &reference.Band{Low: 0, High: math.Inf(1)}})
	s.Add(figure.Figure{Key: "word", Label: "a word", Word: "even", Value: math.NaN(), Kind: quantity.Word})
	s.Add(figure.Figure{Key: "exact_mm", Label: "exact", Value: 5.1054, Kind: quantity.Number, Exact: true})
	s.Add(figure.Figure{Key: "over_mm", Label: "over its limit", Value: 4, Kind: quantity.Length, Gauge: quantity.Caliper, Limit: &limit})
	s.Open("Nothing known, nothing wanted")
	s.Add(figure.Figure{Key: "never_mm", Label: "never seen", Value: math.NaN(), Kind: quantity.Length})
	s.Open("Quiet")
	s.Sections[2].Quiet = true
	s.Add(figure.Figure{Key: "quiet_mm", Label: "hushed", Value: 1, Kind: quantity.Length})
	s.Grids = []figure.Grid{{Key: "rows", Title: "Rows", Columns: []figure.Column{
		{Key: "name", Label: "name", Kind: quantity.Word}, {Key: "at_mm", Label: "at", Kind: quantity.Length}},
		Rows: [][]figure.Cell{{figure.W(evil), figure.V(1)}, {figure.W("second"), figure.V(math.NaN())}}},
		{Key: "list", Title: "List", Columns: []figure.Column{{Key: "item", Label: "item", Kind: quantity.Word}}, Rows: [][]figure.Cell{{figure.W("one")}, {figure.W(evil)}}},
		{Key: "lengths", Title: "Lengths", Columns: []figure.Column{{Key: "at_mm", Label: "at", Kind: quantity.Length}}, Rows: [][]figure.Cell{{figure.V(1.5)}, {figure.V(math.NaN())}}},
		{Key: "empty", Title: "Empty", Columns: []figure.Column{{Key: "item", Label: "item", Kind: quantity.Word}}},
		{Key: "states", Title: "States", Turned: true, Columns: []figure.Column{
			{Key: "state", Label: "state", Kind: quantity.Word}, {Key: "web_mm", Label: "web", Kind: quantity.Length}, {Key: "gone_mm", Label: "gone", Kind: quantity.Length}},
			Rows: [][]figure.Cell{{figure.W("now"), figure.V(2), figure.V(math.NaN())}, {figure.W("ground"), figure.V(2.1), figure.V(math.NaN())}}},
		{Key: "schedule", Title: "Schedule", Note: "one of three", Brief: []int{1}, Columns: []figure.Column{
			{Key: "grind", Label: "grind", Kind: quantity.Count}, {Key: "web_mm", Label: "web", Kind: quantity.Length}},
			Rows: [][]figure.Cell{{figure.V(1), figure.V(2.11)}, {figure.V(2), figure.V(2.22)}, {figure.V(3), figure.V(2.33)}}}}
	s.Find("a-note", figure.Note, "for the record")
	s.Find("a-stop", figure.Stop, "no further")
	s.Find("a-finding", figure.Warn, "{} is {}", figure.Say(evil), figure.Len(2))
	s.Verdict = &figure.Verdict{Word: "regrind", Reasons: []string{"dull"}, Missing: []string{"size"}}
	return s
}

func written(t *testing.T, o Options, sheets ...*figure.Sheet) string {
	t.Helper()
	if o.Width == 0 {
		o.Width = 80
	}
	var jobs []Job
	for _, s := range sheets {
		jobs = append(jobs, Job{Sheet: s, System: quantity.Metric})
	}
	var b bytes.Buffer
	if err := Write(&b, jobs, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}
