package cutting

import "math"

// ShankStress returns the torsional stress, MPa, at the surface of a solid round
// shank of diameter d mm under a torque in N m: 16 M / (pi d^3). NaN unless the
// torque is not negative and d above zero. Source: torsion of a round bar.
func ShankStress(torque, d float64) float64 {
	return orNaN(notNegative(torque) && positive(d), 16000*torque/(math.Pi*d*d*d))
}

// LeastShank returns the smallest shank, mm, that carries a torque in N m at a
// stress in MPa. NaN unless both are above zero.
func LeastShank(torque, stress float64) float64 {
	return orNaN(positive(torque) && positive(stress), math.Cbrt(16000*torque/(math.Pi*stress)))
}
