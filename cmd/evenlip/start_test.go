package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// libraries is what the libraries cost by being there: they are linked, their
// initialisation runs, one empty command is called.
const libraries = `package main

import (
	"fmt"
	"os"

	_ "github.com/charmbracelet/lipgloss"
	"github.com/spf13/cobra"
	_ "gopkg.in/yaml.v3"
)

func main() {
	c := &cobra.Command{Use: "x", Run: func(*cobra.Command, []string) { fmt.Println("hello, world") }}
	if c.Execute() != nil {
		os.Exit(1)
	}
}
`

// BenchmarkStart runs evenlip from start to end, by turns with a program that does no
// more than link the same libraries, so that what else the machine has to do falls on
// both alike. It gives the medians of the CPU time, the system's work included.
func BenchmarkStart(b *testing.B) {
	dir := b.TempDir()
	source := filepath.Join(dir, "libraries.go")
	if err := os.WriteFile(source, []byte(libraries), 0o600); err != nil {
		b.Fatal(err)
	}
	floor, evenlip := build(b, dir, "libraries", source), build(b, dir, "evenlip", ".")
	b.Setenv("XDG_CONFIG_HOME", dir)
	for _, line := range [...]string{
		"chisel --size 12mm --web 1.8mm --chisel-angle 125 --format json",
		"chisel --size 12mm --web 1.8mm --chisel-angle 125",
		"inspect --sample",
		"crib audit --sample",
	} {
		args := strings.Fields(line)
		b.Run(line, func(b *testing.B) {
			var its, floors []time.Duration
			for range b.N {
				floors = append(floors, run(b, floor))
				its = append(its, run(b, evenlip, args...))
			}
			b.ReportMetric(float64(median(its))/1e6, "ms-cpu/op")
			b.ReportMetric(float64(median(its))/float64(median(floors)), "x-libraries")
		})
	}
}

// build builds a program and copies it, as installing one does: what the linker wrote
// lies in memory in smaller pieces and starts up to a fifth slower than its copy.
func build(b *testing.B, dir, name, what string) string {
	b.Helper()
	linked, program := filepath.Join(dir, name+".linked"), filepath.Join(dir, name)
	cmd := exec.Command("go", "build", "-trimpath", "-o", linked, what)
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	if text, err := cmd.CombinedOutput(); err != nil {
		b.Fatalf("cannot build %s: %v\n%s", what, err, text)
	}
	bytes, err := os.ReadFile(linked)
	if err != nil {
		b.Fatal(err)
	}
	if err := os.WriteFile(program, bytes, 0o700); err != nil {
		b.Fatal(err)
	}
	return program
}

// run runs a program once, with nothing to read and nobody to look at what it prints.
func run(b *testing.B, program string, args ...string) time.Duration {
	b.Helper()
	cmd := exec.Command(program, args...)
	if err := cmd.Run(); err != nil {
		b.Fatalf("%s %v: %v", program, args, err)
	}
	return cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
}

func median(times []time.Duration) time.Duration {
	slices.Sort(times)
	return times[len(times)/2]
}
