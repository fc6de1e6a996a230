package plan_test

import (
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command/regrind"
	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/pocket"
)

// A second computation: the formula that stands beside each figure, in letters and
// as the printed sum, worked out by an evaluator of another house (expr-lang/expr)
// as a pocket calculator in degree mode would.
func TestWorkingGivesTheFigure(t *testing.T) {
	for _, more := range []readings{{drill.MarginWear: "0.5mm"}, {drill.Web: "2.4mm", drill.MarginWear: "5mm"}, {drill.Every: "0.001mm", drill.BackTaper: "0.0005", drill.LeastDiameter: "11.99mm"}} {
		pocket.Worked(t, regrind.Command.Sheet(fit.With(more).Drill(t), true))
	}
	testkit.Property(t, "every figure's formula, in letters and as printed, gives the figure", func(t *rapid.T) {
		d := anyDrill(t).Drill(t)
		if rapid.Bool().Draw(t, "it has a history") {
			d.Past = drill.Past{Usual: rapid.Float64Range(0.2, 3).Draw(t, "usual"), Body: d.Value(drill.Web) * rapid.Float64Range(0.9, 1.2).Draw(t, "body")}
		}
		d.Units = rapid.SampledFrom([]quantity.System{quantity.Metric, quantity.Inch}).Draw(t, "printed in")
		pocket.Worked(t, regrind.Command.Sheet(d, true))
	})
}
