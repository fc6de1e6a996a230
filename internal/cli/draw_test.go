package cli_test

import (
	"fmt"
	"math"
	"regexp"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// Measured off the sheet: where the two lips' lines cross in the side view, there
// the middle of the chisel edge stands in the end view, which is level with it.
// How the lips stand may have been read, or be taken as even; something may come
// off, too little to true them or enough.
func TestChiselStandsWhereTheLipsCross(t *testing.T) {
	testkit.Property(t, "on the sheet the chisel edge's middle is level with the place where the lips' lines cross", func(t *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		size := number("size", 3, 40)
		args := []string{"draw", "--svg", "-", "--size", fmt.Sprintf("%.3fmm", size), "--lip-angle", fmt.Sprintf("%.2f,%.2f", number("k1", 50, 68), number("k2", 50, 68))}
		if rapid.Bool().Draw(t, "height read") {
			args = append(args, "--lip-height", fmt.Sprintf("%.4fmm", size*number("height", -0.02, 0.02)))
		}
		if rapid.Bool().Draw(t, "ground") {
			args = append(args, "--remove", fmt.Sprintf("%.4fmm", size*number("remove", 0.001, 0.2)))
		}
		a := run("", args...)
		if a.status != 0 {
			t.Fatalf("%v: status %d\n%s", args, a.status, a.err)
		}
		one, two, edge := ends(t, a.out, "side-lip-1"), ends(t, a.out, "side-lip-2"), ends(t, a.out, "end-chisel")
		ux, uy, vx, vy := one[2]-one[0], one[3]-one[1], two[2]-two[0], two[3]-two[1]
		along := ((two[0]-one[0])*vy - (two[1]-one[1])*vx) / (ux*vy - uy*vx)
		if cross, middle := one[1]+along*uy, (edge[1]+edge[3])/2; math.Abs(cross-middle) > 0.01 {
			t.Fatalf("%v: the lips cross at %.3f mm from the top of the sheet, the chisel edge's middle is at %.3f", args, cross, middle)
		}
	})
}

// ends reads both ends of a named line out of an SVG: x, y and x, y.
func ends(t fataler, svg, name string) (e [4]float64) {
	t.Helper()
	m := regexp.MustCompile(`id="` + name + `" d="M(\S+) ([^L]+)L(?:[^"]*L)?(\S+) ([^"]+)"`).FindStringSubmatch(svg)
	if m == nil {
		t.Fatalf("no line is called %s", name)
	}
	for i, text := range m[1:] {
		if _, err := fmt.Sscan(text, &e[i]); err != nil {
			t.Fatalf("%s: %v", m[0], err)
		}
	}
	return e
}
