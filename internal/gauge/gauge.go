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

// Spread gives every figure of s, the sheet of d, and every number of its lists
// its expanded uncertainty:
//
//	U = 2 sqrt( sum over readings of (df/dx u(x))^2 )
//
// to the first order, the readings independent (JCGM 100:2008, 5.1.2), and
// leaves in a figure's Mostly the reading that adds most. The slopes are taken by
// computing again with each reading moved by u. Gauges not named (zero)
// claim nothing: their readings count as exact, and so do the drill's nominal
// size and whatever is set and not measured.
func Spread(d *drill.Drill, g quantity.Gauges, s *figure.Sheet, again Calculation) {
	s.Gauged = true
	var total, most []float64
	s.Numbers(func(figure.Number) { total, most = append(total, 0), append(most, 0) })
	for _, r := range drill.All() {
		u := Standard(resolution(g, r))
		if u == 0 {
			continue
		}
		for i := range d.Values(r) {
			up, down := values(again(d.Nudged(r, i, u))), values(again(d.Nudged(r, i, -u)))
			at := 0
			s.Numbers(func(n figure.Number) {
				c := shift(up, n, down)
				total[at] += c * c
				if c > most[at] {
					most[at] = c
					if n.Mostly != nil {
						*n.Mostly = r.String()
					}
				}
				at++
			})
		}
	}
	at := 0
	s.Numbers(func(n figure.Number) {
		*n.Spread = Coverage * math.Sqrt(total[at])
		at++
	})
}

// shift returns what one standard uncertainty of a reading moves a number by,
// given the numbers with the reading that much up and down (JCGM 100:2008, 5.1.3,
// note 2). At a kink, where the two sides differ, the larger one counts; a number
// picked from a list moves by a whole step or not at all. A row that is not there
// when the reading is moved says nothing.
func shift(up map[figure.Place]float64, n figure.Number, down map[figure.Place]float64) float64 {
	most := 0.0
	for _, moved := range [...]map[figure.Place]float64{up, down} {
		if v, ok := moved[n.Place]; ok && math.Abs(v-n.Value) > most {
			most = math.Abs(v - n.Value)
		}
	}
	return most
}

func values(s *figure.Sheet) map[figure.Place]float64 {
	out := map[figure.Place]float64{}
	s.Numbers(func(n figure.Number) { out[n.Place] = n.Value })
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
