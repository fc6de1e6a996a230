package spindle

import (
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
	"evenlip/internal/testkit/pocket"
)

// A second computation: the formula that stands beside each figure, in letters and
// as the printed sum, worked out by an evaluator of another house (expr-lang/expr)
// as a pocket calculator in degree mode would.
func TestWorkingGivesTheFigure(t *testing.T) {
	testkit.Property(t, "every figure's formula, in letters and as printed, gives the figure", func(t *rapid.T) {
		d := anyDrill(t).Drill(t)
		for _, c := range []command.Command{&Thrust, &Thin, &Pilot, &Speed} {
			if len(c.Refuse(d)) == 0 {
				pocket.Worked(t, c.Sheet(d, true))
			}
		}
	})
}

// anyDrill draws a drill of which not everything was read, in millimetres or inches.
func anyDrill(t *rapid.T) drilltest.Readings {
	d := rapid.Float64Range(1.5, 60).Draw(t, "D, mm")
	unit, by := "mm", 1.0
	if rapid.Bool().Draw(t, "inches") {
		unit, by = "in", 25.4
	}
	length := func(name string, low, high float64) string {
		return trim(rapid.Float64Range(low, high).Draw(t, name)/by) + unit
	}
	part := func(name string, low, high float64) string { return length(name, low*d, high*d) }
	angle := func(name string, low, high float64) string {
		return trim(rapid.Float64Range(low, high).Draw(t, name))
	}
	r := drilltest.Readings{}
	take := func(name, text string) {
		if rapid.IntRange(0, 2).Draw(t, name+" was read") > 0 {
			r[drilltest.Named(name)] = text
		}
	}
	if rapid.IntRange(0, 9).Draw(t, "size was read") > 0 {
		r[drilltest.Named("size")] = trim(d/by) + unit
	}
	take("web", part("web", 0.05, 0.3))
	take("chisel-angle", angle("chisel angle", 115, 140))
	if _, both := r[drilltest.Named("web")]; !both {
		take("chisel-length", part("chisel length", 0.05, 0.4))
	}
	take("material", rapid.SampledFrom([]string{"steel-200", "stainless-316", "aluminium", "brass", "copper", "plastics"}).Draw(t, "material"))
	take("feed", length("feed", 0.02, 0.6))
	take("rpm", whole(rapid.Float64Range(50, 5000).Draw(t, "rpm")))
	take("depth", part("depth", 0.2, 12))
	take("wear-factor", angle("wear factor", 1, 1.6))
	take("efficiency", angle("efficiency", 0.5, 1))
	take("drive", "belt")
	take("clearance", angle("clearance", 4, 20))
	take("lip-angle", angle("lip angle", 50, 68))
	take("shank-diameter", part("shank", 0.4, 1))
	take("helix", angle("helix", 10, 40))
	take("pilot", part("pilot", 0.04, 0.7))
	switch rapid.IntRange(0, 4).Draw(t, "target") {
	case 1:
		r[drilltest.Named("chisel-ratio")] = angle("chisel ratio", 0.02, 0.3)
	case 2:
		r[drilltest.Named("to-web")] = part("web wanted", 0.02, 0.3)
	case 3:
		if _, sized := r[drilltest.Named("size")]; sized {
			r[drilltest.Named("to-web")] = "new"
		}
	case 4:
		r[drilltest.Named("thrust")] = trim(rapid.Float64Range(200, 20000).Draw(t, "thrust")) + "N"
	}
	return r
}
