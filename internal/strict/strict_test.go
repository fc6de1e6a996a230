package strict_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode"

	"evenlip/internal/strict"
)

func parse(text string) (strict.Node, error) {
	return strict.Parse("drill.yaml", strings.NewReader(text))
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

// Each file is refused at that place, with those words.
// refused is a text that is no file of ours, where that shows, and what is said.
type refused struct{ text, place, says string }

func TestRefuses(t *testing.T) {
	checkRefused(t, []refused{
		{"", "", "empty"},
		{"# nothing but a remark\n", "", "empty"},
		{"a: 1\n---\nb: 2\n", "2:1", "second document"},
		{"a: 1\n---\n", "2:1", "second document"},
		{"a: 1\n---\nb: [\n", "2:1", "second document"},
		{"a: &x 1\n", "1:4", "anchors"},
		{"a: 1\nb: *x\n", "2:4", "anchors"},
		{"a: &x 1\nb: *x\n", "1:4", "anchors"},
		{"size: 1\n<<: *base\n", "2:5", "anchors"},
		{"a: !!int 12\n", "1:4", "tag"},
		{"a: 1\nb:\n  - !shop x\n", "3:5", "tag"},
		{"a: !%1b[31m x\n", "1:4", `tag "!\x1b[31m"`},
		{"size: 12mm\nweb: 2\x1bmm\n", "2:7", "U+001B"},
		{"size: 12mm\nweb: 2\x00mm\n", "2:7", "U+0000"},
		{"größe: \u009b31m\n", "1:8", "U+009B"},
		{"a: \uffff\n", "1:4", "U+FFFF"},
		{"a: \x7f\n", "1:4", "U+007F"},
		{"\x01a: 1\n", "1:1", "U+0001"},
		{"a: 1\nb: \xff\n", "2:4", "UTF-8"},
		{"a: 1\nb: \xe2\x82", "2:4", "UTF-8"},
		{"a: b: c\n", "1:5", "second colon"},
		{"a: b: c\nd: 1\ne: 2\n", "1:5", "second colon"},
		{"size: 12mm\n  web: 2mm\n", "2:3", "begins in column 3, and those above in column 1"},
		{"size: 12mm\nweb: 2mm: 3\n", "2:9", "second colon"},
		{"size: 12mm\n\tweb: 2mm\n", "2:1", "a tab stands"},
		{"size: 12mm\n  \tweb: 2mm\n", "2:3", "a tab stands"},
		{"\tsize: 12mm\n", "1:1", "a tab stands"},
		{"@: 12mm\n", "1:1", "cannot begin with @"},
		{"a: \"\\q\"\n", "1:5", `\q is no escape`},
		{"a: 1\nb: \"\\q\"\n", "2:5", `\q is no escape`},
		{"a: [1, 2\n", "1:4", "the [ is not closed"},
		{"a: 1\nb: [1, 2\nc: 3\n", "2:4", "the [ is not closed"},
		{"a: 1\nb:\n  - x\n c: d\n", "4:2", "begins in column 2, and those above in column 3"},
	})
}

func checkRefused(t *testing.T, cases []refused) {
	t.Helper()
	for _, c := range cases {
		_, err := parse(c.text)
		var e *strict.Error
		if !errors.As(err, &e) {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		place := ""
		if e.Line > 0 {
			place = fmt.Sprint(e.Line)
		}
		if e.Column > 0 {
			place += fmt.Sprint(":", e.Column)
		}
		if place != c.place || !strings.Contains(e.Text, c.says) {
			t.Errorf("%q: at %q: %s; want %q: %s", c.text, place, e.Text, c.place, c.says)
		}
		want := "drill.yaml"
		if place != "" {
			want += ":" + place
		}
		if e.Error() != want+": "+e.Text || !strings.HasPrefix(err.Error(), e.Error()) {
			t.Errorf("%q: reads %q", c.text, err)
		}
	}
}

// The slips that a file kept by hand runs into come with advice.
func TestHints(t *testing.T) {
	for text, says := range map[string]string{
		"a: b: c\n": "quotes", "\ta: 1\n": "put spaces", "a: 1\n\tb: 1\n": "put spaces", "a: *x\n": "write the value out", "": "size: 12mm", "a: 1\n---\n": "---", "a: \"\\q\"": `write \\`,
	} {
		_, err := parse(text)
		var e *strict.Error
		if !errors.As(err, &e) || !strings.Contains(e.Hint, says) {
			t.Errorf("%q: hint %+v", text, e)
		}
	}
}

// Every anchor, alias and tag is told at once, and a bomb of them is cut short.
func TestAllOdditiesAtOnce(t *testing.T) {
	_, err := parse("a: &x 1\nb: *x\nc: [!t 2, {<<: *x}]\n")
	var places []string
	for _, each := range strict.Each(err) {
		var e *strict.Error
		if !errors.As(each, &e) || e.Hint == "" {
			t.Fatalf("%v", each)
		}
		places = append(places, fmt.Sprint(e.Line, ":", e.Column))
	}
	if want := []string{"1:4", "2:4", "3:5", "3:16"}; !slices.Equal(places, want) {
		t.Errorf("%v, not %v", places, want)
	}
	_, err = parse("a: &x [" + strings.Repeat("*x, ", 1000) + "]\n")
	if n := len(strict.Each(err)); n != 20 {
		t.Errorf("%d complaints", n)
	}
	_, err = parse("")
	if n := len(strict.Each(err)); n != 1 {
		t.Errorf("%d complaints", n)
	}
}

// badReader fails as a disk may.
type badReader struct{}

func (badReader) Read([]byte) (int, error) { return 0, errors.New("the disk is gone") }

func TestReaderFails(t *testing.T) {
	if _, err := strict.Parse("drill.yaml", badReader{}); err == nil || err.Error() != "drill.yaml: cannot be read: the disk is gone" {
		t.Errorf("%v", err)
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
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		n, err := parse(text)
		if err == nil {
			placed(t, n)
			return
		}
		var e *strict.Error
		if !errors.As(err, &e) {
			t.Fatalf("%v is no *Error", err)
		}
		lines := 1
		for _, breaking := range []string{"\n", "\r", "\u0085", "\u2028", "\u2029"} {
			lines += strings.Count(text, breaking)
		}
		if e.Text != "the file is empty" && (e.Line < 1 || e.Line > lines || e.Column < 1) {
			t.Errorf("%q: line %d of %d: %v", text, e.Line, lines, err)
		}
		if strings.IndexFunc(e.Error()+e.Hint, unicode.IsControl) >= 0 {
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
