package judge

import (
	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/uncertainty"
)

// Judgement returns the verdict in words: with the codes of its reasons, and what
// is still to be read.
func (r *Result) Judgement() *sheet.Verdict {
	out := &sheet.Verdict{Word: r.Verdict.Word.String(), Missing: r.Verdict.Missing.names(known(r.Drill.D))}
	for i, holds := range r.Verdict.Reasons {
		if !holds {
			continue
		}
		out.Reasons = append(out.Reasons, rules[i].code)
		if lighter, ok := Reason(i).lighter(r); ok {
			if out.Hidden == nil {
				out.Hidden = map[string]sheet.Finding{}
			}
			out.Hidden[rules[i].code] = r.Finding(lighter)
		}
	}
	return out
}

func (m Missing) names(sized bool) []string {
	var out []string
	edge := "two of web, chisel-angle, chisel-length"
	if !sized {
		edge = "size and " + edge
	}
	for _, x := range [...]struct {
		missing bool
		name    string
	}{
		{m.Point, "lip-angle A,B"}, {m.Clearance, "clearance or heel-drop with heel-turn"},
		{m.Chisel, edge}, {m.Lips, "lip-height or lip-length A,B"},
	} {
		if x.missing {
			out = append(out, x.name)
		}
	}
	return out
}

// VerdictRemarks adds to s a remark for each reason of the verdict.
func (r *Result) VerdictRemarks(s *sheet.Sheet) {
	v := &r.Verdict
	for i, holds := range v.Reasons {
		if holds {
			s.Findings = append(s.Findings, r.Finding(Reason(i)))
		}
	}
	r.borderline(s)
	if v.Word == Fit && !known(r.Wear.Flank) {
		s.Find("wear-not-read", sheet.Note, "judged by its geometry; look at lips and corners for dullness, or give flank-wear")
	}
}

// JudgementOn returns the verdict on d that its gauges bear out. It must be the drill
// that r was computed of.
func (r *Result) JudgementOn(d *drill.Drill, g quantity.Gauges) *sheet.Verdict {
	if g == (quantity.Gauges{}) {
		return r.Judgement()
	}
	gauged := *d
	gauged.Gauged = true
	strictly := Compute(&gauged)
	v := strictly.Judgement()
	draws := uncertainty.Draws(d, g)
	verdicts := uncertainty.NewVerdicts(v)
	var drawn sheet.Verdict
	for moved := range uncertainty.Each(d, draws) {
		r := Compute(moved)
		r.Drawn(&drawn)
		verdicts.Add(&drawn)
	}
	verdicts.Settle(draws)
	return v
}

// Drawn makes v the verdict on a draw: with all the reasons that hold, those too that
// a heavier one stands before.
func (r *Result) Drawn(v *sheet.Verdict) {
	v.Word, v.Reasons = r.Verdict.Word.String(), v.Reasons[:0]
	for i := range rules {
		if holds, _ := rules[i].holds(&r.Held); holds {
			v.Reasons = append(v.Reasons, rules[i].code)
		}
	}
}
