package plan_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/cutting"
	"evenlip/internal/plan"
	"evenlip/internal/point"
	"evenlip/internal/testkit"
)

// half is a 12 mm drill of the kind that lies about in any crib.
func half() plan.Body {
	nan := math.NaN()
	return plan.Body{D: 12, Web: 2, Taper: 0.016, Chisel: 55 * deg, ChiselAfter: 55 * deg, Feed: 0.2, Flute: 80, Length: nan, BackTaper: nan,
		LeastFlute: 42, MostWeb: 0.35, MostChisel: 0.225, NewChisel: 0.18, LeastDiameter: nan}
}

func TestLifeEnds(t *testing.T) {
	cases := []struct {
		name         string
		change       func(*plan.Body)
		first, every float64
		left         float64
		end          plan.End
	}{
		// 38 mm of flute to spare, 0.5 mm a grind: 76.
		{"flute", nil, 0.5, 0.5, 76, plan.FluteShort},
		// The first takes 1 mm, the other 37 make 74.
		{"deeper first grind", nil, 1, 0.5, 75, plan.FluteShort},
		{"first grind too deep", nil, 38.5, 0.5, 0, plan.FluteShort},
		{"just enough flute", nil, 38, 0.5, 1, plan.FluteShort},
		// (0.35 x 12 - 4) / 0.016 = 12.5 mm until the web is spent.
		{"web", func(b *plan.Body) { b.Web = 4 }, 0.5, 0.5, 25, plan.WebSpent},
		{"web spent already", func(b *plan.Body) { b.Web = 4.3 }, 0.5, 0.5, 0, plan.WebSpent},
		// (12 - 11.99) / 0.0005 = 20 mm until the diameter is too small.
		{"diameter", func(b *plan.Body) { b.BackTaper, b.LeastDiameter = 0.0005, 11.99 }, 0.5, 0.5, 40, plan.DiameterLow},
		{"no back taper known", func(b *plan.Body) { b.LeastDiameter = 11.99 }, 0.5, 0.5, 76, plan.FluteShort},
		{"no web known", func(b *plan.Body) { b.Web = math.NaN() }, 0.5, 0.5, 76, plan.FluteShort},
		{"no flute known", func(b *plan.Body) { b.Flute = math.NaN() }, 0.5, 0.5, math.NaN(), plan.NotKnown},
		{"no least flute", func(b *plan.Body) { b.LeastFlute = math.NaN() }, 0.5, 0.5, math.NaN(), plan.NotKnown},
		{"no taper", func(b *plan.Body) { b.Taper, b.BackTaper, b.LeastDiameter = 0, 0, 12 }, 0.5, 0.5, 76, plan.FluteShort},
		{"web spent, no taper", func(b *plan.Body) { b.Web, b.Taper = 4.3, 0 }, 0.5, 0.5, 0, plan.WebSpent},
		{"a web that gets thinner", func(b *plan.Body) { b.Taper = -0.01 }, 0.5, 0.5, 76, plan.FluteShort},
		{"hardly anything a grind", nil, 1e-4, 1e-4, plan.MostGrinds, plan.NotCounted},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := half()
			if c.change != nil {
				c.change(&b)
			}
			left, end := b.Left(alike(c.first), c.every)
			if left != c.left && !(math.IsNaN(left) && math.IsNaN(c.left)) || end != c.end {
				t.Fatalf("%g grinds, ended by %v; wanted %g, %v", left, end, c.left, c.end)
			}
		})
	}
}

func TestLifeOfNoStockIsNotCounted(t *testing.T) {
	b := half()
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if n, end := b.Left(alike(v), 0.5); !math.IsNaN(n) || end != plan.NotKnown {
			t.Errorf("first grind of %g: %g grinds, %v", v, n, end)
		}
		if n, end := b.Left(alike(0.5), v); !math.IsNaN(n) || end != plan.NotKnown {
			t.Errorf("usual stock of %g: %g grinds, %v", v, n, end)
		}
	}
}

func TestEndsHaveNames(t *testing.T) {
	seen := map[string]bool{"": true}
	for e := plan.FluteShort; e <= plan.NotCounted; e++ {
		if s := e.String(); seen[s] {
			t.Errorf("end %d is called %q", e, s)
		} else {
			seen[s] = true
		}
	}
	if s := plan.NotKnown.String(); s != "" {
		t.Errorf("an end that is not known is called %q", s)
	}
}

// A new drill has c/D 0.18 (Machinery's Handbook, 31st ed., p. 1153); thinning
// brings a thick web back to it.
func TestThinningBringsTheChiselBack(t *testing.T) {
	b := half()
	b.Web = 2.4 // c/D 0.244
	s := b.After(alike(0))
	if !s.Thinned {
		t.Fatal("not thinned")
	}
	near(t, "c/D", s.Ratio, 0.18, 1e-12)
	near(t, "web", s.Web, 0.18*12*math.Sin(55*deg), 1e-12)
	near(t, "body", s.Body, 2.4, 0)
	if ratio := b.ThrustRatio(&s); ratio >= 1 {
		t.Errorf("thinning raised the thrust: %g", ratio)
	}
	if g := b.Ground(alike(0)); g.Thinned || g.Web != 2.4 {
		t.Errorf("ground only, and yet %+v", g)
	}
	b.Web = 0.36 * 12
	if b.After(alike(0)).Thinned {
		t.Error("a web past all thinning is thinned")
	}
	b = half()
	b.Web = 2.2 // c/D 0.2238, under the limit
	if b.After(alike(0)).Thinned {
		t.Error("thinned, though the chisel edge is within its limit")
	}
}

func TestUnknownStaysUnknown(t *testing.T) {
	b := half()
	b.Web = math.NaN()
	s := b.After(alike(3))
	if s.Thinned || !math.IsNaN(s.Web) || !math.IsNaN(s.Ratio) || !math.IsNaN(b.ThrustRatio(&s)) || !math.IsNaN(s.Diameter) || !math.IsNaN(s.Length) {
		t.Errorf("out of nothing came %+v", s)
	}
	near(t, "flute", s.Flute, 77, 0)
}

func TestNoDrillIsShorterThanNothing(t *testing.T) {
	b := half()
	b.Length = 100
	s := b.After(alike(101))
	near(t, "flute", s.Flute, 0, 0)
	near(t, "length", s.Length, 0, 0)
}

func anyBody(t *rapid.T) plan.Body {
	d := rapid.Float64Range(2, 60).Draw(t, "D")
	r := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	b := plan.Body{D: d, Web: r("web", 0.1, 0.34) * d, Taper: r("taper", 0.01, 0.05), Chisel: r("chisel", 40, 65) * deg,
		ChiselAfter: r("chisel after", 45, 60) * deg, Feed: r("feed", 0.005, 0.03) * d, Flute: r("flute", 1, 12) * d,
		LeastFlute: r("least flute", 1, 6) * d, MostWeb: 0.35, MostChisel: 0.225, NewChisel: 0.18}
	b.Length, b.BackTaper, b.LeastDiameter = b.Flute+2*d, rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1e-5, 0.001)).Draw(t, "back taper"), d-r("under", 0, 0.05)
	return b
}

// What a schedule says has to follow, row by row, from the readings alone.
func TestScheduleFollowsFromTheReadings(t *testing.T) {
	testkit.Property(t, "a schedule follows row by row from the readings", func(t *rapid.T) {
		b := anyBody(t)
		first, every := anyStocks(t)
		n, _ := b.Left(alike(first), every)
		flute := b.Flute
		for i, s := range b.Schedule(n, alike(first), every) {
			stock := every
			if i == 0 {
				stock = first
			}
			near(t, "flute falls by the stock", flute-s.Flute, stock, 1e-9)
			flute = s.Flute
			total := first + float64(i)*every
			near(t, "off in all", s.Removed, total, 1e-9)
			body := b.Web + b.Taper*total
			near(t, "body web", s.Body, body, 1e-9)
			web, chisel := body, body/math.Sin(b.ChiselAfter)
			if s.Thinned != (chisel/b.D > b.MostChisel) {
				t.Fatalf("grind %d: c/D %g, thinned %v", i+1, chisel/b.D, s.Thinned)
			}
			if s.Thinned {
				chisel = b.NewChisel * b.D
				web = chisel * math.Sin(b.ChiselAfter)
			}
			near(t, "web", s.Web, web, 1e-9)
			near(t, "chisel", s.Chisel, chisel, 1e-9)
			near(t, "c/D", s.Ratio, chisel/b.D, 1e-9)
			near(t, "diameter", s.Diameter, b.D-b.BackTaper*total, 1e-9)
			near(t, "length", s.Length, b.Length-total, 1e-9)
		}
	})
}

// An independent second computation: the drill is ground until it is of no use, each
// time a hair less than it is taken for.
func TestLeftIsTheLengthOfTheSchedule(t *testing.T) {
	testkit.Property(t, "the count and the end in closed form are those of grinding until the drill is of no use", func(t *rapid.T) {
		b := anyBody(t)
		first, every := anyStocks(t)
		grinds := b.Schedule(plan.MostGrinds, alike(max(0, first-plan.Hair*every)), every)
		last := slices.IndexFunc(grinds, func(s plan.State) bool { return against(&b, &s) != plan.NotKnown })
		if last < 0 {
			t.Fatalf("%d grinds, and it is still of use", len(grinds))
		}
		if n, end := b.Left(alike(first), every); n != float64(last) || end != against(&b, &grinds[last]) {
			t.Fatalf("%g grinds, ended by %v; grinding makes it %d, ended by %v", n, end, last, against(&b, &grinds[last]))
		}
	})
}

// against is what is against using a drill in that state, NotKnown for nothing.
func against(b *plan.Body, s *plan.State) plan.End {
	switch {
	case s.Flute < b.LeastFlute:
		return plan.FluteShort
	case s.Body > b.MostWeb*b.D:
		return plan.WebSpent
	case s.Diameter < b.LeastDiameter:
		return plan.DiameterLow
	}
	return plan.NotKnown
}

func anyStocks(t *rapid.T) (first, every float64) {
	return rapid.Float64Range(0.05, 5).Draw(t, "first"), rapid.Float64Range(0.1, 3).Draw(t, "every")
}

func TestTakingMoreAGrindNeverGivesMoreGrinds(t *testing.T) {
	testkit.Property(t, "taking more a grind never gives more grinds", func(t *rapid.T) {
		b := anyBody(t)
		first, every := anyStocks(t)
		more := rapid.Float64Range(0, 2).Draw(t, "more")
		few, _ := b.Left(alike(first+more), every+more)
		many, _ := b.Left(alike(first), every)
		if few > many {
			t.Fatalf("%g grinds taking more, %g taking less", few, many)
		}
	})
}

func job() *plan.Job {
	w := unread()
	w.Margin = 0.7
	return &plan.Job{Wear: w, Lips: lips(0.1, 59, 59, 59), Body: half(), CleanUp: 0.05, Every: math.NaN(), Least: 0.5, Deepest: 1.2}
}

func TestForecast(t *testing.T) {
	b := half()
	p, err := plan.ForecastOf(job())
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stock", p.Stock.Total, 0.85, 1e-12)
	near(t, "usual stock", p.Usual, 0.75, 1e-12)
	near(t, "flute after", p.Done.Flute, 79.15, 1e-12)
	near(t, "the next grind", p.First.Corner, 0.85, 1e-12)
	near(t, "thrust now over now", b.ThrustRatio(&p.Now), 1, 1e-12)
	if want := 50.0; p.Left != want || p.End != plan.FluteShort {
		t.Errorf("%g grinds, %v; wanted %g", p.Left, p.End, want)
	}
	if p.Done.Thinned {
		t.Error("thinned, though the chisel edge is within its limit")
	}
}

func TestForecastThins(t *testing.T) {
	j := job()
	j.Body.Web = 2.4
	p, err := plan.ForecastOf(j)
	if err != nil {
		t.Fatal(err)
	}
	b := &j.Body
	thinning := cutting.Thick{D: b.D, Web: p.Ground.Web, ChiselAngle: b.ChiselAfter, Feed: b.Feed}.ToRatio(b.NewChisel)
	near(t, "web thinned to", p.Done.Web, thinning.WebTarget, 1e-12)
	near(t, "chisel", p.Done.Chisel, thinning.ChiselAfter, 1e-12)
	near(t, "thrust over that before", b.ThrustRatio(&p.Done)/b.ThrustRatio(&p.Ground), thinning.ThrustRatio, 1e-12)
}

func TestForecastOfASharpDrill(t *testing.T) {
	j := job()
	j.Wear, j.Lips = unread(), lips(0, 59, 59, 59)
	p, err := plan.ForecastOf(j)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stock", p.Stock.Total, 0, 0)
	near(t, "usual stock", p.Usual, 0.5, 0)
	near(t, "the first grind to come", p.First.Corner, 0.5, 0)
	j.Every = 0.8
	p, _ = plan.ForecastOf(j)
	near(t, "usual stock as asked for", p.Usual, 0.8, 0)
}

// A grind that waits takes nothing; what it would take is known, and the usual
// stock goes by that.
func TestForecastOfAGrindThatWaits(t *testing.T) {
	j := job()
	j.Waits = true
	p, err := plan.ForecastOf(j)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stock", p.Stock.Total, 0, 0)
	near(t, "stock of a grind", p.Would.Total, 0.85, 1e-12)
	near(t, "usual stock", p.Usual, 0.75, 1e-12)
	near(t, "flute after", p.Done.Flute, p.Now.Flute, 0)
	near(t, "the first grind to come", p.First.Corner, 0.75, 1e-12)
	if p.Stock.Governs != plan.NoCause {
		t.Errorf("%v governs nothing", p.Stock.Governs)
	}
}

func TestForecastRefusesWhatItsPartsRefuse(t *testing.T) {
	for name, spoil := range map[string]func(*plan.Job){
		"stock": func(j *plan.Job) { j.CleanUp = -1 },
		"life":  func(j *plan.Job) { j.Every = -1 },
	} {
		j := job()
		spoil(j)
		_, err := plan.ForecastOf(j)
		if _, ok := err.(*point.DomainError); !ok {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// One spoilt margin is ground off once and leaves the usual grind as it was.
func TestAMishapIsNoHabit(t *testing.T) {
	made := func(t interface{ Fatal(...any) }, margin float64) plan.Forecast {
		j := job()
		j.Wear.Corner, j.Wear.Margin = 0.9, margin
		p, err := plan.ForecastOf(j)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	usual := 0.9/math.Sin(59*deg) + 0.05
	p := made(t, 5)
	near(t, "stock", p.Stock.Total, 5.15, 1e-12)
	near(t, "usual stock", p.Usual, usual, 1e-12)
	near(t, "usual stock, a tenth of the diameter worn", made(t, 1.2).Usual, 1.25, 1e-12)
	near(t, "usual stock, a hair over that", made(t, 1.2001).Usual, usual, 1e-12)
	testkit.Property(t, "a mishap costs its own grind and sets no habit: never more grinds than without it", func(t *rapid.T) {
		margin := rapid.Float64Range(1.21, 12).Draw(t, "margin")
		none, one, worse := made(t, 0), made(t, margin), made(t, margin+rapid.Float64Range(0, 10).Draw(t, "more"))
		near(t, "usual stock", one.Usual, none.Usual, 0)
		if one.Left > none.Left || worse.Left > one.Left {
			t.Fatalf("%g grinds without the mishap, %g with it, %g with a worse one", none.Left, one.Left, worse.Left)
		}
	})
	testkit.Property(t, "more wear within a tenth of the diameter never gives more grinds", func(t *rapid.T) {
		margin := rapid.Float64Range(0.01, 1.2).Draw(t, "margin")
		less, more := made(t, margin), made(t, rapid.Float64Range(margin, 1.2).Draw(t, "more"))
		if more.Left > less.Left {
			t.Fatalf("%g grinds with more wear, %g with less", more.Left, less.Left)
		}
	})
}

// A grind that misses the end by less than a gauge shows still counts, so that
// the count is what the printed arithmetic gives.
func TestAHairUnderCounts(t *testing.T) {
	b := half()
	for under, want := range map[float64]float64{0: 11, 1e-5: 11, 1e-4: 10, 1e-3: 10} {
		b.Flute = b.LeastFlute + 1 + 10*0.5 - under
		if left, end := b.Left(alike(1), 0.5); left != want || end != plan.FluteShort {
			t.Errorf("%g under: %g grinds, %v; want %g", under, left, end, want)
		}
	}
}

// alike is a loss that is the same at all ends.
func alike(stock float64) plan.Loss { return plan.Loss{Corner: stock, Inner: stock, Tip: stock} }
