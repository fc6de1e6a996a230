package quantity

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

func TestNames(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		want []string
	}{
		{6.35, []string{"1/4 in", "E"}},
		{12.7, []string{"1/2 in", "12.7 mm"}},
		{31.75, []string{"1-1/4 in"}},
		{25.4, []string{"1 in"}},
		{12, []string{"12 mm"}},
		{0.98, []string{"0.98 mm"}},
		{6.5, []string{"6.5 mm"}},
		{5.105, []string{"#7"}},
		{5.1054, []string{"#7"}},
		{5.1, []string{"5.1 mm"}},
		{6.528, []string{"F"}},
		{88.9, []string{"3-1/2 in"}},
		{12.0006, nil},
		{0, nil},
		{-1, nil},
		{1000, nil},
		{math.NaN(), nil},
		{math.Inf(1), nil},
	} {
		got := Names(c.mm)
		if len(got) != len(c.want) {
			t.Errorf("%v: %v, want %v", c.mm, got, c.want)
			continue
		}
		for i := range got {
			if got[i].Name != c.want[i] {
				t.Errorf("%v: %v, want %v", c.mm, got, c.want)
			}
		}
	}
}

func TestNearest(t *testing.T) {
	for _, c := range []struct {
		mm               float64
		in               Series
		below, at, above string
	}{
		{5.1054, NumberSize, "#8", "#7", "#6"},
		{5.15, NumberSize, "#7", "", "#6"},
		{0.3429, NumberSize, "", "#80", "#79"},
		{5.7912, NumberSize, "#2", "#1", ""},
		{6, NumberSize, "#1", "", ""},
		{0.1, NumberSize, "", "", "#80"},
		{6.35, LetterSize, "D", "E", "F"},
		{12.7, FractionSize, "31/64 in", "1/2 in", "33/64 in"},
		{45, FractionSize, "1-3/4 in", "", "1-25/32 in"}, // past 1-3/4 in, where the step becomes 1/32
		{80, FractionSize, "3-1/8 in", "", "3-1/4 in"},
		{13.9, MetricSize, "13.8 mm", "13.9 mm", "14 mm"},
		{0.3, MetricSize, "0.28 mm", "0.3 mm", "0.32 mm"},
		{25, MetricSize, "24.75 mm", "25 mm", "25.5 mm"},
		{31.8, MetricSize, "31.5 mm", "", "32 mm"}, // past 25 mm from memory
		{32, MetricSize, "31.5 mm", "32 mm", "33 mm"},
		{100, MetricSize, "99 mm", "100 mm", ""},
		{101, MetricSize, "100 mm", "", ""},
		{math.NaN(), MetricSize, "", "", ""},
	} {
		n := Nearest(c.mm, c.in)
		if n.Below.Name != c.below || n.At.Name != c.at || n.Above.Name != c.above {
			t.Errorf("%v in %s: %+v, want %+v", c.mm, c.in, n, c)
		}
	}
}

func TestNextOverAllSeries(t *testing.T) {
	for _, c := range []struct {
		mm       float64
		down, up string
	}{
		{6.3, "D", "1/4 in"},
		{6.4, "1/4 in", "6.5 mm"},
		{12.7, "12.6 mm", "12.8 mm"},
		{12.6, "12.5 mm", "1/2 in"}, // and 12.7 mm
		{12.8, "1/2 in", "12.9 mm"},
		{5.1054, "5.1 mm", "13/64 in"},
		{88.9, "88 mm", "89 mm"},
		{0.2, "", "0.22 mm"},
		{100, "99 mm", ""},
		{0.01, "", "0.2 mm"},
	} {
		if down, up := NextDown(c.mm), NextUp(c.mm); down.Name != c.down || up.Name != c.up {
			t.Errorf("%v: down %v, up %v; want %+v", c.mm, down, up, c)
		}
	}
}

// Every name reads back as its own diameter, is found by it, and follows its
// neighbour in ascending order.
func TestEveryNameReadsBack(t *testing.T) {
	for _, s := range AllSeries {
		list := catalogue()[s]
		for i, size := range list {
			v, err := Parse(Size, size.Name, Unset)
			if err != nil || !near(v.V, size.MM) {
				t.Errorf("%s: %v %v, want %v", size.Name, v.V, err, size.MM)
			}
			n := Nearest(v.V, s)
			if n.At != size {
				t.Errorf("%s is found as %+v", size.Name, n)
			}
			if i > 0 && (size.MM <= list[i-1].MM || n.Below != list[i-1]) {
				t.Errorf("%s does not follow %s", size.Name, list[i-1].Name)
			}
		}
	}
}

// Sizes bracket a diameter, and going up from the size below leads back.
func TestNeighboursBracket(t *testing.T) {
	testkit.Property(t, "the sizes below and above bracket a diameter and lead back to each other", func(t *rapid.T) {
		mm := rapid.Float64Range(0.2, 101).Draw(t, "mm")
		up, down := NextUp(mm), NextDown(mm)
		okUp, okDown := up.Name != "", down.Name != ""
		if okUp && up.MM <= mm || okDown && down.MM >= mm {
			t.Fatalf("%v: %v %v", mm, down, up)
		}
		for _, s := range AllSeries {
			for _, size := range catalogue()[s] {
				if okUp && size.MM > mm+sameSize && size.MM < up.MM-sameSize || size.MM < mm-sameSize && size.MM > down.MM+sameSize {
					t.Fatalf("%v: %s lies between it and %v, %v", mm, size.Name, down, up)
				}
			}
		}
	})
}

func TestSeriesNames(t *testing.T) {
	want := []string{"fraction", "metric", "number", "letter"}
	for i, w := range want {
		if got := Series(i).String(); got != w {
			t.Errorf("%d: %s", i, got)
		}
	}
}

func sizeNames(list []SizeName) []string {
	var out []string
	for _, s := range list {
		out = append(out, s.Name)
	}
	return out
}

// A size that was typed as the rounded decimal of a name is found.
func TestCalled(t *testing.T) {
	for text, want := range map[string][]string{
		"13/64": {"13/64 in"}, ".2031in": {"13/64 in"}, "0.203in": {"13/64 in"}, "203.1thou": {"13/64 in"}, "5.159mm": {"13/64 in"}, "5.16": {"13/64 in"},
		".2032in": nil, "5.17": nil,
		"0.234in": {"A"}, "0.2344in": {"15/64 in"}, // an exact name stands before a rounded one
		"0.2in": nil, "0.20in": nil, // which is no one's rounded decimal, but three places of .200
		"#7": {"#7"}, "6.35": {"1/4 in", "E"}, "12": {"12 mm"}, "5": {"5 mm"}, "13mm": {"13 mm"},
		"15mm": {"15 mm"}, "12.34": nil, "19/100 in": nil,
	} {
		v, err := Parse(Size, text, Unset)
		if err != nil {
			t.Fatal(err)
		}
		if got := sizeNames(Called(v)); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

// Every name is found from its decimal of an inch, to the four places that charts of
// decimal equivalents print (common practice).
func TestNamesAreFoundByTheirDecimals(t *testing.T) {
	for _, series := range [...]Series{FractionSize, NumberSize, LetterSize} {
		for _, size := range catalogue()[series] {
			text := strconv.FormatFloat(size.MM/mmPerInch, 'f', 4, 64) + "in"
			v, err := Parse(Size, text, Unset)
			if err != nil {
				t.Fatal(err)
			}
			if !slices.Contains(Called(v), size) {
				t.Errorf("%s: %q, want %s", text, sizeNames(Called(v)), size.Name)
			}
		}
	}
}

func TestWornFrom(t *testing.T) {
	for _, c := range []struct {
		text string
		in   System
		want string
		by   float64 // in the text's unit
	}{
		{"0.2485in", Inch, "1/4 in", 0.0015},
		{"0.2485in", Metric, "1/4 in", 0.0015},
		{"0.498in", Inch, "1/2 in", 0.002},
		{"11.98mm", Metric, "12 mm", 0.02},
		{"9.90mm", Inch, "25/64 in", 25*25.4/64 - 9.9},
		{"9.98mm", Inch, "10 mm", 0.02}, // no inch size is as near
		{"12.3mm", Inch, "31/64 in", 31*25.4/64 - 12.3},
		{"12.65mm", Metric, "12.7 mm", 0.05},
		{"0.2503in", Inch, "1/4 in", -0.0003},
		{"12.01mm", Metric, "12 mm", -0.01},
		{"0.2036in", Inch, "#6", 0.0004},
		{"0.2034in", Inch, "13/64 in", 13./64 - 0.2034},
		{"6.2mm", Metric, "", 0}, // 0.05 under D, 0.1 under 6.3 mm
		{"0.1mm", Metric, "", 0},
		{"150mm", Metric, "", 0},
	} {
		v, err := Parse(Size, c.text, Unset)
		if err != nil {
			t.Fatal(err)
		}
		got, ok := WornFrom(v.V, c.in)
		by := c.by
		if v.System == Inch {
			by *= mmPerInch
		}
		if got.Name != c.want || ok != (c.want != "") || math.Abs(got.By-by) > 1e-9 {
			t.Errorf("%s in %v: %+v %v, want %s less %v", c.text, c.in, got, ok, c.want, by)
		}
	}
}

func TestAsNumber(t *testing.T) {
	for _, c := range []struct {
		text string
		bare System
		want string
	}{
		{"43", Unset, "#43"}, {"80", Metric, "#80"}, {"26", Metric, "#26"}, {"7", Inch, "#7"}, {"4", Inch, "#4"},
		{"25", Metric, ""}, {"12", Metric, ""}, {"3", Inch, ""}, {"81", Metric, ""},
		{"43mm", Metric, ""}, {"43.0", Metric, ""}, {"#43", Metric, ""}, {"+43", Metric, ""},
	} {
		v, err := Parse(Size, c.text, c.bare)
		if err != nil {
			t.Fatal(err)
		}
		if got, ok := AsNumber(v); ok != (c.want != "") || ok && got.Name != c.want {
			t.Errorf("%s: %v %v, want %q", c.text, got, ok, c.want)
		}
	}
}
