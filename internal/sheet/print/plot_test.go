package print

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
	"evenlip/internal/testkit"
)

func TestSpark(t *testing.T) {
	nan := math.NaN()
	for want, c := range map[string]struct {
		values []float64
		cells  int
		ascii  bool
	}{
		"▁▄█":    {[]float64{1, 1.45, 2}, 8, false},
		"▅▅":     {[]float64{0, 5e-324}, 8, false},
		"▁▅█":    {[]float64{-1.7e308, 0, 1.7e308}, 8, false},
		"_:#":    {[]float64{1, 1.45, 2}, 8, true},
		"█▁":     {[]float64{5, -5}, 8, false},
		"▅▅▅":    {[]float64{3, 3, 3}, 8, false},
		"▁·█":    {[]float64{1, nan, 2}, 8, false},
		"_?#":    {[]float64{1, math.Inf(1), 2}, 8, true},
		"▁▃▆█":   {[]float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}, 4, false},
		"":       {nil, 8, false},
		"··":     {[]float64{nan, nan}, 8, false},
		"▁▂▃▅▆█": {[]float64{0, 1, 2, 3.6, 5, 7}, 8, false},
	} {
		if got := Spark(c.values, c.cells, c.ascii); got != want {
			t.Errorf("%v: %q, want %q", c.values, got, want)
		}
	}
}

// A higher value never stands lower, the ends are the ends, and nothing is
// wider than it may be.
func TestSparkRises(t *testing.T) {
	testkit.Property(t, "a higher value never stands lower in a spark line", func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64Range(-1e6, 1e6), 2, 60).Draw(t, "values")
		cells := rapid.IntRange(2, 60).Draw(t, "cells")
		got := []rune(Spark(values, cells, false))
		if len(got) != min(cells, len(values)) {
			t.Fatalf("%d cells for %d values in %d", len(got), len(values), cells)
		}
		first, last := values[0], values[len(values)-1]
		if first <= last && got[0] > got[len(got)-1] || first >= last && got[0] < got[len(got)-1] {
			t.Fatalf("%s from %v to %v", string(got), first, last)
		}
	})
}

func TestBars(t *testing.T) {
	for name, c := range map[string]struct {
		values []float64
		ascii  bool
		want   []string
	}{
		"from zero":       {[]float64{10, 5, 0, 0.5}, false, []string{"██████████", "█████", "", "▌"}},
		"both sides":      {[]float64{5, -5, 2.5, 0, -2.5}, false, []string{"·····│█████", "█████│", "·····│██▌", "·····│", "··▐██│"}},
		"both, ASCII":     {[]float64{5, -5, -2.5}, true, []string{".....|#####", "#####|", "...##|"}},
		"below only":      {[]float64{-4, -2}, false, []string{"██████████│", "·····█████│"}},
		"one not known":   {[]float64{math.NaN(), 1}, false, []string{"", "██████████"}},
		"nothing at all":  {[]float64{0, 0}, false, []string{"", ""}},
		"next to nothing": {[]float64{0, 5e-324}, false, []string{"", ""}},
		"nothing known":   {[]float64{math.NaN()}, false, []string{""}},
		"without a bound": {[]float64{math.Inf(1), 2}, false, []string{"", "██████████"}},
	} {
		got := bars(c.values, c.ascii)
		if strings.Join(got, "/") != strings.Join(c.want, "/") {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

func TestASCIIMeansASCII(t *testing.T) {
	testkit.Property(t, "a plot in ASCII has no other letters", func(t *rapid.T) {
		values := rapid.SliceOf(rapid.Float64()).Draw(t, "values")
		text := Spark(values, 20, true) + strings.Join(bars(values, true), "")
		if len(text) != utf8.RuneCountInString(text) {
			t.Fatalf("%q", text)
		}
	})
}

// wide is a sheet with one grid of many columns, the first of which leads.
func wide(columns, rows int) *sheet.Sheet {
	g := sheet.Grid{Key: "rows", Main: true, Lead: 1}
	for i := range columns {
		g.Columns = append(g.Columns, sheet.Column{Key: "k", Label: "some long heading", Kind: quantity.Number, Plot: i == 1})
	}
	for n := range rows {
		row := make([]sheet.Cell, columns)
		for i := range row {
			row[i] = sheet.V(float64(100*n + i))
		}
		g.Rows = append(g.Rows, row)
	}
	return &sheet.Sheet{Command: "edge", Grids: []sheet.Grid{g}}
}

// A grid too wide goes on underneath: every number is there, the leading one in
// each block, and no line is wider than the table.
func TestWideGridGoesOnUnderneath(t *testing.T) {
	testkit.Property(t, "a grid too wide goes on underneath with every number", func(rt *rapid.T) {
		columns, rows := rapid.IntRange(2, 30).Draw(rt, "columns"), rapid.IntRange(1, 5).Draw(rt, "rows")
		width := rapid.IntRange(40, 120).Draw(rt, "width")
		out := written(t, Options{Form: Table, Width: width}, wide(columns, rows))
		for _, line := range strings.Split(out, "\n") {
			if style.Width(line) > width {
				rt.Fatalf("%d cells in %d: %s", style.Width(line), width, line)
			}
		}
		fields := map[string]int{}
		for _, f := range strings.Fields(out) {
			fields[f]++
		}
		f := quantity.Format{}
		blocks := fields[f.Number(quantity.Number, quantity.NoGauge, 0)]
		for n := range rows {
			for i := range columns {
				want := 1
				if i == 0 {
					want = blocks
				}
				if got := fields[f.Number(quantity.Number, quantity.NoGauge, float64(100*n+i))]; got != want {
					rt.Fatalf("row %d, column %d: %d times, not %d\n%s", n, i, got, want, out)
				}
			}
		}
		if columns > 20 && blocks < 2 {
			rt.Fatalf("one block for %d columns\n%s", columns, out)
		}
	})
}

// A plot is for people: no other form has a column more.
func TestPlotOnlyInTables(t *testing.T) {
	for _, form := range []Form{Plain, CSV, JSON} {
		if out := written(t, Options{Form: form}, wide(3, 2)); strings.ContainsAny(out, "█▌│#|") {
			t.Errorf("%s has bars:\n%s", form, out)
		}
	}
	if out := written(t, Options{Form: Table}, wide(3, 2)); !strings.Contains(out, "█") {
		t.Errorf("no bars in a table:\n%s", out)
	}
	if out := written(t, Options{Form: Table, ASCII: true}, wide(3, 2)); strings.Contains(out, "█") || !strings.Contains(out, "#") {
		t.Errorf("no ASCII bars:\n%s", out)
	}
}
