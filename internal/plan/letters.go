package plan

import (
	"math"
	"slices"
	"strings"

	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

type (
	def   = sheet.Def[Plan]
	group = sheet.Group[Plan]
)

// letters are what the formulas of a plan start from, beside the readings that judge
// has letters for: the readings as the plan takes them, and what is usual.
var letters = group{Figures: []def{
	{Letter: "D", Label: "diameter", Kind: quantity.Size, Fine: true, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Body.D }},
	{Letter: "f", Label: "feed", Kind: quantity.Feed, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Body.Feed }},
	{Letter: "k1", Label: "lip 1 to the axis", Kind: quantity.Angle, Gauge: quantity.Protractor, Works: lipWorks,
		Value: func(p *Plan) float64 { return p.Lips.Lip1.HalfAngle }},
	{Letter: "k2", Label: "lip 2 to the axis", Kind: quantity.Angle, Gauge: quantity.Protractor, Works: lipWorks,
		Value: func(p *Plan) float64 { return p.Lips.Lip2.HalfAngle }},
	{Letter: "k", Label: "half the point angle", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: "(k1 + k2) / 2",
		Value: func(p *Plan) float64 { return p.Wear.HalfAngle }},
	{Letter: "kt", Label: "both lips to the axis when ground", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(p *Plan) float64 { return p.Lips.Target }, Works: func(p *Plan) (work, source string) {
			if p.Lips.Target == p.Found.Point.K() {
				return "k", ""
			}
			return sheet.AsRead, "half the point angle wanted"
		}},
	{Letter: "dh", Label: "lip 1 higher than lip 2 by", Kind: quantity.Length, Gauge: quantity.Indicator,
		Value: func(p *Plan) float64 { return p.Lips.apart() }, Works: func(p *Plan) (work, source string) {
			if p.HeightTaken {
				return "0", "taken to stand even"
			}
			return sheet.AsRead, sheet.AsRead
		}},
	{Letter: "Cl", Label: "clearance that the land is reckoned at", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(p *Plan) float64 { return p.Wear.Clearance }, Works: func(p *Plan) (work, source string) {
			if p.LandAimed {
				return "Ca", rules.String()
			}
			return "max(C1, C2)", ""
		}},
	{Letter: "e", Label: "feed angle at the corner, nothing unless a feed was read", Kind: quantity.Angle, Value: func(p *Plan) float64 { return p.Wear.FeedAngle },
		Works: func(p *Plan) (work, source string) {
			if p.Wear.FeedAngle == 0 {
				return "0", rules.String()
			}
			return "atan(f / (pi * D))", ""
		}},
	{Letter: "sw", Label: "width of a steep flank ground anew", Kind: quantity.Length, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Wear.Steep.Width }},
	{Letter: "Ca", Label: "clearance to aim for", Kind: quantity.Angle, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Wear.Steep.Aim }},
	{Letter: "fl", Label: "land along flattened lips", Kind: quantity.Length, Gauge: quantity.Caliper, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Found.Face.Flat }},
	{Letter: "Lo", Label: "overall length", Kind: quantity.Length, Gauge: quantity.Caliper, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Body.Length }},
	{Letter: "wb", Label: "web behind the point", Kind: quantity.Length, Gauge: quantity.Caliper, Value: func(p *Plan) float64 { return p.Body.Web },
		Works: func(p *Plan) (work, source string) {
			switch {
			case !(p.Body.Thinned > 0):
				return "w", ""
			case p.Found.Web.BodyTaken:
				return sheet.AsRead, handbook.NewWebSource.String()
			}
			return sheet.AsRead, "the web before it was thinned"
		}},
	{Letter: "t", Label: "web taper", Kind: quantity.Taper, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Body.Taper }},
	{Letter: "pg", Label: "chisel-edge angle when ground, acute", Kind: quantity.Angle, Gauge: quantity.Protractor, Value: func(p *Plan) float64 { return p.Body.ChiselAfter },
		Works: func(p *Plan) (work, source string) {
			if p.ChiselMoved {
				return sheet.AsRead, "the middle of its limit"
			}
			return "psi", ""
		}},
	{Letter: "mw", Label: "web / D that thinning can answer", Kind: quantity.Number, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Body.MostWeb }},
	{Letter: "bt", Label: "back taper", Kind: quantity.Taper, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Body.BackTaper }},
	{Letter: "Dl", Label: "least diameter", Kind: quantity.Size, Fine: true, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Body.LeastDiameter }},
	{Letter: "depth", Label: "depth of the hole", Kind: quantity.Length, Gauge: quantity.Caliper, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Found.Wear.Depth }},
	{Letter: "room", Label: "room for the chips", Kind: quantity.Length, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Found.Drill.Book.FluteNeeded(p.Body.D, 0).Low }},
	{Letter: "us", Label: "least that a usual grind takes", Kind: quantity.Length, Work: sheet.AsRead, Value: func(p *Plan) float64 { return p.Least }},
	{Letter: "hair", Label: "part of a grind that one may miss an end by", Kind: quantity.Number, Work: sheet.AsRead, Value: func(*Plan) float64 { return Hair }},
	{Letter: "Kd", Label: "the work's factor for thrust", Kind: quantity.Number, Work: sheet.AsRead, Value: func(p *Plan) float64 {
		if m := p.Found.Drill.Material; m != nil {
			return m.KdThrust
		}
		return math.NaN()
	}},
}}

func lipWorks(p *Plan) (work, source string) {
	if p.AngleTaken {
		return "kt", "taken, for want of a reading"
	}
	return sheet.AsRead, sheet.AsRead
}

// steps are what several figures follow from: the lips' ends, carried to the axis at
// the angle wanted, and how deep each is worn; the web that a grind leaves, and how
// hard the chisel edge is to push.
var steps = group{Figures: []def{
	{Letter: "s1", Label: "depth of the new flank, lip 1", Kind: quantity.Length, Work: "sw * (tan(C1) - tan(Ca))",
		Value: func(p *Plan) float64 { return p.Would.Steep1 }},
	{Letter: "s2", Label: "depth of the new flank, lip 2", Kind: quantity.Length, Work: "sw * (tan(C2) - tan(Ca))",
		Value: func(p *Plan) float64 { return p.Would.Steep2 }},
	{Letter: "W1i", Label: "wear at the inner end of lip 1", Kind: quantity.Length, Value: func(p *Plan) float64 { return p.Would.Worn1.Inner },
		Works: func(p *Plan) (work, source string) { return p.deepest(math.Inf(1), "sl", "sk", "s1") }},
	{Letter: "W1o", Label: "wear at the outer end of lip 1", Kind: quantity.Length, Value: func(p *Plan) float64 { return p.Would.Worn1.Outer },
		Works: func(p *Plan) (work, source string) { return p.deepest(math.Inf(1), "sl", "sk", "s1", "sc", "sm") }},
	{Letter: "W2i", Label: "wear at the inner end of lip 2", Kind: quantity.Length, Value: func(p *Plan) float64 { return p.Would.Worn2.Inner },
		Works: func(p *Plan) (work, source string) { return p.deepest(math.Inf(1), "sl", "sk", "s2") }},
	{Letter: "W2o", Label: "wear at the outer end of lip 2", Kind: quantity.Length, Value: func(p *Plan) float64 { return p.Would.Worn2.Outer },
		Works: func(p *Plan) (work, source string) { return p.deepest(math.Inf(1), "sl", "sk", "s2", "sc", "sm") }},
	{Letter: "H1i", Label: "height of the inner end of lip 1", Kind: quantity.Length, Work: "dh + (X - x0) / tan(k1) + x0 / tan(kt)",
		Value: func(p *Plan) float64 { return p.Lips.Carried(p.Lips.Lip1, p.Lips.Inner) }},
	{Letter: "H1o", Label: "height of the outer end of lip 1", Kind: quantity.Length, Work: "dh + X / tan(kt)",
		Value: func(p *Plan) float64 { return p.Lips.Carried(p.Lips.Lip1, p.Lips.Outer) }},
	{Letter: "H2i", Label: "height of the inner end of lip 2", Kind: quantity.Length, Work: "(X - x0) / tan(k2) + x0 / tan(kt)",
		Value: func(p *Plan) float64 { return p.Lips.Carried(p.Lips.Lip2, p.Lips.Inner) }},
	{Letter: "H2o", Label: "height of the outer end of lip 2", Kind: quantity.Length, Work: "X / tan(kt)",
		Value: func(p *Plan) float64 { return p.Lips.Carried(p.Lips.Lip2, p.Lips.Outer) }},
	{Letter: "Hw", Label: "the lowest end, its wear off", Kind: quantity.Length, Work: "min(H1i - W1i, H1o - W1o, H2i - W2i, H2o - W2o)",
		Value: func(p *Plan) float64 { return p.lowest() }},
	{Letter: "Wu", Label: "wear that comes back grind after grind", Kind: quantity.Length, Value: func(p *Plan) float64 { return p.Would.Habit(p.Deepest) },
		Works: func(p *Plan) (work, source string) { return p.deepest(p.Deepest, "sl", "sc", "sm") }},
	{Letter: "wg", Label: "web when ground, unthinned", Kind: quantity.Length, Gauge: quantity.Caliper, Value: func(p *Plan) float64 { return p.Ground.Web },
		Works: func(p *Plan) (work, source string) {
			if p.Stock.Total == 0 {
				return "w", ""
			}
			return "wb + t * max(T1i, T2i)", ""
		}},
	{Letter: "S1", Label: "what the next grind takes there", Kind: quantity.Length, Value: func(p *Plan) float64 { return p.First.at(p.End) },
		Works: func(p *Plan) (work, source string) {
			switch {
			case p.Stock.Total == 0:
				return "U", ""
			case p.End == WebSpent:
				return "max(T1i, T2i)", ""
			}
			return "max(T1o, T2o)", ""
		}},
	{Letter: "St", Label: "what the tip loses", Kind: quantity.Length, Value: func(p *Plan) float64 { return p.Loss.Tip },
		Works: func(p *Plan) (work, source string) {
			if p.Stock.Total == 0 {
				return "0", ""
			}
			return "max(dh + X / tan(k1), X / tan(k2)) - (dh - T1o + X / tan(kt))", ""
		}},
	{Letter: "qn", Label: "chisel edge / D now", Kind: quantity.Number, Work: "w / sin(psi) / D", Value: func(p *Plan) float64 { return p.Now.Ratio }},
	{Letter: "Bn", Label: "factor B now", Kind: quantity.Number, Value: func(p *Plan) float64 { return cutting.FactorsOf(p.Now.Ratio).B },
		Work:   "(1 - qn) / (1 + qn)^0.2 + 2.2 * qn^0.8",
		Source: judge.ForceSource},
	{Letter: "Bd", Label: "factor B when done", Kind: quantity.Number, Value: func(p *Plan) float64 { return cutting.FactorsOf(p.Done.Ratio).B },
		Work:   "(1 - qd) / (1 + qd)^0.2 + 2.2 * qd^0.8",
		Source: judge.ForceSource},
}}

// apart is how much higher lip 1 stands at the corner.
func (l *Lips) apart() float64 { return point.HeightDifference(l.Lip1, l.Lip2, l.Outer) }

// lowest is the height of the lowest end when the wear is off.
func (p *Plan) lowest() float64 {
	l, one, two := &p.Lips, &p.Would.Worn1, &p.Would.Worn2
	return min(l.Carried(l.Lip1, l.Inner)-one.Inner, l.Carried(l.Lip1, l.Outer)-one.Outer,
		l.Carried(l.Lip2, l.Inner)-two.Inner, l.Carried(l.Lip2, l.Outer)-two.Outer)
}

// deepest is the formula of the largest of depths, by their letters: of those that are
// known, and not over most.
func (p *Plan) deepest(most float64, letters ...string) (work, source string) {
	by := &p.Would.By
	depth := map[string]float64{"sl": by[FlankLand], "sc": by[Corner], "sm": by[Margin], "sk": by[LipChip],
		"s1": p.Would.Steep1, "s2": p.Would.Steep2}
	if margin := by[Margin]; margin > 0 && margin <= most {
		depth["sc"] = math.NaN() // the margin's length decides
	}
	letters = slices.DeleteFunc(letters, func(letter string) bool { return !(depth[letter] <= most) })
	switch len(letters) {
	case 0:
		return "0", ""
	case 1:
		return letters[0], ""
	}
	return "max(" + strings.Join(letters, ", ") + ")", ""
}
