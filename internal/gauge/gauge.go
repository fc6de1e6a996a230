// Package gauge works out what the gauges leave uncertain: how far each figure
// of a calculation may be off, given what caliper, protractor and indicator can
// resolve.
package gauge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/figure"
	"evenlip/internal/quantity"
)

// Coverage is the factor of the expanded uncertainty.
const Coverage = 2

// Calculation makes the sheet of a drill.
type Calculation func(*drill.Drill) *figure.Sheet

// Standard returns the standard uncertainty of a reading on a gauge that
// resolves r: r / (2 sqrt 3), the reading being anywhere in the step with equal
// chance. Source: JCGM 100:2008, 4.3.7 and F.2.2.1.
func Standard(r float64) float64 { return r / (2 * math.Sqrt(3)) }

// Expanded returns the expanded uncertainty of a sum of independent
// contributions: 2 sqrt(sum of squares). Source: JCGM 100:2008, 5.1.2 and 6.2.1.
func Expanded(contributions ...float64) float64 {
	sum := 0.0
	for _, c := range contributions {
		sum += c * c
	}
	return Coverage * math.Sqrt(sum)
}

// Spread gives every figure of s, the sheet of d, its expanded uncertainty:
//
//	U = 2 sqrt( sum over readings of (df/dx u(x))^2 )
//
// to the first order, the readings independent (JCGM 100:2008, 5.1.2), and
// leaves in Mostly the reading that adds most. The slopes are taken by
// computing again with each reading moved by u. Gauges not named (zero)
// claim nothing: their readings count as exact, and so do the drill's nominal
// size and whatever is set and not measured.
func Spread(d *drill.Drill, g quantity.Gauges, s *figure.Sheet, again Calculation) {
	s.Gauged = true
	var total, most []float64
	s.Each(func(*figure.Figure) { total, most = append(total, 0), append(most, 0) })
	for _, r := range drill.All() {
		u := Standard(resolution(g, r))
		if u == 0 {
			continue
		}
		for i := range d.Values(r) {
			shifts := shift(d, r, i, u, s, again)
			n := 0
			s.Each(func(f *figure.Figure) {
				c := shifts[n]
				total[n] += c * c
				if c > most[n] {
					most[n], f.Mostly = c, r.String()
				}
				n++
			})
		}
	}
	n := 0
	s.Each(func(f *figure.Figure) {
		f.Spread = Coverage * math.Sqrt(total[n])
		n++
	})
}

// shift returns what one standard uncertainty u of reading r, value i, moves
// each figure by (JCGM 100:2008, 5.1.3, note 2). At a kink, where the two sides
// differ, the larger one counts; a figure picked from a list moves by a whole
// step or not at all.
func shift(d *drill.Drill, r drill.Reading, i int, u float64, s *figure.Sheet, again Calculation) []float64 {
	up, down := values(again(d.Nudged(r, i, u))), values(again(d.Nudged(r, i, -u)))
	var out []float64
	s.Each(func(f *figure.Figure) {
		above, below := math.Abs(up[f.Key]-f.Value), math.Abs(f.Value-down[f.Key])
		c := math.Max(orZero(above), orZero(below))
		out = append(out, c)
	})
	return out
}

func orZero(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

func values(s *figure.Sheet) map[string]float64 {
	out := map[string]float64{}
	s.Each(func(f *figure.Figure) {
		if f.Word == "" {
			out[f.Key] = f.Value
		} else {
			out[f.Key] = math.NaN()
		}
	})
	return out
}

// resolution is what the gauge behind a reading resolves; zero where none does.
func resolution(g quantity.Gauges, r drill.Reading) float64 {
	if r == drill.Size {
		return 0
	}
	switch r.Spec().Gauge {
	case quantity.Caliper:
		return g.Caliper
	case quantity.Protractor:
		return g.Protractor
	case quantity.Indicator:
		return g.Indicator
	}
	return 0
}
