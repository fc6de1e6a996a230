package judge_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/command"
	"evenlip/internal/command/point"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit/drilltest"
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

// A feed that nobody read is told wherever a figure depends on it, and nowhere
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
