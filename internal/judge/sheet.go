package judge

import (
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Sheet returns the whole inspection of d: the five results, wear, and the
// verdict with its reasons.
func Sheet(d *drill.Drill, explain bool) *sheet.Sheet {
	r, s := Compute(d), sheet.New("inspect", explain)
	if !r.Wear.Cracked {
		Plausible(d, s)
	}
	r.Figures(s)
	r.Rest(s)
	return s
}

// Figures puts the figures of the whole inspection; a cracked drill has none. A draw
// has its verdict, too.
func (r *Result) Figures(s *sheet.Sheet) {
	if !r.Wear.Cracked {
		sheet.Put(s, r, r.Held[:], &Letters, &PointFigures, &CornerClearance, &FlankSlopes, &WorkingClearance, &ChiselEdge, &WebFigures, &LipPlace, &LipFigures, &WearFigures)
	}
	if s.Drawing {
		s.Verdict = new(sheet.Verdict)
		r.drawn(s.Verdict)
	}
}

// Rest adds the remarks and the verdict with its reasons.
func (r *Result) Rest(s *sheet.Sheet) {
	if !r.Wear.Cracked {
		r.PointRemarks(s)
		r.ClearanceRemarks(s)
		r.Chisel.Contradiction(s)
		r.WebRemarks(s)
		r.LipRemarks(s)
		if r.Drill.Material != nil && !r.Drill.Given {
			s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(r.Drill.Material.Name))
		}
		DigsIn(s, r.Drill.Material)
	}
	r.verdictInto(s)
}

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

// verdictInto adds the verdict and a finding for each of its reasons.
func (r *Result) verdictInto(s *sheet.Sheet) {
	v := &r.Verdict
	s.Verdict = r.Judgement()
	for i, holds := range v.Reasons {
		if holds {
			s.Findings = append(s.Findings, r.Finding(Reason(i)))
		}
	}
	r.borderline(s)
	if v.Word == Fit && !known(r.Wear.Flank) {
		s.Find("wear-not-read", sheet.Note, "judged by its geometry; look at lips and corners for dullness, or give flank-wear")
	}
	s.Extra = append(s.Extra, &verdictSource)
}

var verdictSource = handbook.Source{Label: handbook.Own, Text: "the verdict's rules, docs/verdict.md"}

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
