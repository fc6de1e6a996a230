package print

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// about is what gauges leave of a figure that lies in the middle of its interval.
func about(v, u float64) *sheet.Doubt { return &sheet.Doubt{Low: v - u, High: v + u, Known: 1} }

// doubted is an answer with a figure that carries an uncertainty, one that does not,
// and a list.
func doubted() *sheet.Sheet {
	s := &sheet.Sheet{Command: "web", Title: "12 mm drill", Gauged: true}
	s.Open("Web")
	s.Add(sheet.Figure{Key: "web_mm", Label: "web", Value: 2, Kind: quantity.Length, Gauge: quantity.Caliper, Doubt: about(2, 0.0112)})
	s.Add(sheet.Figure{Key: "size_mm", Label: "size", Value: 12, Kind: quantity.Length, Gauge: quantity.Caliper, Doubt: about(12, 0)})
	s.Grids = []sheet.Grid{{Key: "rows", Columns: []sheet.Column{{Key: "state", Label: "state", Kind: quantity.Word}}, Rows: [][]sheet.Cell{{sheet.W("now")}, {sheet.W("ground")}}}}
	return s
}

// Scripts read the uncertainty to one figure, and the interval to the same place.
func TestUncertaintyForScripts(t *testing.T) {
	var got struct {
		Uncertainty map[string]float64
		Interval    map[string]struct{ Low, High float64 }
	}
	out := written(t, Options{Form: JSON}, doubted())
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	if len(got.Uncertainty) != 1 || got.Uncertainty["web_mm"] != 0.01 || len(got.Interval) != 1 || got.Interval["web_mm"].Low != 1.99 || got.Interval["web_mm"].High != 2.01 {
		t.Errorf("%+v in\n%s", got, out)
	}
	want := "drill,web_mm,size_mm,rows,uncertainty_web_mm,findings\n12 mm drill,2,12,now; ground,0.01,\n"
	if out := written(t, Options{Form: CSV}, doubted()); strings.ReplaceAll(out, "\r", "") != want {
		t.Errorf("%s", out)
	}
	without := doubted()
	without.Gauged = false
	if out := written(t, Options{Form: JSON}, without); strings.Contains(out, "uncertainty") || strings.Contains(out, "interval") {
		t.Errorf("claimed without a gauge\n%s", out)
	}
}

// A table shows the uncertainty beside the figure, and the interval where that lies
// aside of it; to one figure, and no finer than the figure.
func TestUncertaintyForPeople(t *testing.T) {
	length := func(value, low, high float64) *sheet.Figure {
		return &sheet.Figure{Kind: quantity.Length, Gauge: quantity.Caliper, Value: value, Doubt: &sheet.Doubt{Low: low, High: high}}
	}
	force := func(value, low, high float64) *sheet.Figure {
		return &sheet.Figure{Kind: quantity.Force, Value: value, Doubt: &sheet.Doubt{Low: low, High: high}}
	}
	for _, c := range []struct {
		f       *sheet.Figure
		u, both string
	}{
		{length(2, 1.968, 2.032), "0.03", "2.00 mm ±0.03"},
		{length(2, 1.999, 2.001), "0.01", "2.00 mm ±0.01"}, // finer than a caliper
		{length(2, 1.9, 2.15), "0.1", "2.00 mm ±0.1"},
		{length(2, 1.4, 2.2), "0.4", "1.4 to 2.2 mm"},
		{length(0.86, 0.6, 1), "0.2", "0.6 to 1.0 mm"},
		{length(0.116, 0.109, 0.192), "0.04", "0.11 to 0.19 mm"},
		{length(0, -0.0004, 0.05), "0.03", "0.00 to 0.05 mm"},
		{length(0, -0.0004, 0.5), "0.3", "0.0 to 0.5 mm"},
		{length(0, -0.0004, 0.0004), "0.01", "0.00 mm ±0.01"},
		{length(2, 2, 2), "", "2.00 mm"},
		{length(0, -1e-12, 1e-12), "", "0.00 mm"}, // by rounding
		{length(2, math.NaN(), math.NaN()), "", "2.00 mm"},
		{length(2, 1, math.Inf(1)), "", "2.00 mm"},
		{force(5090, 5084, 11740), "3000", "5000 to 12000 N"},
		{force(5870, 5834, 5906), "40", "5870 N ±40"},
		{&sheet.Figure{Kind: quantity.Count, Value: 38, Doubt: &sheet.Doubt{Low: 37, High: 38}}, "1", "37 to 38"},
		{&sheet.Figure{Kind: quantity.Word, Word: "lip 1 or lip 2", Value: math.NaN(), Doubt: &sheet.Doubt{Low: math.NaN(), High: math.NaN()}}, "", "lip 1 or lip 2"},
	} {
		t1 := tableWriter{f: metric}
		if u, both := plusMinus(c.f, metric), t1.value(c.f); u != c.u || both != c.both {
			t.Errorf("%v in %+v: %q, %q; want %q, %q", c.f.Value, *c.f.Doubt, u, both, c.u, c.both)
		}
	}
}

// In how many of the draws a verdict comes out is told, where not in all.
func TestTheShareOfAVerdict(t *testing.T) {
	s := evilSheet()
	s.Gauged = true
	for share, want := range map[float64]string{1: "\nVerdict: REGRIND\n", 0.968: "\nVerdict: REGRIND in 97 % of the draws\n"} {
		s.Verdict.Share = share
		if out := written(t, Options{Form: Table}, s); !strings.Contains(out, want) {
			t.Errorf("%g: no %q in\n%s", share, want, out)
		}
		var got struct{ Results map[string]any }
		if err := json.Unmarshal([]byte(written(t, Options{Form: JSON}, s)), &got); err != nil || got.Results["verdict_share"] != share {
			t.Errorf("%v: %v", err, got.Results)
		}
	}
	s.Gauged = false
	if out := written(t, Options{Form: JSON}, s); strings.Contains(out, "verdict_share") {
		t.Errorf("a share without a gauge\n%s", out)
	}
}

// A word that is not known is null for a script, a switch a boolean, and words are a
// list, of none an empty one.
func TestAWordMayBeUnknown(t *testing.T) {
	s := &sheet.Sheet{Command: "inspect"}
	s.Grids = []sheet.Grid{{Key: "rows", Columns: []sheet.Column{
		{Key: "verdict", Kind: quantity.Word}, {Key: "findings", Kind: quantity.Words}, {Key: "wants", Kind: quantity.Phrases}, {Key: "thinned", Kind: quantity.Switch}, {Key: "web_mm", Kind: quantity.Length}},
		Rows: [][]sheet.Cell{{sheet.W(""), sheet.W(""), sheet.W(""), sheet.W(""), sheet.W("")},
			{sheet.W("fit"), sheet.W("dull lips-uneven"), sheet.W("size and web; lip-angle A,B"), sheet.W("yes"), sheet.V(2)},
			{sheet.W("fit"), sheet.W("dull"), sheet.W("size"), sheet.W("no"), sheet.V(0)}}}}
	var got struct {
		Results struct{ Rows []map[string]any }
	}
	if err := json.Unmarshal([]byte(written(t, Options{Form: JSON}, s)), &got); err != nil {
		t.Fatal(err)
	}
	none := []any{}
	if want := []map[string]any{
		{"verdict": nil, "findings": none, "wants": none, "thinned": nil, "web_mm": nil},
		{"verdict": "fit", "findings": []any{"dull", "lips-uneven"}, "wants": []any{"size and web", "lip-angle A,B"}, "thinned": true, "web_mm": 2.0},
		{"verdict": "fit", "findings": []any{"dull"}, "wants": []any{"size"}, "thinned": false, "web_mm": 0.0},
	}; !reflect.DeepEqual(got.Results.Rows, want) {
		t.Errorf("%v", got.Results.Rows)
	}
}

// The working shown for many answers is that of the one named.
func TestWorkingOfOneAmongMany(t *testing.T) {
	s := doubted()
	s.Sections, s.First = nil, evilSheet()
	for form, want := range map[Form]string{Table: "How each figure is got", JSON: `"numbers": "1 + 1"`} {
		if out := written(t, Options{Form: form, Explain: true}, s); !strings.Contains(out, want) {
			t.Errorf("%s: no working\n%s", form, out)
		}
	}
}

// No form prints a minus before a nought.
func TestNoughtHasNoSign(t *testing.T) {
	minus := math.Copysign(0, -1)
	if got := string(appendNumber(nil, minus)); got != "0" {
		t.Errorf("JSON: %s", got)
	}
	if got := full(minus); got != "0" {
		t.Errorf("CSV: %s", got)
	}
}
