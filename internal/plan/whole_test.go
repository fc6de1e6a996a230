package plan_test

import (
	"maps"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command/regrind"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/plan"
	"evenlip/internal/testkit"
)

// wholeDrill is any drill that can be, with its lips unlike.
func wholeDrill(t *rapid.T) readings {
	r := anyDrill(t)
	if height, ok := r[drill.LipHeight]; ok && rapid.Bool().Draw(t, "lip 2 higher") {
		r[drill.LipHeight] = "0," + height
	}
	if len(r.Drill(t).Possible()) > 0 {
		t.Skip("no such drill")
	}
	return r
}

// Lip 1 for lip 2: the same is to be done, as much comes off, and off the other lip.
func TestSwappedLipsSwapThePlan(t *testing.T) {
	testkit.Property(t, "lip 1 for lip 2 gives the same plan with the lips swapped", func(t *rapid.T) {
		given := wholeDrill(t)
		other := maps.Clone(given)
		for r, text := range other {
			if a, b, two := strings.Cut(text, ","); two {
				other[r] = b + "," + a
			} else if r == drill.LipHeight {
				other[r] = "0," + text
			}
		}
		a, b := plan.Of(given.Drill(t)), plan.Of(other.Drill(t))
		if a.Do != b.Do || a.Reason != b.Reason || a.Made != b.Made {
			t.Fatalf("%s for %s, and %s for %s", a.Do, a.Reason, b.Do, b.Reason)
		}
		if !a.Made {
			return
		}
		near(t, "stock", b.Stock.Total, a.Stock.Total, 1e-7)
		near(t, "lip 1, inner end", b.Stock.Lip2.Inner, a.Stock.Lip1.Inner, 1e-7)
		near(t, "lip 1, outer end", b.Stock.Lip2.Outer, a.Stock.Lip1.Outer, 1e-7)
		near(t, "lip 2, inner end", b.Stock.Lip1.Inner, a.Stock.Lip2.Inner, 1e-7)
		near(t, "lip 2, outer end", b.Stock.Lip1.Outer, a.Stock.Lip2.Outer, 1e-7)
	})
}

// More wear never takes less, and never leaves a drill that was to be ground: save
// that a measured margin takes the place of the corner's estimate, and that lips are
// brought to the angle wanted only while it costs no more than a clean-up, which they
// then keep (docs/regrind.md).
func TestMoreWearNeverMakesAPlanLighter(t *testing.T) {
	testkit.Property(t, "more wear never makes the plan of a drill lighter, nor its stock less", func(t *rapid.T) {
		given := wholeDrill(t)
		r := rapid.SampledFrom([]drill.Reading{drill.FlankWear, drill.CornerWear, drill.MarginWear, drill.LipChip}).Draw(t, "which")
		d := given.Drill(t)
		more := *d
		v, _ := d.Get(r)
		if r == drill.MarginWear && v == 0 && d.Value(drill.CornerWear) > 0 {
			t.Skip("a measured margin takes the place of what the corner's rounding lets guess")
		}
		more.Put(r, v+rapid.SampledFrom([]float64{0.001, 0.03, 0.3, 3}).Draw(t, "more")*d.Value(drill.Size)/12)
		if len(more.Possible()) > 0 {
			t.Skip("no such drill")
		}
		a, b := plan.Of(d), plan.Of(&more)
		if b.Do < a.Do {
			t.Fatalf("%s with more wear, %s with less", b.Do, a.Do)
		}
		if !a.Made || !b.Made {
			return
		}
		spared := 0.0
		if b.Lips.Target != a.Lips.Target {
			spared = handbook.CleanUp
		}
		if b.Would.Total < a.Would.Total-spared-1e-9 {
			t.Fatalf("%g mm come off with more wear, %g with less", b.Would.Total, a.Would.Total)
		}
		if a.Do == plan.Regrind && b.Do == plan.Regrind && b.Stock.Total < a.Stock.Total-spared-1e-9 {
			t.Fatalf("of the plan %g mm come off with more wear, %g with less", b.Stock.Total, a.Stock.Total)
		}
	})
}

// Before and after agree with the stock end by end: the flute loses what the corners
// lose, the web grows by what the inner ends lose, the length goes with the tip.
func TestBeforeAndAfterAgreeWithTheStock(t *testing.T) {
	testkit.Property(t, "before and after agree with what comes off at each end of the lips", func(t *rapid.T) {
		d := wholeDrill(t).Drill(t)
		p := plan.Of(d)
		if !p.Made {
			t.Skip("no plan")
		}
		s, l := &p.Stock, &p.Lips
		if f := p.Now.Flute; !math.IsNaN(f) {
			near(t, "flute", p.Ground.Flute, math.Max(0, f-math.Max(s.Lip1.Outer, s.Lip2.Outer)), 1e-9)
		}
		if flat := p.Found.Face.Flat; !math.IsNaN(flat) {
			sheet := regrind.Command.Sheet(d, false)
			near(t, "land along the lips", sheet.Lookup("lip_flat_after_mm").Value, math.Max(0, flat-math.Max(s.Lip1.Outer, s.Lip2.Outer)), 1e-9)
		}
		if w := p.Now.Body; !math.IsNaN(w) {
			near(t, "web behind the point", p.Ground.Body, w+p.Body.Taper*math.Max(s.Lip1.Inner, s.Lip2.Inner), 1e-9)
		}
		if s.Total == 0 {
			return
		}
		// The point as ground: from the corner up to the tip by the angle aimed at.
		corner := l.Lip1.At(l.Outer) - s.Lip1.Outer
		near(t, "both corners", l.Lip2.At(l.Outer)-s.Lip2.Outer, corner, 1e-7)
		near(t, "both inner ends", l.Lip1.At(l.Inner)-s.Lip1.Inner, l.Lip2.At(l.Inner)-s.Lip2.Inner, 1e-7)
		tip := math.Max(l.Lip1.At(0), l.Lip2.At(0)) - (corner + l.Outer/math.Tan(l.Target))
		if length := p.Now.Length; !math.IsNaN(length) {
			near(t, "length", p.Ground.Length, math.Max(0, length-tip), 1e-7)
		}
	})
}
