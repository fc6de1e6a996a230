package cli_test

import (
	"maps"
	"slices"
	"strings"
	"testing"
)

// No flag of any command takes what is no measurement; each says which it was.
func TestEveryFlagRefuses(t *testing.T) {
	slips := []string{"NaN", "inf", "-inf", "0x10", "1_0", "1e999", "1e-999", "12parsecs", "1,2,3", "twelve", "", " ", "1..", "\x1b[31m"}
	for _, command := range slices.Sorted(maps.Keys(explained)) {
		if len(takes()[command]) == 0 {
			t.Errorf("no flags found for %s", command)
		}
		for _, flag := range takes()[command] {
			for _, slip := range slips {
				args := []string{command, "--" + flag, slip}
				if flag != "size" && command != "wheel" {
					args = append(args, "--size", "12mm")
				}
				a := run("", args...)
				if a.status != 2 || a.out != "" {
					t.Errorf("%q: status %d, printed %q", args, a.status, a.out)
				}
				if !strings.HasPrefix(a.err, "error: --"+flag+": ") {
					t.Errorf("%q: %s", args, a.err)
				}
				if strings.ContainsAny(a.err, "\x1b\r") {
					t.Errorf("%q: control characters reach the terminal", args)
				}
			}
		}
	}
}

// The same for what every command takes.
func TestEveryGlobalFlagRefuses(t *testing.T) {
	for flag, slips := range map[string][]string{
		"format": {"xml", "", "JSON "}, "units": {"cm", "\""}, "color": {"pink", ""}, "width": {"wide", "-1", "10", "1e3"},
		"caliper": {"0", "-0.01", "NaN", "1deg"}, "protractor": {"0", "1mm", "inf"}, "indicator": {"0mm", "x"}, "explain": {"perhaps"}, "check": {"2"},
	} {
		for _, slip := range slips {
			a := run("", "inspect", "--sample", "--"+flag+"="+slip)
			if a.status != 2 || a.out != "" || !strings.Contains(a.err, "--"+flag) {
				t.Errorf("--%s=%s: status %d: %s", flag, slip, a.status, a.err)
			}
		}
	}
}

// A range without quotes comes apart at its spaces: what is missing is said, not
// that there is no file called by.
func TestRangeWithoutQuotes(t *testing.T) {
	for _, args := range [][]string{
		{"web", "--size", "12mm", "--remove", "0mm..20mm", "by", "4mm"}, {"wheel", "--wheel", "200mm", "--wheel-rpm", "1000..2000", "by", "500"},
	} {
		a := run("", args...)
		if a.status != 2 || a.out != "" || !strings.Contains(a.err, "a range wants quotes") || strings.Contains(a.err, "cannot read") {
			t.Errorf("%q: status %d: %s", args, a.status, a.err)
		}
	}
}
