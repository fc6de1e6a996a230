package crib

import (
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

// Every fault of a file is told at once, in the file's order, with its place.
func TestFaults(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
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
		{"list", "- 1\n", "1:1 this is no crib"},
		{"twice", "version: 1\nname: a\nname: b\ndrills: []\n", `3:1 "name" stands twice`},
		{"keep twice", "version: 1\nkeep: {1/2: 1, 12.7mm: 2}\ndrills: []\n", `2:16 "12.7mm" stands twice`},
		{"words", "version: 1\nunits: ell\nname: [a]\nkeep: 3\ndrills:\n  - {id: a, size: 3mm, series: longer, shank: bent, history: 3}\n",
			"2:8 units: takes mm or in\n3:7 takes a word or two\n4:7 keep: takes a size a line\n6:32 series: cannot read \"longer\"\n6:47 shank: cannot read \"bent\"\n6:62 history: takes a list"},
		{"history", "version: 1\ndrills:\n  - {id: a, size: 3mm, history: [x, {date: [1], what: grind, stock: [2], before: 3}]}\n",
			"3:34 takes date, what\n3:44 date: cannot read\n3:69 stock: takes one length\n3:82 takes one reading a line"},
	} {
		_, errs := Read("crib.yaml", []byte(c.text), nil)
		got, want := strings.Split(complaints(errs), "\n"), strings.Split(c.want, "\n")
		if !slices.EqualFunc(got, want, strings.HasPrefix) {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, strings.Join(got, "\n"), c.want)
		}
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
