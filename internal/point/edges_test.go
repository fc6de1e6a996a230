package point_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// A clearance cannot fall past straight down, on either side.
func TestClearanceFallsShortOfUpright(t *testing.T) {
	for name, got := range map[string]float64{
		"feed limit, -115 degrees": point.FeedLimit(3, -2),
		"feed limit, 115 degrees":  point.FeedLimit(3, 2),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %g, want NaN", name, got)
		}
	}
}

// A lip stands between the axis and square to it, and a drill feeds forward.
func TestLipsThatCannotBe(t *testing.T) {
	for name, got := range map[string]float64{
		"oversize, lip 1 flat": point.OversizeOfLips(0.1, 0.1, math.Pi/2, 1), "oversize, lip 2 flat": point.OversizeOfLips(0.1, 0.1, 1, math.Pi/2),
		"oversize, lip 1 past flat": point.OversizeOfLips(0.1, 0.1, 2, 1), "oversize, lip 2 past flat": point.OversizeOfLips(0.1, 0.1, 1, 2),
		"land at more than 90":         point.StockOfFlankLand(0.3, 2, 0),
		"land, all clearance fed away": point.StockOfFlankLand(0.3, 0.2, 0.2),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %g, want NaN", name, got)
		}
	}
}

// Lips of one angle share the chip alike all along: the share is that at any
// place.
func TestShareOfParallelLips(t *testing.T) {
	for _, height := range []float64{0, 0.03, -0.03, 0.2} {
		l1, l2 := point.LipThrough(6, height, 59*deg), point.LipThrough(6, 0, 59*deg)
		want, _ := point.ChipShare(0.2, height)
		near(t, "lip 1", point.ShareOf(0.2, l1, l2, 1, 6).Metal(), want, 1e-9)
	}
}

// A stretch of one place has the clearance of that place.
func TestLeastWorkingAtOnePlace(t *testing.T) {
	f := point.NewFlank(10, 1.5, 59*deg, 12*deg)
	r, least := f.LeastWorking(0.2, 3, 3)
	near(t, "place", r, 3, 0)
	near(t, "clearance", least, f.Working(3, 0.2), 0)
}

func TestVectorsAgainstAnotherLibrary(t *testing.T) {
	testkit.Property(t, "vectors add, scale and multiply as another library's do", func(t *rapid.T) {
		v := func(name string) (point.Vec, r3.Vec) {
			x := rapid.Float64Range(-10, 10)
			a, b, c := x.Draw(t, name+".x"), x.Draw(t, name+".y"), x.Draw(t, name+".z")
			return point.Vec{X: a, Y: b, Z: c}, r3.Vec{X: a, Y: b, Z: c}
		}
		a, A := v("a")
		b, B := v("b")
		s := rapid.Float64Range(-10, 10).Draw(t, "s")
		for what, pair := range map[string][2]r3.Vec{
			"sum": {r3.Vec(a.Add(b)), r3.Add(A, B)}, "difference": {r3.Vec(a.Sub(b)), r3.Sub(A, B)},
			"multiple": {r3.Vec(a.Scale(s)), r3.Scale(s, A)},
		} {
			near(t, what, r3.Norm(r3.Sub(pair[0], pair[1])), 0, 1e-12)
		}
		near(t, "dot product", a.Dot(b), r3.Dot(A, B), 1e-12)
		near(t, "norm", a.Norm(), r3.Norm(A), 1e-12)
	})
}
