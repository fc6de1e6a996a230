package handbook_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
)

const degree = math.Pi / 180

// at fails unless got is want to a last digit or two.
func at(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*max(1, math.Abs(want))) {
		t.Errorf("%s: got %.9g, want %.9g", what, got, want)
	}
}

// cells returns the rows of a table as sources prints them.
func cells(t *testing.T, name string) [][]string {
	t.Helper()
	for _, table := range handbook.Tables() {
		if table.Name == name {
			return table.Rows
		}
	}
	t.Fatalf("no table %q", name)
	return nil
}

// General, hard and soft work; both ends of each row.
func TestClearanceTable(t *testing.T) {
	checks := testkit.Against(t, testkit.ToolHandbook, "lip clearance by drill size, ends of each row")
	for _, c := range []struct {
		from, to            float64 // in
		general, hard, soft float64
	}{
		{0.0135, 0.0390, 24, 20, 26}, {0.0400, 0.0960, 21, 18, 24}, {0.0980, 0.1200, 18, 16, 22}, {0.1250, 0.2500, 16, 14, 20},
		{0.2570, 0.3438, 14, 12, 18}, {0.3480, 0.5000, 12, 10, 16}, {0.5156, 0.7500, 10, 8, 14}, {0.7656, 3.5, 8, 7, 12},
	} {
		for _, in := range []float64{c.from, c.to} {
			for relief, want := range map[handbook.Relief]float64{handbook.General: c.general, handbook.Hard: c.hard, handbook.Soft: c.soft} {
				aim, band := handbook.Clearance(in*handbook.InchMM, relief)
				checks.Within(fmt.Sprint(in, " in, ", relief), aim/degree, want, 1e-9*want, "°")
				if !band.Holds(aim) || band.Source.Label != handbook.Memory {
					t.Errorf("%v in, %v: aim %v in %+v", in, relief, aim, band)
				}
			}
		}
	}
}

// The band as this program reads the table: from the harder class to the softer.
func TestClearanceBand(t *testing.T) {
	for _, c := range []struct {
		d         float64
		r         handbook.Relief
		low, high float64
	}{
		{12, handbook.General, 10, 16}, {12, handbook.Hard, 8, 12}, {12, handbook.Soft, 12, 18},
		{25.4, handbook.Hard, 6, 8}, {25.4, handbook.General, 7, 12}, {25.4, handbook.Soft, 8, 14},
		{0.1, handbook.General, 20, 26}, // finer than any row: the first
		{8.78, handbook.General, 12, 18},
		{8.85, handbook.General, 10, 16},
	} {
		_, band := handbook.Clearance(c.d, c.r)
		at(t, fmt.Sprint(c.d, c.r, " from"), band.Low/degree, c.low)
		at(t, fmt.Sprint(c.d, c.r, " to"), band.High/degree, c.high)
	}
}

// Common practice: an ordinary band of 8 to 12 degrees fits drills of 3/8 in and
// more, and smaller drills want more; about 6 outside is the least.
func TestClearanceFallsWithSize(t *testing.T) {
	testkit.Property(t, "a larger drill never wants more clearance, nor harder work", func(t *rapid.T) {
		small := rapid.Float64Range(0.2, 80).Draw(t, "small")
		large := small + rapid.Float64Range(0, 20).Draw(t, "larger by")
		r := rapid.SampledFrom([]handbook.Relief{handbook.General, handbook.Hard, handbook.Soft}).Draw(t, "work")
		a, bandA := handbook.Clearance(small, r)
		b, bandB := handbook.Clearance(large, r)
		if b > a || bandB.Low > bandA.Low || bandB.High > bandA.High {
			t.Fatalf("%v mm wants %v, %v mm wants %v", small, a, large, b)
		}
		if bandA.Low < 6*degree-1e-12 || bandA.Low >= bandA.High {
			t.Fatalf("%v mm: from %v to %v", small, bandA.Low, bandA.High)
		}
		hard, _ := handbook.Clearance(small, handbook.Hard)
		soft, _ := handbook.Clearance(small, handbook.Soft)
		if !(hard <= a && a <= soft) {
			t.Fatalf("%v mm: hard %v, %v, soft %v", small, hard, a, soft)
		}
	})
}

// Of no drill there is no clearance, lip height or web.
func TestLimitsOfNoDrill(t *testing.T) {
	for _, d := range []float64{math.NaN(), 0, -1} {
		aim, band := handbook.Clearance(d, handbook.General)
		height := handbook.LipHeight(d)
		for what, v := range map[string]float64{
			"aim": aim, "clearance": band.Low, "clearance to": band.High, "lip height": height.Low, "lip height to": height.High, "web": handbook.NewWeb(d),
			"chisel": handbook.NewChiselRatio(d), "chisel to": handbook.ChiselRatio(d).High,
		} {
			if !math.IsNaN(v) {
				t.Errorf("%s of a drill of %v mm: %v", what, d, v)
			}
		}
		if _, ok := handbook.HoleOversize(d); ok {
			t.Errorf("a hole tolerance for %v mm", d)
		}
	}
	if b := handbook.MarginWear(math.NaN(), math.NaN()); !math.IsNaN(b.High) {
		t.Errorf("margin %v", b)
	}
	if b := handbook.FluteNeeded(12, math.NaN()); !math.IsNaN(b.Low) {
		t.Errorf("flute %v", b)
	}
}

// The point angle's tolerance, 118 ± 3, and the chisel edge's 120 to 135.
func TestAngles(t *testing.T) {
	standard := testkit.Against(t, testkit.DIN1414, "point angle and its tolerance")
	trade := testkit.Against(t, testkit.Trade, "chisel-edge angle")
	standard.Within("standard point", handbook.StandardPointAngle/degree, 118, 118e-9, "°")
	for _, wanted := range []float64{118, 135, 90} {
		b := handbook.PointAngle(wanted * degree)
		standard.Within(fmt.Sprintf("%g wanted, from", wanted), b.Low/degree, wanted-3, 1e-7, "°")
		standard.Within(fmt.Sprintf("%g wanted, to", wanted), b.High/degree, wanted+3, 1e-7, "°")
		if b.Source.Label != handbook.Memory {
			t.Errorf("labelled %v", b.Source.Label)
		}
	}
	trade.Within("from", handbook.ChiselAngle.Low/degree, 120, 120e-9, "°")
	trade.Within("to", handbook.ChiselAngle.High/degree, 135, 135e-9, "°")
}

// Inches: the rule meets what is recalled where its ranges of sizes end, and lies
// under it between.
func TestLipHeight(t *testing.T) {
	standard := testkit.Against(t, testkit.ASME, "relative lip height")
	for _, c := range []struct{ d, limit float64 }{
		{1, 0.002}, {3.175, 0.002}, {6.35, 0.003}, {12.7, 0.004}, {25.4, 0.005}, {50.8, 0.006}, {88.9, 0.006}, {100, 0.006},
	} {
		b := handbook.LipHeight(c.d)
		standard.Within(fmt.Sprint(c.d, " mm"), b.High/25.4, c.limit, 1e-9, "in")
		at(t, fmt.Sprint(c.d, " mm, the other way"), b.Low, -c.limit*25.4)
		if b.Source.Label != handbook.Own {
			t.Errorf("%v mm: labelled %v", c.d, b.Source.Label)
		}
	}
	trade := testkit.Against(t, testkit.Trade, "relative lip height from 2 to 10 mm")
	for d, quoted := range map[float64]bool{1.99: false, 2: true, 10: true, 10.01: false} {
		limit, source, ok := handbook.CloseLipHeight(d)
		if ok != quoted || source.Label != handbook.Practice {
			t.Errorf("%v mm: quoted %v, labelled %v", d, ok, source.Label)
		}
		trade.Within(fmt.Sprint(d, " mm"), limit, 0.05, 1e-9, "mm")
	}
}

func TestHoleOversize(t *testing.T) {
	jigs := testkit.Against(t, testkit.JigDrilling, "hole tolerance for drilling with jigs, ends of each row")
	for _, c := range []struct{ from, to, plus float64 }{
		{0.0135, 0.125, 0.004}, {0.126, 0.25, 0.005}, {0.251, 0.5, 0.006}, {0.501, 0.75, 0.008}, {0.751, 1, 0.010}, {1.001, 2, 0.012},
	} {
		for _, in := range []float64{c.from, c.to} {
			b, ok := handbook.HoleOversize(in * 25.4)
			if !ok || b.Low != 0 {
				t.Errorf("%v in: %+v, %v", in, b, ok)
			}
			jigs.Within(fmt.Sprint(in, " in"), b.High/25.4, c.plus, 1e-9, "in")
		}
	}
	for _, in := range []float64{0.0134, 2.001} {
		if b, ok := handbook.HoleOversize(in * 25.4); ok || b != (handbook.Band{}) {
			t.Errorf("%v in: %+v", in, b)
		}
	}
}

// The web as new: 20 % of the diameter at 1/8 in, 17 at 1/4, 14 at 1/2, 12 at one
// inch and over.
func TestNewWeb(t *testing.T) {
	checks := testkit.Against(t, testkit.OldToolHandbook, "web of a new drill over its diameter").Because("a smooth curve through five points")
	for in, part := range map[float64]float64{0.125: 0.20, 0.25: 0.17, 0.5: 0.14, 1: 0.12, 2: 0.12} {
		checks.Within(fmt.Sprint(in, " in"), handbook.NewWeb(in*25.4)/(in*25.4), part, 0.005, "")
	}
	testkit.Property(t, "a larger drill as new has a thicker web and a smaller part of it", func(t *rapid.T) {
		small := rapid.Float64Range(0.3, 80).Draw(t, "small")
		large := small * rapid.Float64Range(1, 2).Draw(t, "times")
		if handbook.NewWeb(large) < handbook.NewWeb(small)-1e-12 || handbook.NewWeb(large)/large > handbook.NewWeb(small)/small+1e-12 {
			t.Fatal("a larger drill has a thinner web, or one that is a larger part of it")
		}
		if q := handbook.NewChiselRatio(small); q < 0.18 || handbook.ChiselRatio(small).High < q {
			t.Fatalf("%v mm: c/D %v as new, thinned from %v", small, q, handbook.ChiselRatio(small).High)
		}
	})
}

func TestWebAndChisel(t *testing.T) {
	checks := testkit.Against(t, testkit.MachinerysHandbook, "p. 1153, chisel edges and webs")
	trade := testkit.Against(t, testkit.Trade, "growth of the web, mm per mm")
	checks.Within("c/D of standard drills", handbook.StandardChiselRatio, 0.18, 1e-9, "")
	checks.Within("c/D of split points", handbook.SplitChiselRatio, 0.03, 1e-9, "")
	checks.Within("w/D at the end of Table 7", handbook.WebTableEnd, 0.35, 1e-9, "")
	wide := testkit.Against(t, testkit.Trade, "webs of wide-web drills when new, 33 to 40 % of the diameter")
	wide.Above("w/D past thinning", handbook.WebLimit.High, 0.40, "")
	small := 0.2 / (math.Sqrt(3) / 2) // web 20 %, from memory; the chisel at 120 degrees
	if got := handbook.NewChiselRatio(25.4 / 8); math.Abs(got-small) > 0.001 {
		t.Errorf("1/8 in: c/D %.4f as new, want %.4f", got, small)
	}
	at(t, "1 in drill, thin from", handbook.ChiselRatio(25.4).High, 0.225)
	for what, b := range map[string]handbook.Band{"chisel": handbook.ChiselRatio(12), "web": handbook.WebLimit, "land": handbook.FlankWear(12), "margin": handbook.MarginWear(12, math.NaN())} {
		if b.Low != 0 || !b.Holds(0) {
			t.Errorf("%s: none at all is outside %+v", what, b)
		}
	}
	trade.Within("from", handbook.WebTaperLow, 0.014, 1e-9, "")
	trade.Within("to", handbook.WebTaperHigh, 0.018, 1e-9, "")
	at(t, "the middle", handbook.WebTaper, (handbook.WebTaperLow+handbook.WebTaperHigh)/2)
	_, growth := (*handbook.Book)(nil).WebTaper()
	for label, source := range map[handbook.Label]*handbook.Source{
		handbook.Practice: growth, handbook.InPrint: handbook.StandardChiselSource, handbook.Memory: handbook.NewWebSource,
	} {
		if source.Label != label || source.Text == "" {
			t.Errorf("%+v, want %v", source, label)
		}
	}
}

// The rest are this program's own rules and say so.
func TestWear(t *testing.T) {
	trade := testkit.Against(t, testkit.Trade, "regrind at a land of 0.25 to 0.38 mm")
	trade.Within("the lower end", handbook.FlankWear(12).High, 0.25, 1e-9, "mm")
	at(t, "land of no known drill", handbook.FlankWear(math.NaN()).High, 0.25)
	at(t, "land of a small drill", handbook.FlankWear(3).High, 0.09)
	at(t, "margin", handbook.MarginWear(12, math.NaN()).High, 12)
	at(t, "flute", handbook.FluteNeeded(12, 30).Low, 42)
	if handbook.FlankWear(12).Source.Label != handbook.Practice || handbook.MarginWear(12, math.NaN()).Source.Label != handbook.Own || handbook.FluteNeeded(12, 30).Source.Label != handbook.Own {
		t.Error("labelled wrong")
	}
	if !handbook.FluteNeeded(12, 30).Holds(1000) || handbook.FluteNeeded(12, 30).Holds(41.9) {
		t.Error("a flute of any length over the least will do")
	}
}

// The functions use what the tables show: each row printed is asked back.
func TestLimitTablesAreTheOnesUsed(t *testing.T) {
	for _, row := range cells(t, "lip-clearance-by-size") {
		for i, r := range []handbook.Relief{handbook.General, handbook.Hard, handbook.Soft} {
			for _, end := range row[1:3] {
				if end == "up" {
					continue
				}
				aim, _ := handbook.Clearance(number1(t, end)*25.4, r)
				at(t, row[0], aim/degree, number1(t, row[3+i]))
			}
		}
	}
	for _, row := range cells(t, "hole-oversize") {
		for _, end := range row[:2] {
			b, _ := handbook.HoleOversize(number1(t, end) * 25.4)
			at(t, end, b.High/25.4, number1(t, row[2]))
		}
	}
	for _, row := range cells(t, "lip-height-by-size") {
		name := row[0][strings.LastIndex(row[0], "to ")+len("to "):]
		size, bad := quantity.Parse(quantity.Length, name, quantity.Inch)
		if bad != nil {
			t.Fatal(bad)
		}
		inches, err := strconv.ParseFloat(row[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		if got := handbook.LipHeight(size.V).High / 25.4; got > inches+1e-9 {
			t.Errorf("%s: the rule, %v, is looser than what is recalled, %v", row[0], got, inches)
		}
	}
	for name, want := range map[string][]string{
		"point-angle-tolerance": {"as wanted, 118 for general work", "± 3"}, "chisel-edge-angle": {"120", "135"}, "lip-height-small": {"2", "10", "0.05"},
		"web-taper": {"0.014", "0.016", "0.018"}, "thin-rule": {"1.25"}, "web-limit": {"0.5"}, "web-table-end": {"0.35"}, "thinned-least": {"3"}, "lip-height": {"0.004", "0.001", "0.002", "0.006"}, "flank-wear": {"0.25", "0.38"}, "flank-wear-small": {"0.03"}, "margin-wear": {"1"}, "chip-room": {"1"},
		"lip-clearance-as-supplied": {"8"},
	} {
		if got := cells(t, name)[0]; !slices.Equal(got, want) {
			t.Errorf("%s shows %q, want %q", name, got, want)
		}
	}
	at(t, "standard", number1(t, cells(t, "chisel-ratio")[0][1]), handbook.StandardChiselRatio)
	if got := cells(t, "lip-clearance-band"); len(got) != 2 || got[0][1] != "2" || got[1][1] != "6" {
		t.Errorf("%q", got)
	}
	for _, row := range cells(t, "web-as-new")[:3] {
		in, err := quantity.Parse(quantity.Length, row[0], quantity.Inch)
		if err != nil {
			t.Fatal(err)
		}
		if got := handbook.NewWeb(in.V) / in.V; math.Abs(got-number1(t, row[1])) > 0.005 {
			t.Errorf("%s: %v", row[0], got)
		}
	}
}

// The classes of work have their names.
func TestReliefWords(t *testing.T) {
	for r, want := range map[handbook.Relief]string{handbook.General: "general work", handbook.Hard: "hard or tough work", handbook.Soft: "soft or free-cutting work"} {
		if r.String() != want {
			t.Errorf("%q, want %q", r, want)
		}
	}
}

// A material is found by any name, without allocating.
func TestFindMaterialAllocatesNothing(t *testing.T) {
	if n := testing.AllocsPerRun(10, func() { handbook.FindMaterial("plastic") }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

// Drills are sold with 8 degrees at the least (common practice): no size in which
// a drill as sold would be sent to the grinder, but small ones want more.
func TestAcceptedClearance(t *testing.T) {
	for size, want := range map[float64]struct{ general, hard float64 }{
		0.5: {40.0 / 3, 12}, 6.35: {28.0 / 3, 8}, 12: {8, 8}, 25: {7, 6},
	} {
		for relief, least := range map[handbook.Relief]float64{handbook.General: want.general, handbook.Hard: want.hard} {
			_, recommended := handbook.Clearance(size, relief)
			band := handbook.AcceptedClearance(size, recommended, &handbook.Material{Relief: relief})
			if got := band.Low * 180 / math.Pi; math.Abs(got-least) > 1e-9 || band.High < recommended.High || band.Source.Label != handbook.Own {
				t.Errorf("%g mm, %v: %g to %g, %v", size, relief, got, band.High, band.Source)
			}
		}
	}
}
