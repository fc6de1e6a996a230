package sheet_test

import (
	"math"
	"strings"
	"testing"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit/pocket"
)

// box is a result with a few figures that follow from one another.
type box struct {
	side, angle float64
	held        [2]sheet.Held
}

var boxFigures = sheet.Group[box]{Title: "Box", Figures: []sheet.Def[box]{
	{Letter: "s", Label: "side", Kind: quantity.Length, Gauge: quantity.Caliper, Work: sheet.AsRead, Of: "side", Value: func(b *box) float64 { return b.side }},
	{Letter: "k'", Label: "angle", Kind: quantity.Angle, Work: sheet.AsRead, Of: "angle", Value: func(b *box) float64 { return b.angle }},
	{Letter: "h", Label: "height", Kind: quantity.Length, Work: "s * sin(k') / 2.5e1", Value: func(b *box) float64 { return b.side * math.Sin(b.angle) / 25 }},
	{Key: "rise_mm", Letter: "s2", Label: "rise", Kind: quantity.Length, Limit: 1, Work: "-2 * (h - s)", Source: "by hand",
		Value: func(b *box) float64 { return -2 * (b.side*math.Sin(b.angle)/25 - b.side) }},
	{Key: "part", Label: "part", Kind: quantity.Share, Work: "min(1, max(0, s2 / s / 4))",
		Value: func(b *box) float64 { return -2 * (math.Sin(b.angle)/25 - 1) / 4 }},
	{Key: "shape", Label: "shape", Kind: quantity.Word, Word: func(*box) string { return "square" }},
}}

func boxSheet(b box) *sheet.Sheet {
	s := sheet.New("box", true)
	b.held[1] = sheet.Held{Value: 0, Band: handbook.Band{Low: 0, High: 100}}
	sheet.Put(s, &b, b.held[:], &boxFigures)
	return s
}

// The formula, the sum with numbers and the letters all follow from one string.
func TestFormulaAndSum(t *testing.T) {
	s := boxSheet(box{side: 25.4, angle: math.Pi / 6})
	rise := s.Lookup("rise_mm")
	if got, want := s.Formula(rise), "s2 = -2 * (h - s)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	metric, inch := quantity.Format{System: quantity.Metric}, quantity.Format{System: quantity.Inch}
	if got, want := s.Sum(rise, metric), "-2 * (0.508 - 25.4)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := s.Sum(rise, inch), "-2 * (0.02 - 1)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	var steps []string
	s.Worked(func(f *sheet.Figure, step bool) {
		steps = append(steps, f.Letter+f.Key)
		if step != (f.Key == "") {
			t.Errorf("%s%s is a step: %v", f.Letter, f.Key, step)
		}
	})
	if got, want := strings.Join(steps, " "), "h s2rise_mm part"; got != want {
		t.Errorf("worked %q, want %q", got, want)
	}
	if h := s.Given(rise)[0]; s.Sum(h, metric) != "25.4 * sin(30°) / 2.5e1" || len(s.Given(rise)) != 2 {
		t.Errorf("%q of %d letters", s.Sum(h, metric), len(s.Given(rise)))
	}
	if s.Lookup("shape").Word != "square" || rise.Source != "by hand" || s.Lookup("part").Source != sheet.Geometry {
		t.Error("a word or a source is lost")
	}
	pocket.Worked(t, s)
}

// What is missing are the readings at the roots of the formula, each once.
func TestMissing(t *testing.T) {
	nan := math.NaN()
	for want, b := range map[string]box{"side": {side: nan, angle: 1}, "angle": {side: 1, angle: nan}, "side and angle": {side: nan, angle: nan}, "": {side: 1, angle: 1}} {
		s := boxSheet(b)
		if got := s.Missing(s.Lookup("rise_mm")); got != want {
			t.Errorf("missing %q, want %q", got, want)
		}
	}
}

// On a sheet that is only drawn there are numbers and states, and no words.
func TestDrawing(t *testing.T) {
	s := sheet.New("box", false)
	s.Drawing = true
	b := box{side: 1, angle: 1}
	sheet.Put(s, &b, b.held[:], &boxFigures)
	f := s.Lookup("rise_mm")
	if math.IsNaN(f.Value) || f.Label != "" || f.Work != "" {
		t.Errorf("%+v", f)
	}
}

// A formula that is wrong, and a letter that two figures have, are found out.
func TestWorkedFindsAWrongFormula(t *testing.T) {
	for _, wrong := range []string{"2 * (h - s)", "-2 * (h - nobody)", "-2 * (h - s", "-2.001 * (h - s)"} {
		figures := append([]sheet.Def[box](nil), boxFigures.Figures...)
		figures[3].Work = wrong
		if !complains(figures) {
			t.Errorf("%q passes", wrong)
		}
	}
	twice := append([]sheet.Def[box](nil), boxFigures.Figures...)
	twice[2].Letter = "s"
	if !complains(twice) {
		t.Error("two figures of one letter pass")
	}
}

func complains(figures []sheet.Def[box]) bool {
	s := sheet.New("box", true)
	b := box{side: 2, angle: 1}
	sheet.Put(s, &b, b.held[:], &sheet.Group[box]{Figures: figures})
	var c complaints
	pocket.Worked(&c, s)
	return c > 0
}

type complaints int

func (c *complaints) Helper()               {}
func (c *complaints) Errorf(string, ...any) { *c++ }

// The ends of a limit are within, and so is what arithmetic may be off by.
func TestHeld(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		v, low, high float64
		want         sheet.State
	}{
		{1, 1, 2, sheet.Within}, {2, 1, 2, sheet.Within}, {1 - 1e-12, 1, 2, sheet.Within}, {2 + 1e-12, 1, 2, sheet.Within},
		{0.999999, 1, 2, sheet.Under}, {2.000001, 1, 2, sheet.Over}, {0, 0, inf, sheet.Within}, {-1e-300, 0, inf, sheet.Under}, {5, -inf, 4, sheet.Over},
		{nan, 1, 2, sheet.Unjudged}, {1, nan, nan, sheet.Unjudged},
	} {
		h := sheet.Held{Value: c.v, Band: handbook.Band{Low: c.low, High: c.high}}
		if got := h.State(); got != c.want {
			t.Errorf("%v in %v to %v: %q, want %q", c.v, c.low, c.high, got, c.want)
		}
	}
	for _, c := range []struct {
		state             sheet.State
		either, low, high bool
	}{{sheet.Under, true, true, false}, {sheet.Over, true, false, true}, {sheet.Within, false, false, false}, {sheet.Unjudged, false, false, false}} {
		if c.state.On(sheet.Either) != c.either || c.state.On(sheet.Low) != c.low || c.state.On(sheet.High) != c.high {
			t.Errorf("%q is outside on the wrong side", c.state)
		}
	}
}

// A figure that was read is worked as read, whatever formula it has else; its label
// and what it stands under may depend on the result.
func TestReadFiguresAndLabels(t *testing.T) {
	g := sheet.Group[box]{Title: "Box", Quiet: true, Figures: []sheet.Def[box]{
		{Key: "side_mm", Kind: quantity.Length, Work: "2 * s", Source: "by hand", Value: func(b *box) float64 { return b.side },
			Read: func(b *box) bool { return b.side > 1 }, LabelOf: func(b *box) string { return map[bool]string{true: "long", false: "short"}[b.side > 1] }},
	}}
	for side, want := range map[float64]string{2: "long as read as read", 1: "short 2 * s by hand"} {
		s := sheet.New("box", true)
		sheet.Put(s, &box{side: side}, nil, &g)
		f := s.Lookup("side_mm")
		if got := f.Label + " " + f.Work + " " + f.Source; got != want || !s.Sections[0].Quiet {
			t.Errorf("%g: %q, want %q", side, got, want)
		}
	}
}
