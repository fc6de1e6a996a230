package uncertainty_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit/drilltest"
	"evenlip/internal/uncertainty"
)

const deg = math.Pi / 180

// steps are those of a caliper in mm, a protractor in degrees, and an indicator in mm.
func steps(caliper, protractor, indicator float64) quantity.Gauges {
	return quantity.Gauges{Caliper: caliper, Protractor: protractor * deg, Indicator: indicator}
}

// What is drawn, between which ends: neither what is nominal, wished or set, nor what a
// gauge that was not named reads, nor wear of which there is none.
func TestDraws(t *testing.T) {
	for _, c := range []struct {
		line   string
		gauges quantity.Gauges
		want   string
	}{
		{"size 12mm; web 2mm", steps(0.02, 0, 0), "web 0 1.99..2.01"},
		{"size 12mm; web 2mm", steps(0, 1, 0.01), ""},
		{"size 12mm; lip-angle 59,58", steps(0, 1, 0), "lip-angle 1 57.5..58.5 lip-angle 0 58.5..59.5"},
		{"size 12mm; lip-angle 59", steps(0, 1, 0), "lip-angle 1 58.5..59.5 lip-angle 0 58.5..59.5"},
		{"size 12mm; lip-height 0.1mm", steps(0, 0, 0.02), "lip-height 0 0.09..0.11"},
		{"size 12mm; lip-height 0", steps(0, 0, 0.02), "lip-height 0 -0.01..0.01"},
		{"size 12mm; lip-height 0.1mm,0", steps(0, 0, 0.02), "lip-height 1 -0.01..0.01 lip-height 0 0.09..0.11"},
		{"size 12mm; flank-wear 0", steps(0.02, 1, 0.02), ""},
		{"size 12mm; flank-wear 0.004mm", steps(0.02, 1, 0.02), "flank-wear 0 0..0.014"},
		{"size 12mm; point-angle 118; remove 1mm; depth 30mm; pilot 2mm; web-taper 0.016; feed 0.2mm; rpm 900; " +
			"to-web 2mm; clean-up 0.1mm; every 0.5mm; least-diameter 11.9mm", steps(0.02, 1, 0.02), ""},
	} {
		var got []string
		for _, x := range uncertainty.Draws(drilltest.Read(t, c.line), c.gauges) {
			unit := 1.0
			if x.Reading.Spec().Kind == quantity.Angle {
				unit = deg
			}
			got = append(got, fmt.Sprintf("%v %d %.10g..%.10g", x.Reading, x.Lip, x.Low/unit, x.High/unit))
		}
		if text := strings.Join(got, " "); text != c.want {
			t.Errorf("%s: %q, want %q", c.line, text, c.want)
		}
	}
}

// Even of a drill off which everything was read no more is drawn than there are
// dimensions.
func TestDrawsFit(t *testing.T) {
	d := &drill.Drill{}
	for _, r := range drill.All() {
		if r.Spec().Gauge != quantity.NoGauge {
			d.Put(r, 1, 1.1)
		}
	}
	if n := len(uncertainty.Draws(d, steps(0.02, 1, 0.01))); n < 25 || n > uncertainty.Dims {
		t.Errorf("%d values are drawn", n)
	}
}

// Each draw moves what is drawn, to all parts of its step, and nothing else.
func TestEach(t *testing.T) {
	d := drilltest.Read(t, "size 12mm; web 2mm; lip-angle 59; remove 1mm")
	draws := uncertainty.Draws(d, steps(0.02, 1, 0.01))
	var webs, differences []float64
	for m := range uncertainty.Each(d, draws) {
		webs = append(webs, m.Value(drill.Web))
		a, b, n := m.Pair(drill.LipAngle)
		differences = append(differences, a-b)
		if m.Value(drill.Size) != 12 || m.Value(drill.Remove) != 1 || n != 1 {
			t.Fatalf("%v, %v, %d", m.Value(drill.Size), m.Value(drill.Remove), n)
		}
	}
	slices.Sort(webs)
	if len(webs) != uncertainty.N || math.Abs(webs[0]-1.99) > 1e-4 || math.Abs(webs[len(webs)-1]-2.01) > 1e-4 {
		t.Errorf("%d webs from %v to %v", len(webs), webs[0], webs[len(webs)-1])
	}
	if most := slices.Max(differences); most < 0.8*deg {
		t.Errorf("the lips' angles part by no more than %v", most)
	}
	if a, b, _ := d.Pair(drill.LipAngle); d.Value(drill.Web) != 2 || a != b {
		t.Errorf("the drill itself has moved: %v, %v, %v", d.Value(drill.Web), a, b)
	}
}
