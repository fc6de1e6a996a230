//go:build unix

// Command bench measures what a run of evenlip costs from start to end, as a
// multiple of what the least Go program, and a program that does no more than
// link the same libraries, cost on the same machine at the same time:
// `go run ./internal/bench`. It prints a table in Markdown, as
// docs/performance.md holds it.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// contender is a program with its arguments, and how many times the time of
// the program that links the libraries it aims to take; 0 for no aim.
type contender struct {
	name    string
	program string // evenlip where it is empty
	args    []string
	aim     float64
}

// The programs that evenlip is measured against: the least that prints
// something, and one that links the same libraries and does no more.
const (
	hello     = "hello"
	libraries = "libraries"
)

// floors holds their sources, each a file of its own.
var floors = map[string]string{
	hello: `package main

import "fmt"

func main() { fmt.Println("hello, world") }
`,
	// What the libraries cost by being there: they are linked, their
	// initialisation runs, one empty command is called.
	libraries: `package main

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
`,
}

var contenders = []contender{
	{name: "the least program again", program: hello},
	{name: "cobra, lipgloss and yaml linked, nothing done", program: libraries},
	{name: "chisel --format json", args: []string{"chisel", "--size", "12mm", "--web", "1.8mm", "--chisel-angle", "125", "--format", "json"}, aim: 1.2},
	{name: "chisel", args: []string{"chisel", "--size", "12mm", "--web", "1.8mm", "--chisel-angle", "125"}, aim: 1.25},
	{name: "inspect --sample", args: []string{"inspect", "--sample"}, aim: 1.4},
	{name: "crib audit --sample", args: []string{"crib", "audit", "--sample"}, aim: 1.9},
}

func main() {
	rounds := flag.Int("rounds", 200, "how often each is run; the median counts")
	flag.Parse()
	if err := bench(os.Stdout, *rounds); err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
}

func bench(w io.Writer, rounds int) error {
	if rounds < 1 {
		return fmt.Errorf("-rounds: %d measures nothing", rounds)
	}
	dir, err := os.MkdirTemp("", "evenlip-bench")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	if err := build(dir); err != nil {
		return err
	}
	before := load()
	all, err := measure(dir, rounds)
	if err != nil {
		return err
	}
	fmt.Fprintf(w, "%s\n\nLoad %s before, %s after; %d rounds.\n\n", machine(), before, load(), rounds)
	table(w, all)
	return nil
}

// build makes every program with the same flags.
func build(dir string) error {
	if err := compile(filepath.Join(dir, "evenlip"), "evenlip/cmd/evenlip"); err != nil {
		return err
	}
	for name, source := range floors {
		file := filepath.Join(dir, name+".go")
		if err := os.WriteFile(file, []byte(source), 0o600); err != nil {
			return err
		}
		if err := compile(filepath.Join(dir, name), file); err != nil {
			return err
		}
	}
	return nil
}

// compile builds a program and copies it, as installing one does: what the
// linker wrote lies in memory in smaller pieces, piece by piece as luck would
// have it, and starts up to a fifth slower than its copy.
func compile(to, what string) error {
	linked := to + ".linked"
	cmd := exec.Command("go", "build", "-trimpath", "-o", linked, what)
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	if text, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("cannot build %s: %w\n%s", what, err, strings.TrimSpace(string(text)))
	}
	program, err := os.ReadFile(linked)
	if err != nil {
		return err
	}
	return os.WriteFile(to, program, 0o700)
}
