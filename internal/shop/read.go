package shop

import (
	"errors"
	"strconv"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/strict"
)

func (rd *reader) fault(n strict.Node, text, hint string) {
	line, column := n.Place()
	rd.errs = append(rd.errs, &strict.Error{File: rd.file, Line: line, Column: column, Text: text, Hint: hint})
}

// entries hands every key of a mapping to its reader and refuses the others.
func (rd *reader) entries(n strict.Node, takes string, readers map[string]func(strict.Node)) {
	if !n.IsMap() {
		rd.fault(n, "takes "+takes+", a line each", "")
		return
	}
	seen := map[string]bool{}
	for _, e := range n.Entries() {
		key := e.Key.Text()
		read, known := readers[key]
		switch {
		case !known:
			rd.fault(e.Key, "nothing here is called "+quote(key), "it takes "+takes)
		case seen[key]:
			rd.fault(e.Key, quote(key)+" stands twice", "keep one of them")
		default:
			read(e.Value)
		}
		seen[key] = true
	}
}

func (rd *reader) word(n strict.Node) string {
	if !n.IsScalar() || strings.TrimSpace(n.Text()) == "" {
		rd.fault(n, "takes a word or two", "")
		return ""
	}
	return n.Text()
}

// positive reads one quantity above zero. A number without a unit is metric: a
// shop's file does not hang on how a drill's size was written.
func (rd *reader) positive(n strict.Node, kind quantity.Kind) float64 {
	if !n.IsScalar() {
		rd.fault(n, "takes one value", "")
		return 0
	}
	v, err := quantity.Parse(kind, n.Text(), quantity.Metric)
	if err != nil {
		rd.refuse(n, err)
		return 0
	}
	if v.V <= 0 {
		rd.fault(n, "takes a value above zero", "leave the line out to keep the embedded figure")
	}
	return v.V
}

// part reads a part of the diameter, between nothing and all of it.
func (rd *reader) part(n strict.Node) float64 {
	v := rd.positive(n, quantity.Number)
	if v >= 1 {
		rd.fault(n, "takes a part of the diameter, under 1", "")
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
		rd.refuse(n, err)
	case count != 2 || a.V >= b.V:
		rd.fault(n, "takes two values, the lower first, such as 9,13", "")
	}
	return a.V, b.V
}

func (rd *reader) refuse(n strict.Node, err error) {
	hint := ""
	var q *quantity.Error
	if errors.As(err, &q) {
		hint = q.Hint
	}
	rd.fault(n, err.Error(), hint)
}

func quote(s string) string { return strconv.Quote(s) }
