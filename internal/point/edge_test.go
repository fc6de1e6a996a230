package point_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// D 10, web 1.5, 118 degrees, helix 30, clearance 12, feed 0.2.
func TestEdgeAngles(t *testing.T) {
	apart := testkit.Against(t, testkit.Derived, "along the lip of 10 mm, web 1.5 mm, 118°, helix 30°, clearance 12°, feed 0.2 mm, by vectors").Because("what the feed adds to the rake was worked out to one digit")
	flank := point.NewFlank(10, 1.5, 59*deg, 12*deg)
	e := point.NewEdge(flank, 30*deg)
	for _, c := range []struct{ r, lam, gn, an, cl, working float64 }{
		{5, 7.39, 30.62, 10.53, 12.00, 11.64},
		{2, 18.75, 2.99, 17.83, 18.78, 17.87},
	} {
		at := fmt.Sprintf(" at radius %g mm", c.r)
		apart.Within("inclination"+at, e.Inclination(c.r)/deg, c.lam, 0.005, "°")
		apart.Within("normal rake"+at, e.NormalRake(c.r)/deg, c.gn, 0.005, "°")
		apart.Within("normal clearance"+at, e.NormalClearance(c.r)/deg, c.an, 0.005, "°")
		apart.Within("clearance"+at, flank.Clearance(c.r)/deg, c.cl, 0.005, "°")
		apart.Within("working clearance"+at, flank.Working(c.r, 0.2)/deg, c.working, 0.006, "°")
	}
	apart.Within("rake that the feed adds at mid lip", (e.WorkingRake(3.2, 0.2)-e.NormalRake(3.2))/deg, 0.4, 0.15, "°")
	trade := testkit.Against(t, testkit.Trade, "rake along the lip").Because("a round figure: 30° outside, -30° beside the chisel edge")
	trade.Within("outside", e.NormalRake(5)/deg, 30, 2, "°")
	trade.Within("beside the chisel edge", e.NormalRake(point.ChiselLength(1.5, 55*deg)/2)/deg, -30, 5, "°")
}

type edgeCase struct {
	lipCase
	helix, r, feed float64
}

func drawEdge(t *rapid.T) edgeCase {
	c := drawLip(t)
	return edgeCase{
		c, rapid.Float64Range(-20, 45).Draw(t, "helix") * deg,
		c.w/2 + (c.d-c.w)/2*rapid.Float64Range(0.05, 1).Draw(t, "place"),
		rapid.Float64Range(0, 1).Draw(t, "feed"),
	}
}

// angle is the signed angle from a to b about the axis.
func angle(a, b, axis r3.Vec) float64 {
	return math.Atan2(r3.Dot(r3.Cross(a, b), axis), r3.Dot(a, b))
}

// The angles from the planes that define them: rake face through lip and
// helix, flank as tangent plane, cutting direction along the point's path.
func TestEdgeByVectors(t *testing.T) {
	testkit.Property(t, "inclination, rake and clearance are those of the planes that define them", func(t *rapid.T) {
		c := drawEdge(t)
		f := c.flank()
		e := point.NewEdge(f, c.helix)
		x, y := math.Sqrt(c.r*c.r-c.w*c.w/4), c.w/2
		lip := r3.Vec{X: math.Sin(c.k), Z: -math.Cos(c.k)}
		turning := r3.Vec{X: -y / c.r, Y: x / c.r}
		helix := r3.Add(r3.Scale(2*c.r/c.d*math.Tan(c.helix), turning), r3.Vec{Z: 1})
		face := r3.Unit(r3.Cross(lip, helix))
		flank := r3.Unit(r3.Vec{X: 1 / math.Tan(c.k), Y: -f.Slope(), Z: 1})
		square := func(v r3.Vec) r3.Vec { return r3.Sub(v, r3.Scale(r3.Dot(v, lip), lip)) }
		// square to the lip, the rake face at zero rake has its normal along
		// the motion, and the flank at zero clearance across it
		rake := func(v r3.Vec) float64 { return angle(r3.Scale(-1, face), square(v), lip) }
		clearance := angle(square(turning), flank, lip) - math.Pi/2

		near(t, "inclination", e.Inclination(c.r), math.Asin(math.Abs(r3.Dot(lip, turning))), 1e-9)
		near(t, "normal rake", e.NormalRake(c.r), rake(turning), 1e-9)
		path := r3.Add(turning, r3.Vec{Z: c.feed / (2 * math.Pi * c.r)})
		near(t, "working rake", e.WorkingRake(c.r, c.feed), rake(path), 1e-9)
		near(t, "no feed", e.WorkingRake(c.r, 0), e.NormalRake(c.r), 1e-9)
		near(t, "normal clearance", e.NormalClearance(c.r), clearance, 1e-9)
	})
}

func TestRakeZero(t *testing.T) {
	testkit.Property(t, "the rake is zero where it is said to be, and positive outside", func(t *rapid.T) {
		c := drawEdge(t)
		e := point.NewEdge(c.flank(), c.helix)
		r := e.RakeZero()
		if math.IsNaN(r) {
			if c.helix > 0 && e.NormalRake(c.d/2) > 0 && e.NormalRake(c.w/2*1.0001) < 0 {
				t.Fatalf("rake changes sign along the lip but no zero is found")
			}
			return
		}
		near(t, "rake there", e.NormalRake(r), 0, 1e-9)
		if r < c.d/2*0.999 && !(e.NormalRake(r*1.0005) > 0) {
			t.Fatal("rake is not positive outside the zero")
		}
	})
	if r := point.NewEdge(point.NewFlank(10, 1.5, 1, 0.2), 0).RakeZero(); !math.IsNaN(r) {
		t.Errorf("a straight flute has zero rake at %g", r)
	}
}

func TestEdgeRefusesTheImpossible(t *testing.T) {
	f := point.NewFlank(10, 1.5, 59*deg, 12*deg)
	good := point.NewEdge(f, 30*deg)
	for name, got := range map[string]float64{
		"inclination at the foot": good.Inclination(0.75),
		"rake outside":            good.NormalRake(6),
		"helix 90":                point.NewEdge(f, math.Pi/2).NormalRake(5),
		"helix 90, working":       point.NewEdge(f, math.Pi/2).WorkingRake(5, 0.1),
		"working at the foot":     good.WorkingRake(0.75, 0.1),
		"working, negative feed":  good.WorkingRake(3, -0.1),
		"normal clearance inside": good.NormalClearance(0.5),
		"no flank":                point.NewEdge(point.Flank{}, 0.5).Inclination(1),
		"no flank, zero rake":     point.NewEdge(point.Flank{}, 0.5).RakeZero(),
		"chisel rake, flat":       point.ChiselRake(math.Pi/2, 1),
		"chisel rake, no angle":   point.ChiselRake(1, 0),
		"indentation, no feed":    point.IndentationRadius(-1, 1, 1),
		"indentation, no angle":   point.IndentationRadius(0.1, 1, math.Pi),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %g, want NaN", name, got)
		}
	}
}
