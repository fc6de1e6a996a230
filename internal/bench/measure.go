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
	cpu, wall time.Duration
	faults    float64 // pages of memory that had to be mapped
}

// pair holds the runs of a contender and, beside each, one of the least program.
type pair struct {
	contender
	size         int64 // of the program, bytes
	floor, costs []cost
}

// warmUp is how many rounds are run and not counted: the first finds the
// programs not yet in memory.
const warmUp = 3

// measure runs every contender by turns with the least program, so that what
// else the machine has to do falls on both alike, and neither is the fresher in
// the processor's memory.
func measure(dir string, rounds int) ([]pair, error) {
	pairs := make([]pair, len(contenders))
	for i, c := range contenders {
		c.program = filepath.Join(dir, cmp.Or(c.program, "evenlip"))
		info, err := os.Stat(c.program)
		if err != nil {
			return nil, err
		}
		pairs[i] = pair{contender: c, size: info.Size()}
		for round := -warmUp; round < rounds; round++ {
			if err := pairs[i].run(dir, round); err != nil {
				return nil, err
			}
		}
	}
	return pairs, nil
}

// run runs both once; which is first changes from round to round. The rounds
// before the first warm up.
func (p *pair) run(dir string, round int) error {
	both := [2]contender{{program: filepath.Join(dir, hello)}, p.contender}
	var costs [2]cost
	for k := range both {
		at := (k + round&1) % 2
		var err error
		if costs[at], err = run(dir, both[at]); err != nil {
			return err
		}
	}
	if round >= 0 {
		p.floor, p.costs = append(p.floor, costs[0]), append(p.costs, costs[1])
	}
	return nil
}

// run runs c once, with nothing to read, nobody to look at what it prints, and
// no shop's settings.
func run(dir string, c contender) (cost, error) {
	cmd := exec.Command(c.program, c.args...)
	cmd.Env = append(os.Environ(), "XDG_CONFIG_HOME="+filepath.Join(dir, "none"))
	start := time.Now()
	if err := cmd.Run(); err != nil {
		return cost{}, fmt.Errorf("%s: %w", c.name, err)
	}
	k := cost{wall: time.Since(start), cpu: cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()}
	if usage, ok := cmd.ProcessState.SysUsage().(*syscall.Rusage); ok {
		k.faults = float64(usage.Minflt)
	}
	return k, nil
}
