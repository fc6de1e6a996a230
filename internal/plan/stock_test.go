package plan_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/plan"
	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

func near(t interface{ Fatalf(string, ...any) }, what string, got, want, within float64) {
	if !(math.Abs(got-want) <= within) {
		t.Fatalf("%s: %.9g, wanted %.9g", what, got, want)
	}
}

// unread is a drill on which no wear was read.
func unread() plan.Wear {
	nan := math.NaN()
	return plan.Wear{Land: nan, Clearance: 12 * deg, Corner: nan, HalfAngle: 59 * deg, Margin: nan, Chip: nan, Steep: plan.Steep{Lip1: nan, Lip2: nan}}
}

// lips are those of a 12 mm drill: corner 6 mm from the axis, dh apart there.
func lips(dh, k1, k2, target float64) plan.Lips {
	return plan.Lips{Lip1: point.LipThrough(6, dh, k1*deg), Lip2: point.LipThrough(6, 0, k2*deg), Inner: 1, Outer: 6, Target: target * deg}
}

// 0.3 tan 12 = 0.0638 mm; 0.4 / sin 59 = 0.4667 mm. A worn margin comes off with
// all its length.
func TestDepthsOfWear(t *testing.T) {
	w := unread()
	w.Land, w.Corner, w.Margin, w.Chip = 0.3, 0.4, 0.7, 0.5
	by, err := w.Depths()
	if err != nil {
		t.Fatal(err)
	}
	apart := testkit.Against(t, testkit.Derived, "depth of wear at 118° and 12° of clearance")
	apart.Within("land of 0.3 mm", by[plan.FlankLand], 0.0638, 5e-5, "mm")
	apart.Within("corner worn 0.4 mm", by[plan.Corner], 0.4667, 5e-5, "mm")
	trade := testkit.Against(t, testkit.Trade, "a worn margin comes off with all its length")
	trade.Within("margin worn 0.7 mm", by[plan.Margin], 0.7, 0, "mm")
	near(t, "chip", by[plan.LipChip], 0.5, 0)
	w.FeedAngle = math.Atan(0.2 / (12 * math.Pi))
	by, _ = w.Depths()
	near(t, "land, feed counted", by[plan.FlankLand], 0.3*math.Tan(12*deg)-0.3*0.2/(12*math.Pi), 1e-12)
}

func TestUnreadWearTakesNothing(t *testing.T) {
	by, err := unread().Depths()
	if err != nil {
		t.Fatal(err)
	}
	for c, v := range by {
		if !math.IsNaN(v) {
			t.Errorf("%v takes %g though nothing was read", plan.Cause(c), v)
		}
	}
}

func TestWearThatTellsNothingIsRefused(t *testing.T) {
	for name, spoil := range map[string]func(*plan.Wear){
		"land on a flank that rubs": func(w *plan.Wear) { w.Land, w.FeedAngle = 0.2, 13*deg },
		"negative corner":           func(w *plan.Wear) { w.Corner = -1 },
		"infinite margin":           func(w *plan.Wear) { w.Margin = math.Inf(1) },
		"negative chip":             func(w *plan.Wear) { w.Chip = -0.1 },
	} {
		w := unread()
		spoil(&w)
		if _, err := plan.StockOf(w, lips(0, 59, 59, 59), 0.05, plan.NoCause); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	for _, cleanUp := range []float64{-0.01, math.NaN(), math.Inf(1)} {
		if _, err := plan.StockOf(unread(), lips(0, 59, 59, 59), cleanUp, plan.NoCause); err == nil {
			t.Errorf("clean-up %g: no error", cleanUp)
		}
	}
	if _, err := plan.StockOf(unread(), lips(0, 59, 59, 95), 0.05, plan.NoCause); err == nil {
		t.Error("a half angle of 95 degrees: no error")
	}
}

func TestStock(t *testing.T) {
	cases := []struct {
		name    string
		wear    func(*plan.Wear)
		lips    plan.Lips
		asks    plan.Cause
		total   float64
		governs plan.Cause
		cleanUp float64
		lip2    plan.Ends
	}{
		{"nothing worn, even lips", nil, lips(0, 59, 59, 59), plan.NoCause, 0, plan.NoCause, 0, plan.Ends{}},
		{"uneven only: off the higher lip, nothing off the other", nil, lips(0.12, 59, 59, 59), plan.NoCause, 0.12, plan.Truing, 0, plan.Ends{}},
		{"margin, even lips", func(w *plan.Wear) { w.Margin = 0.7 }, lips(0, 59, 59, 59), plan.NoCause, 0.75, plan.Margin, 0.05, plan.Ends{Inner: 0.75, Outer: 0.75}},
		{"margin and uneven lips add up", func(w *plan.Wear) { w.Margin = 0.7 }, lips(0.12, 59, 59, 59), plan.NoCause, 0.87, plan.Margin, 0.05, plan.Ends{Inner: 0.75, Outer: 0.75}},
		{"chip deeper than corner", func(w *plan.Wear) { w.Chip, w.Corner = 0.5, 0.4 }, lips(0, 59, 59, 59), plan.NoCause, 0.55, plan.LipChip, 0.05, plan.Ends{Inner: 0.55, Outer: 0.55}},
		{"flank of the wrong shape", nil, lips(0, 59, 59, 59), plan.Reshaping, 0.05, plan.Reshaping, 0.05, plan.Ends{Inner: 0.05, Outer: 0.05}},
		// 135 on a drill ground at 118: (6 - 1)(1/tan 59 - 1/tan 67.5) = 0.9332 at the inner ends.
		{"blunter point", nil, lips(0, 59, 59, 67.5), plan.NoCause, 0.93324, plan.Truing, 0, plan.Ends{Inner: 0.93324}},
		// A sharper point takes that off the corners, and the worn corner with it.
		{"sharper point takes the corner along", func(w *plan.Wear) { w.Corner = 0.4 }, lips(0, 67.5, 67.5, 59), plan.NoCause, 0.98324, plan.Truing, 0.05, plan.Ends{Inner: 0.05, Outer: 0.98324}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			w := unread()
			if c.wear != nil {
				c.wear(&w)
			}
			s, err := plan.StockOf(w, c.lips, 0.05, c.asks)
			if err != nil {
				t.Fatal(err)
			}
			apart := testkit.Against(t, testkit.Derived, "stock to take, by the heights of the lips' ends")
			apart.Within(c.name, s.Total, c.total, 1e-5, "mm")
			near(t, "clean-up", s.CleanUp, c.cleanUp, 0)
			near(t, "lip 2, inner", s.Lip2.Inner, c.lip2.Inner, 1e-5)
			near(t, "lip 2, outer", s.Lip2.Outer, c.lip2.Outer, 1e-5)
			if s.Governs != c.governs {
				t.Errorf("%v governs, not %v", s.Governs, c.governs)
			}
		})
	}
}

func TestCausesHaveNames(t *testing.T) {
	seen := map[string]bool{}
	for c := plan.NoCause; c < plan.Causes; c++ {
		if s := c.String(); s == "" || seen[s] {
			t.Errorf("cause %d is called %q", c, s)
		} else {
			seen[s] = true
		}
	}
}

// anyWear draws wear, each kind of it read or not.
func anyWear(t *rapid.T) plan.Wear {
	maybe := func(name string, high float64) float64 {
		if rapid.Bool().Draw(t, name+" read") {
			return rapid.Float64Range(0, high).Draw(t, name)
		}
		return math.NaN()
	}
	w := plan.Wear{Clearance: rapid.Float64Range(8, 24).Draw(t, "clearance") * deg, HalfAngle: 59 * deg, Steep: plan.Steep{Lip1: math.NaN(), Lip2: math.NaN()}}
	w.FeedAngle = rapid.Float64Range(0, 3).Draw(t, "feed angle") * deg
	w.Land, w.Corner = maybe("land", 2), maybe("corner", 3)
	w.Margin, w.Chip = maybe("margin", 4), maybe("chip", 2)
	w.Steep.Width, w.Steep.Aim = 2, 10*deg
	w.Steep.Lip1 = w.Steep.Aim + (0.1+maybe("lip 1 steeper", 15))*deg
	w.Steep.Lip2 = w.Steep.Aim + (0.1+maybe("lip 2 steeper", 15))*deg
	return w
}

func anyLips(t *rapid.T) plan.Lips {
	angle := func(name string) float64 { return rapid.Float64Range(45, 75).Draw(t, name) }
	return lips(rapid.Float64Range(-0.5, 0.5).Draw(t, "dh"), angle("k1"), angle("k2"), angle("target"))
}

func stockOf(t *rapid.T, w plan.Wear, l plan.Lips) plan.Stock {
	s, err := plan.StockOf(w, l, 0.05, plan.NoCause)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestMoreWearNeverTakesLess(t *testing.T) {
	testkit.Property(t, "more wear never takes less stock, at any end", func(t *rapid.T) {
		w, l := anyWear(t), anyLips(t)
		before := stockOf(t, w, l)
		more := rapid.Float64Range(0, 1).Draw(t, "more")
		field := rapid.SampledFrom([]*float64{&w.Land, &w.Corner, &w.Margin, &w.Chip}).Draw(t, "which")
		if math.IsNaN(*field) {
			*field = 0
		}
		if field == &w.Margin && *field == 0 {
			t.Skip("a measured margin takes the place of what the corner's rounding lets guess")
		}
		*field += more
		after := stockOf(t, w, l)
		for _, pair := range [][2]float64{{before.Total, after.Total}, {before.Lip1.Inner, after.Lip1.Inner}, {before.Lip1.Outer, after.Lip1.Outer},
			{before.Lip2.Inner, after.Lip2.Inner}, {before.Lip2.Outer, after.Lip2.Outer}} {
			if pair[1] < pair[0]-1e-9 {
				t.Fatalf("more wear takes %g where it took %g", pair[1], pair[0])
			}
		}
	})
}

// After the grind all four ends lie on one line at the angle wanted, no wear is
// left at any, and one end has given no more than it must: the stock is the
// least there is.
func TestStockIsEnoughAndNotMore(t *testing.T) {
	testkit.Property(t, "after the grind no wear is left, both lips are one line, and one end gave no more than it must", func(t *rapid.T) {
		w, l := anyWear(t), anyLips(t)
		s := stockOf(t, w, l)
		ends := [4]struct {
			carried, off, worn float64
		}{
			{l.Carried(l.Lip1, l.Inner), s.Lip1.Inner, s.Worn1.Inner}, {l.Carried(l.Lip1, l.Outer), s.Lip1.Outer, s.Worn1.Outer},
			{l.Carried(l.Lip2, l.Inner), s.Lip2.Inner, s.Worn2.Inner}, {l.Carried(l.Lip2, l.Outer), s.Lip2.Outer, s.Worn2.Outer},
		}
		spare := math.Inf(1)
		for _, e := range ends {
			near(t, "height of an end after the grind", e.carried-e.off, ends[0].carried-ends[0].off, 1e-8)
			spare = min(spare, e.off-s.CleanUp-e.worn)
		}
		near(t, "spare at the end that has least", spare, 0, 1e-8)
	})
}

// Turning the drill half round swaps the lips and nothing else.
func TestStockKnowsNoFirstLip(t *testing.T) {
	testkit.Property(t, "turning the drill half round swaps the stocks and nothing else", func(t *rapid.T) {
		w, l := anyWear(t), anyLips(t)
		a := stockOf(t, w, l)
		l.Lip1, l.Lip2 = l.Lip2, l.Lip1
		w.Steep.Lip1, w.Steep.Lip2 = w.Steep.Lip2, w.Steep.Lip1
		b := stockOf(t, w, l)
		near(t, "total", b.Total, a.Total, 1e-9)
		near(t, "lip 1, inner", b.Lip1.Inner, a.Lip2.Inner, 1e-9)
		near(t, "lip 1, outer", b.Lip1.Outer, a.Lip2.Outer, 1e-9)
	})
}

// A drill twice as large in everything takes twice as much.
func TestStockScales(t *testing.T) {
	testkit.Property(t, "a drill twice as large takes twice the stock", func(t *rapid.T) {
		w, l := anyWear(t), anyLips(t)
		a := stockOf(t, w, l)
		for _, v := range []*float64{&w.Land, &w.Corner, &w.Margin, &w.Chip, &w.Steep.Width, &l.Lip1.Height0, &l.Lip2.Height0, &l.Inner, &l.Outer} {
			*v *= 2
		}
		b, err := plan.StockOf(w, l, 0.1, plan.NoCause)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "total", b.Total, 2*a.Total, 1e-8)
	})
}

// Derived from the point's geometry: 3 mm of flank brought from 20 to 10 degrees
// lowers the lip by 3 (tan 20 - tan 10) = 0.563 mm, at both ends; too little
// clearance comes off the heel and costs the clean-up only.
func TestTooMuchClearanceComesOffTheLip(t *testing.T) {
	w := unread()
	w.Steep = plan.Steep{Width: 3, Aim: 10 * deg, Lip1: 20 * deg, Lip2: 20 * deg}
	s, err := plan.StockOf(w, lips(0, 59, 59, 59), 0.05, plan.Reshaping)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "by clearance", s.By[plan.Reshaping], 0.563, 0.0005)
	near(t, "inner end", s.Lip1.Inner, 0.613, 0.0005)
	near(t, "outer end", s.Lip2.Outer, 0.613, 0.0005)
	if s.Governs != plan.Reshaping || s.Wear() != 0 {
		t.Errorf("because of %v, wear %g", s.Governs, s.Wear())
	}
	w.Steep.Aim = 21 * deg
	if _, err := plan.StockOf(w, lips(0, 59, 59, 59), 0.05, plan.Reshaping); err == nil {
		t.Error("a flank steeper than it is was taken")
	}
}

// Clearance is read at each lip: a flank that is too steep is ground down where it
// stands, and the other lip only follows as far as it is higher then. Lip 1 is
// 0.3 mm high and gives 0.563 mm as above, so lip 2 gives 0.563 - 0.3.
func TestEachLipHasItsOwnClearance(t *testing.T) {
	w := unread()
	w.Steep = plan.Steep{Width: 3, Aim: 10 * deg, Lip1: 20 * deg, Lip2: math.NaN()}
	s, err := plan.StockOf(w, lips(0.3, 59, 59, 59), 0.05, plan.Reshaping)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "lip 1", s.Lip1.Outer, 0.613, 0.0005)
	near(t, "lip 2", s.Lip2.Outer, 0.313, 0.0005)
	w.Steep.Lip1, w.Steep.Lip2 = math.NaN(), 20*deg
	if s, err = plan.StockOf(w, lips(0.3, 59, 59, 59), 0.05, plan.Reshaping); err != nil {
		t.Fatal(err)
	}
	near(t, "lip 1, the other one steep", s.Lip1.Inner, 0.913, 0.0005)
	near(t, "lip 2, itself steep", s.Lip2.Inner, 0.613, 0.0005)
	near(t, "by clearance", s.By[plan.Reshaping], 0.563, 0.0005)
}

func TestUsualStockLeavesOutWhatHappensOnce(t *testing.T) {
	w := unread()
	w.Chip, w.Corner, w.Land = 2, 0.4, 0.3
	s, err := plan.StockOf(w, lips(0.3, 59, 59, 59), 0.05, plan.NoCause)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "usual", s.Usual(1), 0.4/math.Sin(59*deg)+0.05, 1e-12)
	near(t, "total", s.Total, 2+0.3+0.05, 1e-9)
	s, _ = plan.StockOf(unread(), lips(0.3, 59, 59, 59), 0.05, plan.NoCause)
	near(t, "usual without wear", s.Usual(1), 0, 0)
}

// Where two causes take as much, the first in their order is named; no clean-up
// allowance at all is one too.
func TestCausesThatTakeAsMuch(t *testing.T) {
	w := unread()
	w.Margin, w.Chip = 0.5, 0.5
	s, err := plan.StockOf(w, lips(0, 59, 59, 59), 0, plan.NoCause)
	if err != nil || s.Governs != plan.Margin {
		t.Errorf("%v governs, %v", s.Governs, err)
	}
	near(t, "total without clean-up", s.Total, 0.5, 1e-9)
}

// A worn corner of even lips comes off all along them: what is left of the
// arithmetic's rounding makes no two ends differ.
func TestAlikeButForRounding(t *testing.T) {
	for _, d := range []float64{3, 8.5, 12, 25, 37.3} {
		k := 59 * math.Pi / 180
		lip := point.LipThrough(d/2, 0, k)
		l := plan.Lips{Lip1: lip, Lip2: lip, Inner: 0.09 * d, Outer: d / 2, Target: k}
		w := plan.Wear{Land: 0.03 * d, Clearance: 0.15, Corner: 0.05 * d, HalfAngle: k, Margin: math.NaN(), Chip: math.NaN(), Steep: plan.Steep{Lip1: math.NaN(), Lip2: math.NaN()}}
		s, err := plan.StockOf(w, l, 0.05, plan.NoCause)
		if err != nil || !s.EndsAlike() || !s.LipsAlike() {
			t.Errorf("%v mm: %+v, %v", d, s, err)
		}
		l.Lip1 = point.LipThrough(d/2, 0.001, k)
		if s, err = plan.StockOf(w, l, 0.05, plan.NoCause); err != nil || s.LipsAlike() || s.EndsAlike() {
			t.Errorf("%v mm, a lip higher by a hair: %+v, %v", d, s, err)
		}
	}
}

// Lips are alike only if both of their ends are.
func TestLipsAlikeAtBothEnds(t *testing.T) {
	even := plan.Ends{Inner: 0.1, Outer: 0.2}
	for _, c := range []struct {
		other plan.Ends
		want  bool
	}{{even, true}, {plan.Ends{Inner: 0.1, Outer: 0.3}, false}, {plan.Ends{Inner: 0.3, Outer: 0.2}, false}} {
		s := plan.Stock{Lip1: even, Lip2: c.other}
		if s.LipsAlike() != c.want {
			t.Errorf("%+v and %+v: alike %v", even, c.other, !c.want)
		}
	}
}
