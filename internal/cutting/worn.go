package cutting

import (
	"math"

	"evenlip/internal/handbook"
)

// edgeRadius, mm, is that of a sharp lip.
const edgeRadius = 0.01

// WornThrust returns the thrust, N, of a drill of diameter d whose worn land is on
// average land wide, in cast iron of that hardness, N/mm2 (150 HB is 1471):
//
//	T = H d (0.325 f + 0.1242 w + 0.755 r + 0.0022 d)
//
// with r = 0.01 the radius of the lip's edge, all lengths mm. Domain: d, feed and
// hardness > 0, land >= 0; NaN outside. Source: Subramanian and Cook, J. Eng. Ind.
// 99(2), 1977, 295-301.
func WornThrust(d, feed, land, hardness float64) float64 {
	if !(d > 0 && feed > 0 && land >= 0 && hardness > 0) {
		return math.NaN()
	}
	k := handbook.WornThrust
	return hardness * d * (k.Feed*feed + k.Land*land + k.Edge*edgeRadius + k.Diameter*d)
}

// WornTorque returns the torque, N m, of the drill of [WornThrust]:
//
//	M = H d^2 (0.125 f + 0.0487 w + 0.289 r)
func WornTorque(d, feed, land, hardness float64) float64 {
	if !(d > 0 && feed > 0 && land >= 0 && hardness > 0) {
		return math.NaN()
	}
	k := handbook.WornTorque
	return hardness * d * d * (k.Feed*feed + k.Land*land + k.Edge*edgeRadius) / 1000
}

// WearFactors returns what a worn land, mm, does to thrust and torque, 1 where there
// is none: the quotients of [WornThrust] and [WornTorque] with the land and without.
func WearFactors(d, feed, land float64) (thrust, torque float64) {
	return WornThrust(d, feed, land, 1) / WornThrust(d, feed, 0, 1), WornTorque(d, feed, land, 1) / WornTorque(d, feed, 0, 1)
}
