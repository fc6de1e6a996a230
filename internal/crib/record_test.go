package crib

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/plan"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
)

// After a grind by a known stock: flute and length are shorter by it, the web is
// thicker by taper times stock, and what the wheel has touched is to be read
// anew. Worked by hand: 2 mm + 0.016 x 0.6 mm = 2.0096 mm; 70 - 0.6 = 69.4 mm.
func TestGrindWritesWhatItMoves(t *testing.T) {
	got := rewritten(t, small, "A1", ground("0.6mm"))
	want := strings.NewReplacer(
		"    web:   2mm     # caliper", "    web:   2.0096mm     # caliper",
		"    lip-angle: [59, 58]\n", "", "flute: 70mm", "flute: 69.4mm", "    flank-wear: 0.4mm\n", "",
		"# by hand\n", `# by hand
      - date: 2026-11-25
        what: grind
        stock: 0.6mm
        before:
          web: 2mm
          lip-angle: 59,58
          flute: 70mm
          flank-wear: 0.4mm
`).Replace(small)
	if got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

func TestMoves(t *testing.T) {
	const body = "version: 1\ndrills:\n  - id: a\n    size: 10mm\n"
	for _, c := range []struct {
		name, drill string
		change      Change
		want        string // readings as they then stand; "-" for none
	}{
		{"a land along the lips keeps what is left", "lip-flat: 0.6mm\n    flute-point: 118", ground("0.2mm"), "lip-flat 0.4mm"},
		{"a land along the lips is ground away", "lip-flat: 0.6mm", ground("0.6mm"), "lip-flat -"},
		{"margin and chip keep what is left", "margin-wear: 1mm\n    lip-chip: 0.9mm\n    corner-wear: 1mm", ground("0.6mm"), "margin-wear 0.4mm, lip-chip 0.3mm, corner-wear -"},
		{"margin gone", "margin-wear: 0.6mm", ground("0.6mm"), "margin-wear -"},
		{"second web comes nearer", "web: 1.5mm\n    second-web: 2mm\n    second-web-at: 25mm", ground("5mm"), "web 1.6mm, second-web 2mm, second-web-at 20mm"},
		{"second web passed", "web: 1.5mm\n    second-web: 2mm\n    second-web-at: 4mm", ground("5mm"), "second-web -, second-web-at -"},
		{"web from the chisel", "chisel-length: 2mm\n    chisel-angle: 150\n    web-taper: 0.01", ground("10mm"), "web 1.1mm, chisel-length -, chisel-angle -"},
		{"thinned, then ground", "web: 1mm\n    history: [{date: 2026-01-01, what: thinning}]", ground("1mm"), "web -"},
		{"thinned, ground, ground", "web: 1mm\n    web-taper: 0.02\n    history: [{date: 2026-01-01, what: thinning}, {date: 2026-01-02, what: grind}]", ground("1mm"), "web 1.02mm"},
		{"inches stay inches", "length: 4-1/2in\n    flute: 3in", ground("0.25in"), "length 4.25in, flute 2.75in"},
		{"bare stays bare", "flute: 80\n    units: mm", ground("0.6"), "flute 79.4"},
		{"bare fraction gets its unit", "flute: 3-1/2", ground("0.1in"), "flute 3.4in"},
		{"given along", "lip-angle: 60,58\n    clearance: 12", Change{Date: "2026-01-01", What: Grind, Stock: "1mm", Readings: map[drill.Reading]string{drill.LipAngle: "59,59"}}, "lip-angle 59,59, clearance -"},
		{"thinning by web", "web: 2mm\n    chisel-length: 2.4mm\n    flute: 50mm", Change{Date: "2026-01-01", What: Thinning, Readings: map[drill.Reading]string{drill.Web: "1.5mm"}}, "web 1.5mm, chisel-length -, flute 50mm"},
		{"thinning by chisel", "web: 2mm", Change{Date: "2026-01-01", What: Thinning, Readings: map[drill.Reading]string{drill.ChiselLength: "1.5mm"}}, "web -, chisel-length 1.5mm"},
		{"units of the change", "web: 2mm\n    flute: 60mm", Change{Date: "2026-01-01", What: Readings, Units: 2, Readings: map[drill.Reading]string{drill.Web: "0.1", drill.Flute: "2in"}}, "web 0.1 in, flute 2in"},
	} {
		text := body + "    " + c.drill + "\n"
		if strings.Contains(c.drill, "history: [{") {
			text = strings.ReplaceAll(text, "history: [{", "history:\n      - {")
			text = strings.ReplaceAll(text, "}, {", "}\n      - {")
			text = strings.ReplaceAll(text, "}]", "}")
		}
		out := read(t, rewritten(t, text, "a", c.change))
		for _, want := range strings.Split(c.want, ", ") {
			name, value, _ := strings.Cut(want, " ")
			r, _ := drill.Find(name)
			got := out.Drills[0].Readings.Written(r)
			if value == "-" {
				value = ""
			}
			if got != value {
				t.Errorf("%s: %s is %q, not %q", c.name, name, got, value)
			}
		}
	}
}

// Two grinds are as good as one of their sum, to the last digit written.
func TestGrindsAddUp(t *testing.T) {
	testkit.Property(t, "two grinds are as good as one of their sum, to the last digit written", func(rt *rapid.T) {
		tenth := func(label string) float64 { return float64(rapid.IntRange(1, 40).Draw(rt, label)) / 10 }
		a, b := tenth("first"), tenth("second")
		text := "version: 1\ndrills:\n  - id: a\n    size: 12mm\n    web: 2mm\n    flute: 80mm\n"
		mm := func(v float64) string {
			m := mover{d: &Drill{Readings: new(drill.Drill)}}
			return m.written(drill.Flute, v)
		}
		two := read(t, rewritten(t, rewritten(t, text, "a", ground(mm(a))), "a", ground(mm(b))))
		one := read(t, rewritten(t, text, "a", ground(mm(a+b))))
		for _, r := range []drill.Reading{drill.Web, drill.Flute} {
			if x, y := two.Drills[0].Readings.Value(r), one.Drills[0].Readings.Value(r); math.Abs(x-y) > 0.0015 {
				rt.Fatalf("%s: %v in two, %v in one", r, x, y)
			}
		}
	})
}

// What the readings were before stands in the history: nothing is lost.
func TestNothingIsLost(t *testing.T) {
	c := theSample(t)
	for i := range c.Drills {
		d := &c.Drills[i]
		if d.Readings.Has(drill.Cracked) {
			continue
		}
		out := read(t, rewritten(t, string(sample), d.ID, ground("0.1mm")))
		after := find(t, out, d.ID)
		event := after.History[len(after.History)-1]
		for _, r := range drill.All() {
			was, is := d.Readings.Written(r), after.Readings.Written(r)
			told := slices.ContainsFunc(event.Before, func(w Was) bool { return w.Reading == r && w.Text == was })
			if was != "" && was != is && !told {
				t.Errorf("%s: %s was %q, is %q, and the history does not say so", d.ID, r, was, is)
			}
		}
	}
}

// Whatever drill of the sample is changed, every line that the change does not
// bear on stands as it did, in its order.
func TestEveryOtherByteStays(t *testing.T) {
	c := theSample(t)
	for _, eol := range []string{"\n", "\r\n", "\r"} {
		text := strings.ReplaceAll(string(sample), "\n", eol)
		for i := range c.Drills {
			id := c.Drills[i].ID
			ch := Change{Date: "2026-11-25", What: Readings, Note: "x", Readings: map[drill.Reading]string{drill.Depth: "5mm"}}
			got := rewritten(t, text, id, ch)
			if strings.ContainsAny(strings.ReplaceAll(got, eol, ""), "\r\n") {
				t.Fatalf("%s: line ends are mixed", id)
			}
			old, now := strings.SplitAfter(text, eol), strings.SplitAfter(got, eol)
			kept := 0
			for _, line := range now {
				if kept < len(old) && line == old[kept] {
					kept++
				} else if kept < len(old) && strings.Contains(old[kept], " depth: ") && strings.Contains(line, " depth: 5mm") {
					kept++
				}
			}
			if kept != len(old) {
				t.Fatalf("%s: line %d is gone: %q", id, kept+1, old[kept])
			}
		}
	}
}

// The shapes that a hand may give a file.
func TestShapes(t *testing.T) {
	read1 := Change{Date: "2026-11-25", What: Readings, Readings: map[drill.Reading]string{drill.Web: "2mm", drill.LipAngle: "59,58"}}
	const event = "      - date: 2026-11-25\n        what: readings\n"
	for _, c := range []struct {
		name, text, want string
		change           Change
	}{
		{"no end of line", "version: 1\ndrills:\n  - id: a\n    size: 3mm", "version: 1\ndrills:\n  - id: a\n    size: 3mm\n    depth: 1mm\n    history:\n" + strings.TrimSuffix(event, "\n"),
			Change{Date: "2026-11-25", What: Readings, Readings: map[drill.Reading]string{drill.Depth: "1mm"}}},
		{"quotes", "version: 1\ndrills:\n- id: a\n  size: 12mm\n  web: '1.9mm'   # x\n  lip-angle: \"60,58\"\n  history: []\n", "version: 1\ndrills:\n- id: a\n  size: 12mm\n  web: '2mm'   # x\n  lip-angle: \"59,58\"\n  history: \n    - date: 2026-11-25\n      what: readings\n      before:\n        web: 1.9mm\n        lip-angle: 60,58\n", read1},
		{"marks inside quotes", "version: 1\ndrills:\n  - id: a\n    size: 1/2\n    flute: \"3\\\"\" # \"x\"\n", "version: 1\ndrills:\n  - id: a\n    size: 1/2\n    flute: \"2in\" # \"x\"\n    history:\n      - date: 2026-11-25\n        what: grind\n        stock: 1in\n        before:\n          flute: 3\"\n", ground("1in")},
		{"a minute inside quotes", "version: 1\ndrills:\n  - id: a\n    size: 1/2\n    lip-angle: '58°30''' # it's\n    web: 2mm\n", "version: 1\ndrills:\n  - id: a\n    size: 1/2\n    lip-angle: '59,58' # it's\n    web: 2mm\n    history:\n" + event + "        before:\n          lip-angle: 58°30'\n", read1},
		{"letters before it", "version: 1\ndrills:\n  - {id: é, size: 1mm, note: é\u2028  é}\n  - \"\\u0069d\": a\n    size: 12mm\n    web: 1.9mm # é\n    lip-angle: 59,58\n", "version: 1\ndrills:\n  - {id: é, size: 1mm, note: é\u2028  é}\n  - \"\\u0069d\": a\n    size: 12mm\n    web: 2mm # é\n    lip-angle: 59,58\n    history:\n" + event + "        before:\n          web: 1.9mm\n", read1},
		{"first key goes", "version: 1\ndrills:\n  - flank-wear: 1mm\n    corner-wear: 1mm\n    id: a\n    size: 12mm\n", "version: 1\ndrills:\n  -\n    id: a\n    size: 12mm\n    history:\n      - date: 2026-11-25\n        what: grind\n        stock: 1mm\n        before:\n          flank-wear: 1mm\n          corner-wear: 1mm\n", ground("1mm")},
		{"history in the middle", "version: 1\ndrills:\n  - id: a\n    history:\n    - {date: 2026-01-01, what: grind}\n\n    # the size\n    size: 12mm\n    web: 2mm\n    lip-angle: 59,58\n\n  - id: b\n    size: 1mm\n", "version: 1\ndrills:\n  - id: a\n    history:\n    - {date: 2026-01-01, what: grind}\n    - date: 2026-11-25\n      what: readings\n\n    # the size\n    size: 12mm\n    web: 2mm\n    lip-angle: 59,58\n\n  - id: b\n    size: 1mm\n", read1},
		{"empty history", "version: 1\ndrills:\n  - id: a\n    size: 12mm\n    web: 2mm\n    lip-angle: 59,58\n    history:\n", "version: 1\ndrills:\n  - id: a\n    size: 12mm\n    web: 2mm\n    lip-angle: 59,58\n    history:\n" + event, read1},
	} {
		if got := rewritten(t, c.text, "a", c.change); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

// What cannot be changed without a hand is refused, with its place.
func TestShapesThatAreRefused(t *testing.T) {
	for _, text := range []string{
		"version: 1\ndrills:\n  - {id: a, size: 12mm}\n",
		"version: 1\ndrills:\n  - id: a\n    size: 12mm\n    history: [{date: 2026-01-01, what: grind}]\n",
		"version: 1\ndrills:\n  - id: a\n    size: 12mm\n    history: ~\n",
		"version: 1\ndrills: [\n  {id: a, size: 12mm}]\n",
	} {
		_, out, err := Rewrite("crib.yaml", []byte(text), "a", ground("1mm"), nil)
		var e *fault.Fault
		if !errors.As(err, &e) || e.At.Line == 0 || e.Hint == "" || out != nil {
			t.Errorf("%q gives %v and %d bytes", text, err, len(out))
		}
	}
}

// A file that says anything else than what was meant is seen before it is
// written.
func TestConfirmSeesEveryDifference(t *testing.T) {
	c := read(t, small)
	out, next, err := Rewrite("crib.yaml", []byte(small), "A1", ground("0.6mm"), nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := c.confirm("crib.yaml", next, out, nil); err != nil {
		t.Fatal(err)
	}
	for old, other := range map[string]string{
		"0.085": "0.084", "12mm: 2": "12mm: 3", "'the small drawer'": "drawer", "stock: 0.6mm": "stock: 0.7mm", "stock: 0.5mm": "stock: 0.4mm",
		"69.4mm": "69.5mm", "lip-angle: 59,58": "lip-angle: 58,59", "web: 2mm": "flute: 2mm", "id: B1": "id: B2", "on \"brackets\"": "no more",
		"2026-01-02": "2026-01-03", "2026-11-25": "2026-11-24", "  - id: B1\n    size: 1/2\n    web: 0.085\n": "", "what: grind\n": "what: thinning\n",
		"stock: 0.6mm\n": "note: x\n",
	} {
		tampered := strings.Replace(string(next), old, other, 1)
		if tampered == string(next) {
			t.Fatalf("there is no %q", old)
		}
		if c.confirm("crib.yaml", []byte(tampered), out, nil) == nil {
			t.Errorf("%q in the place of %q was not seen", other, old)
		}
	}
}

func TestRefusals(t *testing.T) {
	with := func(ch Change, r drill.Reading, text string) Change {
		ch.Readings = map[drill.Reading]string{r: text}
		return ch
	}
	for _, c := range []struct {
		id   string
		ch   Change
		want string
	}{
		{"C", ground("1mm"), `no drill of this crib is called "C"`},
		{"A1", ground("70mm"), "--grind: 70mm off leaves no flute: it was 70mm"},
		{"A1", ground("0mm"), `--grind: "0mm" takes nothing off`},
		{"A1", ground("-1mm"), `--grind: cannot read "-1mm"`},
		{"A1", ground(".nan"), `--grind: cannot read ".nan"`},
		{"A1", Change{Date: "today", What: Grind, Stock: "1mm"}, `--date: cannot read "today"`},
		{"A1", Change{Date: "2026-11-25", What: Readings}, "nothing was given to record"},
		{"A1", Change{Date: "2026-11-25", What: Thinning}, "--thinning: what the point was thinned to is missing"},
		{"A1", with(Change{Date: "2026-11-25", What: Readings}, drill.Web, "13mm"), "--web: 13.00 mm cannot be"},
		{"A1", with(Change{Date: "2026-11-25", What: Readings}, drill.Web, "1,8"), `--web: cannot read "1,8"`},
		{"A1", with(Change{Date: "2026-11-25", What: Readings, Units: 2}, drill.Web, "x"), `--web: cannot read "x"`},
		{"A1", with(Change{Date: "2026-11-25", What: Readings}, drill.Length, "60mm"), "--length: 60.00 mm cannot be"},
	} {
		_, _, err := Rewrite("crib.yaml", []byte(small), c.id, c.ch, nil)
		var r *fault.Fault
		if !errors.As(err, &r) || !strings.HasPrefix(r.Error(), c.want) {
			t.Errorf("%v, not %s", err, c.want)
		}
	}
	cracked := strings.Replace(small, "flute: 70mm", "cracked: yes", 1)
	if _, _, err := Rewrite("crib.yaml", []byte(cracked), "A1", ground("1mm"), nil); err == nil || !strings.Contains(err.Error(), "never reground") {
		t.Errorf("a cracked drill: %v", err)
	}
	if _, _, err := Rewrite("crib.yaml", []byte("version: 3\n"), "A1", ground("1mm"), nil); err == nil || !strings.Contains(err.Error(), "version 3") {
		t.Errorf("a newer file: %v", err)
	}
}

// An id that is nearly right is suggested.
func TestNearIDs(t *testing.T) {
	c := theSample(t)
	for id, want := range map[string]string{"m120-1": "mean M120-1?", "M1201": "mean M120-1?", "I32-": "mean I32-1?", "M120-9": "mean M120-1?", "drill": "evenlip crib list", "": "evenlip crib list"} {
		if got := c.Meant(id); !strings.Contains(got, want) {
			t.Errorf("%q: %s", id, got)
		}
	}
}

// A note comes back as it was given, whatever is in it, and so does a reading.
func TestTextsSurvive(t *testing.T) {
	for _, note := range []string{"plain", "#7", "a: b", "it's", `"q"`, "- x", "null", "~", "é ✓ \u2028", " blank ", "a # b", "{x}", "1.5", "\\", "don't\x1b[31m", "-5", "...", "yes", "@", "%x"} {
		got := read(t, rewritten(t, small, "B1", Change{Date: "2026-01-01", What: Readings, Note: note, Readings: map[drill.Reading]string{drill.Material: "steel-300"}}))
		if h := find(t, got, "B1").History; h[0].Note != note {
			t.Errorf("%q came back as %q", note, h[0].Note)
		}
	}
}

// FuzzRewrite changes any crib there is: either nothing comes back, or a file
// that says just what was meant and still has every remark.
func FuzzRewrite(f *testing.F) {
	f.Add(small, "0.6mm", "note")
	f.Add(strings.ReplaceAll(small, "\n", "\r\n"), "0.6mm", "a: b")
	f.Add("version: 1\ndrills:\n- size: 12mm\n  id: A1\n  note: |\n    one\n    # two\n", "1mm", "")
	f.Fuzz(func(t *testing.T, text, stock, note string) {
		c, errs := Read("f", []byte(text), nil)
		if len(errs) > 0 || len(c.Drills) == 0 {
			return
		}
		id := c.Drills[0].ID
		ch := ground(stock)
		ch.Note = note
		out, next, err := Rewrite("f", []byte(text), id, ch, nil)
		if err != nil {
			return
		}
		after, errs := Read("f", next, nil)
		if len(errs) > 0 {
			t.Fatalf("%v\n%s", errs, next)
		}
		if d := find(t, after, id); len(d.History) != len(c.Drills[0].History)+1 {
			t.Fatalf("%d events after %d\n%s", len(d.History), len(c.Drills[0].History), next)
		}
		if lost := lostRemark(text, string(next)); lost != "" {
			t.Fatalf("%q is lost:\n%s", lost, next)
		}
		if len(out.Moves) == 0 && !strings.HasPrefix(string(next), text[:min(len(text), 10)]) {
			t.Fatalf("the head of the file moved:\n%s", next)
		}
	})
}

// Less off than the plan takes: the wear that was in the readings may still be
// there, and the record says so; with the plan's own stock it says nothing, nor
// of wear that was read again.
func TestTooLittleOffForTheWear(t *testing.T) {
	const text = "version: 1\ndrills:\n  - id: A\n    size: 25mm\n    lip-angle: 59,59\n    lip-height: 0\n    clearance: 12\n    flank-wear: 0.6mm\n    corner-wear: 1.2mm\n    flute: 150mm\n"
	c := read(t, text)
	takes := c.Day().Tasks[0].Plan.Stock.Total
	said := func(ch Change) string {
		out, _, err := Rewrite("crib.yaml", []byte(text), "A", ch, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range out.Sheet("crib.yaml", false, quantity.Gauges{}).Findings {
			if f.Code == "wear-may-be-left" {
				return f.Text.In(quantity.Format{System: quantity.Metric})
			}
		}
		return ""
	}
	if got := said(ground("0.1mm")); !strings.Contains(got, "the worn land and the rounded corner may not be out yet") {
		t.Errorf("%q", got)
	}
	again := ground("0.1mm")
	again.Readings = map[drill.Reading]string{drill.CornerWear: "1mm"}
	if got := said(again); !strings.Contains(got, ": the worn land may not be out") || strings.Contains(got, "corner") {
		t.Errorf("with the corner read again: %q", got)
	}
	blunt := strings.NewReplacer("    flank-wear: 0.6mm\n    corner-wear: 1.2mm\n", "    flank-wear: 0.2mm\n").Replace(text)
	out, _, err := Rewrite("crib.yaml", []byte(blunt), "A", ground("0.01mm"), nil)
	if err != nil || plan.Of(out.Old).Do != plan.Undecided || !strings.Contains(oddities(out.Sheet("crib.yaml", false, quantity.Gauges{})), "wear-may-be-left: 0.01 mm came off where the plan takes 0.09 mm") {
		t.Errorf("of a grind that could have waited: %q, %v", oddities(out.Sheet("crib.yaml", false, quantity.Gauges{})), err)
	}
	if got := said(ground(millimetres(takes))); got != "" {
		t.Errorf("with the plan's own stock: %q", got)
	}
	if got := said(ground(millimetres(takes - 0.055))); got != "" {
		t.Errorf("with all but the clean-up: %q", got)
	}
	if got := said(Change{Date: "2026-11-25", What: Readings, Readings: map[drill.Reading]string{drill.Clearance: "13"}}); got != "" {
		t.Errorf("without a grind: %q", got)
	}
}

// Records made at the same time are all there, on one drill as on several.
func TestRecordsAtOnce(t *testing.T) {
	const drills, each = 5, 4
	path := inFile(t, manyDrills(drills))
	var wg sync.WaitGroup
	for i := range drills * each {
		wg.Add(1)
		go func() {
			defer wg.Done()
			ch := Change{Date: "2026-11-25", What: Readings, Note: fmt.Sprint("record ", i), Readings: map[drill.Reading]string{drill.Web: "2mm"}}
			if out, err := Record(path, fmt.Sprint("D", i%drills), ch, nil); err != nil || out.Event.Note != ch.Note {
				t.Errorf("record %d: %v", i, err)
			}
		}()
	}
	wg.Wait()
	text := contents(t, path)
	for _, d := range read(t, text).Drills {
		if len(d.History) != each {
			t.Errorf("%s: %d of %d records", d.ID, len(d.History), each)
		}
	}
	for i := range drills * each {
		if !strings.Contains(text, fmt.Sprintf("note: record %d\n", i)) {
			t.Errorf("record %d is missing", i)
		}
	}
	if strings.Count(text, "# drill ") != drills || strings.Count(text, "# caliper") != drills {
		t.Errorf("remarks are gone:\n%s", text)
	}
}
