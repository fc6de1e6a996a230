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
		r.PointSheet(s)
		r.ClearanceSheet(s)
		r.ChiselSheet(s)
		r.WebSheet(s)
		r.LipsSheet(s)
		r.WearSheet(s)
		if r.Drill.Material != nil && !r.Drill.Given {
			s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(r.Drill.Material.Name))
		}
		DigsIn(s, r.Drill.Material)
	}
	r.verdictInto(s)
	return s
}

// Judgement returns the verdict in words: with the codes of its reasons, and what
// is still to be read.
func (r *Result) Judgement() *sheet.Verdict {
	out := &sheet.Verdict{Word: r.Verdict.Word.String(), Missing: r.Verdict.Missing.names(known(r.Drill.D))}
	for i, holds := range r.Verdict.Reasons {
		if holds {
			out.Reasons = append(out.Reasons, rules[i].code)
		}
	}
	return out
}

// verdictInto adds the verdict and a finding for each of its reasons.
func (r *Result) verdictInto(s *sheet.Sheet) {
	v := &r.Verdict
	s.Verdict = r.Judgement()
	for i, holds := range v.Reasons {
		if !holds {
			continue
		}
		s.Findings = append(s.Findings, r.Finding(Reason(i)))
		if lighter, ok := Reason(i).hides(r); ok {
			if s.Verdict.Hidden == nil {
				s.Verdict.Hidden = map[string]sheet.Finding{}
			}
			s.Verdict.Hidden[rules[i].code] = r.Finding(lighter)
		}
	}
	if v.Word == Fit && !known(r.Wear.Flank) {
		s.Find(notRead, sheet.Note, "fit by its geometry; look at lips and corners for dullness, or give flank-wear")
	}
	s.Extra = append(s.Extra, &verdictSource)
}

const notRead = "wear-not-read"

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
	return section("point", d, explain, (*Result).PointSheet)
}

// ClearanceOnly is the sheet of the lip clearance and what a feed leaves of it.
func ClearanceOnly(d *drill.Drill, explain bool) *sheet.Sheet {
	return section("clearance", d, explain, onChisel((*Result).ClearanceSheet))
}

// ChiselOnly is the sheet of the chisel edge.
func ChiselOnly(d *drill.Drill, explain bool) *sheet.Sheet {
	return section("chisel", d, explain, (*Result).ChiselSheet)
}

// WebOnly is the sheet of the web after a length is ground off.
func WebOnly(d *drill.Drill, explain bool) *sheet.Sheet {
	return section("web", d, explain, onChisel(func(r *Result, s *sheet.Sheet) {
		r.WebSheet(s)
		r.feedTaken(s, r.Web.ThrustRatio)
	}))
}

// LipsOnly is the sheet of the lip height and what it does.
func LipsOnly(d *drill.Drill, explain bool) *sheet.Sheet {
	return section("lips", d, explain, onChisel(func(r *Result, s *sheet.Sheet) {
		r.LipsSheet(s)
		r.feedTaken(s, r.Lips.Share1)
	}))
}

// onChisel makes a section that rests on the chisel edge say where the readings
// of that contradict each other.
func onChisel(add func(*Result, *sheet.Sheet)) func(*Result, *sheet.Sheet) {
	return func(r *Result, s *sheet.Sheet) {
		add(r, s)
		r.Chisel.Contradiction(s)
	}
}

func section(command string, d *drill.Drill, explain bool, add func(*Result, *sheet.Sheet)) *sheet.Sheet {
	r := Compute(d)
	s := sheet.New(command, explain)
	Plausible(d, s)
	add(&r, s)
	return s
}
