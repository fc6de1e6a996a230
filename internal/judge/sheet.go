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
	r := Compute(d)
	s := sheet.New("inspect", explain)
	if !r.Wear.Cracked {
		Plausible(d, s)
		r.figures(s)
		r.published(s)
		r.clearanceRemarks(s)
		r.Chisel.Contradiction(s)
		r.WebRemarks(s)
		r.lipRemarks(s)
		if r.Drill.Material != nil && !r.Drill.Given {
			s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(r.Drill.Material.Name))
		}
		DigsIn(s, r.Drill.Material)
	}
	r.verdictInto(s)
	return s
}

// figures puts the figures of the whole inspection. A cracked drill has none.
func (r *Result) figures(s *sheet.Sheet) {
	if !r.Wear.Cracked {
		sheet.Put(s, r, r.Held[:], &Letters, &PointFigures, &CornerClearance, &FlankSlopes, &WorkingClearance, &ChiselEdge, &WebFigures, &LipPlace, &LipFigures, &WearFigures)
	}
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

// PointOnly is the sheet of the point angle, its evenness and the point's length.
func PointOnly(d *drill.Drill, explain bool) *sheet.Sheet {
	r, s := begin("point", d, explain)
	sheet.Put(s, r, r.Held[:], &Letters, &PointFigures)
	r.published(s)
	return s
}

// ClearanceOnly is the sheet of the lip clearance and what a feed leaves of it.
func ClearanceOnly(d *drill.Drill, explain bool) *sheet.Sheet {
	r, s := begin("clearance", d, explain)
	sheet.Put(s, r, r.Held[:], &Letters, &CornerClearance, &FlankSlopes, &WorkingClearance)
	sheet.Letters(s, r, &ChiselEdge)
	r.clearanceRemarks(s)
	r.Chisel.Contradiction(s)
	return s
}

// ChiselOnly is the sheet of the chisel edge.
func ChiselOnly(d *drill.Drill, explain bool) *sheet.Sheet {
	r, s := begin("chisel", d, explain)
	sheet.Put(s, r, r.Held[:], &Letters, &ChiselEdge)
	r.Chisel.Contradiction(s)
	return s
}

// WebOnly is the sheet of the web after a length is ground off.
func WebOnly(d *drill.Drill, explain bool) *sheet.Sheet {
	r, s := begin("web", d, explain)
	sheet.Put(s, r, r.Held[:], &Letters, &WebFigures)
	sheet.Letters(s, r, &ChiselEdge)
	r.WebRemarks(s)
	r.feedTaken(s, r.ThrustRatio())
	r.Chisel.Contradiction(s)
	return s
}

// LipsOnly is the sheet of the lip height and what it does.
func LipsOnly(d *drill.Drill, explain bool) *sheet.Sheet {
	r, s := begin("lips", d, explain)
	sheet.Put(s, r, r.Held[:], &Letters, &LipFigures)
	sheet.Letters(s, r, &LipPlace, &ChiselEdge, &CornerClearance, &FlankSlopes)
	r.lipRemarks(s)
	share, _ := r.Shares()
	r.feedTaken(s, share)
	r.Chisel.Contradiction(s)
	return s
}

// begin judges d and begins the sheet of a command.
func begin(command string, d *drill.Drill, explain bool) (*Result, *sheet.Sheet) {
	r := Compute(d)
	s := sheet.New(command, explain)
	Plausible(d, s)
	return &r, s
}
