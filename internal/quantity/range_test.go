package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/verify"
)

func TestSignedRange(t *testing.T) {
	r, err := ParseRangeSigned(Length, "-0.1mm..0.1mm by 0.05mm", Unset)
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range r.Values() {
		if math.Abs(v-(-0.1+0.05*float64(i))) > 1e-12 {
			t.Errorf("step %d is %v", i, v)
		}
	}
	if n := len(r.Values()); n != 5 {
		t.Errorf("%d steps, not 5", n)
	}
	for _, refused := range []string{"-1..1 by -1", "1..-1 by 1", "-1mm..1mm", "-1..1 by 0"} {
		if _, err := ParseRangeSigned(Length, refused, Unset); err == nil {
			t.Errorf("%q is read", refused)
		}
	}
	if _, err := ParseRange(Length, "-1..1 by 1", Unset); err == nil {
		t.Error("ParseRange reads a negative value")
	}
	if _, err := ParseRangeSigned(Count, "-1..1 by 1", Unset); err == nil {
		t.Error("a count below zero is read")
	}
}

// Where nothing is negative, the two read alike.
func TestSignedRangeIsRange(t *testing.T) {
	verify.Property(t, "a range that may be negative reads like one that may not, where nothing is", func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9]{1,2}(mm|in)?\.\.[0-9]{1,2}(mm|in)? by [0-9](mm|in)?`).Draw(t, "text")
		a, errA := ParseRange(Length, text, Metric)
		b, errB := ParseRangeSigned(Length, text, Metric)
		if (errA == nil) != (errB == nil) || errA == nil && (a.From.V != b.From.V || a.To.V != b.To.V || a.Step.V != b.Step.V) {
			t.Fatalf("%q: %v (%v) and %v (%v)", text, a, errA, b, errB)
		}
	})
}
