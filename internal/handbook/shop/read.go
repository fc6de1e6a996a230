package shop

import (
	"slices"
	"strconv"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/strict"
)

// positive reads one quantity above zero. A number without a unit is metric: a
// shop's file does not hang on how a drill's size was written.
func (rd *reader) positive(n strict.Node, kind quantity.Kind) float64 {
	if !n.IsScalar() {
		rd.Fault(n, "takes one value", "")
		return 0
	}
	v, err := quantity.Parse(kind, n.Text(), quantity.Metric)
	if err != nil {
		rd.Refuse(n, err)
		return 0
	}
	if v.V <= 0 {
		rd.Fault(n, "takes a value above zero", "leave the line out to keep the embedded figure")
	}
	return v.V
}

// upTo reads one quantity above zero and no larger than any shop would set: a
// slip in the unit must not move a limit out of reach.
func (rd *reader) upTo(most float64, n strict.Node, kind quantity.Kind) float64 {
	v := rd.positive(n, kind)
	rd.most(most, v, n, kind)
	return v
}

// most refuses a value that is larger than any shop would set.
func (rd *reader) most(most, v float64, n strict.Node, kind quantity.Kind) {
	if v > most {
		f := quantity.Format{System: quantity.Metric}
		rd.Fault(n, f.Text(kind, 0, v)+" is more than a shop would set: takes up to "+f.Text(kind, 0, most), "a number without a unit is metric, an angle degrees")
	}
}

// part reads a part of the diameter, between nothing and all of it.
func (rd *reader) part(n strict.Node) float64 {
	v := rd.positive(n, quantity.Number)
	if v >= 1 {
		rd.Fault(n, "takes a part of the diameter, under 1", "")
	}
	return v
}

// span reads two quantities, the lower first.
func (rd *reader) span(n strict.Node, kind quantity.Kind) (low, high float64) {
	text := n.Text()
	if n.IsList() {
		var parts []string
		for _, item := range n.Items() {
			parts = append(parts, item.Text())
		}
		text = strings.Join(parts, ",")
	}
	a, b, count, err := quantity.Reader{Kind: kind, Bare: quantity.Metric}.Pair(text)
	switch {
	case err != nil:
		rd.Refuse(n, err)
	case count != 2 || a.V >= b.V:
		rd.Fault(n, "takes two values, the lower first, such as 9,13", "")
	}
	return a.V, b.V
}

// sharp reads the two ends of a clearance or a helix.
func (rd *reader) sharp(n strict.Node) (low, high float64) {
	low, high = rd.span(n, quantity.Angle)
	if high >= 90*degree {
		rd.Fault(n, "takes angles from 0 to under 90°", "")
	}
	return low, high
}

// speeds reads the two ends of a cutting speed, m/min.
func (rd *reader) speeds(n strict.Node) (low, high float64) {
	low, high = rd.span(n, quantity.Cutting)
	if low == 0 && high > 0 {
		rd.Fault(n, "takes speeds above zero", "")
	}
	rd.most(1000, high, n, quantity.Cutting)
	return low, high
}

// obtuse reads the two ends of a chisel-edge angle, as it is seen above 90
// degrees.
func (rd *reader) obtuse(n strict.Node) (low, high float64) {
	low, high = rd.span(n, quantity.Angle)
	if low < high && (low <= 90*degree || high >= 180*degree) {
		rd.Fault(n, "takes the obtuse chisel-edge angle, between 90 and 180°", "135,120 measured the acute way are 45,60: write 120,135")
	}
	return low, high
}

func quote(s string) string { return strconv.Quote(s) }

// units reads the name of a system of units.
func (rd *reader) units(n strict.Node) quantity.System {
	if !n.IsScalar() {
		rd.Fault(n, "takes mm or in", "")
		return quantity.Unset
	}
	units, f := quantity.ParseUnits(n.Text())
	if f != nil {
		rd.Refuse(n, f)
	}
	return units
}

// width reads a number of columns.
func (rd *reader) width(n strict.Node) int {
	columns, err := strconv.Atoi(n.Text())
	if !n.IsScalar() || err != nil || columns < LeastWidth || columns > MostWidth {
		rd.Fault(n, "takes "+strconv.Itoa(LeastWidth)+" to "+strconv.Itoa(MostWidth)+" columns", "")
	}
	return columns
}

// oneOf reads one of some words.
func (rd *reader) oneOf(n strict.Node, words []string) string {
	if !n.IsScalar() || !slices.Contains(words, n.Text()) {
		rd.Fault(n, "takes "+strings.Join(words, ", "), "")
	}
	return n.Text()
}
