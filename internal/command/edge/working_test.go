package edge

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/pocket"
)

// Every formula beside a figure, worked out by an evaluator of another house
// (expr-lang/expr), some readings missing; with --at it is the working of the first
// place asked for, and gives that row.
func TestWorkingGivesTheFigure(t *testing.T) {
	testkit.Property(t, "every formula of edge, in letters and as printed, gives the figure or the row asked for", func(t *rapid.T) {
		r := anyLip(t)
		r[drill.Rpm] = fmt.Sprintf("%.0f", rapid.Float64Range(50, 3000).Draw(t, "rpm"))
		if rapid.Bool().Draw(t, "flattened") {
			r[drill.LipFlat] = "0.5mm"
		}
		for _, reading := range drill.All() {
			if r[reading] != "" && reading != drill.Size && rapid.IntRange(0, 5).Draw(t, reading.String()+" missing") == 0 {
				delete(r, reading)
			}
		}
		d := r.Drill(t)
		if len(Check(d)) > 0 {
			t.Skip("no lip")
		}
		s := Command.Sheet(d, true)
		pocket.Worked(t, s)
		if s.First != nil {
			t.Fatal("without --at another sheet than its own is explained")
		}
		corner := s.Lookup("chisel_corner_ratio").Value
		r[drill.At] = fmt.Sprintf("%.6f,1", corner+(1-corner)*rapid.Float64Range(0.01, 0.99).Draw(t, "along"))
		s = Command.Sheet(r.Drill(t), true)
		pocket.Worked(t, s)
		pocket.Worked(t, s.First)
		if n := rowExplained(t, s); n < 8 {
			t.Fatalf("of the row asked for only %d angles are explained", n)
		}
	})
}

// rowExplained counts the cells of the first row that the sheet explains, and fails
// the test where one is another.
func rowExplained(t *rapid.T, s *sheet.Sheet) (n int) {
	g := &s.Grids[0]
	s.First.Worked(func(f *sheet.Figure, _ bool) {
		for i, c := range g.Columns {
			if c.Key != f.Key || c.Kind == quantity.Word {
				continue
			}
			n++
			if got := g.Rows[0][i].Value; math.Abs(got-f.Value) > 1e-9*math.Max(1, math.Abs(got)) {
				t.Fatalf("%s is explained as %v, the row has %v", c.Key, f.Value, got)
			}
		}
	})
	return n
}
