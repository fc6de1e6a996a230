package judge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Clearance is the lip clearance at the outer corner and what feed leaves of it.
type Clearance struct {
	Lip1, Lip2 float64
	Both       bool
	FromDrop   bool // computed from the heel drop
	// Drop1, Drop2 and Turn are the heel drop as read.
	Drop1, Drop2, Turn float64
	// Apart is how far the clearance read and the one the heel drop gives differ,
	// on the lip where they differ most; NaN where not both were taken.
	Apart          float64
	Flank1, Flank2 point.Flank
	FeedAngle      float64 // at the corner
	Working        float64 // at the corner, of the lip that has less
	Least          float64 // the least along the lip
	LeastAt        float64 // where, as r/R
	LeastLip       int     // and on which lip
	FeedLimit      float64 // mm/rev at which a flank rubs somewhere
	RubsAt         float64 // the radius, mm, where
	RubsLip        int     // and on which lip
	Along          bool    // the whole lip was looked at, not the corner only
	Aim            float64
	Recommended    handbook.Band
}

// Corner is the clearance at the corner of the lip that has less.
func (c *Clearance) Corner() float64 { return math.Min(c.Lip1, c.Lip2) }

// LesserTaken says that of two unlike clearances the lesser is reckoned with.
func (c *Clearance) LesserTaken(s *sheet.Sheet) {
	if known(c.Lip1, c.Lip2) && c.Lip1 != c.Lip2 {
		s.Find("lesser-clearance", sheet.Note, "the lips have {} and {} of clearance: the lesser is reckoned with", quantity.Rad(c.Lip1), quantity.Rad(c.Lip2))
	}
}

// apart is how far two ways of reading one clearance may differ before it is
// said: a heel that is not cut to one slope makes about this.
const apart = 2 * math.Pi / 180

// shortTurn is the turn up to which the heel drop of a cone point of usual
// proportions reads its corner's clearance to within about [apart].
const shortTurn = 10 * math.Pi / 180

func clearanceOf(dr *drill.Drill, r *Result) Clearance {
	b := &r.Drill
	c := Clearance{Apart: math.NaN(), Least: math.NaN(), LeastAt: math.NaN(), RubsAt: math.NaN(), Turn: dr.Value(drill.HeelTurn)}
	c.Lip1, c.Lip2, c.Both = pair(dr, drill.Clearance)
	var bothDrops bool
	c.Drop1, c.Drop2, bothDrops = pair(dr, drill.HeelDrop)
	d1, d2 := point.ClearanceOfDrop(c.Drop1, b.D, c.Turn), point.ClearanceOfDrop(c.Drop2, b.D, c.Turn)
	if known(c.Lip1) {
		c.Apart = math.Max(math.Abs(c.Lip1-d1), math.Abs(c.Lip2-d2))
	} else {
		c.Lip1, c.Lip2, c.Both, c.FromDrop = d1, d2, bothDrops, known(d1)
	}
	c.Flank1 = point.NewFlank(b.D, r.Chisel.Web, r.Point.K1, c.Lip1)
	c.Flank2 = point.NewFlank(b.D, r.Chisel.Web, r.Point.K2, c.Lip2)
	c.Aim, c.Recommended = Recommended(b.D, b.Material)
	c.FeedAngle = point.FeedAngle(b.Feed, b.D/2)
	c.Working = c.Corner() - c.FeedAngle
	c.FeedLimit = point.FeedLimit(b.D/2, c.Corner())
	return c
}

// alongLips looks at both lips from end to end, each with its own angle.
func (r *Result) alongLips() {
	c := &r.Clearance
	if !known(r.Drill.D, r.Chisel.Web, r.Point.Angle, c.Lip1) {
		return
	}
	c.Along = true
	inner, outer := lipEnds(r)
	for i, f := range [...]point.Flank{c.Flank1, c.Flank2} {
		at, least := f.LeastWorking(r.Drill.Feed, inner, outer)
		feed, rubs := f.FeedLimit(inner, outer)
		if i == 0 || least < c.Least {
			c.Least, c.LeastAt, c.LeastLip = least, at/outer, i+1
		}
		if i == 0 || feed < c.FeedLimit {
			c.FeedLimit, c.RubsAt, c.RubsLip = feed, rubs, i+1
		}
	}
}

// CornerClearance defines the lip clearance at the corners, as read or by the heel
// drop, and what is recommended.
var CornerClearance = sheet.Group[Result]{Title: "Lip clearance", Figures: []sheet.Def[Result]{
	{Key: "lip_clearance_1_deg", Letter: "C1", Label: "at the corner, lip 1", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Clearance.Lip1 }, Limit: Clearance1Limit, Of: clearanceWanted,
		Work: "atan(drop1 * 360 / (pi * D * turn))", Read: clearanceRead},
	{Key: "lip_clearance_2_deg", Letter: "C2", Label: "at the corner, lip 2", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Clearance.Lip2 }, Limit: Clearance2Limit, Of: clearanceWanted,
		Work: "atan(drop2 * 360 / (pi * D * turn))", Read: clearanceRead},
	{Key: "clearance_difference_deg", Label: "clearances differ by", Kind: quantity.Angle, Gauge: quantity.Protractor, Of: "clearance A,B (one for each lip)",
		Value: func(r *Result) float64 {
			if !r.Clearance.Both {
				return math.NaN()
			}
			return r.Clearance.Lip1 - r.Clearance.Lip2
		}, Limit: ClearanceDifferenceLimit, Work: "C1 - C2"},
	{Letter: "drop1", Label: "heel drop, lip 1", Kind: quantity.Length, Gauge: quantity.Indicator, Work: sheet.AsRead, Of: "heel-drop",
		Value: func(r *Result) float64 { return r.Clearance.Drop1 }},
	{Letter: "drop2", Label: "heel drop, lip 2", Kind: quantity.Length, Gauge: quantity.Indicator, Work: sheet.AsRead, Of: "heel-drop",
		Value: func(r *Result) float64 { return r.Clearance.Drop2 }},
	{Letter: "turn", Label: "turn of the heel drop", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: sheet.AsRead, Of: "heel-turn",
		Value: func(r *Result) float64 { return r.Clearance.Turn }},
	{Key: "recommended_low_deg", Label: "recommended, from", Kind: quantity.Angle, Gauge: quantity.Protractor, Of: "size",
		Value: func(r *Result) float64 { return r.Clearance.Recommended.Low }, Works: recommendedWorks,
		Shop: func(r *Result) bool { return r.Clearance.Recommended.Source.OfShop() }},
	{Key: "recommended_high_deg", Label: "recommended, to", Kind: quantity.Angle, Gauge: quantity.Protractor, Of: "size",
		Value: func(r *Result) float64 { return r.Clearance.Recommended.High }, Works: recommendedWorks,
		Shop: func(r *Result) bool { return r.Clearance.Recommended.Source.OfShop() }},
}}

// clearanceRead reports whether the clearance does not follow from the heel drop.
func clearanceRead(r *Result) bool { return !r.Clearance.FromDrop }

// What is missing of the clearance, and of what it is all along the lip.
const (
	clearanceWanted = "clearance, or heel-drop with heel-turn and size"
	alongWanted     = "clearance, web, lip-angle and size"
)

func recommendedWorks(r *Result) (work, source string) {
	return sheet.AsRead, r.Clearance.Recommended.Source.String()
}

// WorkingClearance defines what a feed leaves of the lip clearance.
var WorkingClearance = sheet.Group[Result]{Title: "Clearance left while cutting", Figures: []sheet.Def[Result]{
	{Key: "feed_angle_deg", Letter: "e", Label: "feed angle at the corner", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Clearance.FeedAngle }, Work: "atan(f / (pi * D))"},
	{Letter: "C", Label: "the lesser clearance", Kind: quantity.Angle, Gauge: quantity.Protractor, Of: clearanceWanted,
		Value: func(r *Result) float64 { return r.Clearance.Corner() }, Work: "min(C1, C2)"},
	{Key: "working_clearance_deg", Label: "working clearance, corner", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Clearance.Working }, Limit: WorkingLimit, Work: "C - e"},
	{Letter: "r", Label: "radius where it is least", Kind: quantity.Length, Work: sheet.AsRead, Source: "found along the lip",
		Value: (*Result).leastRadius},
	{Letter: "br", Label: "web angle there", Kind: quantity.Angle,
		Value: func(r *Result) float64 { return point.WebAngle(r.Chisel.Web, r.leastRadius()) },
		Works: func(r *Result) (work, source string) { return r.webAngleWorks(r.leastRadius(), "asin(w / (2 * r))") }},
	{Key: "least_working_clearance_deg", Label: "working clearance, least", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Clearance.Least }, Limit: LeastWorkingLimit, Of: alongWanted,
		Works: func(r *Result) (work, source string) {
			return ofLip(r.Clearance.LeastLip, "atan(g1 * cos(br) + sin(br) / tan(k1)) - atan(f / (2 * pi * r))", "atan(g2 * cos(br) + sin(br) / tan(k2)) - atan(f / (2 * pi * r))")
		}},
	{Key: "least_working_at_ratio", Label: "least at r/R", Kind: quantity.Number, Of: alongWanted,
		Value: func(r *Result) float64 { return r.Clearance.LeastAt }, Work: "r / (D / 2)"},
	{Letter: "rf", Label: "radius that rubs first", Kind: quantity.Length, Work: sheet.AsRead, Source: "found along the lip",
		Value: (*Result).rubsRadius},
	{Letter: "bf", Label: "web angle there", Kind: quantity.Angle,
		Value: func(r *Result) float64 { return point.WebAngle(r.Chisel.Web, r.rubsRadius()) },
		Works: func(r *Result) (work, source string) { return r.webAngleWorks(r.rubsRadius(), "asin(w / (2 * rf))") }},
	{Key: "feed_limit_mm", Label: "a flank rubs at a feed of", Kind: quantity.Feed, Value: func(r *Result) float64 { return r.Clearance.FeedLimit },
		Works: func(r *Result) (work, source string) {
			if r.Clearance.Along {
				return ofLip(r.Clearance.RubsLip, "max(0, 2 * pi * rf * (g1 * cos(bf) + sin(bf) / tan(k1)))", "max(0, 2 * pi * rf * (g2 * cos(bf) + sin(bf) / tan(k2)))")
			}
			return "max(0, pi * D * tan(C))", ""
		}},
}}

// FlankSlopes defines the slopes of the flanks along the lips: steps that other
// figures start from.
var FlankSlopes = sheet.Group[Result]{Figures: []sheet.Def[Result]{
	{Letter: "b", Label: "web angle at the corner", Kind: quantity.Angle, Work: "asin(w / D)",
		Value: func(r *Result) float64 { return point.WebAngle(r.Chisel.Web, r.Drill.D/2) }},
	{Letter: "g1", Label: "slope of flank 1 behind the lip", Kind: quantity.Number, Fine: true, Work: "(tan(C1) - sin(b) / tan(k1)) / cos(b)",
		Value: func(r *Result) float64 { return r.Clearance.Flank1.Slope() }},
	{Letter: "g2", Label: "slope of flank 2 behind the lip", Kind: quantity.Number, Fine: true, Work: "(tan(C2) - sin(b) / tan(k2)) / cos(b)",
		Value: func(r *Result) float64 { return r.Clearance.Flank2.Slope() }},
}}

// webAngleWorks is the formula of a web angle, but at the inner end of a lip that
// begins at the web's edge: there its digits would cancel away.
func (r *Result) webAngleWorks(radius float64, formula string) (work, source string) {
	if radius == r.Chisel.Web/2 {
		return "90", ""
	}
	return formula, ""
}

// ofLip is the formula of that lip.
func ofLip(lip int, one, two string) (work, source string) {
	if lip == 2 {
		return two, ""
	}
	return one, ""
}

// leastRadius is where the working clearance is least, mm, and rubsRadius where a
// flank rubs first.
func (r *Result) leastRadius() float64 { return r.onLip(r.Clearance.LeastAt * r.Drill.D / 2) }
func (r *Result) rubsRadius() float64  { return r.onLip(r.Clearance.RubsAt) }

// onLip is a radius, mm, that is off the edge of the web by more than a last digit or
// lies on it.
func (r *Result) onLip(radius float64) float64 {
	if edge := r.Chisel.Web / 2; radius <= edge*(1+rounding) {
		return edge
	}
	return radius
}

// ClearanceRemarks says in s what of the clearance is worth a word.
func (r *Result) ClearanceRemarks(s *sheet.Sheet) {
	c, b := &r.Clearance, &r.Drill
	b.FeedAssumption(s)
	if c.Corner() < c.Recommended.Low*(1-rounding) && !r.Verdict.Reasons[ClearanceLow] {
		s.Find("clearance-under-recommended", sheet.Note, "a lip has {} of clearance where {} to {} is recommended for the size and work: grind more the next time",
			quantity.Rad(c.Corner()), quantity.Rad(c.Recommended.Low), quantity.Rad(c.Recommended.High))
	}
	if most := math.Max(c.Lip1, c.Lip2); most > c.Recommended.High*(1+rounding) && !r.Verdict.Reasons[ClearanceHigh] {
		s.Find("clearance-over-recommended", sheet.Note, "a lip has {} of clearance where {} to {} is recommended for the size and work: grind less the next time",
			quantity.Rad(most), quantity.Rad(c.Recommended.Low), quantity.Rad(c.Recommended.High))
	}
	if c.FromDrop && c.Turn > shortTurn {
		s.Find("heel-turn-long", sheet.Note, "the heel drop was read over {}: the flank of a swung point falls ever faster behind the lip, so over more than about {} it reads more than the corner has; evenlip cone with the same heel-turn shows how much",
			quantity.Rad(c.Turn), quantity.Rad(shortTurn))
	}
	c.Contradiction(s)
}

// lipEnds returns the radii at which a lip begins and ends.
func lipEnds(r *Result) (inner, outer float64) {
	inner = r.Chisel.Length / 2
	if !known(inner) {
		inner = r.Chisel.Web / 2
	}
	if !known(inner) {
		inner = handbook.StandardChiselRatio * r.Drill.D / 2
	}
	return inner, r.Drill.D / 2
}

// Recommended returns the clearance at the corner to aim at and its band,
// radians, for a drill of diameter d mm and the work, which may be nil: the
// shop's where it has set one, else that of the table by size, up to what is
// published for the work where that is more. What is aimed at is also within what is
// published for the work over all sizes, where the two meet.
func Recommended(d float64, m *handbook.Material) (float64, handbook.Band) {
	if m == nil {
		return handbook.Clearance(d, handbook.General)
	}
	if band, set := m.ShopClearance(); set {
		return (band.Low + band.High) / 2, band
	}
	aim, band := handbook.Clearance(d, m.Relief)
	low, high := math.Max(band.Low, m.Clearance.Low), math.Min(band.High, m.Clearance.High)
	if low <= high {
		aim = math.Min(math.Max(aim, low), high)
	}
	if m.WorkClearance.High > band.High {
		band.High = m.WorkClearance.High
	}
	return aim, band
}

// AcceptedClearance returns the band that a drill in use may have, of the one
// recommended for it; a shop's own band is the limit itself.
func AcceptedClearance(d float64, recommended handbook.Band, m *handbook.Material) handbook.Band {
	if m != nil {
		if _, set := m.ShopClearance(); set {
			return recommended
		}
	}
	return handbook.AcceptedClearance(d, recommended, m)
}

// Steep returns the clearances of the lips that are to be ground to less: those that
// have too much, and the greater of two that are too unlike; NaN for a lip that is not.
func (r *Result) Steep() (lip1, lip2 float64) {
	c, unlike := &r.Clearance, r.Outside(ClearanceDifferenceLimit)
	lip1, lip2 = math.NaN(), math.NaN()
	if r.Held[Clearance1Limit].State().On(sheet.High) || unlike && c.Lip1 > c.Lip2 {
		lip1 = c.Lip1
	}
	if r.Held[Clearance2Limit].State().On(sheet.High) || unlike && c.Lip2 > c.Lip1 {
		lip2 = c.Lip2
	}
	return lip1, lip2
}
