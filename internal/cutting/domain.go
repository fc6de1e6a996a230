package cutting

import "math"

// finite reports whether v is a number.
func finite(v float64) bool { return v-v == 0 }

// positive reports whether v is a number above zero.
func positive(v float64) bool { return v > 0 && finite(v) }

// notNegative reports whether v is a number, zero or above.
func notNegative(v float64) bool { return v >= 0 && finite(v) }

// part reports whether v lies in 0 to 1, the upper end left out.
func part(v float64) bool { return v >= 0 && v < 1 }

// orNaN returns v if ok, else NaN.
func orNaN(ok bool, v float64) float64 {
	if ok {
		return v
	}
	return math.NaN()
}
