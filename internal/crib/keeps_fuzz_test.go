package crib

import (
	"strings"
	"testing"
)

// FuzzRewriteKeepsTheRest grinds the drill in the middle of a crib that has
// whatever a hand may have put about it: what stands before that drill and what
// stands after it comes back byte for byte.
func FuzzRewriteKeepsTheRest(f *testing.F) {
	f.Add("# a drawer\n", "    # a remark\n", "    web: 1.5mm # measured\n", "\n# the end")
	f.Add("", "\n\n", "    flute: 50mm\n    history:\n      - {date: 2026-01-02, what: grind}\n\n", "")
	f.Add("name: x\r\n", "    note: >\n      one\n\n", "    flute: '60mm'\n    web-taper: 0.02\n    # note\n", "    note: \"#\"\n")
	f.Add("keep: {12mm: 2}\n", "  - {id: d, size: 1/2}\n", "  - id: e\n    size: F\n", "  - id: g\n    size: '#7'")
	f.Fuzz(func(t *testing.T, head, before, inside, tail string) {
		start := head + "version: 1\ndrills:\n  - id: a\n    size: 12mm\n" + before
		end := "  - id: c\n    size: 8mm\n" + tail
		text := start + "  - id: b\n    size: 10mm\n" + inside + end
		_, next, err := Rewrite("f", []byte(text), "b", ground("0.6mm"), nil)
		if err != nil {
			return
		}
		if !strings.HasPrefix(string(next), start) || !strings.HasSuffix(string(next), end) {
			t.Fatalf("a grind of b changed what is about it:\n%q\n%q", text, next)
		}
	})
}
