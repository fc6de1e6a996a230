package point_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// The chisel edge walked along its chord: at each step the place beside it
// where the two flanks, as heights, are equal, by halving.
func TestBowByWalkingTheEdge(t *testing.T) {
	testkit.Property(t, "the chisel edge's bow is that of walking the edge where the flanks are level", func(t *rapid.T) {
		c := drawCone(t)
		w := c.Point().Web
		sin, cos := math.Sincos(c.Chisel())
		wide := 1.02 * math.Tan(math.Abs(c.ChiselTangent()-c.Chisel()))
		beside := func(s float64) float64 {
			apart := func(n float64) float64 {
				x, y := s*cos-n*sin, s*sin+n*cos
				return c.Height(x, y) - c.Height(-x, -y)
			}
			lo, hi := -wide*s, wide*s
			for range 60 {
				if mid := (lo + hi) / 2; !(apart(mid) < 0) { // beyond the cone too
					hi = mid
				} else {
					lo = mid
				}
			}
			return math.Abs(lo)
		}
		most, at := 0.0, 0.0
		const steps = 400
		for i := 1; i < steps; i++ {
			s := c.ChiselLength() / 2 * float64(i) / steps
			if b := beside(s); b > most {
				most, at = b, s
			}
		}
		bow, radius, angle := c.ChiselBow()
		near(t, "bow", bow, most, 1e-5*w)
		near(t, "place along the chord", radius*math.Cos(angle-c.Chisel()), at, c.ChiselLength()/2*2/steps+0.02*w)
		near(t, "the place lies on the edge", bow, radius*math.Abs(math.Sin(angle-c.Chisel())), 1e-12*w)
		x, y := radius*math.Cos(angle), radius*math.Sin(angle)
		near(t, "the flanks meet there", c.Height(x, y), c.Height(-x, -y), 1e-9*c.Point().D)
	})
}

// The edge ends at its corner, and a flat flank leaves it straight.
func TestBowOfAFlatFlank(t *testing.T) {
	far, err := plain118.WithVertex(1000)
	if err != nil {
		t.Fatal(err)
	}
	usual := mustVertex(t, plain118, 4.808)
	b, _, _ := usual.ChiselBow()
	if f, _, _ := far.ChiselBow(); !(f < 0.05*b) || !(b > 0.002*usual.ChiselLength()) {
		t.Errorf("the edge departs by %v, and by %v where the flank is all but flat", b, f)
	}
	big := plain118
	big.D, big.Web = 10*big.D, 10*big.Web
	if s, _, _ := mustVertex(t, big, 48.08).ChiselBow(); math.Abs(s/b-10) > 1e-6 {
		t.Errorf("ten times as large it departs by %v, not ten times %v", s, b)
	}
}
