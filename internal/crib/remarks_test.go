package crib

import (
	"strings"
	"testing"

	"evenlip/internal/drill"
)

// lips is a change of one lip's angle, of two that the file has.
func lips(text string) Change {
	return Change{Date: "2026-11-25", What: Readings, Readings: map[drill.Reading]string{drill.LipAngle: text}}
}

// remarked is a drill with remarks in it, and what a change leaves of it: written
// out by hand, line by line, without the entry in the history.
type remarked struct {
	name, drill, want string
	change            Change
}

// ofReadingsThatChange are drills of which a reading goes or becomes another one.
var ofReadingsThatChange = []remarked{
	{"behind a reading that goes",
		"  - id: A\n    size: 12mm\n    flank-wear: 0.1mm  # burnt on job 7 \n    flute: 50mm\n",
		"  - id: A\n    size: 12mm\n    # burnt on job 7 \n    flute: 49mm\n", ground("1mm")},
	{"behind the first one, with a line of its own below",
		"  - flank-wear: 0.1mm # burnt\n    # who measured: J.\n    id: A\n    size: 12mm\n",
		"  - # burnt\n    # who measured: J.\n    id: A\n    size: 12mm\n", ground("1mm")},
	{"below the first one",
		"  - flank-wear: 0.1mm\n    # who measured: J.\n    id: A\n    size: 12mm\n",
		"  -\n    # who measured: J.\n    id: A\n    size: 12mm\n", ground("1mm")},
	{"an empty line below the first one",
		"  - flank-wear: 0.1mm\n\n    id: A\n    size: 12mm\n",
		"  -\n\n    id: A\n    size: 12mm\n", ground("1mm")},
	{"between the first two, which go",
		"  -   flank-wear: 0.1mm\n      # between\n      corner-wear: 0.1mm\n      id: A\n      size: 12mm\n",
		"  -\n      # between\n      id: A\n      size: 12mm\n", ground("1mm")},
	{"nothing between",
		"  - flank-wear: 0.1mm\n    corner-wear: 0.1mm\n    id: A # x\n    # y\n    size: 12mm\n",
		"  -\n    id: A # x\n    # y\n    size: 12mm\n", ground("1mm")},
	{"a dash on a line of its own",
		"  - # a good one\n    flank-wear: 0.1mm\n    # between\n    id: A\n    size: 12mm\n",
		"  - # a good one\n    # between\n    id: A\n    size: 12mm\n", ground("1mm")},
	{"a list between brackets that goes",
		"  - id: A\n    lip-angle: [59, 58] # ]\n    size: 12mm\n",
		"  - id: A\n    # ]\n    size: 12mm\n", ground("1mm")},
	{"a list between brackets that changes",
		"  - id: A\n    size: 12mm\n    lip-angle: [59, '58']\t # eye\n",
		"  - id: A\n    size: 12mm\n    lip-angle: 60\t # eye\n", lips("60")},
	{"behind a number size",
		"  - id: A\n    size: 12mm\n    least-diameter: '#7' # on the plug\n",
		"  - id: A\n    size: 12mm\n    least-diameter: '#8' # on the plug\n",
		Change{Date: "2026-11-25", What: Correction, Readings: map[drill.Reading]string{drill.LeastDiameter: "#8"}}},
	{"a remark that looks like one of the next drill's",
		"  - id: A\n    size: 12mm\n  - # good\n    id: B\n    size: 3mm\n",
		"  - id: A\n    size: 12mm\n  - # good\n    id: B\n    size: 3mm\n", ground("1mm")},
}

// What stands in a drill beside its readings stays where it stands when a reading
// goes or becomes another one.
func TestRemarksInsideTheDrill(t *testing.T) {
	for _, c := range ofReadingsThatChange {
		for _, eol := range []string{"\n", "\r\n", "\r"} {
			in := strings.ReplaceAll("version: 1\ndrills:\n"+c.drill, "\n", eol)
			want := strings.ReplaceAll("version: 1\ndrills:\n"+c.want, "\n", eol)
			if got := withoutHistory(rewritten(t, in, "A", c.change), eol); got != want {
				t.Errorf("%s:\n%s\nwant\n%s", c.name, strings.ReplaceAll(got, eol, "\n"), strings.ReplaceAll(want, eol, "\n"))
			}
		}
	}
}

// withoutHistory takes the one history out of a crib: what is indented deeper
// than its key and stands below it.
func withoutHistory(text, eol string) string {
	var out []string
	in := -1
	for _, line := range strings.SplitAfter(text, eol) {
		indent := len(line) - len(strings.TrimLeft(line, " "))
		switch {
		case strings.HasPrefix(strings.TrimLeft(line, " "), "history:"):
			in = indent
			continue
		case in >= 0 && indent > in:
			continue
		}
		in = -1
		out = append(out, line)
	}
	return strings.Join(out, "")
}

// Where a remark would have to go, the record is refused instead.
func TestRemarksThatCannotStay(t *testing.T) {
	for _, text := range []string{
		"lip-angle: [59, 58]\n    history: [ # none yet ]\n      ]\n",
		"lip-angle: [59, # lip 1\n      58]\n",
		"lip-angle:\n    - 59 # lip 1\n    - 58\n",
		"lip-angle:\n      59,58 # both\n",
		"lip-angle: 59, # lip 1\n      58\n",
		"lip-angle: >\n      59,58\n",
		"? lip-angle # asked\n    : 59,58\n",
	} {
		_, out, err := Rewrite("crib.yaml", []byte("version: 1\ndrills:\n  - id: A\n    size: 12mm\n    "+text), "A", ground("1mm"), nil)
		if err == nil {
			t.Errorf("%q became\n%s", text, out)
		}
	}
}

// A last line without an end stays one, whatever becomes of it.
func TestLastLineWithoutEnd(t *testing.T) {
	for in, want := range map[string]string{
		"    flank-wear: 1mm":              "",
		"    flank-wear: 1mm # burnt":      "    # burnt\n",
		"    flute: 50mm\n    # the end":   "    flute: 49mm\n    # the end",
		"    flute: 50mm # new":            "    flute: 49mm # new\n",
		"    flank-wear: 1mm\n    # above": "    # above",
	} {
		const head = "version: 1\ndrills:\n  - id: A\n    size: 12mm\n"
		got := rewritten(t, head+in, "A", ground("1mm"))
		if strings.HasSuffix(got, "\n") || withoutHistory(got, "\n") != head+want {
			t.Errorf("%q gives\n%s", in, got)
		}
	}
}
