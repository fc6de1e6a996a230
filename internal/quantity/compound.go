package quantity

import (
	"math"
	"strings"
)

// level is one step of a quantity written in steps: feet, then inches.
type level struct {
	marks []string // a longer mark stands before one that it begins with
	per   float64  // how many of this step make one of the step before
}

// ladder is the steps of one kind, and the unit that they add up to.
type ladder struct {
	levels  []level
	joiners string  // what may stand between two steps
	whole   float64 // how many of the last step make one unit
	unit    string
}

var degrees = ladder{
	levels: []level{
		{[]string{degree, "degrees", "degree", "deg"}, 0},
		{[]string{"'", "minutes", "minute", "min"}, 60},
		{[]string{`"`, "seconds", "second", "sec"}, 60},
	},
	joiners: " ",
	whole:   3600,
	unit:    degree,
}

var feet = ladder{
	levels: []level{
		{[]string{"'", "feet", "foot", "ft"}, 0},
		{[]string{`"`, "inches", "inch", "in"}, 12},
	},
	joiners: " -",
	whole:   1,
	unit:    "in",
}

// compounds holds the ladder of every kind that has one.
var compounds = [...]*ladder{Length: &feet, Size: &feet, Angle: &degrees}

// compound reads a quantity in two steps or more: 59°30'15", 1' 2-1/2". A hint
// says that it is one, but a wrong one.
func compound(kind Kind, s string) (total float64, hint string, ok bool) {
	if int(kind) >= len(compounds) || compounds[kind] == nil {
		return 0, "", false
	}
	l := compounds[kind]
	steps := 0
	last := false // a step that is no whole number ends the quantity
	for i, lv := range l.levels {
		total *= max(lv.per, 1)
		f, n, fraction := amount(s)
		rest, marked := cutMark(strings.TrimLeft(s[n:], " "), lv.marks)
		if n == 0 || !marked {
			if i == 0 {
				return 0, "", false
			}
			continue
		}
		if steps > 0 && (last || f >= lv.per) {
			return 0, l.fault(last), false
		}
		total += f
		steps++
		last = fraction || f != math.Trunc(f)
		s = cutJoiner(rest, l.joiners)
	}
	return total / l.whole, "", s == "" && steps > 1
}

func (l ladder) fault(broken bool) string {
	switch {
	case broken && l.unit == degree:
		return "only the last step may be a part of one: 59°30.5', not 59.5°30'"
	case broken:
		return "only the inches may be a part of one: 1'2-1/2\""
	case l.unit == degree:
		return "minutes and seconds of arc stop at 59"
	}
	return "inches after feet stop short of 12"
}

func cutMark(s string, marks []string) (rest string, ok bool) {
	for _, m := range marks {
		if len(s) >= len(m) && strings.EqualFold(s[:len(m)], m) {
			return s[len(m):], true
		}
	}
	return s, false
}

// cutJoiner drops at most one hyphen, and any space, between two steps.
func cutJoiner(s, joiners string) string {
	s = strings.TrimLeft(s, " ")
	if strings.Contains(joiners, "-") && len(s) > 1 {
		s = strings.TrimPrefix(s, "-")
	}
	return s
}
