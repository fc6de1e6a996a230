package plan_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/plan"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
)

func told(texts []quantity.Text) string {
	var out []string
	for _, text := range texts {
		out = append(out, text.In(quantity.Format{Screen: true}))
	}
	return strings.Join(out, ", ")
}

// A list says in a few words what a grind asks for beside an amount off the end. By hand,
// from 72 to 59°: (cot 59° - cot 72°) (5.92 - 0.70) mm.
func TestBrief(t *testing.T) {
	for want, more := range map[string]readings{
		"":                             {drill.FlankWear: "0.3mm"},
		"lip 1, 0.20 mm at the corner": {drill.LipHeight: "0.2mm"},
		"lip 2, 0.20 mm at the corner": {drill.LipHeight: "0,0.2mm"},
		"both, 1.44 mm at the corner":  {drill.LipAngle: "72,72"},
		"cut it off":                   {drill.MarginWear: "13mm"},
		"thin only, to 1.77 mm":        {drill.Web: "2.4mm"},
		"thin to 1.77 mm":              {drill.Web: "2.4mm", drill.FlankWear: "0.3mm"},
		"lip 1, 0.20 mm at the corner, thin to 1.77 mm": {drill.Web: "2.4mm", drill.LipHeight: "0.2mm"},
	} {
		p := plan.Of(fit.With(more).Drill(t))
		if got := told(p.Brief()); got != want {
			t.Errorf("%v: %q, not %q", more, got, want)
		}
	}
}

// What retires a drill is told, and nothing that a grind would have put right.
func TestWhyRetired(t *testing.T) {
	for want, more := range map[string]readings{
		"cracked":               {drill.Cracked: "yes", drill.FlankWear: "0.3mm"},
		"flute 30 mm left (42)": {drill.Flute: "30mm", drill.FlankWear: "0.3mm"},
		"too short once ground": {drill.Flute: "42.1mm", drill.FlankWear: "0.3mm"},
	} {
		p := plan.Of(fit.With(more).Drill(t))
		if got := told(p.WhyRetired(p.Found.Judgement())); p.Do != plan.Retire || got != want {
			t.Errorf("%v: %v for %q, not %q", more, p.Do, got, want)
		}
	}
}

// The lip that is named gives up more than the other by what is told, at the end that
// is named.
func TestBriefNamesTheLipThatGivesMore(t *testing.T) {
	named := 0
	testkit.Property(t, "the lip that a list names gives up more by what it tells", func(t *rapid.T) {
		p := plan.Of(wholeDrill(t).Drill(t))
		if p.Do != plan.Regrind || !p.Made {
			return
		}
		for _, text := range p.Brief() {
			if !strings.HasPrefix(text.Format, "lip ") {
				continue
			}
			named++
			more, less := p.Stock.Lip1, p.Stock.Lip2
			if strings.HasPrefix(text.Format, "lip 2") {
				more, less = less, more
			}
			by := more.Outer - less.Outer
			if strings.HasSuffix(text.Format, "web") {
				by = more.Inner - less.Inner
			}
			if got := text.Args[0].Value; !(by > 0) || math.Abs(got-by) > 1e-12 {
				t.Fatalf("%s: %g, not %g", text.Format, got, by)
			}
		}
	})
	if named < 10 {
		t.Errorf("only %d lips were named", named)
	}
}
