package crib

import (
	"math"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/drill"
)

func TestReadsWhatAHandWrites(t *testing.T) {
	c := read(t, small)
	if c.Name != "the small drawer" || len(c.Drills) != 2 || len(c.Keep) != 1 || c.Keep[0].Count != 2 || c.Keep[0].Size.V != 12 {
		t.Fatalf("%+v", c)
	}
	a := find(t, c, "A1")
	if a.Size() != 12 || a.Note != `it's used on "brackets"` || a.last() != "2026-01-02" {
		t.Errorf("%+v", a)
	}
	if n, usual := a.Grinds(); n != 1 || usual != 0.5 {
		t.Errorf("%d grinds of %v", n, usual)
	}
	// a bare number goes by the size's units
	if b := find(t, c, "B1"); b.Size() != 12.7 || b.Readings.Value(drill.Web) < 2.158 || b.Readings.Value(drill.Web) > 2.16 {
		t.Errorf("%v %v", b.Size(), b.Readings.Value(drill.Web))
	}
}

// A history's bare length goes by the drill's units, wherever the size stands.
func TestUnitsOfAHistory(t *testing.T) {
	c := read(t, "version: 1\ndrills:\n  - id: a\n    history: [{date: 2026-01-02, what: grind, stock: 0.02}]\n    size: 1/2\n")
	if got := c.Drills[0].History[0].Stock; got < 0.5079 || got > 0.5081 {
		t.Errorf("%v mm", got)
	}
}

// A drill's own units come before the file's, for its history as well.
func TestUnitsOfADrill(t *testing.T) {
	c := read(t, "version: 1\nunits: mm\ndrills:\n  - {id: a, size: 12, web: 2}\n  - {id: b, units: in, size: 1/2, web: 0.08, history: [{date: 2026-01-02, what: grind, stock: 1}]}\n")
	a, b := find(t, c, "a"), find(t, c, "b")
	if a.Readings.Value(drill.Web) != 2 || math.Abs(b.Readings.Value(drill.Web)-2.032) > 1e-12 || b.History[0].Stock != 25.4 {
		t.Errorf("%v, %v, %v", a.Readings.Value(drill.Web), b.Readings.Value(drill.Web), b.History[0].Stock)
	}
}

// faulty are files that are no crib, and the faults that are told of each.
var faulty = []struct{ name, text, want string }{
	{"all at once", `version: 1
nmae: drawer
keep: {12mm: 1.5, .nan: 1, 12: 2}
drills:
  - id: A
    size: 12mm
    wed: 2mm
  - id: A
    size: .nan
    web: 1,8
  - size: 3mm
    web: 4mm
  - id: B
    history:
      - {date: 2026-13-01, what: grind, stock: -1mm}
      - {date: 2026-01-01, what: polish}
      - {what: thinning, stock: 1mm, depth: 3}
`, `2:1 nothing here is called "nmae"
3:14 cannot read "1.5": takes a whole number from 0 to 9999
3:19 cannot read ".nan": takes a drill size
7:5 no reading is called "wed"
8:9 the id "A" stands twice, first on line 5
9:11 size: cannot read ".nan"
10:10 web: cannot read "1,8"
11:5 a drill without an id
12:10 web: 4.00 mm cannot be
13:5 a drill without a size
15:16 date: cannot read "2026-13-01"
15:48 cannot read "-1mm"
16:34 what: cannot read "polish"
17:9 an entry of the history without date
17:9 stock comes off in a grind, not with thinning
17:38 nothing here is called "depth"`},
	{"newer", "version: 2\ncrates: 3\n", `1:10 this crib is of version 2, and this evenlip knows no later one than 1`},
	{"of this version, and no YAML", "version: 1\nname: @\ndrills: []\n", "2:1 not YAML: found character that cannot start any token"},
	{"a typing error hides nothing", "version: 1\ndrills:\n  - id: a\n    size: 12mm\n    web: 13mm\n    nope: 1\n    flute: long\n    length: 0\n",
		"5:10 web: 13.00 mm cannot be\n6:5 no reading is called \"nope\"\n7:12 flute: cannot read\n8:13 length: it cannot be zero"},
	{"a taper not understood", "version: 1\ndrills:\n  - {id: a, size: 1mm, web: 0.5mm, remove: 40mm, web-taper: x}\n", "3:61 web-taper: cannot read"},
	{"a size not understood", "version: 1\ndrills:\n  - {id: a, sise: 1/2, web: 2, flute: 1in, length: 2}\n", "3:5 a drill without a size\n3:13 no reading is called \"sise\""},
	{"units not understood", "version: 1\nunit: mm\ndrills:\n  - {id: a, size: 1/2, web: 2}\n", "2:1 nothing here is called \"unit\""},
	{"units not understood twice", "version: 1\nunits: cm\ndrills:\n  - {id: a, size: 1/2, web: 2}\n", "2:8 units: takes mm or in"},
	{"a drill's units not understood", "version: 1\ndrills:\n  - {id: a, units: cm, size: 1/2, web: 2}\n", "3:20 units: cannot read"},
	{"anchors", "version: 1\nname: &n [a]\ndrills: &d\n  - id: a\n    size: &s 12mm\n    web: 13mm\n  - id: b\n    size: *s\n", "2:7 anchors\n3:9 anchors\n5:11 anchors\n8:11 anchors"},
	{"units that are no YAML", "version: 1\nunits: \"mm\ndrills:\n  - {id: a, size: 1/2, web: 2}\n", "2:1 not YAML: found unexpected end of stream"},
	{"zero", "version: 0\n", "1:10 there is no version 0"},
	{"no version", "drills: []\n", "1:1 the version is missing"},
	{"half a version", "version: 1.5\ndrills: []\n", `1:10 cannot read "1.5"`},
	{"quoted version", "version: '1'\ndrills: []\n", `1:10 cannot read "1"`},
	{"octal", "version: 1\nkeep: {3mm: 010}\ndrills: []\n", `2:13 cannot read "010"`},
	{"no drills", "version: 1\n", "1:1 there is no list of drills"},
	{"drills no list", "version: 1\ndrills: {a: b}\n", "2:9 drills: takes a list"},
	{"a drill that is a word", "version: 1\ndrills: [A1]\n", "2:10 takes one reading a line"},
	{"second document", "version: 1\ndrills: []\n---\nversion: 1\n", "3:1 a second document begins here"},
	{"anchor", "version: 1\ndrills: &a []\n", "2:9 anchors and aliases"},
	{"aliases", "version: 1\nkeep: &k {1mm: 1}\ndrills: [{<<: *k}, !x a]\n", "2:7 anchors and aliases\n3:15 anchors and aliases\n3:20 the tag"},
	{"merge key", "version: 1\n<<: {name: a}\ndrills:\n  - {<<: {web: 1mm}, id: a, size: 3mm}\n", `2:1 nothing here is called "<<"` + "\n" + `4:6 no reading is called "<<"`},
	{"tab", "version: 1\ndrills:\n\t- id: a\n", "3:1 not YAML"},
	{"infinite", "version: 1\nkeep: {.inf: 1, 1mm: .inf, 2mm: +1, 3mm: 1_0, 4mm: 0x1, 5mm: 1e1, 6mm: -1, 7mm: ~, 8mm: 10000}\ndrills: []\n",
		"2:8 cannot read \".inf\"\n2:22 cannot read \".inf\"\n2:33 cannot read \"+1\"\n2:42 cannot read \"1_0\"\n2:52 cannot read \"0x1\"\n2:62 cannot read \"1e1\"\n2:72 cannot read \"-1\"\n2:81 cannot read \"~\"\n2:89 cannot read \"10000\""},
	{"no quantities", "version: 1\ndrills:\n  - {id: a, size: 3mm, web: .nan, flute: .inf, feed: 1e400, depth: 1_0, clearance: 0x10, rpm: -.Inf}\n",
		"3:29 web: cannot read\n3:42 flute: cannot read\n3:54 feed: cannot read\n3:68 depth: cannot read\n3:84 clearance: cannot read\n3:95 rpm: cannot read"},
	{"nothing said", "version: 1\nname: ~\ndrills:\n  - {id: null, size: 3mm, note: , web: ~}\n  - {id: '', size: '', history: ~, series: , shank: 2}\n",
		"2:7 takes a word\n4:10 takes a word\n4:33 takes a word\n4:40 web: takes a value\n5:10 takes a word\n5:20 size: takes a value\n5:44 series: cannot read\n5:53 shank: cannot read"},
	{"lists", "version: 1\ndrills:\n  - {id: [a], size: [3mm], lip-angle: [1, 2, 3], web: {a: 1}, note: [x]}\n",
		"3:10 takes a word\n3:21 size: takes a value\n3:39 lip-angle: cannot read\n3:55 web: takes a value\n3:69 takes a word"},
	{"twice", "version: 1\ndrills:\n  - {id: a, size: 3mm, note: x, note: y, web: 1mm, web: 1mm}\n", "3:33 \"note\" stands twice\n3:52 \"web\" stands twice"},
	{"of no use", "version: 1\ndrills:\n  - {id: a, name: b, size: 3mm, wheel: 200mm, history: [{date: 2026-01-01, what: grind, before: {pilot: 2mm, id: a, units: mm}}]}\n",
		"3:19 a drill of a crib has no name\n3:40 wheel: a crib has no use for it\n3:105 pilot: a crib has no use for it\n3:110 no reading is called \"id\"\n3:117 no reading is called \"units\""},
	{"list", "- 1\n", "1:1 this is no crib"},
	{"twice", "version: 1\nname: a\nname: b\ndrills: []\n", `3:1 "name" stands twice`},
	{"keep twice", "version: 1\nkeep: {1/2: 1, 12.7mm: 2}\ndrills: []\n", `2:16 "12.7mm" stands twice`},
	{"words", "version: 1\nunits: ell\nname: [a]\nkeep: 3\ndrills:\n  - {id: a, size: 3mm, series: longer, shank: bent, history: 3}\n",
		"2:8 units: takes mm or in\n3:7 takes a word or two\n4:7 keep: takes a size a line\n6:32 series: cannot read \"longer\"\n6:47 shank: cannot read \"bent\"\n6:62 history: takes a list"},
	{"history", "version: 1\ndrills:\n  - {id: a, size: 3mm, history: [x, {date: [1], what: grind, stock: [2], before: 3}]}\n",
		"3:34 takes date, what\n3:44 date: cannot read\n3:69 stock: takes one length\n3:82 takes one reading a line"},
}

// Every fault of a file is told at once, in the file's order, with its place.
func TestFaults(t *testing.T) {
	for _, c := range faulty {
		_, errs := Read("crib.yaml", []byte(c.text), nil)
		got, want := strings.Split(complaints(errs), "\n"), strings.Split(c.want, "\n")
		if !slices.EqualFunc(got, want, strings.HasPrefix) {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, strings.Join(got, "\n"), c.want)
		}
		for _, e := range errs {
			if e.Hint == "" && !strings.Contains(e.Text, "takes") && !strings.Contains(e.Text, "cannot be") {
				t.Errorf("%s: %v says nothing of what to do", c.name, e)
			}
		}
	}
}

// A slip in one drill is told where it stands, and nothing else is: what it takes
// away from the file makes no other fault.
func TestOneSlipIsOneFault(t *testing.T) {
	lines := strings.SplitAfter(string(sample), "\n")
	slips := []string{"note: \"abc", "note: *b", "note: a: b", "note: 'it's'", " web: 2mm", "\tweb: 2mm", "web:2mm", "web", "@", "- x", "note: [1", "note: \"\\q\"", "? x: - y", "note: \x01"}
	n := 0
	for at, line := range lines {
		if !strings.HasPrefix(line, "    size: ") {
			continue
		}
		n++
		text := strings.Join(lines[:at+1], "") + "    " + slips[n%len(slips)] + "\n" + strings.Join(lines[at+1:], "")
		_, errs := Read("crib.yaml", []byte(text), nil)
		if len(errs) != 1 || errs[0].At.Line != at+2 || errs[0].At.Column < 5 || errs[0].Hint == "" {
			t.Errorf("%q on line %d: %s", slips[n%len(slips)], at+2, complaints(errs))
		}
	}
	if n < len(slips) {
		t.Errorf("only %d drills", n)
	}
}

func FuzzRead(f *testing.F) {
	f.Add(small)
	f.Add(string(sample))
	f.Add("version: 1\ndrills: [{id: a, size: '#7', history: [{date: 2026-01-01, what: grind}]}]\n")
	f.Fuzz(func(t *testing.T, text string) {
		c, errs := Read("f", []byte(text), nil)
		if (c == nil) != (len(errs) > 0) {
			t.Fatalf("a crib %v and faults %v", c, errs)
		}
		if c == nil {
			return
		}
		seen := map[string]bool{}
		for i := range c.Drills {
			d := &c.Drills[i]
			if d.ID == "" || seen[d.ID] || !(d.Size() > 0) {
				t.Fatalf("drill %q of %v", d.ID, d.Size())
			}
			seen[d.ID] = true
		}
	})
}
