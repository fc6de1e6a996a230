package lookup

import (
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/pocket"
)

// Every formula beside a figure, worked out by an evaluator of another house
// (expr-lang/expr), for every material at any size, and at none.
func TestWorkingGivesTheFigure(t *testing.T) {
	testkit.Property(t, "every formula of size and material, in letters and as printed, gives the figure", func(t *rapid.T) {
		size := quantity.Value{V: rapid.Float64Range(0.3, 90).Draw(t, "size")}
		pocket.Worked(t, Size(size, quantity.Metric, true))
		m := rapid.SampledFrom(handbook.Materials()).Draw(t, "material")
		pocket.Worked(t, Material(&m, nil, size, true))
		pocket.Worked(t, Material(&m, nil, quantity.Value{}, true))
	})
}
