package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

const deg = math.Pi / 180

// printed is a quantity and how it is to be printed.
type printed struct {
	f    Format
	k    Kind
	g    Gauge
	v    float64
	want string
}

func checkPrinted(t *testing.T, cases []printed) {
	t.Helper()
	for _, c := range cases {
		if got := c.f.Text(c.k, c.g, c.v); got != c.want {
			t.Errorf("kind %d, gauge %d, %v: %q, want %q", c.k, c.g, c.v, got, c.want)
		}
	}
}

func TestText(t *testing.T) {
	mm, in := Format{}, Format{System: Inch}
	fine := Format{Gauges: Gauges{Caliper: 0.001, Protractor: deg / 12, Indicator: 0.002}}
	coarse := Format{System: Inch, Gauges: Gauges{Caliper: 0.1, Protractor: deg, Indicator: 0.0254}}
	checkPrinted(t, []printed{
		{mm, Length, Caliper, 1.8649, "1.86 mm"},
		{in, Length, Caliper, 12.7, "0.5000 in"},
		{mm, Length, NoGauge, 1.8649, "1.86 mm"},
		{mm, Length, Indicator, 0.0649, "0.06 mm"},
		{in, Length, Indicator, 0.0254, "0.0010 in"},
		{mm, Length, Protractor, 1.8649, "1.86 mm"},
		{fine, Length, Caliper, 1.8649, "1.865 mm"},
		{fine, Length, Indicator, 1.8649, "1.865 mm"},
		{coarse, Length, Caliper, 12.7, "0.500 in"},
		{coarse, Length, Indicator, 12.7, "0.500 in"},
		{mm, Size, NoGauge, 5.1054, "5.105 mm"},
		{in, Size, NoGauge, 5.1054, "0.2010 in"},
		{mm, Size, Caliper, 5.1054, "5.11 mm"},
		{mm, Angle, Protractor, 118 * deg, "118.0°"},
		{in, Angle, NoGauge, 59.04 * deg, "59.0°"},
		{mm, Angle, Indicator, 12.34 * deg, "12.3°"},
		{fine, Angle, Protractor, 12.344 * deg, "12.34°"},
		{coarse, Angle, Protractor, 118.4 * deg, "118°"},
		{mm, Feed, NoGauge, 0.2032, "0.203 mm/rev"},
		{in, Feed, NoGauge, 0.2032, "0.0080 in/rev"},
		{mm, Taper, NoGauge, 0.016, "0.0160 mm/mm"},
		{in, Taper, NoGauge, 0.016, "0.0160 in/in"},
		{mm, Share, NoGauge, 0.5449, "54 %"},
		{mm, Number, NoGauge, 0.17999, "0.180"},
		{mm, Count, NoGauge, 3, "3"},
		{in, Rpm, NoGauge, 601.6, "602 rpm"},
		{mm, Cutting, NoGauge, 30.48, "30.5 m/min"},
		{in, Cutting, NoGauge, 30.48, "100 ft/min"},
		{mm, Surface, NoGauge, 30.48, "30.5 m/s"},
		{in, Surface, NoGauge, 30.48, "6000 ft/min"},
	})
}

func TestTextOfForces(t *testing.T) {
	mm, in := Format{}, Format{System: Inch}
	checkPrinted(t, []printed{
		{mm, Force, NoGauge, 10298, "10300 N"},
		{mm, Force, NoGauge, 9.996, "10.0 N"},
		{mm, Force, NoGauge, 999.6, "1000 N"},
		{mm, Force, NoGauge, 0.12345, "0.123 N"},
		{mm, Force, NoGauge, 0.1, "0.100 N"},
		{mm, Force, NoGauge, 0.001, "0.00100 N"},
		{mm, Force, NoGauge, 1000, "1000 N"},
		{mm, Force, NoGauge, 1e-12, "0.000000 N"},
		{mm, Force, NoGauge, 0, "0 N"},
		{mm, Force, NoGauge, -1234, "-1230 N"},
		{mm, Stress, NoGauge, 155, "155 MPa"},
		{in, Stress, NoGauge, 155, "22500 psi"},   // 1 MPa is 145.038 psi (common practice)
		{in, Force, NoGauge, 10288.4, "2310 lbf"}, // the handbook's 2313 lb
		{mm, Torque, NoGauge, 63.14, "63.1 N m"},
		{mm, Torque, NoGauge, 1234, "1230 N m"},
		{in, Torque, NoGauge, 63.14, "559 in lb"}, // the handbook's 559 in lb
		{mm, Power, NoGauge, 2.3149, "2.31 kW"},
		{in, Power, NoGauge, 2.3149, "3.10 hp"}, // the handbook's 3.1 hp
		{in, Duration, NoGauge, 61.6, "62 s"},
	})
}

func TestTextAtTheEdges(t *testing.T) {
	mm := Format{}
	checkPrinted(t, []printed{
		{mm, Word, NoGauge, 1, "-"},
		{mm, Switch, NoGauge, 1, "-"},
		{mm, Length, Caliper, math.NaN(), "-"},
		{mm, Length, Caliper, math.Inf(1), "∞ mm"},
		{mm, Force, Caliper, math.Inf(-1), "-∞ N"},
		{mm, Length, Caliper, -0.001, "0.00 mm"},
		{mm, Length, Caliper, math.Copysign(0, -1), "0.00 mm"},
		{mm, Length, Caliper, -0.05, "-0.05 mm"},
		{mm, Share, NoGauge, -0.001, "0 %"},
	})
}

// No machine is set closer than to three figures; what was read, and what scripts
// read, is as it is.
func TestSpindleSpeedToSet(t *testing.T) {
	bench := Format{Bench: true}
	for _, c := range []struct {
		f    Format
		g    Gauge
		v    float64
		want string
	}{
		{bench, Setting, 10914.8, "10900 rpm"}, {bench, Setting, 1725.4, "1730 rpm"}, {bench, Setting, 424.4, "424 rpm"}, {bench, Setting, 85.6, "86 rpm"},
		{bench, NoGauge, 10914.8, "10915 rpm"}, {Format{}, Setting, 10914.8, "10915 rpm"}, {Format{Bench: true, Finer: 1}, Setting, 10914.8, "10914.8 rpm"},
	} {
		if got := c.f.Text(Rpm, c.g, c.v); got != c.want {
			t.Errorf("%+v: %s, not %s", c.f, got, c.want)
		}
	}
	if got := bench.Text(Cutting, Setting, 1725.44); got != "1725.4 m/min" {
		t.Errorf("a cutting speed: %s", got)
	}
}

func TestGaugeAtTheEdges(t *testing.T) {
	for _, g := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		f := Format{Gauges: Gauges{g, g, g}}
		for _, k := range []Kind{Length, Angle} {
			for _, gauge := range []Gauge{Caliper, Protractor, Indicator} {
				if got, want := f.Decimals(k, gauge, 1), (Format{}).Decimals(k, gauge, 1); got != want {
					t.Errorf("resolution %v: %d decimals, want %d", g, got, want)
				}
			}
		}
	}
	if n := (Format{Gauges: Gauges{Caliper: 0.01 * (1 - 1e-12)}}).Decimals(Length, Caliper, 1); n != 2 {
		t.Errorf("0.01 mm less a rounding error: %d decimals", n)
	}
	if n := (Format{Gauges: Gauges{Caliper: 1e-300}}).Decimals(Length, Caliper, 1); n != mostDecimals {
		t.Errorf("%d decimals", n)
	}
	if n := (Format{Gauges: Gauges{Caliper: 1e300}}).Decimals(Length, Caliper, 1); n != 0 {
		t.Errorf("%d decimals", n)
	}
}

func TestExport(t *testing.T) {
	if got := Export(Angle, math.Pi); got != 180 {
		t.Errorf("angle %v", got)
	}
	for _, k := range []Kind{Length, Share, Force, Number} {
		if got := Export(k, 0.25); got != 0.25 {
			t.Errorf("kind %d: %v", k, got)
		}
	}
}

// No printed length is further from the value than half its last digit, the
// last digit is no coarser than the gauge, and no negative zero is printed.
func TestPrintedLengthsAreTrueToTheGauge(t *testing.T) {
	testkit.Property(t, "a printed length is within half its last digit, and that digit no coarser than the gauge", func(t *rapid.T) {
		v := rapid.Float64Range(-200, 200).Draw(t, "v")
		res := rapid.SampledFrom([]float64{0.1, 0.05, 0.02, 0.01, 0.005, 0.001, 0.0254, 0.0127}).Draw(t, "resolution")
		for _, sys := range []System{Unset, Metric, Inch} {
			f := Format{System: sys, Gauges: Gauges{Caliper: res}}
			text := f.Number(Length, Caliper, v)
			x, err := strconv.ParseFloat(text, 64)
			if err != nil {
				t.Fatal(err)
			}
			last := math.Pow(10, -float64(f.Decimals(Length, Caliper, v)))
			if math.Abs(x-f.InSystem(Length, v)) > last/2*1.000001 {
				t.Fatalf("%v prints as %s", v, text)
			}
			if r := f.InSystem(Length, res); last > r*1.000001 || last < r/10.000001 {
				t.Fatalf("resolution %v, last digit %v", r, last)
			}
			if x == 0 && strings.HasPrefix(text, "-") {
				t.Fatalf("negative zero %s", text)
			}
		}
	})
}

// Printing in inches or millimetres changes the digits and nothing else: what
// is printed, read back, is the same quantity to within half its last digit.
func TestPrintAndReadBackInEitherSystem(t *testing.T) {
	kinds := []Kind{Number, Length, Size, Angle, Feed, Taper, Share, Rpm, Cutting, Surface, Force, Torque, Power, Stress}
	testkit.Property(t, "what is printed in inches or millimetres reads back as the same quantity", func(t *rapid.T) {
		v := rapid.Float64Range(0.2, 1).Draw(t, "v")
		k := rapid.SampledFrom(kinds).Draw(t, "kind")
		for _, sys := range []System{Metric, Inch} {
			f := Format{System: sys}
			text := f.Text(k, NoGauge, v)
			other := Metric + Inch - sys
			got, err := Parse(k, text, other)
			if text := f.Number(k, NoGauge, v); err != nil && strings.Trim(text, "0.") == "" {
				continue // a size so small that it prints as zero
			}
			if err != nil {
				t.Fatalf("%q: %v", text, err)
			}
			half := math.Pow(10, -float64(f.Decimals(k, NoGauge, v))) / 2
			if math.Abs(f.InSystem(k, got.V)-f.InSystem(k, v)) > half*1.000001 {
				t.Fatalf("kind %d: %v prints as %q, which reads as %v", k, v, text, got.V)
			}
		}
	})
}

// A force keeps three significant figures: the error is under half of 1 %, and
// rounding again changes nothing.
func TestThreeFigures(t *testing.T) {
	testkit.Property(t, "a force keeps three figures, and rounding it again changes nothing", func(t *rapid.T) {
		v := math.Pow(10, rapid.Float64Range(-3, 7).Draw(t, "log"))
		text := Format{}.Number(Force, NoGauge, v)
		x, err := strconv.ParseFloat(text, 64)
		if err != nil || math.Abs(x-v) > 0.00501*v {
			t.Fatalf("%v prints as %s: %v", v, text, err)
		}
		if again := (Format{}).Number(Force, NoGauge, x); again != text {
			t.Fatalf("%s rounds to %s", text, again)
		}
		if figures := strings.TrimLeft(strings.Replace(text, ".", "", 1), "0"); v < 999 && len(figures) != 3 {
			t.Fatalf("%v prints as %s", v, text)
		}
	})
}

// A setting is not made coarser by the gauge that was named, and is made finer.
func TestSettings(t *testing.T) {
	for protractor, want := range map[float64]string{0: "59.5°", 1: "59.5°", 0.5: "59.5°", 0.05: "59.50°"} {
		f := Format{Gauges: Gauges{Protractor: protractor * deg}}
		if got := f.Text(Angle, Setting, 59.5*deg); got != want {
			t.Errorf("on a protractor of %v°: %s, not %s", protractor, got, want)
		}
	}
}

// A working's digits are plain enough to type, and enough for the figure.
func TestDigits(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 12: "12", 0.1: "0.1", 2.0 / 3: "0.66666667", 123456789: "123456790", 1e-9: "0.000000001", 1e-13: "0", -1.5: "-1.5",
	} {
		if got := Digits(v, 8); got != want {
			t.Errorf("%v is shown as %s, not %s", v, got, want)
		}
	}
	if Digits(math.NaN(), 8) != "-" {
		t.Error("NaN has digits")
	}
	testkit.Property(t, "a working's digits are enough for its figure", func(t *rapid.T) {
		v := rapid.Float64Range(-1e6, 1e6).Draw(t, "v")
		var back float64
		if _, err := fmt.Sscan(Digits(v, 8), &back); err != nil || math.Abs(back-v) > 5.1e-8*math.Abs(v)+1e-12 {
			t.Fatalf("%v is shown as %s", v, Digits(v, 8))
		}
	})
}
