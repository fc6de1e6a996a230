package print

import (
	"bytes"
	"math"
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// evil is a name as someone with bad intentions, or a broken editor, would
// leave it in a file: colours, a bell, a carriage return, C1 controls, marks
// that turn the writing round, a tab, a line break, and bytes that are no text.
const evil = "red\x1b[31m\a\rturned\u202e \u2066C1\u009b2J\x7f\ttab\nline\xff\"quoted\", comma"

// evilSheet is an answer with everything in it that a form has to cope with.
func evilSheet() *sheet.Sheet {
	s := &sheet.Sheet{Command: "inspect", Title: evil, Origin: sheet.Origin{Name: evil}, Cautions: sheet.Cautions, Explaining: true}
	s.Inputs = []sheet.Input{{Name: "size", Echo: evil, Text: evil, Kind: quantity.Size, Keys: []string{"size_mm"}, Values: []quantity.Value{{V: 12}}}}
	limit := handbook.Band{Low: 1, High: 3, Source: &handbook.Source{Label: handbook.Practice, Text: "a rule of thumb"}}
	s.Open("First")
	s.Add(sheet.Figure{Key: "length_mm", Label: "a length", Value: 2, Kind: quantity.Length, Gauge: quantity.Caliper, Limit: &limit, Work: "1 + 1", Source: "by hand"})
	s.Add(sheet.Figure{Key: "unknown_mm", Label: "unknown", Value: math.NaN(), Kind: quantity.Length, Of: "size"})
	s.Add(sheet.Figure{Key: "boundless_mm", Label: "boundless", Value: math.Inf(1), Kind: quantity.Length,
		Limit: &handbook.Band{Low: 0, High: math.Inf(1)}})
	s.Add(sheet.Figure{Key: "word", Label: "a word", Word: "even", Value: math.NaN(), Kind: quantity.Word})
	s.Add(sheet.Figure{Key: "exact_mm", Label: "exact", Value: 5.1054, Kind: quantity.Number, Exact: true})
	s.Add(sheet.Figure{Key: "over_mm", Label: "over its limit", Value: 4, Kind: quantity.Length, Gauge: quantity.Caliper, Limit: &limit})
	s.Open("Nothing known, nothing wanted")
	s.Add(sheet.Figure{Key: "never_mm", Label: "never seen", Value: math.NaN(), Kind: quantity.Length})
	s.Open("Quiet")
	s.Sections[2].Quiet = true
	s.Add(sheet.Figure{Key: "quiet_mm", Label: "hushed", Value: 1, Kind: quantity.Length})
	s.Grids = []sheet.Grid{{Key: "rows", Title: "Rows", Columns: []sheet.Column{
		{Key: "name", Label: "name", Kind: quantity.Word}, {Key: "at_mm", Label: "at", Kind: quantity.Length}},
		Rows: [][]sheet.Cell{{sheet.W(evil), sheet.V(1)}, {sheet.W("second"), sheet.V(math.NaN())}}},
		{Key: "list", Title: "List", Columns: []sheet.Column{{Key: "item", Label: "item", Kind: quantity.Word}}, Rows: [][]sheet.Cell{{sheet.W("one")}, {sheet.W(evil)}}},
		{Key: "lengths", Title: "Lengths", Columns: []sheet.Column{{Key: "at_mm", Label: "at", Kind: quantity.Length}}, Rows: [][]sheet.Cell{{sheet.V(1.5)}, {sheet.V(math.NaN())}}},
		{Key: "empty", Title: "Empty", Columns: []sheet.Column{{Key: "item", Label: "item", Kind: quantity.Word}}},
		{Key: "states", Title: "States", Turned: true, Columns: []sheet.Column{
			{Key: "state", Label: "state", Kind: quantity.Word}, {Key: "web_mm", Label: "web", Kind: quantity.Length}, {Key: "gone_mm", Label: "gone", Kind: quantity.Length}},
			Rows: [][]sheet.Cell{{sheet.W("now"), sheet.V(2), sheet.V(math.NaN())}, {sheet.W("ground"), sheet.V(2.1), sheet.V(math.NaN())}}},
		{Key: "schedule", Title: "Schedule", Note: "one of three", Brief: []int{1}, Columns: []sheet.Column{
			{Key: "grind", Label: "grind", Kind: quantity.Count}, {Key: "web_mm", Label: "web", Kind: quantity.Length}},
			Rows: [][]sheet.Cell{{sheet.V(1), sheet.V(2.11)}, {sheet.V(2), sheet.V(2.22)}, {sheet.V(3), sheet.V(2.33)}}}}
	s.Find("a-note", sheet.Note, "for the record")
	s.Find("a-stop", sheet.Stop, "no further")
	s.Find("a-finding", sheet.Warn, "{} is {}", quantity.Say(evil), quantity.MM(2))
	s.Verdict = &sheet.Verdict{Word: "regrind", Reasons: []string{"dull"}, Missing: []string{"size"}}
	return s
}

func written(t *testing.T, o Options, sheets ...*sheet.Sheet) string {
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
