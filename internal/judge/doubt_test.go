package judge_test

import (
	"maps"
	"math"
	"slices"
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

// sound is a drill that is fit.
var sound = of("size 12mm; material steel-200; web 1.8mm; chisel-angle 126; lip-angle 59,59; lip-height 0; clearance 12,12; feed 0.2mm; flank-wear 0.1mm")

// told is the inspection of a drill with what the gauges leave in doubt.
func told(d *drill.Drill, g quantity.Gauges) *sheet.Sheet {
	d = gauged(d)
	s := point.Inspect.Sheet(d, false)
	uncertainty.Tell(s, d, g, point.Inspect.Draw)
	return s
}

// gauged is the drill with gauges named: nothing is forgiven for what a bench gauge
// cannot tell.
func gauged(d *drill.Drill) *drill.Drill {
	out := d.Copy()
	out.Gauged = true
	return out
}

// drawGauges draws what gauges resolve, coarse ones too; some may not be named.
func drawGauges(t *rapid.T) quantity.Gauges {
	step := func(name string, most float64) float64 {
		return most * rapid.SampledFrom([]float64{0, 0.02, 0.1, 0.3, 1}).Draw(t, name)
	}
	return quantity.Gauges{Caliper: step("caliper", 0.1), Protractor: step("protractor", 5*deg), Indicator: step("indicator", 0.1)}
}

// The verdict keeps what the gauges bear out and takes back what they do not.
func TestVerdictInDoubt(t *testing.T) {
	caliper, protractor, indicator := quantity.Gauges{Caliper: 0.1}, quantity.Gauges{Protractor: 2 * deg}, quantity.Gauges{Indicator: 0.02}
	for _, c := range []struct {
		line    string
		gauges  quantity.Gauges
		word    string
		reasons []string
		finer   string
	}{
		{"lip-height 0.085mm", indicator, "fit", nil, ""},
		{"lip-height 0.095mm", indicator, "", nil, "lip-height"},
		{"lip-height 0.105mm", indicator, "", nil, "lip-height"},
		{"lip-height 0.115mm", indicator, "regrind", []string{"lips-uneven"}, ""},
		{"lip-height 0.105mm; corner-wear 0.4mm", indicator, "regrind", []string{"corner-worn"}, ""},
		{"web 2.5mm; lip-height 0.105mm", indicator, "", []string{"chisel-long"}, "lip-height"},
		{"clearance 6,12", protractor, "regrind", []string{"clearance-low"}, ""},
		{"clearance 7.5,9", protractor, "", nil, "clearance"},
		{"clearance 6,9", protractor, "regrind", []string{"clearance-low"}, ""},
		{"clearance 9,13.5", protractor, "", nil, "clearance"},
		{"clearance 9,17", protractor, "regrind", []string{"clearances-uneven"}, ""},
		{"margin-wear 12.1mm", caliper, "retire", []string{"margin-worn-far"}, ""},
		{"margin-wear 12.01mm", caliper, "", []string{"margin-worn"}, "margin-wear"},
		{"web 6.1mm", caliper, "retire", []string{"web-spent"}, ""},
		{"web 6.01mm", caliper, "", []string{"chisel-long"}, "web"},
		{"flank-wear 0", caliper, "fit", nil, ""},
		{"corner-wear 0.4mm", caliper, "regrind", []string{"corner-worn"}, ""},
		{"cracked yes", caliper, "retire", []string{"cracked"}, ""},
	} {
		d := possible(t, sound.With(of(c.line)))
		s := told(d, c.gauges)
		if c.finer != "" {
			c.finer += " on a finer gauge"
		}
		if v := s.Verdict; v.Word != c.word || !slices.Equal(v.Reasons, c.reasons) || v.Finer != c.finer {
			t.Errorf("%s: %q %v, finer %q; want %q %v, %q", c.line, v.Word, v.Reasons, v.Finer, c.word, c.reasons, c.finer)
		}
		for _, code := range []string{"lips-uneven", "clearance-low", "clearance-high", "corner-worn", "margin-worn", "margin-worn-far", "chisel-long", "web-spent"} {
			if drilltest.Found(s, code) != slices.Contains(c.reasons, code) {
				t.Errorf("%s: remarks %v", c.line, drilltest.Codes(s))
			}
		}
		if none := c.word == ""; none != (len(s.Verdict.Missing) > 0) || none != drilltest.Found(s, "verdict-in-doubt") {
			t.Errorf("%s: wants %v, remarks %v", c.line, s.Verdict.Missing, drilltest.Codes(s))
		}
	}
}

// What was undecided for want of readings stays so, however good the gauges.
func TestGaugesDecideNothing(t *testing.T) {
	d := possible(t, of("size 12mm; web 1.8mm; chisel-angle 126"))
	if v, before := told(d, ordinary).Verdict, point.Inspect.Sheet(d, false).Verdict; v.Word != "" || !slices.Equal(v.Missing, before.Missing) {
		t.Errorf("%q, wants %v", v.Word, v.Missing)
	}
}

// A sheet of one result has no verdict to take back; what cannot be told is said.
func TestDoubtWithoutVerdict(t *testing.T) {
	d := possible(t, of("lip-angle 57.6,57.6"))
	s := point.Point.Sheet(d, false)
	uncertainty.Tell(s, d, ordinary, func(d *drill.Drill) *sheet.Sheet { return point.Point.Sheet(d, false) })
	if s.Verdict != nil || !drilltest.Found(s, "cannot-tell") || !s.Outside() {
		t.Errorf("%+v %v", s.Verdict, drilltest.Codes(s))
	}
}

// A material that is not known, which Check refuses, leaves no wrong angle.
func TestUnknownMaterial(t *testing.T) {
	r := judge.Compute(of("material unobtanium").Drill(t))
	within(t, "wanted", r.Point.Wanted/deg, 118, 1e-9)
}

func TestVerdictIsTheNominalOneOrNone(t *testing.T) {
	testkit.Property(t, "the verdict with gauges is that of the readings by themselves, or none", func(t *rapid.T) {
		d, g := gauged(draw(t).Drill(t)), drawGauges(t)
		r := judge.Compute(d)
		was, is := r.Judgement(), r.JudgementOn(d, g)
		if is.Word != "" && is.Word != was.Word {
			t.Fatalf("%q becomes %q", was.Word, is.Word)
		}
		if g != (quantity.Gauges{}) && was.Word != "" && (is.Word == was.Word) != (is.Share >= uncertainty.Tells) {
			t.Fatalf("%q becomes %q with a share of %g", was.Word, is.Word, is.Share)
		}
		for _, code := range is.Reasons {
			if !slices.Contains(was.Reasons, code) && !slices.ContainsFunc(was.Reasons, func(heavy string) bool { return was.Hidden[heavy].Code == code }) {
				t.Fatalf("%s holds with gauges alone: %v, %v", code, was.Reasons, is.Reasons)
			}
		}
	})
}

func TestNoGaugeChangesNothing(t *testing.T) {
	testkit.Property(t, "gauges that took none of the readings change nothing", func(t *rapid.T) {
		read := draw(t)
		for _, r := range []drill.Reading{drill.LipHeight, drill.HeelDrop} {
			delete(read, r)
		}
		d := gauged(read.Drill(t))
		was, is := point.Inspect.Sheet(d, false), told(d, quantity.Gauges{Indicator: 0.5})
		if was.Verdict.Word != is.Verdict.Word || !slices.Equal(was.Verdict.Reasons, is.Verdict.Reasons) || is.Verdict.Share != 1 || !slices.Equal(drilltest.Codes(was), drilltest.Codes(is)) {
			t.Fatalf("%+v becomes %+v", *was.Verdict, *is.Verdict)
		}
		was.Each(func(f *sheet.Figure) {
			g := is.Lookup(f.Key)
			if f.Word != g.Word || f.State() != g.State() || g.Doubt.Low != g.Doubt.High && !math.IsNaN(g.Value) && g.Word == "" {
				t.Fatalf("%s: %v %q, then %v %q, %+v", f.Key, f.Value, f.Word, g.Value, g.Word, *g.Doubt)
			}
		})
		if r := judge.Compute(d); !slices.Equal(r.JudgementOn(d, quantity.Gauges{}).Reasons, was.Verdict.Reasons) {
			t.Fatal("no gauge at all does")
		}
	})
}

// An audit makes no sheet a draw, and bears out the same.
func TestAuditBearsOutWhatInspectDoes(t *testing.T) {
	testkit.Property(t, "an audit and an inspection bear out the same verdict", func(t *rapid.T) {
		d, g := gauged(draw(t).Drill(t)), drawGauges(t)
		if g == (quantity.Gauges{}) {
			return
		}
		r := judge.Compute(d)
		one, other := r.JudgementOn(d, g), told(d, g).Verdict
		if one.Word != other.Word || !slices.Equal(one.Reasons, other.Reasons) || one.Share != other.Share || one.Finer != other.Finer || !slices.Equal(one.Missing, other.Missing) {
			t.Fatalf("%+v and %+v", *one, *other)
		}
	})
}

// noise is what a share that N draws count may be off: four times what was measured
// of one near a half.
const noise = 0.04

// A region about the readings that holds them on all sides holds less of a wider
// spread: what is in doubt with fine gauges is so with coarser ones.
func TestWiderIsNeverSurer(t *testing.T) {
	testkit.Property(t, "wider gauges never make a drill surely fit, nor a figure surely within its limit", func(t *rapid.T) {
		d := drawFit(t)
		by := rapid.Float64Range(1, 8).Draw(t, "wider by")
		fine := quantity.Gauges{Caliper: 0.02, Protractor: 0.5 * deg, Indicator: 0.01}
		wide := quantity.Gauges{Caliper: by * fine.Caliper, Protractor: by * fine.Protractor, Indicator: by * fine.Indicator}
		a, b := told(d, fine), told(d, wide)
		if b.Verdict.Share > a.Verdict.Share+noise {
			t.Fatalf("fit in %g of the draws, with gauges %g times as wide in %g", a.Verdict.Share, by, b.Verdict.Share)
		}
	})
}

// drawFit draws a drill that is fit, near its limits or not.
func drawFit(t *rapid.T) *drill.Drill {
	part := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	d := sound.Drill(t)
	d.Put(drill.Web, part("web", 1.6, 2.15))
	d.Put(drill.ChiselAngle, part("chisel-angle", 121, 134)*deg)
	d.Put(drill.LipHeight, part("lip-height", -0.095, 0.095))
	clearance := part("clearance 1", 9, 15)
	d.Put(drill.Clearance, clearance*deg, (clearance+part("clearance 2 more", -2, 2))*deg)
	d.Put(drill.FlankWear, part("flank-wear", 0, 0.248))
	if r := judge.Compute(d); r.Verdict.Word != judge.Fit {
		t.Skip("not fit")
	}
	return d
}

// Lip 1 is the lip that somebody chose.
func TestSwappedLipsSwapTheDoubt(t *testing.T) {
	pairs := map[string]string{"lip_clearance_1_deg": "lip_clearance_2_deg", "chip_share_1": "chip_share_2", "stock_1_inner_mm": "stock_2_inner_mm", "stock_1_outer_mm": "stock_2_outer_mm"}
	maps.Copy(pairs, map[string]string{"point_angle_deg": "point_angle_deg", "web_mm": "web_mm", "chisel_ratio": "chisel_ratio"})
	testkit.Property(t, "swapping the lips swaps what is in doubt", func(t *rapid.T) {
		read := drawWhole(t)
		one, g := read.Drill(t), drawGauges(t)
		other := read.Drill(t)
		for _, r := range drill.All() {
			if a, b, n := one.Pair(r); n == 2 {
				other.Put(r, b, a)
			}
		}
		a, b := told(one, g), told(other, g)
		if math.Abs(a.Verdict.Share-b.Verdict.Share) > noise {
			t.Fatalf("borne out in %g and in %g of the draws", a.Verdict.Share, b.Verdict.Share)
		}
		room := map[quantity.Kind]float64{quantity.Share: 0.01, quantity.Length: 1e-9, quantity.Angle: 1e-9, quantity.Number: 1e-9} // a share stands at its end
		for key, swapped := range pairs {
			f, g := a.Lookup(key), b.Lookup(swapped)
			if f == nil || g == nil {
				t.Fatalf("no %s or %s", key, swapped)
				return
			}
			u, v := f.Doubt.High-f.Doubt.Low, g.Doubt.High-g.Doubt.Low
			if apart := math.Abs(f.Doubt.Low-g.Doubt.Low) + math.Abs(f.Doubt.High-g.Doubt.High); apart > 0.2*max(u, v)+room[f.Kind] {
				t.Fatalf("%s is %+v, and %s %+v", key, *f.Doubt, swapped, *g.Doubt)
			}
		}
	})
}
