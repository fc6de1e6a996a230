package plan_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"evenlip/internal/command/regrind"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/plan"
	"evenlip/internal/testkit/drilltest"
)

const deg = math.Pi / 180

func exact(v float64) string { return strconv.FormatFloat(v, 'f', 9, 64) }

// The gauge stands at 59 degrees (common practice): lips that are near it are ground
// to it, and so that a gauge can check them; what their own mean would save is told.
func TestLipsAreGroundToTheGauge(t *testing.T) {
	for angles, want := range map[string]float64{"59,59": 59, "59.2,59.2": 59, "60,60": 59, "58,58": 59, "60.5,58.5": 59, "63,63": 63, "67,67": 67.5} {
		p := plan.Of(fit.With(readings{drill.LipAngle: angles, drill.CornerWear: "0.1mm"}).Drill(t))
		if got := p.Lips.Target / deg; math.Abs(got-want) > 1e-9 {
			t.Errorf("lips at %s are ground to %g, not %g", angles, got, want)
		}
	}
	for asked, want := range map[string]float64{"120": 60, "118": 59} {
		p := plan.Of(fit.With(readings{drill.LipAngle: "60,60", drill.PointAngle: asked}).Drill(t))
		if got := p.Lips.Target / deg; math.Abs(got-want) > 1e-9 {
			t.Errorf("a point of %s was asked for: ground to %g", asked, got)
		}
	}
}

// A machinist's reckoning (from memory of the bench): lip 1 of a 7/8 in drill stands
// 0.012 in high and has 14 degrees of clearance, lip 2 has 9. 0.131 in of flank from 14
// to 8 degrees is 0.0142 in deep; with 0.002 in of clean-up lip 1 gives 0.0162 in and lip
// 2, which is lower by 0.012, only 0.0042.
func TestTooMuchClearanceComesOffItsOwnLip(t *testing.T) {
	p := plan.Of(readings{drill.Size: "7/8", drill.Web: "0.14in", drill.ChiselAngle: "127", drill.LipAngle: "59,59", drill.LipHeight: "0.012in",
		drill.Clearance: "14,9", drill.Flute: "5.5in", drill.Depth: "2in"}.Drill(t))
	st := &p.Stock
	if math.Abs(st.Lip1.Outer/25.4-0.0162) > 0.0001 || math.Abs(st.Lip2.Outer/25.4-0.0042) > 0.0001 {
		t.Errorf("lip 1 gives %.4f in, lip 2 %.4f", st.Lip1.Outer/25.4, st.Lip2.Outer/25.4)
	}
}

// A shop splits the point of a 1/2 in drill: the web of 0.012 in is the point's, and no
// drill has it behind that. A new one has about 0.07 in (handbook's curve).
func TestSplitPointHasAWebBehindIt(t *testing.T) {
	split := readings{drill.Size: "1/2", drill.Web: "0.012in", drill.ChiselAngle: "125", drill.LipAngle: "59,59", drill.LipHeight: "0", drill.Clearance: "11",
		drill.FlankWear: "0.014in", drill.Flute: "4in", drill.Depth: "1in"}
	p := plan.Of(split.Drill(t))
	if web := p.Schedule()[0].Body / 25.4; math.Abs(web-0.071) > 0.002 {
		t.Errorf("the web behind it is %.4f in", web)
	}
	if got := p.Now.Web / 25.4; math.Abs(got-0.012) > 1e-9 {
		t.Errorf("the web now is %.4f in", got)
	}
	if !drilltest.Found(regrind.Command.Sheet(split.Drill(t), false), "thinned-taken") {
		t.Error("it is not said")
	}
	if drilltest.Found(regrind.Command.Sheet(fit.Drill(t), false), "thinned-taken") {
		t.Error("a sound web is taken for a thinned one")
	}
	measured := split.With(readings{drill.SecondWeb: "0.024in", drill.SecondWebAt: "0.75in"})
	if got := plan.Of(measured.Drill(t)).Ground.Body / 25.4; got > 0.013 {
		t.Errorf("two webs were measured, and %.4f in is taken", got)
	}
	r := judge.Compute(split.With(readings{drill.Remove: "0.1in"}).Drill(t))
	if !r.Web.BodyTaken || math.Abs(r.Web.After-point016(r.Web.Body, 0.1*25.4)) > 1e-9 {
		t.Errorf("%+v", r.Web)
	}
}

func point016(web, removed float64) float64 { return web + 0.016*removed }

// A point of 118 degrees in hard steel may stay; what the other one would take is
// told. On 10 mm from 59 to 67.5 degrees a corner rises by 5 (cot 59 - cot 67.5), less
// near the axis: 0.8 mm and a little more, which is not spent without a word.
func TestKeptAngleIsToldWithWhatTheOtherTakes(t *testing.T) {
	hard := readings{drill.Size: "10mm", drill.Material: "steel-400", drill.Web: "1.7mm", drill.ChiselAngle: "126", drill.LipAngle: "59,59", drill.LipHeight: "0.02mm",
		drill.Clearance: "9,9", drill.FlankWear: "0.3mm", drill.Flute: "80mm", drill.Depth: "30mm"}
	p := plan.Of(hard.Drill(t))
	if dear := p.AngleKept - p.Stock.Total; math.Abs(p.Lips.Target-59*deg) > 1e-9 || dear < 0.75 || dear > 1 {
		t.Errorf("ground to %g, the other takes %g more", p.Lips.Target/deg, dear)
	}
	if !drilltest.Found(regrind.Command.Sheet(hard.Drill(t), false), "angle-kept") {
		t.Error("it is not told")
	}
	for _, r := range []readings{hard.With(readings{drill.PointAngle: "118"}), hard.With(readings{drill.Material: "steel-200"}), hard.With(readings{drill.LipAngle: "67.5,67.5"})} {
		if drilltest.Found(regrind.Command.Sheet(r.Drill(t), false), "angle-kept") {
			t.Errorf("told of %v", r)
		}
	}
}

// A chisel edge outside its band is put right by the grind, to the middle of it: a
// web that is as new is not thinned for an angle that goes.
func TestChiselAnglePutRightAsksForNoThinning(t *testing.T) {
	off := readings{drill.Size: "6mm", drill.Material: "steel-200", drill.Web: "1.1mm", drill.ChiselAngle: "138", drill.LipAngle: "59,59", drill.LipHeight: "0.02mm",
		drill.Clearance: "25,20", drill.Flute: "50mm", drill.Depth: "18mm"}
	p := plan.Of(off.Drill(t))
	if p.Done.Thinned || math.Abs(p.Body.ChiselAfter/deg-(180-127.5)) > 1e-9 || !p.ChiselMoved {
		t.Errorf("thinned %v, chisel at %g", p.Done.Thinned, p.Body.ChiselAfter/deg)
	}
	for _, within := range []string{"120", "135", "128"} {
		if plan.Of(off.With(readings{drill.ChiselAngle: within}).Drill(t)).ChiselMoved {
			t.Errorf("%s is within", within)
		}
	}
}

// A split that the grind takes off is to be made again.
func TestThinnedPointIsThinnedAgain(t *testing.T) {
	split := readings{drill.Size: "1/4", drill.Material: "stainless-316", drill.Web: "0.02in", drill.ChiselAngle: "125", drill.LipAngle: "67.5,67.5", drill.LipHeight: "0.001in",
		drill.Clearance: "14,14", drill.CornerWear: "0.02in", drill.Flute: "2.5in", drill.Depth: "0.75in"}
	if s := regrind.Command.Sheet(split.Drill(t), false); !drilltest.Found(s, "thin-again") || s.Answer == nil || !strings.Contains(s.Answer.Format, "thin the point again") {
		t.Errorf("%v, %v", drilltest.Codes(s), s.Answer)
	}
	if drilltest.Found(regrind.Command.Sheet(split.With(readings{drill.Web: "0.04in"}).Drill(t), false), "thin-again") {
		t.Error("a point that was not thinned is thinned again")
	}
}

// More than a diameter is cut off and not ground.
func TestMoreThanADiameterIsCutOff(t *testing.T) {
	for margin, cut := range map[string]bool{"11mm": false, "13mm": true} {
		s := regrind.Command.Sheet(fit.With(readings{drill.MarginWear: margin}).Drill(t), false)
		if got := strings.HasPrefix(s.Answer.Format, "cut {} off"); got != cut {
			t.Errorf("%s: %q", margin, s.Answer.Format)
		}
	}
}

// Lips that are even to within their limit are said to give up alike, and nobody is
// told to mark one.
func TestNearlyEvenLipsAreSaidToBe(t *testing.T) {
	for height, marked := range map[string]bool{"0.02mm": false, "0.2mm": true} {
		s := regrind.Command.Sheet(fit.With(readings{drill.LipHeight: height, drill.CornerWear: "0.3mm"}).Drill(t), false)
		if got := drilltest.Found(s, "mark-lip-1"); got != marked {
			t.Errorf("lips %s apart: to be marked %v", height, got)
		}
	}
}

// What nobody grinds has no stock in the table; scripts have it.
func TestRetiredDrillShowsNoStock(t *testing.T) {
	for cause, quiet := range map[string]bool{"1mm": false, "60mm": true} {
		s := regrind.Command.Sheet(fit.With(readings{drill.MarginWear: cause}).Drill(t), false)
		for i := range s.Sections {
			sec := &s.Sections[i]
			if sec.Title == "Off each lip, clean-up included" && sec.Quiet != quiet {
				t.Errorf("margin worn %s: quiet %v", cause, sec.Quiet)
			}
		}
	}
}

// A drill counted by its history is told the count at another stock too: 80 mm of
// flute, 42 wanted, 0.9 mm a grind in the past; (38 - 0.35)/1.8 and the first.
func TestHistoryIsNoPromise(t *testing.T) {
	d := fit.With(readings{drill.MarginWear: "0.3mm"}).Drill(t)
	d.Past = drill.Past{Usual: 0.9}
	for _, f := range regrind.Command.Sheet(d, false).Findings {
		if f.Code == "usual-of-history" {
			if a := f.Text.Args; len(a) != 3 || math.Abs(a[0].Value-0.9) > 1e-9 || math.Abs(a[1].Value-1.8) > 1e-9 || a[2].Value != 21 {
				t.Errorf("%+v", a)
			}
			return
		}
	}
	t.Error("it is not told")
}
