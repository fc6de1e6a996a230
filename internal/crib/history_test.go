package crib

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

const twelve = "version: 1\ndrills:\n  - id: a\n    size: 12mm\n    flute: 70mm\n    web: 2mm\n    history:\n"

// What cannot follow one another, cannot come off or cannot have changed is refused
// where it stands.
func TestHistoriesThatCannotBe(t *testing.T) {
	for entries, want := range map[string]string{
		"{date: 2026-01-02, what: grind}|{date: 2026-01-02, what: retired}":                                      "",
		"{date: 2026-01-02, what: retired}|{date: 2026-01-02, what: grind}":                                      "9:9 nothing is done to a drill that was retired on 2026-01-02",
		"{date: 2026-01-02, what: retired}|{date: 2026-01-01, what: readings}|{date: 2026-01-02, what: retired}": "9:9 nothing is done to\n10:9 nothing is done to",
		"{date: 2026-01-02, what: grind}|{date: 2026-01-01, what: grind}|{date: 2026-01-01, what: grind}":        "9:16 date: 2026-01-01 stands below 2026-01-02",
		"{date: never, what: grind}|{date: 2026-01-01, what: grind}|{what: grind}":                               "8:16 date: cannot read\n10:9 an entry of the history without date",
		"{date: 2026-01-02, what: grind, stock: 300mm}":                                                          "",
		"{date: 2026-01-02, what: grind, stock: 500mm}":                                                          "8:48 stock: 500.00 mm cannot be: it is over 25 diameters",
		"{date: 2026-01-02, what: grind, before: {size: 13mm, web: 2mm}}":                                        "8:56 size: no drill changes its size",
	} {
		text := twelve
		for _, e := range strings.Split(entries, "|") {
			text += "      - " + e + "\n"
		}
		_, errs := Read("crib.yaml", []byte(text), nil)
		got := strings.Split(complaints(errs), "\n")
		for i, line := range strings.Split(want, "\n") {
			if len(got) != strings.Count(want, "\n")+1 || !strings.HasPrefix(got[i], line) || want == "" && len(errs) > 0 {
				t.Errorf("%s: %q, not %q", entries, got, want)
				break
			}
		}
	}
	// a drill whose units are not known is not measured by them
	if _, errs := Read("crib.yaml", []byte("version: 1\ndrills:\n  - {id: a, sise: 1in, size: 12mm, history: [{date: 2026-01-02, what: grind, stock: 400}]}\n"), nil); strings.Contains(complaints(errs), "stock") {
		t.Error(complaints(errs))
	}
	_, _, err := Rewrite("crib.yaml", []byte(steady), "a", ground("301mm"), nil)
	var r *fault.Fault
	if !errors.As(err, &r) || r.Text != "--grind: 301mm cannot be: it is over 25 diameters" {
		t.Error(err)
	}
}

// odd returns the doubts that a sheet tells.
func oddities(s *sheet.Sheet) string {
	var out []string
	for _, f := range s.Findings {
		if f.Severity == sheet.Warn {
			out = append(out, f.Code+": "+f.Text.In(quantity.Format{System: quantity.Metric}))
		}
	}
	return strings.Join(out, "\n")
}

// A history that breaks no rule, and yet cannot all be so, is told of.
func TestDoubtfulHistories(t *testing.T) {
	for entries, want := range map[string]string{
		"{date: 2026-01-02, what: readings, before: {flute: 69mm}}":                                                                    "",
		"{date: 2026-01-02, what: readings, before: {flute: 68mm}}":                                                                    "history-odd: a: flute was 68.00 mm before the readings of 2026-01-02, and 70.00 mm after it",
		"{date: 2026-01-02, what: correction, before: {flute: 68mm}}":                                                                  "",
		"{date: 2026-01-02, what: grind, stock: 5mm, before: {flute: 75.9mm}}":                                                         "",
		"{date: 2026-01-02, what: grind, stock: 5mm, before: {flute: 70mm}}":                                                           "history-odd: a: flute was 70.00 mm before the grind of 2026-01-02, and 70.00 mm after it",
		"{date: 2026-01-02, what: grind, stock: 5mm, before: {flute: 90mm}}":                                                           "history-odd: a: flute was 90.00 mm before the grind of 2026-01-02, and 70.00 mm after it",
		"{date: 2026-01-02, what: grind, before: {flute: 90mm}}":                                                                       "",
		"{date: 2026-01-02, what: thinning, before: {web: 2.5mm}}":                                                                     "",
		"{date: 2026-01-02, what: thinning, before: {web: 2mm}}":                                                                       "history-odd: a: web was 2.00 mm before the thinning of 2026-01-02, and 2.00 mm after it",
		"{date: 2026-01-02, what: thinning, before: {web: 1.5mm}}|{date: 2026-01-03, what: grind, stock: 1mm, before: {web: 1.2mm}}":   "",
		"{date: 2026-01-02, what: readings, before: {flute: 60mm}}|{date: 2026-01-03, what: grind, stock: 1mm, before: {flute: 71mm}}": "history-odd: a: flute was 60.00 mm before the readings of 2026-01-02, and 71.00 mm after it",
		"{date: 2026-01-02, what: retired}":                                                                                            "",
	} {
		text := twelve
		for _, e := range strings.Split(entries, "|") {
			text += "      - " + e + "\n"
		}
		c := read(t, text)
		list := c.List(c.Listed(Filter{}), People)
		if got := oddities(list); got != want {
			t.Errorf("%s: %q, not %q", entries, got, want)
		}
		if strings.Contains(entries, "retired") {
			continue
		}
		day := c.Day()
		for _, s := range []*sheet.Sheet{c.Audit(c.Judge(), Scripts), c.Plan(&day, Scripts)} {
			if got := oddities(s); got != want {
				t.Errorf("%s: %s tells %q", entries, s.Command, got)
			}
		}
	}
}

// Readings that no verdict shows, and that are hardly what was meant, are told of.
func TestOddReadings(t *testing.T) {
	for of, want := range map[string]string{
		"size: 3/8, flute: 40in":                 "reading-odd: a: 1016.00 mm of flute is over 15 diameters of a 9.525 mm drill: is it in the unit that was meant?",
		"size: 10mm, flute: 150.1mm":             "reading-odd: a: 150.10 mm of flute is over 15 diameters of a 10.000 mm drill: is it in the unit that was meant?",
		"size: 10mm, flute: 150mm":               "",
		"size: 10mm, flute: 180mm, series: long": "",
		"size: 120mm":                            "reading-odd: a: 120.000 mm is larger than any drill that is listed: is it in the unit that was meant?",
		"size: 100mm":                            "",
	} {
		c := read(t, "version: 1\ndrills:\n  - {id: a, "+of+"}\n")
		for _, s := range []*sheet.Sheet{c.List(c.Listed(Filter{}), People), c.Audit(c.Judge(), People)} {
			if got := oddities(s); got != want {
				t.Errorf("%s: %s, want %s", of, got, want)
			}
		}
	}
}

// Of many doubts twenty are told, and that there are more.
func TestManyDoubts(t *testing.T) {
	text := "version: 1\ndrills:\n"
	for i := range 25 {
		text += fmt.Sprintf("  - {id: a%d, size: 12mm, flute: 70mm, history: [{date: 2026-01-02, what: readings, before: {flute: 60mm}}]}\n", i)
	}
	c := read(t, text)
	got := strings.Split(oddities(c.List(c.Listed(Filter{}), People)), "\n")
	if len(got) != 21 || got[20] != "history-odd: 5 more such doubts about histories" {
		t.Errorf("%d: %q", len(got), got[len(got)-1])
	}
}

// A drill that got shorter by other than what came off it is told of when that is
// recorded.
func TestShorterThanGround(t *testing.T) {
	for _, c := range []struct {
		change Change
		want   string
	}{
		{with(Readings, given{drill.Flute: "69mm"}), ""},
		{with(Readings, given{drill.Flute: "20mm"}), "shorter-unsaid: flute was 70.00 mm and is 20.00 mm, and no grind says why"},
		{with(Correction, given{drill.Flute: "20mm"}), ""},
		{with(Grind, nil), ""},
		{with(Grind, given{drill.Flute: "68.5mm"}), ""},
		{with(Grind, given{drill.Flute: "70.5mm"}), "other-than-ground: flute was 70.00 mm and is 70.50 mm, where 1.00 mm came off"},
		{with(Grind, given{drill.Length: "130mm"}), "other-than-ground: length was 140.00 mm and is 130.00 mm, where 1.00 mm came off"},
	} {
		out, err := read(t, steady).Apply("a", c.change)
		if err != nil {
			t.Fatal(err)
		}
		if got := oddities(out.Sheet("crib.yaml", false, quantity.Gauges{})); !strings.HasPrefix(got, c.want) || c.want == "" && got != "" {
			t.Errorf("%+v: %q", c.change, got)
		}
	}
}
