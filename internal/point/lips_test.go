package point_test

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// A point off toward lip 1, built from coordinates: both lips fall from the
// tip at x = u to the drill's radius.
func TestOffsetOfEqualAngles(t *testing.T) {
	const u, k, r = 0.2, 59 * deg, 5.0
	l1, l2 := r-u, r+u
	z1, z2 := -l1/math.Tan(k), -l2/math.Tan(k)
	near(t, "height difference", point.OffsetOfHeight(z1-z2, k), u, 1e-12)
	near(t, "end view", point.OffsetOfEndView(l1, l2), u, 1e-12)
}

func TestHeightDifferenceOfAngles(t *testing.T) {
	near(t, "equal", point.HeightDifferenceOfAngles(5, 1, 1), 0, 0)
	// elementary: 45 degrees falls by the radius, 60 by the radius over root 3
	near(t, "60 over 45", point.HeightDifferenceOfAngles(3, 60*deg, 45*deg), 3-math.Sqrt(3), 1e-12)
}

func TestChipShare(t *testing.T) {
	for _, c := range []struct{ dh, share1, share2 float64 }{
		{0, 0.5, 0.5}, {0.05, 0.75, 0.25}, {-0.05, 0.25, 0.75}, {0.1, 1, 0}, {3, 1, 0}, {-3, 0, 1},
	} {
		a, b := point.ChipShare(0.2, c.dh)
		near(t, "lip 1", a, c.share1, 1e-12)
		near(t, "lip 2", b, c.share2, 1e-12)
	}
}

// chiselCorner is where both flanks and the plane y = side meet, each flank a
// plane through its lip: the second computation of LipsFromLengths.
func chiselCorner(n1, n2 r3.Vec, d1, d2, side float64) r3.Vec {
	ny := r3.Vec{Y: 1}
	num := r3.Add(r3.Add(r3.Scale(d1, r3.Cross(n2, ny)), r3.Scale(d2, r3.Cross(ny, n1))), r3.Scale(side, r3.Cross(n1, n2)))
	return r3.Scale(1/r3.Dot(n1, r3.Cross(n2, ny)), num)
}

func TestLipsFromLengthsByVectors(t *testing.T) {
	testkit.Property(t, "offset and heights from lip lengths are those of a point built in space", func(t *rapid.T) {
		d := rapid.Float64Range(1, 60).Draw(t, "d")
		w := d * rapid.Float64Range(0.05, 0.3).Draw(t, "w/d")
		k1 := rapid.Float64Range(40, 75).Draw(t, "k1") * deg
		k2 := k1 + rapid.Float64Range(-4, 4).Draw(t, "dk")*deg
		u := d * rapid.Float64Range(-0.05, 0.05).Draw(t, "u/d")
		g := rapid.Float64Range(0.1, 0.4).Draw(t, "g")
		m1, m2 := 1/math.Tan(k1), 1/math.Tan(k2)
		// flank 1: z + m1 x - g y = z01 - g w/2, flank 2: z - m2 x + g y = z02 - g w/2
		z01, z02 := u*(m1+m2), 0.0
		n1, n2 := r3.Vec{X: m1, Y: -g, Z: 1}, r3.Vec{X: -m2, Y: g, Z: 1}
		in1 := chiselCorner(n1, n2, z01-g*w/2, z02-g*w/2, w/2)
		in2 := chiselCorner(n1, n2, z01-g*w/2, z02-g*w/2, -w/2)
		x := math.Sqrt(d*d/4 - w*w/4)
		out1, out2 := r3.Vec{X: x, Y: w / 2, Z: z01 - m1*x}, r3.Vec{X: -x, Y: -w / 2, Z: z02 - m2*x}
		p, err := point.LipsFromLengths(r3.Norm(r3.Sub(out1, in1)), r3.Norm(r3.Sub(out2, in2)), k1, k2, d, w)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "offset", p.Offset, u, 1e-10*d)
		near(t, "at the corner", p.AtCorner, out1.Z-out2.Z, 1e-10*d)
		mid := x - (out1.X-in1.X+in2.X-out2.X)/4
		near(t, "at mid lip", p.AtMidLip, z01-z02-mid*(m1-m2), 1e-10*d)
		near(t, "offset back", point.OffsetOfCorners(p.AtCorner, x, k1, k2), u, 1e-9*d)
		seen := (out1.X - in1.X + in2.X - out2.X) / 2
		near(t, "length difference", point.LengthDifference(u, seen, k1, k2),
			r3.Norm(r3.Sub(out1, in1))-r3.Norm(r3.Sub(out2, in2)), 1e-9*d)
		near(t, "a lip through its corner", point.LipThrough(x, out1.Z, k1).At(in1.X), in1.Z, 1e-10*d)
	})
}

func TestLipsFromLengthsEqualAngles(t *testing.T) {
	p, err := point.LipsFromLengths(5, 5.2, 59*deg, 59*deg, 10, 1.5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "longer lip is lower", p.AtCorner, 0.2*math.Cos(59*deg), 1e-12)
	near(t, "the same at mid lip", p.AtMidLip, p.AtCorner, 1e-12)
	near(t, "offset", p.Offset, 0.1*math.Sin(59*deg), 1e-12)
	near(t, "equal angles need no x", point.OffsetOfCorners(p.AtCorner, math.NaN(), 59*deg, 59*deg), p.Offset, 1e-12)
	near(t, "equal angles need no lip", point.LengthDifference(p.Offset, math.NaN(), 59*deg, 59*deg), -0.2, 1e-12)
}

func TestTruingEqualAngles(t *testing.T) {
	p, err := point.Truing(point.Lip{Height0: 0.3, HalfAngle: 59 * deg}, point.Lip{HalfAngle: 59 * deg}, 0.8, 5, 59*deg)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "high lip, inside", p.Stock1Inner, 0.3, 1e-12)
	near(t, "high lip, outside", p.Stock1Outer, 0.3, 1e-12)
	near(t, "low lip", math.Max(p.Stock2Inner, p.Stock2Outer), 0, 1e-12)
	near(t, "most", p.Most(), 0.3, 1e-12)
}

func TestMostStock(t *testing.T) {
	for i := range 4 {
		s := [4]float64{1, 1, 1, 1}
		s[i] = 2
		p := point.TruingPlan{Stock1Inner: s[0], Stock1Outer: s[1], Stock2Inner: s[2], Stock2Outer: s[3]}
		near(t, "most", p.Most(), 2, 0)
	}
}

type lipPair struct {
	l1, l2               point.Lip
	inner, outer, target float64
}

func drawPair(t *rapid.T) lipPair {
	angle := rapid.Float64Range(30, 80)
	outer := rapid.Float64Range(1, 40).Draw(t, "outer")
	return lipPair{
		point.Lip{Height0: rapid.Float64Range(-3, 3).Draw(t, "z1"), HalfAngle: angle.Draw(t, "k1") * deg},
		point.Lip{Height0: rapid.Float64Range(-3, 3).Draw(t, "z2"), HalfAngle: angle.Draw(t, "k2") * deg},
		outer * rapid.Float64Range(0, 0.5).Draw(t, "inner"), outer, angle.Draw(t, "target") * deg,
	}
}

func TestTruingIsFeasibleAndLeast(t *testing.T) {
	testkit.Property(t, "truing puts no metal on, takes none off at one end, and knows no first lip", func(t *rapid.T) {
		c := drawPair(t)
		p, err := point.Truing(c.l1, c.l2, c.inner, c.outer, c.target)
		if err != nil {
			t.Fatal(err)
		}
		stocks := []float64{p.Stock1Inner, p.Stock1Outer, p.Stock2Inner, p.Stock2Outer}
		places := []float64{
			c.l1.At(c.inner) - p.Line.At(c.inner), c.l1.At(c.outer) - p.Line.At(c.outer),
			c.l2.At(c.inner) - p.Line.At(c.inner), c.l2.At(c.outer) - p.Line.At(c.outer),
		}
		least := math.Inf(1)
		for i, s := range stocks {
			near(t, "stock against heights", s, places[i], 1e-9)
			if s < 0 {
				t.Fatalf("stock %d is %g: metal would have to be put on", i, s)
			}
			least = math.Min(least, s)
		}
		// any higher line at the target angle would need metal at this end
		if least != 0 {
			t.Fatalf("every end loses %g or more: the line could stand higher", least)
		}

		again, err := point.Truing(p.Line, p.Line, c.inner, c.outer, c.target)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "truing a true point", again.Most(), 0, 1e-12)

		swapped, err := point.Truing(c.l2, c.l1, c.inner, c.outer, c.target)
		if err != nil {
			t.Fatal(err)
		}
		if swapped.Stock1Inner != p.Stock2Inner || swapped.Stock1Outer != p.Stock2Outer || swapped.Stock2Inner != p.Stock1Inner {
			t.Fatalf("swapping the lips does not swap the stocks: %+v, %+v", p, swapped)
		}
	})
}

func TestSwappingLips(t *testing.T) {
	testkit.Property(t, "swapping the lips swaps heights, offsets and shares", func(t *rapid.T) {
		c := drawPair(t)
		near(t, "height difference", point.HeightDifference(c.l1, c.l2, c.outer), -point.HeightDifference(c.l2, c.l1, c.outer), 0)
		k1, k2 := c.l1.HalfAngle, c.l2.HalfAngle
		near(t, "of angles", point.HeightDifferenceOfAngles(c.outer, k1, k2), -point.HeightDifferenceOfAngles(c.outer, k2, k1), 0)
		feed := rapid.Float64Range(0.01, 2).Draw(t, "feed")
		a1, a2 := point.ChipShare(feed, c.l1.Height0)
		b1, b2 := point.ChipShare(feed, -c.l1.Height0)
		near(t, "share 1", a1, b2, 1e-12)
		near(t, "share 2", a2, b1, 1e-12)
		near(t, "offset", point.OffsetOfHeight(c.l1.Height0, k1), -point.OffsetOfHeight(-c.l1.Height0, k1), 0)
	})
}

func TestStock(t *testing.T) {
	apart := testkit.Against(t, testkit.Derived, "stock of a land of 0.3 mm at 12° of clearance").Because("the trade says 0.06 mm")
	apart.Within("at rest", point.StockOfFlankLand(0.3, 12*deg, 0), 0.0638, 0.00005, "mm")
	apart.Within("feeding, the trade's rounding", point.StockOfFlankLand(0.3, 12*deg, 0.5*deg), 0.06, 0.005, "mm")
	near(t, "margin", point.StockOfMargin(0.7), 0.7, 0)
	near(t, "corner at 90", point.StockOfCorner(0.4, 45*deg), 0.4*math.Sqrt2, 1e-12)
	apart.Within("a corner rounded evenly over 0.4 mm, 118°", point.StockOfCorner(0.4, 59*deg), 0.467, 0.0005, "mm")
}

func TestLipsRefuseTheImpossible(t *testing.T) {
	nan, inf, square := math.NaN(), math.Inf(1), math.Pi/2
	first := func(a, _ float64) float64 { return a }
	for name, got := range map[string]float64{
		"offset of infinity":      point.OffsetOfHeight(inf, 1),
		"offset at 0":             point.OffsetOfHeight(1, 0),
		"end view, no lip 1":      point.OffsetOfEndView(0, 1),
		"end view, no lip 2":      point.OffsetOfEndView(1, -1),
		"angles, radius below 0":  point.HeightDifferenceOfAngles(-1, 1, 1),
		"angles, lip 1 flat":      point.HeightDifferenceOfAngles(1, square, 1),
		"angles, lip 2 flat":      point.HeightDifferenceOfAngles(1, 1, square),
		"lips' oversize, offset":  point.OversizeOfLips(nan, 0, 1, 1),
		"lips' oversize, height":  point.OversizeOfLips(0, inf, 1, 1),
		"lips' oversize, lip 1":   point.OversizeOfLips(0, 0, square, 1),
		"lips' oversize, lip 2":   point.OversizeOfLips(0, 0, 1, 0),
		"share of no feed":        first(point.ChipShare(0, 1)),
		"share of NaN":            first(point.ChipShare(1, nan)),
		"corners of NaN":          point.OffsetOfCorners(nan, 1, 1, 1.1),
		"corners, NaN, even":      point.OffsetOfCorners(nan, 1, 1, 1),
		"corners, x below 0":      point.OffsetOfCorners(0, -1, 1, 1.1),
		"length difference at 90": point.LengthDifference(0, 1, square, 1),
		"length difference, 2":    point.LengthDifference(0, 1, 1, square),
		"length difference, inf":  point.LengthDifference(inf, 1, 1, 1),
		"length difference, none": point.LengthDifference(0, nan, 1, 1.1),
		"length difference, off":  point.LengthDifference(2, 1, 1, 1.1),
		"lip through, flat":       point.LipThrough(1, 1, square).At(1),
		"land below 0":            point.StockOfFlankLand(-1, 0.2, 0),
		"land without clearance":  point.StockOfFlankLand(1, 0, 0),
		"land that rubs":          point.StockOfFlankLand(1, 0.2, 0.3),
		"land, negative feed":     point.StockOfFlankLand(1, 0.2, -0.3),
		"margin below 0":          point.StockOfMargin(-1),
		"corner below 0":          point.StockOfCorner(-1, 1),
		"corner at 90":            point.StockOfCorner(1, square),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %g, want NaN", name, got)
		}
	}
}

// domainError fails the test unless err is a DomainError about the quantity.
func domainError(t *testing.T, err error, quantity string) {
	t.Helper()
	var e *point.DomainError
	if !errors.As(err, &e) || e.Quantity != quantity {
		t.Errorf("error %v, want one about the %s", err, quantity)
	}
}

func TestLipsRefuseWithReason(t *testing.T) {
	ok := point.Lip{HalfAngle: 1}
	truing := func(l1, l2 point.Lip, inner, outer, target float64) error {
		_, err := point.Truing(l1, l2, inner, outer, target)
		return err
	}
	domainError(t, truing(point.Lip{HalfAngle: 2}, ok, 0, 1, 1), "angle of lip 1")
	domainError(t, truing(ok, point.Lip{Height0: math.NaN(), HalfAngle: 1}, 0, 1, 1), "height of lip 2")
	domainError(t, truing(ok, ok, 0, 1, 0), "target half angle")
	domainError(t, truing(ok, ok, 0, 0, 1), "outer end of the lips")
	domainError(t, truing(ok, ok, math.NaN(), 1, 1), "inner end of the lips")
	domainError(t, truing(ok, ok, 1, 1, 1), "inner end of the lips")
	domainError(t, truing(ok, ok, -1, 1, 1), "inner end of the lips")

	lengths := func(l1, l2, k1, k2, d, w float64) error {
		_, err := point.LipsFromLengths(l1, l2, k1, k2, d, w)
		return err
	}
	domainError(t, lengths(0, 5, 1, 1, 10, 1), "length of lip 1")
	domainError(t, lengths(5, math.Inf(1), 1, 1, 10, 1), "length of lip 2")
	domainError(t, lengths(5, 5, 0, 1, 10, 1), "angle of lip 1")
	domainError(t, lengths(5, 5, 1, 1.6, 10, 1), "angle of lip 2")
	domainError(t, lengths(5, 5, 1, 1, 0, 1), "diameter")
	domainError(t, lengths(5, 5, 1, 1, 10, 10), "web thickness")
	domainError(t, lengths(12, 5, 1, 1, 10, 1), "length of lip 1")
	domainError(t, lengths(5, 12, 1, 1, 10, 1), "length of lip 2")

	err := lengths(0, 5, 1, 1, 10, 1)
	if got, want := err.Error(), "length of lip 1 0: must be greater than zero and finite"; got != want {
		t.Errorf("error reads %q, want %q", got, want)
	}
}
