package quantity

import (
	"math"
	"strings"
)

// arcSteps are the marks of degrees, minutes and seconds; a longer one stands before
// one that it begins with.
var arcSteps = [...][]string{
	{degree, "degrees", "degree", "deg"},
	{"'", "minutes", "minute", "min"},
	{`"`, "seconds", "second", "sec"},
}

// arc reads an angle in two steps or more, in degrees: 59°30'15". A hint says that it
// is one, but a wrong one.
func arc(s string) (deg float64, hint string, ok bool) {
	steps, seconds := 0, 0.0
	whole := true // the step before: a part of one ends the angle
	for i, marks := range arcSteps {
		seconds *= 60
		f, n, _ := amount(s)
		rest, marked := cutMark(strings.TrimLeft(s[n:], " "), marks)
		switch {
		case n > 0 && marked:
		case i == 0:
			return 0, "", false
		default:
			continue
		}
		switch {
		case !whole:
			return 0, "only the last step may be a part of one: 59°30.5', not 59.5°30'", false
		case i > 0 && f >= 60:
			return 0, "minutes and seconds of arc stop at 59", false
		}
		seconds += f
		steps++
		whole = f == math.Trunc(f)
		s = strings.TrimLeft(rest, " ")
	}
	return seconds / 3600, "", s == "" && steps > 1
}

func cutMark(s string, marks []string) (rest string, ok bool) {
	for _, m := range marks {
		if len(s) >= len(m) && strings.EqualFold(s[:len(m)], m) {
			return s[len(m):], true
		}
	}
	return s, false
}
