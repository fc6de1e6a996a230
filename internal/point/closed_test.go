package point_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

const (
	inch = 25.4
	deg  = math.Pi / 180
)

// near fails the test unless got is within tol of want.
func near(t interface {
	Helper()
	Errorf(string, ...any)
}, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.12g, want %.12g within %g", what, got, want, tol)
	}
}

func TestHeight(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "point length at 118 degrees")
	trade.Within("7/8 in", point.Height(0.875, 118*deg), 0.2629, 0.00005, "in")
	trade.Within("No. 37, 0.104 in", point.Height(0.104, 118*deg), 0.031, 0.0005, "in")
	trade.Within("part of the diameter", point.Height(1, 118*deg), 0.3, 0.001, "D")
	// elementary: a right-angled point is half the diameter long
	near(t, "90", point.Height(10, 90*deg), 5, 1e-12)
}

func TestChisel(t *testing.T) {
	design := testkit.Against(t, testkit.ToolDesign, "chisel edge over web")
	design.Within("at 120 degrees", point.ChiselLength(1, 120*deg), 1.15, 0.006, "w")
	trade := testkit.Against(t, testkit.Trade, "chisel edge over web")
	trade.Within("at 45 degrees", point.ChiselLength(1, 45*deg), 1.414, 0.0005, "w")
	near(t, "either way of quoting", point.ChiselLength(1.5, 55*deg), point.ChiselLength(1.5, 125*deg), 1e-12)
	near(t, "obtuse of acute", point.Obtuse(55*deg), 125*deg, 1e-12)
	near(t, "obtuse of obtuse", point.Obtuse(125*deg), 125*deg, 1e-12)
	near(t, "acute of obtuse", point.Acute(125*deg), 55*deg, 1e-12)
}

// The handbook's web beside each of its chisel edges, at 120 degrees.
func TestChiselAgainstHandbook(t *testing.T) {
	checks := testkit.Against(t, testkit.MachinerysHandbook, "p. 1152, Table 7, web beside chisel edge").Because("the webs are printed to 0.005 D")
	for _, row := range [][2]float64{
		{0.03, 0.025}, {0.05, 0.045}, {0.08, 0.070}, {0.10, 0.085}, {0.13, 0.110}, {0.15, 0.130},
		{0.18, 0.155}, {0.20, 0.175}, {0.25, 0.220}, {0.30, 0.260}, {0.35, 0.300}, {0.40, 0.350},
	} {
		web := point.WebOfChisel(row[0], 60*deg)
		checks.Part(fmt.Sprintf("w/D at c/D %.2f", row[0]), web, row[1], 0.04, "")
	}
}

// Drop over diameter by turn and clearance, with a calculator from the arc the
// corner travels.
func TestHeelDropTable(t *testing.T) {
	back := testkit.Against(t, testkit.Derived, "clearance of that heel drop")
	turns := [4]float64{10, 20, 30, 45}
	for cl, row := range map[float64][4]float64{
		6: {0.0092, 0.0183, 0.0275, 0.0413}, 8: {0.0123, 0.0245, 0.0368, 0.0552},
		10: {0.0154, 0.0308, 0.0462, 0.0692}, 12: {0.0185, 0.0371, 0.0556, 0.0835},
		14: {0.0218, 0.0435, 0.0653, 0.0979}, 16: {0.0250, 0.0500, 0.0751, 0.1126},
		18: {0.0284, 0.0567, 0.0851, 0.1276}, 20: {0.0318, 0.0635, 0.0953, 0.1429},
		24: {0.0389, 0.0777, 0.1166, 0.1748},
	} {
		for i, drop := range row {
			at := fmt.Sprintf("%g°, turned %g°", cl, turns[i])
			back.Within(at, point.ClearanceOfDrop(drop, 1, turns[i]*deg)/deg, cl, 0.04, "°")
		}
	}
	if cl := point.ClearanceOfDrop(-0.1, 10, 20*deg); !(cl < 0) {
		t.Errorf("a heel above the lip gives clearance %g, want it negative", cl)
	}
}

func TestFeedAngle(t *testing.T) {
	apart := testkit.Against(t, testkit.Derived, "feed angle of 0.2 mm a turn").Because("worked out to two digits")
	apart.Within("at 10 mm", point.FeedAngle(0.2, 5)/deg, 0.36, 0.006, "°")
	apart.Within("at 1 mm", point.FeedAngle(0.2, 0.5)/deg, 3.6, 0.06, "°")
	near(t, "no clearance, no feed", point.FeedLimit(3, -2*deg), 0, 0)
}

func TestWeb(t *testing.T) {
	near(t, "taper", point.WebTaper(1.5, 2, 20), 0.025, 1e-15)
	near(t, "after", point.WebAfter(1.5, 0.025, 20), 2, 1e-12)
}

func TestAlongLip(t *testing.T) {
	near(t, "along", point.AlongLip(5, 1.5), math.Sqrt(25-0.75*0.75), 1e-12)
}

func TestClosedFormsRefuseTheImpossible(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, got := range map[string]float64{
		"height of no drill":       point.Height(0, 2),
		"height of a flat end":     point.Height(10, math.Pi),
		"height of NaN":            point.Height(nan, 2),
		"height of an endless one": point.Height(inf, 2),
		"chisel, negative web":     point.ChiselLength(-1, 1),
		"chisel, no angle":         point.ChiselLength(1, 0),
		"corner, negative web":     point.ChiselCorner(-1, 1),
		"corner, no angle":         point.ChiselCorner(1, 0),
		"corner, straight angle":   point.ChiselCorner(1, math.Pi),
		"chisel shorter than web":  point.ChiselAngle(2, 1.9),
		"chisel of no web":         point.ChiselAngle(0, 1.9),
		"chisel of no length":      point.ChiselAngle(1, 0),
		"web of negative chisel":   point.WebOfChisel(-1, 1),
		"web at straight angle":    point.WebOfChisel(1, math.Pi),
		"acute of zero":            point.Acute(0),
		"obtuse of 180":            point.Obtuse(math.Pi),
		"web after, negative cut":  point.WebAfter(1, 0.02, -1),
		"web after, none left":     point.WebAfter(1, -0.02, 100),
		"web after, no web":        point.WebAfter(-1, 0.02, 100),
		"taper over nothing":       point.WebTaper(1, 2, 0),
		"taper from nothing":       point.WebTaper(0, 2, 1),
		"taper to nothing":         point.WebTaper(1, nan, 1),
		"clearance, no turn":       point.ClearanceOfDrop(0.1, 10, 0),
		"clearance, NaN drop":      point.ClearanceOfDrop(nan, 10, 1),
		"clearance, no drill":      point.ClearanceOfDrop(0.1, -10, 1),
		"feed angle on the axis":   point.FeedAngle(0.2, 0),
		"feed angle, negative":     point.FeedAngle(-0.2, 1),
		"feed limit on the axis":   point.FeedLimit(0, 0.1),
		"feed limit at 90":         point.FeedLimit(1, math.Pi/2),
		"web angle inside the web": point.WebAngle(1.5, 0.7),
		"web angle, negative web":  point.WebAngle(-1, 2),
		"web angle on the axis":    point.WebAngle(0, 0),
		"along inside the web":     point.AlongLip(0.7, 1.5),
		"along, negative":          point.AlongLip(-2, 1.5),
		"along, negative web":      point.AlongLip(2, -1.5),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %g, want NaN", name, got)
		}
	}
}

func TestClosedFormsRoundTrip(t *testing.T) {
	testkit.Property(t, "chisel, heel drop, web growth and feed limit go there and back", func(t *rapid.T) {
		web := rapid.Float64Range(0.1, 20).Draw(t, "web")
		psi := rapid.Float64Range(1, 89).Draw(t, "psi") * deg
		c := point.ChiselLength(web, psi)
		near(t, "chisel angle", point.ChiselAngle(web, c), psi, 1e-7)
		near(t, "web of chisel", point.WebOfChisel(c, math.Pi-psi), web, 1e-12*web)
		x := point.ChiselCorner(web, psi)
		near(t, "half the chisel, from axis to corner", math.Hypot(x, web/2), c/2, 1e-12*c)
		near(t, "corner on the other side", point.ChiselCorner(web, math.Pi-psi), -x, 1e-12*c)

		d := rapid.Float64Range(0.3, 80).Draw(t, "d")
		cl := rapid.Float64Range(-20, 50).Draw(t, "cl") * deg
		turn := rapid.Float64Range(0.1, 170).Draw(t, "turn") * deg
		near(t, "heel drop", point.ClearanceOfDrop(d/2*turn*math.Tan(cl), d, turn), cl, 1e-12)

		taper := rapid.Float64Range(0, 0.05).Draw(t, "taper")
		a, b := rapid.Float64Range(0, 20).Draw(t, "a"), rapid.Float64Range(0, 20).Draw(t, "b")
		twice := point.WebAfter(point.WebAfter(web, taper, a), taper, b)
		near(t, "web in two cuts", twice, point.WebAfter(web, taper, a+b), 1e-12*web)
		near(t, "web taper", point.WebTaper(web, point.WebAfter(web, taper, a+1), a+1), taper, 1e-12*web)

		r, feed := rapid.Float64Range(0.1, 40).Draw(t, "r"), rapid.Float64Range(0, 2).Draw(t, "feed")
		near(t, "feed limit", point.FeedLimit(r, point.FeedAngle(feed, r)), feed, 1e-12)
	})
}

func TestClosedFormsScale(t *testing.T) {
	testkit.Property(t, "heights, places along a lip and feed limits scale with the drill, a heel drop's clearance stays", func(t *rapid.T) {
		d := rapid.Float64Range(0.5, 80).Draw(t, "d")
		web := d * rapid.Float64Range(0.02, 0.4).Draw(t, "w/d")
		s := rapid.Float64Range(0.01, 100).Draw(t, "scale")
		near(t, "height", point.Height(s*d, 2), s*point.Height(d, 2), 1e-10*s*d)
		near(t, "clearance", point.ClearanceOfDrop(0.1*s*d, s*d, 0.4), point.ClearanceOfDrop(0.1*d, d, 0.4), 1e-12)
		near(t, "along the lip", point.AlongLip(s*d/2, s*web), s*point.AlongLip(d/2, web), 1e-10*s*d)
		near(t, "feed limit", point.FeedLimit(s*d, 0.2), s*point.FeedLimit(d, 0.2), 1e-10*s*d)
	})
}
