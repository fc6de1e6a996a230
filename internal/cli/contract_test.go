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
	// Under each line's results stands what the command that runs on it has.
	"batch": {[]string{"../../testdata/one.jsonl", "--command", "chisel"}, `
		web_mm chisel_angle_deg chisel_angle_acute_deg chisel_length_mm chisel_ratio`},
	"chisel": {[]string{"--sample"}, `
		web_mm chisel_angle_deg chisel_angle_acute_deg chisel_length_mm chisel_ratio`},
	"clearance": {[]string{"--sample"}, `
		lip_clearance_1_deg lip_clearance_2_deg recommended_low_deg recommended_high_deg feed_angle_deg
		working_clearance_deg least_working_clearance_deg least_working_at_ratio feed_limit_mm`},
	"cone": {[]string{"--size", "10mm", "--web", "1.5mm", "--point-angle", "118", "--clearance", "12", "--chisel-angle", "126.579", "--semi-angle", "30"}, `
		cone_semi_angle_deg axis_angle_deg axis_offset_mm vertex_distance_mm point_angle_deg lip_clearance_deg
		chisel_angle_deg chisel_angle_acute_deg chisel_angle_axis_deg chisel_length_mm chisel_ratio chisel_rake_deg
		axis_x axis_y axis_z chisel_bow_mm heel_turn_deg heel_drop_mm heel_clearance_deg hand_face_angle_deg
		hand_shank_low_deg hand_drop_per_roll hand_pivot_mm hand[].fault hand[].lip_clearance_deg
		hand[].read_clearance_deg hand[].chisel_angle_deg hand[].chisel_length_mm webs[].ground_off_mm
		facet_angle_deg facet_chisel_angle_deg second_facet_low_deg second_facet_high_deg knobs[].knob knobs[].per
		knobs[].change_point_angle_deg knobs[].change_lip_clearance_deg knobs[].change_chisel_angle_deg
		knobs[].change_chisel_length_mm webs[].web_ratio webs[].web_mm webs[].point_angle_deg webs[].lip_clearance_deg
		webs[].chisel_angle_deg webs[].chisel_length_mm`},
	"crib list": {[]string{"--sample"}, `
		results[].id results[].size results[].series results[].shank results[].grinds results[].last results[].retired results[].note
		results[].size_mm results[].material results[].web_mm results[].second_web_mm results[].second_web_at_mm
		results[].web_taper results[].chisel_angle_deg results[].chisel_length_mm results[].point_angle_wanted_deg
		results[].lip_angle_1_deg results[].lip_angle_2_deg results[].lip_length_1_mm results[].lip_length_2_mm
		results[].lip_height_1_mm results[].lip_height_2_mm results[].clearance_1_deg results[].clearance_2_deg
		results[].heel_drop_1_mm results[].heel_drop_2_mm results[].heel_turn_deg results[].helix_deg
		results[].flute_mm results[].flank_wear_mm results[].corner_wear_mm results[].margin_wear_mm
		results[].lip_chip_mm results[].cracked results[].remove_mm results[].feed_mm results[].rpm results[].depth_mm
		results[].clean_up_mm results[].every_mm results[].length_mm results[].back_taper results[].least_diameter_mm`},
	"crib audit": {[]string{"--sample"}, `
		results[].id results[].size results[].material results[].verdict results[].reasons results[].point_angle_deg
		results[].lip_angle_difference_deg results[].point_angle_deviation_deg results[].point_length_mm
		results[].lip_clearance_1_deg results[].lip_clearance_2_deg results[].recommended_low_deg
		results[].recommended_high_deg results[].feed_angle_deg results[].working_clearance_deg
		results[].least_working_clearance_deg results[].least_working_at_ratio results[].feed_limit_mm
		results[].web_mm results[].chisel_angle_deg results[].chisel_angle_acute_deg results[].chisel_length_mm
		results[].chisel_ratio results[].web_taper results[].web_after_mm results[].chisel_length_after_mm
		results[].chisel_ratio_after results[].thrust_ratio results[].lip_height_difference_mm results[].lip_height_mid_lip_mm results[].high_lip
		results[].lip_length_difference_mm results[].point_offset_mm results[].oversize_bound_mm
		results[].chip_share_1 results[].chip_share_2 results[].stock_1_inner_mm results[].stock_1_outer_mm
		results[].stock_2_inner_mm results[].stock_2_outer_mm results[].flank_wear_mm results[].corner_wear_mm
		results[].margin_wear_mm results[].lip_chip_mm results[].flute_mm results[].web_ratio`},
	"crib plan": {[]string{"--sample"}, `
		results[].do results[].turn results[].id results[].size results[].size_mm results[].verdict results[].reasons
		results[].stock_reason results[].stock_mm results[].regrinds_left results[].count results[].lip_angle_deg
		results[].take_1_inner_mm results[].take_1_outer_mm results[].take_2_inner_mm results[].take_2_outer_mm
		results[].thin_to_web_mm results[].clearance_deg`},
	"draw": {[]string{"--sample"}, `
		point_angle_deg lip_angle_1_deg lip_angle_2_deg lip_height_difference_mm point_offset_mm
		lip_clearance_1_deg lip_clearance_2_deg web_mm chisel_angle_deg
		chisel_length_mm helix_deg lip_outer_mm lip_inner_1_mm lip_inner_2_mm lip_rise_1_mm lip_rise_2_mm
		flute_turn_deg flute_bottom_deg flute_mid_radius_mm flute_mid_angle_deg dot_mm picture[]`},
	"crib record": {[]string{"M120-1", "--grind", "0.6mm", "--dry-run", "--file", "../crib/sample.yaml"}, `
		id what date written verdict_before verdict stock_mm changes[].reading changes[].before changes[].now
		changes[].because`},
	"edge": {[]string{"--sample"}, `
		corner_inclination_deg corner_normal_rake_deg corner_normal_clearance_deg corner_wedge_angle_deg
		corner_lip_clearance_deg corner_feed_angle_deg corner_working_clearance_deg corner_cutting_speed_m_min
		vector_u_v vector_u_h vector_h_v vector_m_v vector_rake_deg vector_g vector_n_v vector_clearance_deg
		rake_zero_ratio least_working_clearance_deg least_working_at_ratio chisel_corner_ratio chisel_rake_deg
		indentation_radius_mm chisel_corner_speed_m_min rows[].radius_ratio rows[].inclination_deg
		rows[].normal_rake_deg rows[].working_rake_deg rows[].normal_clearance_deg rows[].wedge_angle_deg
		rows[].lip_clearance_deg rows[].feed_angle_deg rows[].working_clearance_deg rows[].cutting_speed_m_min`},
	"inspect": {[]string{"--sample"}, `
		point_angle_deg lip_angle_difference_deg point_angle_deviation_deg point_length_mm lip_clearance_1_deg
		lip_clearance_2_deg recommended_low_deg recommended_high_deg feed_angle_deg working_clearance_deg
		least_working_clearance_deg least_working_at_ratio feed_limit_mm web_mm chisel_angle_deg
		chisel_angle_acute_deg chisel_length_mm chisel_ratio web_taper web_after_mm chisel_length_after_mm
		chisel_ratio_after thrust_ratio lip_height_difference_mm lip_height_mid_lip_mm high_lip lip_length_difference_mm point_offset_mm
		oversize_bound_mm chip_share_1 chip_share_2 stock_1_inner_mm stock_1_outer_mm stock_2_inner_mm
		stock_2_outer_mm flank_wear_mm corner_wear_mm margin_wear_mm lip_chip_mm flute_mm web_ratio verdict
		verdict_reasons[] verdict_wants[]`},
	"lips": {[]string{"--sample"}, `
		lip_height_difference_mm lip_height_mid_lip_mm high_lip lip_length_difference_mm point_offset_mm oversize_bound_mm chip_share_1
		chip_share_2 stock_1_inner_mm stock_1_outer_mm stock_2_inner_mm stock_2_outer_mm`},
	"point": {[]string{"--sample"}, `
		point_angle_deg lip_angle_difference_deg point_angle_deviation_deg point_length_mm`},
	"regrind": {[]string{"--sample"}, `
		plan stock_mm stock_reason stock_flank_mm stock_corner_mm stock_margin_mm stock_chip_mm stock_steep_mm stock_truing_mm
		stock_reshape_mm stock_clean_up_mm take_1_inner_mm take_1_outer_mm take_2_inner_mm take_2_outer_mm thin chisel_ratio_unthinned
		thin_over_ratio thin_to_ratio thin_to_web_mm notch_depth_mm flute_after_mm length_after_mm
		point_length_after_mm web_after_mm chisel_length_after_mm chisel_ratio_after thrust_now_n thrust_after_n
		thrust_ratio usual_stock_mm flute_needed_mm regrinds_left retire_reason states[].state states[].length_mm
		states[].flute_mm states[].point_length_mm states[].lip_height_difference_mm states[].web_mm
		states[].chisel_length_mm states[].chisel_ratio states[].thrust_n states[].thrust_ratio schedule[].grind
		schedule[].removed_mm schedule[].flute_mm schedule[].web_unthinned_mm schedule[].web_mm
		schedule[].chisel_length_mm schedule[].chisel_ratio schedule[].thinned schedule[].thrust_ratio`},
	"version": {nil, `version commit commit_time commit_changed go platform`},
	"web": {[]string{"--sample"}, `
		web_taper web_after_mm chisel_length_after_mm chisel_ratio_after thrust_ratio`},
	"pilot": {[]string{"--sample"}, `
		pilot_low_mm pilot_high_mm pilot_mm thrust_n thrust_with_pilot_n thrust_ratio torque_nm torque_with_pilot_nm
		pilot_sizes[].name pilot_sizes[].series pilot_sizes[].diameter_mm pilot_sizes[].use`},
	"speed": {[]string{"--sample"}, `
		cutting_speed_low_m_min cutting_speed_high_m_min speed_cut cutting_speed_m_min rpm feed_low_mm feed_high_mm
		feed_cut feed_mm penetration_mm_min depth_ratio hole_time_s usual_oversize_low_mm
		usual_oversize_mean_mm usual_oversize_high_mm thrust_n chisel_share torque_nm
		power_cutter_kw power_motor_kw feed_angle_deg working_clearance_deg least_working_clearance_deg
		least_working_at_ratio feed_limit_mm shank_stress_mpa least_shank_mm helix_deg pecks[].depth_mm
		pecks[].stroke_mm`},
	"thin": {[]string{"--sample"}, `
		web_mm chisel_length_mm chisel_ratio new_web_mm web_target_mm notch_depth_mm chisel_length_after_mm chisel_ratio_after
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
		before_start[].step before_start[].check`},
	"material (all)": {[]string{}, `
		materials[].name materials[].title materials[].point_angle_deg materials[].point_angle_low_deg
		materials[].point_angle_high_deg materials[].chisel_angle_low_deg materials[].chisel_angle_high_deg
		materials[].clearance_low_deg materials[].clearance_high_deg materials[].helix_low_deg
		materials[].helix_high_deg materials[].cutting_speed_low_m_min materials[].cutting_speed_high_m_min
		materials[].kd_thrust materials[].kd_torque`},
	"material (one)": {[]string{"steel-200", "--size", "12mm"}, `
		point_angle_deg point_angle_low_deg point_angle_high_deg point_angle_accepted_low_deg
		point_angle_accepted_high_deg chisel_angle_low_deg chisel_angle_high_deg chisel_angle_accepted_low_deg
		chisel_angle_accepted_high_deg clearance_low_deg clearance_high_deg clearance_aim_deg recommended_low_deg
		recommended_high_deg clearance_accepted_low_deg clearance_accepted_high_deg feed_mm feed_low_mm feed_high_mm rpm_low rpm_high helix_low_deg helix_high_deg
		cutting_speed_low_m_min cutting_speed_high_m_min kd_thrust kd_torque`},
	"size": {[]string{"12mm"}, `
		diameter_mm diameter_in names[] series[].series series[].down series[].down_mm series[].up series[].up_mm`},
	"sources": {[]string{}, `
		tables[].table tables[].title tables[].figures tables[].label tables[].sureness tables[].source`},
}

func firstWord(s string) string { return strings.Fields(s)[0] }

// commandLine puts a command as it is called in the contract, a remark in
// brackets left out, before its arguments.
func commandLine(called string, args []string) []string {
	command, _, _ := strings.Cut(called, " (")
	return append(strings.Fields(command), args...)
}

// results returns what stands under results; where that is a list, a drill
// each, it is returned under the name "results".
func results(t *testing.T, args ...string) map[string]any {
	t.Helper()
	a := run("", append(args, "--format", "json")...)
	var d struct{ Results any }
	if err := json.Unmarshal([]byte(a.out), &d); err != nil {
		t.Fatalf("evenlip %s: status %d, %v\n%s", strings.Join(args, " "), a.status, err, a.err)
	}
	if object, ok := d.Results.(map[string]any); ok {
		return object
	}
	return map[string]any{"results": d.Results}
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
			got := names(results(t, commandLine(command, c.args)...))
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
		got := names(results(t, command, "--size", "12mm"))
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
		if !slices.ContainsFunc(keys(contract), func(k string) bool { return firstWord(k) == name }) {
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
	for called, c := range contract {
		var d map[string]json.RawMessage
		args := commandLine(called, c.args)
		a := run("", append(args, "--format", "json")...)
		if err := json.Unmarshal([]byte(a.out), &d); err != nil {
			t.Errorf("%v: %v %s", args, err, a.err)
			continue
		}
		delete(d, "sample")
		got := keys(d)
		if !slices.Equal(got, want) {
			t.Errorf("%s: %v, not %v", called, got, want)
		}
	}
	got := names(results(t, "inspect", "--sample", "--cracked"))
	if !slices.Equal(got, []string{"verdict", "verdict_reasons[]", "verdict_wants[]"}) {
		t.Errorf("a cracked drill has %v", got)
	}
}
