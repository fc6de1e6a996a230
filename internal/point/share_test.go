package point_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// The lips of 12 mm, web 2.1, chisel 126, feed 0.2, lip 1 0.12 high at the corner.
func shareOf(k1, k2, height float64) point.ShareLine {
	outer := point.AlongLip(6, 2.1)
	inner := point.AlongLip(point.ChiselLength(2.1, point.Acute(126*deg))/2, 2.1)
	return point.ShareOf(0.2, point.LipThrough(outer, height, k1*deg), point.LipThrough(outer, 0, k2*deg), inner, outer)
}

// Worked out by a midpoint integral over the radius with the lips as lines in
// space, and by a simulated work surface that the lips cut in turn.
func TestShareOfMetal(t *testing.T) {
	apart := testkit.Against(t, testkit.Derived, "share of the metal, 12 mm, web 2.1 mm, chisel 126°, 0.12 mm high, feed 0.2 mm")
	apart.Within("60° and 58°", shareOf(60, 58, 0.12).Metal(), 0.640603401285, 1e-9, "")
	apart.Within("59.5° and 58.5°", shareOf(59.5, 58.5, 0.12).Metal(), 0.859212208789, 1e-9, "")
	apart.Within("59° each", shareOf(59, 59, 0.05).Metal(), 0.75, 1e-12, "")
}

// Second computation: rings of metal summed place by place over the radius.
func TestShareOfMetalIsTheSumOfRings(t *testing.T) {
	testkit.Property(t, "the share of the metal is the sum of rings over the radius", func(t *rapid.T) {
		k1 := rapid.Float64Range(45, 75).Draw(t, "k1") * deg
		k2 := rapid.Float64Range(45, 75).Draw(t, "k2") * deg
		web, feed := rapid.Float64Range(0.5, 3).Draw(t, "web"), rapid.Float64Range(0.02, 0.5).Draw(t, "feed")
		outer, inner := point.AlongLip(6, web), rapid.Float64Range(0, 2).Draw(t, "inner")
		l1, l2 := point.LipThrough(outer, rapid.Float64Range(-0.3, 0.3).Draw(t, "height"), k1), point.LipThrough(outer, 0, k2)
		got := point.ShareOf(feed, l1, l2, inner, outer).Metal()
		from, rings := math.Hypot(inner, web/2), 20000
		sum, whole := 0.0, 0.0
		for i := range rings {
			r := from + (6-from)*(float64(i)+0.5)/float64(rings)
			dh := point.HeightDifference(l1, l2, point.AlongLip(r, web))
			sum += r * math.Min(1, math.Max(0, 0.5+dh/feed))
			whole += r
		}
		if math.Abs(got-sum/whole) > 1e-4 {
			t.Fatalf("share %g, summed %g", got, sum/whole)
		}
		swapped := point.ShareOf(feed, l2, l1, inner, outer).Metal()
		if math.Abs(swapped+got-1) > 1e-9 {
			t.Fatalf("shares %g and %g", got, swapped)
		}
	})
}

// With unequal angles one lip does the work and dulls early, even where both
// corners are level.
func TestSteeperLipCutsAlone(t *testing.T) {
	l1, l2 := point.LipThrough(5, 0, 65*deg), point.LipThrough(5, 0, 53*deg)
	trade := testkit.Against(t, testkit.Trade, "lips of unequal angles, level at the corner: one does the work")
	trade.Below("the blunter lip's share", point.ShareOf(0.2, l1, l2, 1, 5).Metal(), 0.1, "")
}

func TestShareOutsideItsDomain(t *testing.T) {
	l := point.Lip{Height0: 0, HalfAngle: 1}
	none := point.Lip{Height0: math.NaN(), HalfAngle: 1}
	for _, c := range []struct {
		name               string
		feed, inner, outer float64
		lip                point.Lip
	}{{"no feed", 0, 1, 5, l}, {"feed backward", -0.2, 1, 5, l}, {"ends crossed", 0.2, 5, 1, l}, {"ends alike", 0.2, 3, 3, l}, {"no lip", 0.2, 1, 5, none}} {
		if share := point.ShareOf(c.feed, c.lip, l, c.inner, c.outer).Metal(); !math.IsNaN(share) {
			t.Errorf("%s: %g", c.name, share)
		}
	}
}
