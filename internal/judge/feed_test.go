package judge_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command"
	"evenlip/internal/command/point"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
	"evenlip/internal/testkit/pocket"
)

// US Navy course Machinery Repairman (in print): .004 to .007 in/rev from 1/4 to
// 1/2 in, the lower end for hard material.
func TestUsualFeed(t *testing.T) {
	for material, want := range map[string]float64{"steel-200": 0.0055, "stainless-316": 0.004, "aluminium": 0.007, "": 0.0055} {
		m, _ := handbook.FindMaterial(material)
		if got := judge.UsualFeed(0.375*25.4, m) / 25.4; math.Abs(got-want) > 1e-12 {
			t.Errorf("%q: %g in/rev at 3/8 in, not %g", material, got, want)
		}
	}
	if got := judge.UsualFeed(math.NaN(), nil); !math.IsNaN(got) {
		t.Errorf("%g mm/rev on no drill", got)
	}
}

// The arithmetic that is shown gives the feed that is taken.
func TestWorkFeed(t *testing.T) {
	testkit.Property(t, "the arithmetic shown gives the feed taken", func(t *rapid.T) {
		d, cut := rapid.Float64Range(0.2, 100).Draw(t, "D"), rapid.Float64Range(0, 0.4).Draw(t, "cut")
		m, _ := handbook.FindMaterial(rapid.SampledFrom([]string{"steel-200", "stainless-316", "aluminium"}).Draw(t, "material"))
		s := &sheet.Sheet{Explaining: true}
		f := s.Add(sheet.Figure{Value: judge.UsualFeed(d, m) * (1 - cut), Kind: quantity.Feed})
		judge.WorkFeed(s, d, m, cut)
		sum := f.Working.Numbers.Format
		for _, arg := range f.Working.Numbers.Args {
			sum = strings.Replace(sum, "{}", strconv.FormatFloat(arg.Value, 'f', -1, 64), 1)
		}
		if got, err := pocket.Evaluate(sum); err != nil || math.Abs(got-f.Value) > 1e-9 {
			t.Fatalf("%s gives %g (%v), taken is %g", sum, got, err, f.Value)
		}
	})
	s := &sheet.Sheet{Explaining: true}
	f := s.Add(sheet.Figure{Value: 1, Kind: quantity.Feed})
	if judge.WorkFeed(s, math.NaN(), nil, 0); f.Working != nil {
		t.Error("the feed of no drill is worked out")
	}
}

// A feed that nobody read is told wherever a figure hangs on it, and nowhere
// else.
func TestAFeedTakenIsTold(t *testing.T) {
	web, lips := "size 12mm; web 1.8mm; chisel-angle 125", "size 12mm; lip-angle 60,58"
	for line, told := range map[string]bool{
		"web: " + web + "; remove 20mm":             true,
		"web: " + web + "; remove 20mm; feed 0.2mm": false,
		"web: " + web:                                   false,
		"lips: " + lips + "; lip-height 0.06mm":         true,
		"lips: " + lips + "; lip-height 0.06mm; feed 1": false,
		"lips: " + lips:                                 false,
	} {
		name, read, _ := strings.Cut(line, ": ")
		c := map[string]command.Command{"web": &point.Web, "lips": &point.Lips}[name]
		if drilltest.Found(c.Sheet(possible(t, of(read)), false), "feed-assumed") != told {
			t.Errorf("%s: told is not %t", line, told)
		}
	}
	all := point.Inspect.Sheet(possible(t, whole.With(readings{drill.Feed: ""})), false)
	if n := len(slices.DeleteFunc(all.Findings, func(f sheet.Finding) bool { return f.Code != "feed-assumed" })); n != 1 {
		t.Errorf("inspect tells it %d times", n)
	}
}
