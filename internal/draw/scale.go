package draw

import (
	"errors"
	"strconv"
	"strings"
)

// Scale is how large a thing is drawn: 5:1 is five times its size.
type Scale struct{ Paper, Real float64 }

// Factor returns millimetres on paper per millimetre of the drill.
func (s Scale) Factor() float64 { return s.Paper / s.Real }

// String returns the scale as drawings state it: "5:1".
func (s Scale) String() string { return number(s.Paper) + ":" + number(s.Real) }

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// largestScale bounds a scale in both directions.
const largestScale = 1000

var errScale = errors.New("takes a scale such as 5:1, 1:1 or 1:2")

// ParseScale reads a scale: two numbers above zero around a colon.
func ParseScale(text string) (Scale, error) {
	paper, real, ok := strings.Cut(strings.TrimSpace(text), ":")
	if !ok {
		return Scale{}, errScale
	}
	p, err1 := side(paper)
	r, err2 := side(real)
	if err1 != nil || err2 != nil || p/r > largestScale || r/p > largestScale {
		return Scale{}, errScale
	}
	return Scale{p, r}, nil
}

// side reads one side of a scale: digits, and at most one point among them.
func side(text string) (float64, error) {
	text = strings.TrimSpace(text)
	if strings.Trim(text, "0123456789.") != "" || text == "" {
		return 0, errScale
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v > 0) || v > largestScale {
		return 0, errScale
	}
	return v, nil
}

// scales are those of ISO 5455, largest first, carried on by powers of ten.
var scales = [...]Scale{
	{500, 1}, {200, 1}, {100, 1}, {50, 1}, {20, 1}, {10, 1}, {5, 1}, {2, 1}, {1, 1}, {1, 2}, {1, 5}, {1, 10},
}

// papers are the landscape sheets of ISO 216 from A4 up, in millimetres.
var papers = [...]struct {
	name          string
	width, height float64
}{{"A4", 297, 210}, {"A3", 420, 297}, {"A2", 594, 420}, {"A1", 841, 594}, {"A0", 1189, 841}}
