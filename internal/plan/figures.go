package plan

import (
	"math"
	"strings"

	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// answer is what a person at the wheel reads first.
var answer = group{Title: "Plan", Figures: []def{
	{Key: "plan", Label: "to do", Kind: quantity.Word, OfWays: wantsSize, Word: func(p *Plan) string {
		return p.Do.String()
	}},
	{Key: "stock_mm", Letter: "S", Label: "take off the end", Kind: quantity.Length, Gauge: quantity.Caliper, OfWays: wantsSize,
		Value: func(p *Plan) float64 { return p.Stock.Total }, Work: "max(T1i, T1o, T2i, T2o)"},
	{Key: "stock_reason", Label: "because of", Kind: quantity.Word, Word: func(p *Plan) string {
		if !p.Made {
			return ""
		}
		return p.Stock.Governs.String()
	}},
}}

// causes are what each kind of wear would take by itself.
var causes = group{Title: "Stock by cause, along the axis", Figures: []def{
	{Key: "stock_flank_mm", Letter: "sl", Label: "wear land", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Would.By[FlankLand] }, Work: "VB * (tan(Cl) - tan(e))"},
	{Key: "stock_corner_mm", Letter: "sc", Label: "rounded corner, about", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Would.By[Corner] }, Work: "cw / sin(k)"},
	{Key: "stock_margin_mm", Letter: "sm", Label: "worn margin", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Would.By[Margin] }, Work: sheet.AsRead, Source: "all the length that is worn"},
	{Key: "stock_chip_mm", Letter: "sk", Label: "chip in a lip", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Would.By[LipChip] }, Work: sheet.AsRead, Source: sheet.AsRead},
	{Key: "stock_steep_mm", Label: "too much clearance", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return larger(p.Would.Steep1, p.Would.Steep2) },
		Works: func(p *Plan) (work, source string) {
			work, _ = p.deepest(math.Inf(1), "s1", "s2")
			return work, handbook.SteepFlankSource.String()
		}},
	{Key: "stock_reshape_mm", Label: "flanks anew: the clean-up", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 {
			if anew := p.Would.By[Reshaping]; anew > 0 && !sheet.Known(larger(p.Would.Steep1, p.Would.Steep2)) {
				return anew
			}
			return math.NaN()
		},
		Works: func(*Plan) (work, source string) {
			return "cl", handbook.CleanUpSource.String() + "; the metal comes off behind the lip"
		}},
	{Key: "stock_touch_up_mm", Label: "touch-up: the clean-up", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Would.By[TouchUp] }, Work: "cl"},
	{Key: "stock_truing_mm", Label: "evening the lips", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Would.By[Truing] }, Work: "max(H1i, H1o, H2i, H2o) - min(H1i, H1o, H2i, H2o)"},
	{Key: "stock_clean_up_mm", Letter: "cl", Label: "clean-up beyond the wear", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Would.CleanUp }, Works: cleanUpWorks,
		Shop: func(p *Plan) bool { return p.CleanUpFrom.OfShop() && p.Would.CleanUp > 0 }},
}}

// ends are what comes off each lip at each of its ends.
var ends = group{Title: "Off each lip, clean-up included", Figures: []def{
	{Key: "take_1_inner_mm", Letter: "T1i", Label: "lip 1, at the web", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Stock.Lip1.Inner },
		Works: func(p *Plan) (work, source string) { return p.unlessItWaits("H1i - Hw + cl") }},
	{Key: "take_1_outer_mm", Letter: "T1o", Label: "lip 1, at the corner", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Stock.Lip1.Outer },
		Works: func(p *Plan) (work, source string) { return p.unlessItWaits("H1o - Hw + cl") }},
	{Key: "take_2_inner_mm", Letter: "T2i", Label: "lip 2, at the web", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Stock.Lip2.Inner },
		Works: func(p *Plan) (work, source string) { return p.unlessItWaits("H2i - Hw + cl") }},
	{Key: "take_2_outer_mm", Letter: "T2o", Label: "lip 2, at the corner", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Stock.Lip2.Outer },
		Works: func(p *Plan) (work, source string) { return p.unlessItWaits("H2o - Hw + cl") }},
}}

// thinning is whether the web is to be thinned after this grind, and to what.
var thinning = group{Title: "Web thinning, after the grind", Figures: []def{
	{Key: "thin", Label: "thin the web", Kind: quantity.Switch, Word: func(p *Plan) string { return thinned(&p.Done) },
		OfWays: func(p *Plan) string { return p.wants(p.Found.Chisel.Length, judge.WantsChisel(&p.Found)) }},
	{Key: "chisel_ratio_unthinned", Label: "chisel edge / D, unthinned", Kind: quantity.Number,
		Value: func(p *Plan) float64 { return p.Ground.Ratio }, Work: "wg / sin(pg) / D"},
	{Key: "thin_over_ratio", Label: "thinned when over", Kind: quantity.Number, Value: func(p *Plan) float64 {
		if math.IsInf(p.Body.MostChisel, 1) { // nobody thins it
			return math.NaN()
		}
		return p.made(p.Body.MostChisel)
	},
		Shop:  func(p *Plan) bool { return p.thinOver().OfShop() },
		Works: func(p *Plan) (work, source string) { return sheet.AsRead, p.thinOver().String() }},
	{Key: "thin_to_ratio", Letter: "qt", Label: "thin to chisel edge / D", Kind: quantity.Number, Value: func(p *Plan) float64 { return p.ifThinned(p.Done.Ratio) },
		Works: func(*Plan) (work, source string) {
			return sheet.AsRead, "as new; " + handbook.StandardChiselSource.String()
		}},
	{Key: "web_target_mm", Letter: "wt", Label: "thin to web", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.ifThinned(p.Done.Web) }, Work: "qt * D * sin(pg)"},
	{Key: "notch_depth_mm", Label: "notch, each side", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.ifThinned((p.Ground.Web - p.Done.Web) / 2) }, Work: "(wg - wt) / 2"},
}}

// flattening is whether the lips are to be flattened after this grind, and how far.
var flattening = group{Title: "Flattening the lips, after the grind", Figures: []def{
	{Key: "flatten", Label: "flatten the lips", Kind: quantity.Word, Word: (*Plan).flattens},
	{Key: "flat_low_mm", Label: "land along each, from", Kind: quantity.Length, Gauge: quantity.Caliper, Value: func(p *Plan) float64 { return p.flat().Low },
		Works: func(p *Plan) (work, source string) { return sheet.AsRead, p.flat().Source.String() }},
	{Key: "flat_high_mm", Label: "land along each, to", Kind: quantity.Length, Gauge: quantity.Caliper, Value: func(p *Plan) float64 { return p.flat().High },
		Works: func(p *Plan) (work, source string) { return sheet.AsRead, p.flat().Source.String() }},
	{Key: "lip_flat_after_mm", Label: "land that the grind leaves", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.made(p.flatAfter()) }, Work: "max(0, fl - max(T1o, T2o))"},
}}

// after is the drill when it is done; a table has it in the list of states.
var after = group{Title: "When it is done", Quiet: true, Figures: []def{
	{Key: "flute_after_mm", Label: "flute when done", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Done.Flute }, Work: "max(0, F - max(T1o, T2o))"},
	{Key: "length_after_mm", Label: "overall length when done", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Done.Length }, Work: "max(0, Lo - St)"},
	{Key: "point_length_after_mm", Label: "point length when done", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.made(p.pointLength()) },
		Works: func(p *Plan) (work, source string) {
			if p.Stock.Total == 0 {
				return "D / 2 / tan(k)", ""
			}
			return "D / 2 / tan(kt)", ""
		}},
	{Key: "web_after_mm", Letter: "wd", Label: "web when done", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Done.Web },
		Works: func(p *Plan) (work, source string) {
			if p.Done.Thinned {
				return "wt", ""
			}
			return "wg", ""
		}},
	{Key: "chisel_length_after_mm", Letter: "cd", Label: "chisel edge when done", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Done.Chisel }, Work: "wd / sin(pg)"},
	{Key: "chisel_ratio_after", Letter: "qd", Label: "chisel edge / D when done", Kind: quantity.Number,
		Value: func(p *Plan) float64 { return p.Done.Ratio }, Work: "cd / D"},
	{Key: "thrust_before_n", Label: "thrust now, were it sharp", Kind: quantity.Force, Value: func(p *Plan) float64 { return p.thrust(&p.Now) },
		Work: "(uB * Bn + uJ * qn^2) * Kd", Source: judge.ForceSource},
	{Key: "thrust_after_n", Label: "thrust when done", Kind: quantity.Force, Value: func(p *Plan) float64 { return p.thrust(&p.Done) },
		Work: "(uB * Bd + uJ * qd^2) * Kd", Source: judge.ForceSource},
	{Key: "thrust_ratio", Label: "thrust when done / now", Kind: quantity.Number, Value: func(p *Plan) float64 { return p.Body.ThrustRatio(&p.Done) },
		Work: "(uB * Bd + uJ * qd^2) / (uB * Bn + uJ * qn^2)", Source: judge.ForceSource},
}}

// life is how many grinds are left and what ends them.
var life = group{Title: "Life", Figures: []def{
	{Key: "usual_stock_mm", Letter: "U", Label: "usual stock per grind", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.Usual }, Works: usualWorks, Shop: func(p *Plan) bool { return p.EveryShop }},
	{Key: "flute_needed_mm", Letter: "Fn", Label: "flute needed", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(p *Plan) float64 { return p.made(p.Body.LeastFlute) }, Shop: func(p *Plan) bool { return p.Found.Limit(judge.FluteLimit).Source.OfShop() },
		Works: func(p *Plan) (work, source string) {
			source = p.Found.Limit(judge.FluteLimit).Source.String()
			if p.DepthTaken {
				return "room", source
			}
			return "depth + room", source
		}},
	{Key: "regrinds_left", Kind: quantity.Count, Value: func(p *Plan) float64 { return p.Left }, Works: leftWorks,
		LabelOf: func(p *Plan) string {
			if p.Waits {
				return "grinds at most"
			}
			return "grinds at most, with this"
		},
		OfWays: func(p *Plan) string { return p.wants(p.Found.Wear.Flute, "flute") }},
	{Key: "retire_reason", Kind: quantity.Word,
		LabelOf: func(p *Plan) string {
			if p.Do == Retire {
				return "retired for"
			}
			return "then retired for"
		},
		Word: func(p *Plan) string { return p.Reason }},
}}

// wants names the readings that a figure waits for, size among them; none for a drill
// with which nothing more is to be done.
func (p *Plan) wants(v float64, reading string) string {
	if p.Found.Wear.Cracked || p.Fault != nil {
		return ""
	}
	var names []string
	if !sheet.Known(p.Body.D) {
		names = append(names, "size")
	}
	if !sheet.Known(v) {
		names = append(names, reading)
	}
	return strings.Join(names, " and ")
}

func wantsSize(p *Plan) string { return p.wants(0, "") }

// made returns v where the plan was made, else NaN.
func (p *Plan) made(v float64) float64 {
	if p.Made {
		return v
	}
	return math.NaN()
}

// ifThinned returns v where the web is to be thinned, else NaN.
func (p *Plan) ifThinned(v float64) float64 {
	if p.Done.Thinned {
		return v
	}
	return math.NaN()
}

// thinned says whether a drill in that state is thinned, if that is known.
func thinned(s *State) string {
	switch {
	case !sheet.Known(s.Ratio):
		return ""
	case s.Thinned:
		return yes
	}
	return no
}

const yes, no = "yes", "no"

// flattens says whether the lips are to be flattened after this grind, "" where there is
// none or the work wants no land along them.
func (p *Plan) flattens() string {
	land, wanted := p.Found.FlatWanted()
	switch {
	case !wanted || p.Do != Regrind:
		return ""
	case p.flatAfter() >= land.Low:
		return no
	}
	return yes
}

// flat is the land that the lips are flattened to, of NaN where they are not.
func (p *Plan) flat() handbook.Band {
	land, _ := p.Found.FlatWanted()
	if p.flattens() != yes {
		land.Low, land.High = math.NaN(), math.NaN()
	}
	return land
}

// flatAfter is what the grind leaves of a land along the lips.
func (p *Plan) flatAfter() float64 { return math.Max(0, p.Found.Face.Flat-p.Loss.Corner) }

// thinOver is where the ratio comes from over which the web is thinned.
func (p *Plan) thinOver() *handbook.Source { return p.Found.Limit(judge.ChiselRatioLimit).Source }

func (p *Plan) unlessItWaits(formula string) (work, source string) {
	switch {
	case p.Do == Retire && p.Waits:
		return "0", rules.String() + ": the drill is not ground any more"
	case p.Waits:
		return "0", rules.String() + ": the grind can wait"
	}
	return formula, ""
}

func cleanUpWorks(p *Plan) (work, source string) {
	switch {
	case p.Would.CleanUp == 0:
		return "0", handbook.CleanUpSource.String()
	case p.CleanUpFrom == nil:
		return sheet.AsRead, "as given"
	}
	return sheet.AsRead, p.CleanUpFrom.String()
}

func usualWorks(p *Plan) (work, source string) {
	least := handbook.LeastUsualStockSource.String()
	switch {
	case p.EveryPast:
		return sheet.AsRead, "the drill's history: the mean of the grinds whose stock was noted"
	case p.EveryShop:
		return sheet.AsRead, p.Found.Drill.Book.Source.String()
	case sheet.Known(p.Every):
		return sheet.AsRead, "as given"
	case p.Would.Wear() == 0:
		return "us", least
	case p.mishap():
		return "max(Wu + cl, us)", handbook.MostUsualWearSource.String() + "; " + least
	}
	return "max(Wu + cl, us)", handbook.UsualStockSource.String() + "; " + least
}

// leftWorks counts the grinds in one line: the stock there is, less the next grind's,
// by the usual one.
func leftWorks(p *Plan) (work, source string) {
	spare := ""
	switch {
	case p.Found.Verdict.Word == judge.Retire:
		return "0", rules.String() + ": it is retired now"
	case p.End == NotCounted:
		return sheet.AsRead, rules.String() + ": counted no further"
	case p.End == FluteShort:
		spare = "F - Fn"
	case p.End == WebSpent:
		spare = "(mw * D - wb) / t"
	case p.End == DiameterLow:
		spare = "(D - Dl) / bt"
	}
	return "max(0, floor((" + spare + " - S1) / U + hair) + 1)", ""
}

// mishap reports whether there is wear that a usual grind is counted without, and
// would take more with.
func (p *Plan) mishap() bool {
	st := &p.Would
	return !sheet.Known(p.Every) && st.Wear() > p.Deepest && st.Wear()+st.CleanUp > p.Usual
}

// thrust returns the thrust of a sharp drill in that state, N; NaN where it or the
// work's factor is not known.
func (p *Plan) thrust(s *State) float64 {
	m, b := p.Found.Drill.Material, &p.Body
	if m == nil || !m.HasForce() {
		return math.NaN()
	}
	load := cutting.Load{D: b.D, Feed: b.Feed, Chisel: s.Ratio * b.D, KdThrust: m.KdThrust, KdTorque: m.KdTorque,
		Wear: 1, Efficiency: math.NaN(), Rpm: math.NaN(), System: b.System}
	return load.Result().Thrust
}

// pointLength is the point's length when it is done: its own, where nothing comes off.
func (p *Plan) pointLength() float64 {
	if p.Stock.Total == 0 {
		return p.Found.Point.Length
	}
	return point.Height(p.Body.D, 2*p.Lips.Target)
}
