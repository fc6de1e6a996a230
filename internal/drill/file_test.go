package drill_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/strict"
)

func readFile(text string, units quantity.System) (*drill.Read, fault.List) {
	given, faults := drill.OfFile("twelve.yaml", text)
	return resolved(given, faults, units)
}

// resolved understands what a source gave, and returns all that is wrong in order.
func resolved(given []drill.Given, faults fault.List, units quantity.System) (*drill.Read, fault.List) {
	rd := new(drill.Read)
	faults = append(faults, rd.Resolve(given, drill.Options{Units: units})...)
	faults.Sort()
	return rd, faults
}

// The same readings from flags, from a file and from a file with lists are the
// same drill.
func TestFileFlagsAndListsAgree(t *testing.T) {
	flags, errs := read(manyKinds, quantity.Unset)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	for name, text := range map[string]string{
		"as flags": "size: 1/2\nmaterial: steel-200\nweb: 0.085\nchisel-angle: 126\nlip-angle: 59.5,58.5\nlip-height: -0.02mm,0.1mm\nclearance: 11,12\ncracked: no\n",
		"lists":    "size: 1/2\nmaterial: steel-200\nweb: 0.085\nchisel-angle: 126\nlip-angle: [59.5, 58.5]\nlip-height:\n  - -0.02mm\n  - 0.1mm\nclearance: ['11', \"12\"]\ncracked: false\n",
		"turned":   "cracked: no\nclearance: 11,12\nlip-height: -0.02mm,0.1mm\nlip-angle: [59.5, 58.5]\nchisel-angle: 126\nweb: 0.085\nmaterial: steel-200\nsize: 1/2\n",
	} {
		d, faults := readFile(text, quantity.Unset)
		if len(faults) > 0 {
			t.Errorf("%s: %v", name, faults)
			continue
		}
		same(t, name, d, flags)
	}
}

// manyKinds is a drill of which readings of every kind were taken.
const manyKinds = "size 1/2; material steel-200; web 0.085; chisel-angle 126; lip-angle 59.5,58.5; lip-height -0.02mm,0.1mm; clearance 11,12; cracked no"

// same holds a drill against one that was read from flags.
func same(t *testing.T, name string, d, flags *drill.Read) {
	t.Helper()
	for _, r := range drill.All() {
		if d.Written(r) != flags.Written(r) && r != drill.Cracked || !slices.Equal(d.Values(r), flags.Values(r)) {
			t.Errorf("%s: %s is %+v, as a flag %+v", name, r, d.Values(r), flags.Values(r))
		}
	}
	if d.System() != flags.System() {
		t.Errorf("%s: system %v, as flags %v", name, d.System(), flags.System())
	}
}

func TestNameAndUnits(t *testing.T) {
	d, errs := readFile("name: the twelve\nunits: in\nsize: 0.5\nweb: 0.085\n", quantity.Unset)
	if len(errs) > 0 || d.Name != "the twelve" || d.Units != quantity.Inch || d.Value(drill.Size) != 12.7 {
		t.Errorf("%q, units %v, size %v, %v", d.Name, d.Units, d.Value(drill.Size), errs)
	}
	// the key counts wherever it stands, and what was asked for outside weighs more
	d, errs = readFile("size: 12\nunits: in\n", quantity.Metric)
	if len(errs) > 0 || d.Units != quantity.Metric || d.Value(drill.Size) != 12 || d.Name != "twelve.yaml" {
		t.Errorf("%q, units %v, size %v, %v", d.Name, d.Units, d.Value(drill.Size), errs)
	}
	d, errs = readFile("web: 0.1\nsize: 12mm\nunits: in\n", quantity.Unset)
	if len(errs) > 0 || d.Value(drill.Web) != 2.54 {
		t.Errorf("web %v, %v", d.Value(drill.Web), errs)
	}
}

// Each file is wrong at these places, all told at once and in the file's order.
func TestFileFaults(t *testing.T) {
	for text, want := range map[string][]string{
		"size: 12mm\nsize: 13mm\n":               {`2:1: "size" stands twice`},
		"sise: 12mm\n":                           {`1:1: no reading is called "sise"`},
		"\"web\\x1b[31m\": 2\n":                  {`1:1: no reading is called "web\x1b[31m"`},
		"\"\\u202eweb\": 2\n":                    {`1:1: no reading is called "\u202eweb"`},
		"size:\nweb: 2mm\n":                      {"1:6: size: takes a value on its line"},
		"size: '  '\n":                           {"1:7: size: takes a value on its line"},
		"size: ~\n":                              {"1:7: size: takes a value on its line"},
		"size: {in: 12}\n":                       {"1:7: size: takes a value on its line"},
		"lip-angle: []\n":                        {"1:12: lip-angle: takes a value on its line"},
		"lip-angle: [59, [58]]\n":                {"1:12: lip-angle: takes a value on its line"},
		"lip-angle: [59, ]\nweb: [2, ~]\n":       {"2:6: web: takes a value on its line"},
		"lip-angle: [59, 58, 57]\n":              {`1:12: lip-angle: cannot read "59,58,57": takes an angle such as 59, 59.5deg or 59°30'`},
		"units: cm\nsize: 12\n":                  {`1:8: units: cannot read "cm": takes mm or in`},
		"name:\nsize: 12mm\n":                    {"1:6: name: takes a value on its line"},
		"size: 12furlong\n":                      {`1:7: size: cannot read "12furlong": takes a drill size such as 12mm, 0.5in, 1/2, #7 or F`},
		"size: 12,5\n":                           {`1:7: size: cannot read "12,5": takes one value`},
		"cracked: perhaps\n":                     {`1:10: cracked: cannot read "perhaps": takes yes or no`},
		"- size: 12mm\n":                         {"1:1: takes one reading a line, such as size: 12mm"},
		"12mm\n":                                 {"1:1: takes one reading a line, such as size: 12mm"},
		"? [a, b]\n: 2\n":                        {`1:3: no reading is called ""`},
		"<<: {size: 12mm}\n":                     {`1:1: no reading is called "<<"`},
		"feed: fast\nsize: big\nfoo: 1\nfeed: 2": {`1:7: feed: cannot read "fast": takes a feed a revolution such as 0.2mm or 0.008in`, `2:7: size: cannot read "big": takes a drill size such as 12mm, 0.5in, 1/2, #7 or F`, `3:1: no reading is called "foo"`, `4:1: "feed" stands twice`},
		"size: 12mm\nweb: &w 2mm\n":              {"2:6: anchors and aliases (& and *) are not taken"},
	} {
		_, errs := readFile(text, quantity.Unset)
		var got []string
		for _, err := range errs {
			got = append(got, strings.TrimPrefix(err.Error(), "twelve.yaml:"))
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q:\n got %q\nwant %q", text, got, want)
		}
	}
	if _, errs := readFile("", quantity.Unset); len(errs) != 1 || !strings.Contains(errs[0].Error(), "empty") {
		t.Errorf("an empty file: %v", errs)
	}
}

// To YAML a # after a space begins a remark, and so does the one of "#7".
func TestNumberSizeWithoutQuotes(t *testing.T) {
	for text, hint := range map[string]string{
		"size: #7\n":   `what follows a # is not read; if it is the value, put it into quotes: size: "#7"`,
		"size:\n":      "leave the line out if it was not read",
		"size: 12,5\n": "a comma is never a decimal point: write 12.5",
		"sise: 12\n":   "did you mean size?", "bin: 3\n": "the keys are the flags' names: evenlip inspect --help", "SIZE: 12\n": "did you mean size?", "unit: in\n": "did you mean units?",
	} {
		_, errs := readFile(text, quantity.Unset)
		if len(errs) != 1 || errs[0].Hint != hint {
			t.Errorf("%q: %v, not %s", text, errs, hint)
		}
	}
	d, errs := readFile("size: \"#7\" # a remark\n", quantity.Unset)
	if len(errs) > 0 || d.Written(drill.Size) != "#7" {
		t.Errorf("%v, size %q", errs, d.Written(drill.Size))
	}
}

// What is found wrong later, with a reading of the file, is told with its place.
func TestFaultFoundLater(t *testing.T) {
	d, errs := readFile("size: 12mm\nweb:  13mm\n", quantity.Unset)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	if e := d.Refuse(drill.Web, "", "cannot be"); e.Error() != "twelve.yaml:2:7: web: cannot be" || e.Hint != "" {
		t.Errorf("%v (%s)", e, e.Hint)
	}
}

// Where what gives bare numbers their units was not understood, or may be what was
// meant by another key, it is known that it is not known.
func TestUnitsNotKnown(t *testing.T) {
	known := map[string]bool{
		"size: 12mm\nnope: 1\nweb: x\n": true, "web: 2\n": true, "size: 12furlong\n": false, "sise: 12mm\n": false, "unit: in\nsize: 12mm\n": false,
		"units: cm\nsize: 12mm\n": false, "size: 12mm\nsize: 1in\n": false, "wheel: big\n": false, "size: [1]\n": false,
	}
	for text, want := range known {
		if d, errs := readFile(text, quantity.Unset); d.UnitsKnown() != want {
			t.Errorf("%q: known %v, %v", text, d.UnitsKnown(), errs)
		}
	}
	for text, want := range map[string]bool{
		`{"size":"12mm","nope":1,"web":"x"}`: true, `{"size":"12furlong"}`: false, `{"sise":"12mm"}`: false, `{"units":"cm","size":1}`: false, `{"size":"1mm","size":"2mm"}`: false,
		`{"size":{}}`: false, `{"units":3}`: false, `{"units":true}`: false, `{"size":""}`: false,
	} {
		given, errs := new(drill.Lines).JSON(1, []byte(text))
		if d, _ := resolved(given, nil, quantity.Unset); d.UnitsKnown() != want {
			t.Errorf("%s: known %v, %v", text, d.UnitsKnown(), errs)
		}
	}
}

// Whatever the file: no panic, every fault has its place, nothing that is said
// carries a control character, and a file without fault gives finite readings.
func FuzzReadFile(f *testing.F) {
	for _, seed := range []string{
		"size: 12mm\nweb: 2mm\nlip-angle: [59, 58.5]\n", "name: x\nunits: in\nsize: 1/2\n", "size: #7\n", "size: 12mm\nsize: 13mm\n", "a: &x 1\nb: *x\n",
		"size: 1e400\n", "lip-angle: 59°30',58\n", "cracked: yes\nmaterial: steel-200\n", "\"\\e\": 1\n", "size: \"12\\e\"\n", "material: \"\\x9b\"\n", "? [a]\n: b\n", "- 1\n", "", "units: \"\\e\"\n",
		"web: \"1,\\f2\"\n", "size: -0\n", "lip-height: -1e-300\n", "size: |\n  12mm\n", "at: 1,0.5\n", "lip-angle: [[59],58]\n",
	} {
		f.Add(seed, uint8(0))
	}
	f.Fuzz(func(t *testing.T, text string, units uint8) {
		d, errs := readFile(text, quantity.System(units%3))
		for _, e := range errs {
			if e.At.Line < 1 && e.Text != "the file is empty" {
				t.Errorf("%q: %v has no place", text, e)
			}
			if said := e.Error() + e.Hint; strings.IndexFunc(said, func(r rune) bool { return r != '\n' && unicode.IsControl(r) }) >= 0 {
				t.Errorf("%q: a control character in %q", text, said)
			}
		}
		if len(errs) > 0 {
			return
		}
		for _, r := range drill.All() {
			for _, v := range d.Values(r) {
				if v-v != 0 {
					t.Errorf("%q: %s is %v", text, r, v)
				}
			}
		}
		if again, errs := readFile(asFile(d), d.Units); len(errs) > 0 || again.System() != d.System() {
			t.Errorf("%q: read back from %q: %v", text, asFile(d), errs)
		}
	})
}

// asFile writes the readings of d as a file.
func asFile(d *drill.Read) string {
	out := "name: again\n"
	for _, r := range drill.All() {
		if text := d.Written(r); text != "" {
			out += fmt.Sprintf("%s: %q\n", r, strings.ToValidUTF8(text, "?"))
		}
	}
	return out
}

// Keys that a drill has not are offered to whoever reads the rest of the file.
func TestOfMapOffersTheRest(t *testing.T) {
	root, faults := strict.Parse("crib.yaml", "size: 12mm\nbin: B4\nshelf: 3\n")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	var offered []string
	given, errs := drill.OfMap("crib.yaml", root, func(e strict.Entry) bool {
		offered = append(offered, e.Key.Text())
		return e.Key.Text() == "bin"
	})
	d, _ := resolved(given, nil, quantity.Unset)
	if len(errs) != 1 || errs[0].Error() != `crib.yaml:3:1: no reading is called "shelf"` || !slices.Equal(offered, []string{"bin", "shelf"}) || d.Value(drill.Size) != 12 {
		t.Errorf("offered %v, faults %v", offered, errs)
	}
}
