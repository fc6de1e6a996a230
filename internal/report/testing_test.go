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
	s.Inputs = []figure.Input{{Name: "size", Echo: evil, Text: evil, Kind: quantity.Size, Keys: []string{"size_mm"}, Values: []float64{12}}}
	limit := reference.Band{Low: 1, High: 3, Source: &reference.Source{Label: reference.Practice, Text: "a rule of thumb"}}
	s.Open("First")
	s.Add(figure.Figure{Key: "length_mm", Label: "a length", Value: 2, Kind: quantity.Length, Gauge: quantity.Caliper, Limit: &limit})
	s.Work("by hand", "1 + 1", "{} + {}", figure.Len(1), figure.Len(1))
	s.Add(figure.Figure{Key: "unknown_mm", Label: "unknown", Value: math.NaN(), Kind: quantity.Length, Wants: "size"})
	s.Add(figure.Figure{Key: "boundless_mm", Label: "boundless", Value: math.Inf(1), Kind: quantity.Length,
		Limit: &reference.Band{Low: 0, High: math.Inf(1)}})
	s.Add(figure.Figure{Key: "word", Label: "a word", Word: "even", Value: math.NaN(), Kind: quantity.Word})
	s.Grids = []figure.Grid{{Key: "rows", Title: "Rows", Columns: []figure.Column{
		{Key: "name", Label: "name", Kind: quantity.Word}, {Key: "at_mm", Label: "at", Kind: quantity.Length}},
		Rows: [][]figure.Cell{{figure.W(evil), figure.V(1)}, {figure.W("second"), figure.V(math.NaN())}}}}
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
