package judge_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command/point"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
	"evenlip/internal/uncertainty"
)

// chance calls f for n drills as plain random numbers have them within the steps of
// the gauges: what the draws leave in doubt, worked out a second time.
func chance(d *drill.Drill, g quantity.Gauges, n int, seed uint64, f func(*drill.Drill)) {
	gauged := map[drill.Reading]float64{}
	for step, read := range map[float64][]drill.Reading{
		g.Caliper:    {drill.Web, drill.SecondWeb, drill.SecondWebAt, drill.ChiselLength, drill.LipLength, drill.Flute, drill.FlankWear, drill.CornerWear, drill.MarginWear, drill.LipChip},
		g.Protractor: {drill.ChiselAngle, drill.LipAngle, drill.Clearance, drill.HeelTurn, drill.Helix},
		g.Indicator:  {drill.LipHeight, drill.HeelDrop},
	} {
		for _, r := range read {
			gauged[r] = step
		}
	}
	rng := rand.New(rand.NewPCG(seed, 1))
	moved := d.Copy()
	for range n {
		for _, r := range drill.All() {
			a, b, count := d.Pair(r)
			for lip, v := range [...]float64{a, b} {
				drawn := rng.Float64()
				either := r.Spec().Pair && (r != drill.LipHeight || count == 2)
				if gauged[r] == 0 || count == 0 || lip == 1 && !either || v == 0 && r != drill.LipHeight {
					continue
				}
				low, high := v-gauged[r]/2, v+gauged[r]/2
				if r != drill.LipHeight && r != drill.Clearance && r != drill.HeelDrop {
					low = max(0, low)
				}
				moved.Move(r, lip, low+drawn*(high-low))
			}
		}
		f(moved)
	}
}

// kinky are drills of which some figure has a kink or a jump within the gauges' steps,
// each kind with other readings beside.
func kinky(t drilltest.Tester) map[string]*drill.Drill {
	const each = 5
	out := map[string]*drill.Drill{}
	for kind, line := range map[string]string{
		"neither lip higher":     "lip-height 0.05mm,0.05mm; lip-angle 59,59",
		"one lip cuts all":       "lip-height 0.06mm; lip-angle 59,59; feed 0.12mm",
		"two bounds alike":       "feed 0.2mm", // and see below
		"a height at its limit":  "lip-height 0.1mm",
		"one clearance on both":  "clearance 11",
		"a chisel at its limit":  "chisel-angle 126; web 2.185mm",
		"where the flank rubs":   "clearance 2,2.5; feed 0.3mm",
		"lengths of equal angle": "lip-height ; lip-length 5.7mm,5.71mm; lip-angle 59",
	} {
		for seed := range uint64(each) {
			rng := rand.New(rand.NewPCG(seed, uint64(len(kind))))
			near := func(v, by float64) float64 { return v + by*(2*rng.Float64()-1) }
			other := of(fmt.Sprintf("size 12mm; web %.2fmm; chisel-angle %.0f; lip-angle %.1f,%.1f; lip-height %.2fmm,%.2fmm; clearance %.1f,%.1f; feed 0.2mm; remove 1mm; flute %.1fmm; depth 30mm; flank-wear %.2fmm",
				near(2.1, 0.3), near(126, 5), near(59, 1), near(59, 1), near(0.1, 0.05), near(0.1, 0.05), near(11, 2), near(11, 2), near(78, 10), near(0.15, 0.08)))
			d := possible(t, other.With(of(line)).With(readings{}))
			if kind == "two bounds alike" {
				d.Put(drill.LipHeight, kinkOfOversize(d))
			}
			out[fmt.Sprintf("%s, %d", kind, seed)] = d
		}
	}
	return out
}

// kinkOfOversize is the difference of the lips' heights at which the bound on the
// hole's oversize has its sharpest bend.
func kinkOfOversize(d *drill.Drill) float64 {
	const step = 0.002
	oversize := func(height float64) float64 {
		moved := *d
		moved.Put(drill.LipHeight, height)
		r := judge.Compute(&moved)
		return r.Oversize()
	}
	at, most := 0.0, 0.0
	for h := -0.2; h <= 0.2; h += step {
		if bend := math.Abs(oversize(h-step) - 2*oversize(h) + oversize(h+step)); bend > most {
			at, most = h, bend
		}
	}
	return at
}

// ordinary are gauges such as a shop has.
var ordinary = quantity.Gauges{Caliper: 0.02, Protractor: 0.5 * deg, Indicator: 0.01}

// covered is the least part of a figure's distribution that its interval may hold.
const covered = 0.925

// againstChance holds the intervals, the states, the words and the verdict of a drill
// against n random draws. It returns how many figures those gave, and the least part of
// one that its interval holds.
func againstChance(t drilltest.Tester, name string, d *drill.Drill, n int) (figures int, least float64) {
	t.Helper()
	noise := 4 * math.Sqrt(covered*(1-covered)/float64(n)) // of a share counted in n draws
	d = gauged(d)
	s, nominal := told(d, ordinary), point.Inspect.Sheet(d, false)
	word := nominal.Verdict.Word
	type tally struct{ within, known, same int }
	got := map[string]*tally{}
	s.Each(func(f *sheet.Figure) { got[f.Key] = new(tally) })
	borneOut := 0
	chance(d, ordinary, n, uint64(len(name)), func(d *drill.Drill) {
		on := point.Inspect.Draw(d)
		defer on.Free()
		if on.Verdict.Word == word {
			borneOut++
		}
		on.Each(func(f *sheet.Figure) {
			c, doubt, was := got[f.Key], s.Lookup(f.Key).Doubt, nominal.Lookup(f.Key)
			if f.Word == was.Word && f.State() == was.State() {
				c.same++
			}
			if !math.IsNaN(f.Value) {
				c.known++
				if rounding := 1e-9 * math.Abs(f.Value); f.Value >= doubt.Low-rounding && f.Value <= doubt.High+rounding {
					c.within++
				}
			}
		})
	})
	if share := float64(borneOut) / float64(n); math.Abs(share-s.Verdict.Share) > 0.03+noise {
		t.Errorf("%s: %q in %.3f of the draws, chance makes %.3f", name, word, s.Verdict.Share, share)
	}
	least = 1
	s.Each(func(f *sheet.Figure) {
		c := got[f.Key]
		if math.Abs(float64(c.known)/float64(n)-f.Doubt.Known) > 0.03+noise && f.Word == "" {
			t.Errorf("%s: %s is known in %.3f of the draws, chance makes it %.3f", name, f.Key, f.Doubt.Known, float64(c.known)/float64(n))
		}
		if c.known == n {
			figures++
			part := float64(c.within) / float64(n)
			least = min(least, part)
			if part < covered-noise {
				t.Errorf("%s: the interval of %s holds %.4f", name, f.Key, part)
			}
		}
		same := float64(c.same) / float64(n)
		if room := 0.02 + noise; f.Doubt.Unsure && same > uncertainty.Tells+room || !f.Doubt.Unsure && f.Known() && same < uncertainty.Tells-room {
			t.Errorf("%s: %s is unsure: %v; chance makes it the same in %.3f", name, f.Key, f.Doubt.Unsure, same)
		}
	})
	return figures, least
}

// besideKinks does so of the drills beside kinks.
func besideKinks(t *testing.T, n int) {
	figures, least := 0, 1.0
	for name, d := range kinky(t) {
		more, low := againstChance(t, name, d, n)
		figures, least = figures+more, min(least, low)
	}
	t.Logf("%d figures, of which an interval holds %.4f or more", figures, least)
	testkit.Cases(t, "beside a kink, too, an interval holds 92.5 % of what chance makes of its figure", figures)
}

func TestDrawsBesideKinks(t *testing.T) { besideKinks(t, 3000) }

func TestDrawsAreWhatChanceMakes(t *testing.T) {
	testkit.Property(t, "intervals, states and verdict are those that random draws give", func(t *rapid.T) {
		againstChance(t, "drawn", drawWhole(t).Drill(t), 1000)
	})
}
