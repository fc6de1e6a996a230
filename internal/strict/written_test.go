package strict_test

import (
	"testing"

	"evenlip/internal/strict"
)

var same = strict.Same

// How a value is written: between brackets, in quotes.
func TestHowItIsWritten(t *testing.T) {
	n, err := parse("a: [1, 2]\nb:\n  - 1\nc: {d: 1}\ne: 'x'\nf: \"x\"\ng: x\n")
	if err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]struct {
		flow  bool
		quote byte
	}{
		"a": {flow: true}, "b": {}, "c": {flow: true}, "e": {quote: '\''}, "f": {quote: '"'}, "g": {},
	} {
		for _, e := range n.Entries() {
			if v := e.Value; e.Key.Text() == key && (v.IsFlow() != want.flow || v.Quote() != want.quote) {
				t.Errorf("%s: flow %v, quote %q", key, v.IsFlow(), v.Quote())
			}
		}
	}
}

// Two files say the same however they are written, and not when a value, its
// kind, its order or its number differs.
func TestSame(t *testing.T) {
	const base = "a: [1, 2]\nb: x\n"
	for text, want := range map[string]bool{
		base: true, "a:\n  - 1\n  - '2'\nb: \"x\" # a remark\n": true,
		"a: [1, 3]\nb: x\n": false, "a: [1]\nb: x\n": false, "a: [1, 2, 3]\nb: x\n": false, "a: [2, 1]\nb: x\n": false, "b: x\na: [1, 2]\n": false,
		"a: {1: 2}\nb: x\n": false, "a: [1, 2]\nb: ~\n": false, "a: [1, 2]\nc: x\n": false, "a: [1, 2]\n": false,
	} {
		a, errA := parse(base)
		b, errB := parse(text)
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		if got := same(a, b); got != want || same(b, a) != want {
			t.Errorf("%q says the same: %v", text, got)
		}
	}
	null, _ := parse("a: ~\n")
	word, _ := parse("a: '~'\n")
	if same(null, word) {
		t.Error("nothing and a tilde in quotes say the same")
	}
}
