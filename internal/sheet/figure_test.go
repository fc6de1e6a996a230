package sheet_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
)

var nan = math.NaN()

func band(low, high float64) *handbook.Band { return &handbook.Band{Low: low, High: high} }

// A limit's ends are within; beside them, by more than a last digit, is not.
func TestState(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		value, spread float64
		limit         *handbook.Band
		want          sheet.State
	}{
		{1, 0, nil, sheet.Unjudged},
		{nan, 0, band(0, 1), sheet.Unjudged},
		{1, 0, band(1, 2), sheet.Within},
		{2, 0, band(1, 2), sheet.Within},
		{1.5, 0, band(1, 2), sheet.Within},
		{0.999999, 0, band(1, 2), sheet.Under},
		{2.000001, 0, band(1, 2), sheet.Over},
		{1 - 1e-12, 0, band(1, 2), sheet.Within},
		{2 + 1e-12, 0, band(1, 2), sheet.Within},
		{-0.05, 0, band(-0.05, 0.05), sheet.Within},
		{-0.051, 0, band(-0.05, 0.05), sheet.Under},
		{0, 0, band(0, inf), sheet.Within},
		{-1e-6, 0, band(0, inf), sheet.Under},
		{1e9, 0, band(0, inf), sheet.Within},
		// guard bands (ISO 14253-1): U = 0.1
		{1.1, 0.1, band(1, 2), sheet.Within},
		{1.09, 0.1, band(1, 2), sheet.Unsure},
		{1.0, 0.1, band(1, 2), sheet.Unsure},
		{0.91, 0.1, band(1, 2), sheet.Unsure},
		{0.89, 0.1, band(1, 2), sheet.Under},
		{1.9, 0.1, band(1, 2), sheet.Within},
		{1.91, 0.1, band(1, 2), sheet.Unsure},
		{2.09, 0.1, band(1, 2), sheet.Unsure},
		{2.11, 0.1, band(1, 2), sheet.Over},
		{1.5, 0.6, band(1, 2), sheet.Unsure},
	} {
		f := sheet.Figure{Value: c.value, Spread: c.spread, Limit: c.limit}
		if got := f.State(); got != c.want {
			t.Errorf("%v ± %v in %v: %q, want %q", c.value, c.spread, c.limit, got, c.want)
		}
	}
	if f := (sheet.Figure{Word: "lip 1", Limit: band(1, 2)}); f.State() != sheet.Unjudged {
		t.Error("a word is held against a limit")
	}
}

// A wider spread never makes a figure surer, and the states exclude one another.
func TestWiderSpreadIsNeverSurer(t *testing.T) {
	testkit.Property(t, "a wider spread never makes a figure surer", func(t *rapid.T) {
		low := rapid.Float64Range(-10, 10).Draw(t, "low")
		f := sheet.Figure{
			Value: rapid.Float64Range(-20, 20).Draw(t, "value"), Spread: rapid.Float64Range(0, 5).Draw(t, "spread"),
			Limit: band(low, low+rapid.Float64Range(0, 10).Draw(t, "width")),
		}
		wider := f
		wider.Spread += rapid.Float64Range(0, 5).Draw(t, "more")
		a, b := f.State(), wider.State()
		if b != a && b != sheet.Unsure {
			t.Fatalf("%q became %q", a, b)
		}
		if a.Outside() && f.Limit.Holds(f.Value) {
			t.Fatalf("%v is %q of %v", f.Value, a, *f.Limit)
		}
	})
}

// A limit that follows from readings is judged with what is uncertain of the value
// less the limit: less than of the value where the two move together, more where
// one moves and the other does not. The reading to take finer is that of the end in
// doubt.
func TestStateOfAMovingLimit(t *testing.T) {
	for _, c := range []struct {
		value, spread, low, high float64
		want                     sheet.State
		finer                    string
	}{
		{1.05, 1, 0.01, 0.01, sheet.Within, ""},
		{1.05, 0, 0.1, 0, sheet.Unsure, "of low"},
		{1.95, 0, 0, 0.1, sheet.Unsure, "of high"},
		{2.05, 0, 5, 0.1, sheet.Unsure, "of low"},
		{2.05, 0, 0, 0.1, sheet.Unsure, "of high"},
		{2.05, 1, 1, 0.01, sheet.Over, ""},
		{0.95, 1, 0.01, 1, sheet.Under, ""},
	} {
		f := sheet.Figure{Value: c.value, Spread: c.spread, Mostly: "of the value", Limit: band(1, 2),
			Gaps: &sheet.Gaps{Low: sheet.Doubt{Spread: c.low, Mostly: "of low"}, High: sheet.Doubt{Spread: c.high, Mostly: "of high"}}}
		if got := f.State(); got != c.want || c.finer != "" && f.Finer() != c.finer {
			t.Errorf("%+v: %s, %s", c, got, f.Finer())
		}
	}
	fixed := sheet.Figure{Value: 1.95, Spread: 0.1, Mostly: "of the value", Limit: band(1, 2)}
	if fixed.State() != sheet.Unsure || fixed.Finer() != "of the value" {
		t.Errorf("%s, %s", fixed.State(), fixed.Finer())
	}
}

func TestStateWords(t *testing.T) {
	for s, want := range map[sheet.State]string{sheet.Unjudged: "", sheet.Within: "within", sheet.Under: "under", sheet.Over: "over", sheet.Unsure: "cannot tell"} {
		if s.String() != want || s.Outside() != (want == "under" || want == "over") {
			t.Errorf("%q, outside %v; want %q", s, s.Outside(), want)
		}
	}
	for s, want := range map[sheet.Severity]string{sheet.Note: "note", sheet.Warn: "warn", sheet.Stop: "stop"} {
		if s.String() != want {
			t.Errorf("%q, want %q", s, want)
		}
	}
}

func TestArguments(t *testing.T) {
	for _, c := range []struct{ got, want quantity.Arg }{
		{quantity.MM(1), quantity.Arg{Kind: quantity.Length, Gauge: quantity.Caliper, Value: 1}},
		{quantity.Rad(2), quantity.Arg{Kind: quantity.Angle, Gauge: quantity.Protractor, Value: 2}},
		{quantity.Num(3), quantity.Arg{Kind: quantity.Number, Value: 3}},
		{quantity.Of(quantity.Feed, 4), quantity.Arg{Kind: quantity.Feed, Value: 4}},
		{quantity.Of(quantity.Share, 0.5), quantity.Arg{Kind: quantity.Share, Value: 0.5}},
		{quantity.Say("lip 1"), quantity.Arg{Kind: quantity.Word, Word: "lip 1"}},
		{quantity.Of(quantity.Taper, 0.016), quantity.Arg{Kind: quantity.Taper, Value: 0.016}},
	} {
		if c.got != c.want {
			t.Errorf("%+v, want %+v", c.got, c.want)
		}
	}
	if text := quantity.Sayf("{} of {}", quantity.Num(1), quantity.Num(2)); text.Format != "{} of {}" || len(text.Args) != 2 {
		t.Errorf("%+v", text)
	}
	if c := sheet.V(2); c.Value != 2 || c.Word != "" {
		t.Errorf("%+v", c)
	}
	if c := sheet.W("-"); !math.IsNaN(c.Value) || c.Word != "-" {
		t.Errorf("%+v", c)
	}
}

func TestNeeds(t *testing.T) {
	size, web := sheet.Need{Reading: "size", Value: nan}, sheet.Need{Reading: "web", Value: nan}
	there := sheet.Need{Reading: "feed", Value: 0.2}
	for want, needs := range map[string][]sheet.Need{"": {there}, "size": {size, there}, "size and web": {size, there, web}} {
		if got := sheet.Wanted(needs...); got != want {
			t.Errorf("wanted %q, want %q", got, want)
		}
	}
	if !sheet.Known() || !sheet.Known(1, 0, math.Inf(1)) || sheet.Known(1, nan) || sheet.Known(nan, 1) {
		t.Error("what is known and what is not")
	}
}

// Figures go into the section opened last; before one is opened, into one
// without a title.
func TestSections(t *testing.T) {
	s := &sheet.Sheet{}
	s.Add(sheet.Figure{Key: "a", Value: 1}).Label = "changed"
	s.Open("Second")
	s.Add(sheet.Figure{Key: "b", Value: nan})
	s.Add(sheet.Figure{Key: "c", Word: "even", Value: nan})
	var keys string
	s.Each(func(f *sheet.Figure) { keys += f.Key })
	if keys != "abc" || len(s.Sections) != 2 || s.Sections[0].Title != "" || s.Sections[1].Title != "Second" || s.Sections[0].Figures[0].Label != "changed" {
		t.Errorf("%q %+v", keys, s.Sections)
	}
	if f := s.Lookup("b"); f == nil || f.Known() {
		t.Errorf("b is %+v", f)
	}
	if !s.Lookup("c").Known() || !s.Lookup("a").Known() || s.Lookup("d") != nil {
		t.Error("looked up wrong")
	}
	s.Lookup("a").Spread = 0.5
	if s.Sections[0].Figures[0].Spread != 0.5 {
		t.Error("Lookup gives a copy")
	}
}

// Steps on the way are met by who shows workings, and by nobody else.
func TestAside(t *testing.T) {
	s := &sheet.Sheet{}
	s.Open("Heights")
	s.Sections[0].Aside = true
	s.Add(sheet.Figure{Key: "step", Value: 3, Limit: band(1, 2)})
	s.Open("Plan")
	s.Add(sheet.Figure{Key: "off", Value: 1, Limit: band(1, 2)})
	var each, worked string
	s.Each(func(f *sheet.Figure) { each += f.Key })
	s.EachWorked(func(f *sheet.Figure, aside bool) { worked += fmt.Sprint(f.Key, aside, " ") })
	if each != "off" || worked != "steptrue offfalse " || s.Outside() || s.Lookup("step") != nil {
		t.Errorf("%q, %q, outside %v", each, worked, s.Outside())
	}
}

// Working is left only where it was asked for and the figure is known.
func TestWork(t *testing.T) {
	for _, explaining := range []bool{false, true} {
		s := &sheet.Sheet{Explaining: explaining}
		s.Add(sheet.Figure{Key: "known", Value: 1})
		s.Work("a source", "f = a", "{}", quantity.Num(1))
		s.Add(sheet.Figure{Key: "unknown", Value: nan})
		s.Work("a source", "f = a", "{}", quantity.Num(nan))
		if got := s.Lookup("known").Working != nil; got != explaining {
			t.Errorf("explaining %v: working %v", explaining, got)
		}
		if s.Lookup("unknown").Working != nil {
			t.Error("working of what is not known")
		}
	}
	s := &sheet.Sheet{Explaining: true}
	s.Add(sheet.Figure{Value: 1})
	s.Work("a source", "f = a", "{}", quantity.Num(1))
	if w := s.Sections[0].Figures[0].Working; w.Source != "a source" || w.Formula != "f = a" || w.Numbers.Format != "{}" || w.Numbers.Args[0].Value != 1 {
		t.Errorf("%+v", w)
	}
}

// --check: with a verdict only fit passes; without one any figure outside its
// limit, or that the gauge cannot tell, and any finding that says stop fails.
func TestOutside(t *testing.T) {
	answer := func(change func(*sheet.Sheet)) *sheet.Sheet {
		s := &sheet.Sheet{}
		s.Add(sheet.Figure{Value: 1.5, Limit: band(1, 2)})
		s.Find("a-remark", sheet.Warn, "mind {}", quantity.Num(1))
		change(s)
		return s
	}
	for name, c := range map[string]struct {
		change func(*sheet.Sheet)
		want   bool
	}{
		"all within":        {func(*sheet.Sheet) {}, false},
		"one over":          {func(s *sheet.Sheet) { s.Add(sheet.Figure{Value: 3, Limit: band(1, 2)}) }, true},
		"one under":         {func(s *sheet.Sheet) { s.Add(sheet.Figure{Value: 0, Limit: band(1, 2)}) }, true},
		"one in doubt":      {func(s *sheet.Sheet) { s.Add(sheet.Figure{Value: 2, Spread: 0.1, Limit: band(1, 2)}) }, true},
		"one not known":     {func(s *sheet.Sheet) { s.Add(sheet.Figure{Value: nan, Limit: band(1, 2)}) }, false},
		"a finding: stop":   {func(s *sheet.Sheet) { s.Find("halt", sheet.Stop, "stop") }, true},
		"verdict fit":       {func(s *sheet.Sheet) { s.Verdict = &sheet.Verdict{Word: "fit"} }, false},
		"verdict regrind":   {func(s *sheet.Sheet) { s.Verdict = &sheet.Verdict{Word: "regrind"} }, true},
		"no verdict as yet": {func(s *sheet.Sheet) { s.Verdict = &sheet.Verdict{} }, true},
	} {
		if got := answer(c.change).Outside(); got != c.want {
			t.Errorf("%s: outside %v", name, got)
		}
	}
}

// Every number is met once, and a row is another one when one of its words is.
func TestNumbers(t *testing.T) {
	list := func(thin string) *sheet.Sheet {
		s := &sheet.Sheet{}
		s.Add(sheet.Figure{Key: "web_mm", Value: 2, Limit: band(math.Inf(-1), 3)})
		s.Add(sheet.Figure{Key: "do", Word: "thin"})
		s.Grids = []sheet.Grid{{Key: "schedule", Columns: []sheet.Column{{Key: "grind"}, {Key: "thin", Kind: quantity.Word}, {Key: "web"}},
			Rows: [][]sheet.Cell{{sheet.V(1), sheet.W("no"), sheet.V(2)}, {sheet.V(2), sheet.W(thin), sheet.V(3)}}},
			{Key: "states", Columns: []sheet.Column{{Key: "state", Kind: quantity.Word}, {Key: "web"}}, Rows: [][]sheet.Cell{{sheet.W("now"), sheet.V(4)}}}}
		return s
	}
	places := func(s *sheet.Sheet) map[sheet.Place]float64 {
		out := map[sheet.Place]float64{}
		s.Numbers(func(n sheet.Number) { out[n.Place] = n.Value; *n.Spread = n.Value / 10 })
		return out
	}
	s := list("no")
	a, b := places(s), places(list("yes"))
	if len(a) != 7 || len(b) != 7 {
		t.Errorf("%v\n%v", a, b)
	}
	common := 0
	for p := range a {
		if _, ok := b[p]; ok {
			common++
		}
	}
	if common != 5 { // all but the two of the row whose word has changed
		t.Errorf("%d numbers alike in\n%v\n%v", common, a, b)
	}
	if s.Lookup("web_mm").Spread != 0.2 || s.Grids[0].Rows[1][2].Spread != 0.3 || s.Grids[1].Rows[0][1].Spread != 0.4 || s.Lookup("web_mm").Gaps.High.Spread != -0.1 {
		t.Errorf("spreads went astray: %+v", s)
	}
}
