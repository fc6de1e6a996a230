package judge

import (
	"math"

	"evenlip/internal/handbook"
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
	Cracked Reason = iota
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
	ChiselLong
	reasons
)

// rule is one line of docs/verdict.md; when it holds is said by Reason.holds.
type rule struct {
	code    string
	verdict Word
	text    func(*Result) quantity.Text
	// figures are the keys of what the rule looks at, where a gauge's doubt
	// bears on it.
	figures []string
}

// rules are all the grounds for a verdict.
var rules = [reasons]rule{
	Cracked: {"cracked", Retire, func(*Result) quantity.Text {
		return quantity.Sayf("a cracked drill is never reground: scrap it")
	}, nil},
	MarginGone: {"margin-worn-far", Retire, func(r *Result) quantity.Text {
		return quantity.Sayf("the margin is worn {} up the body, more than one diameter: the drill is tapered and binds; or cut that much off, if the flute allows", quantity.MM(r.Wear.Margin))
	}, []string{"margin_wear_mm"}},
	FluteShort: {"flute-short", Retire, func(r *Result) quantity.Text {
		return quantity.Sayf("{} of flute is too short for a hole {} deep: with chip room it takes {}", quantity.MM(r.Wear.Flute), quantity.MM(r.Wear.Depth), quantity.MM(r.Wear.FluteLimit.Low))
	}, []string{"flute_mm"}},
	WebSpent: {"web-spent", Retire, func(r *Result) quantity.Text {
		return quantity.Sayf("the web is {} of the diameter: more than thinning can answer", quantity.Num(r.Chisel.WebRatio))
	}, []string{"web_ratio"}},
	Dull: {"dull", Regrind, func(r *Result) quantity.Text {
		return quantity.Sayf("the worn land behind the lip is {}: dull over {}", quantity.MM(r.Wear.Flank), quantity.MM(r.Wear.FlankLimit.High))
	}, []string{"flank_wear_mm"}},
	CornerWorn: {"corner-worn", Regrind, func(r *Result) quantity.Text {
		return quantity.Sayf("the corner is rounded for {} of the lip: grind until it is sharp", quantity.MM(r.Wear.Corner))
	}, nil},
	MarginWorn: {"margin-worn", Regrind, func(r *Result) quantity.Text {
		if r.Wear.Margin > r.Drill.D*(1+slack) {
			return quantity.Sayf("the margin is worn {} up the body, more than one diameter: cut that much off and grind a new point; the {} of flute left then still does", quantity.MM(r.Wear.Margin), quantity.MM(r.Wear.Flute-r.Wear.Margin))
		}
		return quantity.Sayf("the margin is worn back {} from the corner: take that much off the end", quantity.MM(r.Wear.Margin))
	}, nil},
	Chipped: {"lip-chipped", Regrind, func(r *Result) quantity.Text {
		return quantity.Sayf("a lip is chipped {} deep: grind until the chip is out", quantity.MM(r.Wear.Chip))
	}, nil},
	PointOff: {"point-angle-off", Regrind, func(r *Result) quantity.Text {
		return quantity.Sayf("the point is {} where {} is wanted", quantity.Rad(r.Point.Angle), quantity.Rad(r.Point.Wanted))
	}, []string{"point_angle_deg"}},
	ClearanceLow: {"clearance-low", Regrind, func(r *Result) quantity.Text {
		return quantity.Sayf("a lip has {} of clearance, under {}: too little, grind more", quantity.Rad(r.Clearance.Corner()), quantity.Rad(r.Clearance.Limit.Low))
	}, []string{"lip_clearance_1_deg", "lip_clearance_2_deg"}},
	ClearanceHigh: {"clearance-high", Regrind, func(r *Result) quantity.Text {
		return quantity.Sayf("a lip has {} of clearance: too much, it is weak and chips", quantity.Rad(math.Max(r.Clearance.Lip1, r.Clearance.Lip2)))
	}, []string{"lip_clearance_1_deg", "lip_clearance_2_deg"}},
	FlankRubs: {"flank-rubs", Regrind, func(r *Result) quantity.Text {
		return quantity.Sayf("at {} the flank rubs behind the lip", quantity.Of(quantity.Feed, r.Drill.Feed))
	}, []string{"working_clearance_deg", "least_working_clearance_deg"}},
	ChiselOff: {"chisel-angle-off", Regrind, func(r *Result) quantity.Text {
		return quantity.Sayf("the chisel edge lies at {}: it should be {} to {}", quantity.Rad(r.Chisel.Angle), quantity.Rad(r.Chisel.AngleLimit.Low), quantity.Rad(r.Chisel.AngleLimit.High))
	}, []string{"chisel_angle_deg"}},
	LipsUneven: {"lips-uneven", Regrind, func(r *Result) quantity.Text {
		return r.Lips.uneven()
	}, []string{"lip_height_difference_mm", "lip_height_mid_lip_mm"}},
	ChiselLong: {"chisel-long", Thin, func(r *Result) quantity.Text {
		return quantity.Sayf("the chisel edge is {} of the diameter, over {}: thin the web", quantity.Num(r.Chisel.Ratio), quantity.Num(r.Chisel.RatioLimit.High))
	}, []string{"chisel_ratio"}},
}

// holds reports whether the reason applies to r; no reason is decided anywhere
// else. A figure that is not known breaks no limit. It is one switch, and not a
// function in each rule, because a call that the compiler sees through lets a
// Result stay off the heap.
func (x Reason) holds(r *Result) bool {
	w, c := &r.Wear, &r.Clearance
	switch x {
	case Cracked:
		return w.Cracked
	case MarginGone:
		return w.Margin > over(w.MarginLimit)
	case FluteShort:
		return w.Flute < under(w.FluteLimit)
	case WebSpent:
		return r.Chisel.WebRatio > over(w.WebLimit)
	case Dull:
		return w.Flank > over(w.FlankLimit)
	case CornerWorn:
		return w.Corner > 0
	case MarginWorn:
		return w.Margin > 0 && !MarginGone.holds(r)
	case Chipped:
		return w.Chip > 0
	case PointOff:
		return outside(r.Point.Angle, r.Point.Limit)
	case ClearanceLow:
		return c.Corner() < under(c.Limit)
	case ClearanceHigh:
		return c.High(c.Lip1) || c.High(c.Lip2)
	case FlankRubs:
		return c.Working <= 0 || c.Least <= 0
	case ChiselOff:
		return outside(r.Chisel.Angle, r.Chisel.AngleLimit) && r.Chisel.Gap == 0
	case LipsUneven:
		return outside(r.Lips.Height, r.Lips.Limit) || outside(r.Lips.MidLip, r.Lips.Limit)
	case ChiselLong:
		return r.chiselLong() && !WebSpent.holds(r)
	}
	return false
}

// chiselLong reports whether the chisel edge is over its limit, past thinning or
// not. Readings that contradict each other decide nothing.
func (r *Result) chiselLong() bool {
	return r.Chisel.Ratio > over(r.Chisel.RatioLimit) && r.Chisel.Gap == 0
}

// hides returns the lighter reason that x, which holds, stands before.
func (x Reason) hides(r *Result) (lighter Reason, ok bool) {
	switch x {
	case MarginGone:
		return MarginWorn, true
	case WebSpent:
		return ChiselLong, r.chiselLong()
	}
	return 0, false
}

// slack forgives rounding in a conversion, nothing that a gauge could show.
const slack = 1e-9

func under(b handbook.Band) float64 { return b.Low - slack*math.Abs(b.Low) }
func over(b handbook.Band) float64  { return b.High + slack*math.Abs(b.High) }

func outside(v float64, b handbook.Band) bool { return v < under(b) || v > over(b) }

// Verdict is the word on a drill and the reasons that hold.
type Verdict struct {
	Word    Word
	Reasons [reasons]bool
	// Missing is which of the five results could not be had, so that the drill
	// cannot be called fit.
	Missing Missing
}

// Missing is a set of results.
type Missing struct{ Point, Clearance, Chisel, Lips bool }

func (m Missing) any() bool { return m != Missing{} }

// judge applies the rules. A crack ends the matter: no other reason is given.
func judge(r *Result) Verdict {
	var v Verdict
	for i := range rules {
		if !Reason(i).holds(r) {
			continue
		}
		v.Reasons[i] = true
		v.Word = max(v.Word, rules[i].verdict)
		if Reason(i) == Cracked {
			return v
		}
	}
	v.Missing = Missing{
		Point: !known(r.Point.Difference), Clearance: !known(r.Clearance.Lip1),
		Chisel: !known(r.Chisel.Ratio) || r.Chisel.Gap != 0, Lips: !known(r.Lips.MidLip),
	}
	if v.Word == Undecided && !v.Missing.any() {
		v.Word = Fit
	}
	return v
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
