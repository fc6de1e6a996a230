package strict_test

import (
	"errors"
	"evenlip/internal/fault"
	"strings"
	"testing"
)

// What is no YAML is told in the library's words, with the line between its neighbours and a caret under
// it.
func TestShowsTheLine(t *testing.T) {
	for text, want := range map[string][2]string{
		"size: 12mm\nweb: 2mm: 3\n":        {"2:1: not YAML: mapping values are not allowed in this context", "  1  size: 12mm\n  2  web: 2mm: 3\n     ^"},
		"size: 12mm\n  web: 2mm\n":         {"2:3: not YAML: mapping values are not allowed in this context", "  1  size: 12mm\n  2    web: 2mm\n       ^"},
		"size: 12mm\n  \tweb: 2mm\n":       {"2:3: not YAML: mapping values are not allowed in this context", "  1  size: 12mm\n  2     web: 2mm\n       ^"},
		"size: 12mm\nweb: 2\x1bmm\n":       {"2:7: not YAML: control characters are not allowed", "  1  size: 12mm\n  2  web: 2\ufffdmm\n           ^"},
		"# größe: \u009b31m\na: 1\n":       {"1:10: not YAML: control characters are not allowed", "  1  # größe: \ufffd31m\n              ^\n  2  a: 1"},
		"a: 1\nb: \xff\n":                  {"2:4: not YAML: invalid leading UTF-8 octet", "  1  a: 1\n  2  b: \ufffd\n        ^"},
		"\ufeff{a: @}\n":                   {"1:1: not YAML: found character that cannot start any token", "  1  {a: @}\n     ^"},
		"a: @" + strings.Repeat("x", 200):  {"1:1: not YAML: found character that cannot start any token", ""},
		"web: 2mm\nlip: [59, 58\nflute: 9": {"2:6: not YAML: did not find expected ',' or ']'", "  1  web: 2mm\n  2  lip: [59, 58\n          ^\n  3  flute: 9"},
		"a: 1\nlip: [59, [58]\nb: 2":       {"2:6: not YAML: did not find expected ',' or ']'", "  1  a: 1\n  2  lip: [59, [58]\n          ^\n  3  b: 2"},
		"# " + strings.Repeat("x", 200) + "\n@: 1\n" + strings.Repeat("\n", 9): {"2:1: not YAML: found character that cannot start any token", "  2  @: 1\n     ^\n  3"},
		strings.Repeat("a:\n", 9) + "@: 1\n":                                   {"10:1: not YAML: found character that cannot start any token", "   9  a:\n  10  @: 1\n      ^"},
	} {
		_, err := parse(text)
		var e *fault.Fault
		if !errors.As(err, &e) || !strings.Contains(e.Hint, "quote") {
			t.Fatalf("%q: %v", text, err)
		}
		if got := strings.TrimPrefix(e.Error(), "drill.yaml:"); got != want[0] || e.Shown != want[1] {
			t.Errorf("%q:\n%s\n%s\nwant\n%s\n%s", text, got, e.Shown, want[0], want[1])
		}
	}
}

// slips are lines that a hand writes into a drill of a crib.
var slips = []string{
	`note: "abc`, `note: 'abc`, `"note: abc`, `note: 'it's fine'`, `note: "5" wheel`, `note: "\q"`, `note: *bold*`, `note: *bold`, `note: %YAML`, `note: @home`,
	"note: `x`", `note: & so on`, `note: |x`, `note: >5mm`, `note: ]`, `note: , 2`, `%YAML 3`, `@web: 2mm`, `note: a: b`, `web: 2mm:`, `note: [1, 2`, `note: {a: 1`,
	`lip-angle: [59, "58]`, `lip-angle: [59, [58]`, `lip-angle: [59, 58]]`, `note`, `web:2mm`, `note: - x`, `- x`, ` web: 2mm`, "\tweb: 2mm", "note: \x01", "note: \xff", "? x: - y", "note: !x!y z",
}

// The library names the line at which a list began, or none; each slip is told at
// its own line all the same.
func TestLineOfASlip(t *testing.T) {
	const head = "version: 1\ndrills:\n  - id: A1\n    size: 12mm # as marked\n"
	for _, slip := range slips {
		for _, between := range []string{"", "\n\n    # a remark\n"} {
			_, err := parse(head + "    " + slip + "\n" + between + "    flute: 80mm\n  - id: B1\n    size: 6mm\n")
			var e *fault.Fault
			if !errors.As(err, &e) || e.At.Line != 5 {
				t.Errorf("%q: %v", slip, err)
			}
		}
	}
}

// Lines that begin in a column where they cannot, and brackets and quotes over more
// lines than one.
func TestLineOfAFault(t *testing.T) {
	for text, line := range map[string]int{
		"a:\n  - id: x\n    size: 1\n   web: 2\n":                                  4,
		"a:\n  - id: x\n    size: 1\n - id: y\n   size: 2\n":                       4,
		"a:\n  - id: x\n    size: 1\n   - id: y\n":                                 4,
		"a:\n  - id: x\n    size: 1\nweb: 2\n    flute: 3\n  - id: y\n":            5,
		"a:\n  - id: x\n    size: 1\n  id: y\n    size: 2\n":                       4,
		"a:\n  - id: x\n    history:\n    - date: 1\n      what: 2\n     stock: 3": 6,
		"a:\n  - id: x\n    history:\n      - {date: 1}\n     - {date: 2}\n":       5,
		"a: 1\n- b\n": 2, "a: 1\n-\n": 2, "a: 1\n%b\n": 2, "a:\r- b\r c: d\r": 3, "[": 1, "a: x\n\tb: 1\n": 2, "a: 1\u0085\u0085\u2028\u2028b: @\n": 5, "a:\n  b: [1,\n    2\n  c: 3\n  d: 4\n  e: 5\n": 2,
		"a: \"b\n  c\nd: 1\n": 1, "\ufeffa: 1\n\nb: \"b\n  c\nd: 1\n": 3, "a: 1\n---\nb: [\n": 3,
		"{\"a\": 1,\n \"b\": [2\n": 2,
		"{\n" + strings.Repeat("  \"a\": 1,\n", 9) + "  \"b\": 1\n  \"c\": 1,\n  \"d\": 1\n}\n":                            12,
		"a:\n  - b: 1\n" + strings.Repeat("    c: 1\n", 5000) + "   d: 1\n    e: 1\n" + strings.Repeat("    c: 1\n", 5000): 5003,
	} {
		_, err := parse(text)
		var e *fault.Fault
		if !errors.As(err, &e) || e.At.Line != line {
			t.Errorf("%.80q: %v, want line %d", text, err, line)
		}
	}
}
