package cli_test

import (
	"bytes"
	"cmp"
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/cli"
)

// answer is what one run of the program left behind.
type answer struct {
	status   int
	out, err string
}

// run runs the program in this process, and holds what it prints to its schema.
func run(stdin string, args ...string) answer {
	var out, errw bytes.Buffer
	status := cli.Main(args, strings.NewReader(stdin), &out, &errw)
	if err := held(args, status, out.String()); err != nil {
		return answer{notHeld, out.String(), err.Error()}
	}
	return answer{status, out.String(), errw.String()}
}

// document is the JSON of one calculation.
type document struct {
	Command  string
	Inputs   map[string]map[string]any
	Results  map[string]any
	Limits   map[string]limit
	Set      []string `json:"set_by_shop"`
	Findings []struct{ Code, Severity, Text string }
	Steps    []step
}

// limit is what a figure is held against.
type limit struct {
	Low, High     *float64
	State, Source string
}

// step is the working of one figure.
type step struct{ Figure, Formula, Numbers, Result, Source string }

type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
}

// compute runs the program for JSON.
func compute(t fataler, args ...string) document {
	t.Helper()
	a := run("", append(args, "--format", "json")...)
	var d document
	if err := json.Unmarshal([]byte(a.out), &d); a.status != 0 || err != nil {
		t.Fatalf("evenlip %s: status %d, %v\n%s", strings.Join(args, " "), a.status, err, a.err)
	}
	return d
}

var _ fataler = (*testing.T)(nil)

// keys returns the keys of m in order.
func keys[K cmp.Ordered, V any](m map[K]V) []K { return slices.Sorted(maps.Keys(m)) }

// repository is where the whole of the project lies.
const repository = "../.."
