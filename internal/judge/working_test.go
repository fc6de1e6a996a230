package judge_test

import (
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command"
	"evenlip/internal/command/point"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/pocket"
)

// onPoint are the commands on a point.
var onPoint = []command.Command{&point.Inspect, &point.Point, &point.Clearance, &point.Chisel, &point.Web, &point.Lips}

// A second computation: the formula that stands beside each figure, in letters and
// as the printed sum, worked out by an evaluator of another house (expr-lang/expr)
// as a pocket calculator in degree mode would.
func TestWorkingGivesTheFigure(t *testing.T) {
	testkit.Property(t, "every figure's formula, in letters and as printed, gives the figure", func(t *rapid.T) {
		d := draw(t).Drill(t)
		d.Units = rapid.SampledFrom([]quantity.System{quantity.Metric, quantity.Inch}).Draw(t, "printed in")
		for _, c := range onPoint {
			pocket.Worked(t, c.Sheet(d, true))
		}
	})
}
