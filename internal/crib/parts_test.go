package crib

import (
	"fmt"
	"strings"
	"sync/atomic"
	"testing"
)

// Every number is done once, however few or many there are.
func TestParts(t *testing.T) {
	for _, n := range []int{0, 1, leastPart - 1, leastPart, 2*leastPart + 1, 10*leastPart + 7} {
		done := make([]atomic.Int32, n)
		inParts(n, func(from, to int) {
			for i := from; i < to; i++ {
				done[i].Add(1)
			}
		})
		for i := range done {
			if k := done[i].Load(); k != 1 {
				t.Fatalf("of %d, number %d was done %d times", n, i, k)
			}
		}
	}
}

// The faults of a crib that is read in parts stand in the file's order, an id
// that stands twice in two of the parts among them.
func TestFaultsOfALargeCrib(t *testing.T) {
	lines := strings.Split(manyDrills(5*leastPart), "\n")
	wrong := func(drill int) int { return 3 + 5*drill + 3 } // the index of its web
	var want []string
	for i := 0; i < 5*leastPart; i += 100 {
		lines[wrong(i)] = "    wed: 2mm"
		want = append(want, fmt.Sprintf("%d:5 no reading is called \"wed\"", wrong(i)+1))
	}
	last := 3 + 5*(5*leastPart-1) + 1
	lines[last] = "  - id: D0"
	want = append(want, fmt.Sprintf("%d:9 the id \"D0\" stands twice, first on line 5", last+1))
	_, errs := Read("crib.yaml", []byte(strings.Join(lines, "\n")), nil)
	if got := complaints(errs); got != strings.Join(want, "\n") {
		t.Errorf("%s\nwant\n%s", got, strings.Join(want, "\n"))
	}
}
