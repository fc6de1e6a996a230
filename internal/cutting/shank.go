package cutting

import (
	"cmp"
	"math"
)

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

// Shank is a drill's shank under its torque.
type Shank struct {
	Drill, Diameter float64 // mm; the thinnest section, a Morse taper's small end
	Torque          float64 // N m
	Allowed         float64 // torsional stress, MPa
}

// ShankResult is what a shank's load comes to.
type ShankResult struct {
	Stress  float64 // MPa
	Share   float64 // of the allowed stress
	Holds   bool
	Reduced bool    // thinner than the drill's body
	Least   float64 // smallest shank that holds, mm
}

// Result compares the torque with what the shank carries. A shank that does not
// hold wants a lighter feed, a pilot hole or a thicker shank. A
// *point.DomainError names an impossible input.
func (s Shank) Result() (ShankResult, error) {
	if err := cmp.Or(
		wantsPositive("drill diameter", s.Drill),
		wantsPositive("shank diameter", s.Diameter),
		wantsPositive("torque", s.Torque),
		wantsPositive("allowed stress", s.Allowed),
	); err != nil {
		return ShankResult{}, err
	}
	stress := ShankStress(s.Torque, s.Diameter)
	return ShankResult{
		Stress:  stress,
		Share:   stress / s.Allowed,
		Holds:   stress <= s.Allowed*(1+1e-9),
		Reduced: s.Diameter < s.Drill,
		Least:   LeastShank(s.Torque, s.Allowed),
	}, nil
}
