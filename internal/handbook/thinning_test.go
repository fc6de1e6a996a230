package handbook_test

import (
	"math"
	"testing"

	"evenlip/internal/handbook"
)

// Chisel lengths of the forms, trade rules from memory; 0.03 of a split point
// is in print.
func TestFormOfChisel(t *testing.T) {
	for ratio, want := range map[float64]string{0: "C", 0.03: "C", 0.06: "C", 0.069: "C", 0.07: "A", 0.08: "A", 0.1: "A", 0.13: "A", 0.15: "N", 0.18: "N", 0.2: "N", 0.4: "N"} {
		if form, source, ok := handbook.FormOfChisel(ratio, false); !ok || form.Letter != want || source.Label != handbook.Own {
			t.Errorf("c/D %v: form %s, want %s", ratio, form.Letter, want)
		}
	}
	// Form N is the one without thinning (from memory, medium): a point with a
	// notch in it is another, whatever is left of its chisel edge.
	for ratio, want := range map[float64]string{0.03: "C", 0.07: "A", 0.15: "A", 0.18: "A", 0.4: "A"} {
		if form, _, ok := handbook.FormOfChisel(ratio, true); !ok || form.Letter != want {
			t.Errorf("thinned to c/D %v: form %s, want %s", ratio, form.Letter, want)
		}
	}
	for _, ratio := range []float64{-0.01, 1, math.NaN()} {
		if _, _, ok := handbook.FormOfChisel(ratio, false); ok {
			t.Errorf("a form at c/D %v", ratio)
		}
	}
}
