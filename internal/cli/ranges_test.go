package cli_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// rowsOf runs a command whose answer is rows.
func rowsOf(t fataler, args ...string) []map[string]any {
	t.Helper()
	a := run("", append(args, "--format", "json")...)
	var d struct {
		Results struct{ Rows []map[string]any }
	}
	if err := json.Unmarshal([]byte(a.out), &d); a.status != 0 || err != nil {
		t.Fatalf("evenlip %s: status %d, %v\n%s", strings.Join(args, " "), a.status, err, a.err)
	}
	return d.Results.Rows
}

func same(a, b any) bool {
	x, isNumber := a.(float64)
	y, alsoNumber := b.(float64)
	if isNumber && alsoNumber {
		return math.Abs(x-y) <= 1e-9*math.Max(1, math.Abs(y))
	}
	return a == b
}

// swept is a reading of a command that is given as a range, with what else
// the command takes.
var swept = []struct {
	command, flag, unit string
	low, high           float64
	rest                []string
}{
	{"web", "remove", "mm", 0, 20, []string{"--size", "12mm", "--web", "1.8mm", "--chisel-angle", "125"}},
	{"inspect", "size", "mm", 8, 30, []string{"--web", "1.5mm", "--lip-angle", "59,58", "--clearance", "11", "--chisel-angle", "125"}},
	{"inspect", "clearance", "deg", 5, 20, []string{"--sample"}},
	{"lips", "lip-height", "mm", -0.2, 0.2, []string{"--size", "12mm", "--lip-angle", "59"}},
	{"point", "lip-angle", "deg", 50, 70, []string{"--size", "1/2"}},
	{"chisel", "chisel-angle", "deg", 100, 140, []string{"--size", "1/2", "--web", "0.07in"}},
	{"cone", "semi-angle", "deg", 20, 32, []string{"--size", "10mm", "--chisel-angle", "125"}},
	{"thrust", "feed", "mm", 0.05, 0.4, []string{"--size", "12mm"}},
	{"wheel", "wheel", "mm", 100, 300, []string{"--wheel-rpm", "2800"}},
	{"regrind", "flank-wear", "mm", 0, 0.5, []string{"--sample"}},
}

// Each row of a range is what the command says of that value alone.
func TestEachStepByItself(t *testing.T) {
	for _, c := range swept {
		t.Run(c.command+" "+c.flag, func(t *testing.T) {
			testkit.Property(t, "each row of a range is what the command says of that value alone", func(t *rapid.T) {
				from := rapid.IntRange(0, 900).Draw(t, "from")
				step := rapid.IntRange(1, 100).Draw(t, "step")
				steps := rapid.IntRange(0, 3).Draw(t, "steps")
				at := func(n int) float64 { return c.low + (c.high-c.low)*float64(from+n*step)/1300 }
				text := func(v float64) string { return strconv.FormatFloat(v, 'f', 9, 64) + c.unit }
				span := fmt.Sprintf("%s..%s by %s", text(at(0)), text(at(steps)+1e-6), text(at(1)-at(0)))
				rows := rowsOf(t, append([]string{c.command, "--" + c.flag, span}, c.rest...)...)
				if len(rows) != steps+1 {
					t.Fatalf("%s: %d rows, not %d", span, len(rows), steps+1)
				}
				for n, row := range rows {
					alone := compute(t, append([]string{c.command, "--" + c.flag, text(at(n))}, c.rest...)...)
					for key, want := range alone.Results {
						got, there := row[key]
						if _, list := want.([]any); list {
							continue
						}
						if num, is := want.(float64); is && there && got != nil && math.Abs(got.(float64)-num) < 1e-5*math.Max(1, math.Abs(num)) {
							continue
						}
						if !there || !same(got, want) {
							t.Fatalf("%s, row %d: %s is %v, alone %v", span, n, key, got, want)
						}
					}
				}
			})
		})
	}
}

// Two ranges make every pair, the later flag of the catalogue changing fastest,
// and the order of the flags does not matter.
func TestTwoRanges(t *testing.T) {
	one := rowsOf(t, "chisel", "--size", "12mm", "--web", "1mm..2mm by 0.5mm", "--chisel-angle", "120..130 by 5")
	two := rowsOf(t, "chisel", "--chisel-angle", "120..130 by 5", "--web", "1mm..2mm by 0.5mm", "--size", "12mm")
	if len(one) != 9 || len(two) != 9 {
		t.Fatalf("%d and %d rows, not 9", len(one), len(two))
	}
	for i, row := range one {
		web, angle := 1+0.5*float64(i/3), 120+5*float64(i%3)
		if !same(row["given_web_mm"], web) || !same(row["given_chisel_angle_deg"], angle) {
			t.Errorf("row %d is at %v and %v", i, row["given_web_mm"], row["given_chisel_angle_deg"])
		}
		if want := web / math.Sin(angle*math.Pi/180); !same(row["chisel_length_mm"], want) || !same(two[i]["chisel_length_mm"], want) {
			t.Errorf("row %d: chisel %v and %v, not %v", i, row["chisel_length_mm"], two[i]["chisel_length_mm"], want)
		}
	}
}

// No form loses a row or a column.
func TestRangeInEveryForm(t *testing.T) {
	args := []string{"inspect", "--sample", "--remove", "0mm..5mm by 0.01mm"}
	rows := rowsOf(t, args...)
	a := run("", append(args, "--format", "csv")...)
	records, err := csv.NewReader(bytes.NewReader([]byte(a.out))).ReadAll()
	if err != nil || len(records) != len(rows)+1 || len(rows) != 501 {
		t.Fatalf("%v: %d CSV records for %d rows", err, len(records), len(rows))
	}
	for i, row := range rows {
		if len(row) != len(records[0]) {
			t.Fatalf("row %d has %d names in JSON and %d in CSV", i, len(row), len(records[0]))
		}
		for n, key := range records[0] {
			if v, isNumber := row[key].(float64); isNumber {
				if got, err := strconv.ParseFloat(records[i+1][n], 64); err != nil || !same(got, v) {
					t.Fatalf("row %d, %s: %v in JSON, %q in CSV", i, key, v, records[i+1][n])
				}
			}
		}
	}
	plain := run("", append(args, "--format", "plain")...)
	if n := strings.Count(plain.out, "\n"); n != len(rows)+1 {
		t.Errorf("%d lines of plain text for %d rows", n, len(rows))
	}
	for _, width := range []int{40, 80, 120} {
		table := run("", append(args, "--width", strconv.Itoa(width))...)
		if table.status != 0 || !strings.Contains(table.out, "5.00") {
			t.Errorf("no table at %d: %s", width, table.err)
		}
	}
}

// Gauges that are named count in every row: a verdict that one drill does not
// bear out is not borne out in a table either.
func TestRangeWithGauges(t *testing.T) {
	args := []string{"inspect", "--size", "12mm", "--web", "1.8mm", "--chisel-angle", "125", "--lip-angle", "59,59", "--clearance", "12",
		"--lip-height", "0.08mm..0.09mm by 0.01mm"}
	if v := rowsOf(t, args...)[0]["verdict"]; v != "fit" {
		t.Errorf("verdict %v", v)
	}
	if v := rowsOf(t, append(args, "--indicator", "0.2mm")...)[0]["verdict"]; v != nil {
		t.Errorf("verdict %v with an indicator too coarse to tell", v)
	}
}

// Two ranges are shown to people as a table a figure, the numbers of the list
// that scripts get, each in its row and column; too wide a one stays a list.
func TestTwoRangesStandAcross(t *testing.T) {
	args := []string{"chisel", "--full", "--size", "12mm", "--web", "1mm..2mm by 0.5mm", "--chisel-angle", "120..130 by 5"}
	a := run("", args...)
	_, table, found := strings.Cut(a.out, "chisel-edge length, mm\n  across: chisel-angle\n  web mm  120.0°  125.0°  130.0°\n")
	if !found {
		t.Fatalf("%s%s", a.out, a.err)
	}
	lines := strings.Split(table, "\n")
	for i, row := range rowsOf(t, args...) {
		fields := strings.Fields(lines[i/3])
		got, err := strconv.ParseFloat(fields[1+i%3], 64)
		if err != nil || math.Abs(got-row["chisel_length_mm"].(float64)) > 0.005 || !strings.HasPrefix(fields[0], fmt.Sprintf("%.2f", row["given_web_mm"])) {
			t.Errorf("row %d: %v, want %v", i, fields, row)
		}
	}
	wide := run("", "chisel", "--full", "--size", "12mm", "--web", "1mm..2mm by 0.5mm", "--chisel-angle", "120..130 by 1")
	if strings.Contains(wide.out, "across") || !strings.Contains(wide.out, "Step by step") {
		t.Errorf("%s", wide.out)
	}
}
