package cli_test

import (
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
// prints it, and every limit; nothing else is.
func TestWhatTheShopHasSetIsMarked(t *testing.T) {
	shop := shopFile(t, all)
	for _, c := range []struct{ args, figures, limits string }{
		{"point --size 12mm --lip-angle 59,59", "", "point_angle_deg"},
		{"clearance --size 12mm --clearance 12", "recommended_low_deg recommended_high_deg", "lip_clearance_1_deg lip_clearance_2_deg"},
		{"chisel --size 12mm --web 2mm --chisel-angle 125", "", "chisel_angle_deg chisel_ratio"},
		{"web --size 12mm --web 2mm --chisel-angle 125 --remove 3mm", "web_taper", "chisel_ratio_after"},
		{"web --size 12mm --web 2mm --remove 3mm --web-taper 0.016", "", "chisel_ratio_after"},
		{"lips --size 12mm --lip-angle 59,59 --lip-height 0", "", "lip_height_difference_mm lip_height_mid_lip_mm"},
		{"inspect --size 12mm --margin-wear 1mm --flank-wear 0.1mm --flute 60mm --depth 30mm", "recommended_low_deg recommended_high_deg web_taper",
			"chisel_angle_deg chisel_ratio chisel_ratio_after flank_wear_mm flute_mm lip_clearance_1_deg lip_clearance_2_deg lip_height_difference_mm lip_height_mid_lip_mm margin_wear_mm point_angle_deg web_ratio"},
		{"regrind --size 12mm --flank-wear 0.3mm --flute 60mm --depth 30mm", "stock_clean_up_mm thin_over_ratio usual_stock_mm flute_needed_mm", ""},
		{"regrind --size 12mm --flank-wear 0.3mm --flute 60mm --depth 30mm --clean-up 0.1mm --every 0.5mm", "thin_over_ratio flute_needed_mm", ""},
		{"regrind --size 12mm --flute 60mm", "thin_over_ratio usual_stock_mm flute_needed_mm", ""},
		{"thin --size 12mm --web 3mm", "", "chisel_ratio_after"},
		{"thrust --size 12mm", "kd_thrust kd_torque", "chisel_ratio"},
		{"thrust --size 12mm --material brass", "", "chisel_ratio"},
		{"speed --size 12mm --helix 25", "cutting_speed_low_m_min cutting_speed_high_m_min cutting_speed_m_min", "helix_deg rpm"},
		{"speed --size 12mm --rpm 600", "cutting_speed_low_m_min cutting_speed_high_m_min", "helix_deg rpm"},
		{"edge --size 12mm", "corner_lip_clearance_deg corner_cutting_speed_m_min", ""},
		{"edge --size 12mm --clearance 12 --rpm 600", "", ""},
		{"cone --size 12mm --semi-angle 30 --chisel-angle 126", "point_angle_deg lip_clearance_deg", "chisel_angle_deg chisel_ratio lip_clearance_deg"},
		{"cone --size 12mm --semi-angle 30 --chisel-angle 126 --clearance 12 --point-angle 118", "", "chisel_angle_deg chisel_ratio lip_clearance_deg"},
		{"pilot --size 12mm --web 2mm", "", ""},
		{"material steel-200 --size 12mm", `point_angle_deg point_angle_accepted_low_deg point_angle_accepted_high_deg chisel_angle_low_deg chisel_angle_high_deg
			chisel_angle_accepted_low_deg chisel_angle_accepted_high_deg clearance_low_deg clearance_high_deg clearance_aim_deg recommended_low_deg recommended_high_deg clearance_accepted_low_deg clearance_accepted_high_deg
			rpm_low rpm_high helix_low_deg helix_high_deg cutting_speed_low_m_min cutting_speed_high_m_min kd_thrust kd_torque`, ""},
		{"material brass", "point_angle_accepted_low_deg point_angle_accepted_high_deg chisel_angle_accepted_low_deg chisel_angle_accepted_high_deg", ""},
	} {
		d := compute(t, append(strings.Fields(c.args), "--shop", shop)...)
		if want := strings.Fields(c.figures); !slices.Equal(d.Set, want) {
			t.Errorf("%s: the shop's are %q, not %q", c.args, d.Set, want)
		}
		var limits []string
		for key, l := range d.Limits {
			if strings.HasPrefix(l.Source, "the shop's: the yard") {
				limits = append(limits, key)
			}
		}
		slices.Sort(limits)
		if want := strings.Fields(c.limits); !slices.Equal(limits, want) {
			t.Errorf("%s: the shop's limits are %q, not %q", c.args, limits, want)
		}
	}
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
	table := run("", "material", "--shop", shop).out
	if strings.Count(table, "*") != 2 || !strings.Contains(table, "110°*") {
		t.Errorf("%s", table)
	}
	var steps []string
	for _, s := range compute(t, "material", "brass", "--shop", shop, "--explain").Steps {
		if strings.HasPrefix(s.Source, "the shop's: ") && s.Formula == "as the shop has set it" {
			steps = append(steps, s.Figure)
		}
	}
	if want := []string{"point_angle_deg", "point_angle_accepted_low_deg", "point_angle_accepted_high_deg", "kd_torque"}; !slices.Equal(steps, want) {
		t.Errorf("worked as the shop's: %q, not %q", steps, want)
	}
}

// What is taken for want of a reading is said to be the shop's where it is.
func TestWhatIsTakenOfTheShop(t *testing.T) {
	shop := shopFile(t, all)
	for args, want := range map[string]map[string]string{
		"edge --size 12mm": {"point-angle-assumed": "120.0° is taken, as the shop has set it", "clearance-assumed": "11.0° is taken, as the shop has set it",
			"rpm-assumed": "the work material's cutting speed, as the shop has set it"},
		"cone --size 12mm --semi-angle 30 --chisel-angle 126": {"point-angle-assumed": "120.0° is taken, as the shop has set it", "clearance-assumed": "11.0° is taken, as the shop has set it"},
		"draw --size 12mm --lip-angle 59":                     {"clearance-usual": "11.0° is drawn, as the shop has set it", "chisel-usual": "126.0° is drawn, the middle of the shop's limits"},
		"regrind --size 12mm --lip-angle 55 --flank-wear 0.3mm": {"grind-to": "; the shop has set the angle and the clearance and the chisel edge",
			"clearance-aimed": "11.0°, as the shop has set it: none was read"},
		"regrind --size 12mm --lip-angle 55 --flank-wear 0.3mm --point-angle 118": {"grind-to": "; the shop has set the clearance and the chisel edge"},
		"regrind --size 12mm --lip-angle 55 --flank-wear 0.3mm --material brass":  {"grind-to": "; the shop has set the chisel edge"},
	} {
		texts := map[string]string{}
		for _, f := range compute(t, append(strings.Fields(args), "--shop", shop)...).Findings {
			texts[f.Code] = f.Text
		}
		for code, text := range want {
			if !strings.Contains(texts[code], text) {
				t.Errorf("%s: %s is %q", args, code, texts[code])
			}
		}
		for _, f := range compute(t, strings.Fields(args)...).Findings {
			if strings.Contains(f.Text, "the shop") {
				t.Errorf("%s, without a shop: %s", args, f.Text)
			}
		}
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
		if s := steps[key]; !strings.Contains(s.Formula, "as the shop has set it") || !strings.HasPrefix(s.Source, "the shop's: ") {
			t.Errorf("%s: %+v", key, s)
		}
	}
}
