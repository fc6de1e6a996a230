package cli_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// contract spells out every name under results in the JSON of each command, a
// list's members as "list[].name" and a plain list as "list[]". Scripts in tool
// cribs rest on these names: one may be added, none may change or go.
var contract = map[string]struct {
	args  []string
	names string
}{
	"chisel": {[]string{"--sample"}, `
		web_mm chisel_angle_deg chisel_angle_acute_deg chisel_length_mm chisel_ratio`},
	"clearance": {[]string{"--sample"}, `
		lip_clearance_1_deg lip_clearance_2_deg recommended_low_deg recommended_high_deg feed_angle_deg
		working_clearance_deg least_working_clearance_deg least_working_at_ratio feed_limit_mm`},
	"edge": {[]string{"--sample"}, `
		corner_inclination_deg corner_normal_rake_deg corner_normal_clearance_deg corner_wedge_angle_deg
		corner_lip_clearance_deg corner_feed_angle_deg corner_working_clearance_deg corner_cutting_speed_mpm
		rake_zero_ratio least_working_clearance_deg least_working_at_ratio chisel_corner_ratio chisel_rake_deg
		indentation_radius_mm chisel_corner_speed_mpm rows[].radius_ratio rows[].inclination_deg
		rows[].normal_rake_deg rows[].working_rake_deg rows[].normal_clearance_deg rows[].wedge_angle_deg
		rows[].lip_clearance_deg rows[].feed_angle_deg rows[].working_clearance_deg rows[].cutting_speed_mpm`},
	"inspect": {[]string{"--sample"}, `
		point_angle_deg lip_angle_difference_deg point_angle_deviation_deg point_length_mm lip_clearance_1_deg
		lip_clearance_2_deg recommended_low_deg recommended_high_deg feed_angle_deg working_clearance_deg
		least_working_clearance_deg least_working_at_ratio feed_limit_mm web_mm chisel_angle_deg
		chisel_angle_acute_deg chisel_length_mm chisel_ratio web_taper web_after_mm chisel_length_after_mm
		chisel_ratio_after thrust_ratio lip_height_difference_mm high_lip lip_length_difference_mm point_offset_mm
		oversize_bound_mm chip_share_1 chip_share_2 stock_1_inner_mm stock_1_outer_mm stock_2_inner_mm
		stock_2_outer_mm flank_wear_mm corner_wear_mm margin_wear_mm lip_chip_mm flute_mm web_ratio verdict
		verdict_reasons[] verdict_wants[]`},
	"lips": {[]string{"--sample"}, `
		lip_height_difference_mm high_lip lip_length_difference_mm point_offset_mm oversize_bound_mm chip_share_1
		chip_share_2 stock_1_inner_mm stock_1_outer_mm stock_2_inner_mm stock_2_outer_mm`},
	"point": {[]string{"--sample"}, `
		point_angle_deg lip_angle_difference_deg point_angle_deviation_deg point_length_mm`},
	"regrind": {[]string{"--sample"}, `
		plan stock_mm stock_reason stock_flank_mm stock_corner_mm stock_margin_mm stock_chip_mm stock_truing_mm
		stock_clean_up_mm take_1_inner_mm take_1_outer_mm take_2_inner_mm take_2_outer_mm thin chisel_ratio_unthinned
		thin_over_ratio thin_to_ratio thin_to_web_mm notch_depth_mm flute_after_mm length_after_mm
		point_length_after_mm web_after_mm chisel_length_after_mm chisel_ratio_after thrust_now_n thrust_after_n
		thrust_ratio usual_stock_mm flute_needed_mm regrinds_left retire_reason states[].state states[].length_mm
		states[].flute_mm states[].point_length_mm states[].lip_height_difference_mm states[].web_mm
		states[].chisel_length_mm states[].chisel_ratio states[].thrust_n states[].thrust_ratio schedule[].grind
		schedule[].removed_mm schedule[].flute_mm schedule[].web_unthinned_mm schedule[].web_mm
		schedule[].chisel_length_mm schedule[].chisel_ratio schedule[].thinned schedule[].thrust_ratio`},
	"web": {[]string{"--sample"}, `
		web_taper web_after_mm chisel_length_after_mm chisel_ratio_after thrust_ratio`},
	"pilot": {[]string{"--sample"}, `
		pilot_low_mm pilot_high_mm pilot_mm thrust_n thrust_with_pilot_n thrust_ratio torque_nm torque_with_pilot_nm
		pilot_sizes[].name pilot_sizes[].series pilot_sizes[].diameter_mm`},
	"speed": {[]string{"--sample"}, `
		cutting_speed_low_m_min cutting_speed_high_m_min speed_cut cutting_speed_m_min rpm feed_low_mm feed_high_mm
		feed_cut feed_mm penetration_mm_per_min depth_ratio hole_time_s thrust_n chisel_share torque_nm
		power_cutter_kw power_motor_kw feed_angle_deg working_clearance_deg least_working_clearance_deg
		least_working_at_ratio feed_limit_mm shank_stress_mpa least_shank_mm helix_deg pecks[].depth_mm
		pecks[].stroke_mm`},
	"thin": {[]string{"--sample"}, `
		web_mm chisel_length_mm chisel_ratio web_target_mm notch_depth_mm chisel_length_after_mm chisel_ratio_after
		web_ratio_after point_form thrust_ratio thrust_before_n thrust_after_n`},
	"thrust": {[]string{"--sample"}, `
		chisel_length_mm chisel_ratio factor_a factor_b factor_j kd_thrust kd_torque wear_factor thrust_n chisel_share
		torque_nm power_cutter_kw power_motor_kw new_chisel_ratio new_thrust_n thrust_ratio torque_ratio
		conditions[].condition conditions[].wear_factor conditions[].thrust_n conditions[].torque_nm
		conditions[].power_cutter_kw conditions[].power_motor_kw methods[].factors methods[].factor_a
		methods[].factor_b methods[].factor_j methods[].thrust_n methods[].torque_nm methods[].power_cutter_kw
		methods[].power_motor_kw`},
	"wheel": {[]string{"--wheel", "200mm", "--wheel-rpm", "2850", "--marked-speed", "35m/s", "--rest-gap", "2mm", "--tongue-gap", "5mm"}, `
		surface_speed_mps surface_speed_new_mps surface_speed_kept allowed_rpm wheel_rpm rest_gap_mm tongue_gap_mm
		before_start[]`},
	"material": {[]string{"steel-200"}, `
		point_angle_deg point_angle_low_deg point_angle_high_deg point_angle_accepted_low_deg
		point_angle_accepted_high_deg chisel_angle_low_deg chisel_angle_high_deg chisel_angle_accepted_low_deg
		chisel_angle_accepted_high_deg clearance_low_deg clearance_high_deg clearance_aim_deg recommended_low_deg
		recommended_high_deg feed_mm feed_low_mm feed_high_mm rpm_low rpm_high helix_low_deg helix_high_deg
		cutting_speed_low_m_min cutting_speed_high_m_min kd_thrust kd_torque`},
	"size": {[]string{"12mm"}, `
		diameter_mm diameter_in names[] series[].series series[].down series[].down_mm series[].up series[].up_mm`},
	"sources": {[]string{}, `
		tables[].table tables[].title tables[].figures tables[].label tables[].sureness tables[].source`},
}

// names lists what stands under results.
func names(results map[string]any) []string {
	var out []string
	for key, v := range results {
		list, isList := v.([]any)
		if !isList {
			out = append(out, key)
			continue
		}
		row, ofObjects := map[string]any(nil), false
		if len(list) > 0 {
			row, ofObjects = list[0].(map[string]any)
		}
		if !ofObjects {
			out = append(out, key+"[]")
		}
		for member := range row {
			out = append(out, key+"[]."+member)
		}
	}
	slices.Sort(out)
	return out
}

func TestNamesOfResults(t *testing.T) {
	for command, c := range contract {
		t.Run(command, func(t *testing.T) {
			want := strings.Fields(c.names)
			slices.Sort(want)
			got := names(compute(t, append([]string{command}, c.args...)...).Results)
			for _, name := range got {
				if !slices.Contains(want, name) {
					t.Errorf("%s is not in the contract", name)
				}
			}
			for _, name := range want {
				if !slices.Contains(got, name) {
					t.Errorf("%s is gone", name)
				}
			}
		})
	}
}

// A reading that is missing makes a figure null and takes no name away.
func TestNamesWithoutReadings(t *testing.T) {
	for _, command := range []string{"inspect", "point", "clearance", "chisel", "web", "lips"} {
		got := names(compute(t, command, "--size", "12mm").Results)
		want := strings.Fields(contract[command].names)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%s of a bare size has %v, not %v", command, got, want)
		}
	}
}

// No command is without its contract.
func TestEveryCommandHasAContract(t *testing.T) {
	help := run("", "--help").out
	_, help, _ = strings.Cut(help, "With a drill in hand:")
	help, _, _ = strings.Cut(help, "Additional Commands:")
	commands := 0
	for _, line := range strings.Split(help, "\n") {
		name, _, indented := strings.Cut(strings.TrimPrefix(line, "  "), " ")
		if !indented || !strings.HasPrefix(line, "  ") || name == "" {
			continue
		}
		commands++
		if _, ok := contract[name]; !ok {
			t.Errorf("the names in the JSON of %s are spelled out nowhere", name)
		}
	}
	if commands < 8 {
		t.Errorf("only %d commands found in the help", commands)
	}
}

// What stands beside results is the same for every command, and a crack leaves
// nothing but the verdict.
func TestShapeOfTheDocument(t *testing.T) {
	want := []string{"cautions", "command", "drill", "findings", "inputs", "limits", "results", "sources"}
	for command, c := range contract {
		var d map[string]json.RawMessage
		args := slices.DeleteFunc(append([]string{command}, c.args...), func(a string) bool { return a == "--sample" })
		if len(args) == 1 && command != "sources" {
			args = append(args, "--size", "12mm")
		}
		a := run("", append(args, "--format", "json")...)
		if err := json.Unmarshal([]byte(a.out), &d); err != nil {
			t.Errorf("%v: %v %s", args, err, a.err)
			continue
		}
		got := keys(d)
		if !slices.Equal(got, want) {
			t.Errorf("%s: %v, not %v", command, got, want)
		}
	}
	got := names(compute(t, "inspect", "--sample", "--cracked").Results)
	if !slices.Equal(got, []string{"verdict", "verdict_reasons[]", "verdict_wants[]"}) {
		t.Errorf("a cracked drill has %v", got)
	}
}
