package uncertainty

import (
	"iter"
	"slices"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
)

// A Draw is a value that is drawn: a reading, of lip 0 or 1 where there is one for
// each, and the ends of what the gauge shows as that reading.
type Draw struct {
	Reading   drill.Reading
	Lip       int
	Low, High float64
}

// Draws returns the values of d that the gauges leave in doubt, at most Dims. A gauge
// that is not named leaves none. Each lip is a reading of its own to a gauge, also
// where one value was given for both; the difference between the lips is one.
// A length or an angle that cannot be below zero is drawn from zero up, and one that
// is zero is not drawn: that there is nothing is seen, and not measured.
func Draws(d *drill.Drill, g quantity.Gauges) []Draw {
	var out []Draw
	for _, r := range drill.All() {
		spec := r.Spec()
		step := stepOf(g, spec)
		if step == 0 || !d.Has(r) {
			continue
		}
		a, b, n := d.Pair(r)
		values := []float64{a, b}
		if !spec.Pair || spec.Apart && n == 1 {
			values = values[:1]
		}
		for lip, v := range values {
			low, high := Rectangular(v, step, 0), Rectangular(v, step, 1)
			switch {
			case spec.Signed:
			case v == 0:
				continue
			case low < 0:
				low = 0
			}
			out = append(out, Draw{r, lip, low, high})
		}
	}
	// Of the orders tried this one serves best: beside kinks the least that an interval
	// of 95 % holds is 93.4 %, and 92.5 % in the catalogue's own order.
	slices.Reverse(out)
	return out
}

// stepOf is the step of the gauge that a reading is taken with, zero where none is.
func stepOf(g quantity.Gauges, spec *drill.Spec) float64 {
	if spec.Meant {
		return 0
	}
	switch spec.Gauge {
	case quantity.Caliper:
		return g.Caliper
	case quantity.Protractor:
		return g.Protractor
	case quantity.Indicator:
		return g.Indicator
	}
	return 0
}

// Each gives the N draws of a drill, in the order of their points. It is one drill,
// whose values are moved from draw to draw: d itself stays as it is.
func Each(d *drill.Drill, draws []Draw) iter.Seq[*drill.Drill] {
	return func(yield func(*drill.Drill) bool) {
		moved := d.Copy()
		moved.Gauged = true
		for i := range N {
			at := Point(i, len(draws))
			for k := range draws {
				x := &draws[k]
				moved.Move(x.Reading, x.Lip, x.Low+(x.High-x.Low)*at[k])
			}
			if !yield(moved) {
				return
			}
		}
	}
}
