package cli

import (
	"math"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// lipsTakenEven says how the lips are drawn without a height, and where lips of
// two angles then meet.
func (w *drawing) lipsTakenEven() {
	why := "no lip height was read"
	if w.d.Has(drill.LipLength) {
		why += ", and lip-length gives none"
	}
	const drawn = "{}: both corners are drawn at one height"
	if off := math.Abs(w.first().Offset); off < leastHeight {
		w.s.Find("lips-taken-even", sheet.Note, drawn, quantity.Say(why))
	} else {
		w.s.Find("lips-taken-even", sheet.Note, drawn+", and lips of these angles then meet {} off the axis", quantity.Say(why), quantity.MM(off))
	}
}

// even reports whether the lips stand alike as they were measured.
func (w *drawing) even() bool {
	lips := &w.first().Lips
	return lips[0].HalfAngle == lips[1].HalfAngle && math.Abs(lips[0].Corner-lips[1].Corner) < leastHeight
}

// tooLittle says that the lips want more off to come to the angle they are ground
// to, and what they are left as.
func (w *drawing) tooLittle(most, remove float64) {
	switch s := w.s; {
	case w.even():
		s.Find("remove-leaves-angle", sheet.Warn, "to bring the lips to {} to the axis, {}, {} has to come off: {} leaves them at {}",
			quantity.Set(w.r.Target()), quantity.Say(w.asWanted()), quantity.MM(most), quantity.MM(remove), quantity.Rad(w.before.Lips[0].HalfAngle))
	case w.otherPoint():
		s.Find("remove-leaves-uneven", sheet.Warn, "to true the lips to {} to the axis, {}, {} has to come off: {} leaves them as uneven as they are",
			quantity.Set(w.r.Target()), quantity.Say(w.asWanted()), quantity.MM(most), quantity.MM(remove))
	default:
		s.Find("remove-leaves-uneven", sheet.Warn, "to true the lips {} has to come off: {} leaves them as uneven as they are", quantity.MM(most), quantity.MM(remove))
	}
}

// otherPoint reports whether the lips are ground to another angle than their own.
func (w *drawing) otherPoint() bool { return w.r.Target() != w.r.Point.K() }

// asWanted says who wants the angle that the lips are ground to.
func (w *drawing) asWanted() string {
	if w.r.Point.Asked {
		return "as point-angle asks"
	}
	return "as " + w.r.Drill.Material.Name + " wants"
}

// groundTo tells what the lips are drawn ground to, and what work is taken for
// granted, where that decides it.
func (w *drawing) groundTo() {
	if w.before == nil || !w.otherPoint() {
		return
	}
	if w.trued {
		w.s.Find("trued-to", sheet.Note, "both lips are drawn ground to {} to the axis, {}", quantity.Set(w.r.Target()), quantity.Say(w.asWanted()))
	}
	if !w.r.Point.Asked && !w.r.Drill.Given {
		w.s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(w.r.Drill.Material.Name))
	}
}

// asElsewhere says, in the words of the commands on each, which readings
// contradict each other, and what a web after the grind is taken from.
func (w *drawing) asElsewhere() {
	w.r.Contradictions(w.s)
	if w.before == nil {
		return
	}
	web := sheet.New("web", false)
	w.r.WebRemarks(web)
	for _, f := range web.Findings {
		if f.Code == "web-taper-assumed" || f.Code == "thinned-before" {
			w.s.Findings = append(w.s.Findings, f)
		}
	}
}

// idle tells of readings that change nothing in the picture, so that nobody takes
// them for heeded: those that bear on a grind alone where nothing comes off, and
// those that others stand before.
func (w *drawing) idle() {
	if w.d.Sample || w.d.Kept {
		return
	}
	if names := w.forAGrind(); w.before == nil && names != nil {
		w.s.Find("not-used-without-remove", sheet.Note, "without remove, draw makes no use of {}", quantity.Say(strings.Join(names, ", ")))
	}
	for _, x := range [...]struct{ drawn, idle []drill.Reading }{
		{[]drill.Reading{drill.Web, drill.ChiselAngle}, []drill.Reading{drill.ChiselLength}},
		{[]drill.Reading{drill.LipHeight}, []drill.Reading{drill.LipLength}},
		{[]drill.Reading{drill.Clearance}, []drill.Reading{drill.HeelDrop, drill.HeelTurn}},
	} {
		if drawn, idle := w.read(x.drawn), w.read(x.idle); len(drawn) == len(x.drawn) && idle != nil {
			w.s.Find("not-drawn", sheet.Note, "drawn by {}: {} changes nothing", quantity.Say(strings.Join(drawn, " and ")), quantity.Say(strings.Join(idle, ", ")))
		}
	}
}

// forAGrind lists what was read and is of use with a grind alone.
func (w *drawing) forAGrind() []string {
	of := []drill.Reading{drill.PointAngle, drill.WebTaper, drill.SecondWeb, drill.SecondWebAt}
	if !w.clearanceUsual {
		of = append(of, drill.Material)
	}
	return w.read(of)
}

// read lists those of the readings that were taken.
func (w *drawing) read(of []drill.Reading) (names []string) {
	for _, r := range of {
		if w.d.Has(r) {
			names = append(names, r.String())
		}
	}
	return names
}
