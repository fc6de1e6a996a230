package handbook_test

import (
	"math"
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/testkit"
)

// K of the second published way by the work, from the published row of the same work, or
// of the one nearest to it in hardness.
func TestForceConstant(t *testing.T) {
	typed := testkit.Against(t, testkit.SecondCopy, "constant K of the second way to a thrust, by work")
	want := map[string]float64{
		"free-cutting-steel": 1.42, "steel-150": 2.22, "steel-200": 2.22, "steel-300": 2.41, "steel-400": 3.44,
		"cast-iron-150": 1.00, "aluminium": 1.01,
	}
	for _, m := range handbook.Materials() {
		got := handbook.ForceConstant(&m)
		if k, ok := want[m.Name]; ok {
			typed.Within(m.Name, got, k, 0, "")
			delete(want, m.Name)
		} else if !math.IsNaN(got) {
			t.Errorf("%s has K %v, and none is published for it", m.Name, got)
		}
	}
	if len(want) > 0 {
		t.Errorf("no such materials: %v", want)
	}
	if got := handbook.ForceConstant(nil); !math.IsNaN(got) {
		t.Errorf("no material has K %v", got)
	}
}
