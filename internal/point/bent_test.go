package point_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// bentCase is a lip at a bench: the flute made for 118 or 135 degrees, mostly.
type bentCase struct {
	lipCase
	made, helix float64
}

func drawBent(t *rapid.T) bentCase {
	d := rapid.Float64Range(1, 60).Draw(t, "d")
	return bentCase{
		lipCase{d, d * rapid.Float64Range(0.08, 0.3).Draw(t, "w/d"), rapid.Float64Range(42, 75).Draw(t, "k") * deg, rapid.Float64Range(4, 18).Draw(t, "cl") * deg},
		rapid.Float64Range(50, 70).Draw(t, "made for") * deg, rapid.Float64Range(-10, 40).Draw(t, "helix") * deg,
	}
}

func (c bentCase) lip() point.BentLip { return point.NewBentLip(c.flank(), c.made, c.helix) }

// Lips worked out once by putting the turn back into its own formula until it stays.
func TestBow(t *testing.T) {
	derived := testkit.Against(t, testkit.Derived, "bow of a lip on a flute made for 118°, 12 mm, web 1.8 mm, helix 30°, clearance 12°, chisel 127°, by repeated substitution")
	inner := point.ChiselCorner(1.8, 53*deg)
	for _, c := range []struct{ k, want float64 }{{45, 0.3097}, {67.5, -0.1352}, {59, 0}} {
		derived.Within(fmt.Sprintf("ground to %g° a lip", c.k), point.NewBentLip(point.NewFlank(12, 1.8, c.k*deg, 12*deg), 59*deg, 30*deg).Bow(inner), c.want, 0.0001, "mm")
	}
}

// Each place of the straight lip is carried along its helix in small steps, up or
// down, until it passes through the flank's plane.
func TestBentLipBySteps(t *testing.T) {
	testkit.Property(t, "a curved lip is where steps along the flute's helix pass through the flank", func(t *rapid.T) {
		c := drawBent(t)
		flank := c.flank()
		outer := math.Sqrt(c.d*c.d-c.w*c.w) / 2
		x := rapid.Float64Range(0, 1).Draw(t, "place") * outer
		q := r3.Vec{X: x, Y: c.w / 2, Z: (outer - x) / math.Tan(c.made)}
		corner := r3.Vec{X: outer, Y: c.w / 2}
		normal := r3.Vec{X: 1 / math.Tan(c.k), Y: -flank.Slope(), Z: 1}
		over := func(q r3.Vec) float64 { return r3.Dot(r3.Sub(q, corner), normal) }
		step := c.d / 20000
		if over(q) > 0 {
			step = -step
		}
		rotate := r3.NewRotation(2*step/c.d*math.Tan(c.helix), r3.Vec{Z: 1})
		last := q
		for n := 0; over(q)*over(last) > 0 && n < 200000; n++ {
			last, q = q, r3.Add(rotate.Rotate(q), r3.Vec{Z: step})
		}
		along, ahead := c.lip().At(x)
		near(t, "along", along, q.X, 1e-4*c.d)
		near(t, "ahead", ahead, q.Y, 1e-4*c.d)
	})
}

// On the angle that the flute was made for the lip is straight, whatever the helix;
// so it is on a straight flute at any angle.
func TestBentLipIsStraight(t *testing.T) {
	testkit.Property(t, "a lip is straight on the angle its flute was made for, and on a straight flute", func(t *rapid.T) {
		c := drawBent(t)
		if rapid.Bool().Draw(t, "straight flute") {
			c.helix = 0
		} else {
			c.made = c.k
		}
		x := rapid.Float64Range(0, 1).Draw(t, "place") * point.AlongLip(c.d/2, c.w)
		along, ahead := c.lip().At(x)
		near(t, "along", along, x, 1e-9*c.d)
		near(t, "ahead", ahead, c.w/2, 1e-9*c.d)
		near(t, "bow", c.lip().Bow(x/2), 0, 1e-9*c.d)
	})
}

// The helix keeps every place at its radius, and the corner where it is; a point
// sharper than the flute's has its lips ahead, a flatter one behind; and the bow is
// the most that a lip departs from the line between its ends, by a grid of places.
func TestBentLipKeepsItsRadii(t *testing.T) {
	testkit.Property(t, "a curved lip keeps its corner and radii, and its bow is the most of a grid of places", func(t *rapid.T) {
		c := drawBent(t)
		lip, outer := c.lip(), point.AlongLip(c.d/2, c.w)
		x0, y0 := lip.At(outer)
		near(t, "the corner, along", x0, outer, 1e-9*c.d)
		near(t, "the corner, ahead", y0, c.w/2, 1e-9*c.d)
		inner := rapid.Float64Range(0, 0.4).Draw(t, "inner") * outer
		x1, y1 := lip.At(inner)
		line := r3.Unit(r3.Vec{X: x0 - x1, Y: y0 - y1})
		most := 0.0
		for n := range 500 {
			x := math.Min(outer, inner+(outer-inner)*float64(n)/499)
			along, ahead := lip.At(x)
			near(t, "radius", math.Hypot(along, ahead), math.Hypot(x, c.w/2), 1e-9*c.d)
			if off := r3.Cross(line, r3.Vec{X: along - x1, Y: ahead - y1}).Z; math.Abs(off) > math.Abs(most) {
				most = off
			}
		}
		bow := lip.Bow(inner)
		near(t, "bow", bow, most, 1e-5*c.d)
		if sharper := (c.k < c.made) == (c.helix > 0); math.Abs(bow) > 1e-4*c.d && sharper != (bow > 0) {
			t.Fatalf("%v on a flute for %v bows by %v", c.k/deg, c.made/deg, bow)
		}
	})
}

func TestBentLipRefuses(t *testing.T) {
	good := point.NewFlank(12, 1.8, 45*deg, 12*deg)
	for what, v := range map[string]float64{
		"a web of nothing":      point.NewBentLip(point.NewFlank(12, 0, 45*deg, 12*deg), 59*deg, 30*deg).Bow(1),
		"made for 90 degrees":   point.NewBentLip(good, 90*deg, 30*deg).Bow(1),
		"a helix of 90 degrees": point.NewBentLip(good, 59*deg, 90*deg).Bow(1),
		"inner end outside":     point.NewBentLip(good, 59*deg, 30*deg).Bow(6),
		"inner end behind":      point.NewBentLip(good, 59*deg, 30*deg).Bow(-0.1),
		"not a number":          point.NewBentLip(good, 59*deg, math.NaN()).Bow(1),
	} {
		if !math.IsNaN(v) {
			t.Errorf("%s: %v", what, v)
		}
	}
}
