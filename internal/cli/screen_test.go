package cli_test

import (
	"strings"
	"testing"
	"unicode/utf8"
)

// screenLines is what is left of a terminal of 24 lines for the answer: the line typed
// and the prompt take one each.
const screenLines = 22

// Every answer about one drill fits a screen of 80 x 24, says first what it is, and
// carries its cautions; at 60 columns and without UTF-8 nothing is cut off.
func TestAnswersFitAScreen(t *testing.T) {
	for _, words := range answered(t) {
		line := strings.Join(words, " ")
		for _, x := range []struct {
			name  string
			flags []string
			width int
			lines int
		}{
			{"80 columns", []string{"--width", "80"}, 80, screenLines},
			{"60 columns", []string{"--width", "60"}, 60, 40},
			{"40 columns", []string{"--width", "40"}, 40, 90},
			{"inches", []string{"--width", "80", "--units", "in"}, 80, screenLines},
		} {
			t.Run(x.name+": "+line, func(t *testing.T) {
				got := run("", append(words[:len(words):len(words)], x.flags...)...)
				if got.status != 0 {
					t.Fatal(got.err)
				}
				lines := strings.Split(strings.TrimSuffix(got.out, "\n"), "\n")
				if len(lines) > x.lines {
					t.Errorf("%d lines, %d fit\n%s", len(lines), x.lines, got.out)
				}
				for _, l := range lines {
					if n := utf8.RuneCountInString(l); n > x.width {
						t.Errorf("%d columns: %s", n, l)
					}
				}
				if strings.TrimSpace(lines[0]) == "" || strings.Contains(got.out, "NaN") || strings.Contains(got.out, "{}") {
					t.Errorf("%s", got.out)
				}
				if words[0] != "size" && words[0] != "material" && !strings.Contains(got.out, "\nsafety  ") {
					t.Errorf("no cautions:\n%s", got.out)
				}
			})
		}
	}
}

// answered lists command lines whose answer is a screen: each command on the sample,
// and the examples of its help that are about one drill.
func answered(t *testing.T) [][]string {
	var out [][]string
	for name := range takes() {
		if name != "wheel" {
			out = append(out, []string{name, "--sample"})
		}
		help := run("", name, "--help").out
		_, examples, _ := strings.Cut(help, "\nExamples:\n")
		examples, _, _ = strings.Cut(examples, "\n\n")
		for _, line := range strings.Split(strings.ReplaceAll(examples, "\\\n", ""), "\n") {
			words := strings.Fields(line)
			if len(words) < 2 || words[0] != "evenlip" || strings.ContainsAny(line, "\"|>'") || strings.Contains(line, "--format") || strings.Contains(line, "--explain") || strings.Contains(line, "--svg") || strings.Contains(line, "--ask") || strings.Contains(line, "--full") {
				continue
			}
			out = append(out, words[1:])
		}
	}
	wrong := strings.Fields("--size 12mm --web 2.9mm --chisel-angle 110 --lip-angle 61,58 --lip-height 0.3mm --clearance 5,18 --corner-wear 0.5mm" +
		" --flank-wear 0.5mm --margin-wear 3mm --lip-chip 0.3mm --flute 90mm --depth 30mm --feed 0.2mm --caliper 0.02mm --protractor 1deg --indicator 0.01mm")
	for _, name := range []string{"inspect", "regrind"} { // all that can be wrong at once, and in doubt
		out = append(out, append([]string{name}, wrong...))
	}
	out = append(out, []string{"draw", "--sample"}, []string{"size", "1/2"}, []string{"size", "#43"}, []string{"material", "titanium", "--size", "12mm"}, []string{"material", "brass"})
	if len(out) < 30 {
		t.Fatalf("%d answers", len(out))
	}
	return out
}
