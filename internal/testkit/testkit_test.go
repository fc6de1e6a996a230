package testkit

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// witness is a test that only notes whether a check failed.
type witness struct {
	rapid.TB
	failed bool
}

func (w *witness) Helper()               {}
func (w *witness) Errorf(string, ...any) { w.failed = true }

// Each check passes at the edge of what it allows, and fails beyond it and on
// what is no number.
func TestChecks(t *testing.T) {
	t.Setenv("VERIFICATION", "")
	for name, c := range map[string]struct {
		check     func(o Outside, got float64)
		good, bad float64
	}{
		"within":     {func(o Outside, v float64) { o.Within("x", v, 12.5, 0.25, "mm") }, 12.75, 12.76},
		"below it":   {func(o Outside, v float64) { o.Within("x", v, 12.5, 0.25, "") }, 12.25, 12.24},
		"exactly":    {func(o Outside, v float64) { o.Within("x", v, 3, 0, "") }, 3, 3.1},
		"part":       {func(o Outside, v float64) { o.Part("x", v, -200, 0.25, "") }, -150, -149},
		"band, low":  {func(o Outside, v float64) { o.Between("x", v, 20, 25.5, "°") }, 20, 19.9},
		"band, high": {func(o Outside, v float64) { o.Between("x", v, 20, 25.5, "°") }, 25.5, 25.6},
		"under":      {func(o Outside, v float64) { o.Below("x", v, 0.2, "") }, 0.19, 0.2},
		"over":       {func(o Outside, v float64) { o.Above("x", v, 0.2, "") }, 0.21, 0.2},
		"word":       {func(o Outside, v float64) { o.Says("x", map[bool]string{true: "dull", false: "sharp"}[v > 0], "dull") }, 1, 0},
	} {
		for v, fails := range map[float64]bool{c.good: false, c.bad: true, math.NaN(): true} {
			w := &witness{TB: t}
			c.check(Against(w, Navy, "a page"), v)
			if w.failed != fails {
				t.Errorf("%s: %v fails: %t", name, v, w.failed)
			}
		}
	}
}
