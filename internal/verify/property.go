package verify

import (
	"flag"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// seed is where properties begin to draw, so that the same code gives the same
// answer every time; make hunt draws from elsewhere, and more.
const seed = "1"

func init() {
	if err := flag.Set("rapid.seed", seed); err != nil {
		panic(err)
	}
}

// Property checks that an invariant holds over drawn cases, and keeps how many
// there were. holds says it as a sentence without its full stop. A case that
// the property skips is none, nor is a failure of old that is tried again.
func Property(t *testing.T, holds string, property func(*rapid.T)) {
	t.Helper()
	cases := 0
	rapid.Check(t, func(t *rapid.T) {
		property(t)
		cases++
	})
	Cases(t, holds, min(cases, drawn()))
}

// drawn is how many cases the flags ask for.
func drawn() int {
	n, err := strconv.Atoi(given("rapid.checks"))
	if err != nil {
		return math.MaxInt
	}
	return n
}

// Cases keeps an invariant that the test held over so many cases by itself.
func Cases(t *testing.T, holds string, cases int) {
	t.Helper()
	if !t.Failed() {
		keep(t, Record{What: holds, Cases: cases})
	}
}
