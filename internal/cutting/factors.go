package cutting

import "math"

// PrintedRatio is the largest chisel ratio c/D in the handbook's table; beyond
// it the brackets carry the trend on without a measurement behind them.
const PrintedRatio = 0.40

// Factors are the chisel-edge factors of torque and thrust for one chisel
// ratio q = c/D (chisel-edge length over diameter).
type Factors struct {
	A    float64 // of torque
	B    float64 // of thrust, the part that goes with the feed
	J    float64 // of thrust, the part that the chisel needs to indent
	Lips float64 // the lips' part of B; the rest is the chisel's
}

// FactorsOf returns the chisel-edge factors for q = c/D, 0 <= q < 1:
//
//	A = (1 - q^2)/(1 + q)^0.2 + 3.2 q^1.8
//	B = (1 - q)/(1 + q)^0.2 + 2.2 q^0.8
//	J = q^2
//
// All are NaN outside that domain. The brackets are Shaw and Oxford's (1957);
// they give the Machinery's Handbook's Table 7 (31st ed., p. 1152), which runs
// from 0.03 to [PrintedRatio].
func FactorsOf(q float64) Factors {
	f := FactorsOverPilot(q)
	f.A += 3.2 * math.Pow(q, 1.8)
	f.B += 2.2 * math.Pow(q, 0.8)
	f.J += q * q
	return f
}

// FactorsOverPilot returns the factors of lips that cut from a hole of diameter
// q D out to D, with no chisel edge at work: the first terms of the brackets of
// [FactorsOf], and J = 0. All are NaN unless 0 <= q < 1.
func FactorsOverPilot(q float64) Factors {
	if !part(q) {
		nan := math.NaN()
		return Factors{nan, nan, nan, nan}
	}
	crowd := math.Pow(1+q, 0.2)
	lips := (1 - q) / crowd
	return Factors{A: (1 - q*q) / crowd, B: lips, J: 0, Lips: lips}
}
