//go:build unix

package main

import (
	"cmp"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"time"
)

// cost is what one run took, the system's work on its behalf included.
type cost struct {
	cpu    time.Duration
	faults float64 // pages of memory that had to be mapped
}

// measured holds the runs of a contender and, beside each, one of either floor.
type measured struct {
	contender
	size                   int64 // of the program, bytes
	least, libraries, runs []cost
}

// warmUp is how many rounds are run and not counted: the first finds the
// programs not yet in memory.
const warmUp = 3

// measure runs every contender by turns with the two floors, so that what else
// the machine has to do falls on all alike.
func measure(dir string, rounds int) ([]measured, error) {
	all := make([]measured, len(contenders))
	for i, c := range contenders {
		c.program = filepath.Join(dir, cmp.Or(c.program, "evenlip"))
		info, err := os.Stat(c.program)
		if err != nil {
			return nil, err
		}
		all[i] = measured{contender: c, size: info.Size()}
		for round := -warmUp; round < rounds; round++ {
			if err := all[i].round(dir, round); err != nil {
				return nil, err
			}
		}
	}
	return all, nil
}

// round runs all three once; which is first changes from round to round, so
// that none is the fresher in the processor's memory. The rounds before the
// first warm up.
func (m *measured) round(dir string, round int) error {
	programs := [3]contender{{program: filepath.Join(dir, hello)}, {program: filepath.Join(dir, libraries)}, m.contender}
	var costs [3]cost
	for k := range programs {
		at := (k + round + warmUp) % 3
		var err error
		if costs[at], err = run(dir, programs[at]); err != nil {
			return err
		}
	}
	if round >= 0 {
		m.least, m.libraries, m.runs = append(m.least, costs[0]), append(m.libraries, costs[1]), append(m.runs, costs[2])
	}
	return nil
}

// run runs c once, with nothing to read, nobody to look at what it prints, and
// no shop's settings.
func run(dir string, c contender) (cost, error) {
	cmd := exec.Command(c.program, c.args...)
	cmd.Env = append(os.Environ(), "XDG_CONFIG_HOME="+filepath.Join(dir, "none"))
	if err := cmd.Run(); err != nil {
		return cost{}, fmt.Errorf("%s: %w", cmp.Or(c.name, filepath.Base(c.program)), err)
	}
	k := cost{cpu: cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()}
	if usage, ok := cmd.ProcessState.SysUsage().(*syscall.Rusage); ok {
		k.faults = float64(usage.Minflt)
	}
	return k, nil
}
