package quantity

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// The last that is taken and the first that is not.
func TestEdgesOfWhatIsRead(t *testing.T) {
	for text, want := range map[string]float64{
		"1-3/4in": 44.45, "1-4/4in": math.NaN(), "2 7/8in": 73.025, "2 8/8in": math.NaN(),
		"1234567/1234567in": 25.4, "12345678/12345678in": math.NaN(), "3in-": math.NaN(),
	} {
		v, err := Parse(Length, text, Unset)
		if refused := math.IsNaN(want); refused != (err != nil) || !refused && math.Abs(v.V-want) > 1e-9 {
			t.Errorf("%s reads as %v, %v", text, v.V, err)
		}
	}
}

// A comma with nothing to read behind it is no decimal comma.
func TestCommaBeforeNoNumber(t *testing.T) {
	_, err := Parse(Length, "12,x", Unset)
	if err == nil || strings.Contains(err.Hint, "write 12.") {
		t.Errorf("%v", err)
	}
}

// Whole degrees are exported whole, however they were turned to radians.
func TestWholeDegreesAreExportedWhole(t *testing.T) {
	for n := range 361 {
		if got := Export(Angle, float64(n)*math.Pi/180); got != float64(n) {
			t.Errorf("%d degrees go out as %v", n, got)
		}
	}
}

// Lengths read in inches are exported as the millimetres they are, to the last
// digit; an inch is 25.4 mm, so 1/64 in has seven decimals.
func TestInchesAreExportedInWholeDigits(t *testing.T) {
	for n := 1; n <= 64*4; n++ {
		for _, k := range []Kind{Length, Size, Feed} {
			in := strconv.FormatFloat(float64(n)/64, 'f', -1, 64)
			v, err := Parse(Length, in, Inch)
			if err != nil {
				t.Fatal(err)
			}
			want := strconv.FormatFloat(float64(n)*25.4/64, 'f', 7, 64)
			want = strings.TrimRight(strings.TrimRight(want, "0"), ".")
			if got := strconv.FormatFloat(Export(k, v.V), 'f', -1, 64); got != want {
				t.Errorf("%s in goes out as %s mm, not %s", in, got, want)
			}
		}
	}
	if got := Export(Length, 22.224999999999998); got != 22.225 {
		t.Errorf("%v", got)
	}
	if got := Export(Length, 12345.678901234567); got != 12345.678901234567 {
		t.Errorf("a length too long to be rounded so is %v", got)
	}
}

// The last letter is a size.
func TestLastSizes(t *testing.T) {
	if n := Nearest(0.413*25.4, LetterSize); n.At.Name != "Z" {
		t.Errorf("0.413 in is %q", n.At.Name)
	}
}
