package cli_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
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

// A formula of the point stands in internal/point and nowhere else. With angles
// alone these reckon besides: what is drawn, what a swing fixture shows, and the
// second way to the angles along the lip.
func TestTrigonometryHasItsPlace(t *testing.T) {
	angles := map[string]bool{"Sin": true, "Cos": true, "Sincos": true, "Tan": true, "Asin": true, "Acos": true, "Atan": true}
	places := map[string]bool{"point": true, "draw": true, "swing": true, "lip": true}
	found := map[string]bool{}
	for _, s := range sources(t) {
		if !s.serves() {
			continue
		}
		ast.Inspect(s.tree, func(n ast.Node) bool {
			if call, ok := n.(*ast.SelectorExpr); ok && angles[call.Sel.Name] {
				if pkg, ok := call.X.(*ast.Ident); ok && pkg.Name == "math" {
					found[filepath.Base(s.folder())] = true
					if from, _ := s.at(n); !places[filepath.Base(s.folder())] {
						t.Errorf("%s:%d: math.%s: call what internal/point has for it", s.name, from, call.Sel.Name)
					}
				}
			}
			return true
		})
	}
	for place := range places {
		if !found[place] {
			t.Errorf("internal/%s has no more to do with angles: take it off the list", place)
		}
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

// What is exported serves the program: a function that tests alone call would
// only look as if it did.
func TestExportedFunctionsAreUsed(t *testing.T) {
	used := map[string]bool{}
	all := sources(t)
	for _, s := range all {
		if s.serves() {
			s.uses(used)
		}
	}
	for _, s := range all {
		for _, d := range s.tree.Decls {
			f, ok := d.(*ast.FuncDecl)
			if ok && s.serves() && f.Name.IsExported() && !used[s.called(f)] && !callers[f.Name.Name] {
				from, _ := s.at(f)
				t.Errorf("%s:%d: nothing but tests uses %s: give it a use or take it out", s.name, from, f.Name.Name)
			}
		}
	}
}

// tools are the packages that only tests, and whoever measures, have a use for.
var tools = map[string]bool{"internal/verify": true, "internal/pocket": true, "internal/drill/drilltest": true, "internal/bench": true}

// callers are the methods that other modules call through their interfaces.
var callers = map[string]bool{"Error": true, "Unwrap": true, "String": true, "Set": true, "Type": true, "Write": true}

// folder is the package a file belongs to, from the root of the repository.
func (s *source) folder() string { return filepath.ToSlash(filepath.Dir(s.name)) }

// serves reports whether the file is part of the program.
func (s *source) serves() bool { return !strings.HasSuffix(s.name, "_test.go") && !tools[s.folder()] }

// called is the name under which uses notes a function: a method's own, since
// without types nobody knows whose it is, else with the package's folder.
func (s *source) called(f *ast.FuncDecl) string {
	if f.Recv != nil {
		return f.Name.Name
	}
	return s.folder() + "." + f.Name.Name
}

// uses adds what the file may mean a function or a method by; not what it only
// gives a name to.
func (s *source) uses(used map[string]bool) {
	packages := map[string]string{}
	for _, i := range s.tree.Imports {
		path, _ := strconv.Unquote(i.Path.Value)
		name := filepath.Base(path)
		if i.Name != nil {
			name = i.Name.Name
		}
		packages[name] = strings.TrimPrefix(path, "evenlip/")
	}
	named := map[*ast.Ident]bool{}
	ast.Inspect(s.tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncDecl:
			named[n.Name] = true
		case *ast.Field:
			for _, name := range n.Names {
				named[name] = true
			}
		case *ast.KeyValueExpr:
			if key, ok := n.Key.(*ast.Ident); ok {
				named[key] = true
			}
		case *ast.SelectorExpr:
			named[n.Sel] = true
			used[n.Sel.Name] = true
			if of, ok := n.X.(*ast.Ident); ok {
				used[packages[of.Name]+"."+n.Sel.Name] = true
			}
		case *ast.Ident:
			if !named[n] {
				used[s.folder()+"."+n.Name] = true
			}
		}
		return true
	})
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
