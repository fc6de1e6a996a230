package judge

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

const lipWants = "lip-height, or lip-length A,B with lip-angle A,B and size"

// LipPlace defines where the lips lie, seen from the end: steps that other figures
// start from.
var LipPlace = sheet.Group[Result]{Figures: []sheet.Def[Result]{
	{Letter: "wl", Label: "web that the lips lie about", Kind: quantity.Length, Gauge: quantity.Caliper, Of: "size",
		Value: webOrNew, Works: func(r *Result) (work, source string) {
			if known(r.Chisel.Web) {
				return "w", ""
			}
			return sheet.AsRead, handbook.NewWebSource.String()
		}},
	{Letter: "X", Label: "the corner along the lip", Kind: quantity.Length, Fine: true, Value: func(r *Result) float64 { return r.Lips.Outer },
		Work: "sqrt(D^2 - wl^2) / 2"},
	{Letter: "c0", Label: "chisel edge that the lips begin at", Kind: quantity.Length, Value: func(r *Result) float64 { inner, _ := lipEnds(r); return 2 * inner },
		Works: func(r *Result) (work, source string) {
			switch {
			case known(r.Chisel.Length):
				return "c", ""
			case known(r.Chisel.Web):
				return "w", "for want of a chisel edge"
			}
			return "0.18 * D", "the handbook's standard chisel edge"
		}},
	{Letter: "x0", Label: "the inner end along the lip", Kind: quantity.Length, Fine: true, Value: func(r *Result) float64 { return r.Lips.Inner },
		Work: "sqrt(max(0, c0^2 - wl^2)) / 2"},
}}

// LipFigures defines how the lips stand to each other, and what that does.
var LipFigures = sheet.Group[Result]{Title: "Lip height", Figures: []sheet.Def[Result]{
	{Key: "lip_height_difference_mm", Letter: "dh", Label: "lip 1 higher than lip 2 by", Kind: quantity.Length, GaugeOf: lipGauge,
		Value: func(r *Result) float64 { return r.Lips.Height }, Limit: LipHeightLimit, Works: heightWorks, Of: lipWants},
	{Letter: "h1", Label: "indicator on lip 1", Kind: quantity.Length, Gauge: quantity.Indicator, Work: sheet.AsRead,
		Value: func(r *Result) float64 { return r.Lips.Indicated1 }},
	{Letter: "h2", Label: "indicator on lip 2", Kind: quantity.Length, Gauge: quantity.Indicator, Work: sheet.AsRead,
		Value: func(r *Result) float64 { return r.Lips.Indicated2 }},
	{Letter: "p1", Label: "length of lip 1", Kind: quantity.Length, Gauge: quantity.Caliper, Work: sheet.AsRead,
		Value: func(r *Result) float64 { return r.Lips.Read1 }},
	{Letter: "p2", Label: "length of lip 2", Kind: quantity.Length, Gauge: quantity.Caliper, Work: sheet.AsRead,
		Value: func(r *Result) float64 { return r.Lips.Read2 }},
	{Key: "lip_height_mid_lip_mm", Label: "lip 1 higher, mid lip, by", Kind: quantity.Length, GaugeOf: lipGauge,
		Value: func(r *Result) float64 { return r.Lips.MidLip }, Limit: MidLipLimit, Works: func(r *Result) (work, source string) {
			switch {
			case r.alike():
				return "dh", "one height all along lips of one angle"
			case r.Lips.TakenLevel:
				return "(X - x0) / 2 * (1 / tan(k1) - 1 / tan(k2))", sheet.Geometry + ", the corners taken level"
			}
			return "dh + (X - x0) / 2 * (1 / tan(k1) - 1 / tan(k2))", ""
		}},
	{Key: "high_lip", Label: "higher lip", Kind: quantity.Word, Word: func(r *Result) string { return r.Lips.highWord() }, Of: lipWants},
	{Key: "lip_length_difference_mm", Label: "lip length, 1 less 2", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Lips.Length }, Works: lengthWorks},
	{Letter: "uc", Label: "the part of that of unequal clearances", Kind: quantity.Length, Fine: true,
		Value: func(r *Result) float64 { return r.Lips.OfClearance },
		Works: func(r *Result) (work, source string) {
			if r.Lips.OfClearance == 0 {
				return sheet.AsRead, "none: the clearances are alike, or not both are known"
			}
			return "(g2 - g1) * w / (2 * (1 / tan(k1) + 1 / tan(k2)))", ""
		}},
	{Key: "point_offset_mm", Letter: "u", Label: "point off toward lip 1 by", Kind: quantity.Length, GaugeOf: lipGauge,
		Value: func(r *Result) float64 { return r.Lips.Offset }, Works: offsetWorks},
	{Key: "oversize_bound_mm", Label: "oversize from uneven lips", Kind: quantity.Length, GaugeOf: lipGauge, Value: (*Result).Oversize,
		Work:   "2 * max(abs(u), abs(dh) / (1 / tan(k1) + 1 / tan(k2)))",
		Source: sheet.Geometry + " (a bound: it holds when the point centres itself; held rigidly the hole is the drill's size)"},
	{Letter: "s0", Label: "lip 1's part of the feed at the inner end", Kind: quantity.Number, Value: func(r *Result) float64 { s := r.shareLine(); return s.A + s.B*s.Inner },
		Work: "1 / 2 + (dh + (X - x0) * (1 / tan(k1) - 1 / tan(k2))) / f", Fine: true},
	{Letter: "s1", Label: "lip 1's part of the feed at the corner", Kind: quantity.Number, Value: func(r *Result) float64 { s := r.shareLine(); return s.A + s.B*s.Outer },
		Work: "1 / 2 + dh / f", Fine: true},
	{Letter: "xn", Label: "where along the lip lip 1 takes none of it", Kind: quantity.Length, Value: func(r *Result) float64 { none, _ := r.shareLine().Ends(); return none },
		Work: "min(X, max(x0, x0 - s0 * (X - x0) / (s1 - s0)))", Fine: true},
	{Letter: "xa", Label: "where along the lip lip 1 takes all of it", Kind: quantity.Length, Value: func(r *Result) float64 { _, all := r.shareLine().Ends(); return all },
		Work: "min(X, max(x0, x0 + (1 - s0) * (X - x0) / (s1 - s0)))", Fine: true},
	{Key: "chip_share_1", Letter: "share", Label: "lip 1 takes of the metal", Kind: quantity.Share,
		Value: func(r *Result) float64 { share, _ := r.Shares(); return share }, Works: shareWorks},
	{Key: "chip_share_2", Label: "lip 2 takes of the metal", Kind: quantity.Share,
		Value: func(r *Result) float64 { _, share := r.Shares(); return share }, Work: "1 - share"},
	{Letter: "kt", Label: "both lips' angle when even", Kind: quantity.Angle, Gauge: quantity.Protractor, Value: (*Result).Target, Of: "lip-angle",
		Works: func(r *Result) (work, source string) {
			if r.Target() == r.Point.K() {
				return "(k1 + k2) / 2", ""
			}
			return sheet.AsRead, "half the point angle wanted"
		}},
	{Letter: "h0", Label: "the even lips' line on the axis, over lip 2's corner", Kind: quantity.Length, Fine: true, Value: func(r *Result) float64 { return r.Lips.Evened.Line.Height0 },
		Work: "min(dh + (X - x0) / tan(k1) + x0 / tan(kt), dh + X / tan(kt), (X - x0) / tan(k2) + x0 / tan(kt), X / tan(kt))"},
	{Key: "stock_1_inner_mm", Label: "even up, lip 1 at the web", Kind: quantity.Length, GaugeOf: lipGauge,
		Value: func(r *Result) float64 { return r.Lips.Evened.Stock1Inner },
		Work:  "dh + (X - x0) / tan(k1) - (h0 - x0 / tan(kt))"},
	{Key: "stock_1_outer_mm", Label: "lip 1, at the corner", Kind: quantity.Length, GaugeOf: lipGauge,
		Value: func(r *Result) float64 { return r.Lips.Evened.Stock1Outer },
		Work:  "dh - (h0 - X / tan(kt))"},
	{Key: "stock_2_inner_mm", Label: "lip 2, at the web", Kind: quantity.Length, GaugeOf: lipGauge,
		Value: func(r *Result) float64 { return r.Lips.Evened.Stock2Inner },
		Work:  "(X - x0) / tan(k2) - (h0 - x0 / tan(kt))"},
	{Key: "stock_2_outer_mm", Label: "lip 2, at the corner", Kind: quantity.Length, GaugeOf: lipGauge,
		Value: func(r *Result) float64 { return r.Lips.Evened.Stock2Outer },
		Work:  "X / tan(kt) - h0"},
}}

// alike reports whether the lips stand at one angle, as far as is known.
func (r *Result) alike() bool { return r.Point.K1 == r.Point.K2 || !known(r.Point.K1) }

// lipGauge is what the height difference was read with.
func lipGauge(r *Result) quantity.Gauge {
	if r.Lips.From == LipsFromLengths {
		return quantity.Caliper
	}
	return quantity.Indicator
}

func heightWorks(r *Result) (work, source string) {
	switch l := &r.Lips; {
	case l.From == LipsFromLengths:
		return "(u - uc) * (1 / tan(k1) + 1 / tan(k2)) + X * (1 / tan(k2) - 1 / tan(k1))", ""
	case known(l.Indicated2):
		return "h1 - h2", sheet.AsRead
	}
	return sheet.AsRead, sheet.AsRead
}

func offsetWorks(r *Result) (work, source string) {
	switch {
	case r.Lips.From == LipsFromLengths:
		return "(p2 * sin(k2) - p1 * sin(k1)) / 2", ""
	case r.alike():
		return "dh * tan(k1) / 2 + uc", ""
	}
	return "(dh - X * (1 / tan(k2) - 1 / tan(k1))) / (1 / tan(k1) + 1 / tan(k2)) + uc", ""
}

func lengthWorks(r *Result) (work, source string) {
	switch {
	case known(r.Lips.Read1):
		return "p1 - p2", sheet.AsRead
	case r.alike():
		return "-2 * u / sin(k1)", ""
	}
	return "(X - x0 - u) / sin(k1) - (X - x0 + u) / sin(k2)", ""
}

func shareWorks(r *Result) (work, source string) {
	switch s := r.shareLine(); {
	case r.alike() || !(math.Abs(s.B)*(s.Outer-s.Inner) >= 1e-12):
		return "max(0, min(1, (f / 2 + dh) / f))", ""
	case s.B > 0:
		return "2 / (X^2 - x0^2) * ((s0 - x0 * (s1 - s0) / (X - x0)) * (xa^2 - xn^2) / 2 + (s1 - s0) / (X - x0) * (xa^3 - xn^3) / 3 + (X^2 - xa^2) / 2)", ""
	}
	return "2 / (X^2 - x0^2) * ((s0 - x0 * (s1 - s0) / (X - x0)) * (xn^2 - xa^2) / 2 + (s1 - s0) / (X - x0) * (xn^3 - xa^3) / 3 + (xa^2 - x0^2) / 2)", ""
}

// Above lengthsOff, mm, lip lengths and the indicator contradict each other:
// more than a caliper on two short edges explains.
const lengthsOff = 0.1

func (r *Result) lipContradiction(s *sheet.Sheet) {
	l := &r.Lips
	if l.From == LipsIndicated && math.Abs(l.ByLengths-l.Height) > lengthsOff {
		s.Find("lip-contradiction", sheet.Warn, "the indicator has lip 1 higher by {}, the lip lengths and angles by {}: they contradict each other; the indicator is used, measure again",
			quantity.MM(l.Height), quantity.MM(l.ByLengths))
	}
}

// LipRemarks says in s what of the lips is worth a word.
func (r *Result) LipRemarks(s *sheet.Sheet) {
	_, planned := r.Evening()
	if planned && (r.Point.Asked || r.Target() != r.Point.K()) {
		s.Find("trued-to", sheet.Note, "both lips are evened up to {} to the axis", quantity.Set(r.Target()))
		if allowance, _ := r.Drill.Book.Allowance(); !r.Point.Asked && r.saved() > allowance {
			s.Find("mean-saves", sheet.Note, "evened up to their own mean, {}, {} less would come off: that wants a protractor", quantity.Set(r.Point.K()), quantity.MM(r.saved()))
		}
	}
	if planned && !known(r.Chisel.Web) && (s.Explaining || r.lipsRestOnWeb()) {
		s.Find("lip-web-assumed", sheet.Note, "no web was read: {} is taken for where the lips lie, as on a new drill", quantity.MM(webOrNew(r)))
	}
	if r.Lips.TakenLevel && r.Point.K1 != r.Point.K2 {
		s.Find("lips-taken-level", sheet.Note, "no lip height was read: the lips' corners are taken level")
	}
	r.lipContradiction(s)
	share1, share2 := r.Shares()
	if one := math.Max(share1, share2) > 0.999; one && !r.Drill.FeedAssumed {
		s.Find("one-lip-cuts", sheet.Warn, "at this feed {} cuts everything and the other rides along: it dulls early", quantity.Say(larger(share1, share2)))
	} else if one && !r.Outside(LipHeightLimit) && !r.Outside(MidLipLimit) {
		s.Find("one-lip-cuts", sheet.Warn, "at a usual feed, {}, {} cuts everything and the other rides along: it dulls early", quantity.Of(quantity.Feed, r.Drill.Feed), quantity.Say(larger(share1, share2)))
	}
	if close, source, quoted := handbook.CloseLipHeight(r.Drill.D); quoted && math.Abs(r.Lips.MidLip) > close && !r.Outside(LipHeightLimit) && !r.Outside(MidLipLimit) {
		s.Find("close-lip-height", sheet.Note, "some ask for {} at the most from 2 to 10 mm", quantity.MM(close))
		s.Extra = append(s.Extra, source)
	}
	if usual := handbook.UsualOversize(r.Drill.D); r.Oversize() > 0 && usual.High > 0 {
		s.Find("usual-oversize", sheet.Note, "besides what the lips do, drills of this size usually make the hole {} to {} over", quantity.MM(usual.Low), quantity.MM(usual.High))
		s.Extra = append(s.Extra, handbook.OversizeSource)
	}
	if limit, known := handbook.HoleOversize(r.Drill.D); known && r.Oversize() > limit.High {
		s.Find("hole-may-exceed", sheet.Note, "the hole may come out larger than drilling with jigs allows for this size, {} ({})", quantity.MM(limit.High), quantity.Say(limit.Source.Text))
	}
}

// lipsRestOnWeb reports whether where the lips begin and end makes a difference:
// to lips of one angle that is left as it is it makes none.
func (r *Result) lipsRestOnWeb() bool {
	p := &r.Point
	return p.K1 != p.K2 || r.Target() != p.K1
}

// uneven tells how uneven lips stand: at the corner where that breaks the
// limit, else half way along.
func uneven(r *Result) quantity.Text {
	l := &r.Lips
	if !r.Outside(LipHeightLimit) {
		return quantity.Sayf("the lips are {} apart half way along, though not at the corner: their angles differ, and one does the work", quantity.MM(math.Abs(l.MidLip)))
	}
	if l.Height*l.MidLip < 0 && r.Outside(MidLipLimit) {
		other := map[string]string{"lip 1": "lip 2", "lip 2": "lip 1"}[l.highWord()]
		return quantity.Sayf("{} stands {} higher at the corner, {} by {} half way along: their angles differ, and the hole comes out oversize",
			quantity.Say(l.highWord()), quantity.MM(math.Abs(l.Height)), quantity.Say(other), quantity.MM(math.Abs(l.MidLip)))
	}
	return quantity.Sayf("{} stands {} higher: the hole comes out oversize", quantity.Say(l.highWord()), quantity.MM(math.Abs(l.Height)))
}

// larger is the lip that takes the larger share.
func larger(share1, share2 float64) string {
	if share1 > share2 {
		return "lip 1"
	}
	return "lip 2"
}

func (l *Lips) highWord() string {
	if math.IsNaN(l.Height) {
		return ""
	}
	return [...]string{"even", "lip 1", "lip 2"}[l.High()]
}
