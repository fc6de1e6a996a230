package spindle

import "strconv"

// trim writes v in full.
func trim(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// whole writes v to the nearest whole number.
func whole(v float64) string { return strconv.FormatFloat(v, 'f', 0, 64) }
