package cutting

import (
	"math"

	"evenlip/internal/point"
)

// finite reports whether v is a number.
func finite(v float64) bool { return v-v == 0 }

// positive reports whether v is a number above zero.
func positive(v float64) bool { return v > 0 && finite(v) }

// notNegative reports whether v is a number, zero or above.
func notNegative(v float64) bool { return v >= 0 && finite(v) }

// part reports whether v lies in 0 to 1, the upper end left out.
func part(v float64) bool { return v >= 0 && v < 1 }

// wants returns nil if ok, else the error of a quantity with an impossible
// value.
func wants(ok bool, quantity string, v float64, why string) error {
	if ok {
		return nil
	}
	return &point.DomainError{Quantity: quantity, Why: why, Value: v}
}

// wantsPositive returns an error unless v is a number above zero.
func wantsPositive(quantity string, v float64) error {
	return wants(positive(v), quantity, v, "must be greater than zero and finite")
}

// orNaN returns v if ok, else NaN.
func orNaN(ok bool, v float64) float64 {
	if ok {
		return v
	}
	return math.NaN()
}
