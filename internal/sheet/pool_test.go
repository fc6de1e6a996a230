package sheet_test

import (
	"fmt"
	"testing"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Nothing of a sheet that was given back is left in one made after it, and what
// one still holds does not change under another.
func TestSheetsFromThePool(t *testing.T) {
	fill := func(s *sheet.Sheet, n int) {
		for i := range n {
			s.Open(fmt.Sprint("section ", i))
			s.Sections[i].Quiet = true
			for j := range n {
				s.Add(sheet.Figure{Key: fmt.Sprint(i, j), Value: float64(j), Word: "word", Of: "size", Work: fmt.Sprint(n), Source: "source", Doubt: new(sheet.Doubt)})
			}
			s.Find("code", sheet.Stop, "{}", quantity.MM(float64(n*i)))
		}
	}
	same := func(s *sheet.Sheet, n int) bool {
		count := 0
		s.Each(func(f *sheet.Figure) {
			if count++; f.Work != fmt.Sprint(n) {
				count = -1000
			}
		})
		for i, f := range s.Findings {
			if f.Text.Args[0] != quantity.MM(float64(n*i)) {
				return false
			}
		}
		return count == n*n && len(s.Sections) == n && len(s.Findings) == n
	}
	kept := sheet.New("kept", true)
	fill(kept, 5)
	for n := range 8 {
		s := sheet.New("inspect", true)
		fill(s, n)
		s.Title, s.Sample, s.Gauged, s.Verdict = "title", true, true, &sheet.Verdict{Word: "fit"}
		s.Inputs = append(s.Inputs, sheet.Input{Name: "size", Values: []quantity.Value{{V: 1}}})
		s.Grids, s.Cautions = append(s.Grids, sheet.Grid{Key: "rows"}), []string{"caution"}
		if !same(s, n) || !same(kept, 5) {
			t.Fatalf("with %d: %+v", n, s)
		}
		s.Free()
		next := sheet.New("web", false)
		if next.Title != "" || next.Sample || next.Gauged || next.Verdict != nil || len(next.Inputs)+len(next.Grids)+len(next.Findings)+len(next.Sections)+len(next.Cautions)+len(next.Extra) > 0 || next.Explaining || next.Command != "web" {
			t.Fatalf("left over: %+v", next)
		}
		next.Open("first")
		if sec := next.Sections[0]; sec.Quiet || sec.Title != "first" || len(sec.Figures) > 0 {
			t.Fatalf("left over: %+v", sec)
		}
		next.Free()
	}
}

// A reading is shown as it was taken, and as its Echo says where it has one.
func TestShown(t *testing.T) {
	a, b := quantity.Value{V: 1, Unit: "mm", Assumed: true, Text: "1"}, quantity.Value{V: 2, Unit: "mm", Text: "2mm"}
	for want, in := range map[string]sheet.Input{
		"": {}, "1 mm": {Values: []quantity.Value{a}}, "1 mm, 2mm": {Values: []quantity.Value{a, b}}, "0..1 by 1": {Echo: "0..1 by 1", Values: []quantity.Value{a, b}},
	} {
		if got := in.Shown(); got != want {
			t.Errorf("%q, not %q", got, want)
		}
	}
}
