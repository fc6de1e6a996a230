package wheel

import (
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
	"evenlip/internal/testkit/pocket"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// foot is a foot a minute in m/s.
const foot = 0.3048 / 60

// v = pi D N: 8 in at 3450 rpm is 7226 ft/min, and 6500 ft/min is 3104 rpm on it.
func TestWheel(t *testing.T) {
	s := Command.Sheet(drilltest.Read(t, "wheel 8in; wheel-rpm 3450; marked-speed 6500sfm; worn-to 4in"), false)
	apart := testkit.Against(t, testkit.Derived, "8 in wheel, by pi D N")
	apart.Within("new, at 3450 rpm", drilltest.Value(t, s, "surface_speed_new_mps")/foot, 7226, 0.5, "ft/min")
	apart.Within("worn to 4 in", drilltest.Value(t, s, "surface_speed_mps")/foot, 3613, 0.5, "ft/min")
	apart.Within("allowed by 6500 ft/min", drilltest.Value(t, s, "allowed_rpm"), 3104, 0.5, "rpm")
	if !drilltest.Found(s, "wheel-too-fast") || !s.Outside() || !drilltest.Found(s, "wheel-worn") {
		t.Errorf("%v", s.Findings)
	}
}

// A marking that was read stops the wheel; the common speed that stands in for one,
// 33 m/s or 6500 ft/min (ANSI B7.1, from memory), does not.
func TestWheelOfFewReadings(t *testing.T) {
	for want, text := range map[string]string{
		"allowed 3600 fast":       "marked-rpm 3600; wheel-rpm 3700",
		"allowed 3600":            "marked-rpm 3600; wheel-rpm 3600",
		"allowed 3000 fast":       "wheel 200mm; marked-rpm 3000; marked-speed 50m/s; wheel-rpm 3001",
		"allowed 3342":            "wheel 200mm; marked-speed 35m/s",
		"allowed 3151 guess":      "wheel 200mm",
		"allowed 3151 over guess": "wheel 200mm; wheel-rpm 3200",
		"allowed 3104 guess":      "wheel 8in; wheel-rpm 3100",
		"allowed 3104 over guess": "wheel 8in; wheel-rpm 3450",
		"allowed NaN guess":       "rest-gap 1mm",
	} {
		s := Command.Sheet(drilltest.Read(t, text), false)
		got := "allowed " + strconv.FormatFloat(drilltest.Value(t, s, "allowed_rpm"), 'f', 0, 64)
		fast, over := drilltest.Found(s, "wheel-too-fast"), drilltest.Found(s, "wheel-over-common")
		if fast {
			got += " fast"
		}
		if over {
			got += " over"
		}
		if s.Outside() != (fast || over) {
			t.Errorf("%v: outside is %v", text, s.Outside())
		}
		if drilltest.Found(s, "marking-not-read") {
			got += " guess"
		}
		if got != want {
			t.Errorf("%v: %s, not %s", text, got, want)
		}
	}
}

// A wheel of which no wear is told is a new one.
func TestWheelAsNew(t *testing.T) {
	s := Command.Sheet(drilltest.Read(t, "wheel 200mm; wheel-rpm 2850; marked-speed 35m/s"), false)
	near(t, "surface speed", drilltest.Value(t, s, "surface_speed_mps"), math.Pi*0.2*2850/60, 1e-9)
	near(t, "kept", drilltest.Value(t, s, "surface_speed_kept"), 1, 1e-12)
	if s.Outside() {
		t.Errorf("%v", s.Findings)
	}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %v, not %v", what, got, want)
	}
}

// Every formula beside a figure, worked out by an evaluator of another house
// (expr-lang/expr), some readings missing.
func TestWorkingGivesTheFigure(t *testing.T) {
	testkit.Property(t, "every formula of wheel, in letters and as printed, gives the figure", func(t *rapid.T) {
		r := drilltest.Readings{}
		for reading, text := range drilltest.Of("wheel 200mm; worn-to 150mm; wheel-rpm 2850; marked-speed 35m/s; marked-rpm 3300; rest-gap 2mm; tongue-gap 0.2in") {
			if rapid.IntRange(0, 3).Draw(t, reading.String()) > 0 {
				r[reading] = text
			}
		}
		pocket.Worked(t, Command.Sheet(r.Drill(t), true))
	})
}
