package point_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// Second computation: the share summed place by place along the lip.
func TestShareAlongIsTheSumOfPlaces(t *testing.T) {
	testkit.Property(t, "the share of the chip is the sum of its places along the lip", func(t *rapid.T) {
		k1 := rapid.Float64Range(45, 75).Draw(t, "k1") * math.Pi / 180
		k2 := rapid.Float64Range(45, 75).Draw(t, "k2") * math.Pi / 180
		l1, l2 := point.LipThrough(6, rapid.Float64Range(-0.3, 0.3).Draw(t, "height"), k1), point.LipThrough(6, 0, k2)
		feed := rapid.Float64Range(0.02, 0.5).Draw(t, "feed")
		got, rest := point.ChipShareAlong(feed, l1, l2, 1, 6)
		const places = 20000
		sum := 0.0
		for i := range places {
			s, _ := point.ChipShare(feed, point.HeightDifference(l1, l2, 1+5*(float64(i)+0.5)/places))
			sum += s / places
		}
		if got < 0 || got > 1 || rest < 0 || rest > 1 {
			t.Fatalf("shares %g and %g", got, rest)
		}
		if math.Abs(got-sum) > 1e-4 || math.Abs(got+rest-1) > 1e-12 {
			t.Fatalf("share %g and %g, summed %g", got, rest, sum)
		}
		swapped, _ := point.ChipShareAlong(feed, l2, l1, 1, 6)
		if math.Abs(swapped-rest) > 1e-9 {
			t.Fatalf("swapped lips: %g, want %g", swapped, rest)
		}
	})
}

// With unequal angles one lip does the work and dulls early, even where both
// corners are level.
func TestSteeperLipCutsAlone(t *testing.T) {
	deg := math.Pi / 180
	l1, l2 := point.LipThrough(5, 0, 65*deg), point.LipThrough(5, 0, 53*deg)
	share, _ := point.ChipShareAlong(0.2, l1, l2, 1, 5)
	trade := testkit.Against(t, testkit.Trade, "lips of unequal angles, level at the corner: one does the work")
	trade.Below("the blunter lip's share", share, 0.1, "")
}

func TestShareAlongOutsideItsDomain(t *testing.T) {
	l := point.Lip{Height0: 0, HalfAngle: 1}
	none := point.Lip{Height0: math.NaN(), HalfAngle: 1}
	for _, c := range []struct {
		name               string
		feed, inner, outer float64
		lip                point.Lip
	}{{"no feed", 0, 1, 5, l}, {"ends crossed", 0.2, 5, 1, l}, {"no lip", 0.2, 1, 5, none}} {
		if share, rest := point.ChipShareAlong(c.feed, c.lip, l, c.inner, c.outer); !math.IsNaN(share) || !math.IsNaN(rest) {
			t.Errorf("%s: %g and %g", c.name, share, rest)
		}
	}
}
