package point_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// wheel sweeps the wheel face about the swing axis and gives the lowest that
// it passes over (x, y): the ground surface without any cone's equation.
type wheel struct{ vertex, axis, face r3.Vec }

func newWheel(c point.Cone) wheel {
	p, s := c.Point(), c.Setting()
	sin, cos := math.Sincos(p.HalfAngle)
	face := r3.Unit(r3.Vec{X: cos / sin, Y: -c.Flank().Slope(), Z: 1})
	lip := r3.Vec{X: sin, Z: -cos}
	axis := r3.Sub(r3.Scale(math.Cos(p.SemiAngle), lip), r3.Scale(math.Sin(p.SemiAngle), face))
	return wheel{r3.Vec{X: -s.Vertex, Y: p.Web / 2, Z: s.Vertex * cos / sin}, axis, face}
}

func (w wheel) at(swing, x, y float64) float64 {
	n := r3.Rotate(w.face, swing, w.axis)
	if n.Z <= 1e-9 {
		return math.Inf(1)
	}
	return w.vertex.Z - (n.X*(x-w.vertex.X)+n.Y*(y-w.vertex.Y))/n.Z
}

func (w wheel) lowest(x, y float64) float64 {
	best, at := math.Inf(1), 0.0
	const steps = 720
	for i := range steps {
		if z := w.at(2*math.Pi*float64(i)/steps, x, y); z < best {
			best, at = z, 2*math.Pi*float64(i)/steps
		}
	}
	lo, hi := at-2*math.Pi/steps, at+2*math.Pi/steps
	for range 80 {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if w.at(a, x, y) < w.at(b, x, y) {
			hi = b
		} else {
			lo = a
		}
	}
	return w.at((lo+hi)/2, x, y)
}

func TestConeByTheWheel(t *testing.T) {
	testkit.Property(t, "the cone's height and slopes are those of a wheel face swept through space", func(t *rapid.T) {
		c := drawCone(t)
		p := c.Point()
		w := newWheel(c)
		r := p.D / 2
		x := r * rapid.Float64Range(-0.2, 1).Draw(t, "x")
		y := r * rapid.Float64Range(-0.7, 0.1).Draw(t, "y")
		h := c.Height(x, y)
		if math.IsNaN(h) || math.Abs(h) > 3*p.D {
			t.Skip("not on the cone")
		}
		near(t, "height", h, w.lowest(x, y), 1e-6*p.D)
		near(t, "on the lip", c.Height(math.Abs(x), p.Web/2), -math.Abs(x)/math.Tan(p.HalfAngle), 1e-9*p.D)
		hx, hy := c.Slope(x, y)
		e := 1e-5 * p.D
		tol := 1e-6 * (1 + hx*hx + hy*hy) * (1 + hx*hx + hy*hy)
		near(t, "dz/dx", hx, (c.Height(x+e, y)-c.Height(x-e, y))/(2*e), tol)
		near(t, "dz/dy", hy, (c.Height(x, y+e)-c.Height(x, y-e))/(2*e), tol)
	})
}

// The axes' angle and distance, from the axes as lines in space.
func TestSettingByVectors(t *testing.T) {
	testkit.Property(t, "axis angle and offset are those of two lines in space", func(t *rapid.T) {
		c := drawCone(t)
		w, s := newWheel(c), c.Setting()
		common := r3.Cross(w.axis, r3.Vec{Z: 1})
		near(t, "axis angle", s.AxisAngle, math.Acos(-w.axis.Z), 1e-9)
		near(t, "offset", math.Abs(s.Offset), math.Abs(r3.Dot(w.vertex, r3.Unit(common))), 1e-9*c.Point().D)
	})
}

// The chisel where the two flanks meet: its corner is the place on the lip's
// line nearest the axis where the other flank stops being the lower, and at
// the axis it runs where the difference of the flanks does not change.
func TestChiselWhereFlanksMeet(t *testing.T) {
	testkit.Property(t, "the chisel edge is where the two flanks are level, found by halving", func(t *rapid.T) {
		c := drawCone(t)
		p := c.Point()
		below := func(x float64) float64 { return c.Height(-x, -p.Web/2) - c.Height(x, p.Web/2) }
		const steps = 4000
		start := math.Min(0, p.Web/2*c.Flank().Slope()*math.Tan(p.HalfAngle)*0.999)
		lo := start
		for i := 1; i <= steps; i++ {
			x := start + (p.D-start)*float64(i)/steps
			if below(x) >= 0 {
				hi := x
				for range 60 {
					if mid := (lo + hi) / 2; below(mid) >= 0 {
						hi = mid
					} else {
						lo = mid
					}
				}
				break
			}
			lo = x
		}
		near(t, "chord", c.Chisel(), math.Atan2(p.Web/2, lo), 1e-6)
		near(t, "length", c.ChiselLength(), 2*math.Hypot(lo, p.Web/2), 1e-6*p.D)

		e := 1e-4 * p.Web
		dx := (c.Height(e, 0) - c.Height(-e, 0)) / e
		dy := (c.Height(0, e) - c.Height(0, -e)) / e
		near(t, "tangent", c.ChiselTangent(), math.Atan2(-dx, dy), 1e-6)
		near(t, "rake", c.ChiselRake(), -math.Atan(2/math.Hypot(dx, dy)), 1e-6)
	})
}

func TestHeel(t *testing.T) {
	testkit.Property(t, "the heel falls by the clearance close to the lip, and by the wheel's drop further on", func(t *rapid.T) {
		c := drawCone(t)
		p := c.Point()
		f := c.Flank()
		near(t, "at the corner", f.Clearance(p.D/2), p.Clearance, 1e-12)
		near(t, "on the lip", c.Drop(p.D/2, 0), 0, 1e-9*p.D)
		// toward no turn the heel shows the lip clearance
		near(t, "close behind the lip", math.Tan(c.HeelClearance(p.D/2, 1e-5)), math.Tan(p.Clearance), 1e-3)
		turn := rapid.Float64Range(1, 30).Draw(t, "turn") * deg
		drop := c.Drop(p.D/2, turn)
		if math.IsNaN(drop) {
			return
		}
		near(t, "as an indicator reads", c.HeelClearance(p.D/2, turn), point.ClearanceOfDrop(drop, p.D, turn), 1e-12)
		// an independent height at that place
		at := math.Asin(p.Web/p.D) - turn
		corner := -math.Sqrt(p.D*p.D/4-p.Web*p.Web/4) / math.Tan(p.HalfAngle)
		near(t, "drop by the wheel", drop, corner-newWheel(c).lowest(p.D/2*math.Cos(at), p.D/2*math.Sin(at)), 1e-6*p.D)
	})
}
