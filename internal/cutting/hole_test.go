package cutting_test

import (
	"fmt"
	"math"
	"testing"

	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/testkit"

	"pgregory.net/rapid"
)

const (
	inchMM = 25.4
	footM  = 0.3048
)

func TestImpossiblePilotsAreNaN(t *testing.T) {
	for _, pilot := range []float64{0, -1, sevenEighths.D, math.NaN()} {
		unknown(t, "thrust over the pilot", sevenEighths.OverPilot(pilot).Thrust)
	}
	l := sevenEighths
	l.Chisel = -1
	unknown(t, "thrust with a negative chisel edge", l.OverPilot(3).Thrust)
}

// A pilot as wide as the web takes the chisel's part of the thrust away, and a
// wider one than the chisel takes more.
func TestPilotTakesTheChiselsPart(t *testing.T) {
	full := sevenEighths.Result()
	at := sevenEighths.OverPilot(0.155 * sevenEighths.D)
	trade := testkit.Against(t, testkit.Trade, "part of the thrust that a pilot as wide as the web takes away")
	trade.Between("7/8 in drill", 100*(1-at.Thrust/full.Thrust), 50, 70, "%")
	within(t, "chisel share left", at.ChiselShare, 0, 1e-12)
	if narrower := sevenEighths.OverPilot(0.1 * sevenEighths.D); narrower != at {
		t.Errorf("a pilot within the chisel edge leaves the lips as they are: %+v and %+v", narrower, at)
	}
	wide := sevenEighths.OverPilot(0.5 * sevenEighths.D)
	// By hand: (1 - 0.5)/1.5^0.2 = 0.4611 against 0.82/1.18^0.2 = 0.7933.
	hand := testkit.Against(t, testkit.Derived, "lips alone over a pilot, by hand")
	hand.Within("thrust of a half-size pilot over a chisel-size one", wide.Thrust/at.Thrust, 0.4611/0.7933, 2e-4, "")
	if !(wide.Thrust < at.Thrust && wide.Torque < at.Torque) {
		t.Errorf("a wider pilot: %v N, %v N m; narrower %v N, %v N m", wide.Thrust, wide.Torque, at.Thrust, at.Torque)
	}
}

func TestRpmByTheTradesFormulas(t *testing.T) {
	full := testkit.Against(t, testkit.Trade, "rpm is 12 SFM / (pi D)")
	brief := testkit.Against(t, testkit.Trade, "rpm is 3.82 SFM / D")
	rough := testkit.Against(t, testkit.Trade.Recalled(""), "rpm is 4 CS / D; SFM is 0.26 rpm D").Because("4 stands for 12 over pi, 3.82")
	for _, sfm := range []float64{30, 80, 110, 300} {
		for _, in := range []float64{0.0625, 0.25, 0.5, 1, 2} {
			rpm := cutting.Rpm(sfm*footM, in*inchMM)
			at := fmt.Sprintf("%g in at %g ft/min", in, sfm)
			full.Part(at, rpm, 12*sfm/(math.Pi*in), 1e-12, "rpm")
			brief.Part(at, rpm, 3.82*sfm/in, 0.0002, "rpm")
			rough.Part(at, rpm, 4*sfm/in, 0.05, "rpm")
			rough.Part(at+", speed", cutting.CuttingSpeed(rpm, in*inchMM)/footM, 0.26*rpm*in, 0.01, "ft/min")
		}
	}
}

func TestRpmRoundTrip(t *testing.T) {
	testkit.Property(t, "speed to rpm and back is the same speed", func(t *rapid.T) {
		v, d := rapid.Float64Range(0.1, 500).Draw(t, "v"), rapid.Float64Range(0.1, 100).Draw(t, "d")
		if got := cutting.CuttingSpeed(cutting.Rpm(v, d), d); math.Abs(got/v-1) > 1e-12 {
			t.Fatalf("got %v, want %v", got, v)
		}
	})
}

// A 1/2 in drill in aluminium at 200 to 300 ft/min, 0.004 to 0.007 in a turn. By
// hand: 1528 and 2292 rpm.
func TestNavySpeedAndFeed(t *testing.T) {
	m, ok := handbook.FindMaterial("aluminium")
	if !ok {
		t.Fatal("no aluminium")
	}
	navy := testkit.Against(t, testkit.Navy, "1/2 in drill in aluminium")
	navy.Within("rpm at 200 ft/min", cutting.Rpm(m.Speed.Low, 12.7), 1528, 0.5, "rpm")
	navy.Within("rpm at 300 ft/min", cutting.Rpm(m.Speed.High, 12.7), 2292, 0.5, "rpm")
	band := handbook.FeedBand(12.7)
	navy.Within("low feed", cutting.Feed(band.Low, band.High, 0)/inchMM, 0.004, 1e-9/inchMM, "in")
	navy.Within("middle feed", cutting.Feed(band.Low, band.High, 0.5)/inchMM, 0.0055, 1e-9/inchMM, "in")
	navy.Within("high feed", cutting.Feed(band.Low, band.High, 1)/inchMM, 0.007, 1e-9/inchMM, "in")
}

// Six diameters deep: speed down by 35 to 40 %, feed by 20 %.
func TestDeepHoleIsDrilledSlower(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "six diameters deep")
	cut := handbook.Deep(6)
	trade.Between("speed left of 1000 rpm", cutting.Reduced(1000, cut.Speed), 600, 650, "rpm")
	trade.Within("feed left of 0.2 mm", cutting.Reduced(0.2, cut.Feed), 0.16, 1e-12, "mm")
}

// A 25 mm hole at 0.2 mm and 600 rpm advances 120 mm/min; with a 3 mm point it
// takes 14 s.
func TestHoleTime(t *testing.T) {
	within(t, "penetration", cutting.Penetration(0.2, 600), 120, 1e-12)
	within(t, "time", cutting.HoleTime(25, 3, 0.2, 600), 14, 1e-12)
}

func TestFeedOfOneFigure(t *testing.T) {
	within(t, "feed", cutting.Feed(0.2, 0.2, 0.5), 0.2, 1e-12)
}

func TestSpeedsOutsideTheirDomainAreNaN(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, v := range map[string]float64{
		"rpm of no diameter": cutting.Rpm(30, 0), "rpm of a negative speed": cutting.Rpm(-1, 10), "rpm of an infinite speed": cutting.Rpm(inf, 10),
		"speed of no diameter": cutting.CuttingSpeed(100, 0), "speed of a negative rpm": cutting.CuttingSpeed(-1, 10),
		"feed of an empty band": cutting.Feed(0, 0.1, 0.5), "feed of a band upside down": cutting.Feed(0.2, 0.1, 0.5),
		"feed of an open band": cutting.Feed(0.2, inf, 0.5), "feed beyond the band": cutting.Feed(0.1, 0.2, 1.1), "feed before the band": cutting.Feed(0.1, 0.2, -0.1),
		"all cut off": cutting.Reduced(10, 1), "more by a cut": cutting.Reduced(10, -0.1), "a negative speed cut": cutting.Reduced(-1, 0.1),
		"negative feed": cutting.Penetration(-0.1, 100), "negative rpm": cutting.Penetration(0.1, -100),
		"no feed": cutting.HoleTime(10, 1, 0, 100), "no speed": cutting.HoleTime(10, 1, 0.1, 0), "negative depth": cutting.HoleTime(-1, 1, 0.1, 100), "no point": cutting.HoleTime(1, nan, 0.1, 100),
	} {
		if !math.IsNaN(v) {
			t.Errorf("%s: got %v, want NaN", name, v)
		}
	}
}

// shopRule is the rule of the tables.
var shopRule = cutting.PeckRule{First: handbook.PeckFirst, Next: handbook.PeckNext, Shrink: handbook.PeckShrink, Least: handbook.PeckLeast}

// Straight to three diameters, then pecks of one diameter or less.
func TestPecks(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade.Recalled(""), "pecks of a 10 mm drill: three diameters, then one or less")
	for _, v := range []struct {
		depth float64
		want  []float64
	}{{10, []float64{10}}, {30, []float64{30}}, {40, []float64{30, 40}}} {
		pecks := cutting.Pecks(v.depth, 10, shopRule)
		if len(pecks) != len(v.want) {
			t.Fatalf("depth %v: got %v, want %v", v.depth, pecks, v.want)
		}
		for i := range pecks {
			trade.Within(fmt.Sprintf("%g mm deep, stroke %d", v.depth, i+1), pecks[i], v.want[i], 1e-9, "mm")
		}
	}
}

// Each peck is four fifths of the one before, and none is under half a diameter:
// own rules.
func TestPecksByTheOwnRules(t *testing.T) {
	for _, v := range []struct {
		depth float64
		want  []float64
	}{
		{48, []float64{30, 40, 48}},
		{59.52, []float64{30, 40, 48, 54.4, 59.52}},
		// Less than half a diameter over three goes with the first stroke.
		{30.1, []float64{30.1}},
		{34.9, []float64{34.9}},
		{35, []float64{30, 35}},
		// The last stroke would be 1 mm: the one before gives up 4 mm.
		{41, []float64{30, 36, 41}},
		{58, []float64{30, 40, 48, 53, 58}},
		// 0.48 mm would be left: the three before give up what it lacks of 5 mm.
		{60, []float64{30, 40, 45, 50, 55, 60}},
	} {
		pecks := cutting.Pecks(v.depth, 10, shopRule)
		if len(pecks) != len(v.want) {
			t.Errorf("depth %v: got %v, want %v", v.depth, pecks, v.want)
			continue
		}
		for i := range pecks {
			within(t, fmt.Sprintf("%g mm deep, stroke %d", v.depth, i+1), pecks[i], v.want[i], 1e-9)
		}
	}
}

// The rule's promises, for any rule that leaves something to give up.
func TestPecksRiseShrinkAndEndAtTheDepth(t *testing.T) {
	testkit.Property(t, "pecks add up to the depth, none grows, none is longer than the rule's or shorter than its least", func(t *rapid.T) {
		d := rapid.Float64Range(0.3, 80).Draw(t, "d")
		depth := d * rapid.Float64Range(0.01, 200).Draw(t, "depth/D")
		least := rapid.Float64Range(0.05, 2).Draw(t, "least")
		next := least * rapid.Float64Range(1, 3).Draw(t, "next")
		rule := cutting.PeckRule{First: max(2*least, next*rapid.Float64Range(1, 3).Draw(t, "first")), Next: next, Shrink: rapid.Float64Range(0.1, 1).Draw(t, "shrink"), Least: least}
		pecks := cutting.Pecks(depth, d, rule)
		if len(pecks) == 0 {
			t.Fatal("no strokes")
		}
		if pecks[len(pecks)-1] != depth {
			t.Fatalf("ends at %v, want %v", pecks[len(pecks)-1], depth)
		}
		rounding := 1e-9 * depth
		at, most, next := 0.0, rule.First*d, rule.Next*d
		if len(pecks) == 1 {
			most += rule.Least * d
		}
		before := most
		for _, p := range pecks {
			stroke := p - at
			if stroke > before+rounding || stroke > most+rounding || stroke < min(rule.Least*d, depth)-rounding {
				t.Fatalf("a stroke of %v after one of %v, where %v to %v is allowed: %v", stroke, before, rule.Least*d, most, pecks)
			}
			at, before = p, stroke
			most, next = next, max(next*rule.Shrink, rule.Least*d)
		}
	})
}

func TestImpossiblePecksAreNone(t *testing.T) {
	nan := math.NaN()
	for _, v := range []struct {
		depth, d float64
		rule     cutting.PeckRule
		quantity string
	}{
		{10, 0, shopRule, "drill diameter"},
		{0, 10, shopRule, "depth"},
		{nan, 10, shopRule, "depth"},
		{2001, 10, shopRule, "depth"},
		{10, 10, cutting.PeckRule{First: 3, Next: 1, Shrink: 0.8, Least: 0}, "least stroke"},
		{10, 10, cutting.PeckRule{First: 3, Next: 0.4, Shrink: 0.8, Least: 0.5}, "second stroke"},
		{10, 10, cutting.PeckRule{First: 1.2, Next: 1.5, Shrink: 0.8, Least: 0.5}, "first stroke"},
		{10, 10, cutting.PeckRule{First: math.Inf(1), Next: 1, Shrink: 0.8, Least: 0.5}, "first stroke"},
		{10, 10, cutting.PeckRule{First: 0.9, Next: 0.5, Shrink: 0.8, Least: 0.5}, "first stroke"},
		{10, 10, cutting.PeckRule{First: 3, Next: 1, Shrink: 1.1, Least: 0.5}, "shrinking of the strokes"},
		{10, 10, cutting.PeckRule{First: 3, Next: 1, Shrink: 0, Least: 0.5}, "shrinking of the strokes"},
	} {
		if pecks := cutting.Pecks(v.depth, v.d, v.rule); pecks != nil {
			t.Errorf("impossible %s: %v", v.quantity, pecks)
		}
	}
}
