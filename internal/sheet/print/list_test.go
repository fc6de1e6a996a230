package print

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
	"evenlip/internal/testkit"
)

func said(word string) quantity.Text { return quantity.Sayf("{}", quantity.Say(word)) }

// screened is what a screen of lists prints.
func screened(t rapid.TB, o Options, system quantity.System, lists ...sheet.List) string {
	t.Helper()
	s := &sheet.Sheet{Command: "crib audit"}
	s.Screen = func() *sheet.Screen { return &sheet.Screen{Head: quantity.Sayf("HEAD"), Lists: lists} }
	var b strings.Builder
	o.Form = Table
	if err := Write(&b, []Job{{s, system}}, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// Of a list no word is lost, and no line is wider than the screen, however narrow, unless
// a name alone is.
func TestListsFitAndLoseNothing(t *testing.T) {
	testkit.Property(t, "a list keeps every word, in lines no wider than the screen", func(t *rapid.T) {
		word := rapid.StringMatching(`[A-Z]{1,8}[0-9]{1,3}`)
		var list sheet.List
		var words []string
		another := func() quantity.Text {
			w := word.Draw(t, "word")
			words = append(words, w)
			return said(w)
		}
		for _, name := range rapid.SliceOfN(rapid.SampledFrom([]string{"RETIRE", "REGRIND", "FIT", "BUY", ""}), 1, 4).Draw(t, "groups") {
			group := sheet.ListGroup{Word: name, Flow: rapid.Bool().Draw(t, "flow")}
			for range rapid.IntRange(1, 5).Draw(t, "lines") {
				line := sheet.ListLine{Cells: []quantity.Text{another(), another()}}
				for range rapid.IntRange(0, 4).Draw(t, "says") {
					line.Says = append(line.Says, another())
				}
				group.Lines = append(group.Lines, line)
			}
			list.Groups = append(list.Groups, group)
		}
		o := Options{Width: rapid.IntRange(40, 120).Draw(t, "width"), ASCII: rapid.Bool().Draw(t, "ascii")}
		got := screened(t, o, quantity.Metric, list)
		for _, line := range strings.Split(got, "\n") {
			if n := style.Width(line); n > o.Width {
				t.Fatalf("%d cells at %d: %q", n, o.Width, line)
			}
		}
		rest := got
		for _, w := range words { // in the order in which they were given
			_, after, found := strings.Cut(rest, w)
			if !found {
				t.Fatalf("%q is not in its place in\n%s", w, got)
			}
			rest = after
		}
	})
}

// Each drill is shown in its own units where nobody asked for any, and the points of a
// column stand under one another.
func TestListsKeepEachDrillsUnits(t *testing.T) {
	list := sheet.List{Columns: []sheet.Column{{Label: "drill", Kind: quantity.Word}, sheet.Lengths("", "off")}, Groups: []sheet.ListGroup{{Lines: []sheet.ListLine{
		{System: quantity.Inch, Cells: []quantity.Text{said("A"), quantity.Sayf("{}", quantity.MM(2.54))}},
		{System: quantity.Metric, Cells: []quantity.Text{said("B"), quantity.Sayf("{}", quantity.MM(13.05))}},
	}}}}
	for system, want := range map[quantity.System]string{
		quantity.Unset:  "HEAD\n  drill        off\n  A       0.100 in\n  B      13.05  mm\n",
		quantity.Metric: "HEAD\n  drill       off\n  A       2.54 mm\n  B      13.05 mm\n",
		quantity.Inch:   "HEAD\n  drill       off\n  A      0.100 in\n  B      0.514 in\n",
	} {
		if got := screened(t, Options{Width: 80}, system, list); got != want {
			t.Errorf("%v:\n%s\nnot\n%s", system, got, want)
		}
	}
}

// A verdict has its colour in a list as it has alone; a word that is none is bold.
func TestListsPaintVerdicts(t *testing.T) {
	pen := style.New(true)
	var groups []sheet.ListGroup
	for _, word := range append(style.Verdicts, "BUY") {
		groups = append(groups, sheet.ListGroup{Word: word, Lines: []sheet.ListLine{{Cells: []quantity.Text{said("A1")}}}})
	}
	got := screened(t, Options{Width: 80, Colour: true}, quantity.Metric, sheet.List{Groups: groups})
	for _, word := range style.Verdicts {
		if !strings.Contains(got, "\n"+pen.Verdict(word)+" ") {
			t.Errorf("%s is not painted in\n%q", word, got)
		}
	}
	if !strings.Contains(got, "\n"+pen.Bold("BUY")+" ") || pen.Verdict("RETIRE") == pen.Bold("RETIRE") {
		t.Errorf("BUY is not bold in\n%q", got)
	}
}
