package gauge

import (
	"math"

	"evenlip/internal/sheet"
)

// turn is an end of a figure's limit that the readings may lie on either side of,
// and where the sheet is another one beyond it.
type turn struct {
	key    string
	end    sheet.End
	inside bool    // the side on which the readings by themselves are
	slack  float64 // of the distance from the limit, for rounding
	finer  string  // the reading to take on a finer gauge
	// near and far are the sheets just before the limit and just past it.
	near, far *sheet.Sheet
	jumps     numbers
}

// crossed reports whether numbers are those of a drill on the other side.
func (x *turn) crossed(n numbers) bool {
	gap, ok := n[sheet.Place{Key: x.key, End: x.end}]
	if !ok {
		return false
	}
	if x.end == sheet.HighEnd {
		gap = -gap
	}
	return (gap >= -x.slack) != x.inside
}

// jump is the larger of the jumps that a number may make, and the reading to take on
// a finer gauge to tell whether it does.
func (t *trials) jump(p sheet.Place) (by float64, finer string) {
	for i := range t.turns {
		if x := &t.turns[i]; math.Abs(x.jumps[p]) > math.Abs(by) {
			by, finer = x.jumps[p], x.finer
		}
	}
	return by, finer
}

// turn finds the limits in doubt at which something of s jumps: those that a reader
// can be told of first, since what another one passed at the same place tells already
// is told once.
func (t *trials) turn(s *sheet.Sheet) {
	t.turnOf(s, func(f *sheet.Figure) bool { return f.Label != "" })
	t.turnOf(s, func(f *sheet.Figure) bool { return f.Label == "" })
}

func (t *trials) turnOf(s *sheet.Sheet, which func(*sheet.Figure) bool) {
	s.EachWorked(func(f *sheet.Figure, _ bool) {
		if f.State() != sheet.Unsure || !which(f) {
			return
		}
		for _, end := range [...]sheet.End{sheet.LowEnd, sheet.HighEnd} {
			if !f.InDoubt(end) {
				continue
			}
			if x, ok := t.across(s, f, end); ok {
				f.Turns = true
				t.turns = append(t.turns, x)
			}
		}
	})
}

// The way from the readings over the limit, in parts of the way that takes the
// figure as far as its uncertainty reaches.
const (
	reach   = 1.05 // the furthest that is looked
	halving = 18   // times, until the limit is found
	beside  = 0.01 // how far from the limit the two sides are looked at,
	further = 0.04 // and then again: what jumps changes no more over this
)

// across moves the readings straight over the limit, each by as much as it adds to
// the doubt, and tells what jumps there; ok is false where nothing does.
func (t *trials) across(s *sheet.Sheet, f *sheet.Figure, end sheet.End) (x turn, ok bool) {
	x = turn{key: f.Key, end: end, inside: f.Inside(end), slack: 1e-9 * math.Abs(f.Value), finer: f.Finer()}
	way := t.way(f, end)
	inside := func(part float64) bool {
		moved := t.sheet(way, part)
		defer moved.Free()
		f := worked(moved, x.key)
		return f == nil || f.Inside(end)
	}
	low, high := 0.0, reach
	if way == nil || inside(high) == x.inside {
		return x, false
	}
	for range halving {
		if middle := (low + high) / 2; inside(middle) == x.inside {
			low = middle
		} else {
			high = middle
		}
	}
	sides := func(off float64) (near, far *sheet.Sheet) {
		return t.sheet(way, math.Max(0, low-off)), t.sheet(way, high+off)
	}
	x.near, x.far = sides(beside)
	near, far := numbersOf(x.near), numbersOf(x.far)
	told := t.told(near, far)
	before, after := sides(further)
	x.jumps = jumps(s, changes(near, far, told), changes(numbersOf(before), numbersOf(after), told))
	before.Free()
	after.Free()
	return x, len(x.jumps) > 0 || told == nil && (x.words() != nil || x.answers() || x.findings() != nil)
}

// told are the jumps from near to far that another limit, passed at the same place,
// tells already; nil where none is.
func (t *trials) told(near, far numbers) numbers {
	var out numbers
	for i := range t.turns {
		x := &t.turns[i]
		if x.crossed(near) || !x.crossed(far) {
			continue
		}
		if out == nil {
			out = numbers{}
		}
		for p, by := range x.jumps {
			out[p] += by
		}
	}
	return out
}

// way is how far each reading is moved: toward the limit, and in all to where the
// figure's uncertainty ends (JCGM 100:2008, 5.1.2). It is nil where no reading takes
// the figure any nearer.
func (t *trials) way(f *sheet.Figure, end sheet.End) []float64 {
	toward := 1.0
	at := f.Limit.Low
	if end == sheet.HighEnd {
		at, toward = f.Limit.High, -1
	}
	if f.Inside(end) {
		toward = -toward
	}
	gap := sheet.Number{Place: sheet.Place{Key: f.Key, End: end}, Value: f.Value - at}
	way, total := make([]float64, len(t.moved)), 0.0
	for i := range t.moved {
		m := &t.moved[i]
		up, down := toward*t.shift(gap, m.up), toward*t.shift(gap, m.down)
		way[i] = math.Max(0, math.Max(up, down))
		if down > up {
			way[i] = -way[i]
		}
		total += way[i] * way[i]
	}
	if total == 0 {
		return nil
	}
	for i := range way {
		way[i] *= Coverage * t.moved[i].by / math.Sqrt(total)
	}
	return way
}

// sheet is that of the drill with its readings moved by a part of the way.
func (t *trials) sheet(way []float64, part float64) *sheet.Sheet {
	d := t.drill
	for i := range t.moved {
		if m := &t.moved[i]; way[i] != 0 {
			d = d.Nudged(m.reading, m.value, part*way[i])
		}
	}
	return t.again(d)
}

// worked returns the figure of that key that has a limit, steps on the way to
// others too.
func worked(s *sheet.Sheet, key string) *sheet.Figure {
	var found *sheet.Figure
	s.EachWorked(func(f *sheet.Figure, _ bool) {
		if f.Key == key && f.Limit != nil {
			found = f
		}
	})
	return found
}

// changes are those from one sheet's numbers to another's, beyond what is told.
func changes(from, to, told numbers) numbers {
	out := numbers{}
	for p, v := range from {
		if w, still := to[p]; still {
			out[p] = w - v - told[p]
		}
	}
	return out
}

// jumps are the changes at a limit that are no slope, and no kink: about as large
// over a short way as over one four times as long. One that is lost in the number's
// uncertainty is none.
func jumps(s *sheet.Sheet, short, long numbers) numbers {
	const (
		most     = 2.0 // times as large over the long way
		ofSpread = 0.1
		rounding = 1e-6
	)
	out := numbers{}
	s.Numbers(func(n sheet.Number) {
		by := math.Abs(short[n.Place])
		if by > math.Max(ofSpread**n.Spread, rounding*math.Abs(n.Value)) && math.Abs(long[n.Place]) < most*by {
			out[n.Place] = short[n.Place]
		}
	})
	return out
}
