package verify

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestMain(m *testing.M) { os.Exit(Keep(m).Run()) }

// witness is a test that only watches what a check does to it.
type witness struct {
	name   string
	failed []string
}

func (w *witness) Helper()      {}
func (w *witness) Name() string { return w.name }
func (w *witness) Errorf(format string, args ...any) {
	w.failed = append(w.failed, fmt.Sprintf(format, args...))
}
func (w *witness) Fatal(args ...any) { w.failed = append(w.failed, fmt.Sprint(args...)) }

// apart gives the test evidence of its own, and puts the package's back after.
func apart(t *testing.T) {
	t.Helper()
	evidence.Lock()
	defer evidence.Unlock()
	evidence.recall()
	kept, golden := evidence.kept, evidence.golden
	evidence.kept, evidence.golden = map[[4]string]Record{}, nil
	t.Cleanup(func() { evidence.kept, evidence.golden = kept, golden })
}

// last is the one record that a check has kept.
func last(t *testing.T) Record {
	t.Helper()
	if len(evidence.kept) != 1 {
		t.Fatalf("%d records", len(evidence.kept))
	}
	for _, r := range evidence.kept {
		return r
	}
	return Record{}
}

// Each check passes at the edge of what it allows and keeps what it saw, and
// fails beyond it, or on NaN, and keeps nothing.
func TestChecks(t *testing.T) {
	for name, c := range map[string]struct {
		check                  func(o Outside, ours float64)
		good, bad              float64
		printed, ours, allowed string
	}{
		"within":        {func(o Outside, v float64) { o.Within("x", v, 12.5, 0.25, "mm") }, 12.75, 12.76, "12.5", "12.750", "± 0.25 mm"},
		"below it":      {func(o Outside, v float64) { o.Within("x", v, 12.5, 0.25, "") }, 12.25, 12.24, "12.5", "12.250", "± 0.25"},
		"exactly":       {func(o Outside, v float64) { o.Within("x", v, 3, 0, "") }, 3, 3.1, "3", "3.00", "exact"},
		"but rounding":  {func(o Outside, v float64) { o.Within("x", v, 3, 1e-9, "") }, 3, 3.1, "3", "3.00", "to rounding"},
		"to decimals":   {func(o Outside, v float64) { o.To(3).Within("x", v, 1.1, 0.5, "") }, 1, 2, "1.100", "1.00000", "± 0.5"},
		"part":          {func(o Outside, v float64) { o.Part("x", v, -200, 0.25, "") }, -150, -149, "-200", "-150.00", "± 25 %"},
		"part, exactly": {func(o Outside, v float64) { o.Part("x", v, 8, 1e-12, "") }, 8, 8.1, "8", "8.00", "to rounding"},
		"band, low":     {func(o Outside, v float64) { o.Between("x", v, 20, 25.5, "°") }, 20, 19.9, "20 to 25.5", "20.000", "in the band"},
		"band, high":    {func(o Outside, v float64) { o.Between("x", v, 20, 25.5, "°") }, 25.5, 25.6, "20 to 25.5", "25.500", "in the band"},
		"under":         {func(o Outside, v float64) { o.Below("x", v, 0.2, "") }, 0.19, 0.2, "under 0.2", "0.190", "on that side"},
		"over":          {func(o Outside, v float64) { o.Above("x", v, 0.2, "") }, 0.21, 0.2, "over 0.2", "0.210", "on that side"},
	} {
		t.Run(name, func(t *testing.T) {
			apart(t)
			w := &witness{name: "TestOne/sub"}
			o := Against(w, Navy, "a page")
			c.check(o, c.good)
			r := last(t)
			if len(w.failed) > 0 || r.Printed != c.printed || r.Ours != c.ours || r.Allowed != c.allowed || r.Test != "TestOne" || r.Work != Navy.Work || r.Place != "a page" {
				t.Errorf("%v, %+v", w.failed, r)
			}
			clear(evidence.kept)
			for i, bad := range []float64{c.bad, math.NaN()} {
				c.check(o, bad)
				if len(w.failed) != i+1 || len(evidence.kept) > 0 {
					t.Errorf("%v passes", bad)
				}
			}
		})
	}
}

func TestSays(t *testing.T) {
	apart(t)
	w := &witness{name: "TestOne"}
	Against(w, Trade, "").Says("brass", "straight", "straight")
	if r := last(t); r.Ours != "straight" || r.Label != "common practice" || len(w.failed) > 0 {
		t.Errorf("%v, %+v", w.failed, r)
	}
	if Against(w, Trade, "").Says("lead", "high helix", "straight"); len(w.failed) != 1 {
		t.Error("another word passes")
	}
}

// What is checked twice has to come out alike; a package whose TestMain does
// not keep anything is told so.
func TestKeeping(t *testing.T) {
	apart(t)
	w := &witness{name: "TestOne"}
	o := Against(w, Navy, "a page")
	o.Within("x", 1, 1, 0.5, "")
	if o.Within("x", 1, 1, 0.5, ""); len(w.failed) > 0 {
		t.Errorf("the same again: %v", w.failed)
	}
	if o.Within("x", 1.2, 1, 0.5, ""); len(w.failed) != 1 {
		t.Error("a name is used for two figures")
	}
	evidence.keeping = false
	defer func() { evidence.keeping = true }()
	if o.Within("y", 1, 1, 0.5, ""); len(w.failed) != 2 || !strings.Contains(w.failed[1], "verify.Keep") {
		t.Errorf("%v", w.failed)
	}
}

// The last digit kept may differ by one: processors do not round alike.
func TestAgreement(t *testing.T) {
	base := Record{Test: "T", What: "x", Printed: "2", Ours: "1.235", Cases: 3}
	for ours, want := range map[string]bool{"1.235": true, "1.236": true, "1.234": true, "1.237": false, "1.23": false, "word": false, "": false} {
		other := base
		other.Ours = ours
		if base.agrees(other) != want {
			t.Errorf("%q: %v", ours, !want)
		}
	}
	other := base
	other.Printed = "2.0"
	if base.agrees(other) {
		t.Error("another printed value agrees")
	}
}

// A change of any kind is told: a record that is new, gone, or not the same.
func TestChangesAreTold(t *testing.T) {
	a, b := Record{Test: "A", What: "a", Ours: "1.00"}, Record{Test: "B", What: "b", Ours: "2.00"}
	changed := a
	changed.Ours = "1.10"
	for name, c := range map[string]struct {
		kept, golden []Record
		tells        string
	}{
		"the same":  {[]Record{b, a}, []Record{a, b}, ""},
		"new":       {[]Record{a, b}, []Record{a}, `B: "b" now shows`},
		"gone":      {[]Record{a}, []Record{a, b}, `B no longer shows "b"`},
		"different": {[]Record{changed}, []Record{a}, `A: "a" now shows`},
	} {
		switch err := unlike(c.kept, c.golden); {
		case err == nil && c.tells != "" || err != nil && (c.tells == "" || !strings.Contains(err.Error(), c.tells) || !strings.Contains(err.Error(), remedy)):
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A whole run has to show all that is committed, a run of some tests what those
// showed; told to, either rewrites just that.
func TestSettling(t *testing.T) {
	one, two := Record{Test: "TestOne", What: "a", Ours: "1.0"}, Record{Test: "TestTwo", What: "b", Ours: "2.0"}
	changed := one
	changed.Ours = "1.7"
	for name, c := range map[string]struct {
		kept          []Record
		whole, update bool
		fails         string
		leaves        []Record
	}{
		"whole":             {[]Record{one, two}, true, false, "", []Record{one, two}},
		"in part":           {[]Record{one}, false, false, "", []Record{one, two}},
		"whole, one gone":   {[]Record{one}, true, false, "the tests no longer show", []Record{one, two}},
		"in part, changed":  {[]Record{changed}, false, false, "now shows", []Record{one, two}},
		"rewritten whole":   {[]Record{changed}, true, true, "", []Record{changed}},
		"rewritten in part": {[]Record{changed}, false, true, "", []Record{changed, two}},
	} {
		t.Run(name, func(t *testing.T) {
			apart(t)
			file, update := goldenFile, evidence.update
			defer func() { goldenFile, evidence.update = file, update }()
			goldenFile, evidence.update = t.TempDir()+"/testdata/verified.jsonl", c.update
			evidence.golden = []Record{one, two}
			if err := write(goldenFile, evidence.golden); err != nil {
				t.Fatal(err)
			}
			for _, r := range c.kept {
				evidence.kept[r.key()] = r
			}
			err := settle(c.whole)
			if (err != nil) != (c.fails != "") || err != nil && !strings.Contains(err.Error(), c.fails) {
				t.Errorf("%v", err)
			}
			if got, err := read(goldenFile); err != nil || !slices.Equal(got, c.leaves) {
				t.Errorf("left %+v, %v", got, err)
			}
		})
	}
}

func TestFilesGoThereAndBack(t *testing.T) {
	path := t.TempDir() + "/testdata/verified.jsonl"
	want := []Record{{Test: "A", What: `"<1/2>" is 59°`, Ours: "1"}, {Test: "B", What: "holds", Cases: 100}}
	if err := write(path, want); err != nil {
		t.Fatal(err)
	}
	if got, err := read(path); err != nil || !slices.Equal(got, want) {
		t.Errorf("%+v, %v", got, err)
	}
	if err := os.WriteFile(path, []byte("{}\nnot a record\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	if _, err := read(path); err == nil || !strings.Contains(err.Error(), "verified.jsonl:2:") {
		t.Errorf("%v", err)
	}
	if got, err := read(path + "x"); err != nil || got != nil {
		t.Errorf("no file: %v, %v", got, err)
	}
}

func TestNaturalOrder(t *testing.T) {
	want := []string{"#2", "#10", "8 mm", "8.5 mm", "10 mm", "A at 0.03", "A at 0.2", "B", "B 1"}
	got := slices.Clone(want)
	slices.Reverse(got)
	slices.SortFunc(got, natural)
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	Property(t, "the order of names is one, whichever two are compared first", func(t *rapid.T) {
		name := rapid.StringMatching(`[ab ]?[0-9]{0,2}\.?[0-9]{0,2}[ab]?[0-9]?`)
		a, b, c := name.Draw(t, "a"), name.Draw(t, "b"), name.Draw(t, "c")
		if natural(a, b) != -natural(b, a) || (natural(a, b) == 0) != (a == b) {
			t.Fatalf("%q and %q", a, b)
		}
		if natural(a, b) < 0 && natural(b, c) < 0 && natural(a, c) >= 0 {
			t.Fatalf("%q, %q, %q", a, b, c)
		}
	})
}

func TestDifferences(t *testing.T) {
	for _, c := range []struct {
		printed, ours, want string
		part                float64
	}{
		{"2.5", "2.510", "+0.010", 0.004}, {"2.5", "2.490", "-0.010", 0.004}, {"2.5", "2.500", "0", 0},
		{"20 to 25", "26.00", "+1.00", 0.04}, {"20 to 25", "19.00", "-1.00", 0.05}, {"20 to 25", "22.00", "0", 0},
		{"0", "0.10", "+0.10", math.NaN()}, {"under 0.2", "0.190", "-", math.NaN()}, {"dull", "dull", "-", math.NaN()},
	} {
		got := check{Record: Record{Printed: c.printed, Ours: c.ours}}
		if d, p := got.difference(), got.part(); d != c.want || !(math.Abs(p-c.part) < 1e-12 || math.IsNaN(p) && math.IsNaN(c.part)) {
			t.Errorf("%s against %s: %s, %v", c.ours, c.printed, d, p)
		}
	}
}

func TestRecordsSayWhatTheyShow(t *testing.T) {
	for want, r := range map[string]Record{
		"nothing": {}, "100 cases": {What: "holds", Cases: 100},
		"59.00° where a book prints 59, allowed exact": {Work: "a book", Printed: "59", Ours: "59.00", Allowed: "exact", Unit: "°"},
	} {
		if got := r.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestLabels(t *testing.T) {
	for want, s := range map[string]Source{
		"common practice": Trade, "handbook, read in print": MachinerysHandbook,
		"handbook, from memory (high)": MachinerysHandbook.Recalled("high"), "standard, from memory (medium)": ASME,
	} {
		if got := s.Label(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Every test that holds something is found by reading the tests.
func TestGather(t *testing.T) {
	parts, err := Gather(root, "internal/quantity")
	if err != nil || len(parts) != 1 || parts[0].Package != "internal/quantity" {
		t.Fatalf("%+v, %v", parts, err)
	}
	if !slices.ContainsFunc(parts[0].Fuzzed, func(f Test) bool { return f.Name == "FuzzParseRange" }) {
		t.Errorf("%+v", parts[0].Fuzzed)
	}
	if len(parts[0].Records) == 0 || len(parts[0].Uncounted) != 0 {
		t.Errorf("%d records, uncounted %+v", len(parts[0].Records), parts[0].Uncounted)
	}
	if _, err := Gather(root, "nowhere"); err == nil {
		t.Error("nowhere is there")
	}
}
