package judge

import (
	"math"

	"evenlip/internal/handbook"
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
	text    func(*Result) sheet.Text
	// figures are the keys of what the rule looks at, where a gauge's doubt
	// bears on it.
	figures []string
}

// rules are all the grounds for a verdict.
var rules = [reasons]rule{
	Cracked: {"cracked", Retire, func(*Result) sheet.Text {
		return sheet.Sayf("a cracked drill is never reground: scrap it")
	}, nil},
	MarginGone: {"margin-worn-far", Retire, func(r *Result) sheet.Text {
		return sheet.Sayf("the margin is worn {} up the body, more than one diameter: the drill is tapered and binds; or cut that much off, if the flute allows", sheet.Len(r.Wear.Margin))
	}, []string{"margin_wear_mm"}},
	FluteShort: {"flute-short", Retire, func(r *Result) sheet.Text {
		return sheet.Sayf("{} of flute is too short for a hole {} deep: with chip room it takes {}", sheet.Len(r.Wear.Flute), sheet.Len(r.Wear.Depth), sheet.Len(r.Wear.FluteLimit.Low))
	}, []string{"flute_mm"}},
	WebSpent: {"web-spent", Retire, func(r *Result) sheet.Text {
		return sheet.Sayf("the web is {} of the diameter: more than thinning can answer", sheet.Num(r.Chisel.WebRatio))
	}, []string{"web_ratio"}},
	Dull: {"dull", Regrind, func(r *Result) sheet.Text {
		return sheet.Sayf("the worn land behind the lip is {}: dull over {}", sheet.Len(r.Wear.Flank), sheet.Len(r.Wear.FlankLimit.High))
	}, []string{"flank_wear_mm"}},
	CornerWorn: {"corner-worn", Regrind, func(r *Result) sheet.Text {
		return sheet.Sayf("the corner is rounded for {} of the lip: grind until it is sharp", sheet.Len(r.Wear.Corner))
	}, nil},
	MarginWorn: {"margin-worn", Regrind, func(r *Result) sheet.Text {
		if r.Wear.Margin > r.Drill.D*(1+slack) {
			return sheet.Sayf("the margin is worn {} up the body, more than one diameter: cut that much off and grind a new point; the {} of flute left then still does", sheet.Len(r.Wear.Margin), sheet.Len(r.Wear.Flute-r.Wear.Margin))
		}
		return sheet.Sayf("the margin is worn back {} from the corner: take that much off the end", sheet.Len(r.Wear.Margin))
	}, nil},
	Chipped: {"lip-chipped", Regrind, func(r *Result) sheet.Text {
		return sheet.Sayf("a lip is chipped {} deep: grind until the chip is out", sheet.Len(r.Wear.Chip))
	}, nil},
	PointOff: {"point-angle-off", Regrind, func(r *Result) sheet.Text {
		return sheet.Sayf("the point is {} where {} is wanted", sheet.Deg(r.Point.Angle), sheet.Deg(r.Point.Wanted))
	}, []string{"point_angle_deg"}},
	ClearanceLow: {"clearance-low", Regrind, func(r *Result) sheet.Text {
		return sheet.Sayf("a lip has {} of clearance, under {}: too little, grind more", sheet.Deg(r.Clearance.Corner()), sheet.Deg(r.Clearance.Limit.Low))
	}, []string{"lip_clearance_1_deg", "lip_clearance_2_deg"}},
	ClearanceHigh: {"clearance-high", Regrind, func(r *Result) sheet.Text {
		return sheet.Sayf("a lip has {} of clearance: too much, it is weak and chips", sheet.Deg(math.Max(r.Clearance.Lip1, r.Clearance.Lip2)))
	}, []string{"lip_clearance_1_deg", "lip_clearance_2_deg"}},
	FlankRubs: {"flank-rubs", Regrind, func(r *Result) sheet.Text {
		return sheet.Sayf("at {} the flank rubs behind the lip", sheet.Feed(r.Drill.Feed))
	}, []string{"working_clearance_deg", "least_working_clearance_deg"}},
	ChiselOff: {"chisel-angle-off", Regrind, func(r *Result) sheet.Text {
		return sheet.Sayf("the chisel edge lies at {}: it should be {} to {}", sheet.Deg(r.Chisel.Angle), sheet.Deg(r.Chisel.AngleLimit.Low), sheet.Deg(r.Chisel.AngleLimit.High))
	}, []string{"chisel_angle_deg"}},
	LipsUneven: {"lips-uneven", Regrind, func(r *Result) sheet.Text {
		return r.Lips.uneven()
	}, []string{"lip_height_difference_mm", "lip_height_mid_lip_mm"}},
	ChiselLong: {"chisel-long", Thin, func(r *Result) sheet.Text {
		return sheet.Sayf("the chisel edge is {} of the diameter, over {}: thin the web", sheet.Num(r.Chisel.Ratio), sheet.Num(r.Chisel.RatioLimit.High))
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
