package judge_test

import (
	"slices"
	"testing"

	"evenlip/internal/judge"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit/drilltest"
)

// sound is a drill that is fit.
var sound = of("size 12mm; material steel-200; web 1.8mm; chisel-angle 126; lip-angle 59,59; lip-height 0; clearance 12,12; feed 0.2mm; flank-wear 0.1mm")

// guarded gives each figure named a spread and holds the verdict against it.
func guarded(t *testing.T, line string, spread map[string]float64) *sheet.Sheet {
	t.Helper()
	s := judge.Sheet(possible(t, sound.With(of(line))), false)
	for key, v := range spread {
		f := s.Lookup(key)
		f.Spread, f.Mostly = v, "a reading"
		if mid := s.Lookup("lip_height_mid_lip_mm"); key == "lip_height_difference_mm" {
			mid.Spread, mid.Mostly = v, f.Mostly
		}
	}
	judge.Guard(s)
	return s
}

// The verdict keeps what is outside over the whole spread, drops what may be
// within, and is fit only where all is within over the whole spread.
func TestGuard(t *testing.T) {
	const height, mid, low, high = "lip_height_difference_mm", "lip_height_mid_lip_mm", "lip_clearance_1_deg", "lip_clearance_2_deg"
	for _, c := range []struct {
		line    string
		spread  map[string]float64
		word    string
		reasons []string
		tell    bool // a remark says that the gauge cannot tell
	}{
		{"lip-height 0.05mm", map[string]float64{height: 0.05, mid: 0.05}, "fit", nil, false},
		{"lip-height 0.05mm", map[string]float64{height: 0.052, mid: 0.052}, "", nil, true},
		{"lip-height 0.15mm", map[string]float64{height: 0.04, mid: 0.04}, "regrind", []string{"lips-uneven"}, false},
		{"lip-height 0.15mm", map[string]float64{height: 0.05, mid: 0.05}, "", nil, true},
		{"lip-height 0.15mm; corner-wear 0.1mm", map[string]float64{height: 0.05, mid: 0.05}, "regrind", []string{"corner-worn"}, true},
		{"web 2.5mm; lip-height 0.15mm", map[string]float64{height: 0.05, mid: 0.05}, "thin", []string{"chisel-long"}, true},
		{"clearance 7,12", map[string]float64{low: 0.5 * deg, high: 0.5 * deg}, "regrind", []string{"clearance-low"}, false},
		{"clearance 7,17", map[string]float64{low: 2 * deg, high: 0.5 * deg}, "regrind", []string{"clearance-high"}, true},
		{"clearance 7,17", map[string]float64{low: 0.5 * deg, high: 2 * deg}, "regrind", []string{"clearance-low"}, true},
		{"margin-wear 12.1mm", map[string]float64{"margin_wear_mm": 0.05}, "retire", []string{"margin-worn-far"}, false},
		{"margin-wear 12.1mm", map[string]float64{"margin_wear_mm": 0.2}, "regrind", []string{"margin-worn"}, true},
		{"web 4.25mm", map[string]float64{"web_ratio": 0.001}, "retire", []string{"web-spent"}, false},
		{"web 4.25mm", map[string]float64{"web_ratio": 0.01}, "thin", []string{"chisel-long"}, true},
		{"web 4.25mm", map[string]float64{"web_ratio": 0.01, "chisel_ratio": 1}, "", nil, true},
		{"cracked yes", nil, "retire", []string{"cracked"}, false},
	} {
		s := guarded(t, c.line, c.spread)
		if s.Verdict.Word != c.word || !slices.Equal(s.Verdict.Reasons, c.reasons) {
			t.Errorf("%s, %v: %q %v, want %q %v", c.line, c.spread, s.Verdict.Word, s.Verdict.Reasons, c.word, c.reasons)
		}
		if got := drilltest.Found(s, "cannot-tell"); got != c.tell {
			t.Errorf("%s, %v: cannot tell %v", c.line, c.spread, got)
		}
		if none := c.word == ""; none != (len(s.Verdict.Missing) > 0) {
			t.Errorf("%s, %v: wants %v", c.line, c.spread, s.Verdict.Missing)
		}
		for _, code := range []string{"lips-uneven", "clearance-low", "clearance-high", "margin-worn", "margin-worn-far", "chisel-long", "web-spent"} {
			if drilltest.Found(s, code) != slices.Contains(c.reasons, code) {
				t.Errorf("%s, %v: remarks %v", c.line, c.spread, drilltest.Codes(s))
			}
		}
	}
}

// What was undecided for want of readings stays so, however sure the rest.
func TestGuardDecidesNothing(t *testing.T) {
	s := judge.Sheet(possible(t, of("size 12mm; web 1.8mm; chisel-angle 126")), false)
	before := slices.Clone(s.Verdict.Missing)
	judge.Guard(s)
	if s.Verdict.Word != "" || len(before) == 0 || !slices.Equal(s.Verdict.Missing, before) {
		t.Errorf("%q, wants %v", s.Verdict.Word, s.Verdict.Missing)
	}
}

// A sheet of one result has no verdict to take back; what cannot be told is said.
func TestGuardWithoutVerdict(t *testing.T) {
	s := judge.PointOnly(possible(t, of("lip-angle 60.4,60.4")), false)
	s.Lookup("point_angle_deg").Spread = 1 * deg
	judge.Guard(s)
	if s.Verdict != nil || !drilltest.Found(s, "cannot-tell") || !s.Outside() {
		t.Errorf("%+v %v", s.Verdict, drilltest.Codes(s))
	}
}

// A material that is not known, which Check refuses, leaves no wrong angle.
func TestUnknownMaterial(t *testing.T) {
	r := judge.Compute(of("material unobtanium").Drill(t))
	within(t, "wanted", r.Point.Wanted/deg, 118, 1e-9)
}

// Where gauges are too coarse the verdict names the readings to take on finer
// ones, each once, and does not call the drill fit in a remark.
func TestGuardNamesWhatToTakeFiner(t *testing.T) {
	s := judge.Sheet(possible(t, sound.With(of("flank-wear"))), false)
	if !drilltest.Found(s, "wear-not-read") {
		t.Fatalf("remarks %v", drilltest.Codes(s))
	}
	for key, reading := range map[string]string{"lip_height_difference_mm": "lip-height", "lip_height_mid_lip_mm": "lip-angle", "chisel_ratio": "lip-angle"} {
		f := s.Lookup(key)
		f.Spread, f.Mostly = 1, reading
	}
	judge.Guard(s)
	if want := []string{"lip-height on a finer gauge", "lip-angle on a finer gauge"}; !slices.Equal(s.Verdict.Missing, want) {
		t.Errorf("wants %q, not %q", s.Verdict.Missing, want)
	}
	if drilltest.Found(s, "wear-not-read") {
		t.Error("called fit in a remark")
	}
}
