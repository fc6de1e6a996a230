package inspect

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/figure"
	"evenlip/internal/reference"
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
	PointOff
	ClearanceLow
	ClearanceHigh
	FlankRubs
	ChiselOff
	LipsUneven
	ChiselLong
	reasons
)

// rule is one line of docs/verdict.md.
type rule struct {
	code    string
	verdict Word
	holds   func(*Result) bool
	text    func(*Result) figure.Text
	// figures are the keys of what the rule looks at, where a gauge's doubt
	// bears on it.
	figures []string
}

// rules are all the grounds for a verdict, and the only place where one is
// decided. A figure that is not known breaks no limit.
var rules = [reasons]rule{
	Cracked: {"cracked", Retire, func(r *Result) bool { return r.Wear.Cracked }, func(*Result) figure.Text {
		return figure.Sayf("a cracked drill is never reground: scrap it")
	}, nil},
	MarginGone: {"margin-worn-far", Retire, func(r *Result) bool { return r.Wear.Margin > r.Wear.MarginLimit.High }, func(r *Result) figure.Text {
		return figure.Sayf("the margin is worn {} up the body, more than one diameter: the drill is tapered and binds", figure.Len(r.Wear.Margin))
	}, []string{"margin_wear_mm"}},
	FluteShort: {"flute-short", Retire, func(r *Result) bool { return r.Wear.Flute < r.Wear.FluteLimit.Low }, func(r *Result) figure.Text {
		return figure.Sayf("{} of flute is too short for a hole {} deep: with chip room it takes {}", figure.Len(r.Wear.Flute), figure.Len(r.Wear.Depth), figure.Len(r.Wear.FluteLimit.Low))
	}, []string{"flute_mm"}},
	WebSpent: {"web-spent", Retire, func(r *Result) bool { return r.Chisel.WebRatio > r.Wear.WebLimit.High }, func(r *Result) figure.Text {
		return figure.Sayf("the web is {} of the diameter: more than thinning can answer", figure.Num(r.Chisel.WebRatio))
	}, []string{"web_ratio"}},
	Dull: {"dull", Regrind, func(r *Result) bool { return r.Wear.Flank >= r.Wear.FlankLimit.High }, func(r *Result) figure.Text {
		return figure.Sayf("the worn land behind the lip is {}: dull from {} on", figure.Len(r.Wear.Flank), figure.Len(r.Wear.FlankLimit.High))
	}, []string{"flank_wear_mm"}},
	CornerWorn: {"corner-worn", Regrind, func(r *Result) bool { return r.Wear.Corner > 0 }, func(r *Result) figure.Text {
		return figure.Sayf("the corner is rounded over {}: grind until it is sharp", figure.Len(r.Wear.Corner))
	}, nil},
	MarginWorn: {"margin-worn", Regrind, func(r *Result) bool { return r.Wear.Margin > 0 && !(r.Wear.Margin > r.Wear.MarginLimit.High) }, func(r *Result) figure.Text {
		return figure.Sayf("the margin is worn back {} from the corner: take that much off the end", figure.Len(r.Wear.Margin))
	}, nil},
	PointOff: {"point-angle-off", Regrind, func(r *Result) bool { return outside(r.Point.Angle, r.Point.Limit) }, func(r *Result) figure.Text {
		return figure.Sayf("the point is {} where {} is wanted", figure.Deg(r.Point.Angle), figure.Deg(r.Point.Wanted))
	}, []string{"point_angle_deg"}},
	ClearanceLow: {"clearance-low", Regrind, func(r *Result) bool {
		return r.Clearance.Lip1 < under(r.Clearance.Limit) || r.Clearance.Lip2 < under(r.Clearance.Limit)
	}, func(r *Result) figure.Text {
		return figure.Sayf("a lip has {} of clearance: too little, it will rub", figure.Deg(r.Clearance.Corner()))
	}, []string{"lip_clearance_1_deg", "lip_clearance_2_deg"}},
	ClearanceHigh: {"clearance-high", Regrind, func(r *Result) bool {
		return r.Clearance.Lip1 > over(r.Clearance.Limit) || r.Clearance.Lip2 > over(r.Clearance.Limit)
	}, func(r *Result) figure.Text {
		return figure.Sayf("a lip has {} of clearance: too much, it is weak and chips", figure.Deg(math.Max(r.Clearance.Lip1, r.Clearance.Lip2)))
	}, []string{"lip_clearance_1_deg", "lip_clearance_2_deg"}},
	FlankRubs: {"flank-rubs", Regrind, func(r *Result) bool { return r.Clearance.Working <= 0 || r.Clearance.Least <= 0 }, func(r *Result) figure.Text {
		return figure.Sayf("at {} a turn the flank rubs behind the lip", figure.Feed(r.Drill.Feed))
	}, []string{"working_clearance_deg", "least_working_clearance_deg"}},
	ChiselOff: {"chisel-angle-off", Regrind, func(r *Result) bool { return outside(r.Chisel.Angle, r.Chisel.AngleLimit) }, func(r *Result) figure.Text {
		return figure.Sayf("the chisel edge lies at {}: it should be 120 to 135°", figure.Deg(r.Chisel.Angle))
	}, []string{"chisel_angle_deg"}},
	LipsUneven: {"lips-uneven", Regrind, func(r *Result) bool { return outside(r.Lips.Height, r.Lips.Limit) }, func(r *Result) figure.Text {
		return figure.Sayf("{} stands {} higher: the hole comes out oversize", figure.Say(r.Lips.highWord()), figure.Len(math.Abs(r.Lips.Height)))
	}, []string{"lip_height_difference_mm"}},
	ChiselLong: {"chisel-long", Thin, func(r *Result) bool { return r.Chisel.Ratio > over(r.Chisel.RatioLimit) }, func(r *Result) figure.Text {
		return figure.Sayf("the chisel edge is {} of the diameter, over {}: thin the web", figure.Num(r.Chisel.Ratio), figure.Num(r.Chisel.RatioLimit.High))
	}, []string{"chisel_ratio"}},
}

// slack forgives rounding in a conversion, nothing that a gauge could show.
const slack = 1e-9

func under(b reference.Band) float64 { return b.Low - slack*math.Abs(b.Low) }
func over(b reference.Band) float64  { return b.High + slack*math.Abs(b.High) }

func outside(v float64, b reference.Band) bool { return v < under(b) || v > over(b) }

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
func judge(_ *drill.Drill, r *Result) Verdict {
	var v Verdict
	for i := range rules {
		if !rules[i].holds(r) {
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
		Chisel: !known(r.Chisel.Ratio), Lips: !known(r.Lips.Height),
	}
	if v.Word == Undecided && !v.Missing.any() {
		v.Word = Fit
	}
	return v
}
