package judge_test

import (
	_ "embed"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/command/point"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

//go:embed testdata/verdict.txt
var verdicts string

// verdictCase is one line of testdata/verdict.txt.
type verdictCase struct {
	line    int
	given   readings
	word    string
	reasons []string
}

func verdictCases(t *testing.T) []verdictCase {
	t.Helper()
	var out []verdictCase
	named := map[string]readings{}
	n := 0
	for line := range strings.Lines(verdicts) {
		n++
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		if rest, ok := strings.CutPrefix(line, "drill "); ok {
			name, given, _ := strings.Cut(rest, ":")
			named[name] = of(given)
			continue
		}
		given, want, ok := strings.Cut(line, "=>")
		if !ok {
			t.Fatalf("line %d: no =>", n)
		}
		word, reasons, _ := strings.Cut(strings.TrimSpace(want), ":")
		out = append(out, verdictCase{n, givenReadings(named, given), strings.TrimPrefix(word, "none"), strings.Fields(reasons)})
	}
	return out
}

func givenReadings(named map[string]readings, text string) readings {
	first, rest, more := strings.Cut(text, ";")
	out, ok := named[strings.TrimSpace(first)]
	switch {
	case !ok:
		return of(text)
	case !more:
		return out
	}
	for _, part := range strings.Split(rest, ";") {
		part = strings.TrimSpace(part)
		if name, ok := strings.CutPrefix(part, "no "); ok {
			out = out.With(of(name))
		} else {
			out = out.With(of(part))
		}
	}
	return out
}

func TestVerdicts(t *testing.T) {
	for _, c := range verdictCases(t) {
		s := point.Inspect.Sheet(possible(t, c.given), false)
		got := slices.Sorted(slices.Values(s.Verdict.Reasons))
		if s.Verdict.Word != c.word || !slices.Equal(got, slices.Sorted(slices.Values(c.reasons))) {
			t.Errorf("verdict.txt:%d: got %q: %v, want %q: %v", c.line, s.Verdict.Word, got, c.word, c.reasons)
		}
		for _, reason := range s.Verdict.Reasons {
			if !drilltest.Found(s, reason) {
				t.Errorf("verdict.txt:%d: no remark tells of %s", c.line, reason)
			}
		}
		if none := c.word == ""; none != (len(s.Verdict.Missing) > 0 && len(c.reasons) == 0) {
			t.Errorf("verdict.txt:%d: word %q, missing %v", c.line, c.word, s.Verdict.Missing)
		}
		if s.Outside() != (c.word != "fit") {
			t.Errorf("verdict.txt:%d: %q, and --check says outside %v", c.line, c.word, s.Outside())
		}
	}
}

// Every reason is met by a case of the file.
func TestEveryReasonIsMet(t *testing.T) {
	met := map[string]bool{}
	for _, c := range verdictCases(t) {
		for _, reason := range point.Inspect.Sheet(possible(t, c.given), false).Verdict.Reasons {
			met[reason] = true
		}
	}
	for i := 1; i < len(judge.Verdict{}.Reasons); i++ {
		if reason := judge.Reason(i).Code(); !met[reason] {
			t.Errorf("no case of the file is %s", reason)
		}
	}
}

// retire outweighs regrind, regrind thin, thin fit, and a word outweighs none.
func TestWordsAreInOrder(t *testing.T) {
	order := []judge.Word{judge.Undecided, judge.Fit, judge.Thin, judge.Regrind, judge.Retire}
	for i, w := range order {
		if want := [...]string{"", "fit", "thin", "regrind", "retire"}[i]; w.String() != want {
			t.Errorf("word %d is %q, want %q", i, w, want)
		}
		if i > 0 && w <= order[i-1] {
			t.Errorf("%q does not outweigh %q", w, order[i-1])
		}
	}
}

// More wear, a thicker web or a shorter flute never makes the verdict lighter.
func TestMoreWearIsNeverLighter(t *testing.T) {
	testkit.Property(t, "more wear, a thicker web or a shorter flute never makes the verdict lighter", func(t *rapid.T) {
		d := draw(t).Drill(t)
		more := *d
		for _, r := range []drill.Reading{drill.FlankWear, drill.CornerWear, drill.MarginWear, drill.LipChip} {
			v, _ := d.Get(r)
			d.Put(r, v)
			more.Put(r, v+rapid.SampledFrom([]float64{0, 0.01, 0.3, 20}).Draw(t, "more "+r.String()))
		}
		if flute, ok := d.Get(drill.Flute); ok {
			more.Put(drill.Flute, flute*rapid.Float64Range(0.1, 1).Draw(t, "of flute"))
		}
		if rapid.Bool().Draw(t, "cracked") {
			more.Put(drill.Cracked, 1)
		}
		before, after := judge.Compute(d).Verdict.Word, judge.Compute(&more).Verdict.Word
		if after < before {
			t.Fatalf("%q became %q", before, after)
		}
	})
}

// A crack ends the matter whatever else was read: one reason, and no figures.
func TestCrackedAlone(t *testing.T) {
	testkit.Property(t, "a crack retires the drill, whatever else was read, and gives no figures", func(t *rapid.T) {
		d := draw(t).With(of("cracked yes")).Drill(t)
		s := point.Inspect.Sheet(d, false)
		if s.Verdict.Word != "retire" || !slices.Equal(s.Verdict.Reasons, []string{"cracked"}) || len(numbers(s)) > 0 || len(s.Findings) != 1 {
			t.Fatalf("%+v, findings %v", s.Verdict, drilltest.Codes(s))
		}
	})
}

// Severity in the remarks follows the word: stop for what retires a drill.
func TestSeverity(t *testing.T) {
	s := point.Inspect.Sheet(possible(t, of("size 12mm; web 4.5mm; margin-wear 14mm; corner-wear 1mm")), false)
	for _, f := range s.Findings {
		want, reason := map[string]sheet.Severity{"margin-worn-far": sheet.Stop, "web-spent": sheet.Stop, "corner-worn": sheet.Warn}[f.Code]
		if reason && f.Severity != want {
			t.Errorf("%s is a %v, want %v", f.Code, f.Severity, want)
		}
	}
}

// Each reason says the number that breaks a limit, and the limit.
func TestReasonsSayTheNumbers(t *testing.T) {
	for line, want := range map[string][]float64{
		"margin-wear 13mm": {13}, "depth 30mm; flute 40mm": {40, 30, 42, 28}, "depth 30mm; flute 11mm": {11, 30, 42}, "flank-wear 0.3mm": {0.3, 0.25}, "corner-wear 0.4mm": {0.4},
		"margin-wear 1mm": {1}, "lip-chip 0.1mm": {0.1}, "lip-angle 56,56": {112 * deg, 118 * deg}, "clearance 7,12": {7 * deg, 8 * deg}, "clearance 12,7": {7 * deg, 8 * deg},
		"clearance 23,23": {23 * deg}, "clearance 24,24": {24 * deg}, "feed 4mm": {4}, "chisel-angle 119": {119 * deg, 120 * deg, 135 * deg},
		"lip-height -0.2mm": {0, 0.2}, "web 2.5mm": {2.5 / math.Sin(54*deg) / 12, 0.225},
	} {
		s := point.Inspect.Sheet(possible(t, sound.With(of(line))), false)
		last := s.Findings[len(s.Findings)-1]
		if len(s.Verdict.Reasons) != 1 || last.Code != s.Verdict.Reasons[0] {
			t.Errorf("%s: %v, remarks %v", line, s.Verdict.Reasons, drilltest.Codes(s))
			continue
		}
		says(t, line, last.Text, want)
	}
	s := point.Inspect.Sheet(possible(t, sound.With(of("lip-height -0.2mm"))), false)
	if word := s.Findings[len(s.Findings)-1].Text.Args[0].Word; word != "lip 2" {
		t.Errorf("the high lip is %q", word)
	}
}

// Under half a micrometre lips count as even.
func TestEvenLips(t *testing.T) {
	for height, want := range map[string]int{"0": 0, "0.0004mm": 0, "-0.0004mm": 0, "0.0006mm": 1, "-0.0006mm": 2} {
		r := compute(t, "lip-height "+height)
		if got := r.Lips.High(); got != want {
			t.Errorf("%s: the high lip is %d, want %d", height, got, want)
		}
	}
}

// Fit without a look at the edge says so; with flank wear read it does not.
func TestFitSaysWhenWearWasNotRead(t *testing.T) {
	fit := "size 12mm; material steel-200; web 1.8mm; chisel-angle 126; lip-angle 59,59; lip-height 0; clearance 12"
	if s := point.Inspect.Sheet(possible(t, of(fit)), false); !drilltest.Found(s, "wear-not-read") {
		t.Errorf("findings %v", drilltest.Codes(s))
	}
	if s := point.Inspect.Sheet(possible(t, of(fit+"; flank-wear 0.1mm")), false); drilltest.Found(s, "wear-not-read") {
		t.Errorf("findings %v", drilltest.Codes(s))
	}
}

// A point that is published for the work, though not the one to grind, is within
// and remarked on; one that is not published, or asked for, is not remarked on.
func TestPublishedPointIsRemarkedOn(t *testing.T) {
	for line, want := range map[string]bool{
		"size 12mm; material stainless-316; lip-angle 59,59":                  true,
		"size 12mm; material stainless-316; lip-angle 55,55":                  false,
		"size 12mm; material stainless-316; lip-angle 67.5,67.5":              false,
		"size 12mm; material stainless-316; lip-angle 59,59; point-angle 135": false,
		"size 12mm; lip-angle 65,65":                                          false,
		"size 12mm; material plastics; lip-angle 30.5,30.5":                   true,
	} {
		s := point.Point.Sheet(possible(t, of(line)), false)
		if got := drilltest.Found(s, "point-published"); got != want {
			t.Errorf("%s: remarks %v", line, drilltest.Codes(s))
		}
	}
}

// What is done about each reason beside taking stock off, in the order of work (own
// rule); a flank that rubs for want of clearance is cured with it.
func TestCures(t *testing.T) {
	const sound = "size 12mm; web 1.8mm; lip-height 0; feed 0.2mm"
	for line, want := range map[string][]string{
		"lip-angle 59,59; clearance 12,12; chisel-angle 126":                 nil,
		"lip-angle 50,51; clearance 12,12; chisel-angle 126":                 {"bring the point from 101.0° to 118.0°"},
		"lip-angle 59,59; clearance 3,12; chisel-angle 126":                  {"back the heel off from 3.0° to 12.0°", "grind both flanks alike, to 12.0°"},
		"lip-angle 59,59; clearance 25,25; chisel-angle 126":                 {"take less off the heel: 12.0° in place of 25.0°"},
		"lip-angle 59,59; clearance 12,12; chisel-angle 105":                 {"bring the chisel edge from 105.0° to between 120.0° and 135.0°"},
		"lip-angle 59,59; clearance 12,12; chisel-angle 126; flank-wear 1mm": nil,
		"lip-angle 59,59; clearance 8.5,8.5; chisel-angle 126; feed 6mm":     {"back the heel off until nothing rubs at 6.000 mm/rev"},
		"lip-angle 50,50; clearance 2,2; chisel-angle 105; feed 6mm":         {"bring the point from 100.0° to 118.0°", "back the heel off from 2.0° to 12.0°", "bring the chisel edge from 105.0° to between 120.0° and 135.0°"},
	} {
		r := judge.Compute(possible(t, of(sound).With(of(line))))
		var got []string
		for _, cure := range r.Cures() {
			got = append(got, cure.In(quantity.Format{System: quantity.Metric}))
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: %q, not %q", line, got, want)
		}
	}
}
