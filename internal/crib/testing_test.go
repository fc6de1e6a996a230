package crib

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
	"evenlip/internal/strict"
)

// TestMain makes the test's own program a writer, so that real processes can
// write at once and be killed.
func TestMain(m *testing.M) {
	if room := os.Getenv("CRIB_TEST_ROOM"); room != "" {
		os.Exit(inRoom(room))
	}
	if path := os.Getenv("CRIB_TEST_WRITER"); path != "" {
		os.Exit(writer(path, os.Getenv("CRIB_TEST_ID"), os.Getenv("CRIB_TEST_NOTE")))
	}
	os.Exit(m.Run())
}

// inRoom makes a record where there is little room; see store_linux_test.go.
var inRoom func(room string) int

func writer(path, id, note string) int {
	os.Stdout.WriteString("begun\n")
	_, err := Record(path, id, Change{Date: "2026-11-25", What: Readings, Note: note, Readings: map[drill.Reading]string{drill.Web: "2mm"}}, nil)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return 0
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

func plainly(d *drill.Drill) *sheet.Sheet { return judge.Sheet(d, false) }

func read(t *testing.T, text string) *Crib {
	t.Helper()
	c, errs := Read("crib.yaml", []byte(text), nil)
	if len(errs) > 0 {
		t.Fatalf("%v", errors.Join(errs...))
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

func complaints(errs []error) string {
	var out []string
	for _, err := range errs {
		var e *strict.Error
		if !errors.As(err, &e) {
			out = append(out, "no place: "+err.Error())
			continue
		}
		text, _, _ := strings.Cut(e.Text, "\n")
		out = append(out, fmt.Sprintf("%d:%d %s", e.Line, e.Column, text))
	}
	return strings.Join(out, "\n")
}
