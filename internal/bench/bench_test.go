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

// Worked by hand: medians 4 over 2 is 2.00; the pairs are 3, 1 and 2.5 fold.
func TestTable(t *testing.T) {
	ms := func(cpu, wall, faults int) cost {
		return cost{time.Duration(cpu) * time.Millisecond, time.Duration(wall) * time.Millisecond, float64(faults)}
	}
	var out bytes.Buffer
	table(&out, []pair{{
		contender: contender{name: "it", aim: 1.5}, size: 2_500_000,
		floor: []cost{ms(1, 2, 9), ms(4, 2, 9), ms(2, 2, 9)},
		costs: []cost{ms(3, 4, 40), ms(4, 2, 10), ms(5, 8, 30)},
	}})
	const want = "| it | 4.00 | 2.00 | 2.50 | 1.50 | 4.00 | 2.00 | 2.00 | 30 | 2.5 |\n"
	if !strings.HasSuffix(out.String(), want) {
		t.Errorf("got\n%swant it to end in\n%s", out.String(), want)
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
	for _, name := range []string{"evenlip", hello, "libraries"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("#!/bin/sh\nexit 0\n"), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	pairs, err := measure(dir, 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range pairs {
		if len(p.floor) != 2 || len(p.costs) != 2 {
			t.Errorf("%s: %d and %d runs", p.name, len(p.floor), len(p.costs))
		}
		for _, c := range p.costs {
			if c.wall <= 0 || c.cpu <= 0 || c.faults <= 0 {
				t.Errorf("%s: cost %+v", p.name, c)
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
