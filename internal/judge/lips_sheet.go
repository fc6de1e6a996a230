package judge

import (
	"math"

	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

const lipWants = "lip-height, or lip-length A,B with lip-angle A,B and size"

// LipsSheet adds the lip-height figures to s.
func (r *Result) LipsSheet(s *sheet.Sheet) {
	l, p := &r.Lips, &r.Point
	s.Open("Lip height")
	s.Add(sheet.Figure{Key: "lip_height_difference_mm", Label: "lip 1 higher than lip 2 by", Value: l.Height, Kind: quantity.Length,
		Gauge: l.gauge(), Limit: limitIf(&l.Limit, r.Drill.D), Wants: lipWants})
	r.workHeight(s)
	s.Add(sheet.Figure{Key: "lip_height_mid_lip_mm", Label: "lip 1 higher, mid lip, by", Value: l.MidLip, Kind: quantity.Length,
		Gauge: l.gauge(), Limit: limitIf(&l.Limit, r.Drill.D), Wants: lipMissing(l.Height, r.offsetNeeds()...)})
	r.workMidLip(s)
	s.Add(sheet.Figure{Key: "high_lip", Label: "higher lip", Word: l.highWord(), Value: math.NaN(), Kind: quantity.Word, Wants: lipWants})
	angle := lipMissing(l.Height, r.offsetNeeds()...)
	s.Add(sheet.Figure{Key: "lip_length_difference_mm", Label: "lip length, 1 less 2", Value: l.Length, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: angle})
	r.workLength(s)
	s.Add(sheet.Figure{Key: "point_offset_mm", Label: "point off toward lip 1 by", Value: l.Offset, Kind: quantity.Length, Gauge: l.gauge(), Wants: angle})
	r.workOffset(s)
	f := sheet.Figure{Key: "oversize_bound_mm", Label: "hole oversize, at most", Value: l.Oversize, Kind: quantity.Length, Gauge: l.gauge(), Wants: angle}
	s.Add(f)
	s.Work(geometry+" (a bound: it holds when the point centres itself; held rigidly the hole is the drill's size)",
		"bound = 2 * the larger of |u| and |dh| / (1 / tan(k1) + 1 / tan(k2))", "2 * max({}, {} / (1 / tan({}) + 1 / tan({})))",
		quantity.MM(math.Abs(l.Offset)), quantity.MM(math.Abs(l.Height)), quantity.Rad(p.K1), quantity.Rad(p.K2))
	r.shareFigures(s)
	r.planFigures(s)
	r.lipRemarks(s)
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

func (r *Result) lipRemarks(s *sheet.Sheet) {
	l := &r.Lips
	if l.Planned && !known(r.Chisel.Web) && (s.Explaining || r.lipsRestOnWeb()) {
		s.Find("lip-web-assumed", sheet.Note, "no web was read: {} is taken for where the lips lie, as on a new drill", quantity.MM(webOrNew(r)))
	}
	r.lipContradiction(s)
	if !r.Drill.FeedAssumed && math.Max(l.Share1, l.Share2) > 0.999 {
		s.Find("one-lip-cuts", sheet.Warn, "at this feed {} cuts everything and the other rides along: it dulls early", quantity.Say(l.cutting()))
	}
	if l.HasHole && l.Oversize > l.HoleLimit.High {
		s.Find("hole-may-exceed", sheet.Note, "the hole may come out larger than drilling with jigs allows for this size, {} ({})", quantity.MM(l.HoleLimit.High), quantity.Say(l.HoleLimit.Source.Text))
	}
}

// lipsRestOnWeb reports whether where the lips begin and end makes a difference:
// to lips of one angle that is left as it is it makes none.
func (r *Result) lipsRestOnWeb() bool {
	p := &r.Point
	return p.K1 != p.K2 || r.Lips.Target != p.K1
}

// uneven tells how uneven lips stand: at the corner where that breaks the
// limit, else half way along.
func (l *Lips) uneven() quantity.Text {
	if !outside(l.Height, l.Limit) {
		return quantity.Sayf("the lips are {} apart half way along, though not at the corner: their angles differ, and one does the work", quantity.MM(math.Abs(l.MidLip)))
	}
	if l.Height*l.MidLip < 0 && outside(l.MidLip, l.Limit) {
		other := map[string]string{"lip 1": "lip 2", "lip 2": "lip 1"}[l.highWord()]
		return quantity.Sayf("{} stands {} higher at the corner, {} by {} half way along: their angles differ, and the hole comes out oversize",
			quantity.Say(l.highWord()), quantity.MM(math.Abs(l.Height)), quantity.Say(other), quantity.MM(math.Abs(l.MidLip)))
	}
	return quantity.Sayf("{} stands {} higher: the hole comes out oversize", quantity.Say(l.highWord()), quantity.MM(math.Abs(l.Height)))
}

// cutting is the lip that takes the larger share.
func (l *Lips) cutting() string {
	if l.Share1 > l.Share2 {
		return "lip 1"
	}
	return "lip 2"
}

// offsetNeeds is what the point's offset hangs on besides the height: the size
// only where the lips differ in angle.
func (r *Result) offsetNeeds() []need {
	p := &r.Point
	needs := []need{on("lip-angle", p.Angle)}
	if known(p.Angle) && p.K1 != p.K2 {
		needs = append(needs, on("size", r.Drill.D))
	}
	return needs
}

// lipMissing names what is wanted: first of all the height difference, and only
// once that is known the rest.
func lipMissing(height float64, rest ...need) string {
	if math.IsNaN(height) {
		return lipWants
	}
	return wants(rest...)
}

// gauge is what the height difference was read with.
func (l *Lips) gauge() quantity.Gauge {
	if l.From == LipsFromLengths {
		return quantity.Caliper
	}
	return quantity.Indicator
}

func (l *Lips) highWord() string {
	if math.IsNaN(l.Height) {
		return ""
	}
	return [...]string{"even", "lip 1", "lip 2"}[l.High()]
}

func (r *Result) workLength(s *sheet.Sheet) {
	l, p := &r.Lips, &r.Point
	if known(l.Read1) {
		s.Work("as read", "difference = lip 1 - lip 2", "{} - {}", quantity.MM(l.Read1), quantity.MM(l.Read2))
		return
	}
	if p.K1 == p.K2 {
		s.Work(geometry, "difference = -2 u / sin(k)", "-2 * {} / sin({})", quantity.MM(l.Offset), quantity.Rad(p.K1))
		return
	}
	s.Work(geometry, "difference = (p - u) / sin(k1) - (p + u) / sin(k2), p = the lip's mean length seen from the end",
		"({} - {}) / sin({}) - ({} + {}) / sin({})", quantity.MM(l.Outer-l.Inner), quantity.MM(l.Offset), quantity.Rad(p.K1),
		quantity.MM(l.Outer-l.Inner), quantity.MM(l.Offset), quantity.Rad(p.K2))
}

func (r *Result) workHeight(s *sheet.Sheet) {
	l, p := &r.Lips, &r.Point
	if l.From == LipsIndicated {
		s.Work("as read", "dh = lip 1 - lip 2", "{}", quantity.MM(l.Height))
		return
	}
	s.Work(geometry, "dh = u (1 / tan(k1) + 1 / tan(k2)) + x (1 / tan(k2) - 1 / tan(k1)), x = the corner along the lip",
		"{} * (1 / tan({}) + 1 / tan({})) + {} * (1 / tan({}) - 1 / tan({}))",
		quantity.MM(l.Offset), quantity.Rad(p.K1), quantity.Rad(p.K2), quantity.MM(l.Outer), quantity.Rad(p.K2), quantity.Rad(p.K1))
}

func (r *Result) workOffset(s *sheet.Sheet) {
	l, p := &r.Lips, &r.Point
	if l.From == LipsFromLengths {
		s.Work(geometry, "u = (lip 2 * sin(k2) - lip 1 * sin(k1)) / 2", "({} * sin({}) - {} * sin({})) / 2",
			quantity.MM(l.Read2), quantity.Rad(p.K2), quantity.MM(l.Read1), quantity.Rad(p.K1))
		return
	}
	WorkOffset(s, l.Height, l.Outer, p.K1, p.K2)
}

// WorkOffset leaves, with the figure added to s last, how the point's offset
// follows from the corners' height difference dh, the corner's place outer along
// the lip, mm, and the half angles, radians. Source: derived from the point's
// geometry.
func WorkOffset(s *sheet.Sheet, dh, outer, k1, k2 float64) {
	if k1 == k2 {
		s.Work(geometry, "u = dh tan(k) / 2", "{} * tan({}) / 2", quantity.MM(dh), quantity.Rad(k1))
		return
	}
	s.Work(geometry, "u = (dh - x (1 / tan(k2) - 1 / tan(k1))) / (1 / tan(k1) + 1 / tan(k2)), x = the corner along the lip",
		"({} - {} * (1 / tan({}) - 1 / tan({}))) / (1 / tan({}) + 1 / tan({}))",
		quantity.MM(dh), quantity.MM(outer), quantity.Rad(k2), quantity.Rad(k1), quantity.Rad(k1), quantity.Rad(k2))
}

func (r *Result) shareFigures(s *sheet.Sheet) {
	l := &r.Lips
	size := 0.0 // the shares hang on it only where the lips differ in angle
	if known(r.Point.Angle) && r.Point.K1 != r.Point.K2 {
		size = r.Drill.D
	}
	needs := lipMissing(l.Height, on("feed", r.Drill.Feed), on("size", size))
	s.Add(sheet.Figure{Key: "chip_share_1", Label: "lip 1 cuts of the chip", Value: l.Share1, Kind: quantity.Share, Wants: needs})
	r.workShare(s)
	s.Add(sheet.Figure{Key: "chip_share_2", Label: "lip 2 cuts of the chip", Value: l.Share2, Kind: quantity.Share, Wants: needs})
	s.Work(geometry, "the rest", "100 - {}", quantity.Of(quantity.Share, l.Share1))
}

func (r *Result) workShare(s *sheet.Sheet) {
	l, f := &r.Lips, r.Drill.Feed
	from, to := point.HeightDifference(l.Line1, l.Line2, l.Inner), point.HeightDifference(l.Line1, l.Line2, l.Outer)
	if r.Point.K1 == r.Point.K2 || !known(from, to) || math.Abs(to-from) < 1e-9*f {
		s.Work(geometry, "share = (f / 2 + dh) / f, from 0 to 1", "100 * max(0, min(1, ({} / 2 + {}) / {}))", quantity.Of(quantity.Feed, f), quantity.MM(l.Height), quantity.Of(quantity.Feed, f))
		return
	}
	inner, outer := quantity.Num(0.5+from/f), quantity.Num(0.5+to/f)
	s.Work(geometry, "share = mean over the lip of s = 1/2 + dh / f, from 0 to 1; s in a straight line from the inner end to the corner",
		"100 * (max(0, {})^2 - max(0, {} - 1)^2 - max(0, {})^2 + max(0, {} - 1)^2) / (2 * ({} - {}))", outer, outer, inner, inner, outer, inner)
}

func (r *Result) workMidLip(s *sheet.Sheet) {
	l, p := &r.Lips, &r.Point
	if p.K1 == p.K2 || !known(p.K1) {
		s.Work(geometry, "one height all along lips of one angle", "{}", quantity.MM(l.Height))
		return
	}
	s.Work(geometry, "dh(x) = dh + (X - x) (1 / tan(k1) - 1 / tan(k2)), X the corner along the lip, x half way", "{} + ({} - {}) * (1 / tan({}) - 1 / tan({}))",
		quantity.MM(l.Height), quantity.MM(l.Outer), quantity.MM((l.Inner+l.Outer)/2), quantity.Rad(p.K1), quantity.Rad(p.K2))
}

func (r *Result) planFigures(s *sheet.Sheet) {
	l := &r.Lips
	needs := lipMissing(l.Height, on("size", r.Drill.D), on("lip-angle", r.Point.Angle))
	for _, e := range [...]struct {
		key, label string
		lip        int
		outer      bool
		stock      float64
	}{
		{"stock_1_inner_mm", "even up: lip 1, inner end", 1, false, l.Plan.Stock1Inner},
		{"stock_1_outer_mm", "lip 1, outer end", 1, true, l.Plan.Stock1Outer},
		{"stock_2_inner_mm", "lip 2, inner end", 2, false, l.Plan.Stock2Inner},
		{"stock_2_outer_mm", "lip 2, outer end", 2, true, l.Plan.Stock2Outer},
	} {
		v := math.NaN()
		if l.Planned {
			v = e.stock
		}
		s.Add(sheet.Figure{Key: e.key, Label: e.label, Value: v, Kind: quantity.Length, Gauge: l.gauge(), Wants: needs})
		r.workStock(s, e.lip, e.outer)
	}
	if l.Planned && (r.Point.Asked || l.Target != r.Point.K()) {
		s.Find("trued-to", sheet.Note, "both lips are evened up to {} to the axis", quantity.Set(l.Target))
	}
}

// workStock shows the stock at one end of one lip: its height there less the
// height of the common line, all heights above lip 2's outer corner.
func (r *Result) workStock(s *sheet.Sheet, lip int, outer bool) {
	if !s.Explaining || !r.Lips.Planned {
		return
	}
	l := &r.Lips
	at, k, height := l.Inner, r.Point.K1, l.Height
	if outer {
		at = l.Outer
	}
	if lip == 2 {
		k, height = r.Point.K2, 0
	}
	s.Work(geometry, "stock = h + (X - x) / tan(k) - (h0 - x / tan(kt)), h the corner and h0 the common line at the axis, above lip 2's corner; X the corner along the lip",
		"{} + ({} - {}) / tan({}) - ({} - {} / tan({}))", quantity.MM(height), quantity.MM(l.Outer), quantity.MM(at), quantity.Rad(k),
		quantity.MM(l.Plan.Line.Height0), quantity.MM(at), quantity.Rad(l.Target))
}
