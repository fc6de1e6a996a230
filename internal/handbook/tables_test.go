package handbook_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenlip/internal/handbook"
)

// No figure has a source that evenlip sources does not show.
func TestEverySourceIsShown(t *testing.T) {
	var shown []string
	for _, table := range handbook.Tables() {
		shown = append(shown, table.Source.Text)
		shown = append(shown, slices.Concat(table.Rows...)...)
	}
	all := strings.Join(shown, "\n")
	texts := sourceTexts(t)
	if len(texts) < 50 {
		t.Fatalf("only %d sources found", len(texts))
	}
	for _, text := range texts {
		if !strings.Contains(all, text) {
			t.Errorf("no table of Tables() has the source %q", text)
		}
	}
}

// sourceTexts reads the text of every Source that the package's files spell out.
func sourceTexts(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, file := range files {
		tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			made, ok := n.(*ast.CompositeLit)
			if !ok || len(made.Elts) != 3 {
				return true
			}
			kind, named := made.Type.(*ast.Ident)
			text, written := made.Elts[2].(*ast.BasicLit)
			if named && written && kind.Name == "Source" {
				plain, err := strconv.Unquote(text.Value)
				if err != nil {
					t.Fatal(err)
				}
				out = append(out, plain)
			}
			return true
		})
	}
	return out
}
