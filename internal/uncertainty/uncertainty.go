// Package uncertainty works out what gauges leave in doubt: each reading is drawn
// many times within the step of its gauge, everything is worked out for each draw,
// and a Tally of the results gives an interval for each figure and a share for each
// word. This is the Monte Carlo method of JCGM 101:2008. It needs no slopes: a figure
// with a kink or a jump is no special case.
//
//	var tally uncertainty.Tally
//	for i := range uncertainty.N {
//		at := uncertainty.Point(i, len(readings))
//		for k, r := range readings {
//			drill.Move(r, uncertainty.Rectangular(r.Value, r.Step, at[k]))
//		}
//		figures, words = compute(drill)
//		tally.Add(figures, words)
//	}
//	u := tally.Interval(0).U()
//
// The draws are points of a Sobol sequence, always the same: the same readings give
// the same answer.
package uncertainty

import (
	"math"
	"strconv"
	"strings"
)

const (
	// N is how many draws are made.
	N = 512
	// Dims is the most values that can be drawn together.
	Dims = 40
	// Tells is the share of the draws from which on a word is told as certain. It is
	// more than 0.95 by what N draws may be off.
	Tells = 0.96
	// Coverage is the part of a figure's distribution that an Interval holds.
	Coverage = 0.95
)

// Point returns the i-th draw, i from 0 to N-1, of dims values, at most Dims. Each
// value lies between 0 and 1; over the N draws each takes the middle of every N-th
// part once. The slice is shared: it may be read, not changed.
func Point(i, dims int) []float64 { return points()[i][:dims:dims] }

// Rectangular returns the value that lies at a part, from 0 to 1, of the step of a
// gauge around what was read: any value that the gauge shows as the same reading
// has the same chance. Source: JCGM 100:2008, F.2.2.1; JCGM 101:2008, 6.4.2.
func Rectangular(read, step, at float64) float64 { return read + step*(at-0.5) }

// Interval is what a figure lies within with a chance of Coverage, with as much of
// its distribution below as above.
type Interval struct{ Low, High float64 }

// U returns the expanded uncertainty, half the interval's width; zero where the ends
// differ by rounding alone.
func (v Interval) U() float64 {
	const rounding = 1e-12 // a part of the larger end
	width := v.High - v.Low
	if finite(width) && width <= rounding*max(math.Abs(v.Low), math.Abs(v.High)) {
		return 0
	}
	return width / 2
}

// Decimals returns how many decimals U takes to be printed to one significant figure,
// which is all that N draws can tell: 1 for 0.35, 0 for 3, -1 for 26. The ends are
// printed to as many. It is zero where there is no uncertainty, or no finite one.
func (v Interval) Decimals() int {
	_, exponent, _ := strings.Cut(strconv.FormatFloat(v.U(), 'e', 0, 64), "e")
	n, _ := strconv.Atoi(exponent)
	return -n
}

// Rounded returns U to one significant figure, and the ends to the same place.
func (v Interval) Rounded() (u float64, ends Interval) {
	decimals := v.Decimals()
	return round(v.U(), decimals), Interval{round(v.Low, decimals), round(v.High, decimals)}
}

// round rounds to a number of decimals, to tens or hundreds where it is negative.
func round(x float64, decimals int) float64 {
	unit := math.Pow10(max(0, -decimals))
	out, _ := strconv.ParseFloat(strconv.FormatFloat(x/unit, 'f', max(0, decimals), 64), 64)
	return out*unit + 0 // and -0 is 0
}
