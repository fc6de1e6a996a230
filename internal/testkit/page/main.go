// Page writes docs/verification.md to standard output, out of the folder in
// which the tests left what they have shown (see testkit):
//
//	go run ./internal/testkit/page FOLDER
package main

import (
	"bufio"
	"cmp"
	_ "embed"
	"encoding/json"
	"fmt"
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
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: page FOLDER")
		os.Exit(2)
	}
	if err := write(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "page:", err)
		os.Exit(1)
	}
}

func write(folder string) error {
	all, err := read(folder)
	if err != nil {
		return err
	}
	c, err := gather(all)
	if err != nil {
		return err
	}
	return template.Must(template.New("page").Parse(page)).Execute(os.Stdout, c)
}

// read returns what the files of a folder hold, each once, in order.
func read(folder string) ([]testkit.Shown, error) {
	files, err := filepath.Glob(filepath.Join(folder, "*.jsonl"))
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("no test has left anything in %s", folder)
	}
	once := map[testkit.Shown]testkit.Shown{}
	for _, file := range files {
		f, err := os.Open(file)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		for lines := bufio.NewScanner(f); lines.Scan(); {
			var s testkit.Shown
			if err := json.Unmarshal(lines.Bytes(), &s); err != nil {
				return nil, fmt.Errorf("%s: %w", file, err)
			}
			key := s
			key.Off, key.Cases = 0, 0
			s.Off, s.Cases = max(s.Off, once[key].Off), max(s.Cases, once[key].Cases)
			once[key] = s
		}
	}
	var all []testkit.Shown
	for _, s := range once {
		all = append(all, s)
	}
	slices.SortFunc(all, func(a, b testkit.Shown) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.Work, b.Work), cmp.Compare(a.Sure, b.Sure), cmp.Compare(a.Place, b.Place),
			cmp.Compare(a.Package, b.Package), cmp.Compare(len(a.What), len(b.What)), cmp.Compare(a.What, b.What))
	})
	return all, nil
}

// rank puts print first and what this program's authors worked out last.
func rank(s testkit.Shown) int {
	return slices.IndexFunc([]string{testkit.Print, testkit.Measured, testkit.Recalled, testkit.Practice, testkit.Again, ""},
		func(sure string) bool { return strings.HasPrefix(s.Sure, sure) })
}

// contents is what the page is filled with.
type contents struct {
	Checks, Properties, Cases int
	Tables                    []*table
	Packages                  []*invariants
}

// table is one place in a source.
type table struct {
	testkit.Shown     // where the difference is largest
	Figures       int // compared
}

// Difference is the largest in the table, and where.
func (t *table) Difference() string {
	if permille(t.Off) == 0 {
		return "none"
	}
	return fmt.Sprintf("%.1f %%, %s", permille(t.Off)/10, t.What)
}

// permille rounds, for the last digits differ among processors.
func permille(part float64) float64 { return math.Round(1000 * part) }

// invariants are those of one package, the shortest first.
type invariants struct {
	Package string
	Holds   []string
	Cases   int
}

// Such is a few of them.
func (i *invariants) Such() string {
	const few = 3
	return strings.Join(i.Holds[:min(few, len(i.Holds))], "; ")
}

// gather counts what was shown, which is in order.
func gather(all []testkit.Shown) (contents, error) {
	var c contents
	for _, s := range all {
		if s.Work == "" {
			if n := len(c.Packages); n == 0 || c.Packages[n-1].Package != s.Package {
				c.Packages = append(c.Packages, &invariants{Package: s.Package})
			}
			last := c.Packages[len(c.Packages)-1]
			last.Holds = append(last.Holds, s.What)
			last.Cases += s.Cases
			c.Properties++
			c.Cases += s.Cases
			continue
		}
		if n := len(c.Tables); n == 0 || c.Tables[n-1].Work != s.Work || c.Tables[n-1].Sure != s.Sure || c.Tables[n-1].Place != s.Place {
			c.Tables = append(c.Tables, &table{Shown: s})
		}
		last := c.Tables[len(c.Tables)-1]
		if permille(s.Off) > permille(last.Off) {
			last.Shown = s
		}
		last.Figures++
		c.Checks++
	}
	for _, t := range c.Tables {
		if t.Off > unexplained && t.Why == "" {
			return c, fmt.Errorf("%s, %s: %s differs by %.1f %%, and nothing says why (testkit.Outside.Because)", t.Work, t.Place, t.What, 100*t.Off)
		}
	}
	return c, nil
}
