package handbook_test

import (
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/testkit"
)

// Magnesium and titanium burn, steel chips do not as a rule.
func TestBurns(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "metals that burn as chips")
	word := map[bool]string{true: "burns", false: "does not, as a rule"}
	for name, want := range map[string]bool{"magnesium": true, "titanium": true, "titanium-pure": true, "steel-200": false, "aluminium": false} {
		m, ok := handbook.FindMaterial(name)
		if !ok {
			t.Errorf("no material is called %s", name)
		}
		got, source := handbook.Burns(m)
		if source.Label != handbook.Practice {
			t.Errorf("%s: %v", name, source)
		}
		trade.Says(name, word[got], word[want])
	}
	if burns, _ := handbook.Burns(nil); burns {
		t.Error("work that is not known burns")
	}
}
