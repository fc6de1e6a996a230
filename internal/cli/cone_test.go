package cli_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// The arithmetic that cone and edge show, for points and settings of any kind,
// given any of the three ways.
func TestExplainedCones(t *testing.T) {
	testkit.Property(t, "the arithmetic that cone and edge show gives the figures they show, from any of the three sets of readings", func(t *rapid.T) {
		size := rapid.Float64Range(2, 40).Draw(t, "size")
		num := func(name string, low, high float64) string {
			return fmt.Sprintf("%.4f", rapid.Float64Range(low, high).Draw(t, name))
		}
		length := func(name string, low, high float64) string {
			v := size * rapid.Float64Range(low, high).Draw(t, name)
			if rapid.Bool().Draw(t, name+" in inches") {
				return fmt.Sprintf("%.5fin", v/25.4)
			}
			return fmt.Sprintf("%.5fmm", v)
		}
		r := readings{"size": length("diameter", 1, 1), "web": length("web", 0.1, 0.25), "semi-angle": num("semi", 12, 34)}
		ways := []readings{
			{"point-angle": num("point", 100, 145), "clearance": num("clearance", 6, 18), "chisel-angle": num("chisel", 105, 150)},
			{"point-angle": num("point", 100, 145), "clearance": num("clearance", 6, 18), "vertex": length("vertex", 0.2, 2)},
			{"axis-angle": num("axis", 20, 45), "axis-offset": length("offset", 0.05, 0.3), "vertex": length("vertex", 0.2, 2)},
		}
		for k, v := range rapid.SampledFrom(ways).Draw(t, "way") {
			r[k] = v
		}
		args := r.args("cone")
		if run("", args...).status != 0 {
			t.Skip("out of reach")
		}
		args = append(args, "--explain")
		d := compute(t, args...)
		steps := d.Steps
		if len(steps) < 14 { // all but the second facets, which not every point needs
			t.Fatalf("%v: only %d steps", args, len(steps))
		}
		for _, s := range steps {
			if err := agrees(s.Numbers, s.Result); err != nil {
				t.Fatalf("%v\n%s: %v", args, s.Figure, err)
			}
			if err := exactly(s.Numbers, s.Result, d.Results[s.Figure]); err != nil {
				t.Fatalf("%v\n%s: %v", args, s.Figure, err)
			}
		}
		for _, units := range []string{"mm", "in"} {
			checkPrinted(t, len(steps), append(args, "--units", units, "--width", "1000"))
		}
	})
}
