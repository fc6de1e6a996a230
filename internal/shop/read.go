package shop

import (
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
	a, b, count, err := quantity.ParsePair(kind, text, quantity.Metric)
	switch {
	case err != nil:
		rd.Refuse(n, err)
	case count != 2 || a.V >= b.V:
		rd.Fault(n, "takes two values, the lower first, such as 9,13", "")
	}
	return a.V, b.V
}

func quote(s string) string { return strconv.Quote(s) }
