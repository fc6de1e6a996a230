//go:build unix

package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenlip/internal/cli"
)

func TestMedian(t *testing.T) {
	for _, c := range []struct {
		of   []float64
		want float64
	}{{[]float64{3}, 3}, {[]float64{9, 1, 2}, 2}, {[]float64{8, 1, 2, 4}, 3}} {
		if got := median(c.of); got != c.want {
			t.Errorf("%v: %g, want %g", c.of, got, c.want)
		}
	}
}

// Worked by hand: the medians are 4, 2 and 3 ms, so 2.00 and 1.33 times.
func TestTable(t *testing.T) {
	ms := func(cpu, faults int) cost {
		return cost{time.Duration(cpu) * time.Millisecond, float64(faults)}
	}
	for aim, says := range map[float64]string{0: "", 1.34: "1.34", 1.3: "1.30, missed"} {
		var out bytes.Buffer
		table(&out, []measured{{
			contender: contender{name: "it", aim: aim}, size: 2_500_000,
			least:     []cost{ms(1, 9), ms(4, 9), ms(2, 9)},
			libraries: []cost{ms(3, 9), ms(1, 9), ms(9, 9)},
			runs:      []cost{ms(3, 40), ms(4, 10), ms(5, 30)},
		}})
		want := "| it | 4.00 | 2.00 | 1.33 | " + says + " | 30 | 2.5 |\n"
		if !strings.HasSuffix(out.String(), want) {
			t.Errorf("got\n%swant it to end in\n%s", out.String(), want)
		}
	}
}

// What is measured is an answer and not a refusal.
func TestContendersAnswer(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	answered := 0
	for _, c := range contenders {
		if c.program != "" {
			if floors[c.program] == "" {
				t.Errorf("%s: there is no program called %s", c.name, c.program)
			}
			continue
		}
		var out, errw bytes.Buffer
		if status := cli.Main(c.args, strings.NewReader(""), &out, &errw); status != 0 || out.Len() == 0 {
			t.Errorf("%s: status %d, %s", c.name, status, errw.String())
		}
		answered++
	}
	if answered < 4 {
		t.Errorf("only %d runs of evenlip are measured", answered)
	}
}

// One round over programs that stand in for the real ones.
func TestMeasure(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"evenlip", hello, libraries} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("#!/bin/sh\nexit 0\n"), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	all, err := measure(dir, 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range all {
		for _, runs := range [][]cost{m.least, m.libraries, m.runs} {
			if len(runs) != 2 {
				t.Errorf("%s: %d runs", m.name, len(runs))
			}
		}
		for _, c := range m.runs {
			if c.cpu <= 0 || c.faults <= 0 {
				t.Errorf("%s: cost %+v", m.name, c)
			}
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "evenlip"), []byte("#!/bin/sh\nexit 3\n"), 0o700); err != nil {
		t.Fatal(err)
	}
	if _, err := measure(dir, 1); err == nil || !strings.Contains(err.Error(), "chisel --format json: exit status 3") {
		t.Errorf("a run that fails: %v", err)
	}
	if err := bench(io.Discard, 0); err == nil {
		t.Error("no rounds are taken for a measurement")
	}
}
