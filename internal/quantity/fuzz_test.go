package quantity

import (
	"math"
	"testing"

	"evenlip/internal/fault"
)

func seed(f *testing.F, tail string) {
	for _, w := range rows(f, append(readable, "refused.txt")...) {
		f.Add(uint8(w.Kind), uint8(w.Bare), w.Signed, w.text+tail)
	}
}

// sound fails unless there is either a value that its kind can have or a
// fault, and the error's message is one line.
func sound(t *testing.T, kind Kind, signed bool, v Value, err *fault.Fault) {
	t.Helper()
	if err != nil {
		if v != (Value{}) {
			t.Fatalf("a value beside the error: %+v", v)
		}
		for _, r := range err.Error() + err.Hint {
			if r < ' ' || r == 0x7f {
				t.Fatalf("a control character in %q, %q", err.Error(), err.Hint)
			}
		}
		return
	}
	size := math.Abs(v.V)
	if !(size <= largest) || size != 0 && size < smallest || math.Signbit(v.V) && !(signed && v.V < 0 && kind.takesSign()) {
		t.Fatalf("%+v", v)
	}
	for _, r := range v.Echo() {
		if r < ' ' || r == 0x7f {
			t.Fatalf("a control character in the echo %q", v.Echo())
		}
	}
}

func FuzzParse(f *testing.F) {
	seed(f, "")
	f.Fuzz(func(t *testing.T, kind, bare uint8, signed bool, text string) {
		k := Kind(kind) % kinds
		v, err := Reader{k, System(bare), signed}.One(text)
		sound(t, k, signed, v, err)
		if err != nil || v.Unit == "" {
			return
		}
		// What is echoed means what was read, whatever bare numbers mean.
		again, err := Reader{k, Metric, signed}.One(v.Echo())
		if err != nil || again.V != v.V {
			t.Fatalf("%q reads as %v, its echo %q as %v: %v", text, v.V, v.Echo(), again.V, err)
		}
	})
}

func FuzzParsePair(f *testing.F) {
	seed(f, "")
	seed(f, ",1mm")
	f.Fuzz(func(t *testing.T, kind, bare uint8, signed bool, text string) {
		k := Kind(kind) % kinds
		a, b, n, err := Reader{k, System(bare), signed}.Pair(text)
		sound(t, k, signed, a, err)
		if n == 2 || err != nil {
			sound(t, k, signed, b, err)
		} else if n != 1 || b != (Value{}) {
			t.Fatalf("%d values, %+v", n, b)
		}
	})
}

func FuzzParseRange(f *testing.F) {
	seed(f, "..6mm by 1")
	f.Fuzz(func(t *testing.T, kind, bare uint8, _ bool, text string) {
		k := Kind(kind) % kinds
		r, err := Reader{Kind: k, Bare: System(bare)}.Range(text)
		for _, v := range [...]Value{r.From, r.To, r.Step} {
			sound(t, k, false, v, err)
		}
		if err != nil {
			return
		}
		if n := len(r.Values()); n < 1 || n > mostSteps+1 {
			t.Fatalf("%d values", n)
		}
	})
}

func FuzzParseUnits(f *testing.F) {
	f.Add("mm")
	f.Add("in")
	f.Add("\xffcm")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseUnits(text)
		if (err != nil) != (s == Unset) {
			t.Fatalf("%q: %v %v", text, s, err)
		}
	})
}
