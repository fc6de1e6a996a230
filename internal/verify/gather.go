package verify

import (
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// Part is the evidence of one package.
type Part struct {
	Package   string // "internal/point"
	Records   []Record
	Fuzzed    []Test
	Uncounted []Test // properties that run without being counted
}

// Test is a test function and the first sentence said of it.
type Test struct{ Name, Says string }

// Gather reads the evidence of every package under a directory of the
// repository, in the order of their names.
func Gather(root, under string) ([]Part, error) {
	var parts []Part
	err := filepath.WalkDir(filepath.Join(root, under), func(dir string, entry os.DirEntry, err error) error {
		if err != nil || !entry.IsDir() {
			return err
		}
		if entry.Name() == "testdata" {
			return filepath.SkipDir
		}
		within, err := filepath.Rel(root, dir)
		if err != nil {
			return err
		}
		part := Part{Package: filepath.ToSlash(within)}
		if part.Records, err = read(filepath.Join(dir, "testdata", "verified.jsonl")); err != nil {
			return err
		}
		if err = part.look(dir); err != nil {
			return err
		}
		parts = append(parts, part)
		return nil
	})
	return parts, err
}

// look finds the fuzz targets and the uncounted properties among the tests.
func (p *Part) look(dir string) error {
	files, err := filepath.Glob(filepath.Join(dir, "*_test.go"))
	if err != nil {
		return err
	}
	for _, file := range files {
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		for _, declared := range parsed.Decls {
			f, isFunc := declared.(*ast.FuncDecl)
			if !isFunc || f.Recv != nil {
				continue
			}
			says := new(doc.Package).Synopsis(f.Doc.Text())
			if strings.HasPrefix(f.Name.Name, "Fuzz") {
				p.Fuzzed = append(p.Fuzzed, Test{f.Name.Name, says})
			} else if calls(f, "rapid", "Check") && path.Base(p.Package) != "verify" {
				p.Uncounted = append(p.Uncounted, Test{f.Name.Name, says})
			}
		}
	}
	byName := func(a, b Test) int { return strings.Compare(a.Name, b.Name) }
	slices.SortFunc(p.Fuzzed, byName)
	slices.SortFunc(p.Uncounted, byName)
	return nil
}

// calls reports whether a function calls pkg.name.
func calls(f *ast.FuncDecl, pkg, name string) bool {
	found := false
	ast.Inspect(f, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			x, ok := s.X.(*ast.Ident)
			found = found || ok && x.Name == pkg && s.Sel.Name == name
		}
		return !found
	})
	return found
}
