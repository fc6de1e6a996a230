package judge

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Of two readings that tell one thing, one is reckoned with. What is here says
// which, in the same words wherever they are used.

// OrUsual returns what was read, or what is usual where nothing was.
func OrUsual(read, usual float64) (v float64, taken bool) {
	if known(read) {
		return read, false
	}
	return usual, true
}

// Contradictions warns in s of all the readings of one thing that contradict
// each other.
func (r *Result) Contradictions(s *sheet.Sheet) {
	r.Clearance.Contradiction(s)
	r.Chisel.Contradiction(s)
	r.TaperTaken(s)
	r.lipContradiction(s)
}

// WantedUnused says that the lips' own angles are reckoned with, and not the
// point angle wanted.
func (p *Point) WantedUnused(s *sheet.Sheet) {
	if p.Asked && known(p.Angle) && math.Abs(p.Angle-p.Wanted) > rounding {
		s.Find("point-angle-unused", sheet.Note, "the lips make a point of {}: point-angle, {}, is what is wanted, and not reckoned with here", quantity.Rad(p.Angle), quantity.Rad(p.Wanted))
	}
}

// Contradiction warns in s where the clearance read and the heel drop disagree.
func (c *Clearance) Contradiction(s *sheet.Sheet) {
	if c.Apart > apart {
		s.Find("clearance-contradiction", sheet.Warn, "the clearance read and the heel drop disagree by {}; the clearance read is used", quantity.Rad(c.Apart))
	}
}

// TaperTaken says that of two web tapers the one given is used: a warning where
// the one that two webs make is another by more than drills differ.
func (r *Result) TaperTaken(s *sheet.Sheet) {
	w := &r.Web
	if w.Origin != TaperGiven {
		return
	}
	made := point.WebTaper(r.Chisel.Web, w.Second, w.At)
	of, given := quantity.Of(quantity.Taper, made), quantity.Of(quantity.Taper, w.Taper)
	switch off := math.Abs(made - w.Taper); {
	case off > handbook.WebTaperHigh-handbook.WebTaperLow:
		s.Find("web-taper-contradiction", sheet.Warn, "the two webs make a taper of {}, but web-taper {} was given and is used", of, given)
	case off > leastTaper:
		s.Find("two-webs-unused", sheet.Note, "the two webs make a taper of {}: web-taper {} was given and is used", of, given)
	}
}

// leastTaper, mm per mm, is the least that tells two tapers apart in print.
const leastTaper = 0.00005
