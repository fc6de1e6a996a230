// Package drilltest is for tests alone: drills out of what a hand would write
// down, and what their sheets say.
package drilltest

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/sheet"
)

// Tester is what *testing.T, *testing.B, *testing.F and *rapid.T have in common.
type Tester = rapid.TB

// Readings are what was read off a drill, as it is typed.
type Readings map[drill.Reading]string

// Of takes a line apart: "size 12mm; web 2mm". It panics where no reading is
// called so, for a line stands in the test itself.
func Of(line string) Readings {
	out := Readings{}
	for _, part := range strings.Split(line, ";") {
		name, text, _ := strings.Cut(strings.TrimSpace(part), " ")
		out[Named(name)] = text
	}
	return out
}

// Named returns the reading of that name, and panics when there is none.
func Named(name string) drill.Reading {
	r, ok := drill.Find(name)
	if !ok {
		panic("no reading is called " + name)
	}
	return r
}

// With returns the readings with others in their place; an empty text takes one
// away.
func (rs Readings) With(others Readings) Readings {
	out := maps.Clone(rs)
	maps.Copy(out, others)
	maps.DeleteFunc(out, func(_ drill.Reading, text string) bool { return text == "" })
	return out
}

// Drill is the drill on which they were read.
func (rs Readings) Drill(t Tester) *drill.Drill {
	t.Helper()
	var rd drill.Read
	if faults := rd.Resolve(rs.Given(), drill.Options{}); len(faults) > 0 {
		t.Fatalf("%v: %v", rs, faults)
	}
	return &rd.Drill
}

// Given is the readings as flags give them, in the catalogue's order.
func (rs Readings) Given() []drill.Given {
	var out []drill.Given
	for _, r := range slices.Sorted(maps.Keys(rs)) {
		out = append(out, drill.Flag(r, rs[r]))
	}
	return out
}

// About returns the name of the reading that a fault is about.
func About(f *fault.Fault) string { return cmp.Or(f.About, f.At.Flag) }

// Read is the drill of a line: "size 12mm; web 2mm".
func Read(t Tester, line string) *drill.Drill {
	t.Helper()
	return Of(line).Drill(t)
}

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
