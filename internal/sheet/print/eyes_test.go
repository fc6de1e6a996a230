package print

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
	"evenlip/internal/testkit"
)

// judgedSheet is a sheet with one length held against its most.
func judgedSheet(value, spread, most float64, label handbook.Label) *sheet.Sheet {
	s := &sheet.Sheet{Command: "lips", Gauged: spread > 0}
	s.Open("Without a limit")
	s.Add(sheet.Figure{Key: "a_mm", Label: "a length", Value: 1, Kind: quantity.Length})
	s.Open("With a limit")
	f := sheet.Figure{Key: "b_mm", Label: "a length with a long name", Value: value, Kind: quantity.Length, Gauge: quantity.Indicator,
		Limit: &handbook.Band{Low: -most, High: most, Source: &handbook.Source{Label: label}}}
	if spread > 0 {
		f.Doubt = about(value, spread)
		f.Doubt.Unsure = math.Abs(value-most) < spread
	}
	s.Add(f)
	s.Open("With another")
	s.Add(sheet.Figure{Key: "c_mm", Label: "another", Value: 0, Kind: quantity.Length, Limit: &handbook.Band{High: 1, Source: &handbook.Source{Label: handbook.Shop}}})
	return s
}

// The heads of the columns stand over the first section that has a limit, and
// over none where there is no limit at all.
func TestHeadsStandWhereALimitDoes(t *testing.T) {
	out := written(t, Options{Form: Table}, judgedSheet(0.1, 0, 0.2, handbook.Shop))
	if strings.Count(out, "limit                    basis\n") != 1 || !strings.Contains(out, "\nWith a limit                        found limit                    basis\n") {
		t.Errorf("heads in the wrong place:\n%s", out)
	}
	s := &sheet.Sheet{Command: "version"}
	s.Open("Build")
	s.Add(sheet.Figure{Key: "a", Label: "version", Word: "1", Value: math.NaN(), Kind: quantity.Word})
	if out := written(t, Options{Form: Table}, s); strings.Contains(out, "found") || strings.Contains(out, "basis") {
		t.Errorf("heads over words:\n%s", out)
	}
}

// What is over a limit never looks like the limit, in a table, its working and
// in plain text; what is within is shown no finer than its gauge.
func TestOverNeverLooksLikeTheLimit(t *testing.T) {
	for value, want := range map[float64]string{
		0.1003:    "0.1003 mm max 0.1000 mm    over",
		-0.1003:   "-0.1003 mm max 0.1000 mm    over",
		0.104:     "0.104 mm max 0.100 mm     over",
		0.11:      "0.11 mm max 0.10 mm      over",
		0.0999:    "0.10 mm max 0.10 mm      within",
		0.1000001: "0.10 mm max 0.10 mm      over", // three decimals more do not tell
	} {
		if out := written(t, Options{Form: Table}, judgedSheet(value, 0, 0.1, handbook.Shop)); !strings.Contains(out, " "+want) {
			t.Errorf("%v: no %q in\n%s", value, want, out)
		}
	}
	if out := written(t, Options{Form: Plain}, judgedSheet(0.104, 0, 0.1, handbook.Shop)); !strings.Contains(out, "0.104\tmm\t-0.100\t0.100\tover") {
		t.Errorf("plain:\n%s", out)
	}
	for _, k := range []quantity.Kind{quantity.Force, quantity.Stress, quantity.Angle, quantity.Feed, quantity.Rpm} {
		f := sheet.Figure{Value: 1000.4, Kind: k, Limit: &handbook.Band{High: 1000}}
		if got := number(&f, metric); got == apart(&f, metric).Number(k, f.Gauge, 1000) {
			t.Errorf("kind %v: %s over the same", k, got)
		}
	}
}

// With gauges named the basis is still there: a shop's own limit says so in
// every state, and no line is wider than the table.
func TestBasisBesideUncertainty(t *testing.T) {
	for state, value := range map[string]float64{"within": 0.05, "over": 0.2, "cannot tell": 0.1} {
		for _, width := range []int{60, 80, 84, 96, 120} {
			out := written(t, Options{Form: Table, Width: width}, judgedSheet(value, 0.01, 0.1, handbook.Shop))
			for _, line := range strings.Split(out, "\n") {
				if style.Width(line) > width {
					t.Errorf("%d cells at %d: %q", style.Width(line), width, line)
				}
				if strings.Contains(line, state) && !strings.Contains(line, "shop") {
					t.Errorf("no basis at %d: %q", width, line)
				}
			}
		}
	}
	for _, width := range []int{80, 84, 120} {
		out := written(t, Options{Form: Table, Width: width}, judgedSheet(0.1, 0.01, 0.1, handbook.Practice))
		if !strings.Contains(out, "cannot tell practice\n") || !strings.Contains(out, "within      shop\n") {
			t.Errorf("%d: not beside it, or not in a column:\n%s", width, out)
		}
	}
}

// Where the other columns leave no cell to spare, the basis stands underneath.
func TestBasisUnderneath(t *testing.T) {
	s := judgedSheet(0.1, 0.01, 0.1, handbook.Practice)
	f := s.Lookup("b_mm")
	f.Label, f.Value, f.Limit.Low, f.Limit.High = "as long as a label may be.", 10000, 0, 10000
	f.Doubt.Low, f.Doubt.High = 9999.989, 10000.011
	for _, width := range []int{80, 81, 83, 84} {
		out := written(t, Options{Form: Table, Width: width}, s)
		for _, line := range strings.Split(out, "\n") {
			if style.Width(line) > width {
				t.Errorf("%d cells at %d: %q", style.Width(line), width, line)
			}
		}
		if beside := strings.Contains(out, "cannot tell practice\n"); !strings.Contains(out, "practice\n") || beside != (width >= 83) {
			t.Errorf("%d:\n%s", width, out)
		}
	}
}

// The answer stands last but for the cautions, also after a long working.
func TestAnswerStandsLast(t *testing.T) {
	s := evilSheet()
	s.InShort("take {} off", quantity.MM(0.41))
	out := written(t, Options{Form: Table, Explain: true}, s)
	working, verdict, answer, safety := strings.Index(out, "How each figure is got"), strings.Index(out, "\nVerdict: REGRIND"), strings.Index(out, "\nIn short: take 0.41 mm off\n\nsafety"), strings.Index(out, "\nsafety")
	if working < 0 || verdict < working || answer < verdict || safety < answer {
		t.Errorf("working at %d, verdict at %d, answer at %d, safety at %d in\n%s", working, verdict, answer, safety, out)
	}
	for _, form := range []Form{Plain, CSV, JSON} {
		if out := written(t, Options{Form: form}, s); strings.Contains(out, "In short") {
			t.Errorf("%s has the sentence too", form)
		}
	}
}

// A spindle speed to set is rounded for people alone: not its limit, not the end
// of its working, not what scripts read.
func TestSpindleSpeedIsRoundedForPeople(t *testing.T) {
	s := &sheet.Sheet{Command: "speed", Explaining: true}
	s.Open("Speed")
	s.Add(sheet.Figure{Key: "rpm", Label: "speed", Value: 10395.09, Kind: quantity.Rpm, Gauge: quantity.Setting, Limit: &handbook.Band{Low: 0, High: 11088}, Work: "10395.09", Source: "by hand"})
	s.InShort("{}", quantity.Arg{Kind: quantity.Rpm, Gauge: quantity.Setting, Value: 10395.09})
	for form, texts := range map[Form][]string{
		Table: {"10400 rpm max 11088 rpm", "= 10395 rpm", "In short: 10400 rpm"}, Plain: {"speed\t10395\trpm\t0\t11088\t"}, CSV: {"10395.09,"}, JSON: {`"rpm": 10395.09`, `"result": "10395 rpm"`},
	} {
		out := written(t, Options{Form: form, Explain: true}, s)
		for _, text := range texts {
			if !strings.Contains(out, text) {
				t.Errorf("%s has no %q:\n%s", form, text, out)
			}
		}
	}
}

// A list for who checks the method is in a table with the working alone, and
// always in what scripts read.
func TestListsOfTheMethod(t *testing.T) {
	s := evilSheet()
	s.Grids[4].Explained = true
	for form, shown := range map[Form][2]bool{Table: {false, true}, Plain: {true, true}, JSON: {true, true}} {
		for i, explain := range []bool{false, true} {
			out := written(t, Options{Form: form, Explain: explain}, s)
			if strings.Contains(out, "ground") != shown[i] {
				t.Errorf("%s, explained %v:\n%s", form, explain, out)
			}
		}
	}
}

// Steps on the way are in the working alone, with the digits that are taken up.
func TestStepsOnTheWay(t *testing.T) {
	const height = 3.60874452
	plan := sheet.Group[float64]{Title: "Plan", Figures: []sheet.Def[float64]{
		{Letter: "h", Label: "as measured", Kind: quantity.Length, Work: sheet.AsRead, Value: func(v *float64) float64 { return *v }},
		{Letter: "H", Label: "a height", Kind: quantity.Length, Work: "h * 1", Value: func(v *float64) float64 { return *v }},
		{Key: "off_mm", Label: "off", Kind: quantity.Length, Gauge: quantity.Caliper, Work: "H - 3.2", Value: func(v *float64) float64 { return *v - 3.2 }},
	}}
	s, v := &sheet.Sheet{Command: "regrind", Explaining: true}, height
	sheet.Put(s, &v, nil, &plan)
	for form, once := range map[Form]string{Table: "= 3.6087445 mm\n", JSON: `"result": "3.6087445 mm"`} {
		out := written(t, Options{Form: form, Explain: true}, s)
		if strings.Count(out, once) != 1 || !strings.Contains(out, "a height") && form == Table {
			t.Errorf("%s:\n%s", form, out)
		}
	}
	for _, form := range []Form{Table, Plain, CSV, JSON} {
		if out := written(t, Options{Form: form}, s); strings.Contains(out, "height") || strings.Contains(out, "3.6087") {
			t.Errorf("%s shows the step:\n%s", form, out)
		}
	}
}

// In a locale without UTF-8 a table spells its signs, and sums stay such as a
// calculator takes.
func TestTableInASCII(t *testing.T) {
	s := doubted()
	s.Explaining = true
	s.Add(sheet.Figure{Key: "a_deg", Label: "to 90.0°", Value: math.Pi / 3, Doubt: about(math.Pi/3, 0.01), Kind: quantity.Angle, Limit: &handbook.Band{Low: 1, High: 1.1}, Work: "2 * k", Source: "by hand"})
	s.Add(sheet.Figure{Key: "k_deg", Letter: "k", Label: "half of it", Value: math.Pi / 6, Kind: quantity.Angle})
	s.Grids[0].Note = "over 30° of turn"
	s.Find("a", sheet.Note, "at {}", quantity.Rad(1))
	out := written(t, Options{Form: Table, ASCII: true, Explain: true}, s)
	if len(out) != utf8.RuneCountInString(out) {
		t.Errorf("other letters:\n%s", out)
	}
	for _, want := range []string{"to 90.0 deg", "60.0 deg +-0.6", "57.3 to 63.0 deg within", "2 * 30 = 60.0 deg\n", "30 deg of turn", "at 57.3 deg"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
	testkit.Property(t, "letters for signs keep a table to its width", func(t *rapid.T) {
		width := rapid.IntRange(60, 120).Draw(t, "width")
		var b strings.Builder
		if err := Write(&b, []Job{{Sheet: s}}, Options{Form: Table, ASCII: true, Explain: true, Width: width}); err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(b.String(), "\n") {
			if len(line) > width {
				t.Fatalf("%d cells at %d: %q", len(line), width, line)
			}
		}
	})
}
