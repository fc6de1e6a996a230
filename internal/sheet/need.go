package sheet

import "math"

// Need is a value that a figure hangs on and the reading that gives it.
type Need struct {
	Reading string
	Value   float64
}

// Wanted lists the readings that are still missing, "" when none is.
func Wanted(needs ...Need) string {
	out := ""
	for _, n := range needs {
		if math.IsNaN(n.Value) {
			if out != "" {
				out += " and "
			}
			out += n.Reading
		}
	}
	return out
}

// Known reports whether no value is NaN.
func Known(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) {
			return false
		}
	}
	return true
}
