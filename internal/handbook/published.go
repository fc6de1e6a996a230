package handbook

import "math"

// nan stands for a figure that nobody has published.
var nan = math.NaN()

// span is a published range in the unit of its table; the zero span stands for
// "not published".
type span [2]float64

func (s span) given() bool { return s != span{} }

// String prints the range as a table does: "118", "118-135", or a dash.
func (s span) String() string {
	switch {
	case !s.given():
		return "-"
	case s[0] == s[1]:
		return cell(s[0])
	}
	return cell(s[0]) + "-" + cell(s[1])
}

// band returns the range times unit, with its source; both ends NaN and no
// source when nothing is published.
func (s span) band(unit float64, source *Source) Band {
	if !s.given() {
		return Band{nan, nan, nil}
	}
	return Band{s[0] * unit, s[1] * unit, source}
}

// wholeDegrees prints an angle in radians that was published in whole degrees.
func wholeDegrees(v float64) string { return cell(math.Round(v / deg)) }
