package judge

import (
	"math"

	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// TaperOrigin says where the web taper came from.
type TaperOrigin uint8

// The origins.
const (
	TaperDefault TaperOrigin = iota
	TaperGiven
	TaperMeasured // from two webs of this drill
	TaperShop     // the shop's usual one
)

// Web is the web after a length is ground off, and what that does.
type Web struct {
	Taper       float64
	Origin      TaperOrigin
	TaperSource *handbook.Source // of the usual one
	Second, At  float64          // the second web and its distance, where measured
	Remove      float64
	Body        float64 // web behind the point: thicker than the one read where it is thinned
	BodyTaken   bool    // as on a new drill, for want of a history
	From        float64 // web that it grows from
	After       float64 // web
	ChiselAfter float64
	RatioAfter  float64
}

func webOf(dr *drill.Drill, r *Result) Web {
	w := Web{Remove: dr.Value(drill.Remove), Second: dr.Value(drill.SecondWeb), At: dr.Value(drill.SecondWebAt)}
	w.Taper, w.TaperSource = r.Drill.Book.WebTaper()
	if w.TaperSource.OfShop() {
		w.Origin = TaperShop
	}
	if t, ok := dr.Get(drill.WebTaper); ok {
		w.Taper, w.Origin = t, TaperGiven
	} else if t := point.WebTaper(r.Chisel.body(), w.Second, w.At); known(t) {
		w.Taper, w.Origin = t, TaperMeasured
	}
	w.Body = math.Max(r.Chisel.body(), dr.Past.Body)
	if handbook.ThinnedPoint(r.Drill.D, w.Body) && w.Origin != TaperMeasured {
		w.Body, w.BodyTaken = handbook.NewWeb(r.Drill.D), true
	}
	w.From = r.Chisel.Web
	if w.Remove > 0 {
		w.From = w.Body
	}
	w.After = point.WebAfter(w.From, w.Taper, w.Remove)
	w.ChiselAfter = point.ChiselLength(w.After, r.Chisel.Acute)
	w.RatioAfter = w.ChiselAfter / r.Drill.D
	return w
}

// ThrustRatio is the thrust after the grind over that before, at the same feed.
func (r *Result) ThrustRatio() float64 {
	return cutting.ThrustRatio(r.Drill.System, r.Drill.D, r.Drill.Feed, r.Web.RatioAfter, r.Chisel.Ratio)
}

// WebFigures defines the web after a length is ground off, and what that does.
var WebFigures = sheet.Group[Result]{Title: "Web after regrind", Figures: []sheet.Def[Result]{
	{Key: "web_taper", Letter: "t", Label: "web taper", Kind: quantity.Taper,
		Value: func(r *Result) float64 { return r.Web.Taper }, Works: taperWorks,
		Shop: func(r *Result) bool { return r.Web.Origin == TaperShop }},
	{Letter: "tl", Label: "usual web taper, least", Kind: quantity.Taper, Work: sheet.AsRead, Value: func(*Result) float64 { return handbook.WebTaperLow }},
	{Letter: "th", Label: "usual web taper, most", Kind: quantity.Taper, Work: sheet.AsRead, Value: func(*Result) float64 { return handbook.WebTaperHigh }},
	{Letter: "w2", Label: "second web", Kind: quantity.Length, Work: sheet.AsRead, Of: "second-web", Value: func(r *Result) float64 { return r.Web.Second }},
	{Letter: "z", Label: "distance of the second web", Kind: quantity.Length, Work: sheet.AsRead, Of: "second-web-at", Value: func(r *Result) float64 { return r.Web.At }},
	{Letter: "wr", Label: "web read behind the thinning", Kind: quantity.Length, Gauge: quantity.Caliper, Work: sheet.AsRead, Of: "web",
		Value: func(r *Result) float64 { return r.Chisel.Behind }},
	{Letter: "off", Label: "ground off", Kind: quantity.Length, Work: sheet.AsRead, Of: "remove", Value: func(r *Result) float64 { return r.Web.Remove }},
	{Letter: "wb", Label: "web behind the point", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Web.From }, Works: bodyWorks,
		OfWays: func(r *Result) string {
			if r.Chisel.Behind > 0 {
				return WantsChisel(r)
			}
			return "web"
		}},
	{Key: "web_after_mm", Letter: "wa", Label: "web after", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Web.After }, Work: "wb + t * off"},
	{Key: "chisel_length_after_mm", Letter: "ca", Label: "chisel edge after", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Web.ChiselAfter }, Work: "wa / sin(psi)"},
	{Key: "chisel_ratio_after", Letter: "qa", Label: "chisel edge after / D", Kind: quantity.Number,
		Value: func(r *Result) float64 { return r.Web.RatioAfter }, Limit: ChiselAfterLimit, Work: "ca / D"},
	{Key: "thrust_ratio", Label: "thrust, after / before", Kind: quantity.Number, Value: (*Result).ThrustRatio,
		Work: "(uB * Ba + uJ * qa^2) / (uB * Bb + uJ * q^2)", Source: ForceSource},
	{Letter: "Ba", Label: "factor B after", Kind: quantity.Number, Work: "(1 - qa) / (1 + qa)^0.2 + 2.2 * qa^0.8", Source: ForceSource,
		Value: func(r *Result) float64 { return cutting.FactorsOf(r.Web.RatioAfter).B }},
	{Letter: "Bb", Label: "factor B before", Kind: quantity.Number, Work: "(1 - q) / (1 + q)^0.2 + 2.2 * q^0.8", Source: ForceSource,
		Value: func(r *Result) float64 { return cutting.FactorsOf(r.Chisel.Ratio).B }},
}}

func taperWorks(r *Result) (work, source string) {
	switch w := &r.Web; w.Origin {
	case TaperMeasured:
		if r.Chisel.Behind > 0 {
			return "(w2 - wr) / z", ""
		}
		return "(w2 - w) / z", ""
	case TaperGiven:
		return sheet.AsRead, "as given"
	case TaperShop:
		return sheet.AsRead, w.TaperSource.String()
	default:
		return "(tl + th) / 2", w.TaperSource.String()
	}
}

// bodyWorks says what the web is that grows: the one at the point, unless that was
// thinned.
func bodyWorks(r *Result) (work, source string) {
	switch w := &r.Web; {
	case w.From == r.Chisel.Web || !known(w.From):
		return "w", ""
	case w.From == r.Chisel.Behind:
		return "wr", ""
	case w.BodyTaken:
		return sheet.AsRead, handbook.NewWebSource.String()
	}
	return sheet.AsRead, "the web before it was thinned"
}

// WebRemarks says in s what was taken for the web that a grind leaves.
func (r *Result) WebRemarks(s *sheet.Sheet) {
	w, c, b := &r.Web, &r.Chisel, &r.Drill
	if known(w.Remove) && w.Origin == TaperDefault {
		s.Find("web-taper-assumed", sheet.Note, "web taper taken as {} (common practice is {} to {}); two measured webs would give this drill's own",
			quantity.Of(quantity.Taper, w.Taper), quantity.Of(quantity.Taper, handbook.WebTaperLow), quantity.Of(quantity.Taper, handbook.WebTaperHigh))
	}
	r.TaperTaken(s)
	if w.From > c.Web {
		r.ThinnedBefore(s)
	}
	if ratio := c.Web / b.D; ratio > handbook.WebTableEnd && !r.Verdict.Reasons[WebSpent] {
		s.Find("web-past-table", sheet.Note, "the web is {} of the diameter, past {}, where the handbook's table ends: thin it; forces are extrapolated", quantity.Num(ratio), quantity.Num(handbook.WebTableEnd))
		s.Extra = append(s.Extra, handbook.TableEndSource)
	}
	if known(w.Remove, b.D) && w.Remove > 2*b.D {
		s.Find("stub-web", sheet.Note, "taking {} off leaves a thick web: drills made short (stub) are made with a thinner one, so thin the web after", quantity.MM(w.Remove))
	}
}

// ThinnedBefore says which web the point is taken to have had before it was
// thinned, from which the web after a grind is reckoned.
func (r *Result) ThinnedBefore(s *sheet.Sheet) {
	w := &r.Web
	if !w.BodyTaken {
		s.Find("thinned-before", sheet.Note, "the point is thinned: a grind takes the thinning off, down to the web of {} that it had before; measure it then", quantity.MM(w.Body))
		return
	}
	s.Find("thinned-taken", sheet.Warn, "a web of {} is too thin for a drill of this size unless its point was thinned: behind it a new drill's {} is taken; read the web behind the notch",
		quantity.MM(r.Chisel.Web), quantity.MM(w.Body))
	s.Extra = append(s.Extra, handbook.ThinnedPointSource, handbook.NewWebSource)
}

// ForceSource is where the shares of lips and chisel edge in the thrust come from.
const ForceSource = "read in print: Machinery's Handbook, 31st ed., pp. 1152-1153, with the closed forms of its Table 7"
