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

func TestWheelSpeedByTheInchFormula(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade.Recalled(""), "wheel speed is pi D N / 12")
	for _, v := range []struct{ in, rpm float64 }{{6, 3450}, {8, 3450}, {7, 3600}, {10, 1750}} {
		trade.Part(fmt.Sprintf("%g in at %g rpm", v.in, v.rpm), cutting.WheelSpeed(v.in*inchMM, v.rpm)*60/footM, math.Pi*v.in*v.rpm/12, 1e-12, "ft/min")
	}
	ansi := testkit.Against(t, testkit.ANSIB7, "ordinary wheels")
	ansi.Within("6500 ft/min", cutting.WheelSpeed(8*inchMM, cutting.WheelRpm(handbook.OrdinaryWheelMetric, 8*inchMM))*60/footM, 6500, 0.03*60/footM, "ft/min")
}

// An 8 in wheel marked for 33 m/s may turn at 3102 rpm by hand; a motor of
// 3450 rpm is too fast for it, and stays so when the wheel has worn to 6 in.
func TestWornWheelIsNotAllowedMore(t *testing.T) {
	w := cutting.Wheel{New: 203.2, Now: 152.4, Rpm: 3450, MarkedSpeed: 33, MarkedRpm: math.NaN()}
	r := w.Result()
	hand := testkit.Against(t, testkit.Derived, "8 in wheel marked for 33 m/s, by hand")
	hand.Within("allowed", r.AllowedRpm, 3101.6, 0.5, "rpm")
	within(t, "kept", r.Kept, 0.75, 1e-12)
	within(t, "speed over speed when new", r.Speed/r.SpeedNew, 0.75, 1e-12)
}

func TestNewWheelKeepsItsSpeed(t *testing.T) {
	r := cutting.Wheel{New: 200, Now: 200, Rpm: 2850, MarkedSpeed: 33, MarkedRpm: math.NaN()}.Result()
	within(t, "kept", r.Kept, 1, 0)
	within(t, "speed", r.Speed, r.SpeedNew, 0)
}

func TestTheLowerMarkingGoverns(t *testing.T) {
	nan := math.NaN()
	for _, v := range []struct{ speed, rpm, want float64 }{
		{33, 3000, 3000}, {33, 3600, 60000 * 33 / (math.Pi * 203.2)}, {nan, 3600, 3600}, {nan, nan, nan},
	} {
		r := cutting.Wheel{New: 203.2, Now: 200, Rpm: 2850, MarkedSpeed: v.speed, MarkedRpm: v.rpm}.Result()
		if math.IsNaN(v.want) {
			if !math.IsNaN(r.AllowedRpm) {
				t.Errorf("no marking: %+v", r)
			}
			continue
		}
		within(t, "allowed rpm", r.AllowedRpm, v.want, 1e-9)
	}
}

func TestWheelSpeedRoundTrip(t *testing.T) {
	testkit.Property(t, "wheel speed to rpm and back is the same speed", func(t *rapid.T) {
		v, d := rapid.Float64Range(0.1, 100).Draw(t, "v"), rapid.Float64Range(10, 1000).Draw(t, "d")
		if got := cutting.WheelSpeed(d, cutting.WheelRpm(v, d)); math.Abs(got/v-1) > 1e-12 {
			t.Fatalf("got %v, want %v", got, v)
		}
	})
}

// Textbook torsion, second computation: tau = M r / Ip with Ip = pi d^4 / 32.
func TestShankStressByThePolarMoment(t *testing.T) {
	testkit.Property(t, "the stress in a shank is M r over the polar moment, and the least shank bears just that", func(t *rapid.T) {
		m, d := rapid.Float64Range(0.01, 1000).Draw(t, "M"), rapid.Float64Range(1, 80).Draw(t, "d")
		want := m * (d / 2000) / (math.Pi * math.Pow(d/1000, 4) / 32) / 1e6
		if got := cutting.ShankStress(m, d); math.Abs(got/want-1) > 1e-9 {
			t.Fatalf("got %v, want %v", got, want)
		}
		if back := cutting.LeastShank(m, cutting.ShankStress(m, d)); math.Abs(back/d-1) > 1e-9 {
			t.Fatalf("shank %v comes back as %v", d, back)
		}
	})
}

// A 1 in drill in steel on a 1/2 in shank is known to slip or twist off at a
// full feed, and holds on its Morse taper.
func TestReducedShank(t *testing.T) {
	l := cutting.Load{D: 25.4, Feed: 0.28, Chisel: 0.18 * 25.4, KdThrust: 24000, KdTorque: 24000, Wear: 1.3, Efficiency: 0.75, Rpm: 300}
	torque := l.Result().Torque
	bears := func(d float64) float64 { return cutting.ShankStress(torque, d) / handbook.ShankStress }
	trade := testkit.Against(t, testkit.Trade, "1 in drill in steel at full feed, torque over what the shank bears")
	trade.Above("on a 1/2 in shank", bears(12.7), 1, "")
	const smallEnd = 0.778 * 25.4 // of Morse taper 3, the one for this drill (common practice)
	trade.Below("on its Morse taper", bears(smallEnd), 1, "")
	within(t, "stress at the least shank, over what it bears", bears(cutting.LeastShank(torque, handbook.ShankStress)), 1, 1e-12)
}

func TestMachineFunctionsOutsideTheirDomainAreNaN(t *testing.T) {
	for name, v := range map[string]float64{
		"wheel speed of no wheel": cutting.WheelSpeed(0, 100), "wheel speed of a negative rpm": cutting.WheelSpeed(100, -1),
		"wheel rpm of no wheel": cutting.WheelRpm(33, 0), "wheel rpm of a negative speed": cutting.WheelRpm(-33, 100),
		"stress of no shank": cutting.ShankStress(1, 0), "stress of a negative torque": cutting.ShankStress(-1, 10),
		"shank of no torque": cutting.LeastShank(0, 100), "shank at no stress": cutting.LeastShank(10, 0),
	} {
		if !math.IsNaN(v) {
			t.Errorf("%s: got %v, want NaN", name, v)
		}
	}
}
