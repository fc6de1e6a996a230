package drill_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
)

const deg = math.Pi / 180

// read understands "size 12mm; web 2" as flags, in the order written.
func read(line string, units quantity.System) (*drill.Read, fault.List) {
	var given []drill.Given
	for _, part := range strings.Split(line, ";") {
		name, text, _ := strings.Cut(strings.TrimSpace(part), " ")
		r, ok := drill.Find(name)
		if !ok {
			panic("no reading " + name)
		}
		given = append(given, drill.Flag(r, text))
	}
	return resolved(given, nil, units)
}

// A bare number takes the units asked for, else those of the size, wherever the
// size stands; a unit that is written always holds.
func TestBareNumbers(t *testing.T) {
	for _, c := range []struct {
		line  string
		units quantity.System
		web   float64
		in    quantity.System
	}{
		{"size 12mm; web 2", quantity.Unset, 2, quantity.Metric},
		{"web 2; size 12", quantity.Unset, 2, quantity.Metric},
		{"web 0.1; size 1/2", quantity.Unset, 2.54, quantity.Inch},
		{"web 0.1; size 0.5in", quantity.Unset, 2.54, quantity.Inch},
		{"size #7; web 0.1", quantity.Unset, 2.54, quantity.Inch},
		{"size F; web 0.1", quantity.Unset, 2.54, quantity.Inch},
		{"size F; web 0.1", quantity.Metric, 0.1, quantity.Metric},
		{"size 12mm; web 0.1", quantity.Inch, 2.54, quantity.Inch},
		{"size 0.5; web 0.1", quantity.Inch, 2.54, quantity.Inch},
		{"size 1/2; web 2mm", quantity.Unset, 2, quantity.Inch},
		{"web 2", quantity.Unset, 2, quantity.Metric},
		{"web 1/16", quantity.Unset, 1.5875, quantity.Metric},
		{"wheel 7in; web 0.1", quantity.Unset, 2.54, quantity.Inch},
		{"wheel 7in; size 12mm; web 2", quantity.Unset, 2, quantity.Metric},
		{"size 12mm; web 85thou", quantity.Unset, 2.159, quantity.Metric},
	} {
		d, errs := read(c.line, c.units)
		if len(errs) > 0 {
			t.Errorf("%s: %v", c.line, errs)
			continue
		}
		if web, _ := d.Get(drill.Web); math.Abs(web-c.web) > 1e-12 || d.System() != c.in {
			t.Errorf("%s, units %v: web %v, system %v; want %v, %v", c.line, c.units, web, d.System(), c.web, c.in)
		}
	}
}

func TestPairsAndWords(t *testing.T) {
	d, errs := read("lip-angle 59,58.5; lip-height -0.02mm,0.1mm; clearance 11; material  steel-200 ; cracked YES", quantity.Unset)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	if a, b, n := d.Pair(drill.LipAngle); n != 2 || math.Abs(a-59*deg) > 1e-12 || math.Abs(b-58.5*deg) > 1e-12 {
		t.Errorf("lip-angle %v %v %d", a, b, n)
	}
	if a, b, n := d.Pair(drill.LipHeight); n != 2 || a != -0.02 || b != 0.1 {
		t.Errorf("lip-height %v %v %d", a, b, n)
	}
	if _, _, n := d.Pair(drill.Clearance); n != 1 || len(d.Values(drill.Clearance)) != 1 {
		t.Errorf("clearance: %d", n)
	}
	if got := d.Written(drill.Material); got != "steel-200" || d.Written(drill.At) != "" {
		t.Errorf("material %q", got)
	}
	if !d.Has(drill.Cracked) || d.Has(drill.Web) {
		t.Error("cracked was read, the web was not")
	}
	if v := d.Value(drill.Web); !math.IsNaN(v) {
		t.Errorf("a web that was not read is %v", v)
	}
}

// Blanks are no word, and nothing written is nothing read.
func TestBlank(t *testing.T) {
	for _, r := range []drill.Reading{drill.Material, drill.Web, drill.Cracked} {
		var d drill.Read
		if errs := d.Resolve([]drill.Given{drill.Flag(r, " \t")}, drill.Options{}); len(errs) != 1 || d.Has(r) {
			t.Errorf("%s of blanks: %v", r, errs)
		}
		if errs := d.Resolve([]drill.Given{drill.Flag(r, "")}, drill.Options{}); len(errs) != 0 || d.Has(r) {
			t.Errorf("%s of nothing: %v", r, errs)
		}
	}
}

func TestSwitch(t *testing.T) {
	for text, want := range map[string]bool{"yes": true, "true": true, " Yes ": true, "no": false, "false": false, "No": false} {
		d, errs := read("cracked "+text, quantity.Unset)
		if len(errs) > 0 || d.Has(drill.Cracked) != want {
			t.Errorf("cracked %q: %v, %v", text, d.Has(drill.Cracked), errs)
		}
	}
	for _, text := range []string{"1", "on", "maybe", "y"} {
		d, errs := read("cracked "+text, quantity.Unset)
		if len(errs) != 1 || !strings.Contains(errs[0].Error(), "takes yes or no") || d.Has(drill.Cracked) {
			t.Errorf("cracked %q: %v", text, errs)
		}
	}
}

// Everything wrong is said at once, in the catalogue's order, each with the
// reading's name in front.
func TestAllErrorsAtOnce(t *testing.T) {
	d, errs := read("feed 0.2furlong; size -12; lip-angle 59,5x; web 2,3; cracked perhaps; depth 30mm", quantity.Unset)
	var got []string
	for _, e := range errs {
		got = append(got, e.At.Flag)
		if !strings.HasPrefix(e.Error(), "--"+e.At.Flag+": ") {
			t.Errorf("%v does not begin with its flag", e)
		}
		if r, _ := drill.Find(e.At.Flag); d.Has(r) {
			t.Errorf("%s counts as read", r)
		}
	}
	if want := []string{"size", "web", "lip-angle", "cracked", "feed"}; !slices.Equal(got, want) {
		t.Errorf("errors on %v, want %v", got, want)
	}
	if !d.Has(drill.Depth) {
		t.Error("what could be read was not")
	}
}

// A comma where one value is taken: a decimal point was meant, or two readings.
func TestTwoValuesForOne(t *testing.T) {
	for text, hint := range map[string]string{
		"59,5":          "a comma is never a decimal point: write 59.5",
		" 2 ,\f5mm":     "a comma is never a decimal point: write 2.5mm",
		"3,450":         "a comma is never a decimal point, nor a thousands mark: write 3450 or 3.450",
		"0,16":          "a comma is never a decimal point: write 0.16",
		"1/2,3/4":       "a comma stands only between two values, never for a decimal point or between thousands",
		"2mm,3mm":       "a comma stands only between two values, never for a decimal point or between thousands",
		"1.5,\u00a02.5": "a comma stands only between two values, never for a decimal point or between thousands",
	} {
		_, errs := read("web "+text, quantity.Unset)
		if len(errs) != 1 {
			t.Errorf("%q: %v", text, errs)
			continue
		}
		if e := errs[0]; !strings.HasSuffix(e.Text, ": takes one value") || e.Hint != hint {
			t.Errorf("%q: %v, %s", text, e, e.Hint)
		}
	}
}

// Another sign where a comma parts the readings of two lips.
func TestSpaceForAComma(t *testing.T) {
	for line, hint := range map[string]string{
		"lip-angle 59 58.5":            "the readings of two lips go together: 59,58.5",
		"lip-height -0.02mm  0.1mm":    "the readings of two lips go together: -0.02mm,0.1mm",
		"lip-angle 59:58":              "the readings of two lips go together: 59,58",
		"lip-angle 59/58":              "the readings of two lips go together: 59,58",
		"lip-angle 59 & 58":            "the readings of two lips go together: 59,58",
		"lip-length 6.4/6.3mm":         "the readings of two lips go together: 6.4,6.3mm",
		"lip-angle 59&58&57":           `"&58&57" is no unit that is known here`,
		"chisel-angle 59/58":           "two readings are written 59,58",
		"lip-angle 59 58 57":           "write the number without spaces between its digits",
		"web 2 1":                      "write the number without spaces between its digits",
		"lip-height 0.1mm sideways":    `"mm sideways" is no unit that is known here`,
		"lip-length 5,6 5,7":           "more than two values; a comma is never a decimal point or a thousands mark",
		"size 1/2; lip-length 1/4 1/5": "the readings of two lips go together: 1/4,1/5",
	} {
		_, errs := read(line, quantity.Unset)
		if len(errs) != 1 {
			t.Errorf("%q: %v", line, errs)
		} else if got := errs[0].Hint; got != hint {
			t.Errorf("%q: %q", line, got)
		}
	}
	if d, errs := read("size 1/2; lip-length 1 1/4", quantity.Unset); len(errs) > 0 || d.Value(drill.LipLength) != 1.25*25.4 {
		t.Errorf("a mixed fraction is one reading: %v", errs)
	}
}

// A reading is forgotten whole, and a list resolved again leaves nothing of the one
// before.
func TestDropAndReadAgain(t *testing.T) {
	d, _ := read("size 1/2; web 0.1", quantity.Unset)
	d.Drop(drill.Size)
	if d.Has(drill.Size) || d.Written(drill.Size) != "" || len(d.Values(drill.Size)) != 0 || len(d.Given()) != 1 {
		t.Error("the size is still there")
	}
	if errs := d.Resolve([]drill.Given{drill.Flag(drill.Web, "two")}, drill.Options{}); len(errs) != 1 || d.Has(drill.Web) || d.System() != quantity.Metric {
		t.Errorf("%v, web read: %v", errs, d.Has(drill.Web))
	}
	if errs := d.Resolve([]drill.Given{drill.Flag(drill.Web, "3mm")}, drill.Options{}); len(errs) != 0 || d.Value(drill.Web) != 3 {
		t.Errorf("%v, web %v", errs, d.Value(drill.Web))
	}
}

// Of two for one reading the later holds, wherever it comes from; both must be ones
// that could be taken.
func TestTheLaterHolds(t *testing.T) {
	file := fault.Place{File: "a.yaml", Line: 1}
	d, errs := resolved([]drill.Given{{Reading: drill.Size, Text: "12mm", At: file}, {Reading: drill.Web, Text: "2", At: file}, drill.Flag(drill.Size, "1/2")}, nil, quantity.Unset)
	if len(errs) > 0 || d.Value(drill.Size) != 12.7 || d.Value(drill.Web) != 2*25.4 || !slices.Equal(d.Instead, []drill.Reading{drill.Size}) {
		t.Errorf("size %v, web %v, in place of %v: %v", d.Value(drill.Size), d.Value(drill.Web), d.Instead, errs)
	}
	if _, errs = resolved([]drill.Given{{Reading: drill.Web, Text: "wide", At: file}, drill.Flag(drill.Web, "2mm")}, nil, quantity.Unset); len(errs) != 1 || errs[0].At != file {
		t.Errorf("a web that another stands in place of: %v", errs)
	}
}

// A range is of both lips or of one; its steps change nothing else.
func TestRanges(t *testing.T) {
	type step struct{ a, b float64 }
	for line, want := range map[string][]step{
		"lip-angle 58..59 by 0.5":                 {{58, 0}, {58.5, 0}, {59, 0}},
		"lip-angle 58..59 by 0.5,60":              {{58, 60}, {58.5, 60}, {59, 60}},
		"lip-angle 60,58..59 by 1":                {{60, 58}, {60, 59}},
		"size 10mm..12mm by 2mm; lip-angle 59,58": {{59, 58}, {59, 58}},
		"lip-angle 59,58":                         {{59, 58}},
	} {
		d, errs := read(line, quantity.Unset)
		var got []step
		_ = d.Steps(func(_ []float64, d *drill.Drill) error {
			a, b, n := d.Pair(drill.LipAngle)
			if n < 2 {
				b = 0
			}
			got = append(got, step{math.Round(10*a/deg) / 10, math.Round(10*b/deg) / 10})
			return nil
		})
		if len(errs) > 0 || !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v (%v)", line, got, want, errs)
		}
	}
	// the unit that one lip has holds for the other
	for _, text := range []string{"5mm..6mm by 1mm,5", "5..6 by 1,5mm", "5mm,5..6 by 1", "5,5..6 by 1mm"} {
		d, errs := read("size 1/2; lip-length "+text, quantity.Unset)
		var got []float64
		_ = d.Steps(func(_ []float64, d *drill.Drill) error {
			a, b, _ := d.Pair(drill.LipLength)
			got = append(got, a+b)
			return nil
		})
		if len(errs) > 0 || !slices.Equal(got, []float64{10, 11}) {
			t.Errorf("%s: %v, %v", text, got, errs)
		}
	}
	d, errs := read("size 1/4in..1/2in by 1/8in; web 0.1", quantity.Unset)
	if len(errs) > 0 || d.Value(drill.Web) != 2.54 || d.System() != quantity.Inch {
		t.Errorf("a range of the size gives no units: web %v, %v", d.Value(drill.Web), errs)
	}
	var as []float64
	d, _ = read("size 20mm..40mm by 20mm; to-web new", quantity.Unset)
	_ = d.Steps(func(_ []float64, d *drill.Drill) error { as = append(as, d.Value(drill.ToWeb)); return nil })
	if len(as) != 2 || !(as[0] < as[1]) {
		t.Errorf("a new drill's web does not go with the size: %v", as)
	}
	for line, hint := range map[string]string{
		"lip-angle 58..59 by 1,57..58 by 1":            "give the other lip one value",
		"remove 0..2000 by 0.1":                        "a range has at most 10000 steps",
		"remove 0..100 by 1; feed 0.001..0.2 by 0.001": "take larger steps or fewer ranges",
	} {
		if _, errs := read(line, quantity.Unset); len(errs) != 1 || !strings.Contains(errs[0].Hint, hint) {
			t.Errorf("%s: %v, want %s", line, errs, hint)
		}
	}
	if _, errs := resolved([]drill.Given{{Reading: drill.Remove, Text: "0mm..6mm by 1mm", At: fault.Place{File: "a.yaml"}}}, nil, quantity.Unset); len(errs) != 1 {
		t.Error("a file takes a range")
	}
}

// One number with a decimal comma looks like the readings of two lips.
func TestDecimalComma(t *testing.T) {
	for line, want := range map[string]string{
		"lip-height 0,2mm": "0.2mm", "lip-height 0,14": "0.14", "lip-height 0,02in": "0.02in", "lip-height -0,2mm": "-0.2mm",
		"lip-length 5,6": "5.6", "lip-length 5,25mm": "5.25mm", "heel-drop 0,64mm": "0.64mm",
		"clearance 11,5": "11.5", "clearance 12,5deg": "12.5deg", "lip-angle 59,5": "59.5",
		"clearance 11,12": "", "lip-angle 59,58": "", "lip-angle 59,58.5": "", "clearance 12,9": "", "lip-height 0.14mm,0.02mm": "", "lip-height 0mm,2mm": "",
		"lip-height 0,2thou": "", "lip-length 5,125mm": "", "lip-length 0.24,0.25in": "", "lip-length 5.5,6": "", "lip-height 0.2": "", "lip-length 1/4,1/4": "",
	} {
		d, errs := read(line, quantity.Unset)
		name, _, _ := strings.Cut(line, " ")
		r, _ := drill.Find(name)
		if got := d.DecimalComma(r); got != want || len(errs) > 0 {
			t.Errorf("%s: %q, want %q, %v", line, got, want, errs)
		}
	}
	d, _ := read("size 5mm; lip-length 6,2mm", quantity.Unset)
	if found := d.Possible(); len(found) != 1 || found[0].Hint != "a comma parts the two lips: if 6.2mm was meant, write it with a point" {
		t.Errorf("refused: %v", found)
	}
}

func TestPutAndMove(t *testing.T) {
	d := &drill.Drill{}
	d.Put(drill.LipAngle, 1, 0.9)
	d.Put(drill.Clearance, 0.2)
	c := d.Copy()
	c.Move(drill.LipAngle, 1, 0.95)
	c.Move(drill.Clearance, 1, 0.3)
	for _, x := range []struct {
		d    *drill.Drill
		r    drill.Reading
		a, b float64
		n    int
	}{{c, drill.LipAngle, 1, 0.95, 2}, {c, drill.Clearance, 0.2, 0.3, 1}, {d, drill.LipAngle, 1, 0.9, 2}, {d, drill.Clearance, 0.2, 0.2, 1}} {
		if a, b, n := x.d.Pair(x.r); a != x.a || b != x.b || n != x.n {
			t.Errorf("%v: %v, %v (%d), want %v, %v (%d)", x.r, a, b, n, x.a, x.b, x.n)
		}
	}
}

// A copy of a drill goes its own way: nothing done to it reaches the first.
func TestCopiesAreTheirOwn(t *testing.T) {
	rd, _ := read("size 12mm; lip-angle 59,58", quantity.Unset)
	for _, change := range []func(*drill.Drill){
		func(c *drill.Drill) { c.Put(drill.LipAngle, 1, 1) },
		func(c *drill.Drill) { c.Drop(drill.LipAngle) },
		func(c *drill.Drill) { c.Move(drill.LipAngle, 1, 0.1) },
	} {
		change(rd.Drill.Copy())
		a, b, n := rd.Pair(drill.LipAngle)
		if n != 2 || math.Abs(a-59*deg) > 1e-12 || math.Abs(b-58*deg) > 1e-12 || rd.Written(drill.LipAngle) != "59,58" {
			t.Fatalf("the first drill has %v, %v (%d)", a, b, n)
		}
	}
}

// What was understood, given again, is understood alike.
func TestResolveTwice(t *testing.T) {
	testkit.Property(t, "what was understood, given again, is understood alike", func(t *rapid.T) {
		o := drill.Options{Units: rapid.SampledFrom([]quantity.System{quantity.Unset, quantity.Metric, quantity.Inch}).Draw(t, "units")}
		texts := []string{"12", "1/2", "0.5in", "2mm", "#7", "59,58", "steel-200", "yes", "0.2", "x", "", "30°"}
		var given []drill.Given
		for _, r := range drill.All() {
			given = append(given, drill.Flag(r, rapid.SampledFrom(texts).Draw(t, r.String())))
		}
		var first, second drill.Read
		first.Resolve(given, o)
		o.Units = first.Units
		if faults := second.Resolve(first.Given(), o); len(faults) > 0 || !reflect.DeepEqual(first.Taken(), second.Taken()) {
			t.Fatalf("%v and then %v: %v", first.Taken(), second.Taken(), faults)
		}
	})
}

// Every reading has a name of its own, is found by it, and says how it is taken.
func TestCatalogue(t *testing.T) {
	names, keys := map[string]bool{}, map[string]bool{}
	for _, r := range drill.All() {
		s := r.Spec()
		if found, ok := drill.Find(s.Name); !ok || found != r || r.String() != s.Name || names[s.Name] {
			t.Errorf("%q is not found as itself", s.Name)
		}
		names[s.Name] = true
		if s.Help == "" || s.How == "" {
			t.Errorf("%s: nothing says how to take it", s.Name)
		}
		if strings.ToLower(s.Name) != s.Name || strings.ContainsAny(s.Name, " _") {
			t.Errorf("%q is no flag's name", s.Name)
		}
		want := 1
		if s.Pair {
			want = 2
		}
		for i, key := range s.Keys {
			if (key != "") != (i < want) || key != "" && keys[key] {
				t.Errorf("%s: keys %q", s.Name, s.Keys)
			}
			keys[key] = key != ""
			if unit := map[quantity.Kind]string{quantity.Length: "_mm", quantity.Size: "_mm", quantity.Angle: "_deg", quantity.Feed: "_mm"}[s.Kind]; key != "" && !strings.HasSuffix(key, unit) {
				t.Errorf("%s: the key %q has no unit", s.Name, key)
			}
		}
	}
	if _, ok := drill.Find("sharpness"); ok {
		t.Error("a reading is found that there is not")
	}
	if r, ok := drill.Find("size"); r != 0 || !ok {
		t.Error("the size does not come first: bare numbers after it would take no unit from it")
	}
	point, plan := drill.Of(drill.Point), drill.Of(drill.Plan)
	if slices.Contains(point, drill.CleanUp) || !slices.Contains(point, drill.Depth) || !slices.Contains(plan, drill.CleanUp) {
		t.Error("the readings of a point and of a plan are mixed up")
	}
}

// At the bench what ends the matter is asked first; nothing is asked twice.
// What the help shows to be typed can be read, on a 12 mm drill.
func TestTyped(t *testing.T) {
	for _, r := range drill.All() {
		s := r.Spec()
		if s.Switch != (s.Typed == "") {
			t.Errorf("%s: %q is no example", r, s.Typed)
		}
		if s.Switch || r == drill.Size {
			continue
		}
		d, errs := read("size 12mm; "+r.String()+" "+s.Typed, quantity.Unset)
		if errs = append(errs, d.Possible()...); len(errs) > 0 || d.DecimalComma(r) != "" {
			t.Errorf("%s %s: %v", r, s.Typed, errs)
		}
	}
}

func TestOrderOfQuestions(t *testing.T) {
	usual, rest := drill.ForBench(drill.Of(drill.Point))
	if len(usual) < 3 || usual[0] != drill.Size || usual[1] != drill.Cracked || slices.Contains(rest, drill.Web) || !slices.Contains(rest, drill.WebTaper) {
		t.Errorf("%v, then %v", usual, rest)
	}
	places := map[uint8]bool{0: false}
	for _, r := range usual {
		if asked := r.Spec().Asked; places[asked] {
			t.Errorf("%s has another's place", r)
		} else {
			places[asked] = true
		}
	}
}

// The sample reads without error and says what it is.
func TestSample(t *testing.T) {
	d, errs := resolved(drill.Sample(), nil, quantity.Unset)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	if d.Name != drill.SampleName || !strings.Contains(d.Name, "SAMPLE") || d.Value(drill.Size) != 12 || len(d.Possible()) > 0 {
		t.Errorf("%+v", d.Name)
	}
}

// "new" stands for what a new drill of the size has, where a reading takes it: a
// web of 12 % of the diameter from one inch on (from memory, medium).
func TestAsNew(t *testing.T) {
	for _, size := range []string{"1-1/4in", "31.75mm"} {
		d, errs := read("to-web New ; size "+size, quantity.Unset)
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		if v := d.Value(drill.ToWeb); math.Abs(v-0.12*31.75) > 1e-9 || !d.AsNew(drill.ToWeb) || d.AsRead(drill.ToWeb)[0].Echo() != "new" {
			t.Errorf("%s: web wanted %g", size, v)
		}
	}
	if d, _ := read("size 12mm; to-web 3mm", quantity.Unset); d.AsNew(drill.ToWeb) {
		t.Error("3 mm is a new drill's")
	}
	for line, want := range map[string]string{"to-web new": "give size too", "web new": "begin with a number"} {
		if d, errs := read(line, quantity.Unset); len(errs) != 1 || !strings.Contains(errs[0].Hint, want) || len(d.Taken()) > 0 {
			t.Errorf("%s without a size: %v", line, errs)
		}
	}
}
