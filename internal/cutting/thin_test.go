package cutting_test

import (
	"fmt"
	"math"
	"testing"

	"evenlip/internal/cutting"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"

	"pgregory.net/rapid"
)

// heavy is a 3/4 in drill ground back until its web has grown to a quarter of
// its diameter.
var heavy = cutting.Thick{D: 19.05, Web: 4.76, ChiselAngle: 125 * deg, Feed: 0.25}

// A chisel edge of c/D 0.18 belongs to a web of about 0.155 D, one of 0.10 to
// 0.085 D; at 120 degrees.
func TestThinningToARatioLeavesTheHandbooksWeb(t *testing.T) {
	checks := testkit.Against(t, testkit.MachinerysHandbook, "p. 1152, Table 7, web that thinning leaves").Because("the webs are printed to 0.005 D")
	thick := heavy
	thick.ChiselAngle = 120 * deg
	for _, row := range printed(t, "chisel-edge-factors", nil) {
		if q, web := row[0], row[1]; q*math.Sin(120*deg)*thick.D < thick.Web {
			r := thick.ToRatio(q)
			checks.Part(fmt.Sprintf("w/D at c/D %.2f", q), r.WebRatio, web, 0.045, "")
			within(t, "chisel ratio", r.RatioAfter, q, 1e-12)
		}
	}
}

func TestThinningToAWeb(t *testing.T) {
	r := heavy.ToWeb(2.5)
	within(t, "notch", r.NotchDepth, 1.13, 1e-12)
	hand := testkit.Against(t, testkit.Derived, "web of 4.76 mm thinned to 2.5 mm, chisel at 125°, by hand")
	hand.Within("chisel after", r.ChiselAfter, 3.0519, 1e-4, "mm")
	hand.Within("chisel before", r.ChiselBefore, 5.8109, 1e-4, "mm")
	within(t, "web ratio", r.WebRatio, 2.5/19.05, 1e-12)
	within(t, "thrust ratio", r.ThrustRatio, cutting.ThrustRatio(quantity.Metric, 19.05, 0.25, r.RatioAfter, r.RatioBefore), 1e-12)
	if !r.Needed {
		t.Error("a thick web needs thinning")
	}
}

// The thrust ratio by the metric equation written out.
func TestThinningThrustBySecondComputation(t *testing.T) {
	thrust := func(q float64) float64 {
		b := (1-q)/math.Pow(1+q, 0.2) + 2.2*math.Pow(q, 0.8)
		return 0.05*math.Pow(0.25, 0.8)*math.Pow(19.05, 0.8)*b + 0.007*19.05*19.05*q*q
	}
	r := heavy.ToRatio(0.1)
	before := 4.76 / math.Sin(55*deg) / 19.05
	apart := testkit.Against(t, testkit.Derived, "thrust ratio of thinning, by the metric equation written out")
	apart.Part("c/D 0.305 to 0.1", r.ThrustRatio, thrust(0.1)/thrust(before), 1e-9, "")
}

func TestThinWebIsLeftAlone(t *testing.T) {
	for _, target := range []float64{heavy.Web, 6, 100} {
		r := heavy.ToWeb(target)
		if r.Needed || r.NotchDepth != 0 || r.ThrustRatio != 1 || r.WebTarget != heavy.Web || r.ChiselAfter != r.ChiselBefore {
			t.Errorf("target %v: %+v", target, r)
		}
	}
	if r := heavy.ToThrust(1); r.Needed || r.NotchDepth != 0 {
		t.Errorf("present thrust wanted: %+v", r)
	}
}

// points draws a point that a regrinder could meet.
func points(t *rapid.T) cutting.Thick {
	d := rapid.Float64Range(1, 80).Draw(t, "d")
	return cutting.Thick{
		D: d, Web: d * rapid.Float64Range(0.03, 0.4).Draw(t, "w/D"),
		ChiselAngle: rapid.Float64Range(100*deg, 150*deg).Draw(t, "chisel angle"),
		Feed:        rapid.Float64Range(0.01, 0.8).Draw(t, "feed"),
	}
}

func TestThinningNeverRaisesThrust(t *testing.T) {
	testkit.Property(t, "thinning never raises thrust, and two notches and the web left make the web there was", func(t *rapid.T) {
		p := points(t)
		target := p.D * rapid.Float64Range(0.001, 0.6).Draw(t, "target w/D")
		r := p.ToWeb(target)
		if !(r.ThrustRatio <= 1 && r.NotchDepth >= 0 && r.ChiselAfter <= r.ChiselBefore) {
			t.Fatalf("%+v", r)
		}
		if math.Abs(r.WebTarget+2*r.NotchDepth-p.Web) > 1e-12*p.D {
			t.Fatalf("two notches and the web left make %v, want %v", r.WebTarget+2*r.NotchDepth, p.Web)
		}
	})
}

// Either way of quoting the chisel-edge angle thins alike.
func TestThinningTakesEitherAngle(t *testing.T) {
	testkit.Property(t, "either way of quoting the chisel-edge angle thins alike", func(t *rapid.T) {
		p := points(t)
		mirrored := p
		mirrored.ChiselAngle = math.Pi - p.ChiselAngle
		a := p.ToRatio(0.05)
		b := mirrored.ToRatio(0.05)
		if !(math.Abs(a.WebTarget-b.WebTarget) <= 1e-12*p.D && math.Abs(a.ThrustRatio-b.ThrustRatio) <= 1e-12) {
			t.Fatalf("%+v and %+v", a, b)
		}
	})
}

func TestThinningToAThrustGivesThatThrust(t *testing.T) {
	testkit.Property(t, "thinning to a thrust gives that thrust", func(t *rapid.T) {
		p := points(t)
		least := p.LeastThrust()
		share := least + (1-least)*rapid.Float64Range(0.001, 1).Draw(t, "how far")
		r := p.ToThrust(share)
		if !(math.Abs(r.ThrustRatio-share) <= 1e-9) {
			t.Fatalf("got %v, want %v", r.ThrustRatio, share)
		}
	})
}

// Sizes and feed scaled together change no ratio but the chisel's indenting
// against the feed; the web and the notch scale.
func TestThinningScales(t *testing.T) {
	testkit.Property(t, "a drill scaled in all its lengths has its notch scaled and its ratios kept", func(t *rapid.T) {
		p := points(t)
		by := rapid.Float64Range(0.5, 2).Draw(t, "scale")
		q := p
		q.D, q.Web = by*p.D, by*p.Web
		a, b := p.ToWeb(p.Web/3), q.ToWeb(by*p.Web/3)
		if !(math.Abs(b.NotchDepth-by*a.NotchDepth) <= 1e-12*q.D && math.Abs(a.RatioAfter-b.RatioAfter) <= 1e-12) {
			t.Fatalf("%+v and %+v", a, b)
		}
	})
}

func TestImpossibleThinningIsNaN(t *testing.T) {
	nan := math.NaN()
	for quantity, breaks := range map[string][]func(*cutting.Thick){
		"drill diameter":    {func(p *cutting.Thick) { p.D = 0 }, func(p *cutting.Thick) { p.D = nan }},
		"feed":              {func(p *cutting.Thick) { p.Feed = -1 }, func(p *cutting.Thick) { p.Feed = nan }},
		"web thickness":     {func(p *cutting.Thick) { p.Web = 0 }, func(p *cutting.Thick) { p.Web = p.D }, func(p *cutting.Thick) { p.Web = nan }},
		"chisel-edge angle": {func(p *cutting.Thick) { p.ChiselAngle = 0 }, func(p *cutting.Thick) { p.ChiselAngle = 5 * deg }, func(p *cutting.Thick) { p.ChiselAngle = math.Pi }, func(p *cutting.Thick) { p.ChiselAngle = -1 }, func(p *cutting.Thick) { p.ChiselAngle = 4 }, func(p *cutting.Thick) { p.ChiselAngle = nan }},
	} {
		for _, change := range breaks {
			p := heavy
			change(&p)
			notThinned(t, quantity, p.ToWeb(1))
			notThinned(t, quantity, p.ToRatio(0.1))
			notThinned(t, quantity, p.ToThrust(0.9))
			if !math.IsNaN(p.LeastThrust()) {
				t.Errorf("least thrust of an impossible point: %v", p.LeastThrust())
			}
		}
	}
}

// notThinned fails unless nothing is known of a thinning.
func notThinned(t *testing.T, what string, r cutting.Thinning) {
	t.Helper()
	if r.Needed {
		t.Errorf("%s: %+v", what, r)
	}
	for _, v := range [...]float64{r.WebTarget, r.NotchDepth, r.ChiselBefore, r.ChiselAfter, r.RatioBefore, r.RatioAfter, r.WebRatio, r.ThrustRatio} {
		unknown(t, what, v)
	}
}

func TestImpossibleTargetsAreNaN(t *testing.T) {
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		notThinned(t, "target web thickness", heavy.ToWeb(v))
	}
	for _, q := range []float64{0, 1, -0.1, math.NaN()} {
		notThinned(t, "target chisel ratio", heavy.ToRatio(q))
	}
	for _, share := range []float64{heavy.LeastThrust(), 0, 1.01, math.NaN()} {
		notThinned(t, "wanted thrust over present thrust", heavy.ToThrust(share))
	}
}

func BenchmarkToThrust(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		heavy.ToThrust(0.7)
	}
}
