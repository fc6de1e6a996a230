package quantity

import (
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

func mustParse(t *testing.T, kind Kind, text string) Value {
	t.Helper()
	v, err := Parse(kind, text, Unset)
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return v
}

func TestEchoShowsWhatWasTaken(t *testing.T) {
	for _, c := range []struct {
		kind        Kind
		text        string
		bare        System
		echo, unit  string
		system      System
		unitAssumed bool
	}{
		{Length, "1.8", Unset, "1.8 mm", "mm", Metric, true},
		{Length, "1.8", Inch, "1.8 in", "in", Inch, true},
		{Length, " 1.8mm\t", Inch, "1.8mm", "mm", Metric, false},
		{Length, "1/2", Metric, "1/2 in", "in", Inch, true},
		{Length, "85thou", Metric, "85thou", "thou", Inch, false},
		{Length, "2 inches", Metric, "2 inches", "in", Inch, false},
		{Length, `2-1/2"`, Metric, `2-1/2"`, "in", Inch, false},
		{Length, "40μm", Metric, "40μm", "µm", Metric, false},
		{Size, "#7", Metric, "#7", "", Inch, false},
		{Size, "Ø12", Metric, "Ø12 mm", "mm", Metric, true},
		{Angle, "59", Inch, "59°", "°", Unset, true},
		{Angle, "59deg", Inch, "59deg", "°", Unset, false},
		{Angle, "59°30'", Inch, "59°30'", "°", Unset, false},
		{Feed, "0.008", Inch, "0.008 in/rev", "in/rev", Inch, true},
		{Feed, "1/64", Metric, "1/64 in/rev", "in/rev", Inch, true},
		{Number, "0.4", Inch, "0.4", "", Unset, false},
		{Share, "0.8", Inch, "0.8", "", Unset, false},
		{Share, "80%", Inch, "80%", "%", Unset, false},
		{Rpm, "600", Inch, "600 rpm", "rpm", Unset, true},
	} {
		v, err := Parse(c.kind, c.text, c.bare)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if v.Echo() != c.echo || v.Unit != c.unit || v.System != c.system || v.Assumed != c.unitAssumed {
			t.Errorf("%q: echo %q unit %q system %d assumed %v, want %+v", c.text, v.Echo(), v.Unit, v.System, v.Assumed, c)
		}
	}
}

func TestPair(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		text string
		bare System
		a, b float64 // b NaN: one value
		echo string
	}{
		{Length, "6.2,6.1", Unset, 6.2, 6.1, "6.2 mm,6.1 mm"},
		{Length, "6.2", Unset, 6.2, math.NaN(), "6.2 mm"},
		{Length, " 6.2mm , 6.1mm ", Inch, 6.2, 6.1, "6.2mm,6.1mm"},
		{Length, "6.2,6.1mm", Inch, 6.2, 6.1, "6.2 mm,6.1mm"},
		{Length, "0.24in,0.25", Metric, 6.096, 6.35, "0.24in,0.25 in"},
		{Length, "85,84thou", Metric, 2.159, 2.1336, "85 thou,84thou"},
		{Length, "1/2,12mm", Metric, 12.7, 12, "1/2 in,12mm"},
		{Length, "½,12mm", Metric, 12.7, 12, "½ in,12mm"},
		{Length, "1/2,12", Metric, 12.7, 12, "1/2 in,12 mm"},
		{Length, "1in,12mm", Metric, 25.4, 12, "1in,12mm"},
		{Size, "#7,12", Metric, 5.1054, 12, "#7,12 mm"},
		{Taper, "0.016,0.2in/ft", Metric, 0.016, 0.2 / 12, "0.016 mm/mm,0.2in/ft"},
		{Share, "0.8,80%", Metric, 0.8, 0.8, "0.8,80%"},
		{Number, "0.4,0.9", Inch, 0.4, 0.9, "0.4,0.9"},
		{Angle, "59,0.5rad", Metric, 59 * math.Pi / 180, 0.5, "59°,0.5rad"},
		{Angle, "59,5", Metric, 59 * math.Pi / 180, 5 * math.Pi / 180, "59°,5°"},
		{Angle, "59°30',58.5", Metric, 59.5 * math.Pi / 180, 58.5 * math.Pi / 180, "59°30',58.5°"},
	} {
		a, b, n, err := Reader{Kind: c.kind, Bare: c.bare}.Pair(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		echo := a.Echo()
		if n == 2 {
			echo += "," + b.Echo()
		}
		if !near(a.V, c.a) || (n == 1) != math.IsNaN(c.b) || n == 2 && !near(b.V, c.b) || echo != c.echo {
			t.Errorf("%q: %v, %v (%d) %q, want %+v", c.text, a.V, b.V, n, echo, c)
		}
	}
}

func TestPairRefuses(t *testing.T) {
	for text, hint := range map[string]string{
		"1,2,3":     "more than two values; a comma is never a decimal point or a thousands mark",
		",1":        "a value is missing beside the comma",
		"1,":        "a value is missing beside the comma",
		",":         "a value is missing beside the comma",
		"":          "nothing was written",
		"?":         "begin with a number",
		"1,?":       "begin with a number",
		"1,-2":      "a negative value makes no sense here",
		"1e9,0.1cm": beyond,
		"0.1cm,1e9": beyond,
	} {
		a, b, n, err := Reader{Kind: Length, Bare: Unset}.Pair(text)
		if err == nil || err.Hint != hint || n != 0 || a != (Value{}) || b != (Value{}) {
			t.Errorf("%q: %v %v %d %#v, want hint %q", text, a, b, n, err, hint)
		}
	}
	a, b, n, err := Reader{Length, Unset, true}.Pair("-0.05, 0.02")
	if err != nil || n != 2 || a.V != -0.05 || b.V != 0.02 {
		t.Errorf("signed pair: %v %v %d %v", a, b, n, err)
	}
}

func TestUnits(t *testing.T) {
	for text, want := range map[string]System{"mm": Metric, "in": Inch, " IN ": Inch, "MM": Metric} {
		if got, err := ParseUnits(text); err != nil || got != want {
			t.Errorf("%q: %v %v", text, got, err)
		}
	}
	got, err := ParseUnits("furlongs")
	if want := `cannot read "furlongs": takes mm or in`; got != Unset || err == nil || err.Error() != want {
		t.Errorf("got %v %v, want %s", got, err, want)
	}
}

func TestRange(t *testing.T) {
	r, err := Reader{Kind: Length, Bare: Inch}.Range("0..6mm by 0.5")
	if err != nil {
		t.Fatal(err)
	}
	got := r.Values()
	if len(got) != 13 || got[0] != 0 || got[12] != 6 || r.From.Echo() != "0 mm" || r.Step.Echo() != "0.5 mm" {
		t.Errorf("%v from %+v", got, r)
	}
	// A step that a float64 cannot hold must still reach the end.
	if r, err := (Reader{Kind: Number, Bare: Unset}).Range("0..0.3 by 0.1"); err != nil || len(r.Values()) != 4 {
		t.Errorf("0..0.3 by 0.1: %v %v", r, err)
	}
	// One that does not meet the end stops short of it.
	if r, err := (Reader{Kind: Angle, Bare: Unset}).Range("59°..60° by 0.3°"); err != nil || len(r.Values()) != 4 {
		t.Errorf("59..60 by 0.3: %v %v", r, err)
	}
	if r, err := (Reader{Kind: Length, Bare: Unset}).Range("2..2 by 1"); err != nil || len(r.Values()) != 1 {
		t.Errorf("2..2: %v %v", r, err)
	}
	if !IsRange("0..6mm by 1mm") || IsRange("0.5mm") {
		t.Error("IsRange")
	}
}

func TestRangeRefuses(t *testing.T) {
	for text, hint := range map[string]string{
		"0..6":              "write first..last by step",
		"0 by 6":            "write first..last by step",
		"6..0 by 1":         "the first value is the smaller one",
		"0..6 by 0":         "the step is above zero",
		"0..6 by 0.0001":    "a range has at most 10000 steps",
		"0..6 by ?":         "begin with a number",
		"0..1e9 by 1cm":     beyond,
		"0..6 by -1":        "a negative value makes no sense here",
		"0..6 by 1 by 2":    `"by 2" is no unit that is known here`,
		"0mm..59deg by 1mm": "deg goes with an angle",
	} {
		r, err := Reader{Kind: Length, Bare: Unset}.Range(text)
		if err == nil || err.Hint != hint || r != (Range{}) {
			t.Errorf("%q: %v %#v, want hint %q", text, r, err, hint)
		}
	}
	_, err := Reader{Kind: Length, Bare: Unset}.Range("0..6")
	if want := `cannot read "0..6": takes a length such as 12mm, 0.5in, 1/2 or 85thou, or a range such as 0mm..6mm by 0.5mm`; err.Error() != want {
		t.Errorf("got %v", err)
	}
}

func TestAMessageIsOneCleanLine(t *testing.T) {
	_, err := Parse(Length, "\x1b[2J\n\xff"+strings.Repeat("°", 500), Unset)
	if err == nil {
		t.Fatal("read")
	}
	want := `cannot read "\x1b[2J\n\xff` + strings.Repeat("°", 34) + `…": takes a length such as 12mm, 0.5in, 1/2 or 85thou`
	if err.Error() != want {
		t.Errorf("got  %s\nwant %s", err, want)
	}
}

// A value printed in full, in the kind's own unit, reads as the same float64.
func TestFullPrintReadsBack(t *testing.T) {
	own := map[Kind]string{
		Number: "", Length: "mm", Size: "mm", Angle: "rad", Feed: "mm/rev", Taper: "mm/mm", Share: "", Rpm: "rpm",
		Cutting: "m/min", Surface: "m/s", Force: "N", Torque: "N m", Power: "kW", Stress: "MPa",
	}
	testkit.Property(t, "a value printed in full reads back as the same number", func(t *rapid.T) {
		v := rapid.Float64Range(1e-12, 1).Draw(t, "v")
		format := rapid.SampledFrom([]byte{'f', 'g', 'e'}).Draw(t, "format")
		for kind, unit := range own {
			text := strconv.FormatFloat(v, format, -1, 64) + unit
			got, err := Parse(kind, text, Unset)
			if err != nil || got.V != v {
				t.Fatalf("%q: %v %v", text, got.V, err)
			}
		}
	})
}

// What JSON carries in degrees reads back to within its last digit.
func TestExportedDegreesReadBack(t *testing.T) {
	testkit.Property(t, "degrees as JSON carries them read back to the last digit", func(t *rapid.T) {
		v := rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "v")
		got, err := Reader{Angle, Unset, true}.One(strconv.FormatFloat(Export(Angle, v), 'g', -1, 64))
		if err != nil && math.Abs(v) > smallest || math.Abs(got.V-v) > 1e-14 { // degrees go out to 12 decimals
			t.Fatalf("%v: %v %v", v, got.V, err)
		}
	})
}

// Mixed fractions, worked again in exact rational arithmetic.
func TestFractionsAgainstRationals(t *testing.T) {
	testkit.Property(t, "mixed fractions are what exact rational arithmetic makes of them", func(t *rapid.T) {
		w := rapid.Int64Range(0, 11).Draw(t, "whole")
		bottom := rapid.Int64Range(2, 128).Draw(t, "bottom")
		top := rapid.Int64Range(1, bottom-1).Draw(t, "top")
		join := rapid.SampledFrom([]string{"-", " ", "  "}).Draw(t, "join")
		inches := new(big.Rat).Add(big.NewRat(w, 1), big.NewRat(top, bottom))
		mixed := strconv.FormatInt(w, 10) + join + strconv.FormatInt(top, 10) + "/" + strconv.FormatInt(bottom, 10)
		check := func(text string, inches *big.Rat) {
			want, _ := new(big.Rat).Mul(inches, big.NewRat(254, 10)).Float64()
			got, err := Parse(Length, text, Metric)
			if err != nil || !near(got.V, want) {
				t.Fatalf("%q: %v %v, want %v", text, got.V, err, want)
			}
		}
		check(mixed, inches)
		check(mixed+`"`, inches)
	})
}

// Degrees, minutes and seconds, against the same angle as one decimal number.
func TestArcAgainstDecimalDegrees(t *testing.T) {
	testkit.Property(t, "degrees, minutes and seconds are the same angle as a decimal number", func(t *rapid.T) {
		d := rapid.IntRange(0, 179).Draw(t, "degrees")
		m := rapid.IntRange(0, 59).Draw(t, "minutes")
		s := rapid.IntRange(0, 59).Draw(t, "seconds")
		exact := new(big.Rat).SetFrac64(int64(3600*d+60*m+s), 3600)
		want, err := Parse(Angle, exact.FloatString(25), Unset)
		if err != nil {
			t.Fatal(err)
		}
		text := strconv.Itoa(d) + "°" + strconv.Itoa(m) + "'" + strconv.Itoa(s) + `"`
		got, err := Parse(Angle, text, Unset)
		if err != nil || !near(got.V, want.V) {
			t.Fatalf("%s: %v %v, want %v", text, got.V, err, want.V)
		}
	})
}

// An inch reading and the same in millimetres are one length.
func TestInchIsMillimetresTimes254(t *testing.T) {
	testkit.Property(t, "an inch reading and the same in millimetres are one length", func(t *rapid.T) {
		for kind, units := range map[Kind][2]string{
			Length: {"mm", "in"}, Feed: {"mm/rev", "in/rev"}, Size: {"mm", `"`},
		} {
			most := 1e6
			if kind == Size {
				most = largestSize / mmPerInch
			}
			v := strconv.FormatFloat(rapid.Float64Range(1e-6, most).Draw(t, "v"), 'g', -1, 64)
			mm, err1 := Parse(kind, v+units[0], Inch)
			in, err2 := Parse(kind, v+units[1], Metric)
			bare, err3 := Parse(kind, v, Inch)
			if err1 != nil || err2 != nil || err3 != nil || !near(in.V, mm.V*25.4) || bare.V != in.V {
				t.Fatalf("%s: %v mm, %v in, %v bare: %v, %v, %v", v, mm.V, in.V, bare.V, err1, err2, err3)
			}
		}
	})
}

func TestPlainNumbersAllocateNothing(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		text string
	}{{Length, "12.345mm"}, {Size, "0.5in"}, {Angle, "59.5°"}, {Feed, "0.2"}, {Rpm, " 600rpm "}} {
		if n := testing.AllocsPerRun(100, func() { mustParse(t, c.kind, c.text) }); n != 0 {
			t.Errorf("%q: %v allocations", c.text, n)
		}
	}
	if n := testing.AllocsPerRun(100, func() { _, _, _, _ = Reader{Kind: Length, Bare: Unset}.Pair("6.2mm,6.1mm") }); n != 0 {
		t.Errorf("a pair: %v allocations", n)
	}
}

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"12.345mm", "0.085in", "12.5", "1-1/4in", "#7"} {
		b.Run(text, func(b *testing.B) {
			for range b.N {
				if _, err := Parse(Size, text, Unset); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
