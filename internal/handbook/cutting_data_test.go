package handbook_test

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/testkit"
)

const (
	radian = math.Pi / 180
	footM  = 0.3048
)

// agrees fails unless got is want, give or take tolerance.
func agrees(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.6g, want %.6g within %.3g", what, got, want, tolerance)
	}
}

func TestTablesAreWhole(t *testing.T) {
	kebab := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	seen := map[string]bool{}
	for _, table := range handbook.Tables() {
		if !kebab.MatchString(table.Name) || seen[table.Name] {
			t.Errorf("%q is no name of its own", table.Name)
		}
		seen[table.Name] = true
		if table.Title == "" || table.Source.Label == 0 || table.Source.Text == "" {
			t.Errorf("%s lacks a title or a source", table.Name)
		}
		if (table.Source.Label == handbook.Memory) != (table.Source.Sureness != "") {
			t.Errorf("%s: a remembered figure says how sure it is, no other does: %v", table.Name, table.Source)
		}
		rows := table.Rows
		if len(rows) == 0 {
			t.Errorf("%s is empty", table.Name)
		}
		for _, row := range rows {
			if len(row) != len(table.Head) || strings.Contains(strings.Join(row, ""), "\n") {
				t.Errorf("%s: row %q under head %q", table.Name, row, table.Head)
			}
		}
	}
}

// rowOf returns the row of a table that begins with the cell first.
func rowOf(t *testing.T, name, first string) []string {
	t.Helper()
	for _, table := range handbook.Tables() {
		if table.Name == name {
			for _, row := range table.Rows {
				if row[0] == first {
					return row
				}
			}
		}
	}
	t.Fatalf("no row %q in %s", first, name)
	return nil
}

// What the sources command shows is what was published, digit for digit.
func TestTablesShowWhatWasPublished(t *testing.T) {
	for _, want := range [][]string{
		{"drive-efficiency", "geared-head", "geared head", "0.7-0.8"},
		{"feeds", "1/2 to 1", "0.007-0.015"},
		{"morse-by-drill-inch", "4", "1 17/64 to 2"},
		{"oversize-by-size", "0.5", "0.008", "0.005", "0.003"},
		{"drill-geometry-textbook", "magnesium", "70-118", "12-15", "120-135", "30-45", "-"},
		{"drill-geometry-print", "zinc", "118", "-", "-", "32-42", "76"},
		{"cutting-speeds-course", "stainless-316", "30-40"},
		{"cutting-speeds-trade", "steel-400", "25-35"},
		{"deep-holes", "6", "0.4", "0.2"},
		{"helix-by-diameter", "10", "25-31", "34-40"},
		{"point-forms", "C", "cross grind (split point), two new short lips", "0.03-0.06"},
		{"force-constants", "aluminium", "1.01"},
		{"materials", "titanium", "Titanium alloy Ti-6Al-4V, 40 HRC", "hard or tough work", "135", "low end"},
	} {
		if got := rowOf(t, want[0], want[1]); !slices.Equal(got, want[1:]) {
			t.Errorf("%s: got %q, want %q", want[0], got, want[1:])
		}
	}
}

// Every table that was typed in by hand, against a second copy made apart.
func TestTablesAgreeWithASecondCopy(t *testing.T) {
	copied := testkit.Against(t, testkit.SecondCopy, "rows that agree, cell for cell")
	text, err := os.ReadFile("testdata/published.txt")
	if err != nil {
		t.Fatal(err)
	}
	want := map[string][][]string{}
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		cells := strings.Split(strings.TrimRight(line, "\n"), " | ")
		want[cells[0]] = append(want[cells[0]], cells[1:])
	}
	compared := 0
	for _, table := range handbook.Tables() {
		if want[table.Name] == nil {
			continue
		}
		compared++
		rows := table.Rows
		if len(rows) != len(want[table.Name]) {
			t.Errorf("%s: %d rows, want %d", table.Name, len(rows), len(want[table.Name]))
			continue
		}
		agree := 0
		for i, row := range rows {
			if table.Name == "point-forms" {
				row = []string{row[0], row[2]}
			}
			if !slices.Equal(row, want[table.Name][i]) {
				t.Errorf("%s: got %q, want %q", table.Name, row, want[table.Name][i])
			} else {
				agree++
			}
		}
		copied.Within(table.Name, float64(agree), float64(len(want[table.Name])), 0, "rows")
	}
	if compared != len(want) {
		t.Errorf("%d tables compared, want %d", compared, len(want))
	}
}

func TestFactorsByName(t *testing.T) {
	checks := testkit.Against(t, testkit.MachinerysHandbook.Recalled("high"), "tool-wear factor and machine efficiency")
	for i, want := range [...]float64{1, 1.3, 1.5} {
		f := handbook.WearFactors[i]
		if f.Source.Label != handbook.Memory {
			t.Errorf("got %+v", f)
		}
		checks.Within(f.Name, f.Mid(), want, 0, "")
	}
	for name, want := range map[string]float64{"belt": 0.9, "back-gear": 0.75, "geared-head": 0.75, "hydraulic": 0.75} {
		f, ok := handbook.DriveFactor(name)
		if !ok {
			t.Fatalf("no drive %s", name)
		}
		checks.Within(name+", middle", f.Mid(), want, 1e-12, "")
	}
	if _, ok := handbook.DriveFactor(""); ok {
		t.Error("no name is no drive")
	}
	if handbook.ForceSource.Label != handbook.InPrint {
		t.Error("the equations were read in print")
	}
}

// Three diameters is deep; the larger of 35 to 40 % at six.
func TestDeep(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "what a deep hole takes off speed and feed")
	for _, v := range []struct{ ratio, from, speed, feed float64 }{
		{0, 0, 0, 0}, {2.99, 0, 0, 0}, {3, 3, 0.1, 0.1}, {4.5, 4, 0.2, 0.1}, {5, 5, 0.3, 0.2}, {6, 6, 0.4, 0.2}, {20, 6, 0.4, 0.2},
	} {
		c := handbook.Deep(v.ratio)
		agrees(t, "from", c.Depth, v.from, 0)
		trade.Within(fmt.Sprintf("%g diameters, off the speed", v.ratio), 100*c.Speed, 100*v.speed, 1e-10, "%")
		trade.Within(fmt.Sprintf("%g diameters, off the feed", v.ratio), 100*c.Feed, 100*v.feed, 1e-10, "%")
		if c.Source.Label != handbook.Practice {
			t.Errorf("%v: %v", v.ratio, c.Source)
		}
	}
	for _, ratio := range []float64{-1, math.NaN()} {
		if c := handbook.Deep(ratio); !math.IsNaN(c.Speed) || !math.IsNaN(c.Feed) || c.Source != nil {
			t.Errorf("%v: got %+v", ratio, c)
		}
	}
}

// The ranges are from memory; that a 16 mm drill has a Morse shank is common
// practice.
func TestMorseByDrill(t *testing.T) {
	for d, want := range map[float64]int{3: 1, 14: 1, 14.25: 2, 16: 2, 23: 2, 23.25: 3, 31.75: 3, 32: 4, 50.5: 4, 50.7: 5, 76: 5, 76.5: 6, 100: 6} {
		if got, source, ok := handbook.MorseOf(d, false); !ok || got != want || source.Sureness != "high" {
			t.Errorf("%v mm: MT%d %v, want MT%d", d, got, ok, want)
		}
	}
	for in, want := range map[float64]int{0.125: 1, 0.5625: 1, 0.57: 2, 37. / 64: 2, 29. / 32: 2, 59. / 64: 3, 1.25: 3, 1.265625: 4, 2: 4, 2.015625: 5, 3: 5, 3.25: 6} {
		if got, source, ok := handbook.MorseOf(in*25.4, true); !ok || got != want || source.Sureness != "medium" {
			t.Errorf("%v in: MT%d %v, want MT%d", in, got, ok, want)
		}
	}
	for _, d := range []float64{2.9, 100.1, math.NaN()} {
		if _, _, ok := handbook.MorseOf(d, false); ok {
			t.Errorf("%v mm has a Morse taper", d)
		}
	}
	for _, in := range []float64{0.12, 3.51, math.NaN()} {
		if _, _, ok := handbook.MorseOf(in*25.4, true); ok {
			t.Errorf("%v in has a Morse taper", in)
		}
	}
}

// The helix bands in trade use (common practice): standard 28 to 32, fast 35
// to 45 degrees. Each type's band at 10 mm meets its own.
func TestHelixMeetsTheTradesBands(t *testing.T) {
	ordinary, high, ok := handbook.Helix(10)
	for what, b := range map[string]struct {
		got       handbook.Band
		low, high float64
	}{"standard": {ordinary, 28, 32}, "fast": {high, 35, 45}} {
		if !ok || b.got.Low > b.high*radian || b.got.High < b.low*radian || b.got.Source.Label != handbook.Practice {
			t.Errorf("%s: %+v", what, b)
		}
	}
	if _, _, ok := handbook.Helix(1); !ok {
		t.Error("no helix at 1 mm")
	}
	ordinary, _, _ = handbook.Helix(3.2)
	agrees(t, "3.2 mm, low", ordinary.Low, 22*radian, 1e-12)
	_, high, _ = handbook.Helix(3.3)
	agrees(t, "3.3 mm, high", high.High, 38*radian, 1e-12)
	for _, d := range []float64{0.9, 50.1, math.NaN()} {
		if _, _, ok := handbook.Helix(d); ok {
			t.Errorf("a helix at %v mm", d)
		}
	}
}

// An older linear rule for 1/8 to 1 in: average maximum 0.005 + 0.005 D, mean
// 0.002 + 0.005 D, average minimum 0.001 + 0.003 D.
func TestOversizeMeetsTheLinearRule(t *testing.T) {
	rule := testkit.Against(t, testkit.Trade.Recalled("medium"), "an older linear rule of oversize in drilling, 1/8 to 1 in").Because("another rule for the same thing; they agree to 0.002 in")
	for in := 0.125; in <= 1; in += 0.0625 {
		o := handbook.UsualOversize(in * 25.4)
		if !(o.Low < o.Mean && o.Mean < o.High) {
			t.Fatalf("%v in: %+v", in, o)
		}
		rule.Within(fmt.Sprintf("%g in, average maximum", in), o.High/25.4, 0.005+0.005*in, 0.002, "in")
		rule.Within(fmt.Sprintf("%g in, mean", in), o.Mean/25.4, 0.002+0.005*in, 0.001, "in")
		rule.Within(fmt.Sprintf("%g in, average minimum", in), o.Low/25.4, 0.001+0.003*in, 0.001, "in")
	}
	agrees(t, "mean half way from 1/4 to 1/2", handbook.UsualOversize(0.375*25.4).Mean/25.4, 0.0045, 1e-9)
	for _, in := range []float64{0.06, 1.01, math.NaN()} {
		if o := handbook.UsualOversize(in * 25.4); !math.IsNaN(o.Low) || !math.IsNaN(o.Mean) || !math.IsNaN(o.High) {
			t.Errorf("an oversize at %v in: %+v", in, o)
		}
	}
}

// The trade's 1/20 to 1/10
// of the diameter for a good chisel edge (common practice).
func TestRulesOfThinningAndHoles(t *testing.T) {
	agrees(t, "least chisel", handbook.LeastChiselRatio, 1./20, 0)
	// A shank of 240 HV, by the conversions that the source names.
	hand := testkit.Against(t, testkit.Derived, "shear stress of a shank of 240 HV, half of what makes it yield")
	hand.Within("3.2 x 240 x 0.7 x 0.58 / 2", handbook.ShankStress, 3.2*240*0.7*0.58/2, 2, "MPa")
	// Pecks of 1 diameter or less and a pilot under 60 % are remembered.
	trade := testkit.Against(t, testkit.Trade, "rules of holes and shanks")
	for what, v := range map[string][2]float64{
		"first stroke": {handbook.PeckFirst, 3}, "deepest": {handbook.DeepestPecked, 8}, "second stroke": {handbook.PeckNext, 1},
		"shrinking": {handbook.PeckShrink, 0.8}, "least stroke": {handbook.PeckLeast, 0.5}, "pilot": {handbook.PilotTop, 0.6},
		"parallel shank, mm": {handbook.ParallelShankMetric, 13}, "parallel shank, in": {handbook.ParallelShankInch, 12.7},
	} {
		trade.Within(what, v[0], v[1], 0, "")
	}
	ansi := testkit.Against(t, testkit.ANSIB7, "ordinary wheels")
	ansi.Within("in m/s", handbook.OrdinaryWheelMetric, 33, 0, "m/s")
	ansi.Within("in ft/min", handbook.OrdinaryWheelInch*60/footM, 6500, 1e-9, "ft/min")
	sources := []*handbook.Source{
		handbook.ShankStressSource, handbook.ParallelShankSource, handbook.OrdinaryWheelSource, handbook.DeepestSource,
		handbook.PeckFirstSource, handbook.PeckNextSource, handbook.PeckShrinkSource,
		handbook.PilotSource, handbook.PilotTopSource, handbook.LeastWebSource, handbook.LeastChiselSource,
	}
	labels := []handbook.Label{
		handbook.Own, handbook.Practice, handbook.Memory, handbook.Practice,
		handbook.Practice, handbook.Memory, handbook.Own,
		handbook.Practice, handbook.Memory, handbook.Own, handbook.Practice,
	}
	for i, s := range sources {
		if s.Label != labels[i] {
			t.Errorf("source %d: %v", i, s)
		}
	}
}
