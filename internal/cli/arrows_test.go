package cli_test

import (
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const (
	repository = "../.."
	inner      = "evenlip/internal/"
)

// imports returns what each package under internal imports, its tests left out.
func imports(t *testing.T) map[string][]string {
	t.Helper()
	root := filepath.Join(repository, "internal")
	out := map[string][]string{}
	files, err := filepath.Glob(filepath.Join(root, "*", "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	nested, err := filepath.Glob(filepath.Join(root, "*", "*", "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range append(files, nested...) {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		dir, err := filepath.Rel(root, filepath.Dir(file))
		if err != nil {
			t.Fatal(err)
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		pkg := filepath.ToSlash(dir)
		out[pkg] = append(out[pkg], "")
		for _, spec := range parsed.Imports {
			path, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				t.Fatal(err)
			}
			out[pkg] = append(out[pkg], path)
		}
	}
	if len(out) < 10 {
		t.Fatalf("only %d packages found under %s", len(out), root)
	}
	return out
}

// The geometry must be usable and checkable without any of the rest: no
// package of ours, none of others, no printing and no files.
func TestPointStandsAlone(t *testing.T) {
	for _, path := range imports(t)["point"] {
		first, _, _ := strings.Cut(path, "/")
		if strings.Contains(first, ".") || first == "evenlip" {
			t.Errorf("internal/point imports %s, which is not of the standard library", path)
		}
		for _, forbidden := range []string{"fmt", "os", "io", "bufio", "log", "net", "syscall", "unsafe", "reflect"} {
			if first == forbidden {
				t.Errorf("internal/point imports %s", path)
			}
		}
	}
}

// Go initialises a package after those it imports: headroom is the first of all
// only as long as it imports nothing.
func TestHeadroomComesFirst(t *testing.T) {
	for _, path := range imports(t)["headroom"] {
		if path != "" {
			t.Errorf("internal/headroom imports %s", path)
		}
	}
	if !slices.Contains(imports(t)["cli"], inner+"headroom") {
		t.Error("internal/cli does not import internal/headroom")
	}
}

// homes are the packages that alone know a library that could be exchanged one
// day.
var homes = map[string]string{
	"github.com/charmbracelet/lipgloss": "report/style",
	"github.com/muesli/termenv":         "report/style",
	"gopkg.in/yaml.v3":                  "strict",
	"github.com/agnivade/levenshtein":   "near",
	"github.com/spf13/cobra":            "cli",
	"github.com/spf13/pflag":            "cli",
	"golang.org/x/term":                 "cli",
	"golang.org/x/sys":                  "crib",
	"github.com/gofrs/flock":            "crib",
	"github.com/expr-lang/expr":         "pocket",
	"pgregory.net/rapid":                "verify",
}

// home returns the library that a path is of and the package that alone may
// import it; nothing for a library that has no home.
func home(path string) (library, pkg string) {
	for library, pkg := range homes {
		if path == library || strings.HasPrefix(path, library+"/") {
			return library, pkg
		}
	}
	return "", ""
}

// Each library is imported by its home alone, and by that.
func TestLibrariesAreKeptInOnePlace(t *testing.T) {
	found := map[string]bool{}
	for pkg, paths := range imports(t) {
		for _, path := range paths {
			library, only := home(path)
			found[library] = true
			if only != "" && pkg != only {
				t.Errorf("internal/%s imports %s, which is internal/%s's alone", pkg, path, only)
			}
		}
	}
	for library := range homes {
		if !found[library] {
			t.Errorf("nothing imports %s: is this test still about the right library?", library)
		}
	}
}

// The program carries nothing that only tests need.
func TestTestsKeepTheirOwn(t *testing.T) {
	tests := map[string]bool{"verify": true, "pocket": true, "drill/drilltest": true}
	for pkg, paths := range imports(t) {
		for _, path := range paths {
			other, ours := strings.CutPrefix(path, inner)
			library, _, _ := strings.Cut(path, "/")
			needed := ours && tests[other] || path == "testing" || library == "pgregory.net" || library == "gonum.org" ||
				strings.HasPrefix(path, "github.com/rogpeppe/")
			if needed && !tests[pkg] {
				t.Errorf("internal/%s imports %s outside its tests", pkg, path)
			}
		}
	}
}

// A library that nothing here keeps to one package is one that nobody has
// thought about: it is named above.
func TestEveryLibraryIsKnown(t *testing.T) {
	for pkg, paths := range imports(t) {
		for _, path := range paths {
			first, _, _ := strings.Cut(path, "/")
			if !strings.Contains(first, ".") {
				continue
			}
			if _, only := home(path); only != pkg {
				t.Errorf("internal/%s imports %s, which is not said to be its to import", pkg, path)
			}
		}
	}
}

// The order in which packages may import one another is written once, in
// DEVELOPERS.md: "Arrows point one way: a -> {b, c} -> d." Each may import what
// stands further along, never what stands beside or before it.
func TestArrows(t *testing.T) {
	rank := ranks(t)
	for pkg, paths := range imports(t) {
		mine, placed := rank[outermost(pkg)]
		if !placed {
			t.Errorf("DEVELOPERS.md does not place internal/%s among the arrows", pkg)
			continue
		}
		for _, path := range paths {
			other, ours := strings.CutPrefix(path, inner)
			if !ours || other == pkg {
				continue
			}
			if outermost(other) == outermost(pkg) {
				continue // report and report/style, drill and drill/drilltest
			}
			if strings.Contains(other, "/") {
				t.Errorf("internal/%s reaches into internal/%s", pkg, other)
			}
			if theirs, placed := rank[outermost(other)]; placed && theirs <= mine {
				t.Errorf("internal/%s imports internal/%s against the arrows", pkg, other)
			}
		}
	}
}

// The map of the house shows every room.
func TestEveryPackageIsOnTheMap(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(repository, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	for pkg := range imports(t) {
		if line := "\n    internal/" + outermost(pkg) + "/ "; !strings.Contains(string(text), line) {
			t.Errorf("DEVELOPERS.md does not say what internal/%s is", pkg)
		}
	}
}

func outermost(pkg string) string {
	first, _, _ := strings.Cut(pkg, "/")
	return first
}

// ranks reads the arrows: the further along, the higher.
func ranks(t *testing.T) map[string]int {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(repository, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, rest, found := strings.Cut(string(text), "Arrows point one way:")
	sentence, _, ended := strings.Cut(rest, ".")
	if !found || !ended {
		t.Fatal("DEVELOPERS.md has no sentence on the arrows")
	}
	rank := map[string]int{}
	for i, group := range strings.Split(sentence, "->") {
		for _, pkg := range strings.FieldsFunc(group, func(r rune) bool { return strings.ContainsRune("{}, \n`", r) }) {
			if _, twice := rank[pkg]; twice {
				t.Errorf("DEVELOPERS.md places %s twice", pkg)
			}
			rank[pkg] = i
		}
	}
	known := imports(t)
	for pkg := range rank {
		if !slices.ContainsFunc(keys(known), func(k string) bool { return outermost(k) == pkg }) {
			t.Errorf("DEVELOPERS.md places %s, and there is no such package", pkg)
		}
	}
	return rank
}

func keys[V any](m map[string]V) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}
