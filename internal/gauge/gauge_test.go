package gauge_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/gauge"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

const deg = math.Pi / 180

var shop = quantity.Gauges{Caliper: 0.02, Protractor: 1 * deg, Indicator: 0.01}

func TestResolution(t *testing.T) {
	guide := testkit.Against(t, testkit.Metrology, "F.2.2.1, standard uncertainty of a reading that resolves 1")
	guide.Within("u", gauge.Standard(1), 0.29, 0.005, "")
}

// The end gauge of 50 mm: readings that move the length by 25, 9.7, 2.9 and
// 16.6 nm for each of their standard uncertainties, put through Spread.
func TestEndGauge(t *testing.T) {
	read := []drill.Reading{drill.Web, drill.ChiselLength, drill.Flute, drill.Remove}
	moves := []float64{25, 9.7, 2.9, 16.6}
	d := drilltest.Read(t, "size 12mm; web 2mm; chisel-length 2.5mm; flute 70mm; remove 1mm")
	length := func(d *drill.Drill) *sheet.Sheet {
		s := &sheet.Sheet{}
		sum := 0.0
		for i, r := range read {
			sum += moves[i] / gauge.Standard(shop.Caliper) * d.Value(r)
		}
		s.Add(sheet.Figure{Key: "length", Value: sum})
		return s
	}
	s := length(d)
	gauge.Spread(d, shop, s, length)
	f := s.Lookup("length")
	guide := testkit.Against(t, testkit.Metrology, "H.1, combined standard uncertainty of an end gauge")
	guide.Within("to the nearest nm", math.Round(f.Spread/gauge.Coverage), 32, 0, "nm")
	if f.Mostly != drill.Web.String() {
		t.Errorf("mostly from %s, not from what moves it by 25", f.Mostly)
	}
}

func sheetOf(d *drill.Drill) *sheet.Sheet { return judge.Sheet(d, false) }

// The second computation, JCGM 101 in small: every reading drawn at random
// within its gauge's step, the figures' standard deviations taken twice.
func TestSpreadIsWhatChanceMakes(t *testing.T) {
	drills := map[string]*drill.Drill{
		"indicator":   drilltest.Read(t, "size 12mm; web 2.1mm; chisel-angle 126; lip-angle 59.5,58.5; lip-height 0.3mm,0.02mm; clearance 11,12; remove 5mm; feed 0.2mm"),
		"lip lengths": drilltest.Read(t, "size 12mm; web 2.1mm; chisel-length 2.7mm; lip-angle 61,57; lip-length 6.1mm,5.6mm; clearance 11,12; remove 5mm"),
		"heel drop":   drilltest.Read(t, "size 1/2; web 0.08; chisel-angle 126; lip-angle 60,58; heel-drop 0.025,0.026; heel-turn 30; second-web 0.1; second-web-at 1; remove 0.25"),
	}
	for name, d := range drills {
		t.Run(name, func(t *testing.T) { againstChance(t, d) })
	}
}

func againstChance(t *testing.T, d *drill.Drill) {
	s := sheetOf(d)
	gauge.Spread(d, shop, s, sheetOf)
	const runs = 4000
	rng := rand.New(rand.NewPCG(1, 2))
	draws := map[string][]float64{}
	for range runs {
		sheetOf(drawn(d, rng)).Each(func(f *sheet.Figure) {
			if f.Word == "" && !math.IsNaN(f.Value) {
				draws[f.Key] = append(draws[f.Key], f.Value)
			}
		})
	}
	checked := 0
	s.Each(func(f *sheet.Figure) {
		if f.Word != "" || len(draws[f.Key]) != runs {
			return
		}
		want := 2 * stat.StdDev(draws[f.Key], nil)
		// At a kink (the larger of two, an absolute value) a figure spreads less
		// than its steeper side says; one that stands at its end (a share of 1)
		// leaves it now and then, which no slope can see.
		low, high := 0.97*want, 1.03*want+1e-12
		if kinked[f.Key] {
			room := 1e-3
			if f.Kind == quantity.Share { // a share at its end leaves it by a hundredth now and then
				room = 1e-2
			}
			low, high = 0.97*want-room, 1.8*want+room
		}
		if f.Spread < low-1e-12 || f.Spread > high {
			t.Errorf("%s: spread %g, chance makes %g", f.Key, f.Spread, want)
		}
		checked++
	})
	if checked < 20 {
		t.Errorf("only %d figures were compared", checked)
	}
}

// The figures with a kink that a reading of these drills comes near.
var kinked = map[string]bool{
	"working_clearance_deg": true, "least_working_clearance_deg": true, "least_working_at_ratio": true, "feed_limit_mm": true,
	"oversize_bound_mm": true, "chip_share_1": true, "chip_share_2": true,
	"stock_1_inner_mm": true, "stock_1_outer_mm": true, "stock_2_inner_mm": true, "stock_2_outer_mm": true,
}

func drawn(d *drill.Drill, rng *rand.Rand) *drill.Drill {
	for _, r := range drill.All() {
		step := map[quantity.Gauge]float64{quantity.Caliper: shop.Caliper, quantity.Protractor: shop.Protractor, quantity.Indicator: shop.Indicator}[r.Spec().Gauge]
		if r == drill.Size {
			continue
		}
		for i := range d.Values(r) {
			d = d.Nudged(r, i, (rng.Float64()-0.5)*step)
		}
	}
	return d
}

// A gauge that was not named claims nothing.
func TestNoGaugeNoClaim(t *testing.T) {
	d := drilltest.Read(t, "size 12mm; web 2.1mm; chisel-angle 126; lip-angle 59,58")
	s := sheetOf(d)
	gauge.Spread(d, quantity.Gauges{Caliper: 0.02}, s, sheetOf)
	if f := s.Lookup("point_angle_deg"); f.Spread != 0 {
		t.Errorf("the point angle claims ± %g without a protractor", f.Spread)
	}
	if f := s.Lookup("chisel_length_mm"); f.Spread == 0 || f.Mostly != "web" {
		t.Errorf("the chisel length claims ± %g, mostly from %q", f.Spread, f.Mostly)
	}
}

// A coarser gauge never makes a figure surer.
func TestCoarserIsNeverSurer(t *testing.T) {
	d := drilltest.Read(t, "size 12mm; web 2.1mm; chisel-angle 126; lip-angle 59.5,58.5; lip-height 0.12mm; clearance 11,12; remove 1mm")
	testkit.Property(t, "a coarser gauge never makes a figure surer", func(t *rapid.T) {
		fine := quantity.Gauges{
			Caliper: rapid.Float64Range(0.001, 0.05).Draw(t, "caliper"), Protractor: rapid.Float64Range(0.01, 2).Draw(t, "protractor") * deg,
			Indicator: rapid.Float64Range(0.001, 0.02).Draw(t, "indicator"),
		}
		by := rapid.Float64Range(1, 5).Draw(t, "coarser by")
		coarse := quantity.Gauges{Caliper: fine.Caliper * by, Protractor: fine.Protractor * by, Indicator: fine.Indicator * by}
		a, b := sheetOf(d), sheetOf(d)
		gauge.Spread(d, fine, a, sheetOf)
		gauge.Spread(d, coarse, b, sheetOf)
		a.Each(func(f *sheet.Figure) {
			if g := b.Lookup(f.Key); g.Spread < f.Spread*(1-1e-6)-1e-9 {
				t.Fatalf("%s: ± %g with the fine gauge, ± %g with the coarse one", f.Key, f.Spread, g.Spread)
			}
		})
	})
}

// A limit that hangs on the reading as the value does leaves less in doubt than the
// value itself, one that hangs on another reading more.
func TestValueLessItsLimit(t *testing.T) {
	d := drilltest.Read(t, "size 12mm; web 2mm; chisel-length 2.5mm")
	again := func(d *drill.Drill) *sheet.Sheet {
		web, chisel := d.Value(drill.Web), d.Value(drill.ChiselLength)
		s := &sheet.Sheet{}
		s.Add(sheet.Figure{Key: "together", Value: 2 * web, Limit: &handbook.Band{Low: 1.5 * web, High: math.Inf(1)}})
		s.Add(sheet.Figure{Key: "apart", Value: 4, Limit: &handbook.Band{Low: web, High: 3 * chisel}})
		return s
	}
	s := again(d)
	gauge.Spread(d, shop, s, again)
	u := 2 * gauge.Standard(shop.Caliper)
	for _, c := range []struct {
		key, low, high string
		value, toLow   float64
		toHigh         float64
	}{{"together", "web", "", 2 * u, 0.5 * u, 0}, {"apart", "web", "chisel-length", 0, u, 3 * u}} {
		f := s.Lookup(c.key)
		if g := f.Gaps; math.Abs(f.Spread-c.value) > 1e-12 || math.Abs(g.Low.Spread-c.toLow) > 1e-12 || math.Abs(g.High.Spread-c.toHigh) > 1e-12 || g.Low.Mostly != c.low || g.High.Mostly != c.high {
			t.Errorf("%s: ± %g, %+v", c.key, f.Spread, *g)
		}
	}
}

// The verdict: inside, outside, and cannot tell, by where the limit lies.
func TestGuardedVerdict(t *testing.T) {
	for _, c := range []struct{ height, verdict string }{
		{"0.02mm", "fit"}, {"0.2mm", "regrind"}, {"0.1mm", ""}, {"0.105mm", ""},
	} {
		d := drilltest.Read(t, "size 12mm; web 1.8mm; chisel-angle 126; lip-angle 59,59; clearance 13,13; flank-wear 0.05mm; lip-height "+c.height)
		s := sheetOf(d)
		gauge.Spread(d, quantity.Gauges{Indicator: 0.02}, s, sheetOf)
		judge.Guard(s)
		if s.Verdict.Word != c.verdict {
			t.Errorf("lip height %s: verdict %q, want %q", c.height, s.Verdict.Word, c.verdict)
		}
	}
}
