package drill_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
)

const deg = math.Pi / 180

// read understands "size 12mm; web 2", in the order written.
func read(line string, units quantity.System) (*drill.Drill, []*drill.Error) {
	d := &drill.Drill{Units: units}
	for _, part := range strings.Split(line, ";") {
		name, text, _ := strings.Cut(strings.TrimSpace(part), " ")
		r, ok := drill.Find(name)
		if !ok {
			panic("no reading " + name)
		}
		d.Set(r, text)
	}
	return d, d.Resolve()
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
	if got := d.Word(drill.Material); got != "steel-200" || d.Word(drill.At) != "" {
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
		d := &drill.Drill{}
		d.Set(r, " \t")
		if errs := d.Resolve(); len(errs) != 1 || d.Has(r) {
			t.Errorf("%s of blanks: %v", r, errs)
		}
		d.Set(r, "")
		if errs := d.Resolve(); len(errs) != 0 || d.Has(r) {
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
		got = append(got, e.Reading.String())
		if !strings.HasPrefix(e.Error(), e.Reading.String()+": ") {
			t.Errorf("%v does not begin with its reading", e)
		}
		if d.Has(e.Reading) {
			t.Errorf("%s counts as read", e.Reading)
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
		"1/2,3/4":       "a comma stands only between the readings of two lips",
		"2mm,3mm":       "a comma stands only between the readings of two lips",
		"1.5,\u00a02.5": "a comma stands only between the readings of two lips",
	} {
		_, errs := read("web "+text, quantity.Unset)
		if len(errs) != 1 {
			t.Errorf("%q: %v", text, errs)
			continue
		}
		if e := errs[0].Err; !strings.HasSuffix(e.Text, ": takes one value") || e.Hint != hint {
			t.Errorf("%q: %v, %s", text, e, e.Hint)
		}
	}
}

// A space where a comma parts the readings of two lips.
func TestSpaceForAComma(t *testing.T) {
	for line, hint := range map[string]string{
		"lip-angle 59 58.5":            "the readings of two lips go together: 59,58.5",
		"lip-height -0.02mm  0.1mm":    "the readings of two lips go together: -0.02mm,0.1mm",
		"lip-angle 59 58 57":           "write the number without spaces between its digits",
		"web 2 1":                      "write the number without spaces between its digits",
		"lip-height 0.1mm sideways":    `"mm sideways" is no unit that is known here`,
		"lip-length 5,6 5,7":           "more than two values; a comma is never a decimal point or a thousands mark",
		"size 1/2; lip-length 1/4 1/5": "the readings of two lips go together: 1/4,1/5",
	} {
		_, errs := read(line, quantity.Unset)
		if len(errs) != 1 {
			t.Errorf("%q: %v", line, errs)
		} else if got := errs[0].Err.Hint; got != hint {
			t.Errorf("%q: %q", line, got)
		}
	}
	if d, errs := read("size 1/2; lip-length 1 1/4", quantity.Unset); len(errs) > 0 || d.Value(drill.LipLength) != 1.25*25.4 {
		t.Errorf("a mixed fraction is one reading: %v", errs)
	}
}

// A reading is forgotten whole, its unit as well, and one read again badly is
// not the one before.
func TestDropAndReadAgain(t *testing.T) {
	d, _ := read("size 1/2; web 0.1", quantity.Unset)
	d.Drop(drill.Size)
	if d.Has(drill.Size) || d.Written(drill.Size) != "" || d.System() != quantity.Metric || len(d.Values(drill.Size)) != 0 {
		t.Error("the size, or its unit, is still there")
	}
	d.Set(drill.Web, "two")
	if errs := d.Resolve(); len(errs) != 1 || d.Has(drill.Web) {
		t.Errorf("%v, web read: %v", errs, d.Has(drill.Web))
	}
	d.Set(drill.Web, "3mm")
	if errs := d.Resolve(); len(errs) != 0 || d.Value(drill.Web) != 3 {
		t.Errorf("%v, web %v", errs, d.Value(drill.Web))
	}
}

func TestPutAndNudge(t *testing.T) {
	d := &drill.Drill{}
	d.Put(drill.LipAngle, 1, 0.9)
	n := d.Nudged(drill.LipAngle, 1, 0.05)
	if a, b, _ := n.Pair(drill.LipAngle); a != 1 || math.Abs(b-0.95) > 1e-15 {
		t.Errorf("nudged to %v, %v", a, b)
	}
	if _, b, count := d.Pair(drill.LipAngle); b != 0.9 || count != 2 {
		t.Errorf("the drill itself is now %v (%d)", b, count)
	}
}

// A copy of a drill goes its own way: nothing done to it reaches the first.
func TestCopiesAreTheirOwn(t *testing.T) {
	d := &drill.Drill{}
	d.Set(drill.Size, "12mm")
	d.Set(drill.LipAngle, "59,58")
	d.Resolve()
	was := *d
	for _, change := range []func(*drill.Drill){
		func(c *drill.Drill) { c.Put(drill.LipAngle, 1, 1) },
		func(c *drill.Drill) { c.Set(drill.LipAngle, "60"); c.Resolve() },
		func(c *drill.Drill) { c.Drop(drill.LipAngle) },
		func(c *drill.Drill) { c.Nudged(drill.LipAngle, 0, 0.1) },
		func(c *drill.Drill) { c.Units = quantity.Inch; c.Resolve() },
	} {
		c := *d
		change(&c)
		a, b, n := d.Pair(drill.LipAngle)
		if wa, wb, wn := was.Pair(drill.LipAngle); a != wa || b != wb || n != wn || math.Abs(a-59*math.Pi/180) > 1e-12 || d.Written(drill.LipAngle) != "59,58" {
			t.Fatalf("the first drill has %v, %v (%d)", a, b, n)
		}
	}
}

// What is read is echoed with its unit: understanding it twice changes nothing.
func TestResolveTwice(t *testing.T) {
	testkit.Property(t, "what is read is echoed with its unit, and read again is the same", func(t *rapid.T) {
		d := &drill.Drill{Units: rapid.SampledFrom([]quantity.System{quantity.Unset, quantity.Metric, quantity.Inch}).Draw(t, "units")}
		texts := []string{"12", "1/2", "0.5in", "2mm", "#7", "59,58", "steel-200", "yes", "0.2", "x", "", "30°"}
		for _, r := range drill.All() {
			d.Set(r, rapid.SampledFrom(texts).Draw(t, r.String()))
		}
		first := d.Resolve()
		before := *d
		second := d.Resolve()
		if len(first) != len(second) || !reflect.DeepEqual(*d, before) {
			t.Fatalf("%v and then %v", first, second)
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
	for _, part := range [][]drill.Reading{drill.ForPoint(), drill.ForPlan()} {
		for _, r := range part {
			if !slices.Contains(drill.All(), r) {
				t.Errorf("%v is in no catalogue", r)
			}
		}
	}
	if slices.Contains(drill.ForPoint(), drill.CleanUp) || !slices.Contains(drill.ForPoint(), drill.Depth) || !slices.Contains(drill.ForPlan(), drill.CleanUp) {
		t.Error("the readings of a point and of a plan are mixed up")
	}
}

// The sample reads without error and says what it is.
func TestSample(t *testing.T) {
	d := drill.Sample()
	if errs := d.Resolve(); len(errs) > 0 {
		t.Fatal(errs)
	}
	if !d.Sample || d.Name != drill.SampleName || !strings.Contains(d.Name, "SAMPLE") || d.Value(drill.Size) != 12 {
		t.Errorf("%+v", d.Name)
	}
}

// "new" stands for what a new drill of the size has, where a reading takes it: a
// web of 12 % of the diameter from one inch on (from memory, medium).
func TestAsNew(t *testing.T) {
	for _, size := range []string{"1-1/4in", "31.75mm"} {
		d := &drill.Drill{}
		d.Set(drill.Size, size)
		d.Set(drill.ToWeb, " New ")
		if errs := d.Resolve(); errs != nil {
			t.Fatal(errs)
		}
		if v := d.Value(drill.ToWeb); math.Abs(v-0.12*31.75) > 1e-9 || !d.AsNew(drill.ToWeb) || d.Values(drill.ToWeb)[0].Echo() != "new" {
			t.Errorf("%s: web wanted %g", size, v)
		}
		d.Set(drill.ToWeb, "3mm")
		if d.Resolve(); d.AsNew(drill.ToWeb) {
			t.Error("3 mm is a new drill's")
		}
	}
	for r, want := range map[drill.Reading]string{drill.ToWeb: "give size too", drill.Web: "begin with a number"} {
		d := &drill.Drill{}
		d.Set(r, "new")
		errs := d.Resolve()
		if len(errs) != 1 || !strings.Contains(errs[0].Err.Hint, want) || d.AsNew(r) {
			t.Errorf("%s new without a size: %v", r, errs)
		}
	}
}
