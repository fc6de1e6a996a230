package plan

import (
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// end is one of the four ends of the lips.
type end struct {
	name      string // lip 1, inner end
	high      string // what its height is called in the working
	lip       point.Lip
	at, worn  float64
	key       string
	stock     float64
	halfAngle float64
	above     float64 // its lip's outer corner over lip 2's
}

func (p *Plan) lipEnds() [4]end {
	st, worn, l := &p.Stock, &p.Would, &p.Lips
	above := point.HeightDifference(l.Lip1, l.Lip2, l.Outer)
	return [4]end{
		{"lip 1, inner end", "H1i", l.Lip1, l.Inner, worn.Worn1.Inner, "take_1_inner_mm", st.Lip1.Inner, l.Lip1.HalfAngle, above},
		{"lip 1, outer end", "H1o", l.Lip1, l.Outer, worn.Worn1.Outer, "take_1_outer_mm", st.Lip1.Outer, l.Lip1.HalfAngle, above},
		{"lip 2, inner end", "H2i", l.Lip2, l.Inner, worn.Worn2.Inner, "take_2_inner_mm", st.Lip2.Inner, l.Lip2.HalfAngle, 0},
		{"lip 2, outer end", "H2o", l.Lip2, l.Outer, worn.Worn2.Outer, "take_2_outer_mm", st.Lip2.Outer, l.Lip2.HalfAngle, 0},
	}
}

// heights adds the steps from which truing up and the stock at each end follow:
// the four ends carried to the axis at the angle wanted, and how low the lowest
// of them is worn.
func (p *Plan) heights(s *sheet.Sheet) {
	if !s.Explaining || !p.Made {
		return
	}
	l := &p.Lips
	s.OpenAside("Heights of the lips' ends")
	lowest := make([]quantity.Arg, 0, 8)
	formula := "H = h + (R - x) / tan(k) + x / tan(kt): h the corner's height above lip 2's, x the end's distance to the axis, k the lip's angle, kt the angle wanted"
	for _, e := range p.lipEnds() {
		high := l.Carried(e.lip, e.at)
		s.Add(length("height_"+e.key[len("take_"):], e.high+": height of "+e.name, high, ""))
		s.Work(judge.Geometry, formula,
			"{} + ({} - {}) / tan({}) + {} / tan({})", quantity.MM(e.above), quantity.MM(l.Outer), quantity.MM(e.at), quantity.Rad(e.halfAngle), quantity.MM(e.at), quantity.Rad(l.Target))
		lowest = append(lowest, quantity.MM(high), quantity.MM(e.worn))
		formula = "H = h + (R - x) / tan(k) + x / tan(kt), as for H1i"
	}
	if p.Waits { // nothing comes off down to it
		return
	}
	s.Add(length("height_lowest_mm", "Hw: the lowest, less its wear", p.lowest(), ""))
	s.Work(judge.Geometry, "Hw = the least of H1i - w, H1o - w, H2i - w, H2o - w: w the wear at that end",
		"min(min({} - {}, {} - {}), min({} - {}, {} - {}))", lowest...)
}

// lowest is the height of the lowest end when the wear is off.
func (p *Plan) lowest() float64 {
	ends := p.lipEnds()
	low := p.Lips.Carried(ends[0].lip, ends[0].at) - ends[0].worn
	for _, e := range ends[1:] {
		low = min(low, p.Lips.Carried(e.lip, e.at)-e.worn)
	}
	return low
}

// workTruing shows the most that truing alone takes: the highest of the four
// ends above the lowest.
func (p *Plan) workTruing(s *sheet.Sheet) {
	if !s.Explaining || !p.Made {
		return
	}
	args := make([]quantity.Arg, 0, 8)
	for _, e := range p.lipEnds() {
		args = append(args, quantity.MM(p.Lips.Carried(e.lip, e.at)))
	}
	s.Work(judge.Geometry, "the highest of H1i, H1o, H2i, H2o less the lowest",
		"max(max({}, {}), max({}, {})) - min(min({}, {}), min({}, {}))", append(args, args...)...)
}

// ends adds what comes off each lip at each of its ends.
func (p *Plan) ends(s *sheet.Sheet) {
	s.Open("Off each lip, clean-up included")
	s.Sections[len(s.Sections)-1].Quiet = p.Waits
	for _, e := range p.lipEnds() {
		s.Add(length(e.key, e.name, p.made(e.stock), ""))
		if p.Waits {
			s.Work(rules.String(), "none: the grind can wait", "0")
			continue
		}
		s.Work(judge.Geometry, e.high+" - Hw + clean-up", "{} - {} + {}",
			quantity.MM(p.Lips.Carried(e.lip, e.at)), quantity.MM(p.lowest()), quantity.MM(p.Stock.CleanUp))
	}
}

// nearlyAlike reports whether the lips give up the same to within what they may
// differ by, at either end: there is nothing to true up.
func (p *Plan) nearlyAlike() bool {
	st, most := &p.Stock, p.Found.Limit(judge.LipHeightLimit).High
	low := min(st.Lip1.Inner, st.Lip1.Outer, st.Lip2.Inner, st.Lip2.Outer)
	return st.Total-low <= most
}

// cutOff reports whether so much comes off that it is cut and not ground: more than
// a diameter.
func (p *Plan) cutOff() bool { return p.Do == Regrind && p.Stock.Total > p.Body.D }

// thinAgain reports whether the grind takes off a thinning that the plan does not
// bring back.
func (p *Plan) thinAgain() bool {
	return p.Do == Regrind && p.Body.Thinned > 0 && !p.Done.Thinned
}

// inShort is the plan in one sentence.
func (p *Plan) inShort(s *sheet.Sheet) {
	switch st := &p.Stock; {
	case p.Do == Retire:
		s.InShort("retire")
	case !p.Made || p.Do == Leave:
	case p.Do == Thin && p.Done.Thinned:
		s.InShort("thin the web to {}", quantity.MM(p.Done.Web))
	case p.Do == Regrind:
		text := quantity.Sayf("regrind, {} off both lips alike", quantity.MM(st.Total))
		switch {
		case p.cutOff():
			text = quantity.Sayf("cut {} off, then grind a new point", quantity.MM(st.Total))
		case st.EndsAlike():
		case p.nearlyAlike():
			text = quantity.Sayf("regrind, {} off both lips, which stand even to within their limit", quantity.MM(st.Total))
		default:
			text = quantity.Sayf("regrind, {} off the end: lip 1 by {} at its inner end and {} at its outer, lip 2 by {} and {}", quantity.MM(st.Total),
				quantity.MM(st.Lip1.Inner), quantity.MM(st.Lip1.Outer), quantity.MM(st.Lip2.Inner), quantity.MM(st.Lip2.Outer))
		}
		if p.Done.Thinned {
			text.Format += "; thin the web to {}"
			text.Args = append(text.Args, quantity.MM(p.Done.Web))
		} else if p.thinAgain() {
			text.Format += "; thin the point again to {}"
			text.Args = append(text.Args, quantity.MM(p.Now.Web))
		}
		s.InShort(text.Format, text.Args...)
	}
}
