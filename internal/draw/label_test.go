package draw

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// A drill of the sizes and points that come to a bench, at the scales that come
// to paper, before and after.
func anyDrawing(t *rapid.T) (Job, Scale) {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	size := number("size", 3, 40)
	k := number("half angle", 45, 70) * deg
	d := Drill{D: size, Web: size * number("web", 0.1, 0.22), Chisel: number("chisel", 42, 65) * deg, Helix: number("helix", 15, 35) * deg,
		Lips: [2]Lip{{k, 0, 12 * deg}, {k, 0, 12 * deg}}, Land: Land{Margin: 0.1 * size, Body: 0.95, Flute: 108 * deg}}
	j := labelled(d)
	j.Labels.Height, j.Labels.Lips = "", [2]string{}
	if rapid.Bool().Draw(t, "both lips") {
		j.Labels.Lips = [2]string{"lip 1: 59.0°", "lip 2: 59.0°"}
		d.Lips[1].HalfAngle += number("apart", -10, 10) * deg
		d.Lips[0].Corner = number("height", -0.02, 0.02) * size
		if math.Abs(d.Lips[0].Corner) > 0.001*size {
			j.Labels.Height, j.Labels.Offset = "lip 1 higher 0.10", "0.08"
			d.Offset = d.Lips[0].Corner * math.Tan(k) / 2
		}
	}
	if rapid.Bool().Draw(t, "ground") {
		before := d
		off := number("remove", 0.1, 30)
		for i := range before.Lips {
			before.Lips[i].Corner += off
		}
		before.Web -= 0.014 * math.Min(off, 0.4*size)
		if rapid.Bool().Draw(t, "trued") {
			d.Offset = 0
		}
		j.Before, j.Labels.Remove = &before, "10.00"
	}
	if rapid.Bool().Draw(t, "not measured") {
		j.Labels.Web, j.Labels.ChiselLength, j.Labels.ChiselAngle = "(2.00)", "(chisel edge 2.47)", "(126.0°)"
	}
	if rapid.Bool().Draw(t, "clearance") {
		j.Labels.Clearance[0] = "(lip 1 clearance 12.0°)"
		d.Lips[0].Clearance = number("clearance", -5, 25) * deg
		if rapid.Bool().Draw(t, "clearances apart") {
			j.Labels.Clearance[1] = "lip 2 clearance 14.0°"
			d.Lips[1].Clearance = number("clearance 2", -5, 25) * deg
		}
	}
	if j.Labels.Clearance[0] != "" && rapid.Bool().Draw(t, "flattened") {
		d.Flat, j.Labels.Flat = size*number("flat", 0.01, 0.1), "flat 0.60"
	}
	if rapid.Bool().Draw(t, "in inches") {
		j.Labels.Diameter, j.Labels.Web, j.Labels.ChiselLength = "Ø0.4724", "(0.0709)", "(chisel edge 0.0858)"
	}
	j.Drill = d
	scale := rapid.SampledFrom([]float64{0, 1, 2, 5, 10, 20}).Draw(t, "scale")
	if scale == 0 {
		return j, Scale{}
	}
	return j, Scale{scale, 1}
}

// No writing lies on a line, an arrow or other writing, whatever the scale.
func TestNothingIsWrittenOver(t *testing.T) {
	testkit.Property(t, "no writing lies on a line, an arrow or other writing, whatever the scale", func(t *rapid.T) {
		j, scale := anyDrawing(t)
		if j.Drill.Check() != nil {
			t.Skip("not to be drawn")
		}
		s, err := OnPaper(j, scale)
		if err != nil {
			t.Skip("larger than any paper")
		}
		for i := range s.Texts {
			if over := covered(&s, i); over != "" {
				t.Fatalf("at %s on %s, %q at %.1f lies on %s", s.Scale, s.Paper, s.Texts[i].Text, s.Texts[i].At, over)
			}
		}
	})
}

// covered says what a text of the sheet lies on.
func covered(s *Sheet, i int) string {
	b := s.Texts[i].box()
	for k := range s.Texts {
		if k != i && b.meets(s.Texts[k].box()) {
			return fmt.Sprintf("%q", s.Texts[k].Text)
		}
	}
	for k := range s.Paths {
		points := s.Paths[k].Points
		for n := 1; n < len(points); n++ {
			if b.crossed(points[n-1], points[n]) {
				return fmt.Sprintf("line %d %s from %.1f to %.1f", k, s.Paths[k].Name, points[n-1], points[n])
			}
		}
	}
	for k, a := range s.Arrows {
		if b.crossed(a[0], a[1]) || b.crossed(a[1], a[2]) || b.crossed(a[2], a[0]) {
			return fmt.Sprintf("arrow %d at %.1f", k, a[0])
		}
	}
	return ""
}

// The box is told from its sides by brute force: points along the line.
func TestCrossedByPoints(t *testing.T) {
	testkit.Property(t, "a line crosses a box where points along it lie in it", func(t *rapid.T) {
		at := func(name string) Pt {
			return Pt{rapid.Float64Range(-3, 3).Draw(t, name), rapid.Float64Range(-3, 3).Draw(t, name+" up")}
		}
		b, p, q := box{Pt{-1, -0.5}, Pt{1, 0.5}}, at("p"), at("q")
		inside, near := false, false
		for i := range 2001 {
			x := p.plus(Pt{q.X - p.X, q.Y - p.Y}, float64(i)/2000)
			in := func(c box) bool { return x.X > c.low.X && x.X < c.high.X && x.Y > c.low.Y && x.Y < c.high.Y }
			inside, near = inside || in(b), near || in(b.wider(0.01))
		}
		if got := b.crossed(p, q); got && !near || !got && inside {
			t.Fatalf("from %v to %v: %v", p, q, got)
		}
	})
}
