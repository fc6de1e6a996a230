package cone

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/pocket"
)

// Every formula beside a figure, worked out by an evaluator of another house
// (expr-lang/expr), for points and settings given in any of the three ways, some
// readings missing.
func TestWorkingGivesTheFigure(t *testing.T) {
	made := 0
	testkit.Property(t, "every formula of cone, in letters and as printed, gives the figure", func(t *rapid.T) {
		size := rapid.Float64Range(2, 40).Draw(t, "size")
		num := func(name string, low, high float64) string {
			return fmt.Sprintf("%.4f", rapid.Float64Range(low, high).Draw(t, name))
		}
		length := func(name string, low, high float64) string {
			return fmt.Sprintf("%.5fmm", size*rapid.Float64Range(low, high).Draw(t, name))
		}
		r := readings{drill.Size: fmt.Sprintf("%.5fmm", size)}
		maybe := func(reading drill.Reading, text string) {
			if rapid.IntRange(0, 3).Draw(t, reading.String()+" read") > 0 {
				r[reading] = text
			}
		}
		maybe(drill.Web, length("web", 0.1, 0.25))
		maybe(drill.SemiAngle, num("semi", 12, 34))
		maybe(drill.HeelTurn, num("turn", 10, 80))
		way := rapid.IntRange(0, 2).Draw(t, "way")
		if way == 2 {
			maybe(drill.AxisAngle, num("axis", 20, 45))
			maybe(drill.AxisOffset, length("offset", 0.05, 0.3))
			maybe(drill.Vertex, length("vertex", 0.2, 2))
		} else {
			maybe(drill.PointAngle, num("point", 100, 145))
			if rapid.Bool().Draw(t, "dropped") {
				maybe(drill.HeelDrop, length("drop", 0.02, 0.06))
			} else {
				maybe(drill.Clearance, num("clearance", 6, 18))
			}
		}
		switch way {
		case 0:
			chisel := rapid.Float64Range(105, 150).Draw(t, "chisel")
			if rapid.Bool().Draw(t, "acute") {
				chisel = 180 - chisel
			}
			maybe(drill.ChiselAngle, fmt.Sprintf("%.4f", chisel))
			maybe(drill.ChiselLength, length("chisel length", 0.26, 0.3))
		case 1:
			r[drill.Vertex] = length("vertex", 0.2, 2)
		}
		d := r.Drill(t)
		if len(Check(d)) > 0 {
			t.Skip("out of reach")
		}
		s := Command.Sheet(d, true)
		if len(s.Grids) > 0 {
			made++
		}
		pocket.Worked(t, s)
	})
	if made == 0 {
		t.Error("no point was ground")
	}
}
