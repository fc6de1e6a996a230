package drilltest

import (
	"math"
	"slices"

	"evenlip/internal/sheet"
)

// Value is a figure of a sheet, in millimetres or radians.
func Value(t Tester, s *sheet.Sheet, key string) float64 {
	t.Helper()
	f := s.Lookup(key)
	if f == nil {
		t.Fatalf("%s has no %s", s.Command, key)
		return math.NaN()
	}
	return f.Value
}

// Grid is one of a sheet's lists.
func Grid(t Tester, s *sheet.Sheet, key string) *sheet.Grid {
	t.Helper()
	at := slices.IndexFunc(s.Grids, func(g sheet.Grid) bool { return g.Key == key })
	if at < 0 {
		t.Fatalf("%s has no list %s", s.Command, key)
		return &sheet.Grid{}
	}
	return &s.Grids[at]
}

// Codes are the codes of a sheet's remarks, in their order.
func Codes(s *sheet.Sheet) []string {
	var out []string
	for _, f := range s.Findings {
		out = append(out, f.Code)
	}
	return out
}

// Found reports whether a sheet makes the remark of that code.
func Found(s *sheet.Sheet, code string) bool { return slices.Contains(Codes(s), code) }
