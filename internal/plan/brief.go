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
	case !p.Made:
		return []quantity.Text{quantity.Sayf("no plan of these readings")}
	case p.Do == Thin && p.Done.Thinned:
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

// uneven says of which lip more comes off, at the end where that is most; of lips that
// give up alike, at which end.
func (s *Stock) uneven() quantity.Text {
	const nothing = 0.005
	lip, by, where := "lip 1", s.Lip1.Outer-s.Lip2.Outer, "at the corner"
	if inner := s.Lip1.Inner - s.Lip2.Inner; math.Abs(inner) > math.Abs(by) {
		by, where = inner, "at the web"
	}
	if math.Abs(by) < nothing {
		lip, by, where = "both", s.Lip1.Outer-s.Lip1.Inner, "at the corner"
		if by < 0 {
			by, where = -by, "at the web"
		}
	}
	if by < 0 {
		lip, by = "lip 2", -by
	}
	return quantity.Sayf(lip+", {} "+where, quantity.MM(by))
}

// WhyRetired tells in a few words what retires the drill, whose verdict is v, and
// nothing that a grind would have put right.
func (p *Plan) WhyRetired(v *sheet.Verdict) []quantity.Text {
	if v.Word == judge.Retire.String() {
		return p.Found.Deciding(v)
	}
	why := "spent once ground"
	switch p.End {
	case FluteShort:
		why = "too short once ground"
	case WebSpent:
		why = "web too thick once ground"
	case DiameterLow:
		why = "too small once ground"
	}
	return []quantity.Text{quantity.Sayf(why)}
}
