package point

import (
	"math"
	"strconv"
)

// DomainError says that one quantity has a value no drill point can have.
type DomainError struct {
	Quantity string  // what was given, in the trade's words
	Why      string  // what the quantity must be
	Value    float64 // what was given, in millimetres or radians
}

// Error names the quantity, its value and what it must be.
func (e *DomainError) Error() string {
	return e.Quantity + " " + strconv.FormatFloat(e.Value, 'g', 6, 64) + ": " + e.Why
}

// requirePositive returns a [*DomainError] unless v is positive and finite.
func requirePositive(quantity string, v float64) error {
	if positive(v) {
		return nil
	}
	return &DomainError{quantity, "must be greater than zero and finite", v}
}

// requireFinite returns a [*DomainError] unless v is a finite number.
func requireFinite(quantity string, v float64) error {
	if finite(v) {
		return nil
	}
	return &DomainError{quantity, "must be a finite number", v}
}

// requireHalfAngle returns a [*DomainError] unless k lies in (0, pi/2).
func requireHalfAngle(quantity string, k float64) error {
	if between(k, 0, math.Pi/2) {
		return nil
	}
	return &DomainError{quantity, "must lie between 0 and 90 degrees", k}
}

// requireWeb returns a [*DomainError] unless 0 < web < d.
func requireWeb(d, web float64) error {
	if err := requirePositive("diameter", d); err != nil {
		return err
	}
	if between(web, 0, d) {
		return nil
	}
	return &DomainError{"web thickness", "must be greater than zero and less than the diameter", web}
}

// finite reports whether v is neither NaN nor infinite.
func finite(v float64) bool { return v-v == 0 }

// positive reports whether v is finite and above zero.
func positive(v float64) bool { return v > 0 && finite(v) }

// notNegative reports whether v is finite and not below zero.
func notNegative(v float64) bool { return v >= 0 && finite(v) }

// between reports whether lo < v < hi; it is false for NaN.
func between(v, lo, hi float64) bool { return v > lo && v < hi }

// cot is the cotangent.
func cot(a float64) float64 { return 1 / math.Tan(a) }

// UnreachableError says that one of several wishes cannot be met together with
// the others, and which chisel-edge angles the others leave.
type UnreachableError struct {
	Wish      string  // the wish that cannot be met, in the trade's words
	Why       string  // what stands against it
	Wanted    float64 // its value, in millimetres or radians
	Low, High float64 // acute chisel-edge angles within reach, High excluded; NaN when there are none
}

// Error names the wish, its value and what stands against it.
func (e *UnreachableError) Error() string {
	return e.Wish + " " + strconv.FormatFloat(e.Wanted, 'g', 6, 64) + ": " + e.Why
}
