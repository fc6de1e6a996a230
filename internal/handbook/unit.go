package handbook

import (
	"math"
	"strconv"
)

// InchMM is the inch, exactly 25.4 mm by definition.
const InchMM = 25.4

const deg = math.Pi / 180

// cell prints a published figure without adding or losing digits.
func cell(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
