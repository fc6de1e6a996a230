package point_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// plain118 is a 10 mm drill at 118 degrees, web 0.15 D and clearance 12.
var plain118 = point.Wanted{D: 10, Web: 1.5, HalfAngle: 59 * deg, Clearance: 12 * deg, SemiAngle: 30 * deg}

func TestConeCheckValues(t *testing.T) {
	apart := testkit.Against(t, testkit.Derived, "cone-ground points of 10 mm, web 1.5 mm, cone of 30°, by vectors and brute force")
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
		name := fmt.Sprintf("%g°, ", 2*c.w.HalfAngle/deg)
		apart.Within(name+"axis angle", s.AxisAngle/deg, c.phi, 0.00006, "°")
		apart.Within(name+"axis offset", s.Offset, c.s, 0.00006, "mm")
		apart.Within(name+"chisel at the axis", point.Obtuse(cone.ChiselTangent())/deg, c.tangent, 0.00006, "°")
		apart.Within(name+"chisel, chord", point.Obtuse(cone.Chisel())/deg, c.chord, 0.00006, "°")
		apart.Within(name+"chisel length", cone.ChiselLength(), c.len, 0.00006, "mm")
		near(t, "vertex", s.Vertex, c.d, 0)
		near(t, "semi-angle", s.SemiAngle, 30*deg, 0)
		if cone.Point() != c.w {
			t.Errorf("point is %+v, want %+v", cone.Point(), c.w)
		}
	}
}

// For ordinary points semi-angle and axis angle add to half the point angle.
func TestSemiAngleAndAxisAngle(t *testing.T) {
	fugelso := testkit.Against(t, testkit.Fugelso, "semi-angle and axis angle add to half the point angle within 0.7°")
	for _, th := range []float64{20, 25, 30} {
		for _, pointAngle := range []float64{118, 135} {
			for _, cl := range []float64{8, 10, 12} {
				w := point.Wanted{D: 10, Web: 1.5, HalfAngle: pointAngle / 2 * deg, Clearance: cl * deg, SemiAngle: th * deg}
				cone, err := w.WithChisel(125 * deg)
				if err != nil {
					t.Fatal(err)
				}
				name := fmt.Sprintf("cone %g°, point %g°, clearance %g°", th, pointAngle, cl)
				fugelso.Within(name, th+cone.Setting().AxisAngle/deg, pointAngle/2, 0.7, "°")
			}
		}
	}
}

// Common practice: a cone of 26 degrees included, its axis at 45 degrees to the
// drill's, gives a point of 116 to 118. It does not quite: lip, swing axis and
// drill axis are the sides of a spherical triangle, so half the point angle is
// never more than 13 + 45, and the clearance, which moves the axes apart, takes
// up to half a degree off the 116. What can be ground meets the lower end of the
// band from below; its upper end wants the axis at 46.
func TestNarrowConeAt45(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "cone of 26° included, axis at 45°: a point of 116 to 118°").Because("it is 2 (13° + 45°) at most, and less with any clearance")
	least, most, ground := math.Inf(1), 0.0, 0
	for _, web := range []float64{1, 1.25, 1.5, 1.75, 2} {
		for offset := 0.3; offset < 2; offset += 0.02 {
			for vertex := 3.0; vertex < 25; vertex *= 1.03 {
				cone, err := point.Setting{SemiAngle: 13 * deg, AxisAngle: 45 * deg, Offset: offset, Vertex: vertex}.Point(10, web)
				if err != nil {
					continue
				}
				p, chisel := cone.Point(), point.Obtuse(cone.Chisel())/deg
				if p.Clearance < 8*deg || p.Clearance > 15*deg || chisel < 115 || chisel > 135 {
					continue
				}
				ground++
				least, most = math.Min(least, 2*p.HalfAngle/deg), math.Max(most, 2*p.HalfAngle/deg)
			}
		}
	}
	if ground < 1000 {
		t.Errorf("only %d settings grind an ordinary point", ground)
	}
	trade.Within("smallest point of the ordinary settings", least, 116, 0.5, "°")
	trade.Within("largest point of the ordinary settings", most, 116, 0.005, "°")
	w := plain118
	w.SemiAngle = 13 * deg
	cone, err := w.WithChisel(125 * deg)
	if err != nil {
		t.Fatal(err)
	}
	trade.Within("axis angle for a point of 118°", cone.Setting().AxisAngle/deg, 45, 1.2, "°")
}

func TestPointAngleIsNoMoreThanTheAxesMake(t *testing.T) {
	testkit.Property(t, "half the point angle is no more than semi-angle and axis angle together, and no less than their difference", func(t *rapid.T) {
		s := point.Setting{
			SemiAngle: rapid.Float64Range(2, 60).Draw(t, "th") * deg, AxisAngle: rapid.Float64Range(2, 60).Draw(t, "phi") * deg,
			Offset: rapid.Float64Range(-1, 4).Draw(t, "s"), Vertex: rapid.Float64Range(0.5, 30).Draw(t, "d"),
		}
		cone, err := s.Point(10, 1.5)
		if err != nil {
			t.Skip("no point")
		}
		if k := cone.Point().HalfAngle; k > s.SemiAngle+s.AxisAngle+1e-12 || k < math.Abs(s.SemiAngle-s.AxisAngle)-1e-12 {
			t.Fatalf("%+v gives a point of %g", s, 2*k/deg)
		}
	})
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

func TestConeScales(t *testing.T) {
	testkit.Property(t, "a cone scaled with its drill keeps its angles", func(t *rapid.T) {
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
	testkit.Property(t, "the chisel angle rises with the vertex distance, within the range said", func(t *rapid.T) {
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

// Armarego and Rotenberg, 1973: point angle, clearance and chisel leave one
// parameter of the fixture free. Every semi-angle of an ordinary fixture grinds
// the one point, each with a setting of its own.
func TestOneChoiceRemainsFree(t *testing.T) {
	last := 0.0
	for _, th := range []float64{15, 20, 25, 30, 35} {
		w := plain118
		w.SemiAngle = th * deg
		cone, err := w.WithChisel(126 * deg)
		if err != nil {
			t.Fatal(err)
		}
		s := cone.Setting()
		ground, err := s.Point(w.D, w.Web)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "half angle", ground.Point().HalfAngle, w.HalfAngle, 1e-9)
		near(t, "clearance", ground.Point().Clearance, w.Clearance, 1e-9)
		near(t, "chisel", ground.Chisel(), 54*deg, 1e-9)
		if s.AxisAngle == last {
			t.Errorf("%v is set as the one before", th)
		}
		last = s.AxisAngle
	}
}
