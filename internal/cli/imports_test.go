package cli_test

import (
	"os/exec"
	"strings"
	"testing"
)

// The geometry stands on mathematics alone, and what tests share is no part of
// the program.
func TestImports(t *testing.T) {
	for pkg, without := range map[string][]string{
		"internal/point": {"fmt", "os", "evenlip/internal/quantity"},
		"cmd/evenlip":    {"testing", "evenlip/internal/testkit", "pgregory.net/rapid", "github.com/expr-lang/expr", "github.com/spf13/cobra/doc"},
	} {
		list := exec.Command("go", "list", "-deps", "evenlip/"+pkg)
		list.Dir = repository
		out, err := list.Output()
		if err != nil {
			t.Fatal(err)
		}
		for _, dep := range strings.Fields(string(out)) {
			for _, path := range without {
				if dep == path || strings.HasPrefix(dep, path+"/") {
					t.Errorf("%s stands on %s", pkg, dep)
				}
			}
		}
	}
}
