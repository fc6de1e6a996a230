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
	ThrustRatio float64 // thrust after over thrust before, same feed
	Limit       handbook.Band
}

func webOf(dr *drill.Drill, r *Result) Web {
	w := Web{Remove: dr.Value(drill.Remove), Second: dr.Value(drill.SecondWeb), At: dr.Value(drill.SecondWebAt)}
	w.Taper, w.TaperSource = r.Drill.Book.WebTaper()
	if w.TaperSource.OfShop() {
		w.Origin = TaperShop
	}
	if t, ok := dr.Get(drill.WebTaper); ok {
		w.Taper, w.Origin = t, TaperGiven
	} else if t := point.WebTaper(r.Chisel.Web, w.Second, w.At); known(t) {
		w.Taper, w.Origin = t, TaperMeasured
	}
	w.Body = math.Max(r.Chisel.Web, dr.Past.Body)
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
	w.ThrustRatio = cutting.ThrustRatio(r.Drill.D, r.Drill.Feed, w.RatioAfter, r.Chisel.Ratio)
	w.Limit = r.Chisel.RatioLimit
	return w
}

// WebSheet adds the figures of the web after regrinding to s.
func (r *Result) WebSheet(s *sheet.Sheet) {
	w, c, b := &r.Web, &r.Chisel, &r.Drill
	s.Open("Web after regrind")
	r.taperFigure(s)
	web := wants(on("web", c.Web), on("remove", w.Remove))
	s.Add(sheet.Figure{Key: "web_after_mm", Label: "web after", Value: w.After, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: web})
	s.Work(geometry, "w' = w + taper * removed", "{} + {} * {}", quantity.MM(w.From), quantity.Of(quantity.Taper, w.Taper), quantity.MM(w.Remove))
	chisel := join(wants(on("remove", w.Remove)), c.wants())
	s.Add(sheet.Figure{Key: "chisel_length_after_mm", Label: "chisel edge after", Value: w.ChiselAfter, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: chisel})
	s.Work(geometry, "c' = w' / sin(psi)", "{} / sin({})", quantity.MM(w.After), quantity.Rad(c.Acute))
	chisel = join(wants(on("size", b.D)), chisel)
	s.Add(sheet.Figure{Key: "chisel_ratio_after", Label: "chisel edge after / D", Value: w.RatioAfter, Kind: quantity.Number, Limit: limitIf(&w.Limit, b.D), Wants: chisel})
	s.Work(geometry, "q' = c' / D", "{} / {}", quantity.MM(w.ChiselAfter), quantity.MM(b.D))
	s.Add(sheet.Figure{Key: "thrust_ratio", Label: "thrust, after / before", Value: w.ThrustRatio, Kind: quantity.Number, Wants: chisel})
	WorkThrustRatio(s, b.D, b.Feed, w.RatioAfter, c.Ratio)
	if known(w.Remove) && w.Origin == TaperDefault {
		s.Find("web-taper-assumed", sheet.Note, "web taper taken as {} (common practice is {} to {}); two measured webs would give this drill's own",
			quantity.Of(quantity.Taper, w.Taper), quantity.Of(quantity.Taper, handbook.WebTaperLow), quantity.Of(quantity.Taper, handbook.WebTaperHigh))
	}
	r.TaperTaken(s)
	if w.From > c.Web {
		r.ThinnedBefore(s)
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
	s.Extra = append(s.Extra, handbook.ThinnedPointSource(), handbook.NewWebSource())
}

func (r *Result) taperFigure(s *sheet.Sheet) {
	w := &r.Web
	s.Add(sheet.Figure{Key: "web_taper", Label: "web taper", Value: w.Taper, Kind: quantity.Taper, Shop: w.Origin == TaperShop})
	switch w.Origin {
	case TaperMeasured:
		s.Work(geometry, "taper = (second web - web) / distance", "({} - {}) / {}", quantity.MM(w.Second), quantity.MM(r.Chisel.Web), quantity.MM(w.At))
	case TaperShop:
		s.Work(w.TaperSource.String(), "taper as the shop has set it", "{}", quantity.Of(quantity.Taper, w.Taper))
	case TaperGiven:
		s.Work("as given", "taper as given", "{}", quantity.Of(quantity.Taper, w.Taper))
	default:
		s.Work(w.TaperSource.String(), "taper = middle of the band", "({} + {}) / 2",
			quantity.Of(quantity.Taper, handbook.WebTaperLow), quantity.Of(quantity.Taper, handbook.WebTaperHigh))
	}
}

const forceSource = "read in print: Machinery's Handbook, 31st ed., pp. 1152-1153, with the closed forms of its Table 7"

// WorkThrustRatio leaves, with the figure added to s last, the working of T(q1)/T(q0): material, wear and the
// rest cancel, so only the brackets, the feed and the diameter remain.
func WorkThrustRatio(s *sheet.Sheet, d, feed, q1, q0 float64) {
	if !s.Explaining || !known(d, feed, q1, q0) {
		return
	}
	term := "(0.05 * {}^0.8 * {}^0.8 * {} + 0.007 * {}^2 * {})"
	f1, f0 := cutting.FactorsOf(q1), cutting.FactorsOf(q0)
	mm := func(v float64) quantity.Arg { return quantity.Of(quantity.Number, v) }
	s.Work(forceSource,
		"T'/T = (0.05 f^0.8 D^0.8 B' + 0.007 D^2 J') / (0.05 f^0.8 D^0.8 B + 0.007 D^2 J), f and D in mm, B = (1 - q)/(1 + q)^0.2 + 2.2 q^0.8, J = q^2",
		term+" / "+term, mm(feed), mm(d), mm(f1.B), mm(d), mm(f1.J), mm(feed), mm(d), mm(f0.B), mm(d), mm(f0.J))
}
