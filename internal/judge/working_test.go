package judge_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/pocket"
)

// A second computation: the working that stands beside each figure, with all
// its digits, worked out by an evaluator of another house (expr-lang/expr) as a
// pocket calculator in degree mode would.

// inDegrees is what a calculator in degree mode works with.
func inDegrees(k quantity.Kind, v float64) float64 {
	switch k {
	case quantity.Angle:
		return v / deg
	case quantity.Share:
		return v * 100
	}
	return v
}

// worked evaluates the working of f.
func worked(f *sheet.Figure) (float64, error) {
	sum := f.Working.Numbers.Format
	for _, a := range f.Working.Numbers.Args {
		sum = strings.Replace(sum, "{}", "("+strconv.FormatFloat(inDegrees(a.Kind, a.Value), 'f', -1, 64)+")", 1)
	}
	return pocket.Evaluate(sum)
}

func TestWorkingGivesTheFigure(t *testing.T) {
	seen := map[string]bool{}
	testkit.Property(t, "every figure's working, evaluated, gives the figure", func(t *rapid.T) {
		s := judge.Sheet(draw(t).Drill(t), true)
		s.Each(func(f *sheet.Figure) {
			if f.Working == nil {
				return
			}
			got, err := worked(f)
			want := inDegrees(f.Kind, f.Value)
			if err != nil || !(math.Abs(got-want) <= 1e-6*max(1, math.Abs(want))) {
				t.Errorf("%s is %v; its working %q with %v gives %v, %v", f.Key, want, f.Working.Numbers.Format, f.Working.Numbers.Args, got, err)
			}
			if f.Working.Formula == "" || f.Working.Source == "" {
				t.Errorf("%s: formula %q, source %q", f.Key, f.Working.Formula, f.Working.Source)
			}
			seen[f.Key] = true
		})
	})
	for _, key := range []string{"least_working_clearance_deg", "feed_limit_mm", "thrust_ratio", "stock_1_inner_mm", "stock_2_outer_mm", "point_offset_mm",
		"oversize_bound_mm", "lip_height_difference_mm", "lip_length_difference_mm", "chip_share_2", "web_taper", "lip_clearance_1_deg", "chisel_angle_deg", "point_angle_deviation_deg"} {
		if !seen[key] {
			t.Errorf("%s was never worked", key)
		}
	}
}
