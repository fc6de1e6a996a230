// Package gauge works out what the gauges leave uncertain: how far each figure
// of a calculation may be off, given what caliper, protractor and indicator can
// resolve.
package gauge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Coverage is the factor of the expanded uncertainty.
const Coverage = 2

// Calculation makes the sheet of a drill.
type Calculation func(*drill.Drill) *sheet.Sheet

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
//
// Where the readings may lie on either side of a limit, what jumps there has two
// outcomes: a number keeps in Otherwise what it would be on the other side, and its
// uncertainty reaches as far; a word names both, and so does the answer.
func Spread(d *drill.Drill, g quantity.Gauges, s *sheet.Sheet, again Calculation) {
	s.Gauged = true
	t := tried(d, g, again)
	t.spread(s)
	if t.turn(s); len(t.turns) > 0 {
		t.spread(s)
		t.tell(s)
	}
}

// trials are the numbers of a drill's sheet with each reading moved by its standard
// uncertainty, up and down, and the limits in doubt at which some of them jump.
type trials struct {
	drill *drill.Drill
	again Calculation
	moved []trial
	turns []turn
}

type trial struct {
	reading  drill.Reading
	value    int // of the two lips
	by       float64
	up, down numbers
}

type numbers map[sheet.Place]float64

func tried(d *drill.Drill, g quantity.Gauges, again Calculation) *trials {
	t := &trials{drill: d, again: again}
	for _, r := range drill.All() {
		u := Standard(resolution(g, r))
		if u == 0 {
			continue
		}
		for i := range d.Values(r) {
			t.moved = append(t.moved, trial{reading: r, value: i, by: u, up: t.of(d.Nudged(r, i, u)), down: t.of(d.Nudged(r, i, -u))})
		}
	}
	return t
}

// of returns the numbers of a drill's sheet, of which nothing else is kept.
func (t *trials) of(d *drill.Drill) numbers {
	s := t.again(d)
	defer s.Free()
	return numbersOf(s)
}

func numbersOf(s *sheet.Sheet) numbers {
	const usual = 100
	out := make(numbers, usual)
	s.Numbers(func(n sheet.Number) { out[n.Place] = n.Value })
	return out
}

// spread gives every number of s its uncertainty, as far as it is known where the
// numbers jump.
func (t *trials) spread(s *sheet.Sheet) {
	s.Numbers(func(n sheet.Number) {
		total, most, mostly := 0.0, 0.0, ""
		for i := range t.moved {
			m := &t.moved[i]
			c := math.Max(math.Abs(t.shift(n, m.up)), math.Abs(t.shift(n, m.down)))
			total += c * c
			if c > most {
				most, mostly = c, m.reading.String()
			}
		}
		by, finer := t.jump(n.Place)
		if by = math.Abs(by); by > Coverage*most {
			mostly = finer
		}
		*n.Spread = Coverage*math.Sqrt(total) + by
		if n.Mostly != nil {
			*n.Mostly = mostly
		}
	})
}

// shift returns what one standard uncertainty of a reading moves a number by, on one
// side, any jump on the way left out: of the two sides of a kink the larger one
// counts (JCGM 100:2008, 5.1.3, note 2). A number picked from a list moves by a whole
// step or not at all. A row that is not there when the reading is moved says nothing.
func (t *trials) shift(n sheet.Number, moved numbers) float64 {
	v, ok := moved[n.Place]
	if !ok || math.IsNaN(v-n.Value) {
		return 0
	}
	for i := range t.turns {
		if turn := &t.turns[i]; turn.crossed(moved) {
			v -= turn.jumps[n.Place]
		}
	}
	return v - n.Value
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
