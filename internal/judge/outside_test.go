package judge_test

import (
	"fmt"
	"math"
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
)

// A hole comes out oversize by about twice the lip-height difference. The bounds
// at 118 and 135 degrees lie on either side of it. The trade's own example:
// 1/2 in, 0.003 in, a hole of about 0.506.
func TestOversizeIsAboutTwiceTheHeight(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "1/2 in drill, lips 0.003 in apart: a hole of about 0.506 in")
	const dh = 0.003 * inch
	at118 := oversize(t, "size 1/2; lip-angle 59,59; lip-height 0.003in")
	at135 := oversize(t, "size 1/2; lip-angle 67.5,67.5; lip-height 0.003in")
	trade.Below("bound on the hole at 118°", 0.5+at118/inch, 0.506, "in")
	trade.Above("bound on the hole at 135°", 0.5+at135/inch, 0.506, "in")
	trade.Between("bound at 118° over the height", at118/dh, 1.6, 2, "")
	trade.Between("bound at 135° over the height", at135/dh, 2, 2.5, "")
}

// At 118 degrees the limit of 0.05 mm bounds the hole at 0.083 over.
func TestOversizeAtTheLimit(t *testing.T) {
	r := compute(t, "size 8mm; lip-angle 59,59; lip-height 0.05mm")
	close, _, _ := handbook.CloseLipHeight(8)
	testkit.Against(t, testkit.Derived, "oversize at the limit of lip height").Within("8 mm, 118°, 0.05 mm", r.Oversize(), 0.083, 0.0005, "mm")
	testkit.Against(t, testkit.Trade, "lip height of drills from 2 to 10 mm").Within("8 mm", close, 0.05, 1e-12, "mm")
}

// The figure of each class of work to aim at. The band from the harder class to
// the softer is this program's reading of it.
func TestClearanceBySize(t *testing.T) {
	checks := testkit.Against(t, testkit.ToolHandbook, "lip clearance at the corner, by drill size and work")
	work := map[string]string{"general": "steel-200", "hard": "stainless-316", "soft": "brass"}
	for _, row := range []struct {
		sizes               []string
		general, hard, soft float64
	}{
		{[]string{"#80", "#61"}, 24, 20, 26}, {[]string{"#60", "#41"}, 21, 18, 24}, {[]string{"#40", "#31"}, 18, 16, 22},
		{[]string{"1/8", "3/16", "1/4"}, 16, 14, 20}, {[]string{"F", "11/32"}, 14, 12, 18}, {[]string{"S", "1/2"}, 12, 10, 16},
		{[]string{"33/64", "3/4"}, 10, 8, 14}, {[]string{"49/64", "2in"}, 8, 7, 12},
	} {
		for _, size := range row.sizes {
			for class, want := range map[string]float64{"general": row.general, "hard": row.hard, "soft": row.soft} {
				r := compute(t, "size "+size+"; material "+work[class])
				c := r.Clearance
				checks.Within(size+", "+class+" work", c.Aim/deg, want, 1e-9, "°")
				if !r.Limit(judge.Clearance1Limit).Holds(c.Aim) {
					t.Errorf("%s, %s: the band does not hold the aim", size, class)
				}
			}
			band := compute(t, "size "+size).Clearance.Recommended
			within(t, size+" from", band.Low/deg, row.hard, 1e-9)
			within(t, size+" to", band.High/deg, math.Max(row.soft, 15), 1e-9) // 10 to 15 is published for steel
		}
	}
}

// What is published for a work over all sizes bounds what is aimed at, where it
// meets the table by size: copper 12 to 15, hard steel 7 to 10.
func TestClearanceIsAimedWithinThePublished(t *testing.T) {
	checks := testkit.Against(t, testkit.ToolHandbook, "lip clearance by material bounds that by size")
	for line, want := range map[string]float64{
		"size 12mm; material copper": 15, "size F; material steel-400": 10, "size 1/2; material steel-400": 10,
		"size 25mm; material steel-400": 7, "size #80; material steel-400": 20, "size 12mm; material steel-200": 12,
	} {
		r := compute(t, line)
		c := r.Clearance
		checks.Within(line, c.Aim/deg, want, 1e-9, "°")
		if !r.Limit(judge.Clearance1Limit).Holds(c.Aim) {
			t.Errorf("%s: the band does not hold the aim", line)
		}
	}
}

// A chisel of a quarter of the diameter puts the lip's inner end there, and the
// feed at which it rubs tells the clearance: tan Cl = f / (2 pi r).
func TestClearanceGrowsInward(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "clearance at the lip's inner end, by the feed at which it rubs")
	for _, outside := range []float64{8, 9, 10} {
		r := compute(t, fmt.Sprintf("size 20mm; web 3mm; chisel-length 5mm; lip-angle 59,59; clearance %g", outside))
		inside := math.Atan(r.Clearance.FeedLimit/(2*math.Pi*2.5)) / deg
		trade.Between(fmt.Sprintf("%g° outside", outside), inside, 20, 25, "°")
	}
}

func TestWebGrowth(t *testing.T) {
	r := compute(t, "size 20mm; web 2.8mm; chisel-angle 120; remove 100mm")
	testkit.Against(t, testkit.Trade, "the web's growth").Between("over 100 mm", r.Web.After-2.8, 1.4, 1.8, "mm")
}

// The handbook's w/D over c/D is 0.865 on the average, between 0.833 and 0.900.
func TestChiselOverWeb(t *testing.T) {
	r := compute(t, "size 20mm; web 2mm; chisel-angle 120")
	testkit.Against(t, testkit.Trade, "chisel edge at 120°").Within("over the web", r.Chisel.Length/2, 1.15, 0.01, "")
	testkit.Against(t, testkit.MachinerysHandbook, "p. 1152, Table 7, mean of w/D over c/D").Within("at 120°", 2/r.Chisel.Length, 0.865, 0.005, "")
}

// A standard drill has c/D 0.18 and w/D about 0.155.
func TestStandardChisel(t *testing.T) {
	checks := testkit.Against(t, testkit.MachinerysHandbook, "p. 1153, the standard drill")
	checks.Within("c/D at w/D 0.155", compute(t, "size 10mm; web 1.55mm; chisel-angle 120").Chisel.Ratio, 0.18, 0.005, "")
}

func TestPointLength(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "point length at 118°")
	trade.Within("7/8 in", compute(t, "size 7/8; lip-angle 59,59").Point.Length/inch, 0.2629, 0.00005, "in")
	trade.Within("part of the diameter", compute(t, "size 31mm; lip-angle 59,59").Point.Length/31, 0.3004, 0.00005, "D")
}

// Common practice: the chisel edge is quoted as 120 to 135 degrees or as 45 to
// 60, which is the same.
func TestChiselAngleBothWays(t *testing.T) {
	a, b := compute(t, "size 12mm; web 2mm; chisel-angle 125").Chisel, compute(t, "size 12mm; web 2mm; chisel-angle 55").Chisel
	within(t, "obtuse", b.Angle, a.Angle, 1e-15)
	within(t, "acute", b.Acute, a.Acute, 1e-15)
	within(t, "length", b.Length, a.Length, 1e-15)
	for angle, acute := range map[string]bool{"125": false, "91": false, "89": true, "55": true} {
		if got := compute(t, "chisel-angle "+angle).Chisel.AcuteRead; got != acute {
			t.Errorf("%s was read the acute way: %v", angle, got)
		}
	}
	r := compute(t, "chisel-angle 125")
	limit := r.Limit(judge.ChiselAngleLimit)
	trade := testkit.Against(t, testkit.Trade, "chisel-edge angle, as quoted")
	trade.Within("from", limit.Low/deg, 120, 1e-9, "°")
	trade.Within("to", limit.High/deg, 135, 1e-9, "°")
}

func TestDullness(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "regrind at a land of 0.25 to 0.38 mm, 0.010 to 0.015 in")
	word := map[bool]string{true: "dull", false: "sharp"}
	for land, dull := range map[string]bool{"0.2mm": false, "0.38mm": true, "0.015in": true} {
		trade.Says("land of "+land, word[compute(t, "flank-wear "+land).Verdict.Reasons[judge.Dull]], word[dull])
	}
}

// General-purpose drills of two flutes: the rule by size meets what is recalled at the
// ends of its ranges, and is never looser; the trade's closer figure is told.
func TestLipHeightBySize(t *testing.T) {
	standard := testkit.Against(t, testkit.ASME, "relative lip height by drill size, in")
	for size, want := range map[string]float64{"1/16": 0.002, "1/8": 0.002, "1/4": 0.003, "1/2": 0.004, "1in": 0.005, "2in": 0.006, "3-1/2": 0.006} {
		r := compute(t, "size "+size)
		standard.Within(size, r.Limit(judge.LipHeightLimit).High/inch, want, 1e-9, "in")
		within(t, size, r.Limit(judge.LipHeightLimit).Low, -want*inch, 1e-9)
	}
	for size, most := range map[string]float64{"#80": 0.002, "3/16": 0.003, "3/8": 0.004, "9/16": 0.005, "1-1/4": 0.006} {
		r := compute(t, "size "+size)
		standard.Below(size, r.Limit(judge.LipHeightLimit).High/inch, most+1e-9, "in")
	}
	trade := testkit.Against(t, testkit.Trade, "relative lip height from 2 to 10 mm")
	for size, want := range map[float64]float64{2: 0.05, 5: 0.05, 10: 0.05} {
		limit, _, ok := handbook.CloseLipHeight(size)
		if !ok {
			t.Errorf("no closer figure for %g mm", size)
		}
		trade.Within(fmt.Sprint(size, " mm"), limit, want, 1e-9, "mm")
	}
}

// A drill a hair larger is held to no other limit than one a hair smaller, and an
// inch size to none other than the same in millimetres.
func TestLimitsHaveNoStep(t *testing.T) {
	for _, material := range []string{"steel-200", "steel-300", "titanium", "cast-iron-150", "aluminium", "brass"} {
		for d := 3.05; d < 60; d += 0.1 {
			a, b := compute(t, fmt.Sprintf("size %.3fmm; material %s", d, material)), compute(t, fmt.Sprintf("size %.3fmm; material %s", d+0.001, material))
			for l, part := range map[sheet.Limit]float64{judge.LipHeightLimit: 0.01, judge.ChiselRatioLimit: 0.01, judge.FlankLimit: 0.01} {
				if x, y := a.Limit(l).High, b.Limit(l).High; math.Abs(x-y) > part*x {
					t.Errorf("%s, %.3f mm: limit %d steps from %v to %v", material, d, l, x, y)
				}
			}
			if x, y := a.Limit(judge.Clearance1Limit).High, b.Limit(judge.Clearance1Limit).High; math.Abs(x-y) > 0.1*deg {
				t.Errorf("%s, %.3f mm: too much clearance steps from %v to %v", material, d, x/deg, y/deg)
			}
		}
	}
	for inch, mm := range map[string]string{"3/8": "9.525mm", "1/4": "6.35mm", "1in": "25.4mm"} {
		a, b := compute(t, "size "+inch), compute(t, "size "+mm)
		if a.Limit(judge.LipHeightLimit).High != b.Limit(judge.LipHeightLimit).High {
			t.Errorf("%s and %s are held to unlike heights", inch, mm)
		}
	}
}

func TestHoleTolerance(t *testing.T) {
	jigs := testkit.Against(t, testkit.JigDrilling, "hole tolerance for drilling with jigs")
	for size, want := range map[string]float64{"1/2": 0.006, "3/4": 0.008} {
		r := compute(t, "size "+size)
		limit, known := handbook.HoleOversize(r.Drill.D)
		if !known {
			t.Fatalf("no hole tolerance for %s", size)
		}
		jigs.Within(size+" in", limit.High/inch, want, 1e-9, "in")
	}
	if _, known := handbook.HoleOversize(3 * inch); known {
		t.Error("a hole tolerance past the table's end")
	}
}

// Lips that differ by half the feed: one lip takes the whole chip (derived), and
// at no difference each takes half.
func TestChipShare(t *testing.T) {
	for height, want := range map[string]float64{"0": 0.5, "0.05mm": 0.75, "0.1mm": 1, "0.3mm": 1, "-0.1mm": 0} {
		r := compute(t, "size 12mm; feed 0.2mm; lip-height "+height)
		share1, share2 := r.Shares()
		within(t, height+", lip 1", share1, want, 1e-12)
		within(t, height+", lip 2", share2, 1-want, 1e-12)
	}
}

// 12 degrees over a turn of 30 is 0.0556 of the diameter.
func TestHeelDrop(t *testing.T) {
	r := compute(t, "size 20mm; heel-drop 1.112mm,0.926mm; heel-turn 30")
	apart := testkit.Against(t, testkit.Derived, "clearance of a heel drop over 30° on 20 mm")
	apart.Within("1.112 mm", r.Clearance.Lip1/deg, 12, 0.02, "°")
	apart.Within("0.926 mm", r.Clearance.Lip2/deg, 10.03, 0.05, "°")
}

// A feed of 0.2 mm a turn costs atan(0.2 / 10 pi) at the rim of a 10 mm drill.
func TestFeedAngle(t *testing.T) {
	r := compute(t, "size 10mm; feed 0.2mm; clearance 12")
	apart := testkit.Against(t, testkit.Derived, "10 mm drill of 12° clearance at 0.2 mm a turn").Because("worked out to two decimals of a degree")
	apart.Within("feed angle", r.Clearance.FeedAngle/deg, 0.36, 0.01, "°")
	apart.Within("working clearance", r.Clearance.Working/deg, 11.64, 0.01, "°")
}

// The working clearance is looked for from where the lip begins: the chisel's
// corner; without a chisel read, a standard one's (Machinery's Handbook, 31st
// ed., p. 1153, c/D 0.18, read in print).
func TestWhereTheLipBegins(t *testing.T) {
	new := handbook.NewWeb(20) / 2
	for line, inner := range map[string]float64{
		"web 2mm; chisel-length 3mm": math.Sqrt(1.5*1.5 - 1*1), "web 2mm": 0, "lip-angle 59,59": math.Sqrt(1.8*1.8 - new*new),
	} {
		within(t, line, compute(t, "size 20mm; "+line).Lips.Inner, inner, 1e-9)
	}
}

// The point is so much off the angle wanted.
func TestDeviation(t *testing.T) {
	r := compute(t, "lip-angle 61,60; point-angle 118")
	within(t, "off by", r.Point.Deviation/deg, 3, 1e-9)
	within(t, "lips differ by", r.Point.Difference/deg, 1, 1e-9)
}

// 0.004 to 0.007 in from 1/4 to 1/2, 0.007 to 0.015 to 1 in. The middle is taken
// where none is given.
func TestFeedTakenForGranted(t *testing.T) {
	navy := testkit.Against(t, testkit.Navy, "feeds of high-speed-steel drills, middle of the band")
	for size, want := range map[string]float64{"3/8": 0.0055, "3/4": 0.011} {
		r := compute(t, "size "+size)
		navy.Within(size+" in", r.Drill.Feed/inch, want, 1e-9, "in")
		if !r.Drill.FeedAssumed {
			t.Errorf("%s: the feed is not said to be assumed", size)
		}
	}
}

func oversize(t *testing.T, line string) float64 {
	t.Helper()
	r := compute(t, line)
	return r.Oversize()
}
