package strict_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode"

	"evenlip/internal/fault"
	"evenlip/internal/strict"
)

func parse(text string) (strict.Node, error) {
	n, errs := strict.Parse("drill.yaml", text)
	return n, errs.Err()
}

func TestReads(t *testing.T) {
	n, err := parse("# the yard's twelve\nsize: 12mm   # as marked\nlip-angle: [59, '58.5']\nname: \"No. 7, \\\"new\\\"\"\nnote:\nwear: {land: 0.2}\n\"~\": \"null\"\n")
	if err != nil {
		t.Fatal(err)
	}
	if !n.IsMap() || n.IsList() || n.IsScalar() || n.IsNull() {
		t.Fatal("a mapping is not taken for one")
	}
	type got struct {
		key, text, comment string
		line, column       int
		null               bool
	}
	var all []got
	for _, e := range n.Entries() {
		line, column := e.Value.Place()
		all = append(all, got{e.Key.Text(), e.Value.Text(), e.Comment(), line, column, e.Value.IsNull()})
	}
	want := []got{
		{"size", "12mm", "# as marked", 2, 7, false}, {"lip-angle", "", "", 3, 12, false}, {"name", `No. 7, "new"`, "", 4, 7, false},
		{"note", "", "", 5, 6, true}, {"wear", "", "", 6, 7, false}, {"~", "null", "", 7, 6, false},
	}
	if !slices.Equal(all, want) {
		t.Errorf("got  %+v\nwant %+v", all, want)
	}
	var items []string
	for _, i := range n.Entries()[1].Value.Items() {
		items = append(items, i.Text())
	}
	if !slices.Equal(items, []string{"59", "58.5"}) || !n.Entries()[1].Value.IsList() {
		t.Errorf("items %q", items)
	}
}

// The text of a scalar is what was written: no number, date or truth is made of it.
func TestTextIsAsWritten(t *testing.T) {
	for _, text := range []string{"010", "1.50", "0x1F", "1_000", "yes", "NO", "12:30", "2026-11-25", ".nan", "1e3", "1/2", "59°30'"} {
		n, err := parse("a: " + text)
		if err != nil {
			t.Fatal(err)
		}
		if got := n.Entries()[0].Value.Text(); got != text {
			t.Errorf("%s reads as %q", text, got)
		}
	}
}

// Line ends of any make, tabs after a value and letters of any script are text.
func TestTakesText(t *testing.T) {
	for _, text := range []string{"a: 1\r\nb: 2\r\n", "a: 1\u0085b: 2\n", "a: 1\t# remark\nb: 2\n", "a: Größe 59°30′\nb: 刃\n", "\ufeffa: 1\nb: 2\n", "a: \u00a01\nb: 2"} {
		n, err := parse(text)
		if err != nil || len(n.Entries()) != 2 {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// Each file is refused at that place, with those words and that advice.
func TestRefuses(t *testing.T) {
	for _, c := range []struct{ text, place, says, hint string }{
		{"", "", "empty", "size: 12mm"},
		{"# nothing but a remark\n", "", "empty", "size: 12mm"},
		{"a: 1\n---\nb: 2\n", ":2:1", "second document", "---"},
		{"a: 1\n---\n", ":2:1", "second document", "---"},
		{"a: &x 1\n", ":1:4", "anchors", "write the value out"},
		{"a: &x 1\nb: *x\n", ":1:4", "anchors", "write the value out"},
		{"a: !!int 12\n", ":1:4", "tag", "value alone"},
		{"a: 1\nb:\n  - !shop x\n", ":3:5", "tag", "value alone"},
		{"a: !%1b[31m x\n", ":1:4", `tag "!\x1b[31m"`, "value alone"},
		{"\xff\xfes\x00", ":1:1", "UTF-16", "UTF-8"},
		{"\xfe\xff\x00s", ":1:1", "UTF-16", "UTF-8"},
	} {
		_, err := parse(c.text)
		var e *fault.Fault
		if !errors.As(err, &e) || !strings.HasPrefix(err.Error(), "drill.yaml"+c.place+": ") || !strings.Contains(e.Text, c.says) || !strings.Contains(e.Hint, c.hint) {
			t.Errorf("%q: %v (%+v); want it at %q: %s", c.text, err, e, c.place, c.says)
		}
	}
}

// Every anchor, alias and tag is told at once.
func TestAllOdditiesAtOnce(t *testing.T) {
	_, err := parse("a: &x 1\nb: *x\nc: [!t 2, {<<: *x}]\n")
	var places []string
	for line := range strings.SplitSeq(err.Error(), "\n") {
		place, _, _ := strings.Cut(strings.TrimPrefix(line, "drill.yaml:"), ": ")
		places = append(places, place)
	}
	if want := []string{"1:4", "2:4", "3:5", "3:16"}; !slices.Equal(places, want) {
		t.Errorf("%v, not %v", places, want)
	}
}

// Ten short lines can stand for a thousand million nodes; they are refused
// before anything is made of them.
func TestBillionLaughs(t *testing.T) {
	text := "a: &a [x, x, x, x, x, x, x, x, x]\n"
	for c := 'b'; c < 'k'; c++ {
		text += fmt.Sprintf("%c: &%c [*%c, *%c, *%c, *%c, *%c, *%c, *%c, *%c, *%c]\n", c, c, c-1, c-1, c-1, c-1, c-1, c-1, c-1, c-1, c-1)
	}
	if _, err := parse(text); err == nil {
		t.Error("anchors were taken")
	}
}

// Whatever a file holds: no panic; what is refused says where, and carries no
// control character to a terminal; what is taken has a place for every value.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"", "size: 12mm\nlip-angle: [59, 58]\n", "a: &x 1\nb: *x\n", "a: !t b\n", "---\n...\n---\n", "a: \"\\x1b\"\n", "? a\n: b\n", "<<: {a: 1}\n",
		"a: |\n  b\n", "- - -\n", "{a: [1, {b: 2}]}", "\ufeffa: 1\n", "%YAML 1.2\n---\na: 1\n", "a: 'b\n", "\t", "a: \x01", "a:\r\n  b\r\n", "a: \u2028b", "*a", "&a", "!", "%", "a: *\u00e9\n", "\r!A",
		"# \x01", "ﳿ 1\ufeffa:a: \ufeff\n1\n", "\ufeff\ufeff", "\ufeffa: [", "%YAML 9.2\n---\na", "%TAG ! x\n%TAG ! y\n---\na", "a: *x\n\n# c\nb: 1", "!foo!a b", "\r[\u2028", "a: |\n  \tb\n c", "a: \"12\" mm\n",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		n, err := parse(text)
		if err == nil {
			placed(t, n)
			return
		}
		var e *fault.Fault
		if !errors.As(err, &e) {
			t.Fatalf("%v is no fault", err)
		}
		lines := 1
		for _, breaking := range []string{"\n", "\r", "\u0085", "\u2028", "\u2029"} {
			lines += strings.Count(text, breaking)
		}
		if e.Text != "the file is empty" && (e.At.Line < 1 || e.At.Line > lines || e.At.Column < 1) {
			t.Errorf("%q: line %d of %d: %v", text, e.At.Line, lines, err)
		}
		said, _, _ := strings.Cut(e.Text, "\n") // the line and the caret stand below
		if strings.IndexFunc(e.Text, func(r rune) bool { return r != '\n' && unicode.IsControl(r) }) >= 0 || said == "" {
			t.Errorf("%q: a control character in %q", text, e.Error()+e.Hint)
		}
	})
}

func placed(t *testing.T, n strict.Node) {
	t.Helper()
	if line, column := n.Place(); line < 1 || column < 1 {
		t.Errorf("%q stands at %d:%d", n.Text(), line, column)
	}
	if n.IsList() {
		for _, i := range n.Items() {
			placed(t, i)
		}
	}
	if n.IsMap() {
		for _, e := range n.Entries() {
			placed(t, e.Key)
			placed(t, e.Value)
		}
	}
}
