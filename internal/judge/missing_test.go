package judge_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

// noNaN fails if a number that is not known stands in anything that is said.
func noNaN(t drilltest.Tester, s *sheet.Sheet) {
	t.Helper()
	said := func(where string, text quantity.Text) {
		for _, a := range text.Args {
			if math.IsNaN(a.Value) || math.IsInf(a.Value, 0) {
				t.Errorf("%s: %q says %v", where, text.Format, a.Value)
			}
		}
	}
	for _, f := range s.Findings {
		said(f.Code, f.Text)
	}
	s.Each(func(f *sheet.Figure) {
		if math.IsInf(f.Value, 0) {
			t.Errorf("%s is %v", f.Key, f.Value)
		}
		if f.Working != nil {
			said(f.Key, f.Working.Numbers)
		}
		if f.Limit != nil && f.Known() && (math.IsNaN(f.Limit.Low) || math.IsNaN(f.Limit.High)) {
			t.Errorf("%s is held against no limit", f.Key)
		}
	})
}

// Any readings that can be, missing or not: nothing that is said or worked is
// NaN, and whatever is not known says what it wants.
func TestNothingSaysNaN(t *testing.T) {
	testkit.Property(t, "whatever is missing, nothing said is NaN, and what is not known says what it wants", func(t *rapid.T) {
		d := draw(t).Drill(t)
		for _, make := range []func(*drill.Drill, bool) *sheet.Sheet{
			judge.Sheet, judge.PointOnly, judge.ClearanceOnly, judge.ChiselOnly, judge.WebOnly, judge.LipsOnly,
		} {
			s := make(d, true)
			noNaN(t, s)
			s.Each(func(f *sheet.Figure) {
				if f.Known() && f.Working == nil && f.Word == "" && !slices.Contains(unworked, f.Key) {
					t.Errorf("%s shows no working", f.Key)
				}
			})
		}
	})
}

// unworked are the figures that are looked up or found by search.
var unworked = []string{"recommended_low_deg", "recommended_high_deg", "least_working_at_ratio"}

// hangsOn says, for each reading, which figures may change or go when it is
// missing. All others must stay as they are, a few last digits apart.
var hangsOn = map[drill.Reading][]string{
	drill.Size: {"lip_height_mid_lip_mm", "chip_share_1", "chip_share_2", "point_length_mm", "recommended_low_deg", "recommended_high_deg", "feed_angle_deg", "working_clearance_deg",
		"least_working_clearance_deg", "least_working_at_ratio", "feed_limit_mm", "chisel_ratio", "chisel_ratio_after", "thrust_ratio",
		"lip_height_mid_lip_mm", "chip_share_1", "chip_share_2", "point_offset_mm", "oversize_bound_mm", "stock_1_inner_mm", "stock_1_outer_mm", "stock_2_inner_mm", "stock_2_outer_mm", "web_ratio"},
	drill.Material: {},
	drill.Web: {"lip_height_mid_lip_mm", "chip_share_1", "chip_share_2", "web_mm", "least_working_clearance_deg", "least_working_at_ratio", "feed_limit_mm", "chisel_length_mm", "chisel_ratio", "web_taper", "web_after_mm",
		"chisel_length_after_mm", "chisel_ratio_after", "thrust_ratio", "lip_height_mid_lip_mm", "chip_share_1", "chip_share_2", "point_offset_mm", "oversize_bound_mm",
		"stock_1_outer_mm", "stock_2_inner_mm", "stock_2_outer_mm", "web_ratio"},
	drill.SecondWeb:    {"web_taper", "web_after_mm", "chisel_length_after_mm", "chisel_ratio_after", "thrust_ratio"},
	drill.SecondWebAt:  {"web_taper", "web_after_mm", "chisel_length_after_mm", "chisel_ratio_after", "thrust_ratio"},
	drill.WebTaper:     {},
	drill.ChiselLength: {},
	drill.ChiselAngle: {"lip_height_mid_lip_mm", "chip_share_1", "chip_share_2", "chisel_angle_deg", "chisel_angle_acute_deg", "chisel_length_mm", "chisel_ratio", "feed_limit_mm", "chisel_length_after_mm", "chisel_ratio_after",
		"thrust_ratio", "lip_height_mid_lip_mm", "chip_share_1", "chip_share_2", "stock_1_outer_mm", "stock_2_inner_mm", "stock_2_outer_mm"},
	drill.PointAngle: {},
	drill.LipAngle: {"lip_height_mid_lip_mm", "chip_share_1", "chip_share_2", "point_angle_deg", "lip_angle_difference_deg", "point_angle_deviation_deg", "point_length_mm", "least_working_clearance_deg",
		"least_working_at_ratio", "feed_limit_mm", "lip_height_mid_lip_mm", "chip_share_1", "chip_share_2", "point_offset_mm", "oversize_bound_mm", "stock_1_inner_mm", "stock_1_outer_mm", "stock_2_inner_mm", "stock_2_outer_mm"},
	drill.LipLength: {"lip_length_difference_mm"},
	drill.LipHeight: {"lip_height_mid_lip_mm", "lip_height_difference_mm", "point_offset_mm", "oversize_bound_mm", "chip_share_1", "chip_share_2",
		"stock_1_inner_mm", "stock_1_outer_mm", "stock_2_inner_mm", "stock_2_outer_mm"},
	drill.Clearance: {"lip_clearance_1_deg", "lip_clearance_2_deg", "working_clearance_deg", "least_working_clearance_deg", "feed_limit_mm"},
	drill.HeelDrop:  {}, drill.HeelTurn: {}, drill.Helix: {},
	drill.Flute: {"flute_mm"}, drill.FlankWear: {"flank_wear_mm"}, drill.CornerWear: {"corner_wear_mm"}, drill.MarginWear: {"margin_wear_mm"}, drill.LipChip: {"lip_chip_mm"},
	drill.Cracked: {},
	drill.Remove:  {"web_after_mm", "chisel_length_after_mm", "chisel_ratio_after", "thrust_ratio"},
	drill.Feed:    {"feed_angle_deg", "working_clearance_deg", "least_working_clearance_deg", "thrust_ratio", "chip_share_1", "chip_share_2"},
	drill.Rpm:     {}, drill.Depth: {},
}

// Taking one reading away changes only what hangs on it.
func TestMissingReadingTouchesOnlyWhatHangsOnIt(t *testing.T) {
	all := possible(t, whole)
	before := numbers(judge.Sheet(all, true))
	for _, r := range drill.ForPoint() {
		may, ok := hangsOn[r]
		if !ok {
			t.Errorf("say in this test what hangs on %s", r)
		}
		d := *all
		d.Drop(r)
		s := judge.Sheet(&d, true)
		noNaN(t, s)
		after := numbers(s)
		for key, f := range before {
			got, known := after[key]
			changed := !known || got.Word != f.Word || math.Abs(got.Value-f.Value) > 1e-12 && f.Word == ""
			if changed && !slices.Contains(may, key) {
				t.Errorf("without %s, %s is %v %q and was %v %q", r, key, got.Value, got.Word, f.Value, f.Word)
			}
			if !changed && slices.Contains(may, key) {
				t.Errorf("%s is said to hang on %s, and does not", key, r)
			}
			if f := s.Lookup(key); !known && f.Wants == "" && f.Key != "web_ratio" && !read(f.Key) {
				t.Errorf("without %s, %s does not say what it wants", r, key)
			}
		}
	}
}

// read reports whether a figure is a reading itself, shown for its limit.
func read(key string) bool {
	return slices.Contains([]string{"flute_mm", "flank_wear_mm", "corner_wear_mm", "margin_wear_mm", "lip_chip_mm"}, key)
}

// Of the five results each names what it wants, and the verdict as well.
func TestWants(t *testing.T) {
	s := judge.Sheet(possible(t, of("size 12mm")), false)
	for key, want := range map[string]string{
		"point_angle_deg": "lip-angle", "chisel_length_mm": "two of web, chisel-angle, chisel-length",
		"lip_clearance_1_deg":      "clearance, or heel-drop with heel-turn and size",
		"lip_height_difference_mm": "lip-height, or lip-length A,B with lip-angle A,B and size", "web_after_mm": "web and remove",
	} {
		if got := s.Lookup(key).Wants; got != want {
			t.Errorf("%s wants %q, should %q", key, got, want)
		}
	}
	for line, want := range map[string]string{"web 2mm": "chisel-angle or chisel-length", "chisel-angle 125": "web or chisel-length", "chisel-length 2mm": "web or chisel-angle"} {
		s := judge.ChiselOnly(possible(t, of(line)), false)
		if got := s.Lookup("chisel_ratio").Wants; got != "size and "+want {
			t.Errorf("with %s the chisel wants %q", line, got)
		}
	}
	s2 := judge.ChiselOnly(possible(t, of("size 12mm; web 2mm")), false)
	if got := s2.Lookup("chisel_ratio").Wants; got != "chisel-angle or chisel-length" {
		t.Errorf("with size and web the chisel's ratio wants %q", got)
	}
	want := []string{"lip-angle A,B", "clearance or heel-drop with heel-turn", "two of web, chisel-angle, chisel-length", "lip-height or lip-length A,B"}
	if !slices.Equal(s.Verdict.Missing, want) {
		t.Errorf("the verdict wants %q", s.Verdict.Missing)
	}
}

// Lips longer than the drill is wide tell no height.
func TestLipsThatCannotBe(t *testing.T) {
	l := compute(t, "size 12mm; web 3mm; lip-angle 89,89; lip-length 11.9mm,11.9mm").Lips
	if known := l.Height == l.Height; known || l.Planned || l.From != judge.LipsUnknown {
		t.Errorf("height %v, from %v", l.Height, l.From)
	}
}

// However odd the readings, as long as they can be: no panic, no infinity, and
// no NaN where a number is said.
func TestOddReadings(t *testing.T) {
	testkit.Property(t, "however odd the readings, no figure is NaN or infinite", func(t *rapid.T) {
		d := &drill.Drill{}
		for _, r := range drill.ForPoint() {
			s := r.Spec()
			odd := []float64{0, 1e-30, 1e-9, 1e-3, 0.1, 1, 1.5, 1.57, 3, 10, 1e3, 1e9}
			if s.Signed {
				odd = append(odd, -1e-9, -0.1, -1.5, -10)
			}
			if r == drill.Size {
				odd = odd[1:] // no size is zero: it cannot be typed
			}
			of := rapid.SampledFrom(odd)
			switch n := rapid.IntRange(0, 2).Draw(t, s.Name); {
			case s.Kind == quantity.Word || n == 0:
			case n == 2 && s.Pair:
				d.Put(r, of.Draw(t, s.Name+" 1"), of.Draw(t, s.Name+" 2"))
			default:
				d.Put(r, of.Draw(t, s.Name))
			}
		}
		for _, im := range judge.Check(d) {
			d.Drop(im.Reading)
		}
		for _, im := range judge.Check(d) {
			d.Drop(im.Reading)
		}
		noNaN(t, judge.Sheet(d, true))
	})
}
