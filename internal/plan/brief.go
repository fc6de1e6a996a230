package plan

import (
	"math"

	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Brief tells in a few words, for a list, what a drill at the grinder asks for beside
// what comes off its end.
func (p *Plan) Brief() []quantity.Text {
	var out []quantity.Text
	switch st := &p.Stock; {
	case p.Do == Thin:
		return []quantity.Text{quantity.Sayf("thin only, to {}", quantity.MM(p.Done.Web))}
	case p.cutOff():
		out = append(out, quantity.Sayf("cut it off"))
	case st.Total > 0 && !st.EndsAlike() && !p.nearlyAlike():
		out = append(out, st.uneven())
	}
	switch {
	case p.Done.Thinned:
		out = append(out, quantity.Sayf("thin to {}", quantity.MM(p.Done.Web)))
	case p.thinAgain():
		out = append(out, quantity.Sayf("thin again to {}", quantity.MM(p.Now.Web)))
	}
	return out
}

// uneven says of which lip more comes off, where that is most.
func (s *Stock) uneven() quantity.Text {
	by, where := s.Lip1.Outer-s.Lip2.Outer, "at the corner"
	if inner := s.Lip1.Inner - s.Lip2.Inner; math.Abs(inner) > math.Abs(by) {
		by, where = inner, "at the web"
	}
	if by < 0 {
		return quantity.Sayf("lip 2, {} "+where, quantity.MM(-by))
	}
	return quantity.Sayf("lip 1, {} "+where, quantity.MM(by))
}

// WhyRetired tells in a few words what retires the drill, whose verdict is v, and
// nothing that a grind would have put right.
func (p *Plan) WhyRetired(v *sheet.Verdict) []quantity.Text {
	if v.Word == judge.Retire.String() {
		return p.Found.Deciding(v)
	}
	return []quantity.Text{quantity.Sayf([...]string{
		FluteShort: "too short once ground", WebSpent: "web too thick once ground", DiameterLow: "too small once ground",
	}[p.End])}
}
