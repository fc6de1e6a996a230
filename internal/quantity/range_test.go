package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

func TestSignedRange(t *testing.T) {
	r, err := Reader{Length, Unset, true}.Range("-0.1mm..0.1mm by 0.05mm")
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
		if _, err := (Reader{Length, Unset, true}).Range(refused); err == nil {
			t.Errorf("%q is read", refused)
		}
	}
	if _, err := (Reader{Kind: Length, Bare: Unset}).Range("-1..1 by 1"); err == nil {
		t.Error("a negative value is read")
	}
}

func TestStopsShort(t *testing.T) {
	for text, want := range map[string]struct {
		last  float64
		short bool
	}{
		"0mm..20mm by 7mm":     {14, true},
		"0mm..20mm by 5mm":     {20, false},
		"0mm..1in by 5mm":      {25, true},
		"0mm..0.3mm by 0.1mm":  {0.3, false},
		"0mm..4mm by 5mm":      {0, true},
		"3mm..3mm by 5mm":      {3, false},
		"1in..2in by 0.1in":    {50.8, false},
		"0mm..1000mm by 0.1mm": {1000, false},
	} {
		r, err := Reader{Kind: Length, Bare: Unset}.Range(text)
		if err != nil {
			t.Fatal(err)
		}
		if last, short := r.StopsShort(); math.Abs(last-want.last) > 1e-9 || short != want.short {
			t.Errorf("%s stops at %v, short %v", text, last, short)
		}
	}
	testkit.Property(t, "a range stops short where its end is no whole number of steps away, and nowhere else", func(t *rapid.T) {
		from, step, steps := rapid.IntRange(0, 1000).Draw(t, "from"), rapid.IntRange(1, 300).Draw(t, "step"), rapid.IntRange(0, 60).Draw(t, "steps")
		over := rapid.IntRange(0, step-1).Draw(t, "over")
		value := func(tenths int) Value { return Value{V: float64(tenths) / 10} }
		last, short := Range{value(from), value(from + steps*step + over), value(step)}.StopsShort()
		if short != (over > 0) || math.Abs(last-value(from+steps*step).V) > 1e-9 {
			t.Fatalf("%d tenths by %d, %d times and %d over: stops at %v, short %v", from, step, steps, over, last, short)
		}
	})
}

// Where nothing is negative, the two read alike.
func TestSignedRangeIsRange(t *testing.T) {
	testkit.Property(t, "a range that may be negative reads like one that may not, where nothing is", func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9]{1,2}(mm|in)?\.\.[0-9]{1,2}(mm|in)? by [0-9](mm|in)?`).Draw(t, "text")
		a, errA := Reader{Kind: Length, Bare: Metric}.Range(text)
		b, errB := Reader{Length, Metric, true}.Range(text)
		if (errA == nil) != (errB == nil) || errA == nil && (a.From.V != b.From.V || a.To.V != b.To.V || a.Step.V != b.Step.V) {
			t.Fatalf("%q: %v (%v) and %v (%v)", text, a, errA, b, errB)
		}
	})
}
