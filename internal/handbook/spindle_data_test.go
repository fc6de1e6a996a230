package handbook

import (
	"cmp"
	"fmt"
	"math"
	"testing"

	"evenlip/internal/testkit"
)

// Every row comes back as printed, and half way between two rows stands the mean.
func TestPrintedFactorsAreTheTable(t *testing.T) {
	rows := [][4]float64{
		{0.03, 1.000, 1.100, 0.001}, {0.05, 1.005, 1.140, 0.003}, {0.08, 1.015, 1.200, 0.006}, {0.10, 1.020, 1.235, 0.010},
		{0.13, 1.040, 1.270, 0.017}, {0.15, 1.080, 1.310, 0.022}, {0.18, 1.085, 1.355, 0.030}, {0.20, 1.105, 1.380, 0.040},
		{0.25, 1.155, 1.445, 0.065}, {0.30, 1.235, 1.500, 0.090}, {0.35, 1.310, 1.575, 0.120}, {0.40, 1.395, 1.620, 0.160},
	}
	check := func(q, a, b, j float64) {
		t.Helper()
		ga, gb, gj, ok := PrintedFactors(q)
		if !ok || math.Abs(ga-a) > 1e-9 || math.Abs(gb-b) > 1e-9 || math.Abs(gj-j) > 1e-9 {
			t.Errorf("at %g: %g %g %g %v, not %g %g %g", q, ga, gb, gj, ok, a, b, j)
		}
	}
	checks := testkit.Against(t, testkit.MachinerysHandbook, "p. 1153, Table 7, as embedded")
	for i, r := range rows {
		check(r[0], r[1], r[2], r[3])
		a, b, j, _ := PrintedFactors(r[0])
		checks.Within(fmt.Sprintf("A at c/D %.2f", r[0]), a, r[1], 1e-9, "")
		checks.Within(fmt.Sprintf("B at c/D %.2f", r[0]), b, r[2], 1e-9, "")
		checks.Within(fmt.Sprintf("J at c/D %.2f", r[0]), j, r[3], 1e-9, "")
		if i > 0 {
			p := rows[i-1]
			check((p[0]+r[0])/2, (p[1]+r[1])/2, (p[2]+r[2])/2, (p[3]+r[3])/2)
		}
	}
	for _, q := range []float64{0, 0.0299, 0.4001, 1, math.NaN(), math.Inf(1), -0.1} {
		if a, b, j, ok := PrintedFactors(q); ok || !math.IsNaN(a) || !math.IsNaN(b) || !math.IsNaN(j) {
			t.Errorf("at %g the table has %g %g %g", q, a, b, j)
		}
	}
	if !math.IsNaN(figureOf("x")) {
		t.Error("x reads as a figure")
	}
}

func TestGapsToTheWheel(t *testing.T) {
	rule := testkit.Against(t, testkit.SafetyRule, "(a)(4) and (b)(9), gaps to the wheel")
	rule.Within("work rest, 1/8 in", RestGap.High, 3.175, 0, "mm")
	rule.Within("tongue, 1/4 in", TongueGap.High, 6.35, 0, "mm")
	if RestGap.Low != 0 || TongueGap.Low != 0 {
		t.Errorf("rest %v, tongue %v", RestGap, TongueGap)
	}
}

// Straight flutes for brass, lead, copper and most plastics; a high helix for deep
// holes; ordinary ones else.
func TestFluteFor(t *testing.T) {
	find := func(name string) *Material {
		m, _ := FindMaterial(name)
		return m
	}
	for _, c := range []struct {
		material string
		deep     bool
		want     Flute
	}{
		{"brass", false, StraightFlutes}, {"leaded-brass", true, StraightFlutes}, {"copper", false, StraightFlutes}, {"plastics", true, StraightFlutes},
		{"steel-200", false, OrdinaryHelix}, {"steel-200", true, HighHelix}, {"", true, HighHelix}, {"", false, OrdinaryHelix},
	} {
		got, source := FluteFor(find(c.material), c.deep)
		if source.Label != Practice {
			t.Errorf("%s, deep %v: %v", c.material, c.deep, source)
		}
		name := cmp.Or(c.material, "no material") + map[bool]string{true: ", deep"}[c.deep]
		testkit.Against(t, testkit.Trade, "flutes by material and depth").Says(name, flutes[got], flutes[c.want])
	}
	for _, name := range straightFor {
		if _, ok := FindMaterial(name); !ok {
			t.Errorf("%s is in no list", name)
		}
	}
}

// flutes are the flutes' names.
var flutes = map[Flute]string{StraightFlutes: "straight", OrdinaryHelix: "ordinary helix", HighHelix: "high helix"}

func TestSpeedPickIsTheMiddle(t *testing.T) {
	if v, source := SpeedPick(Band{Low: 20, High: 30}); v != 25 || source.Label != Own {
		t.Errorf("%g, %v", v, source)
	}
	if v, _ := SpeedPick(Band{Low: nan, High: nan}); !math.IsNaN(v) {
		t.Errorf("%g out of nothing", v)
	}
}

// The handbook's angle: w/c over the rows of its Table 7 is the sine of it.
func TestHandbookChiselAngle(t *testing.T) {
	checks := testkit.Against(t, testkit.MachinerysHandbook, "p. 1153, Table 7, web over chisel edge is the sine of 60°").Because("the webs are printed to 0.005 D")
	want := math.Sin(HandbookChiselAngle)
	for _, cells := range published(chiselFactors)() {
		c, w := figureOf(cells[0]), figureOf(cells[1])
		checks.Within(fmt.Sprintf("c/D %.2f", c), want, w/c, 0.04*want, "")
	}
}
