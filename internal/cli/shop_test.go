package cli_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// all is a shop that has set whatever a shop may set.
const all = `name: the yard
limits:
  point-angle: 2deg
  chisel-angle: 122,130
  lip-height: 0.04mm
  chisel-ratio: 0.2
  web-ratio: 0.3
  flank-wear: 0.2mm
  margin-wear: 0.5
  chip-room: 1.5
  web-taper: 0.018
  clean-up: 0.2mm
  every: 0.8mm
materials:
  steel-200:
    point-angle: 120deg
    clearance: 9deg,13deg
    chisel-angle: 123,131
    helix: 20,30
    speed: 20,30
    kd-thrust: 20000
    kd-torque: 21000
`

func shopFile(t *testing.T, text string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "shop.yaml")
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

// Every figure that a shop has set is marked as the shop's in every command that
// prints it, and so is every limit and what is taken for want of a reading;
// nothing else is. testdata/shop.txt has what is marked, command line by command
// line; -update writes it anew.
func TestWhatTheShopHasSetIsMarked(t *testing.T) {
	const file = "testdata/shop.txt"
	shop := shopFile(t, all)
	was, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var now strings.Builder
	for line := range strings.Lines(string(was)) {
		args, isCommand := strings.CutPrefix(line, "evenlip ")
		if !isCommand {
			continue
		}
		now.WriteString(line)
		d := compute(t, append(strings.Fields(args), "--shop", shop)...)
		for _, key := range d.Set {
			fmt.Fprintln(&now, "  set", key)
		}
		for _, key := range keys(d.Limits) {
			if strings.HasPrefix(d.Limits[key].Source, "the shop's: the yard") {
				fmt.Fprintln(&now, "  limit", key)
			}
		}
		for _, f := range d.Findings {
			if strings.Contains(f.Text, "the shop") {
				fmt.Fprintf(&now, "  %s: %s\n", f.Code, f.Text)
			}
		}
		without := compute(t, strings.Fields(args)...)
		if len(without.Set) > 0 {
			t.Errorf("%s: without a shop the shop's are %q", args, without.Set)
		}
		for _, f := range without.Findings {
			if strings.Contains(f.Text, "the shop") {
				t.Errorf("%s, without a shop: %s", args, f.Text)
			}
		}
	}
	golden(t, file, now.String())
}

// In the list of materials the fields that the shop has set are marked one by one.
func TestTheShopsMaterialsInTheList(t *testing.T) {
	shop := shopFile(t, "materials:\n  brass:\n    kd-torque: 9000\n    point-angle: 110deg\n")
	for _, m := range compute(t, "material", "--shop", shop).Results["materials"].([]any) {
		row := m.(map[string]any)
		set, marked := row["set_by_shop"].([]any)
		if marked != (row["name"] == "brass") || marked && !slices.Equal(set, []any{"point_angle_deg", "kd_torque"}) {
			t.Errorf("%v: %v", row["name"], set)
		}
	}
	table := run("", "material", "--full", "--shop", shop).out
	if strings.Count(table, "*") != 2 || !strings.Contains(table, "110°*") {
		t.Errorf("%s", table)
	}
	var steps []string
	for _, s := range compute(t, "material", "brass", "--shop", shop, "--explain").Steps {
		if strings.HasPrefix(s.Source, "the shop's: ") {
			steps = append(steps, s.Figure)
		}
	}
	if want := []string{"point_angle_deg", "point_angle_accepted_low_deg", "point_angle_accepted_high_deg", "kd_torque"}; !slices.Equal(steps, want) {
		t.Errorf("worked as the shop's: %q, not %q", steps, want)
	}
}

// The shop's clean-up and usual stock are counted with, unless a flag says
// otherwise.
func TestTheShopsStock(t *testing.T) {
	shop := shopFile(t, "limits:\n  clean-up: 0.2mm\n  every: 0.8mm\n")
	const drill = "regrind --size 12mm --margin-wear 0.3mm --flute 60mm --depth 30mm --lip-angle 59,59"
	for extra, want := range map[string][2]float64{"": {0.35, 0.48}, " --shop " + shop: {0.5, 0.8}, " --clean-up 0.1mm --every 0.6mm --shop " + shop: {0.4, 0.6}} {
		r := compute(t, strings.Fields(drill+extra)...).Results
		for i, key := range [...]string{"stock_mm", "usual_stock_mm"} {
			if got := r[key].(float64); got < want[i]-1e-9 || got > want[i]+1e-9 {
				t.Errorf("%q: %s is %v, not %v", extra, key, got, want[i])
			}
		}
	}
	steps := map[string]step{}
	for _, s := range compute(t, append(strings.Fields(drill), "--shop", shop, "--explain")...).Steps {
		steps[s.Figure] = s
	}
	for _, key := range [...]string{"stock_clean_up_mm", "usual_stock_mm"} {
		if s := steps[key]; !strings.HasSuffix(s.Formula, "= as read") || !strings.HasPrefix(s.Source, "the shop's: ") {
			t.Errorf("%s: %+v", key, s)
		}
	}
}
