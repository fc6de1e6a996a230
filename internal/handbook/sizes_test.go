package handbook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenlip/internal/testkit"
)

// The diameters in millimetres, as lists print them beside the inches; both
// columns from memory (ASME B94.11M).
var (
	numbersMM = []float64{
		5.791, 5.613, 5.410, 5.309, 5.220, 5.182, 5.105, 5.055, 4.978, 4.915,
		4.851, 4.801, 4.699, 4.623, 4.572, 4.496, 4.394, 4.305, 4.216, 4.089,
		4.039, 3.988, 3.912, 3.861, 3.797, 3.734, 3.658, 3.569, 3.454, 3.264,
		3.048, 2.946, 2.870, 2.819, 2.794, 2.705, 2.642, 2.578, 2.527, 2.489,
		2.438, 2.375, 2.261, 2.184, 2.083, 2.057, 1.994, 1.930, 1.854, 1.778,
		1.702, 1.613, 1.511, 1.397, 1.321, 1.181, 1.092, 1.067, 1.041, 1.016,
		0.991, 0.965, 0.940, 0.914, 0.889, 0.838, 0.813, 0.787, 0.742, 0.711,
		0.660, 0.635, 0.610, 0.571, 0.533, 0.508, 0.457, 0.406, 0.368, 0.343,
	}
	lettersMM = []float64{
		5.944, 6.045, 6.147, 6.248, 6.350, 6.528, 6.629, 6.756, 6.909, 7.036, 7.137, 7.366, 7.493,
		7.671, 8.026, 8.204, 8.433, 8.611, 8.839, 9.093, 9.347, 9.576, 9.804, 10.084, 10.262, 10.490,
	}
)

// printed is half of the last digit in print, and a little for 0.5715.
const printed = 0.00051

func TestNumberAndLetterSizesAgreeWithTheMillimetresInPrint(t *testing.T) {
	if len(numbersMM) != 80 || len(lettersMM) != 26 {
		t.Fatal("the check list is incomplete")
	}
	standard := testkit.Against(t, testkit.ASME.Recalled("high"), "diameters of numbers and letters, to a thousandth")
	for i, want := range numbersMM {
		got, ok := NumberDrill(i + 1)
		if !ok {
			t.Errorf("no #%d", i+1)
		}
		standard.Within(fmt.Sprintf("#%d", i+1), got, want, printed, "mm")
	}
	for i, want := range lettersMM {
		upper, ok1 := LetterDrill(byte('A' + i))
		lower, ok2 := LetterDrill(byte('a' + i))
		if !ok1 || !ok2 || upper != lower {
			t.Errorf("%c: %v %v, want %v", 'A'+i, upper, lower, want)
		}
		standard.Within(string(rune('A'+i)), upper, want, printed, "mm")
	}
}

func TestNoOtherNumberOrLetterIsADrill(t *testing.T) {
	for _, n := range []int{-1, 0, 81, math.MaxInt, math.MinInt} {
		if mm, ok := NumberDrill(n); ok || mm != 0 {
			t.Errorf("#%d: %v", n, mm)
		}
	}
	for c := range 256 {
		letter := c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z'
		if mm, ok := LetterDrill(byte(c)); ok != letter || !ok && mm != 0 {
			t.Errorf("%q: %v %v", c, mm, ok)
		}
	}
}

// Numbers run down and letters up, and the letters begin where the numbers end.
func TestWireSizesAreInOrder(t *testing.T) {
	if !slices.IsSortedFunc(numberDrills[:], func(a, b int) int { return b - a }) {
		t.Error("numbers")
	}
	if !slices.IsSorted(letterDrills[:]) || letterDrills[0] <= numberDrills[0] {
		t.Error("letters")
	}
}

// Common practice: each end of a step, and how many sizes there are between.
func TestFractionSteps(t *testing.T) {
	sizes := FractionDrills()
	if len(sizes) != 112+16+12+2+1 || !slices.IsSorted(sizes) {
		t.Errorf("%d sizes", len(sizes))
	}
	for _, n := range sizes {
		step := 1
		switch {
		case n > 208:
			step = 16
		case n > 192:
			step = 8
		case n > 144:
			step = 4
		case n > 112:
			step = 2
		}
		if n%step != 0 {
			t.Errorf("%d/64 in is off its step", n)
		}
	}
	for _, n := range []int{1, 112, 114, 144, 148, 192, 200, 208, 224} {
		if !slices.Contains(sizes, n) {
			t.Errorf("%s in is missing", SixtyFourths(n))
		}
	}
}

// Common practice (BS 328): the sizes under 1 mm spelt out, the rest by count.
func TestMetricSteps(t *testing.T) {
	sizes := MetricDrills()
	slices.Sort(sizes)
	var small []int
	for tens := 20; tens <= 90; tens += 10 {
		small = append(small, tens, tens+2, tens+5, tens+8)
	}
	if !slices.Equal(sizes[:len(small)], small) {
		t.Errorf("below 1 mm: %v", sizes[:len(small)])
	}
	large, _ := slices.BinarySearch(sizes, 2501)
	if large != 32+40+110+45 || sizes[large-1] != 2500 {
		t.Errorf("%d sizes to %d", large, sizes[large-1])
	}
	// From memory: by halves to 32 mm, then whole to 100 mm.
	if sizes[large] != 2550 || sizes[large+14-1] != 3200 || sizes[large+14] != 3300 || sizes[len(sizes)-1] != 10000 || len(sizes) != large+14+68 {
		t.Errorf("over 25 mm: %v", sizes[large:])
	}
	if len(slices.Compact(sizes)) != 32+40+110+45+14+68 {
		t.Error("a size occurs twice")
	}
}

func TestSixtyFourths(t *testing.T) {
	for n, want := range map[int]string{
		0: "0", 1: "1/64", 2: "1/32", 24: "3/8", 32: "1/2", 63: "63/64", 64: "1", 80: "1-1/4", 112: "1-3/4", 192: "3",
	} {
		if got := SixtyFourths(n); got != want {
			t.Errorf("%d/64: %s, want %s", n, got, want)
		}
	}
}

func TestSizeTables(t *testing.T) {
	wantRows := map[string]int{"number-drills": 80, "letter-drills": 26, "fraction-drills": 5, "metric-drills": 7, "metric-drills-large": 2,
		"drill-diameter-tolerance": 8, "drill-undersize": 1}
	for _, table := range Tables() {
		want, ofSizes := wantRows[table.Name]
		if !ofSizes {
			continue
		}
		if len(table.Rows) != want {
			t.Errorf("%s: %d rows", table.Name, len(table.Rows))
		}
		delete(wantRows, table.Name)
		if table.Title == "" || table.Source.Label == 0 || table.Source.Text == "" {
			t.Errorf("%s: no title or source", table.Name)
		}
		for _, cells := range table.Rows {
			if len(cells) != len(table.Head) || slices.Contains(cells, "") {
				t.Errorf("%s: %v under %v", table.Name, cells, table.Head)
			}
		}
	}
	if len(wantRows) > 0 {
		t.Errorf("missing: %v", wantRows)
	}
}

// What the tables show is what the lookups return.
func TestShownSizesAreTheOnesUsed(t *testing.T) {
	tables := SizeTables()
	for _, cells := range slices.Concat(tables[0].Rows, tables[1].Rows) {
		mm, ok := LetterDrill(cells[0][0])
		if number, isNumber := strings.CutPrefix(cells[0], "#"); isNumber {
			n, _ := strconv.Atoi(number)
			mm, ok = NumberDrill(n)
		}
		in, err := strconv.ParseFloat(cells[1], 64)
		if !ok || err != nil || math.Abs(in*25.4-mm) > 1e-12 {
			t.Errorf("%v: %v mm", cells, mm)
		}
	}
	if got := tables[2].Rows[0]; !slices.Equal(got, []string{"1/64", "1-3/4", "1/64"}) {
		t.Errorf("%v", got)
	}
	if got := tables[2].Rows[4]; !slices.Equal(got, []string{"3-1/2", "3-1/2", "-"}) {
		t.Errorf("%v", got)
	}
	if got := tables[3].Rows[6]; !slices.Equal(got, []string{"14.00", "25.00", "0.25"}) {
		t.Errorf("%v", got)
	}
}

// ISO h8 as the trade prints it, with five diameters of a back taper of 0.08 in 100
// (common practice), worked here in whole micrometres.
func TestUndersize(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "how far under its size a drill may measure")
	for d, want := range map[float64]float64{0.5: 16, 1: 18, 3: 26, 3.1: 30.4, 6: 42, 10: 62, 12: 75, 18: 99, 25: 133, 30: 153, 50: 239, 80: 366, 100: 454, 150: 654} {
		trade.Within(strconv.FormatFloat(d, 'g', -1, 64)+" mm", Undersize(d).High, want/1000, 1e-12, "mm")
	}
	if s := Undersize(12).Source; s.Label != Derived || Undersize(12).Low != 0 {
		t.Errorf("%v", s)
	}
}
