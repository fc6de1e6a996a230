package quantity

import (
	"math"
	"strings"
	"testing"
)

// The last that is taken and the first that is not.
func TestEdgesOfWhatIsRead(t *testing.T) {
	for text, want := range map[string]float64{
		"1-3/4in": 44.45, "1-4/4in": math.NaN(), "2 7/8in": 73.025, "2 8/8in": math.NaN(),
		"1234567/1234567in": 25.4, "12345678/12345678in": math.NaN(), "3ft": 914.4, "3ft-": math.NaN(),
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
	if e, ok := err.(*Error); !ok || strings.Contains(e.Hint, "write 12.") {
		t.Errorf("%v (%+v)", err, e)
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

// The last letter is a size, and there is no series after the last.
func TestLastSizes(t *testing.T) {
	if n, _ := Nearest(0.413*25.4, LetterSize); n.At.Name != "Z" {
		t.Errorf("0.413 in is %q", n.At.Name)
	}
	if n, ok := Nearest(5, Series(len(AllSeries))); ok || n != (Neighbours{}) {
		t.Errorf("%+v", n)
	}
}
