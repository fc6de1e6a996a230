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
		g2, alone := point.SecondFacet(g1, k, math.Pi-psi), point.FacetChisel(g1, k)
		if psi > alone {
			if !math.IsNaN(g2) {
				t.Fatalf("a second facet of %g above the first", g2)
			}
			return
		}
		near(t, "chisel", point.TwoFacetChisel(g1, g2, k), psi, 1e-9)
	})
}

func TestFacetsRefuseTheImpossible(t *testing.T) {
	for name, got := range map[string]float64{
		"rising facet":  point.FacetChisel(-0.1, 1),
		"flat end":      point.FacetChisel(0.1, math.Pi/2),
		"rising facets": point.TwoFacetChisel(-0.2, 0.1, 1),
		"NaN":           point.TwoFacetChisel(math.NaN(), 0.1, 1),

		"second, of no slope":     point.SecondFacet(math.NaN(), 1, 1),
		"second, flat end":        point.SecondFacet(0.1, 0, 1),
		"second, no chisel":       point.SecondFacet(0.1, 1, math.Pi),
		"second, above the first": point.SecondFacet(point.NewFlank(1, 0.15, 59*deg, 12*deg).Slope(), 59*deg, 95*deg), // 101.6° is all that one gives
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %g, want NaN", name, got)
		}
	}
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
