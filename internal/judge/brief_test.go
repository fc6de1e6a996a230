package judge_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
)

// A list tells each reason with the limit it breaks in brackets, what decides first.
// The limits are those of the tables: 0.10 mm of lip height from 10 mm on, a land of
// 0.25 mm and 42 mm of flute for a hole of 30 mm in a drill of 12 mm.
func TestBrief(t *testing.T) {
	const sound = "size 12mm; web 1.8mm; chisel-angle 127; lip-angle 59,59; depth 30mm"
	for line, want := range map[string]string{
		"lip-height 0; clearance 12":                                            "",
		"lip-height 0.12mm; clearance 12":                                       "lip 1 is high by 0.12 mm (0.10)",
		"lip-height -0.12mm; clearance 12; flank-wear 0.5mm":                    "wear land 0.50 mm (0.25) | lip 2 is high by 0.12 (0.10)",
		"lip-height 0; clearance 12; corner-wear 0.4mm; lip-chip 0.2mm":         "corners rounded 0.40 mm (0.25) | lip chipped 0.20 deep",
		"lip-height 0; clearance 5,5":                                           "the lips have 5° of clearance (8)",
		"lip-height 0; clearance 12; flute 30mm; flank-wear 0.5mm":              "flute 30 mm left (42) | and 1 more reason",
		"lip-height 0.2mm; clearance 12; flute 30mm; flank-wear 0.5mm":          "flute 30 mm left (42) | and 2 more reasons",
		"lip-height 0; clearance 12; cracked yes; flank-wear 0.5mm; flute 30mm": "cracked",
		"lip-height 0; clearance 12; margin-wear 13mm; flute 40mm; depth 30mm":  "margin worn 13.00 mm up (12.00) | flute 40 left (42)",
		"clearance 12":                        "lip height",
		"":                                    "lip height | clearance",
		"flank-wear 0.5mm":                    "wear land 0.50 mm (0.25)",
		"lip-height 0; clearance 12; web 3mm": "chisel edge 3.76 mm long (2.70)",
	} {
		r := compute(t, strings.TrimSuffix(sound+"; "+line, "; "))
		var got []string
		for _, text := range r.Brief(r.Judgement()) {
			got = append(got, text.In(quantity.Format{Screen: true}))
		}
		if got := strings.Join(got, " | "); got != want {
			t.Errorf("%s:\n%s\nnot\n%s", line, got, want)
		}
	}
}

// What stands in brackets is of the figure's kind, and no figure is on its limit.
func TestBriefTellsALimitThatIsBroken(t *testing.T) {
	brackets := 0
	testkit.Property(t, "a reason told in a list breaks the limit that it tells", func(t *rapid.T) {
		r := judge.Compute(draw(t).Drill(t))
		v := r.Judgement()
		for _, text := range r.Brief(v) {
			if !strings.HasSuffix(text.Format, " ({})") {
				continue
			}
			brackets++
			figure, limit := text.Args[len(text.Args)-2], text.Args[len(text.Args)-1]
			if limit.Kind != figure.Kind || !limit.Bare || math.Abs(limit.Value-math.Abs(figure.Value)) < 1e-9*limit.Value {
				t.Fatalf("%s: %+v is allowed, %+v is there", text.Format, limit, figure)
			}
		}
	})
	if brackets < 50 {
		t.Errorf("only %d limits were told", brackets)
	}
}
