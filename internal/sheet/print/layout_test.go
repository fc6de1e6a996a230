package print

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
	"evenlip/internal/testkit"
)

var words = rapid.SliceOfN(rapid.StringMatching(`[a-z0-9°Ø±½日]{1,14}`), 1, 30)

// Wrapping loses no word, breaks none and keeps to the width.
func TestWrap(t *testing.T) {
	testkit.Property(t, "wrapping loses no word, breaks none and keeps to the width", func(t *rapid.T) {
		list, width := words.Draw(t, "words"), rapid.IntRange(5, 60).Draw(t, "width")
		lines := wrap(strings.Join(list, " "), width)
		if got := strings.Fields(strings.Join(lines, " ")); !slices.Equal(got, list) {
			t.Fatalf("%q", got)
		}
		for i, l := range lines {
			if style.Width(l) > width && strings.Contains(l, " ") {
				t.Fatalf("%q is over %d cells", l, width)
			}
			if i > 0 && style.Width(lines[i-1])+1+style.Width(strings.Fields(l)[0]) <= width {
				t.Fatalf("%q would have taken a word of %q", lines[i-1], l)
			}
		}
	})
}

func TestWrapItems(t *testing.T) {
	items := []string{"size 12 mm", "web 2 mm", "lip-angle 59°, 58°"}
	for width, want := range map[int][]string{
		80: {"size 12 mm; web 2 mm; lip-angle 59°, 58°"},
		40: {"size 12 mm; web 2 mm; lip-angle 59°, 58°"},
		39: {"size 12 mm; web 2 mm;", "lip-angle 59°, 58°"},
		20: {"size 12 mm;", "web 2 mm;", "lip-angle 59°, 58°"},
		12: {"size 12 mm;", "web 2 mm;", "lip-angle", "59°, 58°"},
	} {
		if got := wrapItems(items, "; ", width); !slices.Equal(got, want) {
			t.Errorf("%d: %q", width, got)
		}
	}
	if got := wrap("", 10); len(got) != 1 || got[0] != "" {
		t.Errorf("nothing wraps to %q", got)
	}
}

func TestPad(t *testing.T) {
	for _, text := range []string{"", "59°", "Ø12", "日本", "longer than that"} {
		left, right := pad(text, 10), padLeft(text, 10)
		if want := max(10, style.Width(text)); style.Width(left) != want || style.Width(right) != want {
			t.Errorf("%q is padded to %q and %q", text, left, right)
		}
		if !strings.HasPrefix(left, text) || !strings.HasSuffix(right, text) {
			t.Errorf("%q and %q", left, right)
		}
	}
}

// Columns keep to the width while their words do, and lose nothing.
func TestColumns(t *testing.T) {
	testkit.Property(t, "columns keep to the width and lose nothing", func(t *rapid.T) {
		columns := rapid.IntRange(1, 6).Draw(t, "columns")
		rows := rapid.IntRange(1, 5).Draw(t, "rows")
		width := rapid.IntRange(34, 100).Draw(t, "width")
		cells := make([][]string, rows)
		var all []string
		for n := range cells {
			for i := range columns {
				list := rapid.SliceOfN(rapid.StringMatching(`[a-z]{1,9}`), 1, 8).Draw(t, fmt.Sprint(n, i))
				cells[n] = append(cells[n], strings.Join(list, " "))
				if n > 0 || columns*11 <= width {
					all = append(all, list...)
				}
			}
		}
		var out strings.Builder
		tw := tableWriter{w: &out, o: Options{Width: width}}
		tw.columns(make([]bool, columns), cells)
		for _, l := range strings.Split(out.String(), "\n") {
			if style.Width(l) > width {
				t.Fatalf("%d cells: %q", style.Width(l), l)
			}
		}
		got := strings.Fields(strings.ReplaceAll(out.String(), ";", " "))
		for _, word := range all {
			if !slices.Contains(got, word) {
				t.Fatalf("%q is lost of\n%s", word, out.String())
			}
		}
	})
}

func TestTableKeepsToItsWidth(t *testing.T) {
	for _, width := range []int{30, 50, 60, 70, 78, 79, 80, 120} {
		for _, explain := range []bool{false, true} {
			s := evilSheet()
			s.Title = "a drill"
			s.Inputs, s.Grids = nil, nil
			s.Findings = nil
			for _, l := range strings.Split(written(t, Options{Form: Table, Width: width, Explain: explain}, s), "\n") {
				if style.Width(l) > width {
					t.Errorf("%d cells at %d: %q", style.Width(l), width, l)
				}
			}
		}
	}
}

// Colour repeats what the words say: taken away, the same text is left.
func TestColourSaysNothingMore(t *testing.T) {
	bare := written(t, Options{Form: Table, Explain: true}, evilSheet())
	painted := written(t, Options{Form: Table, Explain: true, Colour: true}, evilSheet())
	if painted == bare {
		t.Error("no colour at all")
	}
	var stripped strings.Builder
	inside := false
	for _, r := range painted {
		switch {
		case r == '\x1b':
			inside = true
		case inside && r == 'm':
			inside = false
		case !inside:
			stripped.WriteRune(r)
		}
	}
	trim := func(s string) string {
		lines := strings.Split(s, "\n")
		for i := range lines {
			lines[i] = strings.TrimRight(lines[i], " ")
		}
		return strings.Join(lines, "\n")
	}
	if trim(stripped.String()) != trim(bare) {
		t.Error("without its colours the table is another")
	}
}

func TestLimitText(t *testing.T) {
	metric := quantity.Format{System: quantity.Metric}
	for want, band := range map[string]*handbook.Band{
		"":                nil,
		"1.00 to 3.00 mm": {Low: 1, High: 3},
		"max 3.00 mm":     {Low: 0, High: 3},
		"above 0":         {Low: 0, High: math.Inf(1)},
		"min 2.00 mm": {
			Low: 2, High: math.Inf(1)},
	} {
		if got := limitText(&sheet.Figure{Kind: quantity.Length, Gauge: quantity.Caliper, Limit: band}, metric); got != want {
			t.Errorf("%q, not %q", got, want)
		}
	}
	if got := limitText(&sheet.Figure{Limit: &handbook.Band{Low: math.NaN(), High: 1}}, metric); got != "" {
		t.Errorf("a limit that is not known is %q", got)
	}
}

// Texts take their numbers in order, in the reader's units.
func TestSay(t *testing.T) {
	text := quantity.Sayf("{} at {}, {} of {}", quantity.MM(25.4), quantity.Rad(math.Pi/4), quantity.Of(quantity.Share, 0.5), quantity.Say("lip\x1b 1"))
	if got := text.In(quantity.Format{System: quantity.Metric}); got != "25.40 mm at 45.0°, 50 % of lip? 1" {
		t.Error(got)
	}
	if got := text.In(quantity.Format{System: quantity.Inch}); got != "1.0000 in at 45.0°, 50 % of lip? 1" {
		t.Error(got)
	}
	if got := quantity.Sayf("nothing to fill: {}").In(quantity.Format{System: quantity.Metric}); got != "nothing to fill: " {
		t.Error(got)
	}
}

// Each limit says in a word how far it may be trusted.
func TestBasis(t *testing.T) {
	for label, want := range map[handbook.Label]string{
		handbook.InPrint: "print", handbook.Practice: "practice", handbook.Memory: "recalled",
		handbook.Derived: "derived", handbook.Own: "own rule", handbook.Shop: "shop",
	} {
		if got := basis(&sheet.Figure{Limit: &handbook.Band{Source: &handbook.Source{Label: label}}}); got != want {
			t.Errorf("%v is shown as %q, not %q", label, got, want)
		}
	}
	if basis(&sheet.Figure{}) != "" || basis(&sheet.Figure{Limit: &handbook.Band{}}) != "" {
		t.Error("no source has a basis")
	}
	if got := basis(&sheet.Figure{Shop: true}); got != "shop" {
		t.Errorf("what the shop has set is shown as %q", got)
	}
}

// Either side of a limit that is the same both ways is over it.
func TestStateWord(t *testing.T) {
	even := &handbook.Band{Low: -0.1, High: 0.1}
	for v, want := range map[float64]string{-0.2: "over", 0.2: "over", 0: "within", math.NaN(): ""} {
		if got := stateWord(&sheet.Figure{Value: v, Limit: even}); got != want {
			t.Errorf("%v is %q, not %q", v, got, want)
		}
	}
	if got := stateWord(&sheet.Figure{Value: 1, Limit: &handbook.Band{Low: 2, High: 3}}); got != "under" {
		t.Errorf("1 of 2 to 3 is %q", got)
	}
	if got := stateWord(&sheet.Figure{Value: 2, Doubt: &sheet.Doubt{Unsure: true}, Limit: &handbook.Band{Low: 2, High: 3}}); got != "cannot tell" {
		t.Errorf("2 in doubt of 2 to 3 is %q", got)
	}
}

// However long a limit, a label or a title, nothing runs over the edge.
func TestLongLimitsAndTitlesKeepToTheWidth(t *testing.T) {
	s := &sheet.Sheet{Command: "speed"}
	s.Open("Off each lip, clean-up included")
	for _, label := range []string{"feed a turn", "least working clearance of all", "advance"} {
		s.Add(sheet.Figure{Key: "feed_mm", Label: label, Value: 0.2, Kind: quantity.Feed,
			Limit: &handbook.Band{Low: 0.1016, High: 0.2667, Source: &handbook.Source{Label: handbook.Own}}})
	}
	for _, width := range []int{30, 57, 79, 80, 81, 120} {
		out := written(t, Options{Form: Table, Width: width}, s)
		for _, l := range strings.Split(out, "\n") {
			if style.Width(l) > width {
				t.Errorf("width %d: %q has %d cells", width, l, style.Width(l))
			}
		}
	}
}
