package cutting

import "math"

// ByConstant returns thrust, N, and torque, N m, of a sharp drill of diameter d by a
// second published way, which knows no chisel edge but one constant K of the work:
//
//	T = 570 K d f^0.85    M = K d^2 (0.630 + 16.84 f) / 100
//
// with d mm and feed mm per revolution. Domain: all above zero; NaN outside. Source:
// common practice.
func ByConstant(k, d, feed float64) (thrust, torque float64) {
	if !positive(k) || !positive(d) || !positive(feed) {
		return math.NaN(), math.NaN()
	}
	return 570 * k * d * math.Pow(feed, 0.85), k * d * d * (0.630 + 16.84*feed) / 100
}
