package verify

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"evenlip/internal/handbook"
)

const (
	root = "../.."
	page = "docs/verification.md"
)

// The page says what the tests of every package have shown, and nothing else.
func TestPageSaysWhatTheTestsShow(t *testing.T) {
	parts, err := Gather(root, "internal")
	if err != nil {
		t.Fatal(err)
	}
	open, err := os.ReadFile("testdata/open.md")
	if err != nil {
		t.Fatal(err)
	}
	want := Report(parts, string(open)+remembered())
	path := filepath.Join(root, page)
	if os.Getenv(updating) != "" {
		if err := os.WriteFile(path, []byte(want), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if line, differs := firstDifference(string(got), want); differs {
		t.Errorf("%s:%d is not what the tests show: %s", page, line, remedy)
	}
}

// remembered lists the embedded tables that no print was read for.
func remembered() string {
	var b strings.Builder
	b.WriteString("\n| embedded from memory, or this program's own rule | label |\n|---|---|\n")
	for _, table := range handbook.Tables() {
		label := table.Source.Label.String()
		if table.Source.Sureness != "" {
			label += " (" + table.Source.Sureness + ")"
		}
		if table.Source.Label == handbook.Memory || table.Source.Label == handbook.Own {
			fmt.Fprintf(&b, "| %s (`evenlip sources %s`) | %s |\n", table.Title, table.Name, label)
		}
	}
	return b.String()
}

// firstDifference is the number of the first line that differs.
func firstDifference(a, b string) (line int, differs bool) {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range max(len(x), len(y)) {
		if i >= len(x) || i >= len(y) || x[i] != y[i] {
			return i + 1, true
		}
	}
	return 0, false
}
