package cli_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const (
	longestFile     = 400 // lines
	longestFunction = 60
)

// source is a file of Go that a hand wrote.
type source struct {
	name  string // from the root of the repository
	lines int
	files *token.FileSet
	tree  *ast.File
}

// at says where a node stands, and how many lines it takes.
func (s *source) at(n ast.Node) (from, lines int) {
	from = s.files.Position(n.Pos()).Line
	return from, s.files.Position(n.End()).Line - from + 1
}

// sources are all of them, tests too; what a tool wrote is left out.
func sources(t *testing.T) []source {
	t.Helper()
	var out []source
	for _, top := range []string{"cmd", "internal"} {
		err := filepath.WalkDir(filepath.Join(repository, top), func(path string, _ fs.DirEntry, err error) error {
			if err != nil || filepath.Ext(path) != ".go" {
				return err
			}
			text, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			s := source{lines: strings.Count(string(text), "\n"), files: token.NewFileSet()}
			if s.tree, err = parser.ParseFile(s.files, path, text, parser.ParseComments); err != nil {
				return err
			}
			s.name, err = filepath.Rel(repository, path)
			if !ast.IsGenerated(s.tree) {
				out = append(out, s)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(out) < 100 {
		t.Fatalf("only %d files found", len(out))
	}
	return out
}

// Whoever opens a file sees what it is about, and a function without scrolling.
func TestNothingIsLong(t *testing.T) {
	for _, s := range sources(t) {
		if s.lines > longestFile {
			t.Errorf("%s has %d lines, over %d: split it where its meaning does", s.name, s.lines, longestFile)
		}
		ast.Inspect(s.tree, func(n ast.Node) bool {
			switch n.(type) {
			case *ast.FuncDecl, *ast.FuncLit:
				if from, lines := s.at(n); lines > longestFunction {
					t.Errorf("%s:%d: a function of %d lines, over %d", s.name, from, lines, longestFunction)
				}
			}
			return true
		})
	}
}

// An invariant goes through verify.Property, which counts its cases for
// docs/verification.md; verify alone calls what draws them.
func TestInvariantsAreCounted(t *testing.T) {
	for _, s := range sources(t) {
		if filepath.ToSlash(filepath.Dir(s.name)) == "internal/verify" {
			continue
		}
		ast.Inspect(s.tree, func(n ast.Node) bool {
			call, ok := n.(*ast.SelectorExpr)
			if !ok || call.Sel.Name != "Check" {
				return true
			}
			if pkg, ok := call.X.(*ast.Ident); ok && pkg.Name == "rapid" {
				from, _ := s.at(n)
				t.Errorf("%s:%d: rapid.Check counts no cases: verify.Property does", s.name, from)
			}
			return true
		})
	}
}

// Every name that one package lends another says what it is.
func TestExportedNamesAreExplained(t *testing.T) {
	for _, s := range sources(t) {
		if strings.HasSuffix(s.name, "_test.go") {
			continue
		}
		for _, d := range s.tree.Decls {
			for _, bare := range unexplained(d) {
				from, _ := s.at(bare)
				t.Errorf("%s:%d: %s has no comment", s.name, from, bare.Name)
			}
		}
	}
}

// unexplained returns the exported names of a declaration that no comment is about.
func unexplained(d ast.Decl) []*ast.Ident {
	var out []*ast.Ident
	bare := func(name *ast.Ident, comments ...*ast.CommentGroup) {
		for _, c := range comments {
			if strings.TrimSpace(c.Text()) != "" {
				return
			}
		}
		if name.IsExported() {
			out = append(out, name)
		}
	}
	switch d := d.(type) {
	case *ast.FuncDecl:
		if receiver(d) == "" || ast.IsExported(receiver(d)) {
			bare(d.Name, d.Doc)
		}
	case *ast.GenDecl:
		for _, spec := range d.Specs {
			switch x := spec.(type) {
			case *ast.TypeSpec:
				bare(x.Name, d.Doc, x.Doc, x.Comment)
			case *ast.ValueSpec:
				for _, name := range x.Names {
					bare(name, d.Doc, x.Doc, x.Comment)
				}
			}
		}
	}
	return out
}

// receiver is the type that a method is of; nothing for a function.
func receiver(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return ""
	}
	of := f.Recv.List[0].Type
	if star, ok := of.(*ast.StarExpr); ok {
		of = star.X
	}
	if name, ok := of.(*ast.Ident); ok {
		return name.Name
	}
	return ""
}
