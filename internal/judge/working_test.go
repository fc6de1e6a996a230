package judge_test

import (
	"testing"

	"pgregory.net/rapid"

	commands "evenlip/internal/command/point"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/pocket"
)

// sheets are the answers of this package.
var sheets = []func(*drill.Drill, bool) *sheet.Sheet{
	judge.Sheet, commands.Point.Sheet, commands.Clearance.Sheet, commands.Chisel.Sheet, commands.Web.Sheet, commands.Lips.Sheet,
}

// A second computation: the formula that stands beside each figure, in letters and
// as the printed sum, worked out by an evaluator of another house (expr-lang/expr)
// as a pocket calculator in degree mode would.
func TestWorkingGivesTheFigure(t *testing.T) {
	testkit.Property(t, "every figure's formula, in letters and as printed, gives the figure", func(t *rapid.T) {
		d := draw(t).Drill(t)
		for _, answer := range sheets {
			pocket.Worked(t, answer(d, true))
		}
	})
}
