package crib

import (
	"slices"
	"strings"
	"testing"

	"evenlip/internal/strict"
)

// FuzzRewriteKeepsTheRest changes the drill in the middle of a crib that has
// whatever a hand may have put about it and into it: what stands before that drill
// and what stands after it comes back byte for byte, and so does every remark that
// stands in it, in their order.
func FuzzRewriteKeepsTheRest(f *testing.F) {
	f.Add("# a drawer\n", "    # a remark\n", "    web: 1.5mm # measured\n", "\n# the end", byte(0))
	f.Add("", "\n\n", "    flute: 50mm\n    history:\n      - {date: 2026-01-02, what: grind}\n\n", "", byte(0))
	f.Add("name: x\r\n", "    note: >\n      one\n\n", "    flute: '60mm'\n    web-taper: 0.02\n    # note\n", "    note: \"#\"\n", byte(5))
	f.Add("keep: {12mm: 2}\n", "  - {id: d, size: 1/2}\n", "  - id: e\n    size: F\n", "  - id: g\n    size: '#7'", byte(1))
	f.Add("", "", "    flank-wear: 0.1mm  # burnt on job 7\n    # below\n", "", byte(0))
	f.Add("", "", "    lip-angle:\n    # lip 1\n    - 59 # J.\n    # lip 2\n    - 58\n", "", byte(0))
	f.Add("", "", "    lip-angle:\n    # lip 1\n    - 59 # J.\n    # lip 2\n    - 58 # eye\n", "", byte(1))
	f.Add("", "", "    lip-angle: [59, # gauge\n      58 # eye\n      ] # ]\n", "", byte(2))
	f.Add("", "", "    lip-angle: ['59', # gauge\n      58]\n    history: []\n", "", byte(0))
	f.Add("", "", "    note: '# no remark'\n    chisel-length: 2mm # scale\n    web: 1.5mm # caliper\n", "", byte(7))
	f.Add("", "", "    least-diameter: '#7' # plug\n    note: 'a # b' # c\n", "", byte(6))
	f.Fuzz(func(t *testing.T, head, before, inside, tail string, change byte) {
		for _, first := range []string{"    size: 10mm\n", "    flank-wear: 0.2mm # at first\n    # who: J.\n    size: 10mm\n"} {
			start := head + "version: 1\ndrills:\n  - id: a\n    size: 12mm\n" + before
			middle := strings.Replace(first, "    ", "  - ", 1) + inside + "    id: b\n"
			end := "  - id: c\n    size: 8mm\n" + tail
			_, next, err := Rewrite("f", []byte(start+middle+end), "b", changes[int(change)%len(changes)], nil)
			if err != nil {
				continue
			}
			now, headed := strings.CutPrefix(string(next), start)
			now, tailed := strings.CutSuffix(now, end)
			if !headed || !tailed {
				t.Fatalf("a change of b changed what is about it:\n%q\n%q", start+middle+end, next)
			}
			if lost := lostRemark(middle, now); lost != "" {
				t.Fatalf("a change of b lost %q:\n%q\n%q", lost, middle, now)
			}
		}
	})
}

// lostRemark returns the first remark of a drill that is not in what became of it,
// in the order in which they stood. A # that begins none stands in a note or in the
// history, which come back too.
func lostRemark(was, is string) string {
	left := remarks(is)
	for _, r := range remarks(was) {
		at := slices.Index(left, r)
		if at < 0 {
			return r
		}
		left = left[at+1:]
	}
	return ""
}

// remarks returns what stands behind the first # of each line that has a blank before it.
func remarks(text string) (out []string) {
	for _, line := range strict.Lines(text) {
		for at := range line {
			if line[at] == '#' && (at == 0 || strings.ContainsAny(line[at-1:at], " \t")) {
				out = append(out, strings.TrimSuffix(line[at:], strict.LineEnd(line)))
				break
			}
		}
	}
	return out
}
