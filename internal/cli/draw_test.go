package cli_test

import (
	"fmt"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/verify"
)

// The arithmetic that a drawing shows, in the terminal and on paper, before and
// after a grind, gives what is drawn.
func TestExplainedDrawings(t *testing.T) {
	paper := filepath.Join(t.TempDir(), "drawn.svg")
	verify.Property(t, "the arithmetic that a drawing shows gives what is drawn", func(t *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		size, off := number("size", 2, 50), number("off", -0.01, 0.01)
		args := []string{"draw", "--explain", "--size", fmt.Sprintf("%.3fmm", size), "--lip-angle", fmt.Sprintf("%.2f,%.2f", number("k1", 50, 70), number("k2", 50, 70))}
		maybe := func(name, text string) {
			if rapid.Bool().Draw(t, name+" read") {
				args = append(args, "--"+name, text)
			}
		}
		maybe("web", fmt.Sprintf("%.3fmm", size*number("web", 0.1, 0.25)))
		maybe("chisel-angle", fmt.Sprintf("%.2f", number("chisel", 115, 140)))
		maybe("helix", fmt.Sprintf("%.2f", number("helix", 10, 35)))
		maybe("lip-height", fmt.Sprintf("%.4fmm", off*size))
		maybe("remove", fmt.Sprintf("%.3fmm", size*number("remove", 0, 0.6)))
		maybe("svg", paper)
		checkSteps(t, args)
	})
}
