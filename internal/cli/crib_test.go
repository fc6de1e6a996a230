package cli_test

import (
	"encoding/csv"
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// cribDocument is the JSON of a whole crib: its results are a list.
type cribDocument struct {
	Command  string
	Sample   bool
	Results  []map[string]any
	Findings []struct{ Code, Text string }
}

func computeCrib(t *testing.T, args ...string) cribDocument {
	t.Helper()
	a := run("", append(append([]string{"crib"}, args...), "--format", "json")...)
	var d cribDocument
	if err := json.Unmarshal([]byte(a.out), &d); a.status != 0 || err != nil {
		t.Fatalf("crib %v: status %d, %v\n%s", args, a.status, err, a.err)
	}
	return d
}

// cribContract spells out the members of each drill in the JSON of a crib, and
// the heads of its CSV. Beside these, audit has every figure of inspect.
var cribContract = map[string]string{
	"list": `id size series shank grinds last note size_mm material web_mm second_web_mm second_web_at_mm web_taper
		chisel_angle_deg chisel_length_mm point_angle_wanted_deg lip_angle_1_deg lip_angle_2_deg lip_length_1_mm
		lip_length_2_mm lip_height_1_mm lip_height_2_mm clearance_1_deg clearance_2_deg heel_drop_1_mm heel_drop_2_mm
		heel_turn_deg helix_deg flute_mm flank_wear_mm corner_wear_mm margin_wear_mm lip_chip_mm cracked remove_mm
		feed_mm rpm depth_mm clean_up_mm every_mm length_mm back_taper least_diameter_mm`,
	"audit": `id size material verdict reasons`,
	"plan": `do turn id size size_mm verdict reasons stock_reason stock_mm regrinds_left count lip_angle_deg
		take_1_inner_mm take_1_outer_mm take_2_inner_mm take_2_outer_mm thin_to_web_mm`,
}

func TestNamesOfCribs(t *testing.T) {
	for command, text := range cribContract {
		want := strings.Fields(text)
		if command == "audit" {
			for name := range compute(t, "inspect", "--sample").Results {
				if !strings.HasPrefix(name, "verdict") {
					want = append(want, name)
				}
			}
		}
		slices.Sort(want)
		d := computeCrib(t, command, "--sample")
		if len(d.Results) < 24 || d.Command != "crib "+command || !d.Sample {
			t.Errorf("%s: %d results of %q, sample %v", command, len(d.Results), d.Command, d.Sample)
		}
		for _, row := range d.Results {
			if got := keys(row); !slices.Equal(got, want) {
				t.Fatalf("crib %s has\n%v, not\n%v", command, got, want)
			}
		}
		rows, err := csv.NewReader(strings.NewReader(run("", "crib", command, "--sample", "--format", "csv").out)).ReadAll()
		if err != nil || len(rows) != len(d.Results)+1 {
			t.Fatalf("crib %s: %d rows of CSV, %v", command, len(rows), err)
		}
		slices.Sort(rows[0])
		if !slices.Equal(rows[0], want) {
			t.Errorf("crib %s: the head of the CSV is %v", command, rows[0])
		}
	}
}

// A crib's figures are those that inspect gives for the same readings.
func TestAuditAgreesWithInspect(t *testing.T) {
	alone := compute(t, "inspect", "--size", "1/2", "--web", "0.085", "--chisel-length", "0.104", "--lip-angle", "59,59",
		"--lip-height", "0.001", "--clearance", "12", "--flute", "4.1", "--depth", "1.5").Results
	for _, row := range computeCrib(t, "audit", "--sample").Results {
		if row["id"] != "I32-1" {
			continue
		}
		for name, want := range alone {
			if got, there := row[name]; there && got != want {
				t.Errorf("%s is %v, alone %v", name, got, want)
			}
		}
		return
	}
	t.Error("there is no I32-1")
}
