package cutting

import "math"

// ThrustByConstant returns the thrust, N, of a sharp drill of diameter d by a second
// published way, which knows no chisel edge but one constant K of the work:
//
//	T = 570 K d f^0.85
//
// with d mm and feed mm per revolution. Domain: all above zero; NaN outside. Source:
// common practice.
func ThrustByConstant(k, d, feed float64) float64 {
	if !positive(k) || !positive(d) || !positive(feed) {
		return math.NaN()
	}
	return 570 * k * d * math.Pow(feed, 0.85)
}
