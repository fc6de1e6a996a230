package point_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"evenlip/internal/point"
)

// plain118 is a 10 mm drill at 118 degrees, web 0.15 D and clearance 12.
var plain118 = point.Wanted{D: 10, Web: 1.5, HalfAngle: 59 * deg, Clearance: 12 * deg, SemiAngle: 30 * deg}

// derived, checked by vectors and brute force
func TestConeCheckValues(t *testing.T) {
	flat135 := point.Wanted{D: 10, Web: 1.5, HalfAngle: 67.5 * deg, Clearance: 10 * deg, SemiAngle: 30 * deg}
	for _, c := range []struct {
		w                              point.Wanted
		d, phi, s, tangent, chord, len float64
	}{
		{plain118, 4.808, 29.2817, 1.2644, 125.0011, 126.5790, 1.8679},
		{flat135, 5.000, 37.7448, 1.1805, 134.7068, 137.5927, 2.2242},
	} {
		cone, err := c.w.WithVertex(c.d)
		if err != nil {
			t.Fatal(err)
		}
		s := cone.Setting()
		near(t, "axis angle", s.AxisAngle, c.phi*deg, 0.00006*deg)
		near(t, "offset", s.Offset, c.s, 0.00006)
		near(t, "chisel at the axis", point.Obtuse(cone.ChiselTangent()), c.tangent*deg, 0.00006*deg)
		near(t, "chisel", point.Obtuse(cone.Chisel()), c.chord*deg, 0.00006*deg)
		near(t, "chisel length", cone.ChiselLength(), c.len, 0.00006)
		near(t, "vertex", s.Vertex, c.d, 0)
		near(t, "semi-angle", s.SemiAngle, 30*deg, 0)
		if cone.Point() != c.w {
			t.Errorf("point is %+v, want %+v", cone.Point(), c.w)
		}
	}
}

// Fugelso, 2001: for ordinary points semi-angle and axis angle add to half the
// point angle within 0.7 degrees.
func TestSemiAngleAndAxisAngle(t *testing.T) {
	for _, th := range []float64{20, 25, 30} {
		for _, pointAngle := range []float64{118, 135} {
			for _, cl := range []float64{8, 10, 12} {
				w := point.Wanted{D: 10, Web: 1.5, HalfAngle: pointAngle / 2 * deg, Clearance: cl * deg, SemiAngle: th * deg}
				cone, err := w.WithChisel(125 * deg)
				if err != nil {
					t.Fatal(err)
				}
				near(t, "th + phi", th*deg+cone.Setting().AxisAngle, w.HalfAngle, 0.7*deg)
			}
		}
	}
}

// common practice: a cone of 26 degrees included, its axis at 45 degrees to the
// drill's, grinds points of 116 to 118 degrees.
func TestNarrowConeAt45(t *testing.T) {
	w := plain118
	w.SemiAngle, w.Clearance = 13*deg, 10*deg
	cone, err := w.WithChisel(125 * deg)
	if err != nil {
		t.Fatal(err)
	}
	s := cone.Setting()
	s.AxisAngle = 45 * deg
	ground, err := s.Point(10, 1.5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "point angle", 2*ground.Point().HalfAngle, 117*deg, 1.25*deg)
}

// drawCone draws a point within reach, one that any fixture could grind.
func drawCone(t *rapid.T) point.Cone {
	d := rapid.Float64Range(2, 50).Draw(t, "d")
	w := point.Wanted{
		D: d, Web: d * rapid.Float64Range(0.05, 0.25).Draw(t, "w/d"),
		HalfAngle: rapid.Float64Range(45, 75).Draw(t, "k") * deg,
		Clearance: rapid.Float64Range(5, 20).Draw(t, "cl") * deg,
		SemiAngle: rapid.Float64Range(13, 40).Draw(t, "th") * deg,
	}
	low, high, err := w.Chisels()
	if err != nil {
		t.Fatal(err)
	}
	cone, err := w.WithChisel(low + (high-low)*rapid.Float64Range(0.05, 0.95).Draw(t, "psi"))
	if err != nil {
		t.Fatal(err)
	}
	return cone
}

// wheel sweeps the wheel face about the swing axis and gives the lowest that
// it passes over (x, y): the ground surface without any cone's equation.
type wheel struct{ vertex, axis, face r3.Vec }

func newWheel(c point.Cone) wheel {
	p, s := c.Point(), c.Setting()
	sin, cos := math.Sincos(p.HalfAngle)
	face := r3.Unit(r3.Vec{X: cos / sin, Y: -c.Flank().Slope(), Z: 1})
	lip := r3.Vec{X: sin, Z: -cos}
	axis := r3.Sub(r3.Scale(math.Cos(p.SemiAngle), lip), r3.Scale(math.Sin(p.SemiAngle), face))
	return wheel{r3.Vec{X: -s.Vertex, Y: p.Web / 2, Z: s.Vertex * cos / sin}, axis, face}
}

func (w wheel) at(swing, x, y float64) float64 {
	n := r3.Rotate(w.face, swing, w.axis)
	if n.Z <= 1e-9 {
		return math.Inf(1)
	}
	return w.vertex.Z - (n.X*(x-w.vertex.X)+n.Y*(y-w.vertex.Y))/n.Z
}

func (w wheel) lowest(x, y float64) float64 {
	best, at := math.Inf(1), 0.0
	const steps = 720
	for i := range steps {
		if z := w.at(2*math.Pi*float64(i)/steps, x, y); z < best {
			best, at = z, 2*math.Pi*float64(i)/steps
		}
	}
	lo, hi := at-2*math.Pi/steps, at+2*math.Pi/steps
	for range 80 {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if w.at(a, x, y) < w.at(b, x, y) {
			hi = b
		} else {
			lo = a
		}
	}
	return w.at((lo+hi)/2, x, y)
}

func TestConeByTheWheel(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		c := drawCone(t)
		p := c.Point()
		w := newWheel(c)
		r := p.D / 2
		x := r * rapid.Float64Range(-0.2, 1).Draw(t, "x")
		y := r * rapid.Float64Range(-0.7, 0.1).Draw(t, "y")
		h := c.Height(x, y)
		if math.IsNaN(h) || math.Abs(h) > 3*p.D {
			return
		}
		compared++
		near(t, "height", h, w.lowest(x, y), 1e-6*p.D)
		near(t, "on the lip", c.Height(math.Abs(x), p.Web/2), -math.Abs(x)/math.Tan(p.HalfAngle), 1e-9*p.D)
		hx, hy := c.Slope(x, y)
		e := 1e-5 * p.D
		tol := 1e-6 * (1 + hx*hx + hy*hy) * (1 + hx*hx + hy*hy)
		near(t, "dz/dx", hx, (c.Height(x+e, y)-c.Height(x-e, y))/(2*e), tol)
		near(t, "dz/dy", hy, (c.Height(x, y+e)-c.Height(x, y-e))/(2*e), tol)
	})
	if compared < 50 {
		t.Errorf("only %d of the places lay on the cone", compared)
	}
}

// The axes' angle and distance, from the axes as lines in space.
func TestSettingByVectors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCone(t)
		w, s := newWheel(c), c.Setting()
		common := r3.Cross(w.axis, r3.Vec{Z: 1})
		near(t, "axis angle", s.AxisAngle, math.Acos(-w.axis.Z), 1e-9)
		near(t, "offset", math.Abs(s.Offset), math.Abs(r3.Dot(w.vertex, r3.Unit(common))), 1e-9*c.Point().D)
	})
}

// The chisel where the two flanks meet: its corner is the place on the lip's
// line nearest the axis where the other flank stops being the lower, and at
// the axis it runs where the difference of the flanks does not change.
func TestChiselWhereFlanksMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCone(t)
		p := c.Point()
		below := func(x float64) float64 { return c.Height(-x, -p.Web/2) - c.Height(x, p.Web/2) }
		const steps = 4000
		start := math.Min(0, p.Web/2*c.Flank().Slope()*math.Tan(p.HalfAngle)*0.999)
		lo := start
		for i := 1; i <= steps; i++ {
			x := start + (p.D-start)*float64(i)/steps
			if below(x) >= 0 {
				hi := x
				for range 60 {
					if mid := (lo + hi) / 2; below(mid) >= 0 {
						hi = mid
					} else {
						lo = mid
					}
				}
				break
			}
			lo = x
		}
		near(t, "chord", c.Chisel(), math.Atan2(p.Web/2, lo), 1e-6)
		near(t, "length", c.ChiselLength(), 2*math.Hypot(lo, p.Web/2), 1e-6*p.D)

		e := 1e-4 * p.Web
		dx := (c.Height(e, 0) - c.Height(-e, 0)) / e
		dy := (c.Height(0, e) - c.Height(0, -e)) / e
		near(t, "tangent", c.ChiselTangent(), math.Atan2(-dx, dy), 1e-6)
		near(t, "rake", c.ChiselRake(), -math.Atan(2/math.Hypot(dx, dy)), 1e-6)
	})
}

func TestHeel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCone(t)
		p := c.Point()
		f := c.Flank()
		near(t, "at the corner", f.Clearance(p.D/2), p.Clearance, 1e-12)
		near(t, "on the lip", c.Drop(p.D/2, 0), 0, 1e-9*p.D)
		// toward no turn the heel shows the lip clearance
		near(t, "close behind the lip", math.Tan(c.HeelClearance(p.D/2, 1e-5)), math.Tan(p.Clearance), 1e-3)
		turn := rapid.Float64Range(1, 30).Draw(t, "turn") * deg
		drop := c.Drop(p.D/2, turn)
		if math.IsNaN(drop) {
			return
		}
		near(t, "as an indicator reads", c.HeelClearance(p.D/2, turn), point.ClearanceOfDrop(drop, p.D, turn), 1e-12)
		// an independent height at that place
		at := math.Asin(p.Web/p.D) - turn
		corner := -math.Sqrt(p.D*p.D/4-p.Web*p.Web/4) / math.Tan(p.HalfAngle)
		near(t, "drop by the wheel", drop, corner-newWheel(c).lowest(p.D/2*math.Cos(at), p.D/2*math.Sin(at)), 1e-6*p.D)
	})
}

// Random wishes, sane and not: each closes both ways, or is refused with a
// reason that holds.
func TestConeClosesOrRefuses(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 7))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	met, refused := 0, 0
	for range 10000 {
		d := between(1, 80)
		w := point.Wanted{
			D: d, Web: d * between(0.01, 0.6), HalfAngle: between(15, 88) * deg,
			Clearance: between(0.5, 40) * deg, SemiAngle: between(2, 75) * deg,
		}
		psi := between(3, 90) * deg
		cone, err := w.WithChisel(psi)
		if err != nil {
			refused++
			checkRefusal(t, w, psi, err)
			continue
		}
		met++
		s := cone.Setting()
		near(t, "chisel", cone.Chisel(), psi, 0)
		ground, err := s.Point(w.D, w.Web)
		if err != nil {
			t.Fatalf("%+v set as %+v: %v", w, s, err)
		}
		near(t, "half angle", ground.Point().HalfAngle, w.HalfAngle, 1e-9)
		near(t, "clearance", ground.Point().Clearance, w.Clearance, 1e-9)
		near(t, "chisel back", ground.Chisel(), psi, 1e-9)
		again, err := w.WithVertex(s.Vertex)
		if err != nil {
			t.Fatalf("%+v with vertex %g: %v", w, s.Vertex, err)
		}
		near(t, "chisel of the vertex", again.Chisel(), psi, 1e-9)
		near(t, "offset", again.Setting().Offset, s.Offset, 0)
		if t.Failed() {
			t.Fatalf("%+v, psi %g", w, psi/deg)
		}
	}
	if met < 2000 || refused < 2000 {
		t.Errorf("%d met, %d refused: the draw is lopsided", met, refused)
	}
}

// checkRefusal fails the test unless the reason for refusing is true: the
// chisel outside the range, or no range at all, and the ends of a range hold.
func checkRefusal(t *testing.T, w point.Wanted, psi float64, err error) {
	t.Helper()
	var far *point.UnreachableError
	if !errors.As(err, &far) {
		t.Fatalf("%+v, psi %g: %v", w, psi/deg, err)
	}
	if far.Wish != "chisel-edge angle" {
		if !math.IsNaN(far.Low) || !math.IsNaN(far.High) {
			t.Fatalf("%v: no chisel can be had, yet %g to %g is said to be", err, far.Low, far.High)
		}
		return
	}
	if psi >= far.Low && psi <= far.High {
		t.Fatalf("%g refused, though %g to %g is said to be in reach", psi, far.Low, far.High)
	}
	for _, end := range []float64{far.Low, (far.Low + far.High) / 2, far.High} {
		if _, err := w.WithChisel(end); err != nil {
			t.Fatalf("%g is said to be in reach, but: %v", end, err)
		}
	}
}

// A semi-angle of half the point angle: the swing axis leans hardly at all, and
// a vertex that would leave a chisel still lies behind where the axes pass.
func TestVertexBehindTheAxes(t *testing.T) {
	w := point.Wanted{D: 10, Web: 0.5, HalfAngle: 30 * deg, Clearance: 24 * deg, SemiAngle: 30 * deg}
	closest, _, err := w.Vertices()
	if err != nil {
		t.Fatal(err)
	}
	axis := newWheel(mustVertex(t, w, closest)).axis
	near(t, "closest", closest, w.Web/2*axis.Y/axis.X, 0.2)
	_, err = w.WithVertex(0.99 * closest)
	unreachable(t, err, "vertex distance")
	ground, err := mustVertex(t, w, closest).Setting().Point(w.D, w.Web)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "half angle", ground.Point().HalfAngle, w.HalfAngle, 1e-9)
	near(t, "clearance", ground.Point().Clearance, w.Clearance, 1e-9)
}

func mustVertex(t *testing.T, w point.Wanted, vertex float64) point.Cone {
	t.Helper()
	c, err := w.WithVertex(vertex)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestConeScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCone(t)
		s := rapid.Float64Range(0.01, 100).Draw(t, "scale")
		w := c.Point()
		w.D, w.Web = s*w.D, s*w.Web
		big, err := w.WithChisel(c.Chisel())
		if err != nil {
			t.Fatal(err)
		}
		near(t, "vertex", big.Setting().Vertex/s, c.Setting().Vertex, 1e-8*c.Setting().Vertex)
		near(t, "axis angle", big.Setting().AxisAngle, c.Setting().AxisAngle, 1e-10)
		near(t, "tangent", big.ChiselTangent(), c.ChiselTangent(), 1e-8)
	})
}

func TestChiselRisesWithVertex(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCone(t)
		w := c.Point()
		closest, farthest, err := w.Vertices()
		if err != nil {
			t.Fatal(err)
		}
		low, high, err := w.Chisels()
		if err != nil {
			t.Fatal(err)
		}
		v := c.Setting().Vertex
		if !(closest < v && v < farthest && low < c.Chisel() && c.Chisel() < high) {
			t.Fatalf("vertex %g of %g..%g, chisel %g of %g..%g", v, closest, farthest, c.Chisel(), low, high)
		}
		further, err := w.WithVertex(v * 1.001)
		if err != nil {
			return
		}
		if further.Chisel() <= c.Chisel() {
			t.Fatalf("the chisel falls from %g to %g", c.Chisel(), further.Chisel())
		}
	})
	// a vertex far away is a flat flank
	far, err := plain118.WithVertex(1000)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "flat", far.Chisel(), point.FacetChisel(far.Flank().Slope(), 59*deg), 0.5*deg)
}

func TestPinnedCones(t *testing.T) {
	withChisel := func(w point.Wanted, psi float64) error { _, err := w.WithChisel(psi); return err }
	withVertex := func(w point.Wanted, d float64) error { _, err := w.WithVertex(d); return err }

	e := unreachable(t, withVertex(plain118, 0.7), "vertex distance")
	if !(e.Low < 55*deg && 55*deg < e.High) {
		t.Errorf("a vertex inside the web leaves %g to %g", e.Low/deg, e.High/deg)
	}
	unreachable(t, withVertex(plain118, 1001), "vertex distance")
	unreachable(t, withChisel(plain118, 85*deg), "chisel-edge angle")
	unreachable(t, withChisel(plain118, 10*deg), "chisel-edge angle")

	// a clearance smaller than the lip's own fall past the web: the flank rises
	// from the lip as a plane, and a cone still gives a chisel
	low := plain118
	low.Clearance = 3 * deg
	if err := withChisel(low, 125*deg); err != nil {
		t.Error(err)
	}
	if low, high, err := low.Chisels(); err != nil || high > 90*deg+1e-12 || low > 55*deg {
		t.Errorf("chisels %g to %g, error %v", low/deg, high/deg, err)
	}

	// a web so thick and a clearance so small that no cone's chisel comes back
	// to square
	thick := point.Wanted{D: 10, Web: 9.24, HalfAngle: 56 * deg, Clearance: 2.7 * deg, SemiAngle: 53.9 * deg}
	unreachable(t, withChisel(thick, 125*deg), "lip clearance")
	unreachable(t, withVertex(thick, 5), "lip clearance")

	sharp := plain118
	sharp.HalfAngle, sharp.SemiAngle = 30*deg, 13*deg
	if err := withChisel(sharp, 125*deg); err != nil {
		t.Error(err)
	}
	sharp.SemiAngle = 35 * deg
	unreachable(t, withChisel(sharp, 125*deg), "cone semi-angle")
	blunt := plain118
	blunt.HalfAngle, blunt.Clearance = 75*deg, 6*deg
	if err := withChisel(blunt, 125*deg); err != nil {
		t.Error(err)
	}
	blunt.Clearance = 14 * deg
	unreachable(t, withChisel(blunt, 125*deg), "chisel-edge angle")
}

func TestConeRefusesWithReason(t *testing.T) {
	change := func(f func(*point.Wanted)) error { w := plain118; f(&w); _, err := w.WithChisel(1); return err }
	domainError(t, change(func(w *point.Wanted) { w.D = 0 }), "diameter")
	domainError(t, change(func(w *point.Wanted) { w.Web = 10 }), "web thickness")
	domainError(t, change(func(w *point.Wanted) { w.HalfAngle = math.Pi / 2 }), "half point angle")
	domainError(t, change(func(w *point.Wanted) { w.Clearance = 0 }), "lip clearance")
	domainError(t, change(func(w *point.Wanted) { w.SemiAngle = math.NaN() }), "cone semi-angle")
	_, err := plain118.WithChisel(0)
	domainError(t, err, "chisel-edge angle")
	_, err = plain118.WithVertex(-1)
	domainError(t, err, "vertex distance")
	w := plain118
	w.Web = 0
	_, err = w.WithVertex(5)
	domainError(t, err, "web thickness")

	good := point.Setting{SemiAngle: 30 * deg, AxisAngle: 29 * deg, Offset: 1.2, Vertex: 5}
	set := func(f func(*point.Setting)) error { s := good; f(&s); _, err := s.Point(10, 1.5); return err }
	if err := set(func(*point.Setting) {}); err != nil {
		t.Error(err)
	}
	domainError(t, set(func(s *point.Setting) { s.SemiAngle = 0 }), "cone semi-angle")
	domainError(t, set(func(s *point.Setting) { s.AxisAngle = 2 }), "axis angle")
	domainError(t, set(func(s *point.Setting) { s.AxisAngle = 70 * deg }), "axis angle")
	domainError(t, set(func(s *point.Setting) { s.Vertex = math.Inf(1) }), "vertex distance")
	domainError(t, set(func(s *point.Setting) { s.Offset = math.NaN() }), "axis offset")
	domainError(t, set(func(s *point.Setting) { s.Offset = 6 }), "axis offset")
	domainError(t, set(func(s *point.Setting) { s.Offset = -1 }), "axis offset")
	domainError(t, set(func(s *point.Setting) { s.Offset, s.SemiAngle, s.AxisAngle = 5, 10*deg, 60*deg }), "axis offset")

	narrow := plain118
	narrow.SemiAngle = 13 * deg
	cone, err := narrow.WithVertex(12)
	if err != nil {
		t.Fatal(err)
	}
	for name, got := range map[string]float64{
		"drop inside the web":    cone.Drop(0.5, 0.1),
		"drop outside the drill": cone.Drop(5.1, 0.1),
		"drop, half a turn":      cone.Drop(5, math.Pi),
		"drop forward":           cone.Drop(5, -0.1),
		"heel of no turn":        cone.HeelClearance(5, 0),
		"behind the vertex":      cone.Height(-20, 3),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %g, want NaN", name, got)
		}
	}
}
