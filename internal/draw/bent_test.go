package draw

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// A lip ground to another angle than its flute was made for is drawn between the ends
// that were read and bows, seen from the end, by what the geometry says; its flute
// makes that very lip: every point of it, carried down the helix, stands in the
// section.
func TestBentLip(t *testing.T) {
	curved := 0
	testkit.Property(t, "a lip on a flute made for another point is drawn curved, and the flute drawn makes that curve", func(t *rapid.T) {
		d := anyDrill(t)
		i := rapid.IntRange(0, 1).Draw(t, "lip")
		d.Offset *= float64(rapid.IntRange(0, 1).Draw(t, "off the axis"))
		line, ends := d.lipLine(i), d.lip(i)
		for n, end := range [...]vec{line[0], line[len(line)-1]} {
			if !near(end.x, ends[n].x, 1e-9*d.D) || !near(end.y, ends[n].y, 1e-9*d.D) || !near(end.z, ends[n].z, 1e-9*d.D) {
				t.Fatalf("end %d is drawn at %v, not %v", n, end, ends[n])
			}
		}
		l := d.Lips[i]
		inner := math.Max(0, d.inner(i))
		bow := 0.0
		if d.Made != 0 {
			bow = point.NewBentLip(point.NewFlank(d.D, d.Web, l.HalfAngle, l.Clearance), d.Made, d.Helix).Bow(inner)
		}
		drawn := 0.0
		f := d.flute(i)
		for _, v := range line {
			if off := v.y - d.Web/2; math.Abs(off) > math.Abs(drawn) {
				drawn = off
			}
			if r := math.Hypot(v.x, v.y); r > d.D/2*(1+1e-9) {
				t.Fatalf("%v is outside", v)
			}
		}
		if d.Bow(i) == 0 {
			if math.Abs(bow) > 1.5*leastBow*d.D || len(line) != 2 {
				t.Fatalf("a lip that bows by %v is drawn straight", bow)
			}
			return
		}
		curved++
		if d.Bow(i) != bow || !near(drawn, bow, 0.01*math.Abs(bow)) {
			t.Fatalf("drawn with a bow of %v, said to be %v, not %v", drawn, d.Bow(i), bow)
		}
		x := inner + (f.outer-inner)*rapid.Float64Range(0, 1).Draw(t, "place")
		v, _ := f.bent.at(x)
		p := f.face(x)
		if turned := p.theta + (v.z-f.base)*f.twist; !near(p.r*math.Cos(turned), v.x, 1e-9*d.D) || !near(p.r*math.Sin(turned), v.y, 1e-9*d.D) {
			t.Fatalf("the flute at %v makes %v, %v, and not %v", x, p.r*math.Cos(turned), p.r*math.Sin(turned), v)
		}
		if up := d.height(i, v.x); !near(v.z, up+f.bent.slope*(v.y-d.Web/2), 1e-9*d.D) {
			t.Fatalf("the lip at %v does not lie in the flank", v)
		}
	})
	if curved == 0 {
		t.Error("no lip was ever curved")
	}
}
