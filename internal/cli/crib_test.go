package cli_test

import (
	"encoding/csv"
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// cribDocument is the JSON of a whole crib.
type cribDocument struct {
	Command  string
	Sample   bool
	Results  struct{ Rows []map[string]any }
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

// The heads of a crib's CSV are the names in its JSON but for the limits, for which there
// is no cell; each drill has them all, and an audit has every figure of inspect.
func TestNamesOfCribs(t *testing.T) {
	for _, command := range []string{"list", "audit", "plan"} {
		d := computeCrib(t, command, "--sample")
		if len(d.Results.Rows) < 24 || d.Command != "crib "+command || !d.Sample {
			t.Errorf("%s: %d results of %q, sample %v", command, len(d.Results.Rows), d.Command, d.Sample)
		}
		want := keys(d.Results.Rows[0])
		for _, row := range d.Results.Rows {
			if got := keys(row); !slices.Equal(got, want) {
				t.Fatalf("crib %s has\n%v, and\n%v", command, got, want)
			}
		}
		rows, err := csv.NewReader(strings.NewReader(run("", "crib", command, "--sample", "--format", "csv").out)).ReadAll()
		if err != nil || len(rows) != len(d.Results.Rows)+1 {
			t.Fatalf("crib %s: %d rows of CSV, %v", command, len(rows), err)
		}
		want = slices.DeleteFunc(want, func(name string) bool { return name == "limits" })
		slices.Sort(rows[0])
		if !slices.Equal(rows[0], want) {
			t.Errorf("crib %s: the head of the CSV is %v", command, rows[0])
		}
		if command != "audit" {
			continue
		}
		for name := range compute(t, "inspect", "--sample").Results {
			if !strings.HasPrefix(name, "verdict") && !slices.Contains(want, name) {
				t.Errorf("an audit has no %s", name)
			}
		}
	}
}

// A crib's figures are those that inspect gives for the same readings.
func TestAuditAgreesWithInspect(t *testing.T) {
	alone := compute(t, "inspect", "--size", "1/2", "--web", "0.085", "--chisel-length", "0.104", "--lip-angle", "59,59",
		"--lip-height", "0.001", "--clearance", "12", "--flute", "4.1", "--depth", "1.5").Results
	for _, row := range computeCrib(t, "audit", "--sample").Results.Rows {
		if row["id"] != "I32-1" {
			continue
		}
		for name, want := range alone {
			if got, there := row[name]; there && !reflect.DeepEqual(got, want) {
				t.Errorf("%s is %v, alone %v", name, got, want)
			}
		}
		return
	}
	t.Error("there is no I32-1")
}

// Of every drill an audit has what inspect has by itself, what is not known among
// it.
func TestEveryDrillOfAnAuditAgrees(t *testing.T) {
	undecided := 0
	for _, row := range computeCrib(t, "audit", "--sample").Results.Rows {
		inspected := compute(t, "inspect", "--sample", "--drill", row["id"].(string))
		alone := inspected.Results
		if got := limitsOf(t, row); len(got) != len(inspected.Limits) {
			t.Errorf("%s: %d limits, alone %d", row["id"], len(got), len(inspected.Limits))
		} else {
			for name, want := range inspected.Limits {
				if want.Source = ""; !reflect.DeepEqual(got[name], want) {
					t.Errorf("%s: the limit of %s is %+v, alone %+v", row["id"], name, got[name], want)
				}
			}
		}
		if alone["verdict"] == nil {
			undecided++
		}
		for name, got := range row {
			if want, there := alone[name]; there && !reflect.DeepEqual(got, want) {
				t.Errorf("%s: %s is %v, alone %v", row["id"], name, got, want)
			}
		}
	}
	if undecided == 0 {
		t.Error("there is no drill of which too little was measured")
	}
}

// limitsOf are the limits of a row.
func limitsOf(t *testing.T, row map[string]any) map[string]limit {
	text, err := json.Marshal(row["limits"])
	if err != nil {
		t.Fatal(err)
	}
	var limits map[string]limit
	if err := json.Unmarshal(text, &limits); err != nil {
		t.Fatal(err)
	}
	return limits
}

// One drill is told the same by itself and among the day's.
func TestPlanAgreesWithRegrind(t *testing.T) {
	compared := 0
	for _, row := range computeCrib(t, "plan", "--sample").Results.Rows {
		if do := row["do"]; do != "grind" && do != "thin" && do != "leave" {
			continue
		}
		alone := compute(t, "regrind", "--sample", "--drill", row["id"].(string)).Results
		for _, name := range []string{"stock_mm", "stock_reason", "regrinds_left", "take_1_inner_mm", "take_1_outer_mm", "take_2_inner_mm", "take_2_outer_mm", "web_target_mm", "retire_reason"} {
			if alone[name] != row[name] {
				t.Errorf("%s: %s is %v, alone %v", row["id"], name, row[name], alone[name])
			}
		}
		compared++
	}
	if compared < 15 {
		t.Errorf("only %d drills were compared", compared)
	}
}
