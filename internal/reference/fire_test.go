package reference_test

import (
	"testing"

	"evenlip/internal/reference"
	"evenlip/internal/verify"
)

// Magnesium and titanium burn, steel chips do not as a rule.
func TestBurns(t *testing.T) {
	trade := verify.Against(t, verify.Trade, "metals that burn as chips")
	word := map[bool]string{true: "burns", false: "does not, as a rule"}
	for name, want := range map[string]bool{"magnesium": true, "titanium": true, "titanium-pure": true, "steel-200": false, "aluminium": false} {
		m, ok := reference.FindMaterial(name)
		if !ok {
			t.Errorf("no material is called %s", name)
		}
		got, source := reference.Burns(m)
		if source.Label != reference.Practice {
			t.Errorf("%s: %v", name, source)
		}
		trade.Says(name, word[got], word[want])
	}
	if burns, _ := reference.Burns(nil); burns {
		t.Error("work that is not known burns")
	}
}
