package print

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
)

var nan = math.NaN()

func mark(v float64, state sheet.State) sheet.Mark {
	return sheet.Mark{Value: v, Low: nan, High: nan, State: state}
}

func drawn(low, high float64, cells, left, right int, marks ...sheet.Mark) string {
	b := newBand(low, high, cells, left, right, barUTF8)
	b.draw(marks)
	return strings.TrimRight(strings.Join(b.text, ""), " ")
}

// Where marks stand, counted by hand from the cells of the bar.
func TestBand(t *testing.T) {
	const over, under = sheet.Over, sheet.Under
	for _, x := range []struct {
		name, want string
		low, high  float64
		marks      []sheet.Mark
	}{
		{"both lips", "   ├─────2───1─────┤", 57.5, 60.5, []sheet.Mark{mark(59.5, 0), mark(58.5, 0)}},
		{"lips alike", "   ├───────●───────┤", 57.5, 60.5, []sheet.Mark{mark(59, 0), mark(59, 0)}},
		{"at the limits", "   ├1─────────────2┤", 8, 16, []sheet.Mark{mark(8, 0), mark(16, 0)}},
		{"one cell over", "   ├───────────────┤●", 0, 15, []sheet.Mark{mark(15.4, over)}},
		{"three cells over", "   ├───────────────┤··●", 0, 15, []sheet.Mark{mark(18, over)}},
		{"far over", "   ├───────────────┤··»", 0, 15, []sheet.Mark{mark(18.1, over)}},
		{"two cells under", " ●·├───────────────┤", 120, 135, []sheet.Mark{mark(118.5, under)}},
		{"far under, which lip", "«1·├───────2───────┤", 8, 16, []sheet.Mark{mark(2.5, under), mark(12, 0)}},
		{"no upper limit", "   ├────────────●───", 42, math.Inf(1), []sheet.Mark{mark(78, 0)}},
		{"no upper limit, past twice", "   ├───────────────»", 42, math.Inf(1), []sheet.Mark{mark(90, 0)}},
		{"in doubt", "   ├───────────(───┤●)", 0, 15, []sheet.Mark{{Value: 15.5, Low: 12, High: 16.5, State: sheet.Unsure}}},
		{"a range", "   ├───────(───)───┤", 0, 14, []sheet.Mark{{Value: nan, Low: 7, High: 11}}},
	} {
		if got := drawn(x.low, x.high, 15, 3, 3, x.marks...); got != x.want {
			t.Errorf("%s:\n%q\n%q", x.name, got, x.want)
		}
	}
}

// A mark is between the caps exactly where its value is within the limits, whatever the
// band, and marks stand in the order of their values.
func TestBandTellsInsideFromOutside(t *testing.T) {
	testkit.Property(t, "a mark stands between the caps of a bar where its value is within the limits, and nowhere else", func(t *rapid.T) {
		low := rapid.Float64Range(-100, 100).Draw(t, "low")
		width := rapid.Float64Range(1e-3, 1e3).Draw(t, "width")
		cells := rapid.SampledFrom([]int{7, 15}).Draw(t, "cells")
		b := newBand(low, low+width, cells, 3, 3, barUTF8)
		at := func(name string) (v float64, cell int) {
			v = low + width*rapid.Float64Range(-2, 3).Draw(t, name)
			cell, _ = b.at(v)
			return v, cell
		}
		v, cell := at("v")
		if inside := cell >= 0 && cell < cells; inside != (v >= b.low-rounding*math.Max(math.Abs(b.low), math.Abs(b.high)) && v <= b.high+rounding*math.Max(math.Abs(b.low), math.Abs(b.high))) {
			t.Fatalf("%v within %v and %v is in cell %d of %d", v, b.low, b.high, cell, cells)
		}
		if u, other := at("u"); u < v && other > cell || u > v && other < cell {
			t.Fatalf("%v is in cell %d and %v in cell %d", u, other, v, cell)
		}
	})
}
