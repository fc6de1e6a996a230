package reference_test

import (
	"testing"

	"evenlip/internal/reference"
)

// Common practice: magnesium and titanium burn, steel chips do not as a rule.
func TestBurns(t *testing.T) {
	for name, want := range map[string]bool{"magnesium": true, "titanium": true, "titanium-pure": true, "steel-200": false, "aluminium": false} {
		m, ok := reference.FindMaterial(name)
		if !ok {
			t.Errorf("no material is called %s", name)
		}
		if got, source := reference.Burns(m); got != want || source.Label != reference.Practice {
			t.Errorf("%s burns: %v, %v", name, got, source)
		}
	}
	if burns, _ := reference.Burns(nil); burns {
		t.Error("work that is not known burns")
	}
}
