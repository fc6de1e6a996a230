package point_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// plane is z = a + b x + c y.
type plane struct{ a, b, c float64 }

// flatPlane is flank 1 of a drill as a plane through three points: the corner at
// that height, a place up the lip, and one behind the corner along the cylinder's
// tangent, lower by the clearance.
func flatPlane(d, web, k, clearance, height float64) plane {
	x, y := point.AlongLip(d/2, web), web/2
	// up the lip z rises by 1/tan k for every mm toward the axis
	b := -1 / math.Tan(k)
	// the tangent of the cylinder at the corner, against the cut: (y, -x) / r
	// carries the flank down by tan(clearance)
	c := (math.Tan(clearance) + b*y/(d/2)) / (x / (d / 2))
	return plane{height - b*x - c*y, b, c}
}

func (p plane) at(x, y float64) float64 { return p.a + p.b*x + p.c*y }

// turned is the plane turned half round the axis.
func (p plane) turned() plane { return plane{p.a, -p.b, -p.c} }

// ends are where the ridge of two flanks meets the lips' lines, y = web/2 of lip 1
// and y = -web/2 of lip 2, found by halving.
func ends(p1, p2 plane, web, far float64) (upper, lower float64) {
	root := func(y float64) float64 {
		low, high := -far, far
		f := func(x float64) float64 { return p1.at(x, y) - p2.at(x, y) }
		for range 200 {
			mid := (low + high) / 2
			if (f(mid) > 0) == (f(low) > 0) {
				low = mid
			} else {
				high = mid
			}
		}
		return low
	}
	return root(web / 2), root(-web / 2)
}

// Worked out twice beforehand: planes through three points, the ridge on a grid.
func TestUnequalClearance(t *testing.T) {
	apart := testkit.Against(t, testkit.Derived, "flat flanks of unequal clearance, 12 mm, web 1.8 mm, 118°, corners level")
	for _, c := range []struct{ c1, c2, offset, lengths float64 }{
		{11, 12, 0.0138, 0.0321}, {10, 14, 0.0553, 0.1290}, {8.2, 15.8, 0.1052, 0.2454}, {8, 16, 0.1107, 0.2584},
	} {
		name := fmt.Sprintf("%g and %g°", c.c1, c.c2)
		g1, g2 := point.NewFlank(12, 1.8, 59*deg, c.c1*deg).Slope(), point.NewFlank(12, 1.8, 59*deg, c.c2*deg).Slope()
		u := point.OffsetOfSlopes(g1, g2, 1.8, 59*deg, 59*deg)
		apart.Within(name+", offset", u, c.offset, 0.00005, "mm")
		apart.Within(name+", lip lengths differ by", 2*u/math.Sin(59*deg), c.lengths, 0.00005, "mm")
	}
	apart.Within("60 and 58°, corners level, 12° each", point.OffsetOfCorners(0, point.AlongLip(6, 1.8), 60*deg, 58*deg)+
		point.OffsetOfSlopes(point.NewFlank(12, 1.8, 60*deg, 12*deg).Slope(), point.NewFlank(12, 1.8, 58*deg, 12*deg).Slope(), 1.8, 60*deg, 58*deg), -0.2399, 0.00005, "mm")
}

// Second computation: the ridge of two planes, its middle found by halving.
func TestOffsetIsTheMiddleOfTheRidge(t *testing.T) {
	testkit.Property(t, "the chisel edge of flat flanks sits where their planes meet", func(t *rapid.T) {
		angle := func(name string, low, high float64) float64 {
			return rapid.Float64Range(low, high).Draw(t, name) * deg
		}
		d, k1, k2 := rapid.Float64Range(3, 40).Draw(t, "d"), angle("k1", 50, 70), angle("k2", 50, 70)
		web, c1, c2 := rapid.Float64Range(0.1, 0.3).Draw(t, "web")*d, angle("c1", 8, 20), angle("c2", 8, 20)
		height := rapid.Float64Range(-0.02, 0.02).Draw(t, "height") * d
		g1, g2 := point.NewFlank(d, web, k1, c1).Slope(), point.NewFlank(d, web, k2, c2).Slope()
		if g1 <= 0.01 || g2 <= 0.01 {
			t.Skip("no slope, no ridge across the web")
		}
		x := point.AlongLip(d/2, web)
		got := point.OffsetOfCorners(height, x, k1, k2) + point.OffsetOfSlopes(g1, g2, web, k1, k2)
		upper, lower := ends(flatPlane(d, web, k1, c1, height), flatPlane(d, web, k2, c2, 0).turned(), web, 20*d)
		if want := (upper + lower) / 2; math.Abs(got-want) > 1e-9*d {
			t.Fatalf("offset %g, the ridge's middle lies at %g", got, want)
		}
		// lip lengths tell the same offset, whatever makes it
		p1, p2 := (x-upper)/math.Sin(k1), (x+lower)/math.Sin(k2)
		if u := point.OffsetOfEndView(p1*math.Sin(k1), p2*math.Sin(k2)); math.Abs(u-got) > 1e-9*d {
			t.Fatalf("offset %g, by the lip lengths %g", got, u)
		}
		// the clearances' part taken off, they tell the height
		if dh := point.HeightOfOffset(got-point.OffsetOfSlopes(g1, g2, web, k1, k2), x, k1, k2); math.Abs(dh-height) > 1e-9*d {
			t.Fatalf("height %g, from the offset %g", height, dh)
		}
	})
}

// The limit of the lip height is used up at that difference, whatever the angle:
// worked out beforehand for new drills' webs, about the clearance usual for the size.
func TestSlopeDifferenceAt(t *testing.T) {
	apart := testkit.Against(t, testkit.Derived, "difference of clearance that uses up a lip-height limit, flat flanks")
	for _, c := range []struct{ d, web, clearance, dh, want float64 }{{12.7, 1.806, 12, 0.102, 6.1}, {10, 1.508, 12, 0.05, 3.6}, {6, 1.025, 16, 0.05, 5.1}, {20, 2.545, 8, 0.127, 5.6}} {
		most := point.SlopeDifferenceAt(c.dh, c.web)
		g := point.NewFlank(c.d, c.web, 59*deg, c.clearance*deg).Slope()
		b := point.WebAngle(c.web, c.d/2)
		clearance := func(g float64) float64 { return math.Atan(g*math.Cos(b) + math.Sin(b)/math.Tan(59*deg)) }
		apart.Within(fmt.Sprintf("%g mm, %g mm", c.d, c.dh), (clearance(g+most/2)-clearance(g-most/2))/deg, c.want, 0.06, "°")
		u := point.OffsetOfSlopes(0.2, 0.2+most, c.web, 59*deg, 59*deg)
		near(t, "offset", u, point.OffsetOfHeight(c.dh, 59*deg), 1e-12)
	}
	for _, v := range []float64{point.SlopeDifferenceAt(-1, 1), point.SlopeDifferenceAt(1, 0), point.OffsetOfSlopes(0, 0, 0, 1, 1), point.OffsetOfSlopes(0, 0, 1, 2, 1),
		point.OffsetOfSlopes(0, 0, 1, 1, 2), point.OffsetOfSlopes(math.NaN(), 0, 1, 1, 1), point.OffsetOfSlopes(0, math.NaN(), 1, 1, 1),
		point.HeightOfOffset(math.NaN(), 1, 1, 1), point.HeightOfOffset(0, 1, 1, 3), point.HeightOfOffset(0, 1, 3, 1)} {
		if !math.IsNaN(v) {
			t.Errorf("%v outside the domain", v)
		}
	}
}

// Half angles that far apart about their mean have cotangents apart by the rise.
func TestAngleDifferenceOf(t *testing.T) {
	testkit.Property(t, "the cotangents of the half angles differ by the rise asked for", func(t *rapid.T) {
		k, rise := rapid.Float64Range(30, 80).Draw(t, "k")*deg, rapid.Float64Range(0, 0.2).Draw(t, "rise")
		a := point.AngleDifferenceOf(rise, k)
		if got := 1/math.Tan(k-a/2) - 1/math.Tan(k+a/2); math.Abs(got-rise) > 1e-12 || a < 0 {
			t.Fatalf("%v apart at %v: %v, not %v", a, k, got, rise)
		}
	})
	for _, v := range []float64{point.AngleDifferenceOf(-1, 1), point.AngleDifferenceOf(0.1, 2), point.AngleDifferenceOf(math.NaN(), 1)} {
		if !math.IsNaN(v) {
			t.Errorf("%v outside the domain", v)
		}
	}
}
