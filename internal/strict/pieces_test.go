package strict

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
	"pgregory.net/rapid"

	"evenlip/internal/testkit"
)

// whole reads a text in one go.
func whole(text string) (*yaml.Node, error) {
	d, err := decode("", text)
	switch {
	case err != nil:
		return nil, err
	case len(d.faults) > 0:
		return nil, &d
	case d.root.y == nil:
		return nil, errors.New("the file is empty")
	}
	return d.root.y, nil
}

// differ tells the first difference of two nodes, "" for none.
func differ(a, b *yaml.Node) string {
	x, y := *a, *b
	x.Content, y.Content = nil, nil
	if fmt.Sprintf("%#v", x) != fmt.Sprintf("%#v", y) || len(a.Content) != len(b.Content) {
		return fmt.Sprintf("%d in %+v\n%d in %+v", len(a.Content), x, len(b.Content), y)
	}
	for i := range a.Content {
		if d := differ(a.Content[i], b.Content[i]); d != "" {
			return d
		}
	}
	return ""
}

// agree holds a text read in pieces, cut wherever it can be, to the whole, and
// returns whether the pieces were taken.
func agree(t interface {
	Helper()
	Fatalf(string, ...any)
}, text string, n int) bool {
	t.Helper()
	got, taken := inPieces(text, n)
	if !taken {
		return false
	}
	want, err := whole(text)
	if err != nil {
		t.Fatalf("%q: taken in pieces, and as a whole refused: %v", text, err)
	}
	if d := differ(got, want); d != "" {
		t.Fatalf("%q in %d pieces:\n%s", text, n, d)
	}
	return true
}

// The sample crib, as it is and with what people write around its list, comes out
// of its pieces as it comes out whole.
func TestPiecesOfTheSample(t *testing.T) {
	file, err := os.ReadFile("../crib/sample.yaml")
	if err != nil {
		t.Fatal(err)
	}
	sample := string(file)
	head, drills, _ := strings.Cut(sample, "\ndrills:\n")
	atTheEdge := strings.ReplaceAll(drills, "\n  ", "\n")[2:]
	for name, text := range map[string]string{
		"as it is":           sample,
		"drills first":       "drills:\n" + drills + head,
		"items at the edge":  head + "\ndrills:\n" + atTheEdge,
		"with line ends":     strings.ReplaceAll(sample, "\n", "\r\n"),
		"with a last remark": sample + "\n# the end\n",
		"with blank lines":   strings.ReplaceAll(sample, "\n  - id", "\n\n  - id"),
		"without an end":     strings.TrimSpace(sample),
	} {
		for _, n := range []int{2, 3, 8, 1000} {
			if !agree(t, text, n) {
				t.Errorf("%s: not taken in %d pieces", name, n)
			}
		}
	}
}

// The pieces are all of a text, each once, and begin with an item.
func TestCut(t *testing.T) {
	text := "a: 1\ndrills:\n  - b\n  - c # d\n  - e\n  - f\n\n  # g\n  - h\n  - i\n"
	indent, texts := cut(text, 100)
	if got := fmt.Sprintf("%q", texts); indent != 2 || got != `["a: 1\ndrills:\n" "  - b\n  - c # d\n  - e\n" "  - f\n\n  # g\n  - h\n" "  - i\n"]` {
		t.Errorf("%d %s", indent, got)
	}
	if _, texts := cut(text, 2); len(texts) != 2 {
		t.Errorf("%q", texts)
	}
}

// A long file is read in pieces, and its places are those of the whole.
func TestLongFile(t *testing.T) {
	var b strings.Builder
	b.WriteString("version: 1\ndrills:\n")
	for i := 0; b.Len() < 3*leastPiece; i++ {
		fmt.Fprintf(&b, "  - id: A%d\n    size: 12mm # as marked\n", i)
	}
	if n := pieces(b.Len()); n < 2 {
		t.Fatalf("%d pieces", n)
	}
	n, err := Parse("crib.yaml", strings.NewReader(b.String()))
	want, _ := whole(b.String())
	if err != nil || differ(n.y, want) != "" {
		t.Errorf("%v %s", err, differ(n.y, want))
	}
	b.WriteString("  - id: 'A\n")
	_, err = Parse("crib.yaml", strings.NewReader(b.String()))
	if e := new(Error); !errors.As(err, &e) || !strings.Contains(e.Text, "not YAML") {
		t.Errorf("%v", err)
	}
	if pieces(leastPiece) > 1 {
		t.Error("a short file is cut up")
	}
}

// What reaches across pieces, or is wrong in one of them, is left to the whole.
func TestLeftToTheWhole(t *testing.T) {
	const a, b = "drills:\n  - id: A\n    size: 1\n", "  - id: B\n"
	for _, text := range []string{a + b, a + "  - ? i\n" + b, a + "  -\n" + b, a + "    note: |+\n\n" + b, a + "other:\n  - c\n" + b, a + "other: # all\n  - c\n" + b, "version: 1\n" + a + b + "# the end\n", "x:\n  y:\n    - z\n" + a + b} {
		if alone, all := agree(t, text, 2), agree(t, text, 100); !alone && !all {
			t.Errorf("%q is not taken in pieces", text)
		}
	}
	for _, text := range []string{
		"", "drills: []\n", "- a\n- b\n", "  drills:\n  - a\n  - b\n", "x\n" + a + b,
		"---\n" + a + b, a + "---\n" + b, a + "...\n" + b, a + b + "...\n", "%YAML 1.2\n---\n" + a + b,
		a + "    note: 'x\n" + b, a + "    note: \"x\n" + b + "    \"\n" + b, a + "    note: [x,\n" + b + "    ]\n",
		a + "    note: &x y\n" + b, a + "    note: *x\n" + b, a + "    note: !x y\n" + b, "x: &x 1\n" + a + b + "  - *x\n",
		a + "    note: x\u0085    web: y\n" + b, a + "    note: x\u2028    web: y\n" + b, a + "    note: x\u2029    web: y\n" + b, strings.ReplaceAll(a, "\n", "\r") + b, a + "    note: x\r    web: y\n" + b,
		a + b + "other: x\n" + b + b, a + "other:\n- c\n" + b, a + "other: c\n" + b, a + "    : : x\n" + b, a + " x: 1\n" + b,
		"drills: # all\n  - id: A\n  - id: B\n", "drills:\n  - #\n   ! \n  - 0\n",
		" x: 'y\nz:\n  - a'\n drills:\n  - a\n  - b\nother: 1\n", "- 'x\nz:\n  - a'\n-\n  - b\n  - c\nother: 1\n",
		"{}\nx:\n  - a\n  - b\n", "{\nx:\n  - a\n  - b\n",
	} {
		for _, n := range []int{2, 3, 100} {
			if _, taken := inPieces(text, n); taken {
				t.Errorf("%q is taken in %d pieces", text, n)
			}
		}
	}
}

// Whatever lines a file is made of, its pieces say what the whole says or nothing.
func TestPiecesSayTheSame(t *testing.T) {
	lines := []string{
		"- a", "- id: A", "  - id: A", "  - id: B # b", "  - - c", "  - [d, e]", "  - {f: 1,", "  -", "  - ", "  - 'g", "  - h: |", "  - >+", "  - ? i",
		"    size: 12mm", "    note: \"j", "    note: 'k'", "    note: |", "    note: >-", "    history:", "    history: # l", "      - {m: 1}", "      - n: 1", "    - o",
		"      text", "    text", "  text", "text", "", "  ", "\t", "    # p", "  # q", "# r", "      # s", "' # t", "\"", "}", "]", "drills:", "other:", "other: # v", "other: 1 # u", "keep: {v: 1}",
		"  w: x", "? y", ": z", "    : 1", "    ? aa", "...", "---", "&bb", "    note: *cc", "\r", "    \u00e9: \u5203 # \u00e9",
	}
	taken := 0
	testkit.Property(t, "a file read in pieces says what it says when read whole", func(t *rapid.T) {
		drawn := rapid.SliceOfN(rapid.SampledFrom(lines), 1, 14).Draw(t, "lines")
		text := "drills:\n  - id: A\n" + strings.Join(drawn, "\n") + rapid.SampledFrom([]string{"", "\n"}).Draw(t, "end")
		if agree(t, text, rapid.IntRange(2, 9).Draw(t, "pieces")) {
			taken++
		}
	})
	if taken == 0 {
		t.Error("no file was taken in pieces")
	}
}

// Whatever a text holds: what is taken in pieces says what the whole says, node by
// node, with its places and remarks.
func FuzzPieces(f *testing.F) {
	for _, seed := range []string{
		"drills:\n  - id: A\n  - id: B\n", "drills:\n- a\n- b\n# c\nkeep: 1\n", "a: 1 # b\nc:\n  # d\n\n  - e # f\n  - g: |+\n\n  - h\n\n# i\n",
		"a:\r\n  - b: 'c\r\n  - d'\r\n  - e\r\n", "a:\n  - b:\n    # c\n    - d\n\n  - e: f\n    # g\n\n  # h\nj: [k]\n# l\n",
	} {
		f.Add(seed, 3)
	}
	f.Fuzz(func(t *testing.T, text string, n int) {
		agree(t, text, n%20)
	})
}
