package crib

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"evenlip/internal/fault"
)

// manyDrills is a crib of drills with a remark each.
func manyDrills(n int) string {
	var b strings.Builder
	b.WriteString("# kept by hand\nversion: 1\ndrills:\n")
	for i := range n {
		fmt.Fprintf(&b, "  # drill %d\n  - id: D%d\n    size: 12mm\n    web: 1.9mm   # caliper\n    flute: 70mm\n", i, i)
	}
	return b.String()
}

func inFile(t *testing.T, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), FileName)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func contents(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// small is a crib of two drills with whatever a hand may have left in the file.
const small = `# our drawer
version: 1   # the first

name: 'the small drawer'
keep: {12mm: 2}

drills:
  # the good one
  - id: "A1"
    size: 12mm     # off the shank
    web:   2mm     # caliper

    lip-angle: [59, 58]
    flute: 70mm
    flank-wear: 0.4mm
    note: it's used on "brackets"
    history:
      - {date: 2026-01-02, what: grind, stock: 0.5mm}   # by hand
  # the other one
  - id: B1
    size: 1/2
    web: 0.085

# the end
`

func read(t *testing.T, text string) *Crib {
	t.Helper()
	c, errs := Read("crib.yaml", []byte(text), nil)
	if len(errs) > 0 {
		t.Fatalf("%v", errs)
	}
	return c
}

func find(t *testing.T, c *Crib, id string) *Drill {
	t.Helper()
	d, ok := c.Find(id)
	if !ok {
		t.Fatalf("no drill is called %q", id)
	}
	return d
}

func ground(stock string) Change {
	return Change{Date: "2026-11-25", What: Grind, Stock: stock}
}

func rewritten(t *testing.T, text, id string, ch Change) string {
	t.Helper()
	_, out, err := Rewrite("crib.yaml", []byte(text), id, ch, nil)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

func complaints(faults fault.List) string {
	var out []string
	for _, f := range faults {
		text, _, _ := strings.Cut(f.Message(), "\n")
		out = append(out, fmt.Sprintf("%d:%d %s", f.At.Line, f.At.Column, text))
	}
	return strings.Join(out, "\n")
}
