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

// slopes are the slopes of flank 1 over a place in the end view.
type slopes func(x, y float64) (hx, hy float64)

// flatFlank is a plane through the lip that meets its copy in a chisel edge at
// the acute angle psi.
func flatFlank(k, psi float64) slopes {
	return func(float64, float64) (hx, hy float64) { return -1 / math.Tan(k), 1 / (math.Tan(k) * math.Tan(psi)) }
}

// chiselRakeAt is the rake on the chisel edge at one place of it: how far the
// face ahead, which is the other flank, leans back from the plane square to the
// way the place turns, seen along the edge.
func chiselRakeAt(flank slopes, r, angle float64) float64 {
	x, y := r*math.Cos(angle), r*math.Sin(angle)
	hx, hy := flank(x, y)
	ox, oy := flank(-x, -y)
	behind, ahead := r3.Vec{X: -hx, Y: -hy, Z: 1}, r3.Vec{X: ox, Y: oy, Z: 1}
	edge := r3.Unit(r3.Cross(behind, ahead))
	turning := r3.Vec{X: -y, Y: x}
	turning = r3.Unit(r3.Sub(turning, r3.Scale(r3.Dot(turning, edge), edge)))
	face := r3.Unit(r3.Cross(edge, ahead))
	return math.Acos(math.Abs(r3.Dot(face, turning))) - math.Pi/2
}

// onChisel is the acute angle to the lip at which a cone's chisel edge passes
// the radius r: there the flank and its copy are equally high.
func onChisel(t *testing.T, c point.Cone, r float64) float64 {
	apart := func(angle float64) float64 {
		x, y := r*math.Cos(angle), r*math.Sin(angle)
		return c.Height(x, y) - c.Height(-x, -y)
	}
	low, high := c.Chisel()-10*deg, c.Chisel()+10*deg
	if !(apart(low) < 0 && apart(high) > 0) {
		t.Fatalf("the chisel edge of %+v does not pass %g", c.Point(), r)
	}
	for range 60 {
		if mid := (low + high) / 2; apart(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// Common practice: on the chisel edge of a 1/2 in point the rake is -54 to -60
// degrees, and -56 at 0.030 in from the centre, give or take 3. Flat flanks have
// one rake all along it; a cone's grows less negative toward the corners, and at
// a chisel of 125 degrees has left those 3 degrees behind by 0.030 in.
func TestChiselInAction(t *testing.T) {
	const inch = 25.4
	trade := testkit.Against(t, testkit.Trade, "rake on the chisel edge of a 1/2 in point: -54 to -60°, and -56° at 0.030 in out").Because("a cone keeps to it up to a chisel of 120°")
	const place = 0.030 * inch
	for _, c := range []struct{ chisel, allowed float64 }{{115, 3}, {120, 3}, {125, 4}} {
		psi := point.Acute(c.chisel * deg)
		trade.Within(fmt.Sprintf("flat flanks, chisel at %g°, 0.030 in out", c.chisel), chiselRakeAt(flatFlank(59*deg, psi), place, psi)/deg, -56, 3, "°")
		w := point.Wanted{D: 0.5 * inch, Web: 0.071 * inch, HalfAngle: 59 * deg, Clearance: 12 * deg, SemiAngle: 30 * deg}
		cone, err := w.WithChisel(psi)
		if err != nil {
			t.Fatal(err)
		}
		if corner := cone.ChiselLength() / 2; !(place < corner) {
			t.Fatalf("0.030 in is beyond the chisel's corner at %g mm", corner)
		}
		trade.Within(fmt.Sprintf("cone, chisel at %g°, 0.030 in out", c.chisel), chiselRakeAt(cone.Slope, place, onChisel(t, cone, place))/deg, -56, c.allowed, "°")
		trade.Between(fmt.Sprintf("cone, chisel at %g°, on the axis", c.chisel), cone.ChiselRake()/deg, -60, -54, "°")
	}
}

// The rake by the planes of the two flanks.
func TestChiselRakeByPlanes(t *testing.T) {
	testkit.Property(t, "the rake on the chisel edge is that of the two flanks' planes, anywhere on flat ones and at the axis of cones", func(t *rapid.T) {
		k := rapid.Float64Range(30, 80).Draw(t, "k") * deg
		psi := rapid.Float64Range(5, 89).Draw(t, "psi") * deg
		r := rapid.Float64Range(0.01, 10).Draw(t, "r")
		near(t, "flat", point.ChiselRake(k, psi), chiselRakeAt(flatFlank(k, psi), r, psi), 1e-9)
		near(t, "quoted the other way", point.ChiselRake(k, math.Pi-psi), point.ChiselRake(k, psi), 1e-12)
		c := drawCone(t)
		near(t, "cone", c.ChiselRake(), chiselRakeAt(c.Slope, 1e-7*c.Point().D, c.ChiselTangent()), 1e-5)
		// where the feed's slope is that of the flank away from the chisel
		q := point.IndentationRadius(0.2, k, psi)
		near(t, "slope of path", 0.2/(2*math.Pi*q), math.Hypot(flatFlank(k, psi)(0, 0)), 1e-9*(1+0.2/q))
	})
}
