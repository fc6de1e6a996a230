package ask_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/cli/ask"
	"evenlip/internal/command/point"
	"evenlip/internal/drill"
)

// talk answers the questions of inspect, line by line, with all gauges at hand, and
// returns what was given in the end and what was said on the way.
func talk(t *testing.T, given []drill.Given, answers ...string) (map[drill.Reading]string, string) {
	t.Helper()
	return with(t, "all", given, answers...)
}

// with is talk with the gauges that the first answer names.
func with(t *testing.T, gauges string, given []drill.Given, answers ...string) (map[drill.Reading]string, string) {
	t.Helper()
	answers = append([]string{gauges}, answers...)
	var said bytes.Buffer
	out, err := ask.Talk{In: strings.NewReader(strings.Join(answers, "\n") + "\n"), Out: &said, Command: &point.Inspect, Width: 200}.Ask(given)
	if err != nil {
		t.Fatal(err)
	}
	texts := map[drill.Reading]string{}
	for _, g := range out {
		texts[g.Reading] = g.Text
	}
	return texts, said.String()
}

// A range that is usual is told in the units of the size.
func TestUsualRangeInTheSizesUnits(t *testing.T) {
	for size, want := range map[string]string{"1/2in": "usually: 0 to 0.015 in\n", "12mm": "usually: 0 to 0.4 mm\n"} {
		if _, said := talk(t, nil, size, "", "", "q"); !strings.Contains(said, want) {
			t.Errorf("%s: %s", size, said)
		}
	}
}

// What was known is not asked for, a mistake is asked again and changes nothing, and
// what an answer makes moot is passed over.
func TestAnswers(t *testing.T) {
	got, said := talk(t, []drill.Given{drill.Flag(drill.Size, "12mm")}, "no", "unobtanium", "steel-200", "", "", "", "", "59,58", "wide", "0.1mm", "12", "q")
	for r, want := range map[drill.Reading]string{drill.Size: "12mm", drill.Cracked: "no", drill.Material: "steel-200", drill.LipAngle: "59,58", drill.LipHeight: "0.1mm", drill.Clearance: "12"} {
		if got[r] != want {
			t.Errorf("%s is %q, not %q", r, got[r], want)
		}
	}
	if strings.Contains(said, "size> ") || strings.Contains(said, "heel-drop> ") || strings.Count(said, "material> ") != 2 || strings.Count(said, "lip-height> ") != 2 {
		t.Error(said)
	}
}

// Back, and out again: the answer that stands last is what counts.
func TestBackAndOut(t *testing.T) {
	got, _ := talk(t, nil, "12mm", "<", "10mm", "", "steel-200", "<", "-", "q")
	if got[drill.Size] != "10mm" || got[drill.Material] != "" {
		t.Errorf("%v", got)
	}
}

// What the gauges at hand do not read is not asked for; without an indicator lip lengths
// stand in for heights. What is seen, and what the job is, is always asked.
func TestGauges(t *testing.T) {
	for _, x := range []struct{ gauges, asked, not string }{
		{"", "lip-length cracked material lip-angle web", "lip-height heel-drop"},
		{"caliper", "lip-length web cracked", "lip-height lip-angle chisel-angle heel-drop"},
		{"gauge, indicator", "lip-height heel-drop lip-angle cracked size", "web lip-length flute"},
		{"all", "lip-height heel-drop lip-angle web flute", "lip-length"},
	} {
		_, said := with(t, x.gauges, nil, slices.Repeat([]string{""}, 20)...)
		said, _, _ = strings.Cut(said, "Enter for the answer")
		for _, name := range strings.Fields(x.asked) {
			if !strings.Contains(said, "\n"+name+"> ") {
				t.Errorf("with %q %s is not asked", x.gauges, name)
			}
		}
		for _, name := range strings.Fields(x.not) {
			if strings.Contains(said, "\n"+name+"> ") {
				t.Errorf("with %q %s is asked", x.gauges, name)
			}
		}
	}
}
