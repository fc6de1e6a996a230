package point_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// D 10, web 1.5, 118 degrees, clearance 12, feed 0.2.
func TestClearanceAlongLip(t *testing.T) {
	apart := testkit.Against(t, testkit.Derived, "along the lip of 10 mm, web 1.5 mm, 118°, clearance 12°, feed 0.2 mm, by vectors")
	f := point.NewFlank(10, 1.5, 59*deg, 12*deg)
	for _, c := range []struct{ r, cl, working float64 }{{5, 12.00, 11.64}, {2, 18.78, 17.87}} {
		at := fmt.Sprintf(" at radius %g mm", c.r)
		apart.Within("clearance"+at, f.Clearance(c.r)/deg, c.cl, 0.005, "°")
		apart.Within("working clearance"+at, f.Working(c.r, 0.2)/deg, c.working, 0.006, "°")
	}
	trade := testkit.Against(t, testkit.Trade, "clearance at a quarter of the radius")
	for _, outside := range []float64{8, 9, 10} {
		inside := point.NewFlank(10, 1.5, 59*deg, outside*deg).Clearance(5*0.25) / deg
		trade.Between(fmt.Sprintf("%g° outside", outside), inside, 20, 25, "°")
	}
}

type lipCase struct{ d, w, k, cl float64 }

func drawLip(t *rapid.T) lipCase {
	d := rapid.Float64Range(1, 60).Draw(t, "d")
	return lipCase{
		d, d * rapid.Float64Range(0.03, 0.4).Draw(t, "w/d"),
		rapid.Float64Range(25, 80).Draw(t, "k") * deg, rapid.Float64Range(1, 30).Draw(t, "cl") * deg,
	}
}

func (c lipCase) flank() point.Flank { return point.NewFlank(c.d, c.w, c.k, c.cl) }

// The clearance by finite differences: how fast the lip's tangent plane falls
// along the circle of radius r.
func TestClearanceByFiniteDifferences(t *testing.T) {
	testkit.Property(t, "the clearance is the fall of the lip's plane along its circle", func(t *rapid.T) {
		c := drawLip(t)
		f := c.flank()
		near(t, "at the corner", f.Clearance(c.d/2), c.cl, 1e-12)
		r := c.w/2 + (c.d-c.w)/2*rapid.Float64Range(0.01, 1).Draw(t, "place")
		at := point.WebAngle(c.w, r)
		z := func(a float64) float64 { return -r*math.Cos(a)/math.Tan(c.k) + f.Slope()*(r*math.Sin(a)-c.w/2) }
		const h = 1e-5
		near(t, "along the lip", math.Tan(f.Clearance(r)), (z(at+h)-z(at-h))/(2*h*r), 1e-6)
		feed := rapid.Float64Range(0, 1).Draw(t, "feed")
		near(t, "working and feed angle", f.Working(r, feed)+point.FeedAngle(feed, r), f.Clearance(r), 1e-12)
	})
}

func TestLeastWorkingAgainstScan(t *testing.T) {
	inside := 0
	testkit.Property(t, "the least working clearance is that of a scan along the lip", func(t *rapid.T) {
		c := drawLip(t)
		f := c.flank()
		feed := c.d * math.Pow(10, rapid.Float64Range(-3, 0).Draw(t, "log feed"))
		from := c.w/2 + (c.d-c.w)/2*rapid.Float64Range(0, 0.5).Draw(t, "from")
		r, least := f.LeastWorking(feed, from, c.d/2)
		near(t, "at its place", f.Working(r, feed), least, 1e-12)
		best := math.Inf(1)
		inner, outer := math.Asin(c.w/2/from), math.Asin(c.w/c.d)
		for i := range 2001 {
			at := c.w / 2 / math.Sin(outer+(inner-outer)*float64(i)/2000)
			best = math.Min(best, f.Working(math.Min(math.Max(at, from), c.d/2), feed))
		}
		if least > best+1e-12 || least < best-1e-4 {
			t.Fatalf("least %.12g, scan finds %.12g", least, best)
		}
		if r > from && r < c.d/2 {
			inside++
		}
	})
	if inside == 0 {
		t.Error("no case had its least clearance between the ends")
	}
}

func TestFeedLimitAlongLip(t *testing.T) {
	testkit.Property(t, "at the feed limit no clearance is left, below it some, above it none", func(t *rapid.T) {
		c := drawLip(t)
		f := c.flank()
		from := c.w/2 + (c.d-c.w)/2*rapid.Float64Range(0, 0.5).Draw(t, "from")
		feed, r := f.FeedLimit(from, c.d/2)
		near(t, "nothing left there", f.Working(r, feed), 0, 1e-9)
		if _, least := f.LeastWorking(0.999*feed, from, c.d/2); least <= 0 {
			t.Fatalf("rubs below the limit: %g", least)
		}
		if _, least := f.LeastWorking(1.001*feed, from, c.d/2); least >= 0 {
			t.Fatalf("does not rub beyond the limit: %g", least)
		}
	})
	feed, r := point.NewFlank(10, 1.5, 59*deg, -0.5*deg).FeedLimit(4, 5)
	near(t, "no clearance at the corner: feed", feed, 0, 0)
	near(t, "no clearance at the corner: place", r, 5, 0)
}

func TestFlankScales(t *testing.T) {
	testkit.Property(t, "the flank's slope and clearances do not change with scale", func(t *rapid.T) {
		c := drawLip(t)
		s := rapid.Float64Range(0.01, 100).Draw(t, "scale")
		big := point.NewFlank(s*c.d, s*c.w, c.k, c.cl)
		near(t, "slope", big.Slope(), c.flank().Slope(), 1e-10)
		_, a := c.flank().LeastWorking(0.05*c.d, c.d/4, c.d/2)
		_, b := big.LeastWorking(0.05*c.d*s, c.d/4*s, c.d/2*s)
		near(t, "least working", b, a, 1e-10)
	})
}

func TestFlankRefusesTheImpossible(t *testing.T) {
	good := point.NewFlank(10, 1.5, 59*deg, 12*deg)
	first := func(a, _ float64) float64 { return a }
	for name, got := range map[string]float64{
		"zero value":          point.Flank{}.Slope(),
		"zero value, at 0":    point.Flank{}.Clearance(0),
		"web over diameter":   point.NewFlank(10, 11, 1, 0.2).Slope(),
		"flat end":            point.NewFlank(10, 1, math.Pi/2, 0.2).Slope(),
		"clearance 90":        point.NewFlank(10, 1, 1, math.Pi/2).Clearance(5),
		"inside the web":      good.Clearance(0.7),
		"outside the drill":   good.Clearance(5.01),
		"working, no feed":    good.Working(3, math.NaN()),
		"least, wrong order":  first(good.LeastWorking(0.2, 4, 3)),
		"least, inside web":   first(good.LeastWorking(0.2, 0.1, 3)),
		"least, bad feed":     first(good.LeastWorking(-0.2, 3, 4)),
		"limit, out of drill": first(good.FeedLimit(3, 6)),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s: %g, want NaN", name, got)
		}
	}
	if c := good.Clearance(0.75); math.IsNaN(c) {
		t.Error("the foot of the lip is on it")
	}
}
