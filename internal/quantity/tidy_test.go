package quantity

import (
	"testing"

	"evenlip/internal/testkit"
)

// Charts of decimal equivalents have 3/32 as 0.0938; by way of millimetres it
// came out as 0.0937.
func TestFractionsPrintAsTheChartsHaveThem(t *testing.T) {
	charts := testkit.Against(t, testkit.Trade, "charts of decimal equivalents")
	f := Format{System: Inch}
	for text, want := range map[string]string{"3/32in": "0.0938", "1/4in": "0.2500", "7/64in": "0.1094"} {
		v, err := Parse(Length, text, Inch)
		if err != nil {
			t.Fatal(err)
		}
		charts.Says(text, f.Number(Length, Caliper, v.V), want)
	}
}
