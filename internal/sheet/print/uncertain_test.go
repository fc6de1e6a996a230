package print

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// doubted is an answer whose figure and list carry an uncertainty.
func doubted(columns int) *sheet.Sheet {
	s := &sheet.Sheet{Command: "web", Title: "12 mm drill", Gauged: true}
	s.Open("Web")
	s.Add(sheet.Figure{Key: "web_mm", Label: "web", Value: 2, Kind: quantity.Length, Gauge: quantity.Caliper, Spread: 0.011})
	s.Add(sheet.Figure{Key: "size_mm", Label: "size", Value: 12, Kind: quantity.Length, Gauge: quantity.Caliper})
	g := sheet.Grid{Key: "rows", Columns: []sheet.Column{{Key: "state", Label: "state", Kind: quantity.Word}}}
	rows := [][]sheet.Cell{{sheet.W("now")}, {sheet.W("ground")}, {sheet.W("thinned")}}
	for i := range columns {
		key := string(rune('a' + i))
		g.Columns = append(g.Columns, sheet.Column{Key: key + "_mm", Label: "chisel " + key, Kind: quantity.Length, Gauge: quantity.Caliper})
		rows[0] = append(rows[0], sheet.Cell{Value: 2.5, Spread: 0.011})
		rows[1] = append(rows[1], sheet.Cell{Value: 2.6, Spread: 0.033})
		rows[2] = append(rows[2], sheet.V(math.NaN()))
	}
	g.Rows = rows
	s.Grids = []sheet.Grid{g}
	return s
}

// What a list carries stands beside its numbers for a script, empty where none
// is claimed.
func TestListsCarryTheirUncertainty(t *testing.T) {
	var got struct {
		Uncertainty struct {
			Web  float64              `json:"web_mm"`
			Rows []map[string]float64 `json:"rows"`
		}
	}
	if err := json.Unmarshal([]byte(written(t, Options{Form: JSON}, doubted(1))), &got); err != nil {
		t.Fatal(err)
	}
	u := got.Uncertainty
	if u.Web != 0.011 || len(u.Rows) != 3 || u.Rows[0]["a_mm"] != 0.011 || u.Rows[1]["a_mm"] != 0.033 || len(u.Rows[2]) != 0 {
		t.Errorf("%+v", u)
	}
	for main, want := range map[bool]string{
		false: "drill,web_mm,size_mm,uncertainty_web_mm,findings\n12 mm drill,2,12,0.011,\n",
		true:  "state,a_mm,uncertainty_a_mm\nnow,2.5,0.011\nground,2.6,0.033\nthinned,,\n",
	} {
		s := doubted(1)
		s.Grids[0].Main = main
		out := written(t, Options{Form: CSV}, s)
		if _, err := csv.NewReader(strings.NewReader(out)).ReadAll(); err != nil || strings.ReplaceAll(out, "\r", "") != want {
			t.Errorf("%v\n%s", err, out)
		}
	}
	if out := written(t, Options{Form: Plain}, doubted(1)); !strings.Contains(out, "state\tchisel a mm\tuncertainty of chisel a mm\nnow\t2.50\t0.02\nground\t2.60\t0.04\nthinned\t\t\n") {
		t.Errorf("%s", out)
	}
}

// What is uncertain of a figure less its limit is told where the limit moves too.
func TestALimitThatMovesSaysSo(t *testing.T) {
	s := doubted(1)
	for i := range s.Sections[0].Figures {
		s.Sections[0].Figures[i].Limit = &handbook.Band{Low: 1, High: 20}
	}
	web, size := s.Lookup("web_mm"), s.Lookup("size_mm")
	web.Gaps = &sheet.Gaps{Low: sheet.Doubt{Spread: web.Spread}, High: sheet.Doubt{Spread: 0.02}}
	size.Gaps = new(sheet.Gaps)
	var got struct {
		Limits map[string]map[string]any
	}
	if err := json.Unmarshal([]byte(written(t, Options{Form: JSON}, s)), &got); err != nil {
		t.Fatal(err)
	}
	if l := got.Limits["web_mm"]; l["uncertainty_to_high"] != 0.02 || len(l) != 4 || len(got.Limits["size_mm"]) != 3 {
		t.Errorf("%v", got.Limits)
	}
}

// Of two outcomes both are shown, and the uncertainty reaches from one to the other.
func TestBothOutcomesAreShown(t *testing.T) {
	s := evilSheet()
	s.Gauged = true
	f := s.Lookup("length_mm")
	other := 2.5
	f.Spread, f.Mostly, f.Otherwise = 0.51, "web", &other
	for name, c := range map[string]struct{ out, wants, none string }{
		"table":   {written(t, Options{Form: Table}, s), "  a length                     2.00 or 2.50 mm 1.00 to 3.00 mm", "±0.51"},
		"explain": {written(t, Options{Form: Table, Explain: true}, s), "    or 2.50 mm, on the other side of a limit", "mostly from web"},
		"plain":   {written(t, Options{Form: Plain}, s), "a length\t2.00\tmm\t1.00\t3.00\twithin\tpractice\t0.51\n", "2.50"},
		"json":    {written(t, Options{Form: JSON}, s), "\"otherwise\": {\n    \"length_mm\": 2.5\n  }", "\"otherwise\": {}"},
	} {
		if !strings.Contains(c.out, c.wants) || strings.Contains(c.out, c.none) {
			t.Errorf("%s: not %q, or %q, in\n%s", name, c.wants, c.none, c.out)
		}
	}
	f.Otherwise = nil
	if out := written(t, Options{Form: JSON}, s); strings.Contains(out, "otherwise") {
		t.Errorf("otherwise, though there is nothing\n%s", out)
	}
}

// A table shows them beside the numbers, or the largest underneath where the
// line has no room; rounded up, never down.
func TestTablesShowUncertaintyWhereThereIsRoom(t *testing.T) {
	for columns, want := range map[int][]string{1: {"2.50 ±0.02", "2.60 ±0.04"}, 7: {"uncertain by at most: chisel a 0.04 mm; chisel b 0.04 mm;"}} {
		out := written(t, Options{Form: Table}, doubted(columns))
		for _, w := range want {
			if !strings.Contains(out, w) {
				t.Errorf("%d columns: no %q in\n%s", columns, w, out)
			}
		}
		if both := strings.Contains(out, "at most") && strings.Contains(out, "2.50 ±"); both {
			t.Errorf("%d columns: both ways\n%s", columns, out)
		}
	}
	s := doubted(7)
	for _, row := range s.Grids[0].Rows {
		for i := range row {
			row[i].Spread = 0
		}
	}
	if out := written(t, Options{Form: Table}, s); strings.Contains(out, "at most") {
		t.Errorf("claimed without a gauge\n%s", out)
	}
}

// A word that is not known is null for a script, and an empty list of words is
// empty.
func TestAWordMayBeUnknown(t *testing.T) {
	s := &sheet.Sheet{Command: "inspect"}
	s.Grids = []sheet.Grid{{Key: "rows", Columns: []sheet.Column{
		{Key: "verdict", Kind: quantity.Word, Maybe: true}, {Key: "findings", Kind: quantity.Word}},
		Rows: [][]sheet.Cell{{sheet.W(""), sheet.W("")}, {sheet.W("fit"), sheet.W("dull")}}}}
	var got struct {
		Results struct{ Rows []map[string]any }
	}
	if err := json.Unmarshal([]byte(written(t, Options{Form: JSON}, s)), &got); err != nil {
		t.Fatal(err)
	}
	rows := got.Results.Rows
	if rows[0]["verdict"] != nil || rows[0]["findings"] != "" || rows[1]["verdict"] != "fit" || rows[1]["findings"] != "dull" {
		t.Errorf("%v", rows)
	}
}

// The working shown for many answers is that of the one named.
func TestWorkingOfOneAmongMany(t *testing.T) {
	s := doubted(1)
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

// What is under the last digit by rounding alone is not claimed.
func TestNoUncertaintyOfNought(t *testing.T) {
	f := quantity.Format{System: quantity.Metric}
	if got := plusMinus(quantity.Share, 0, 1, 1e-17, f); got != "" {
		t.Errorf("±%s", got)
	}
}
