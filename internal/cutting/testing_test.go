package cutting_test

import (
	"errors"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"evenlip/internal/point"
)

const deg = math.Pi / 180

// within fails unless got is want, give or take tolerance.
func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.6g, want %.6g within %.3g", what, got, want, tolerance)
	}
}

// refused fails unless err is a domain error about that quantity.
func refused(t *testing.T, err error, quantity string) {
	t.Helper()
	var domain *point.DomainError
	if !errors.As(err, &domain) {
		t.Fatalf("got error %v, want a domain error about the %s", err, quantity)
	}
	if domain.Quantity != quantity {
		t.Errorf("the error is about the %s, want the %s: %v", domain.Quantity, quantity, err)
	}
}

// accepted fails on an error and passes the result on.
func accepted[T any](result T, err error) func(*testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return result
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
