package judge_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command/point"
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
		for _, c := range onPoint {
			noNaN(t, c.Sheet(d, true))
		}
	})
}

// Of the five results each names what it wants, and the verdict as well.
func TestWants(t *testing.T) {
	s := point.Inspect.Sheet(possible(t, of("size 12mm")), false)
	for key, want := range map[string]string{
		"point_angle_deg": "lip-angle", "chisel_length_mm": "two of web, chisel-angle, chisel-length",
		"lip_clearance_1_deg":      "clearance, or heel-drop with heel-turn and size",
		"lip_height_difference_mm": "lip-height, or lip-length A,B with lip-angle A,B and size", "web_after_mm": "web and remove",
	} {
		if got := s.Missing(s.Lookup(key)); got != want {
			t.Errorf("%s wants %q, should %q", key, got, want)
		}
	}
	for line, want := range map[string]string{"web 2mm": "chisel-angle or chisel-length", "chisel-angle 125": "web or chisel-length", "chisel-length 2mm": ""} {
		s := point.Chisel.Sheet(possible(t, of(line)), false)
		if got := s.Missing(s.Lookup("chisel_ratio")); got != strings.TrimPrefix(want+" and size", " and ") {
			t.Errorf("with %s the chisel wants %q", line, got)
		}
	}
	s2 := point.Chisel.Sheet(possible(t, of("size 12mm; web 2mm")), false)
	if got := s2.Missing(s2.Lookup("chisel_ratio")); got != "chisel-angle or chisel-length" {
		t.Errorf("with size and web the chisel's ratio wants %q", got)
	}
	want := []string{"lip-angle A,B", "clearance or heel-drop with heel-turn", "two of web, chisel-angle, chisel-length", "lip-height or lip-length A,B"}
	if !slices.Equal(s.Verdict.Missing, want) {
		t.Errorf("the verdict wants %q", s.Verdict.Missing)
	}
}

// Lips longer than the drill is wide tell no height.
func TestLipsThatCannotBe(t *testing.T) {
	r := judge.Compute(of("size 12mm; web 3mm; lip-angle 89,89; lip-length 11.9mm,11.9mm").Drill(t))
	l := &r.Lips
	if _, planned := r.Evening(); l.Height == l.Height || planned || l.From != judge.LipsUnknown {
		t.Errorf("height %v, from %v", l.Height, l.From)
	}
}

// However odd the readings, as long as they can be: no panic, no infinity, and
// no NaN where a number is said.
func TestOddReadings(t *testing.T) {
	testkit.Property(t, "however odd the readings, no figure is NaN or infinite", func(t *rapid.T) {
		d := &drill.Drill{}
		for _, r := range drill.Of(drill.Point) {
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
		for _, f := range check(d) {
			d.Drop(drilltest.Named(drilltest.About(f)))
		}
		for _, f := range check(d) {
			d.Drop(drilltest.Named(drilltest.About(f)))
		}
		noNaN(t, point.Inspect.Sheet(d, true))
	})
}
