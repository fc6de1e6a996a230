package drawing

import (
	"math"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Rest adds the remarks: what is drawn without having been measured, and what
// changes nothing in the picture.
func Rest(r *Result, s *sheet.Sheet) {
	if r.err != nil {
		return
	}
	if r.Before != nil && !r.trued {
		r.tooLittle(s)
	}
	r.asElsewhere(s)
	r.usual(s)
	if r.Before != nil && r.otherPoint() {
		if r.trued {
			s.Find("trued-to", sheet.Note, "both lips are drawn ground to {} to the axis, {}", quantity.Set(r.Target()), quantity.Say(r.asWanted()))
		}
		if !r.Point.Asked && !r.Drill.Given {
			s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(r.Drill.Material.Name))
		}
	}
	if !r.read.Sample && !r.read.Kept {
		r.idle(s)
	}
	s.Extra = append(s.Extra, handbook.MarginSource, handbook.BodySource)
}

// usual tells what is drawn as usual.
func (r *Result) usual(s *sheet.Sheet) {
	now, chisel, clearance := &r.Now, r.Limit(judge.ChiselAngleLimit).Source, r.Clearance.Recommended.Source
	if r.webUsual {
		s.Find("web-usual", sheet.Note, "no web was read: {} is drawn, a new drill's", quantity.MM(r.first().Web))
		s.Extra = append(s.Extra, handbook.NewWebSource)
	}
	if r.chiselUsual {
		whose := "the limits"
		if chisel.OfShop() {
			whose = "the shop's limits"
		}
		s.Find("chisel-usual", sheet.Note, "no chisel-edge angle was read: {} is drawn, the middle of {}", quantity.Rad(math.Pi-now.Chisel), quantity.Say(whose))
	}
	if r.clearanceUsual {
		why := "what is aimed at for this size in"
		if clearance.OfShop() {
			why = "as the shop has set it for"
		}
		s.Find("clearance-usual", sheet.Note, "no clearance was read: {} is drawn, {} {}", quantity.Rad(now.Lips[0].Clearance), quantity.Say(why), quantity.Say(r.Drill.Material.Name))
	}
	if r.helixUsual {
		s.Find("helix-usual", sheet.Note, "no helix was read: {} is drawn, the middle for this size", quantity.Rad(now.Helix))
	}
	if r.heightUsual {
		r.lipsTakenEven(s)
	}
	if bow := r.bow(); bow != 0 {
		judge.Curved(s, bow, 2*now.Made, r.flutePointUsual)
	}
	if !r.Point.Both {
		s.Find("one-lip-angle", sheet.Note, "one lip angle was read: both lips are drawn at it")
	}
}

// bow is the bow of the lip drawn that bows most; 0 where both are straight.
func (r *Result) bow() float64 {
	one, two := r.Now.Bow(0), r.Now.Bow(1)
	if math.Abs(one) >= math.Abs(two) {
		return one
	}
	return two
}

// lipsTakenEven says how the lips are drawn without a height, and where lips of
// two angles then meet.
func (r *Result) lipsTakenEven(s *sheet.Sheet) {
	why := "no lip height was read"
	if r.read.Has(drill.LipLength) {
		why += ", and lip-length gives none"
	}
	const drawn = "{}: both corners are drawn at one height"
	if off := math.Abs(r.first().Offset); off < leastHeight {
		s.Find("lips-taken-even", sheet.Note, drawn, quantity.Say(why))
	} else {
		s.Find("lips-taken-even", sheet.Note, drawn+", and lips of these angles then meet {} off the axis", quantity.Say(why), quantity.MM(off))
	}
}

// tooLittle says that the lips want more off to come to the angle they are ground
// to, and what they are left as.
func (r *Result) tooLittle(s *sheet.Sheet) {
	lips := &r.Before.Lips
	most, remove := quantity.MM(r.most), quantity.MM(r.Web.Remove)
	switch {
	case lips[0].HalfAngle == lips[1].HalfAngle && math.Abs(lips[0].Corner-lips[1].Corner) < leastHeight:
		s.Find("remove-leaves-angle", sheet.Warn, "to bring the lips to {} to the axis, {}, {} has to come off: {} leaves them at {}",
			quantity.Set(r.Target()), quantity.Say(r.asWanted()), most, remove, quantity.Rad(lips[0].HalfAngle))
	case r.otherPoint():
		s.Find("remove-leaves-uneven", sheet.Warn, "to true the lips to {} to the axis, {}, {} has to come off: {} leaves them as uneven as they are",
			quantity.Set(r.Target()), quantity.Say(r.asWanted()), most, remove)
	default:
		s.Find("remove-leaves-uneven", sheet.Warn, "to true the lips {} has to come off: {} leaves them as uneven as they are", most, remove)
	}
}

// otherPoint reports whether the lips are ground to another angle than their own.
func (r *Result) otherPoint() bool { return r.Target() != r.Point.K() }

// asWanted says who wants the angle that the lips are ground to.
func (r *Result) asWanted() string {
	if r.Point.Asked {
		return "as point-angle asks"
	}
	return "as " + r.Drill.Material.Name + " wants"
}

// asElsewhere says, in the words of the commands on each, which readings
// contradict each other, and what a web after the grind is taken from.
func (r *Result) asElsewhere(s *sheet.Sheet) {
	r.Contradictions(s)
	if r.Before == nil {
		return
	}
	web := sheet.New("web", false)
	r.WebRemarks(web)
	for _, f := range web.Findings {
		if f.Code == "web-taper-assumed" || f.Code == "thinned-before" {
			s.Findings = append(s.Findings, f)
		}
	}
}

// idle tells of readings that change nothing in the picture, so that nobody takes
// them for heeded: those that bear on a grind alone where nothing comes off, and
// those that others stand before.
func (r *Result) idle(s *sheet.Sheet) {
	forGrind := []drill.Reading{drill.PointAngle, drill.WebTaper, drill.SecondWeb, drill.SecondWebAt}
	if !r.clearanceUsual {
		forGrind = append(forGrind, drill.Material)
	}
	if names := r.given(forGrind); r.Before == nil && names != nil {
		s.Find("not-used-without-remove", sheet.Note, "without remove, draw makes no use of {}", quantity.Say(strings.Join(names, ", ")))
	}
	for _, x := range [...]struct{ drawn, idle []drill.Reading }{
		{[]drill.Reading{drill.Web, drill.ChiselAngle}, []drill.Reading{drill.ChiselLength}},
		{[]drill.Reading{drill.LipHeight}, []drill.Reading{drill.LipLength}},
		{[]drill.Reading{drill.Clearance}, []drill.Reading{drill.HeelDrop, drill.HeelTurn}},
	} {
		if drawn, idle := r.given(x.drawn), r.given(x.idle); len(drawn) == len(x.drawn) && idle != nil {
			s.Find("not-drawn", sheet.Note, "drawn by {}: {} changes nothing", quantity.Say(strings.Join(drawn, " and ")), quantity.Say(strings.Join(idle, ", ")))
		}
	}
}

// given lists those of the readings that were taken.
func (r *Result) given(of []drill.Reading) (names []string) {
	for _, reading := range of {
		if r.read.Has(reading) {
			names = append(names, reading.String())
		}
	}
	return names
}
