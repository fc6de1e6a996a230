package cutting_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

const deg = math.Pi / 180

// within fails unless got is want, give or take tolerance.
func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.6g, want %.6g within %.3g", what, got, want, tolerance)
	}
}

// unknown fails unless v is NaN.
func unknown(t *testing.T, what string, v float64) {
	t.Helper()
	if !math.IsNaN(v) {
		t.Errorf("%s: got %v, want NaN", what, v)
	}
}

// printed returns the rows of a table of the handbook as numbers, its notes left
// out, skipping the rows that skip says.
func printed(t *testing.T, name string, skip func(note string) bool) (rows [][]float64) {
	t.Helper()
	text, err := os.ReadFile("testdata/handbook.txt")
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		cells := strings.Split(strings.TrimSpace(line), " | ")
		if cells[0] != name || skip != nil && skip(cells[len(cells)-1]) {
			continue
		}
		var row []float64
		for _, c := range cells[1:] {
			if v, err := strconv.ParseFloat(c, 64); err == nil {
				row = append(row, v)
			}
		}
		rows = append(rows, row)
	}
	if rows == nil {
		t.Fatalf("no table %q", name)
	}
	return rows
}
