package handbook_test

import (
	"math"
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/testkit"
)

// A fifth of the diameter at 1/8 in, and thinner in proportion above. Below 1/8 in
// no figure is known, and the curve is held.
func TestNewWebIsHeldBelowAnEighth(t *testing.T) {
	for _, d := range []float64{0.3, 1, 3.175} {
		if got := handbook.NewWeb(d) / d; math.Abs(got-0.2) > 0.001 {
			t.Errorf("a new %g mm drill has a web of %g of its diameter, want 0.200", d, got)
		}
	}
	checks := testkit.Against(t, testkit.OldToolHandbook, "web of a new drill over its diameter, embedded")
	checks.Within("1 in", handbook.NewWeb(25.4)/25.4, 0.12, 1e-12, "")
}
