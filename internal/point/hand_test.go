package point_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// upright is the shop's vertical while the lip is laid on: in the face and
// square to the lip.
func upright(c point.Cone) (up, face, lip r3.Vec) {
	w := newWheel(c)
	sin, cos := math.Sincos(c.Point().HalfAngle)
	lip = r3.Vec{X: sin, Z: -cos}
	return r3.Unit(r3.Cross(w.face, lip)), w.face, lip
}

func TestHandByVectors(t *testing.T) {
	testkit.Property(t, "what a hand's hold grinds is what vectors make of it", func(t *rapid.T) {
		c := drawCone(t)
		h, w := c.Hand(), newWheel(c)
		up, face, lip := upright(c)
		out := r3.Vec{Z: 1}
		near(t, "the swing axis lies level", r3.Dot(w.axis, up), 0, 1e-12)
		near(t, "shank low", math.Sin(h.ShankLow), r3.Dot(out, up), 1e-12)
		level := r3.Sub(out, r3.Scale(r3.Dot(out, up), up))
		near(t, "in plan", h.Plan, math.Asin(r3.Dot(r3.Unit(level), face)), 1e-9)
		near(t, "the lip leads away", r3.Dot(lip, up), 0, 1e-12)
		roll := r3.Dot(w.axis, out)
		drop := r3.Norm(r3.Sub(w.axis, r3.Scale(roll, out)))
		near(t, "drop to roll", h.Drop, drop/math.Abs(roll), 1e-9)
		// The pivot is where the swing axis comes nearest the drill axis.
		apart := func(s float64) float64 {
			p := r3.Add(w.vertex, r3.Scale(s, w.axis))
			return math.Hypot(p.X, p.Y)
		}
		at := r3.Add(w.vertex, r3.Scale(lowestOf(apart, 0, 40*c.Point().D), w.axis))
		near(t, "pivot", h.Pivot, -at.Z, 1e-5*(c.Point().D+math.Abs(h.Pivot)))
		near(t, "its distance", math.Hypot(at.X, at.Y), math.Abs(c.Setting().Offset), 1e-9*c.Point().D)
	})
}

// lowestOf finds where a function with one valley is lowest.
func lowestOf(f func(float64) float64, lo, hi float64) float64 {
	for range 200 {
		if a, b := lo+(hi-lo)/3, hi-(hi-lo)/3; f(a) < f(b) {
			hi = b
		} else {
			lo = a
		}
	}
	return (lo + hi) / 2
}

// To hold the shank lower is to turn drill and flank about the lip: the face of
// the wheel, seen from the drill, turns the other way, and the swing about its
// level axis stays what it was.
func TestShankLoweredTurnsAboutTheLip(t *testing.T) {
	testkit.Property(t, "holding the shank lower turns drill and flank about the lip", func(t *rapid.T) {
		c := drawCone(t)
		by := rapid.Float64Range(-2, 2).Draw(t, "by") * deg
		low, err := c.ShankLowered(by)
		if err != nil {
			t.Skip("out of reach")
		}
		near(t, "lower by", low.Hand().ShankLow-c.Hand().ShankLow, by, 1e-12)
		near(t, "half angle", low.Point().HalfAngle, c.Point().HalfAngle, 0)
		near(t, "semi-angle", low.Point().SemiAngle, c.Point().SemiAngle, 0)
		near(t, "vertex", low.Setting().Vertex, c.Setting().Vertex, 0)
		_, face, lip := upright(c)
		_, now, _ := upright(low)
		near(t, "the face still holds the lip", r3.Dot(now, lip), 0, 1e-12)
		// From level the turn about the lip is larger than the shank's own: the
		// drill stands askew to the lip.
		turned := math.Atan2(r3.Dot(r3.Cross(face, now), lip), r3.Dot(face, now))
		if math.Abs(by) > 1e-6 && (turned > 0) != (by > 0) {
			t.Fatalf("lower by %v, turned %v", by/deg, turned/deg)
		}
		back, err := low.ShankLowered(-by)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "and back", back.Point().Clearance, c.Point().Clearance, 1e-12)
	})
}

func TestDropTimesKeepsThePivot(t *testing.T) {
	testkit.Property(t, "a hand that drops otherwise keeps its pivot", func(t *rapid.T) {
		c := drawCone(t)
		factor := rapid.Float64Range(0.8, 1.25).Draw(t, "factor")
		now, err := c.DropTimes(factor)
		if err != nil {
			t.Skip("out of reach")
		}
		near(t, "drop to roll", now.Hand().Drop, factor*c.Hand().Drop, 1e-9*factor)
		near(t, "clearance", now.Point().Clearance, c.Point().Clearance, 0)
		near(t, "laid on alike", now.Hand().ShankLow, c.Hand().ShankLow, 1e-12)
		// The new swing axis passes the old one where that was nearest the drill.
		was, is := newWheel(c), newWheel(now)
		across := math.Hypot(was.axis.X, was.axis.Y)
		pivot := r3.Add(was.vertex, r3.Scale(-(was.vertex.X*was.axis.X+was.vertex.Y*was.axis.Y)/(across*across), was.axis))
		near(t, "off the pivot", r3.Norm(r3.Cross(r3.Sub(pivot, is.vertex), is.axis)), 0, 1e-8*c.Point().D)
	})
	same, err := mustVertex(t, plain118, 4.808).DropTimes(1)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "once is the same", same.Setting().Vertex, 4.808, 1e-9)
	_, err = same.DropTimes(0)
	domainError(t, err, "drop")
	// A wide cone whose axis stands askew to the drill by no more than the face does.
	wide := point.Wanted{D: 2, Web: 0.25, HalfAngle: 45 * deg, Clearance: 20 * deg, SemiAngle: 40 * deg}
	low, high, err := wide.Chisels()
	if err != nil {
		t.Fatal(err)
	}
	least, err := wide.WithChisel(low + 0.95*(high-low))
	if err != nil {
		t.Fatal(err)
	}
	_, err = least.DropTimes(0.8)
	domainError(t, err, "drop")
	if _, err := same.DropTimes(50); err == nil {
		t.Error("a swing that is all drop leaves a point")
	}
	if _, err := same.ShankLowered(80 * deg); err == nil {
		t.Error("a shank 80 degrees low lets the lip lie on the face")
	}
}

// What the trade says of a hand's faults, for ordinary points.
func TestFaultsOfTheHand(t *testing.T) {
	testkit.Property(t, "a hand's faults do to the point what the trade says of them", func(t *rapid.T) {
		w := point.Wanted{D: 10, Web: rapid.Float64Range(1.2, 1.8).Draw(t, "web"), HalfAngle: rapid.Float64Range(57, 62).Draw(t, "k") * deg,
			Clearance: rapid.Float64Range(9, 13).Draw(t, "cl") * deg, SemiAngle: rapid.Float64Range(22, 32).Draw(t, "th") * deg}
		c, err := w.WithChisel(rapid.Float64Range(122, 132).Draw(t, "psi") * deg)
		if err != nil {
			t.Skip("out of reach")
		}
		const turn = 30 * deg
		more := func(what string, a, b float64) {
			if !(a > b) {
				t.Fatalf("%s: %v, and %v as it should be", what, a/deg, b/deg)
			}
		}
		// read in print: Machinery Repairman, NAVEDTRA 12204-A: lip clearance and
		// chisel angle both grow with the clearance and are guides to it
		low, err := c.ShankLowered(1 * deg)
		if err != nil {
			t.Skip("out of reach")
		}
		more("shank too low, clearance", low.Point().Clearance, c.Point().Clearance)
		more("shank too low, chisel", point.Obtuse(low.Chisel()), point.Obtuse(c.Chisel()))
		high, err := c.ShankLowered(-1 * deg)
		if err != nil {
			t.Skip("out of reach")
		}
		more("shank too high, clearance", c.Point().Clearance, high.Point().Clearance)
		more("shank too high, chisel", point.Obtuse(c.Chisel()), point.Obtuse(high.Chisel()))
		// common practice: the more the shank drops the more the heel is ground
		// away; a drill rolled too soon is left high behind the lip
		much, err := c.DropTimes(1.1)
		if err != nil {
			t.Skip("out of reach")
		}
		more("dropped too much, heel", much.HeelClearance(5, turn), c.HeelClearance(5, turn))
		little, err := c.DropTimes(0.9)
		if err != nil {
			t.Skip("out of reach")
		}
		more("dropped too little, heel", c.HeelClearance(5, turn), little.HeelClearance(5, turn))
		more("rolled too soon, heel", c.HeelClearance(5, turn), c.RolledFirst(5, turn, 5*deg))
		near(t, "not rolled first", c.RolledFirst(5, turn, 0), c.HeelClearance(5, turn), 0)
		near(t, "rolled all the way", c.RolledFirst(5, turn, turn), 0, 1e-12)
	})
	c := mustVertex(t, plain118, 4.808)
	for _, got := range []float64{c.RolledFirst(5, 0, 0), c.RolledFirst(5, 0.5, -0.1), c.RolledFirst(5, 0.5, math.NaN())} {
		if !math.IsNaN(got) {
			t.Errorf("%v, want NaN", got)
		}
	}
}

// Where a drill rolled too soon has its chisel's corner, the other flank, turned
// back by the roll, stands as high as the lip; the corner is still on the lip.
func TestRolledFirstChisel(t *testing.T) {
	testkit.Property(t, "the chisel of a drill rolled too soon ends where lip and flank meet", func(t *rapid.T) {
		c := drawCone(t)
		first := rapid.Float64Range(0.1, 6).Draw(t, "first") * deg
		psi := c.RolledFirstChisel(first)
		if math.IsNaN(psi) && c.Chisel() < 45*deg {
			t.Skip("the edge runs beside the lip")
		}
		if !(psi < c.Chisel()) {
			t.Fatalf("%v, rolled by %v from %v", psi/deg, first/deg, c.Chisel()/deg)
		}
		x, y := c.Point().Web/2/math.Tan(psi), c.Point().Web/2
		sin, cos := math.Sincos(first)
		other := c.Height(-(x*cos - y*sin), -(x*sin + y*cos))
		near(t, "the flank at the corner", other, -x/math.Tan(c.Point().HalfAngle), 1e-9*c.Point().D)
	})
	c := mustVertex(t, plain118, 4.808)
	near(t, "hardly rolled", c.RolledFirstChisel(1e-6), c.Chisel(), 1e-6)
	if turned := c.Chisel() - c.RolledFirstChisel(5*deg); !(turned > 1*deg && turned < 5*deg) {
		t.Errorf("corner to corner turned by %v, the middle by 5", turned/deg)
	}
	for _, first := range []float64{-0.1, 0, math.NaN(), math.Pi} {
		if got := c.RolledFirstChisel(first); !math.IsNaN(got) {
			t.Errorf("rolled by %v: %v, want NaN", first, got)
		}
	}
}
