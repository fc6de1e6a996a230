package uncertainty_test

import (
	"fmt"
	"strconv"

	"evenlip/internal/uncertainty"
)

// Two lips are read to 0.02 mm, and their difference in length may be 0.055 mm.
func Example() {
	first, second, step := 6.10, 6.04, 0.02
	var tally uncertainty.Tally
	for i := range uncertainty.N {
		at := uncertainty.Point(i, 2)
		apart := uncertainty.Rectangular(first, step, at[0]) - uncertainty.Rectangular(second, step, at[1])
		verdict := "even"
		if apart > 0.055 {
			verdict = "uneven"
		}
		tally.Add([]float64{apart}, []string{verdict})
	}
	interval := tally.Interval(0)
	u, ends := interval.Rounded()
	text := func(v float64) string { return strconv.FormatFloat(v, 'f', max(0, interval.Decimals()), 64) }
	fmt.Printf("%s ± %s mm, from %s to %s\n", text(first-second), text(u), text(ends.Low), text(ends.High))
	for _, word := range tally.Words(0) {
		share := tally.Share(0, word)
		fmt.Printf("%s in %.0f %%, certain: %t\n", word, 100*share, share >= uncertainty.Tells)
	}
	// Output:
	// 0.06 ± 0.02 mm, from 0.04 to 0.08
	// uneven in 72 %, certain: false
	// even in 28 %, certain: false
}
