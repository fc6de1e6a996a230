package cli_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// layers are the packages under internal, from the program down to the ground.
// A package imports what stands in a lower layer, never beside it or above.
var layers = [][]string{
	{"bench"},
	{"cli"},
	{"batch", "crib"},
	{"draw", "gauge", "lip", "plan", "sheet/print", "handbook/shop", "spindle", "swing"},
	{"judge", "regrind", "sheet/print/style"},
	{"drill/drilltest"},
	{"drill", "cutting"},
	{"sheet", "pocket", "strict"},
	{"quantity"},
	{"handbook", "verify"},
	{"near", "point"},
}

// libraries are what others wrote, each with the one package that imports it.
var libraries = map[string]string{
	"github.com/charmbracelet/lipgloss": "sheet/print/style",
	"github.com/muesli/termenv":         "sheet/print/style",
	"gopkg.in/yaml.v3":                  "strict",
	"github.com/agnivade/levenshtein":   "near",
	"github.com/spf13/cobra":            "cli",
	"github.com/spf13/pflag":            "cli",
	"golang.org/x/term":                 "cli",
	"golang.org/x/sys/unix":             "crib",
	"github.com/gofrs/flock":            "crib",
	"github.com/expr-lang/expr":         "pocket",
	"pgregory.net/rapid":                "verify",
}

func TestImportsGoDownhill(t *testing.T) {
	rank := map[string]int{}
	for i, layer := range layers {
		for _, pkg := range layer {
			rank[pkg] = i
		}
	}
	eachImport(t, func(pkg, path string) {
		if _, placed := rank[pkg]; !placed {
			t.Errorf("internal/%s stands in no layer", pkg)
		}
		other, ours := strings.CutPrefix(path, "evenlip/internal/")
		first, _, _ := strings.Cut(path, "/")
		switch {
		case ours && rank[other] <= rank[pkg]:
			t.Errorf("internal/%s imports internal/%s, which does not stand below it", pkg, other)
		case strings.Contains(first, ".") && libraries[path] != pkg:
			t.Errorf("internal/%s imports %s, which is %q's alone", pkg, path, libraries[path])
		case pkg == "point" && slices.Contains([]string{"fmt", "io", "os", "reflect"}, first):
			t.Errorf("the geometry imports %s", path)
		}
	})
}

// eachImport calls f with every import of every package under internal, tests
// left out.
func eachImport(t *testing.T, f func(pkg, path string)) {
	const root = "../../internal"
	err := filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go") {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		pkg, err := filepath.Rel(root, filepath.Dir(file))
		for _, spec := range parsed.Imports {
			path, _ := strconv.Unquote(spec.Path.Value)
			f(filepath.ToSlash(pkg), path)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}
