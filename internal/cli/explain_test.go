package cli_test

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenlip/internal/testkit/pocket"
)

// The arithmetic that --explain shows has to give the figure it stands beside.
// An evaluator of another house does the sums, as a pocket calculator in degree
// mode would: outside check, expr-lang/expr. Each package holds the formulas of its
// sheets to their figures; here is what the command line prints of them.

var leadingNumber = regexp.MustCompile(`^-?[0-9]+(\.([0-9]+))?`)

// agrees says what is wrong with a sum and the result printed behind it: they
// may differ by half of the result's last digit, and by what the rounding of
// the operands can do.
func agrees(sum, result string) error {
	m := leadingNumber.FindStringSubmatch(result)
	if m == nil {
		return fmt.Errorf("%s: the result %q is no number", sum, result)
	}
	want, _ := strconv.ParseFloat(m[0], 64)
	got, err := pocket.Evaluate(sum)
	if err != nil {
		return fmt.Errorf("%s: %v", sum, err)
	}
	half := math.Pow(10, -float64(len(m[2]))) / 2
	if _, unit, _ := strings.Cut(result, " "); slices.Contains([]string{"N", "lbf", "N m", "in lb", "MPa", "psi"}, unit) { // three significant figures
		half = math.Max(half, want/200)
	}
	if !(math.Abs(got-want) <= half+1e-6*math.Max(1, math.Abs(want))) {
		return fmt.Errorf("%s gives %.9g, printed is %s", sum, got, result)
	}
	return nil
}

// exactly holds a sum against the figure in full precision; only the operands
// are rounded, to eight digits.
func exactly(sum, result string, figure any) error {
	want, isNumber := figure.(float64)
	if strings.HasSuffix(result, "%") {
		want *= 100
	}
	got, err := pocket.Evaluate(sum)
	if err != nil || !isNumber || math.Abs(got-want) > 2e-6*math.Max(1, math.Abs(want)) {
		return fmt.Errorf("%s gives %.9g, the figure is %v (%v)", sum, got, figure, err)
	}
	return nil
}

func TestAgrees(t *testing.T) {
	for _, wrong := range [][2]string{{"1 + 1", "2.1 mm"}, {"1 + 1", "3"}, {"1 +", "1"}, {"1 + 1", "-"}} {
		if agrees(wrong[0], wrong[1]) == nil {
			t.Errorf("%s = %s is let through", wrong[0], wrong[1])
		}
	}
}

// checkExplained holds the steps that a command line has in JSON to its results, and
// the sums of its table to what stands behind them, in both systems of units.
func checkExplained(t *testing.T, args ...string) {
	t.Helper()
	for _, units := range []string{"mm", "in"} {
		args := append(slices.Clone(args), "--explain", "--units", units)
		d := compute(t, args...)
		var sums []string
		for _, s := range d.Steps {
			sums = append(sums, s.Numbers)
			err := agrees(s.Numbers, s.Result)
			if figure, isResult := d.Results[s.Figure]; err == nil && isResult {
				err = exactly(s.Numbers, s.Result, figure)
			}
			if err != nil || s.Formula == "" || s.Source == "" {
				t.Errorf("evenlip %s\n%+v: %v", strings.Join(args, " "), s, err)
			}
		}
		printed := printedSums(t, append(args, "--width", "1000"))
		if len(printed) != len(sums) || units == "mm" && !slices.Equal(printed, sums) {
			t.Errorf("evenlip %s: JSON has the sums\n%s\nthe table\n%s", strings.Join(args, " "), strings.Join(sums, "\n"), strings.Join(printed, "\n"))
		}
	}
}

// printedSums returns the sums of a table: what stands before an equals sign and can be
// worked out as it stands.
func printedSums(t *testing.T, args []string) (sums []string) {
	t.Helper()
	for line := range strings.Lines(run("", args...).out) {
		at := strings.LastIndex(line, " = ")
		if at < 0 {
			continue
		}
		sum, result := strings.TrimSpace(line[:at]), strings.TrimSpace(line[at+3:])
		if v, err := pocket.Evaluate(sum); err != nil || math.IsNaN(v) {
			continue // a formula in letters
		}
		sums = append(sums, sum)
		if err := agrees(sum, result); err != nil {
			t.Errorf("evenlip %s: %v", strings.Join(args, " "), err)
		}
	}
	return sums
}

func TestExplained(t *testing.T) {
	for _, command := range slices.Sorted(maps.Keys(explained)) {
		t.Run(command, func(t *testing.T) {
			for _, r := range bench {
				if r[explained[command]] != "" {
					checkExplained(t, r.args(command)...)
				}
			}
			if explained[command] == "size" {
				checkExplained(t, command, "--sample")
			}
		})
	}
}

// Of a range the first step is explained.
func TestExplainedRange(t *testing.T) {
	web := func(size, remove string) []string {
		return []string{"web", "--size", size, "--web", "1.8mm", "--chisel-angle", "125", "--remove", remove}
	}
	first := web("12mm", "2mm")
	alone := compute(t, append(first, "--explain")...).Steps
	for _, args := range [][]string{web("12mm", "2mm..6mm by 2mm"), web("12mm..14mm by 1mm", "2mm..6mm by 2mm")} {
		checkExplained(t, args...)
		if steps := compute(t, append(args, "--explain")...).Steps; len(steps) == 0 || !reflect.DeepEqual(steps, alone) {
			t.Errorf("evenlip %s explains\n%+v\nits first step alone\n%+v", strings.Join(args, " "), steps, alone)
		}
	}
}
