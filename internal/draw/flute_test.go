package draw

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

const deg = math.Pi / 180

// usual is a drill of ordinary shape: 118 degree point, 30 degree helix.
func usual() Drill {
	return Drill{
		D: 12, Web: 2, Chisel: 54 * deg, Helix: 30 * deg,
		Lips: [2]Lip{{HalfAngle: 59 * deg, Clearance: 12 * deg}, {HalfAngle: 59 * deg, Clearance: 12 * deg}},
		Land: Land{Margin: 1.2, Body: 0.95, Flute: 108 * deg},
	}
}

// anyDrill draws a drill with even or uneven lips.
func anyDrill(t *rapid.T) Drill {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	size := number("size", 0.3, 80)
	d := Drill{
		D: size, Web: size * number("web", 0.08, 0.4), Chisel: number("chisel", 45, 75) * deg, Helix: number("helix", 0, 42) * deg,
		Offset: size * number("offset", -0.02, 0.02),
		Land:   Land{Margin: size * number("margin", 0, 0.12), Body: number("body", 0.93, 0.99), Flute: number("flute", 95, 120) * deg},
	}
	for i := range d.Lips {
		d.Lips[i] = Lip{HalfAngle: number("k", 40, 75) * deg, Corner: size * number("corner", -0.03, 0.03), Clearance: number("clearance", 3, 20) * deg}
	}
	if rapid.Bool().Draw(t, "flutes made for another point") {
		d.Made = number("made for", 50, 70) * deg
	}
	if err := d.Check(); err != nil {
		t.Fatalf("%+v: %v", d, err)
	}
	return d
}

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

// Carried up the helix to the height that the half angle gives it, every point
// of the section's face has to stand on the lip. Derived here with the lip's
// own line and not with the flute's numbers.
func TestFluteMakesTheLipStraight(t *testing.T) {
	testkit.Property(t, "the flute's section, carried up the helix, stands on a straight lip", func(t *rapid.T) {
		d := anyDrill(t)
		d.Made = 0
		i := rapid.IntRange(0, 1).Draw(t, "lip")
		f := d.flute(i)
		x := rapid.Float64Range(0, 1).Draw(t, "x") * f.outer
		p := f.face(x)
		up := (math.Sqrt(d.D*d.D/4-d.Web*d.Web/4) - x) / math.Tan(d.Lips[i].HalfAngle)
		turned := p.theta + 2*up/d.D*math.Tan(d.Helix)
		if !near(p.r*math.Cos(turned), x, 1e-9*d.D) || !near(p.r*math.Sin(turned), d.Web/2, 1e-9*d.D) {
			t.Fatalf("at %v the lip is at %v, %v", x, p.r*math.Cos(turned), p.r*math.Sin(turned))
		}
	})
}

func TestFluteClearsTheWebAndStaysInTheDrill(t *testing.T) {
	testkit.Property(t, "the flute's section keeps out of the web and within the diameter", func(t *rapid.T) {
		d := anyDrill(t)
		f, across := d.flute(0), d.flute(1)
		for _, p := range f.section(&across) {
			if p.r < d.Web/2*(1-1e-9) || p.r > d.D/2*(1+1e-9) {
				t.Fatalf("radius %v with a web of %v in a drill of %v", p.r, d.Web, d.D)
			}
		}
		back := f.back()
		bottom := f.face(0)
		if first := back[0]; !near(first.r, bottom.r, 1e-9*d.D) || !near(first.theta, bottom.theta, 1e-9) {
			t.Fatalf("the back begins at %v and not at the web, %v", first, bottom)
		}
		if last := back[len(back)-1]; !near(last.r, f.body, 1e-9*d.D) || !near(last.theta, f.heel, 1e-9) {
			t.Fatalf("the back ends at %v and not at the heel, %v %v", last, f.body, f.heel)
		}
		for n := 1; n < len(back); n++ {
			if back[n].r < back[n-1].r-1e-9*d.D || math.Abs(back[n].theta-back[n-1].theta) > 0.5 {
				t.Fatalf("from %v the back jumps to %v", back[n-1], back[n])
			}
		}
	})
}

// The clearance is the slope of the rim, unrolled: common practice reads it as
// the heel's drop over the way round.
func TestRimFallsByTheClearance(t *testing.T) {
	testkit.Property(t, "the rim of the flank, unrolled, falls by the clearance", func(t *rapid.T) {
		d := anyDrill(t)
		k := d.flank(0)
		rim := k.rim(k.heel)
		for n := 1; n < len(rim); n++ {
			p := rim[n]
			if r := math.Hypot(p.x, p.y); r > d.D/2*(1+1e-9) {
				t.Fatalf("the rim at %v in a drill of %v", r, d.D)
			}
			behind := math.Mod(k.f.corner-math.Atan2(p.y, p.x)+2*math.Pi, 2*math.Pi)
			fall := d.Lips[0].Corner - p.z
			if want := d.D / 2 * behind * math.Tan(d.Lips[0].Clearance); !near(fall, want, 1e-9*d.D) {
				t.Fatalf("%v behind the corner the rim has fallen %v, not %v", behind, fall, want)
			}
		}
	})
}

// The rim of the flute meets that of the flank at the heel, and the lip at its
// inner end.
func TestRimsMeet(t *testing.T) {
	testkit.Property(t, "the rim of the flute meets that of the flank at the heel, and the lip at its inner end", func(t *rapid.T) {
		d := anyDrill(t)
		edge, across := d.edge(0), d.flank(1)
		rim := across.rim(across.heel)
		heel := rim[len(rim)-1].half(1)
		end := edge[len(edge)-1]
		if gap := math.Hypot(math.Hypot(end.x-heel.x, end.y-heel.y), end.z-heel.z); gap > 1e-6*d.D {
			t.Fatalf("at the heel the rims are %v apart", gap)
		}
		lip := d.lip(0)[1]
		if gap := math.Hypot(math.Hypot(edge[0].x-lip.x, edge[0].y-lip.y), edge[0].z-lip.z); gap > 1e-9*d.D {
			t.Fatalf("at the lip's end the rim is %v off", gap)
		}
	})
}

func TestSteps(t *testing.T) {
	if got := steps(1, 1, 0.1); len(got) != 1 || got[0] != 1 {
		t.Errorf("from 1 to 1: %v", got)
	}
	got := steps(2, 0, 0.6)
	if len(got) != 5 || got[0] != 2 || got[4] != 0 || !near(got[1], 1.5, 1e-12) {
		t.Errorf("from 2 to 0: %v", got)
	}
}

// With lips at two heights the lands still stand where their own lips cut them:
// the section ends at the other lip's corner once the helix has carried it
// there, and the heel's edge starts where the flank's rim ends.
func TestLandsBelongToTheirLips(t *testing.T) {
	testkit.Property(t, "with lips at two heights each land stands where its own lip cuts it", func(t *rapid.T) {
		d := anyDrill(t)
		f, across := d.flute(0), d.flute(1)
		section := f.section(&across)
		end := section[len(section)-1]
		if got := end.theta + (across.base-f.base)*f.twist; !near(got, math.Pi+across.corner, 1e-9) {
			t.Fatalf("the section ends at %v, the other lip's corner is at %v", got, math.Pi+across.corner)
		}
		k := d.flank(0)
		rim := k.rim(k.heel)
		heel := rim[len(rim)-1]
		if heel.y >= 0 {
			return // on the far side
		}
		var v View
		d.helices(&v, -2*d.D)
		for _, p := range v.Paths {
			if q := p.Points[0]; near(q.X, -heel.z, 1e-9*d.D) && near(q.Y, heel.x, 1e-6*d.D) {
				return
			}
		}
		t.Fatalf("no edge starts at the heel %v", heel)
	})
}
