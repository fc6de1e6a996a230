package strict_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"evenlip/internal/strict"
)

// slips are lines that a hand writes into a drill of a crib, the column at which
// each is at fault, what is said and what is advised.
var slips = []struct {
	line       string
	column     int
	says, hint string
}{
	{`note: "abc`, 11, `the " is not closed`, `close it with "`},
	{`note: 'abc`, 11, `the ' is not closed`, `close it with '`},
	{`"note: abc`, 5, `the " is not closed`, `close it with "`},
	{`note: 'it's fine'`, 15, "text stands behind the closing '", "write '' for a '"},
	{`note: "5" wheel`, 15, `text stands behind the closing "`, `write \" for a "`},
	{`note: "\q"`, 12, `\q is no escape`, `write \\`},
	{`note: "größe: \d"`, 19, `\d is no escape`, `write \\`},
	{`note: *bold*`, 11, "a value cannot begin with *", `note: "*bold*"`},
	{`note: *bold`, 11, "anchors and aliases", "put it into quotes"},
	{`note: %YAML`, 11, "a value cannot begin with %", `note: "%YAML"`},
	{`note: @home`, 11, "a value cannot begin with @", `note: "@home"`},
	{"note: `x`", 11, "a value cannot begin with `", "note: \"`x`\""},
	{`note: & so on`, 11, "a value cannot begin with &", `note: "& so on"`},
	{`note: |x`, 11, "a value cannot begin with |", `note: "|x"`},
	{`note: >5mm`, 11, "a value cannot begin with >", `note: ">5mm"`},
	{`note: ]`, 11, "a value cannot begin with ]", `note: "]"`},
	{`note: , 2`, 11, "a value cannot begin with ,", `note: ", 2"`},
	{`%YAML 3`, 5, "a line cannot begin with %", "a key"},
	{`@web: 2mm`, 5, "a line cannot begin with @", "a key"},
	{`note: a: b`, 12, "a second colon", "quotes"},
	{`web: 2mm:`, 13, "a second colon", "quotes"},
	{`note: [1, 2`, 11, "the [ is not closed", "close it with ]"},
	{`note: {a: 1`, 11, "the { is not closed", "close it with }"},
	{`lip-angle: [59, "58]`, 21, `the " is not closed`, `close it with "`},
	{`lip-angle: [59, [58]`, 16, "the [ is not closed", "close it with ]"},
	{`lip-angle: [59, 58]]`, 5, "did not find expected key", "quotes"},
	{`note`, 5, "there is no key on this line", "a colon and a blank"},
	{`web:2mm`, 8, "a blank is missing behind the colon", "web: 2mm"},
	{`note: - x`, 11, "a list cannot begin behind its key", "next line"},
	{`- x`, 5, "a list item stands where a key belongs", "take the dash away"},
	{` web: 2mm`, 6, "begins in column 6, and those above in column 5", "one column"},
	{"\tweb: 2mm", 5, "a tab stands", "put spaces"},
}

// The library tells a line, and often another one; each slip is told at its own
// line and column, with what to do.
func TestSlipsOfAHand(t *testing.T) {
	for _, c := range slips {
		const head = "version: 1\ndrills:\n  - id: A1\n    size: 12mm # as marked\n"
		_, err := parse(head + "    " + c.line + "\n    flute: 80mm\n  - id: B1\n    size: 6mm\n")
		var e *strict.Error
		if !errors.As(err, &e) || len(strict.Each(err)) != 1 {
			t.Errorf("%s: %v", c.line, err)
			continue
		}
		if e.Line != 5 || e.Column != c.column || !strings.Contains(e.Text, c.says) || !strings.Contains(e.Hint, c.hint) {
			t.Errorf("%s: %v (%s); want it at 5:%d: %s (%s)", c.line, e, e.Hint, c.column, c.says, c.hint)
		}
		if rest, ok := strict.RestOf(err); !ok || len(items(rest)) != 1 {
			t.Errorf("%s: the other drill is not read", c.line)
		}
	}
}

func items(rest strict.Rest) []strict.Node {
	if drills, ok := rest.Root.Lookup("drills"); ok {
		return drills.Value.Items()
	}
	return nil
}

// Where lines are out of line, and where what is said differs from the line that
// the library names.
func TestOutOfLine(t *testing.T) {
	checkRefused(t, []refused{
		{"a:\n  - id: x\n    size: 1\n   web: 2\n", "4:4", "begins in column 4, and those above in column 5"},
		{"a:\n  - id: x\n    size: 1\n - id: y\n   size: 2\n", "4:2", "begins in column 2, and those above in column 3"},
		{"a:\n  - id: x\n    size: 1\n   - id: y\n", "4:4", "begins in column 4, and those above in column 3"},
		{"a:\n  - id: x\n    size: 1\nweb: 2\n    flute: 3\n  - id: y\n", "4:1", "begins in column 1, and those above in column 5"},
		{"a:\n  - id: x\n    size: 1\n  id: y\n    size: 2\n", "4:3", "a key stands where a list item belongs"},
		{"a:\n  - id: x\n    history:\n    - date: 1\n      what: 2\n     stock: 3\n", "6:6", "begins in column 6, and those above in column 7"},
		{"a:\n  - id: x\n    history:\n      - {date: 1}\n     - {date: 2}\n", "5:6", "begins in column 6, and those above in column 7"},
		{"a:\n  b: 1: 2\n", "2:7", "a second colon"},
		{"a: 1\n b: 2\n", "2:2", "begins in column 2, and those above in column 1"},
		{"a: 1\nb\n", "2:1", "there is no key"},
		{"a: 1\n- b\n", "2:1", "a list item stands where a key belongs"},
		{"a:\n  b: [1,\n    2\n  c: 3\n", "2:6", "the [ is not closed"},
		{"{\"a\": 1,\n \"b\": 2\n \"c\": 3}\n", "3:2", "did not find expected"},
		{"{\"a\": 1,\n \"b\": [2\n", "2:7", "the [ is not closed"},
		{"a: \"b\n  c\nd: 1\n", "1:4", `the " is not closed`},
		{"a:\r- b\r c: d\r", "3:2", "begins in column 2, and those above in column 1"},
		{"a: 1\n%b\n", "2:1", "a line cannot begin with %"},
	})
}

// places are where and what is told of a file that is no YAML.
func places(err error) string {
	var out []string
	for _, each := range strict.Each(err) {
		var e *strict.Error
		if !errors.As(each, &e) {
			return "no place: " + each.Error()
		}
		out = append(out, fmt.Sprintf("%d:%d %s", e.Line, e.Column, e.Text))
	}
	return strings.Join(out, "\n")
}

const manySlips = `version: 1
name: "ours
drills:
  - id: A1
    size: 12mm
    note: *bold*
    web: 2mm: 3
  - id: B1
    size: 6mm
   web: 1mm
    flute: 3
    note: "
  - id: C1
    size: 6mm
    web: &w 1mm
 - id: D1
  - id: E1
    size: *w
  - id: F1
    note: 2` + "\x01" + `
    flute: "
  - id: G1
    size: 7mm
`

// Each part of the file that is at fault is told, and what the slip leaves whole of
// a drill; the rest is read.
func TestTellsAllThatIsNoYAML(t *testing.T) {
	_, err := parse(manySlips)
	const want = `2:7 not YAML: the " is not closed
6:11 not YAML: a value cannot begin with *
7:13 not YAML: a second colon on one line
10:4 not YAML: the line begins in column 4, and those above in column 5
12:11 not YAML: the " is not closed
15:10 anchors and aliases (& and *) are not taken
16:2 not YAML: the line begins in column 2, and those above in column 3
18:11 anchors and aliases (& and *) are not taken
20:12 control character U+0001`
	if got := places(err); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
	rest, ok := strict.RestOf(err)
	var ids []string
	for _, it := range items(rest) {
		id, _ := it.Lookup("id")
		ids = append(ids, id.Value.Text())
	}
	if !ok || strings.Join(ids, " ") != "C1 G1" || !rest.Lacks("name") || rest.Lacks("version", "units", "drills") {
		t.Errorf("read: %v, lacks name: %v", ids, rest.Lacks("name"))
	}
	line, column := items(rest)[1].Place()
	if line != 22 || column != 5 {
		t.Errorf("the last drill stands at %d:%d", line, column)
	}
}

// What may have been any entry may have been each; of what is no file at all
// nothing is read, and that more may be wrong is said.
func TestWhatTheRestLacks(t *testing.T) {
	_, err := parse("size 12mm\nweb: 2mm\n")
	if rest, ok := strict.RestOf(err); !ok || !rest.Lacks("size") || !rest.Lacks() {
		t.Errorf("a line without a key is no entry that there is: %v", err)
	}
	_, err = parse("size: 12mm\nweb: \"2mm\n")
	if rest, ok := strict.RestOf(err); !ok || rest.Lacks("size") || !rest.Lacks("size", "web") {
		t.Error("the web is not read, and the size is")
	}
	for _, text := range []string{"[1, 2", "", "size: 12mm\n"} {
		_, err := parse(text)
		if _, ok := strict.RestOf(err); ok {
			t.Errorf("%q: there is a rest", text)
		}
	}
	_, err = parse("a: 1\n---\nb: 2\n")
	if rest, ok := strict.RestOf(err); !ok || len(rest.Root.Entries()) != 1 {
		t.Error("the first document is not read")
	}
	_, err = parse("a: &x [1]\nb: !t 2\nc: [*x, 3]\nd: {e: *x}\n*x: 1\n")
	rest, ok := strict.RestOf(err)
	c, _ := rest.Root.Lookup("c")
	if a, _ := rest.Root.Lookup("a"); !ok || len(rest.Root.Entries()) != 3 || len(a.Value.Items()) != 1 || len(c.Value.Items()) != 1 || rest.Lacks("c") || !rest.Lacks("d") {
		t.Errorf("%v, %+v", err, rest)
	}
}

// A file of nothing but faults is told up to twenty.
func TestNoEndlessFaults(t *testing.T) {
	_, err := parse("drills:\n" + strings.Repeat("  - id: @\n", 1000))
	all := strict.Each(err)
	var e *strict.Error
	if len(all) != 20 || !errors.As(all[19], &e) || e.Line != 21 || !strings.HasSuffix(e.Hint, "; what else is wrong can be told once this is mended") {
		t.Errorf("%d faults, %v", len(all), e)
	}
	large := "drills:\n  - id: A\n" + strings.Repeat("    note: x\n", 20_000) + "   web: 2\n"
	if got := places(second(parse(large))); !strings.Contains(got, " not YAML: did not find expected") {
		t.Errorf("a drill too large to be tried line by line: %s", got)
	}
	long := "drills:\n  - id: A\n" + strings.Repeat("    note: x\n", 500) + "   web: 2\n" + strings.Repeat("    note: x\n", 500)
	if got := places(second(parse(long))); !strings.HasPrefix(got, "503:4 not YAML: the line begins in column 4") {
		t.Errorf("a long drill: %s", got)
	}
}

// A line that others hang on is not taken out to look behind it: they would be told
// as faults of their own.
func TestNoFaultOfOurMaking(t *testing.T) {
	for text, want := range map[string]string{
		"a:\n  - id: x\n    history: @\n    - {date: 1}\n    flute: 3\n":      "3:14 not YAML: a value cannot begin with @",
		"a:\n  - id: x\n    lip-angle: [59,\n    58: 1: 2]\n    flute: 3\n":   "3:16 not YAML: the [ is not closed",
		"a:\n  - id: x\n    lip-angle: [59,\n      58: 1: 2]\n    flute: 3\n": "4:7 not YAML: did not find expected ',' or ']'",
		"a:\n  - id: @\n    size: 3\n":                                        "2:9 not YAML: a value cannot begin with @",
		"a:\n  - id: x\n    note: \"\n      b: 2\n    flute: @\n":             "3:11 not YAML: the \" is not closed",
	} {
		if got := places(second(parse(text))); got != want {
			t.Errorf("%q: %s", text, got)
		}
	}
}

// What is no YAML in a second document is told besides.
func TestFaultsOfASecondDocument(t *testing.T) {
	if got := places(second(parse("a: 1\n---\nb: [\n"))); got != "2:1 a second document begins here\n3:4 not YAML: the [ is not closed" {
		t.Error(got)
	}
}

func second(_ strict.Node, err error) error { return err }

// In a long file every fault is told at its place, wherever the parts that are tried
// together end.
func TestFaultsOfALongFile(t *testing.T) {
	const drills = 700
	bad := map[int]bool{0: true, 254: true, 255: true, 256: true, 511: true, 699: true}
	var text strings.Builder
	text.WriteString("version: 1\ndrills:\n")
	for i := range drills {
		note := "fine"
		if bad[i] {
			note = "*bold*"
		}
		fmt.Fprintf(&text, "  - id: D%d\n    note: %s\n", i, note)
	}
	_, err := strict.Parse("crib.yaml", strings.NewReader(text.String()))
	for i := range bad {
		if at := fmt.Sprintf("crib.yaml:%d:11: ", 2+2*i+2); !strings.Contains(fmt.Sprint(err), at) {
			t.Errorf("drill %d: no fault at %s", i, at)
		}
	}
}
