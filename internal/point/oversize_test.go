package point_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// The hole comes out about twice the lip-height difference too large. The bound
// is under that at 118 degrees and over it at 135.
func TestOversizeAboutTwiceTheDifference(t *testing.T) {
	bound := func(pointAngle float64) float64 {
		k := pointAngle / 2 * math.Pi / 180
		return point.OversizeOfLips(point.OffsetOfHeight(0.1, k), 0.1, k, k)
	}
	trade := testkit.Against(t, testkit.Trade, "oversize about twice the lip-height difference, of uneven lips")
	trade.Below("bound at 118°, of 0.1 mm", bound(118), 0.2, "mm")
	trade.Above("bound at 135°, of 0.1 mm", bound(135), 0.2, "mm")
}

// Second computation: moving the drill sideways by half the bound brings the
// outer corners to one height, or the point onto the axis, whichever is more.
func TestOversizeBringsCornersLevel(t *testing.T) {
	testkit.Property(t, "half the bound on oversize levels the corners or brings the point to the axis", func(t *rapid.T) {
		k1 := rapid.Float64Range(40, 75).Draw(t, "k1") * math.Pi / 180
		k2 := rapid.Float64Range(40, 75).Draw(t, "k2") * math.Pi / 180
		u := rapid.Float64Range(-0.5, 0.5).Draw(t, "offset")
		const x = 6.0
		l1, l2 := point.Lip{Height0: u / math.Tan(k1), HalfAngle: k1}, point.Lip{Height0: -u / math.Tan(k2), HalfAngle: k2}
		dh := point.HeightDifference(l1, l2, x)
		got := point.OversizeOfLips(u, dh, k1, k2) / 2
		// Turning about a place s along lip 1, the lips are cut at x + s and x - s.
		s := math.Copysign(got, dh)
		level := l1.At(x+s) - l2.At(x-s)
		if math.Abs(got-math.Abs(u)) > 1e-9 && math.Abs(level) > 1e-9 {
			t.Fatalf("half the bound %g is neither the offset %g nor levels the corners (%g apart)", got, u, level)
		}
		if got < math.Abs(u)-1e-12 {
			t.Fatalf("half the bound %g is under the offset %g", got, u)
		}
	})
}
