package crib

import (
	"math"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/quantity"
)

var coarse = quantity.Gauges{Caliper: 0.06, Protractor: 3 * math.Pi / 180, Indicator: 0.01}

// nearly are drills that stand a hair past a limit: it takes finer gauges to tell.
const nearly = `version: 1
drills:
  - {id: rubs, size: 12mm, web: 1.8mm, chisel-angle: 127, lip-angle: "59,59", lip-height: 0, clearance: 7.45, flute: 80mm, depth: 30mm}
  - {id: dull, size: 12mm, web: 1.8mm, chisel-angle: 127, lip-angle: "59,59", lip-height: 0, clearance: 12, flank-wear: 0.275mm, flute: 80mm, depth: 30mm}
  - {id: thick, size: 12mm, web: 2.3mm, chisel-angle: 127, lip-angle: "59,59", lip-height: 0, clearance: 12, flank-wear: 0.275mm, flute: 80mm, depth: 30mm}
  - {id: short, size: 12mm, web: 1.8mm, chisel-angle: 127, lip-angle: "59,59", lip-height: 0, clearance: 12, flank-wear: 0.9mm, flute: 41.975mm, depth: 30mm}
  - {id: last, size: 12mm, web: 1.8mm, chisel-angle: 127, clearance: 12, flank-wear: 0.9mm, flute: 42.24mm, depth: 30mm}
  - {id: one-more, size: 12mm, web: 1.8mm, chisel-angle: 127, clearance: 12, flank-wear: 0.9mm, flute: 42.245mm, depth: 30mm}
  - {id: gone, size: 12mm, web: 1.8mm, chisel-angle: 127, lip-angle: "59,59", lip-height: 0, clearance: 12, flank-wear: 0.9mm, flute: 42.1mm, depth: 30mm}
  - {id: surely, size: 12mm, web: 1.8mm, chisel-angle: 127, lip-angle: "59,59", lip-height: 0, clearance: 12, flank-wear: 0.9mm, flute: 80mm, depth: 30mm}
`

// Nobody takes metal off, or throws a drill away, because a gauge cannot tell:
// what the gauges do not bear out is to be measured, and the plan says with what.
func TestPlanRestsOnWhatTheGaugesBearOut(t *testing.T) {
	c := read(t, nearly)
	dos := func() map[string]Task {
		out := map[string]Task{}
		for _, task := range c.Day().Tasks {
			out[task.ID] = task
		}
		return out
	}
	before := dos()
	c.Gauges = coarse
	after := dos()
	for id, want := range map[string]struct {
		before, after Do
		because       string
	}{
		"rubs":  {ToGrind, ToMeasure, "clearance on a finer gauge"},
		"dull":  {ToGrind, ToMeasure, "flank-wear on a finer gauge"},
		"thick": {ToGrind, ToMeasure, "chisel-long, but wants flank-wear on a finer gauge"},
		"short": {ToRetire, ToMeasure, "dull, but wants flute on a finer gauge"},
		// What this grind would leave of the flute is a hair off what the job takes.
		"last":     {ToRetire, ToMeasure, "dull, but wants flute on a finer gauge"},
		"one-more": {ToGrind, ToMeasure, "dull, but wants flute on a finer gauge"},
		"gone":     {ToRetire, ToRetire, "dull flute-short"},
		"surely":   {ToGrind, ToGrind, "dull"},
	} {
		was, is := before[id], after[id]
		if was.Do != want.before || is.Do != want.after || !strings.Contains(is.because(), want.because) {
			t.Errorf("%s: %s, and with coarse gauges %s: %s", id, was.Do, is.Do, is.because())
		}
	}
}

// With whatever gauges, what is ground, thinned or retired is what an audit with
// the same gauges calls so.
func TestPlanFollowsTheAudit(t *testing.T) {
	for _, g := range []quantity.Gauges{coarse, {Caliper: 0.1, Protractor: 2 * math.Pi / 180, Indicator: 0.05}} {
		c := theSample(t)
		c.Gauges = g
		takes := map[string][]Do{"retire": {ToRetire, ToMeasure}, "regrind": {ToGrind, ToRetire, ToMeasure}, "thin": {ToThin, ToMeasure}, Undecided: {ToMeasure}, "fit": {ToLeave}}
		for _, task := range c.Day().Tasks {
			if !slices.Contains(takes[task.Word()], task.Do) {
				t.Errorf("%s is called %s, and is to %s", task.ID, task.Word(), task.Do)
			}
		}
	}
}
