package point

import "math"

// ChipShareAlong returns each lip's share of the chip, taken over the whole lip
// from inner to outer, when the drill is held on its axis. At the distance x
// lip 1 takes s(x) = 1/2 + dh(x)/feed of it, from 0 to 1; dh runs in a straight
// line from inner to outer, and so does s before it is cut off, so the mean is
//
//	share 1 = ( G(s_outer) - G(s_inner) ) / ( s_outer - s_inner ),
//	G(s) = ( max(0, s)^2 - max(0, s - 1)^2 ) / 2
//
// and [ChipShare] where both lips have one angle.
// Domain: feed > 0, 0 <= inner < outer, lips with angles in (0, pi/2); NaN
// outside.
func ChipShareAlong(feed float64, l1, l2 Lip, inner, outer float64) (share1, share2 float64) {
	from, to := HeightDifference(l1, l2, inner), HeightDifference(l1, l2, outer)
	if !positive(feed) || !finite(from) || !finite(to) || !(inner >= 0 && inner < outer) {
		return math.NaN(), math.NaN()
	}
	s0, s1 := 0.5+from/feed, 0.5+to/feed
	if math.Abs(s1-s0) < 1e-9 {
		return ChipShare(feed, (from+to)/2)
	}
	share1 = math.Min(1, math.Max(0, (shareSum(s1)-shareSum(s0))/(s1-s0))) // rounding may pass the ends
	return share1, 1 - share1
}

// shareSum is the integral of s cut off at 0 and 1.
func shareSum(s float64) float64 {
	a, b := math.Max(0, s), math.Max(0, s-1)
	return (a*a - b*b) / 2
}
