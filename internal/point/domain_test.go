package point_test

import (
	"math"
	"testing"

	"evenlip/internal/point"
)

// An angle past its end, on either side, gives no number: a sine would.
func TestAnglesPastTheirEnd(t *testing.T) {
	const deg = math.Pi / 180
	flank := point.NewFlank(12, 2, 59*deg, 12*deg)
	for _, a := range []float64{-100, -90, 90, 100} {
		if v := point.NewFlank(12, 2, 59*deg, a*deg).Clearance(3); !math.IsNaN(v) {
			t.Errorf("a clearance of %g degrees at the corner makes %g", a, v)
		}
		if v := point.NewEdge(flank, a*deg).NormalRake(3); !math.IsNaN(v) {
			t.Errorf("a helix of %g degrees makes a rake of %g", a, v)
		}
		if v := point.OffsetOfHeight(0.1, a*deg); !math.IsNaN(v) {
			t.Errorf("lips at %g degrees put the point %g off", a, v)
		}
	}
	if v := point.OffsetOfHeight(0.1, 59*deg); !(v > 0) {
		t.Errorf("lips at 59 degrees put the point %g off", v)
	}
	if v := point.NewEdge(flank, -30*deg).NormalRake(3); math.IsNaN(v) {
		t.Error("a left-hand helix is refused")
	}
}
