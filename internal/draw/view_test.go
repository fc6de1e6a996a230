package draw

import (
	"errors"
	"math"
	"sort"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

func (v *View) named(name string) []Pt {
	for _, p := range v.Paths {
		if p.Name == name {
			return p.Points
		}
	}
	return nil
}

// cloud is every point of the lines of one kind, in an order of its own.
func cloud(v View, l Line, turn float64) []Pt {
	var out []Pt
	for _, p := range v.Paths {
		if p.Line != l {
			continue
		}
		for _, q := range p.Points {
			out = append(out, Pt{q.X * turn, q.Y * turn})
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i].X+1.7*out[i].Y < out[j].X+1.7*out[j].Y })
	return out
}

func same(t *rapid.T, a, b []Pt, within float64) {
	t.Helper()
	if len(a) != len(b) {
		t.Fatalf("%d and %d points", len(a), len(b))
	}
	for i := range a {
		if !near(a[i].X+1.7*a[i].Y, b[i].X+1.7*b[i].Y, within) {
			t.Fatalf("point %d: %v and %v", i, a[i], b[i])
		}
	}
}

func TestEndViewStaysInTheDiameter(t *testing.T) {
	testkit.Property(t, "the end view stays in the diameter", func(t *rapid.T) {
		d := anyDrill(t)
		for _, q := range cloud(End(&d, nil), Wide, 1) {
			if math.Hypot(q.X, q.Y) > d.D/2*(1+1e-9) {
				t.Fatalf("%v is outside a drill of %v", q, d.D)
			}
		}
	})
}

func TestSideViewStaysInTheDiameter(t *testing.T) {
	testkit.Property(t, "the side view stays in the diameter", func(t *rapid.T) {
		d := anyDrill(t)
		for _, q := range cloud(Side(&d, nil), Wide, 1) {
			if math.Abs(q.Y) > d.D/2*(1+1e-9) || q.X < -d.Tip()-1e-9*d.D || math.IsNaN(q.X+q.Y) {
				t.Fatalf("%v is outside a drill of %v whose tip is at %v", q, d.D, -d.Tip())
			}
		}
	})
}

// Half a turn brings one lip of an even point to the other's place.
func TestEvenPointIsSymmetric(t *testing.T) {
	testkit.Property(t, "half a turn brings one lip of an even point to the other's place", func(t *rapid.T) {
		d := anyDrill(t)
		d.Lips[1], d.Offset = d.Lips[0], 0
		v := End(&d, nil)
		same(t, cloud(v, Wide, 1), cloud(v, Wide, -1), 1e-9*d.D)
	})
}

// To swap the lips is to turn the drill half round.
func TestSwappedLipsAreHalfATurn(t *testing.T) {
	testkit.Property(t, "swapping the lips turns the view half round", func(t *rapid.T) {
		d := anyDrill(t)
		s := d
		s.Lips[0], s.Lips[1], s.Offset = d.Lips[1], d.Lips[0], -d.Offset
		same(t, cloud(End(&d, nil), Wide, 1), cloud(End(&s, nil), Wide, -1), 1e-9*d.D)
	})
}

func TestViewsScale(t *testing.T) {
	testkit.Property(t, "a drill twice as large is drawn twice as large and no different", func(t *rapid.T) {
		d := anyDrill(t)
		by := rapid.Float64Range(0.2, 5).Draw(t, "by")
		s := d
		s.D, s.Web, s.Offset, s.Land.Margin = d.D*by, d.Web*by, d.Offset*by, d.Land.Margin*by
		for i := range s.Lips {
			s.Lips[i].Corner *= by
		}
		// The number of points along a curve may differ by rounding: the lips and
		// the box around the whole tell the scale.
		for _, pair := range [][2]View{{End(&d, nil), End(&s, nil)}, {Side(&d, nil), Side(&s, nil)}} {
			low, high := pair[0].Bounds()
			lowS, highS := pair[1].Bounds()
			for _, c := range [][2]float64{{low.X, lowS.X}, {low.Y, lowS.Y}, {high.X, highS.X}, {high.Y, highS.Y}} {
				if !near(c[0]*by, c[1], 1e-4*s.D) {
					t.Fatalf("%v times %v is %v, not %v", c[0], by, c[0]*by, c[1])
				}
			}
		}
	})
}

// What a protractor laid on the picture reads.
func TestAnglesMeasuredOffTheViews(t *testing.T) {
	testkit.Property(t, "a protractor laid on the views reads the angles drawn", func(t *rapid.T) {
		d := anyDrill(t)
		side, end := Side(&d, nil), End(&d, nil)
		for i, name := range []string{"side-lip-1", "side-lip-2"} {
			lip := bothEnds(side.named(name))
			got := math.Atan2(math.Abs(lip[0].Y-lip[1].Y), lip[0].X-lip[1].X)
			if !near(got, d.Lips[i].HalfAngle, 1e-9) {
				t.Fatalf("%s stands at %v to the axis, not %v", name, got, d.Lips[i].HalfAngle)
			}
		}
		corner1, corner2 := side.named("side-lip-1")[0], side.named("side-lip-2")[0]
		if got, want := corner2.X-corner1.X, d.Lips[0].Corner-d.Lips[1].Corner; !near(got, want, 1e-9*d.D) {
			t.Fatalf("lip 1 is higher by %v, not %v", got, want)
		}
		lip, chisel := bothEnds(end.named("end-lip-1")), end.named("end-chisel")
		along := math.Atan2(lip[0].Y-lip[1].Y, lip[0].X-lip[1].X)
		across := math.Atan2(chisel[1].Y-chisel[0].Y, chisel[1].X-chisel[0].X)
		if got := math.Abs(math.Remainder(along-across, 2*math.Pi)); !near(got, math.Pi-d.Chisel, 1e-9) {
			t.Fatalf("the chisel stands at %v to the lip, not %v", got, math.Pi-d.Chisel)
		}
		if got := math.Hypot(chisel[1].X-chisel[0].X, chisel[1].Y-chisel[0].Y); !near(got, point.ChiselLength(d.Web, d.Chisel), 1e-9*d.D) {
			t.Fatalf("the chisel is %v long", got)
		}
		if got := end.named("end-lip-2")[0].X - lip[0].X; !near(got, d.Web, 1e-9*d.D) {
			t.Fatalf("the lips' lines are %v apart, not %v", got, d.Web)
		}
	})
}

// Where the leading edge crosses the axis in the side view it shows the helix
// angle at its true size (common practice: that is where it is measured).
func TestHelixMeasuredOffTheSideView(t *testing.T) {
	d := usual()
	var v View
	d.helices(&v, -60)
	found := 0
	for _, p := range v.Paths {
		for n := 1; n < len(p.Points); n++ {
			a, b := p.Points[n-1], p.Points[n]
			if a.Y*b.Y > 0 {
				continue
			}
			found++
			r := math.Tan(d.Helix)
			if p.Points[0].Y < 0.951*d.D/2 && math.Abs(p.Points[len(p.Points)-1].Y) < 0.951*d.D/2 {
				r *= d.Land.Body // the heel stands at a smaller radius
			}
			if got := math.Abs((b.Y - a.Y) / (b.X - a.X)); !near(got, r, 2e-3) {
				t.Errorf("an edge crosses the axis with slope %v, not %v", got, r)
			}
		}
	}
	if found < 3 {
		t.Errorf("%d edges cross the axis", found)
	}
}

// The outline is what turning the section shows: never inside the web, and
// where a land passes it has the body's radius.
func TestSilhouette(t *testing.T) {
	d := usual()
	top, bottom := d.silhouette(-40)
	most, least := 0.0, math.Inf(1)
	for i, q := range top {
		most, least = math.Max(most, q.Y), math.Min(least, q.Y)
		if i < len(bottom) && !near(q.Y, -bottom[i].Y, 1e-9) {
			t.Fatalf("an even drill's outline is %v above and %v below", q.Y, bottom[i].Y)
		}
	}
	if !near(most, 6, 1e-3) || least < 1 || least > 5 {
		t.Errorf("the outline runs between %v and %v", least, most)
	}
}

func TestBeforeIsDashed(t *testing.T) {
	d, before := usual(), usual()
	for i := range d.Lips {
		d.Lips[i].Corner -= 0.8
	}
	side := Side(&d, &before)
	was, is := side.named("side-before-lip-1"), side.named("side-lip-1")
	if len(was) != 2 || !near(is[0].X-was[0].X, 0.8, 1e-9) {
		t.Fatalf("before %v, after %v", was, is)
	}
	if n := len(cloud(End(&d, &before), Dashed, 1)); n != 6 {
		t.Errorf("%d dashed points in the end view", n)
	}
	for _, q := range cloud(side, Dashed, 1) {
		if q.X > is[0].X+0.5 {
			t.Errorf("the drill before is drawn as far as %v", q)
		}
	}
}

func TestCheckRefuses(t *testing.T) {
	nan := math.NaN()
	for want, change := range map[string]func(*Drill){
		"size":          func(d *Drill) { d.D = 0 },
		"web":           func(d *Drill) { d.Web = 6.1 },
		"chisel-angle":  func(d *Drill) { d.Chisel = 8 * deg },
		"helix":         func(d *Drill) { d.Helix = 75 * deg },
		"lip-angle":     func(d *Drill) { d.Lips[1].HalfAngle = 90 * deg },
		"lip-height":    func(d *Drill) { d.Lips[0].Corner = nan },
		"clearance":     func(d *Drill) { d.Lips[0].Clearance = 60 * deg },
		"margin":        func(d *Drill) { d.Land.Margin = -1 },
		"body diameter": func(d *Drill) { d.Land.Body = 1.01 },
		"flute":         func(d *Drill) { d.Land.Flute = 30 * deg },
	} {
		d := usual()
		change(&d)
		var domain *point.DomainError
		if err := d.Check(); !errors.As(err, &domain) || domain.Quantity != want {
			t.Errorf("%s: %v", want, err)
		}
	}
	if d := usual(); d.Check() != nil {
		t.Error(d.Check())
	}
	for _, bad := range []float64{nan, math.Inf(1), -1} {
		d := usual()
		d.D = bad
		if d.Check() == nil {
			t.Errorf("a drill of %v is drawn", bad)
		}
	}
}
