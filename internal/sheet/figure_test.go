package sheet_test

import (
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
		value float64
		limit *handbook.Band
		want  sheet.State
	}{
		{1, nil, sheet.Unjudged},
		{nan, band(0, 1), sheet.Unjudged},
		{1, band(1, 2), sheet.Within},
		{2, band(1, 2), sheet.Within},
		{1.5, band(1, 2), sheet.Within},
		{0.999999, band(1, 2), sheet.Under},
		{2.000001, band(1, 2), sheet.Over},
		{1 - 1e-12, band(1, 2), sheet.Within},
		{2 + 1e-12, band(1, 2), sheet.Within},
		{-0.05, band(-0.05, 0.05), sheet.Within},
		{-0.051, band(-0.05, 0.05), sheet.Under},
		{0, band(0, inf), sheet.Within},
		{-1e-6, band(0, inf), sheet.Under},
		{1e9, band(0, inf), sheet.Within},
	} {
		f := sheet.Figure{Value: c.value, Limit: c.limit}
		if got := f.State(); got != c.want {
			t.Errorf("%v in %v: %q, want %q", c.value, c.limit, got, c.want)
		}
		f.Doubt = &sheet.Doubt{}
		if got := f.State(); got != c.want {
			t.Errorf("%v in %v, and no doubt about it: %q, want %q", c.value, c.limit, got, c.want)
		}
		f.Doubt.Unsure = true
		if got := f.State(); (got == sheet.Unsure) != (c.want != sheet.Unjudged) {
			t.Errorf("%v in %v, in doubt: %q", c.value, c.limit, got)
		}
	}
	if f := (sheet.Figure{Word: "lip 1", Limit: band(1, 2)}); f.State() != sheet.Unjudged {
		t.Error("a word is held against a limit")
	}
}

func TestStateIsThatOfTheLimit(t *testing.T) {
	testkit.Property(t, "a figure is outside exactly where its limit does not hold it", func(t *rapid.T) {
		low := rapid.Float64Range(-10, 10).Draw(t, "low")
		f := sheet.Figure{Value: rapid.Float64Range(-20, 20).Draw(t, "value"), Limit: band(low, low+rapid.Float64Range(0, 10).Draw(t, "width"))}
		if got := f.State(); got.Outside() == f.Limit.Holds(f.Value) {
			t.Fatalf("%v is %q of %v", f.Value, got, *f.Limit)
		}
	})
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
	s.Add(sheet.Figure{Key: "a", Value: 1})
	s.Open("Second")
	s.Add(sheet.Figure{Key: "b", Value: nan})
	s.Add(sheet.Figure{Key: "c", Word: "even", Value: nan})
	var keys string
	s.Each(func(f *sheet.Figure) { keys += f.Key })
	if keys != "abc" || len(s.Sections) != 2 || s.Sections[0].Title != "" || s.Sections[1].Title != "Second" {
		t.Errorf("%q %+v", keys, s.Sections)
	}
	if f := s.Lookup("b"); f == nil || f.Known() {
		t.Errorf("b is %+v", f)
	}
	if !s.Lookup("c").Known() || !s.Lookup("a").Known() || s.Lookup("d") != nil {
		t.Error("looked up wrong")
	}
	s.Lookup("a").Value = 0.5
	if s.Sections[0].Figures[0].Value != 0.5 {
		t.Error("Lookup gives a copy")
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
		"all within": {func(*sheet.Sheet) {}, false},
		"one over":   {func(s *sheet.Sheet) { s.Add(sheet.Figure{Value: 3, Limit: band(1, 2)}) }, true},
		"one under":  {func(s *sheet.Sheet) { s.Add(sheet.Figure{Value: 0, Limit: band(1, 2)}) }, true},
		"one in doubt": {func(s *sheet.Sheet) {
			s.Add(sheet.Figure{Value: 2, Doubt: &sheet.Doubt{Unsure: true}, Limit: band(1, 2)})
		}, true},
		"not fit, no verdict": {func(s *sheet.Sheet) { s.Unfit = true }, true},
		"one not known":       {func(s *sheet.Sheet) { s.Add(sheet.Figure{Value: nan, Limit: band(1, 2)}) }, false},
		"a finding: stop":     {func(s *sheet.Sheet) { s.Find("halt", sheet.Stop, "stop") }, true},
		"verdict fit":         {func(s *sheet.Sheet) { s.Verdict = &sheet.Verdict{Word: "fit"} }, false},
		"verdict regrind":     {func(s *sheet.Sheet) { s.Verdict = &sheet.Verdict{Word: "regrind"} }, true},
		"no verdict as yet":   {func(s *sheet.Sheet) { s.Verdict = &sheet.Verdict{} }, true},
	} {
		if got := answer(c.change).Outside(); got != c.want {
			t.Errorf("%s: outside %v", name, got)
		}
	}
}
