package judge

import (
	"math"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Word is the verdict on a drill.
type Word uint8

// The verdicts, in the order in which one outweighs the next. Undecided is
// no verdict: nothing is wrong as far as was measured, but too little was.
const (
	Undecided Word = iota
	Fit
	Thin
	Regrind
	Retire
)

// String returns the word that is printed; "" while undecided.
func (w Word) String() string { return [...]string{"", "fit", "thin", "regrind", "retire"}[w] }

// Reason is one ground for a verdict.
type Reason uint8

// The reasons, in the order in which they are told.
const (
	noReason Reason = iota
	Cracked
	MarginGone
	FluteShort
	WebSpent
	Dull
	CornerWorn
	MarginWorn
	Chipped
	PointOff
	ClearanceLow
	ClearanceHigh
	FlankRubs
	ChiselOff
	LipsUneven
	AnglesUneven
	ClearancesUneven
	ChiselLong
	reasons
)

// rule is one line of docs/verdict.md: it holds where one of the figures that it
// looks at is outside its limit on that side.
type rule struct {
	code    string
	verdict Word
	looks   [2]look
	instead Reason // the lighter reason that this one stands before
	ends    bool   // no other reason is told
	reshape bool   // it asks for flanks ground anew
	text    func(*Result) quantity.Text
	fault   func(*Result) quantity.Text // what is wrong, in a few words
	cure    func(*Result) quantity.Text // what is done about it
	stock   bool                        // the cure is stock off the end, which a plan tells
}

// look is a limit and the side of it that matters.
type look struct {
	at   sheet.Limit
	side sheet.Side
}

// rules are all the grounds for a verdict.
var rules = [reasons]rule{
	Cracked: {code: "cracked", verdict: Retire, looks: [2]look{{CrackLimit, sheet.High}}, ends: true, text: func(*Result) quantity.Text {
		return quantity.Sayf("a cracked drill is never reground: scrap it")
	}, fault: func(*Result) quantity.Text { return quantity.Sayf("cracked") }, cure: func(*Result) quantity.Text { return quantity.Sayf("never ground again, never run again") }, stock: true},
	MarginGone: {code: "margin-worn-far", verdict: Retire, looks: [2]look{{MarginFarLimit, sheet.High}}, instead: MarginWorn, text: func(r *Result) quantity.Text {
		return quantity.Sayf("the margin is worn {} up the body, more than one diameter: the drill is tapered and binds; or cut that much off, if the flute allows", quantity.MM(r.Wear.Margin))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("margin worn {} up", quantity.MM(r.Wear.Margin))
	}, cure: func(*Result) quantity.Text { return quantity.Sayf("over a diameter: the drill is tapered and binds") }, stock: true},
	FluteShort: {code: "flute-short", verdict: Retire, looks: [2]look{{FluteLimit, sheet.Low}}, text: func(r *Result) quantity.Text {
		said := quantity.Sayf("{} of flute is too short for this hole: one {} deep takes {} with chip room", quantity.MM(r.Wear.Flute), quantity.MM(r.Wear.Depth), quantity.MM(r.Limit(FluteLimit).Low))
		if still := r.Serves(r.Wear.Flute); still > 0 {
			said.Format += "; the drill still serves for holes to {} deep"
			said.Args = append(said.Args, quantity.MM(still))
		}
		return said
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("flute {} left", quantity.MM(r.Wear.Flute))
	}, cure: func(r *Result) quantity.Text {
		return quantity.Sayf("{} deep takes {}, chip room included", quantity.MM(r.Wear.Depth), quantity.MM(r.Limit(FluteLimit).Low))
	}, stock: true},
	WebSpent: {code: "web-spent", verdict: Retire, looks: [2]look{{WebSpentLimit, sheet.High}}, instead: ChiselLong, text: func(r *Result) quantity.Text {
		return quantity.Sayf("the web is {} of the diameter: more than thinning can answer", quantity.Num(r.Chisel.WebRatio))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("web {} thick", quantity.MM(r.Chisel.Web))
	}, cure: func(*Result) quantity.Text { return quantity.Sayf("more than thinning can answer") }, stock: true},
	Dull: {code: "dull", verdict: Regrind, looks: [2]look{{FlankLimit, sheet.High}}, text: func(r *Result) quantity.Text {
		return quantity.Sayf("the wear land is {}: dull over {}", quantity.MM(r.Wear.Flank), quantity.MM(r.Limit(FlankLimit).High))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("wear land {}", quantity.MM(r.Wear.Flank))
	}, cure: func(*Result) quantity.Text { return quantity.Sayf("grind back until the land is gone") }, stock: true},
	CornerWorn: {code: "corner-worn", verdict: Regrind, looks: [2]look{{CornerLimit, sheet.High}}, text: func(r *Result) quantity.Text {
		return quantity.Sayf("the corner is rounded for {} of the lip: grind until it is sharp", quantity.MM(r.Wear.Corner))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("corners rounded {}", quantity.MM(r.Wear.Corner))
	}, cure: func(*Result) quantity.Text { return quantity.Sayf("grind back until both are sharp") }, stock: true},
	MarginWorn: {code: "margin-worn", verdict: Regrind, looks: [2]look{{MarginLimit, sheet.High}}, text: func(r *Result) quantity.Text {
		if r.Wear.Margin > r.Drill.D*(1+rounding) && known(r.Wear.Flute) {
			return quantity.Sayf("the margin is worn {} up the body, more than one diameter: cut that much off and grind a new point; the {} of flute left then still does", quantity.MM(r.Wear.Margin), quantity.MM(r.Wear.Flute-r.Wear.Margin))
		}
		return quantity.Sayf("the margin is worn back {} from the corner: take that much off the end", quantity.MM(r.Wear.Margin))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("margin worn {} up", quantity.MM(r.Wear.Margin))
	}, cure: func(*Result) quantity.Text { return quantity.Sayf("take that much off the end") }, stock: true},
	Chipped: {code: "lip-chipped", verdict: Regrind, looks: [2]look{{ChipLimit, sheet.High}}, text: func(r *Result) quantity.Text {
		return quantity.Sayf("a lip is chipped {} deep: grind until the chip is out", quantity.MM(r.Wear.Chip))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("lip chipped {} deep", quantity.MM(r.Wear.Chip))
	}, cure: func(*Result) quantity.Text { return quantity.Sayf("grind until the chip is out") }, stock: true},
	PointOff: {code: "point-angle-off", verdict: Regrind, looks: [2]look{{PointAngleLimit, sheet.Either}}, text: func(r *Result) quantity.Text {
		return quantity.Sayf("the point is {} where {} is wanted", quantity.Rad(r.Point.Angle), quantity.Rad(r.Point.Wanted))
	}, cure: func(r *Result) quantity.Text {
		return quantity.Sayf("bring the point from {} to {}", quantity.Rad(r.Point.Angle), quantity.Rad(r.Point.Wanted))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("point {}", quantity.Rad(r.Point.Angle))
	}},
	ClearanceLow: {code: "clearance-low", verdict: Regrind, looks: [2]look{{Clearance1Limit, sheet.Low}, {Clearance2Limit, sheet.Low}}, reshape: true, text: func(r *Result) quantity.Text {
		return quantity.Sayf("a lip has {} of clearance, under {}: too little, grind more", quantity.Rad(r.Clearance.Corner()), quantity.Rad(r.Limit(Clearance1Limit).Low))
	}, cure: func(r *Result) quantity.Text {
		return quantity.Sayf("back the heel off from {} to {}", quantity.Rad(r.Clearance.Corner()), quantity.Rad(r.Clearance.Aim))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("{} {} of clearance", quantity.Say(r.Clearance.lowLip(r)), quantity.Rad(r.Clearance.Corner()))
	}},
	ClearanceHigh: {code: "clearance-high", verdict: Regrind, looks: [2]look{{Clearance1Limit, sheet.High}, {Clearance2Limit, sheet.High}}, reshape: true, text: func(r *Result) quantity.Text {
		return quantity.Sayf("a lip has {} of clearance: too much, it is weak and chips", quantity.Rad(math.Max(r.Clearance.Lip1, r.Clearance.Lip2)))
	}, cure: func(r *Result) quantity.Text {
		return quantity.Sayf("take less off the heel: {} in place of {}", quantity.Rad(r.Clearance.Aim), quantity.Rad(math.Max(r.Clearance.Lip1, r.Clearance.Lip2)))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("{} {} of clearance", quantity.Say(r.Clearance.highLip(r)), quantity.Rad(math.Max(r.Clearance.Lip1, r.Clearance.Lip2)))
	}},
	FlankRubs: {code: "flank-rubs", verdict: Regrind, looks: [2]look{{WorkingLimit, sheet.Low}, {LeastWorkingLimit, sheet.Low}}, reshape: true, text: func(r *Result) quantity.Text {
		return quantity.Sayf("at {} the flank rubs behind the lip", quantity.Of(quantity.Feed, r.Drill.Feed))
	}, cure: func(r *Result) quantity.Text {
		return quantity.Sayf("back the heel off until nothing rubs at {}", quantity.Of(quantity.Feed, r.Drill.Feed))
	}, fault: func(*Result) quantity.Text { return quantity.Sayf("heel drags") }},
	ChiselOff: {code: "chisel-angle-off", verdict: Regrind, looks: [2]look{{ChiselAngleLimit, sheet.Either}}, reshape: true, text: func(r *Result) quantity.Text {
		return quantity.Sayf("the chisel edge lies at {}: it should be {} to {}", quantity.Rad(r.Chisel.Angle), quantity.Rad(r.Limit(ChiselAngleLimit).Low), quantity.Rad(r.Limit(ChiselAngleLimit).High))
	}, cure: func(r *Result) quantity.Text {
		return quantity.Sayf("bring the chisel edge from {} to between {} and {}", quantity.Rad(r.Chisel.Angle), quantity.Rad(r.Limit(ChiselAngleLimit).Low), quantity.Rad(r.Limit(ChiselAngleLimit).High))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("chisel edge at {}", quantity.Rad(r.Chisel.Angle))
	}},
	LipsUneven: {code: "lips-uneven", verdict: Regrind, looks: [2]look{{LipHeightLimit, sheet.Either}, {MidLipLimit, sheet.Either}}, text: uneven, fault: func(r *Result) quantity.Text {
		if !r.Outside(LipHeightLimit) {
			return quantity.Sayf("{} is high by {} half way in", quantity.Say(higher(r.Lips.MidLip)), quantity.MM(math.Abs(r.Lips.MidLip)))
		}
		return quantity.Sayf("{} is high by {}", quantity.Say(r.Lips.highWord()), quantity.MM(math.Abs(r.Lips.Height)))
	}, cure: func(r *Result) quantity.Text { return r.evenUp() }, stock: true},
	AnglesUneven: {code: "angles-uneven", verdict: Regrind, looks: [2]look{{AngleDifferenceLimit, sheet.Either}}, instead: LipsUneven, text: func(r *Result) quantity.Text {
		return quantity.Sayf("the lips stand at {} and {} to the axis: even with the corners level, as they are taken here, one lip does most of the work", quantity.Rad(r.Point.K1), quantity.Rad(r.Point.K2))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("lips {} apart", quantity.Rad(math.Abs(r.Point.Difference)))
	}, cure: func(r *Result) quantity.Text {
		return quantity.Sayf("grind both to {}", quantity.Rad(r.Target()))
	}, stock: true},
	ClearancesUneven: {code: "clearances-uneven", verdict: Regrind, looks: [2]look{{ClearanceDifferenceLimit, sheet.Either}}, reshape: true, text: func(r *Result) quantity.Text {
		return quantity.Sayf("the lips have {} and {} of clearance: that puts the chisel edge {} off the axis, more if the flanks are conical; grind both flanks alike",
			quantity.Rad(r.Clearance.Lip1), quantity.Rad(r.Clearance.Lip2), quantity.MM(math.Abs(r.Lips.OfClearance)))
	}, cure: func(r *Result) quantity.Text {
		return quantity.Sayf("grind both flanks alike, to {}", quantity.Rad(r.Clearance.Aim))
	}, fault: func(r *Result) quantity.Text {
		return quantity.Sayf("clearances {} apart", quantity.Rad(math.Abs(r.Clearance.Lip1-r.Clearance.Lip2)))
	}},
	ChiselLong: {code: "chisel-long", verdict: Thin, looks: [2]look{{ChiselRatioLimit, sheet.High}, {WebLimit, sheet.High}}, text: func(r *Result) quantity.Text {
		if !r.Held[ChiselRatioLimit].Outside() {
			return quantity.Sayf("the web alone is {} of the diameter, over {}, and no chisel edge is shorter than its web is thick: thin the web", quantity.Num(r.Chisel.WebRatio), quantity.Num(r.Limit(WebLimit).High))
		}
		return quantity.Sayf("the chisel edge is {} of the diameter, over {}: thin the web", quantity.Num(r.Chisel.Ratio), quantity.Num(r.Limit(ChiselRatioLimit).High))
	}, fault: func(r *Result) quantity.Text {
		if !r.Held[ChiselRatioLimit].Outside() {
			return quantity.Sayf("web {} thick", quantity.MM(r.Chisel.Web))
		}
		return quantity.Sayf("chisel edge {} long", quantity.MM(r.Chisel.Length))
	}, cure: func(*Result) quantity.Text { return quantity.Sayf("thin the web") }, stock: true},
}

// Serves returns how deep a hole a drill with so much flute still serves for, chip room
// included; not above zero for none.
func (r *Result) Serves(flute float64) float64 {
	return flute - (r.Limit(FluteLimit).Low - r.Wear.Depth)
}

// holds reports whether one of the figures that the rule looks at breaks its limit,
// and near whether one does by no more than a bench gauge can tell.
func (u *rule) holds(held *[limits]sheet.Held) (holds, near bool) {
	for _, l := range u.looks {
		if l.at != sheet.NoLimit {
			state := held[l.at].State()
			holds, near = holds || state.On(l.side), near || state.Near(l.side)
		}
	}
	return holds, near
}

// Verdict is the word on a drill and the reasons that hold.
type Verdict struct {
	Word    Word
	Reasons [reasons]bool
	// Borderline are reasons that hold by no more than a bench gauge can tell, where
	// none bears them out that is as grave: they are told, and decide nothing.
	Borderline [reasons]bool
	// Missing is which of the five results could not be had, so that the drill
	// cannot be called fit.
	Missing Missing
}

// Reshapes reports whether a reason that holds asks for flanks ground anew.
func (v *Verdict) Reshapes() bool {
	for i, holds := range v.Reasons {
		if holds && rules[i].reshape {
			return true
		}
	}
	return false
}

// Cures returns what is to be done about the reasons that hold, in the order of work,
// beside taking stock off the end.
func (r *Result) Cures() []quantity.Text {
	var cures []quantity.Text
	for _, u := range r.cured() {
		cures = append(cures, u.cure(r))
	}
	return cures
}

// ReshapeItem numbers the first fault of the flanks with its cure; it reports whether there
// is one.
func (r *Result) ReshapeItem(scr *sheet.Screen) bool {
	for _, u := range r.cured() {
		if u.reshape {
			scr.Item(u.fault(r), u.cure(r))
			return true
		}
	}
	return false
}

// cured are the rules that hold whose cure is no stock. A flank that rubs for want of
// clearance is cured with it.
func (r *Result) cured() []*rule {
	var out []*rule
	for i, holds := range r.Verdict.Reasons {
		told := Reason(i) == FlankRubs && r.Verdict.Reasons[ClearanceLow]
		if holds && !rules[i].stock && !told {
			out = append(out, &rules[i])
		}
	}
	return out
}

// Only reports whether x alone of the reasons leads to the word.
func (v *Verdict) Only(w Word, x Reason) bool {
	for i, holds := range v.Reasons {
		if holds != (Reason(i) == x) && rules[i].verdict == w {
			return false
		}
	}
	return v.Reasons[x]
}

// Why returns the name of the first reason that leads to the word.
func (v *Verdict) Why(w Word) string {
	for i, holds := range v.Reasons {
		if holds && rules[i].verdict == w {
			return rules[i].code
		}
	}
	return ""
}

// Missing is a set of results.
type Missing struct{ Point, Clearance, Chisel, Lips bool }

func (m Missing) any() bool { return m != Missing{} }

// judge applies the rules. A crack ends the matter: no other reason is given.
func judge(r *Result) Verdict {
	var v Verdict
	for i := range rules {
		v.Reasons[i], v.Borderline[i] = rules[i].holds(&r.Held)
	}
	for i := range rules {
		if v.Reasons[i] && rules[i].instead != noReason {
			v.Reasons[rules[i].instead], v.Borderline[rules[i].instead] = false, false
		}
	}
	for i := range rules {
		if !v.Reasons[i] {
			continue
		}
		v.Word = max(v.Word, rules[i].verdict)
		if rules[i].ends {
			v.Reasons, v.Borderline = [reasons]bool{}, [reasons]bool{}
			v.Reasons[i] = true
			return v
		}
	}
	for i := range rules {
		if v.Borderline[i] && rules[i].verdict <= v.Word {
			v.Reasons[i] = true
		}
		v.Borderline[i] = v.Borderline[i] && !v.Reasons[i]
	}
	v.Missing = Missing{
		Point: !known(r.Point.Difference), Clearance: !known(r.Clearance.Lip1),
		Chisel: !known(r.Held[ChiselRatioLimit].Value), Lips: !known(r.Lips.Height),
	}
	if v.Word == Undecided && !v.Missing.any() {
		v.Word = Fit
	}
	return v
}

// borderline tells in s of what is past its limit by less than a bench gauge can
// tell, and decides nothing for that.
func (r *Result) borderline(s *sheet.Sheet) {
	for i, near := range r.Verdict.Borderline {
		if near {
			text := rules[i].text(r)
			text.Format = "borderline, read it again: " + text.Format
			s.Findings = append(s.Findings, sheet.Finding{Code: rules[i].code + "-borderline", Severity: sheet.Note, Text: text})
		}
	}
}

// Verdict returns the verdict that the reason leads to.
func (x Reason) Verdict() Word { return rules[x].verdict }

// Code returns the reason's name, as scripts read it.
func (x Reason) Code() string { return rules[x].code }

// Retires reports whether a reason of that name is one to retire the drill for.
func Retires(code string) bool {
	for i := range rules {
		if rules[i].code == code {
			return rules[i].verdict == Retire
		}
	}
	return false
}

// Finding returns the remark on the reason, which must be one that holds.
func (r *Result) Finding(x Reason) sheet.Finding {
	severity := sheet.Warn
	if x.Verdict() == Retire {
		severity = sheet.Stop
	}
	return sheet.Finding{Code: x.Code(), Severity: severity, Text: rules[x].text(r)}
}

// lighter returns the lighter reason that x stands before, where it holds of r.
func (x Reason) lighter(r *Result) (Reason, bool) {
	u := &rules[x]
	if u.instead == noReason {
		return noReason, false
	}
	holds, _ := rules[u.instead].holds(&r.Held)
	return u.instead, holds
}
