// Page writes docs/verification.md to standard output, out of the folder in
// which the tests left what they have shown (see testkit):
//
//	go run ./internal/testkit/page FOLDER
package main

import (
	"cmp"
	_ "embed"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"text/template"

	"evenlip/internal/testkit"
)

//go:embed page.md
var page string

// unexplained is the difference up to which a table may be left without a word of
// why it differs.
const unexplained = 0.01

func main() {
	log.SetFlags(0)
	if len(os.Args) != 2 {
		log.Fatal("usage: page FOLDER")
	}
	shown, err := read(os.Args[1])
	if err != nil {
		log.Fatal(err)
	}
	c := gather(shown)
	for _, t := range c.Tables {
		if t.Off > unexplained && t.Why == "" {
			log.Fatalf("%s: %s, and nothing says why (testkit.Outside.Because)", t.Name, t.Difference())
		}
	}
	if err := template.Must(template.New("page").Parse(page)).Execute(os.Stdout, c); err != nil {
		log.Fatal(err)
	}
}

// read returns what the files of a folder hold, in order, each once: a test may
// have run twice. Differences are rounded, for their last digits are not the same
// on every processor.
func read(folder string) ([]testkit.Shown, error) {
	files, err := filepath.Glob(filepath.Join(folder, "*.jsonl"))
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("no test has left anything in %s", folder)
	}
	once := map[testkit.Shown]bool{}
	for _, file := range files {
		f, err := os.Open(file)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		for lines := json.NewDecoder(f); ; {
			var s testkit.Shown
			if err := lines.Decode(&s); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				return nil, fmt.Errorf("%s: %w", file, err)
			}
			s.Off = math.Round(1000*s.Off) / 1000
			once[s] = true
		}
	}
	return slices.SortedFunc(maps.Keys(once), func(a, b testkit.Shown) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(name(a), name(b)), cmp.Compare(len(a.What), len(b.What)), cmp.Compare(a.What, b.What))
	}), nil
}

// rank puts print first, what was worked out here last, and then the invariants.
func rank(s testkit.Shown) int {
	return slices.IndexFunc([]string{testkit.Print, testkit.Measured, testkit.Recalled, testkit.Practice, testkit.Again, ""},
		func(sure string) bool { return strings.HasPrefix(s.Sure, sure) })
}

// name is the row of the page that something belongs to.
func name(s testkit.Shown) string {
	if s.Work == "" {
		return s.Package
	}
	return s.Work + " | " + s.Place + " | " + s.Sure
}

// row is one place in a source, or the invariants of a package.
type row struct {
	testkit.Shown // where the difference is largest
	Name          string
	All           []string // the figures, or what holds, the shortest first
	Drawn         int      // cases, of invariants
}

// Difference is the largest, and where.
func (r *row) Difference() string {
	if r.Off == 0 {
		return "none"
	}
	return fmt.Sprintf("%.1f %%, %s", 100*r.Off, r.What)
}

// Such is a few of what holds.
func (r *row) Such() string { return strings.Join(r.All[:min(3, len(r.All))], "; ") }

// contents is what the page is filled with.
type contents struct {
	Tables, Packages           []*row
	Figures, Properties, Drawn int
}

// gather makes rows of what was shown, which is in their order.
func gather(all []testkit.Shown) (c contents) {
	for _, s := range all {
		rows, count := &c.Tables, &c.Figures
		if s.Work == "" {
			rows, count = &c.Packages, &c.Properties
		}
		if n := len(*rows); n == 0 || (*rows)[n-1].Name != name(s) {
			*rows = append(*rows, &row{Shown: s, Name: name(s)})
		}
		last := (*rows)[len(*rows)-1]
		last.All = append(last.All, s.What)
		last.Drawn += s.Cases
		if s.Off > last.Off {
			last.Shown = s
		}
		*count++
		c.Drawn += s.Cases
	}
	return c
}
