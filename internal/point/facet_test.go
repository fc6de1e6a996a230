package point_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

func TestFacets(t *testing.T) {
	g := point.NewFlank(1, 0.15, 59*deg, 12*deg).Slope()
	apart := testkit.Against(t, testkit.Derived, "chisel of flat facets at 118°, clearance 12°, by brute force")
	apart.Within("one facet", point.Obtuse(point.FacetChisel(g, 59*deg))/deg, 101.6, 0.2, "°")
	apart.Within("second facet of 30°", point.Obtuse(point.TwoFacetChisel(g, math.Tan(30*deg), 59*deg))/deg, 120.263, 0.0005, "°")
	near(t, "no slope", point.FacetChisel(0, 59*deg), 90*deg, 1e-12)
}

// The chisel of a two-facet point where the two flanks' heights are equal on
// the line of a lip, found by halving.
func TestTwoFacetChiselByHeights(t *testing.T) {
	testkit.Property(t, "a two-facet chisel is where the flanks are level, found by halving", func(t *rapid.T) {
		k := rapid.Float64Range(30, 80).Draw(t, "k") * deg
		g1 := rapid.Float64Range(0.01, 0.5).Draw(t, "g1")
		g2 := rapid.Float64Range(0.01, 2).Draw(t, "g2")
		const w = 1.5
		h := func(x, y float64) float64 {
			return -x/math.Tan(k) + g1*(math.Max(y, 0)-w/2) + g2*math.Min(y, 0)
		}
		lo, hi := 0.0, 1e3
		for range 200 {
			if mid := (lo + hi) / 2; h(-mid, -w/2) < h(mid, w/2) {
				lo = mid
			} else {
				hi = mid
			}
		}
		near(t, "chisel", point.TwoFacetChisel(g1, g2, k), math.Atan2(w/2, lo), 1e-9)
	})
}

func TestSecondFacet(t *testing.T) {
	testkit.Property(t, "the second facet found gives the chisel wanted, or the refusal holds", func(t *rapid.T) {
		k := rapid.Float64Range(20, 85).Draw(t, "k") * deg
		g1 := rapid.Float64Range(-0.1, 0.5).Draw(t, "g1")
		psi := rapid.Float64Range(5, 90).Draw(t, "psi") * deg
		g2, err := point.SecondFacet(g1, k, math.Pi-psi)
		var far *point.UnreachableError
		switch {
		case errors.As(err, &far):
			if !(psi > far.High) || far.Low != 0 {
				t.Fatalf("refused %g, though %g to %g is said to be in reach", psi, far.Low, far.High)
			}
		case err != nil:
			t.Fatal(err)
		default:
			near(t, "chisel", point.TwoFacetChisel(g1, g2, k), psi, 1e-9)
		}
	})
}

func TestFacetsRefuseTheImpossible(t *testing.T) {
	for name, got := range map[string]float64{
		"rising facet":  point.FacetChisel(-0.1, 1),
		"flat end":      point.FacetChisel(0.1, math.Pi/2),
		"rising facets": point.TwoFacetChisel(-0.2, 0.1, 1),
		"NaN":           point.TwoFacetChisel(math.NaN(), 0.1, 1),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %g, want NaN", name, got)
		}
	}
	second := func(g1, k, angle float64) error {
		_, err := point.SecondFacet(g1, k, angle)
		return err
	}
	domainError(t, second(math.NaN(), 1, 1), "slope of the first facet")
	domainError(t, second(0.1, 0, 1), "half point angle")
	domainError(t, second(0.1, 1, math.Pi), "chisel-edge angle")
	// 101.6 degrees is all that one facet of 12 degrees gives; 95 would need
	// the second facet above the first
	g := point.NewFlank(1, 0.15, 59*deg, 12*deg).Slope()
	unreachable(t, second(g, 59*deg, 95*deg), "chisel-edge angle")
}

// unreachable fails the test unless err says that the wish is out of reach.
func unreachable(t *testing.T, err error, wish string) *point.UnreachableError {
	t.Helper()
	var e *point.UnreachableError
	if !errors.As(err, &e) || e.Wish != wish || e.Error() == "" {
		t.Fatalf("error %v, want the %s out of reach", err, wish)
	}
	return e
}
