package point_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// Random wishes, sane and not: each closes both ways, or is refused with a
// reason that holds.
func TestConeClosesOrRefuses(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 7))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	met, refused := 0, 0
	const wishes = 10000
	for range wishes {
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
		if cone.ChiselLength() > d*(1+1e-12) {
			t.Fatalf("%+v, psi %g: the chisel edge is %g, longer than the drill is wide", w, psi/deg, cone.ChiselLength())
		}
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
	testkit.Cases(t, "a point wished for closes both ways within 1e-9, or is refused with a reason that holds", wishes)
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

// A chisel edge no longer than the drill is wide: what leaves no lip is no point.
func TestChiselFromMarginToMargin(t *testing.T) {
	wide := point.Wanted{D: 10, Web: 5.5, HalfAngle: 59 * deg, Clearance: 20 * deg, SemiAngle: 30 * deg}
	low, _, err := wide.Chisels()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "chisel of the drill's width", point.ChiselLength(wide.Web, low), wide.D, 1e-9)
	closest, _, err := wide.Vertices()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "closest vertex", mustVertex(t, wide, closest).ChiselLength(), wide.D, 1e-9)
	_, err = wide.WithVertex(0.999 * closest)
	unreachable(t, err, "vertex distance")
	// so much clearance that no vertex leaves a lip
	wide.Web, wide.Clearance = 9, 60*deg
	_, err = wide.WithChisel(100 * deg)
	unreachable(t, err, "lip clearance")
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
