package pocket_test

import (
	"math"
	"testing"

	"evenlip/internal/testkit/pocket"
)

func TestCalculatorInDegrees(t *testing.T) {
	for sum, want := range map[string]float64{
		"2.1 / sin(30°)": 4.2, "atan(1)": 45, "180 - asin(1 / 2)": 150, "2 * 3^2": 18, "0.25^0.5": 0.5,
		"tan(45)": 1, "cos(2 * 30)": 0.5, "-2 * (-3)": 6, "100 * max(0, min(1, 5 / 4))": 100, "acos(0.5)": 60, "pi": math.Pi,
	} {
		if got, err := pocket.Evaluate(sum); err != nil || math.Abs(got-want) > 1e-12 {
			t.Errorf("%s = %v (%v), not %v", sum, got, err, want)
		}
	}
}
