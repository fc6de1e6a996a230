package reference_test

import (
	"testing"

	"evenlip/internal/reference"
)

// Common practice: magnesium and titanium burn, steel chips do not as a rule.
func TestBurns(t *testing.T) {
	for name, want := range map[string]bool{"magnesium": true, "titanium": true, "titanium-pure": true, "steel-200": false, "aluminium": false} {
		if _, ok := reference.FindMaterial(name); !ok {
			t.Errorf("no material is called %s", name)
		}
		if got, source := reference.Burns(name); got != want || source.Label != reference.Practice {
			t.Errorf("%s burns: %v, %v", name, got, source)
		}
	}
}
