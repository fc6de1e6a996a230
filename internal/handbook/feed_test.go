package handbook_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/handbook"
	"evenlip/internal/testkit"
)

// The course has inches; the millimetres are derived.
func TestFeedBand(t *testing.T) {
	navy := testkit.Against(t, testkit.Navy, "feeds of high-speed-steel drills, to the nearest 0.01 mm").Because("the course has inches; 0.001 in is 0.0254 mm")
	for _, v := range []struct{ d, low, high float64 }{
		{0.35, 0.03, 0.05}, {3.175, 0.03, 0.05}, {3.2, 0.05, 0.10}, {6.35, 0.05, 0.10}, {6.4, 0.10, 0.18},
		{12.7, 0.10, 0.18}, {12.8, 0.18, 0.38}, {25.4, 0.18, 0.38}, {25.5, 0.38, 0.64}, {90, 0.38, 0.64},
	} {
		b := handbook.FeedBand(v.d)
		navy.Within(fmt.Sprintf("drill of %g mm, from", v.d), b.Low, v.low, 0.0055, "mm")
		navy.Within(fmt.Sprintf("drill of %g mm, to", v.d), b.High, v.high, 0.0055, "mm")
		if b.Source.Label != handbook.InPrint {
			t.Errorf("%v mm: %v", v.d, b.Source)
		}
	}
	for _, d := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if b := handbook.FeedBand(d); !math.IsNaN(b.Low) || !math.IsNaN(b.High) || b.Source != nil {
			t.Errorf("%v mm: got %+v", d, b)
		}
	}
}

var feedEnds = []handbook.FeedEnd{handbook.FeedLow, handbook.FeedMid, handbook.FeedHigh}

// taken is the feed that is taken, in/rev, for a drill of in inches.
func taken(in float64, end handbook.FeedEnd) float64 {
	row := handbook.FeedOf(in * 25.4)
	return (row.Low + (row.High-row.Low)*row.Share(in*25.4, end)) / 25.4
}

// US Navy course Machinery Repairman (in print): .001 to .002 in/rev up to 1/8 in,
// .004 to 1/4, .007 to 1/2, .015 to 1, .025 above. Where two rows meet there is
// one feed, whatever the work; half way through a row hard work has its low end,
// ordinary work the middle, soft work the high end (own rule).
func TestFeedTakenAtTheRowsEnds(t *testing.T) {
	for in, want := range map[float64]float64{0.005: 0.001, 0.0135: 0.001, 0.125: 0.002, 0.25: 0.004, 0.5: 0.007, 1: 0.015, 3.5: 0.025, 4: 0.025} {
		for _, end := range feedEnds {
			agrees(t, "feed at the end of a row", taken(in, end), want, 1e-9)
		}
	}
	for in, row := range map[float64][2]float64{0.1875: {0.002, 0.004}, 0.375: {0.004, 0.007}, 0.75: {0.007, 0.015}, 2.25: {0.015, 0.025}} {
		for end, want := range map[handbook.FeedEnd]float64{handbook.FeedLow: row[0], handbook.FeedMid: (row[0] + row[1]) / 2, handbook.FeedHigh: row[1]} {
			agrees(t, "feed half way through a row, "+end.String(), taken(in, end), want, 1e-9)
		}
	}
}

// The feed taken lies in the published band, never falls from one diameter to a
// larger one, never jumps, and is no lighter for softer work.
func TestFeedTaken(t *testing.T) {
	testkit.Property(t, "the feed taken is in the published band, never falls with size, never jumps, and is no lighter for softer work", func(t *rapid.T) {
		d := rapid.Float64Range(0.2, 100).Draw(t, "D")
		step := rapid.Float64Range(0, 0.01).Draw(t, "step")
		last := 0.0
		for _, end := range feedEnds {
			here, next := taken(d/25.4, end)*25.4, taken((d+step)/25.4, end)*25.4
			// the steepest line rises by 0.003 in over 1/8 in of diameter
			if next < here-1e-12 || next > here+0.05*step+1e-12 {
				t.Fatalf("%s: %g mm/rev at %g mm, %g at %g", end, here, d, next, d+step)
			}
			if band := handbook.FeedBand(d); here < band.Low-1e-12 || here > band.High+1e-12 {
				t.Fatalf("%s: %g mm/rev at %g mm, published %g to %g", end, here, d, band.Low, band.High)
			}
			if here < last-1e-12 {
				t.Fatalf("%s: %g mm/rev at %g mm, harder work %g", end, here, d, last)
			}
			last = here
		}
	})
}

func TestFeedOfNoDrill(t *testing.T) {
	for _, d := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		for _, end := range feedEnds {
			if share := handbook.FeedOf(d).Share(d, end); !math.IsNaN(share) {
				t.Errorf("%v mm: share %v", d, share)
			}
		}
		if b := handbook.FeedServes(d); b.Source != nil || !math.IsNaN(b.High) {
			t.Errorf("%v mm: %+v serves", d, b)
		}
	}
}

// 0.2 mm/rev on a 12 mm drill in mild steel is an everyday feed (common
// practice), though 0.178 is the most that is published; 0.4 is not.
func TestFeedServes(t *testing.T) {
	b := handbook.FeedServes(12)
	if !b.Holds(0.2) || b.Holds(0.4) || b.Holds(0.1) || b.Source.Label != handbook.Own {
		t.Errorf("%+v", b)
	}
}

func TestFeedEndsInWords(t *testing.T) {
	for end, want := range map[handbook.FeedEnd]string{handbook.FeedLow: "low end", handbook.FeedMid: "middle", handbook.FeedHigh: "high end"} {
		if end.String() != want {
			t.Errorf("%s, want %s", end, want)
		}
	}
}
