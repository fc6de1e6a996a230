package print

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// A number is written with the digits that the standard library finds shortest,
// whichever way they are found; a zero has no sign.
func TestNumbers(t *testing.T) {
	check := func(t interface{ Errorf(string, ...any) }, v float64) {
		got := string(appendNumber([]byte("x"), v))
		want := "x" + strconv.FormatFloat(v, 'g', -1, 64)
		if v == 0 {
			want = "x0"
		}
		if got != want {
			t.Errorf("%v: %s, not %s", v, got, want)
		}
	}
	for _, v := range []float64{0, math.Copysign(0, -1), 1, -1, 0.5, -0.5, 0.1, 0.001, -0.001, 0.0001, 0.0005, 0.00005, 1e-9, 1e-12, 0.001000000000001, 999.999999999999, 999.9999999999999, 1000.000000000001, 999999, 999999.999, -999999.999, 1e6, -1e6, 1234567, 1e21, 1e300, 0.22499999999999998,
		0.12000000000000001, 59.999, 59.99999999999999, 100, 120, 0.03, 10.05, math.MaxFloat64, math.SmallestNonzeroFloat64} {
		check(t, v)
	}
	testkit.Property(t, "a number in JSON has the digits that the standard library finds shortest", func(t *rapid.T) {
		check(t, rapid.Float64Range(-2e6, 2e6).Draw(t, "any"))
		check(t, float64(rapid.Int64Range(-2e9, 2e9).Draw(t, "thousandths"))/1000)
		check(t, float64(rapid.Int64Range(-2e15, 2e15).Draw(t, "trillionths"))/1e12)
	})
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got := string(appendNumber(nil, v)); got != "null" {
			t.Errorf("%v: %s", v, got)
		}
	}
}

// Whatever a text holds, whoever decodes it gets it back, a broken byte apart,
// and nothing in it acts on a terminal.
func FuzzQuoted(f *testing.F) {
	for _, seed := range []string{"", "plain", evil, "a\"b\\c", "Größe 59°30′ 刃", "\u2028\u2029", "<&>", "\x00\x1f\x7f\u0080", "\U000e0001", "\xff\xfe", "\xed\xa0\x80", "\ufffd", "a\ufeffb"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		quoted := appendQuoted([]byte("x"), text)
		if again := appendQuoted([]byte("x"), []byte(text)); string(again) != string(quoted) {
			t.Errorf("%q: as bytes %s, as text %s", text, again, quoted)
		}
		var back string
		if err := json.Unmarshal(quoted[1:], &back); err != nil || back != string([]rune(text)) {
			t.Errorf("%q: %s reads as %q, %v", text, quoted, back, err)
		}
		if i := strings.IndexFunc(string(quoted), func(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) }); i >= 0 {
			t.Errorf("%q: %q may act on a terminal", text, quoted)
		}
	})
}
