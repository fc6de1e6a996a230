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
	Apart       float64
	FeedAngle   float64 // at the corner
	Working     float64 // at the corner, of the lip that has less
	Least       float64 // the least along the lip
	LeastAt     float64 // where, as r/R
	FeedLimit   float64 // mm/rev at which a flank rubs somewhere
	Along       bool    // the whole lip was looked at, not the corner only
	Aim         float64
	Recommended handbook.Band
	Limit       handbook.Band // outside it a lip has to be ground
}

// Corner is the clearance at the corner of the lip that has less.
func (c *Clearance) Corner() float64 { return math.Min(c.Lip1, c.Lip2) }

// High reports whether a lip of that clearance has too much.
func (c *Clearance) High(lip float64) bool { return lip > over(c.Limit) }

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
	c := Clearance{Apart: math.NaN(), Least: math.NaN(), LeastAt: math.NaN(), Turn: dr.Value(drill.HeelTurn)}
	c.Lip1, c.Lip2, c.Both = pair(dr, drill.Clearance)
	var bothDrops bool
	c.Drop1, c.Drop2, bothDrops = pair(dr, drill.HeelDrop)
	d1, d2 := point.ClearanceOfDrop(c.Drop1, b.D, c.Turn), point.ClearanceOfDrop(c.Drop2, b.D, c.Turn)
	if known(c.Lip1) {
		c.Apart = math.Max(math.Abs(c.Lip1-d1), math.Abs(c.Lip2-d2))
	} else {
		c.Lip1, c.Lip2, c.Both, c.FromDrop = d1, d2, bothDrops, known(d1)
	}
	c.Aim, c.Recommended = Recommended(b.D, b.Material)
	c.Limit = AcceptedClearance(c.Recommended, b.Material)
	c.FeedAngle = point.FeedAngle(b.Feed, b.D/2)
	c.Working = c.Corner() - c.FeedAngle
	c.FeedLimit = point.FeedLimit(b.D/2, c.Corner())
	if known(b.D, r.Chisel.Web, r.Point.Angle, c.Lip1) {
		c.alongLip(r)
	}
	return c
}

func (c *Clearance) alongLip(r *Result) {
	f := point.NewFlank(r.Drill.D, r.Chisel.Web, r.Point.K(), c.Corner())
	inner, outer := lipEnds(r)
	at, least := f.LeastWorking(r.Drill.Feed, inner, outer)
	c.Least, c.LeastAt = least, at/outer
	c.FeedLimit, _ = f.FeedLimit(inner, outer)
	c.Along = true
}

// Recommended returns the clearance at the corner to aim at and its band,
// radians, for a drill of diameter d mm and the work, which may be nil: the
// shop's where it has set one, else that of the table by size. What is aimed at is
// also within what is published for the work over all sizes, where the two meet.
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
	return aim, band
}

// AcceptedClearance returns the band that a drill in use may have, of the one
// recommended for it; a shop's own band is the limit itself.
func AcceptedClearance(recommended handbook.Band, m *handbook.Material) handbook.Band {
	if m != nil {
		if _, set := m.ShopClearance(); set {
			return recommended
		}
	}
	return handbook.AcceptedClearance(recommended)
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

// ClearanceSheet adds the lip clearance's figures to s.
func (r *Result) ClearanceSheet(s *sheet.Sheet) {
	c, b := &r.Clearance, &r.Drill
	s.Open("Lip clearance")
	limit := limitIf(&c.Limit, b.D)
	r.lipClearance(s, "lip_clearance_1_deg", "at the corner, lip 1", c.Lip1, c.Drop1, limit)
	r.lipClearance(s, "lip_clearance_2_deg", "at the corner, lip 2", c.Lip2, c.Drop2, limit)
	r.recommendedFigures(s)
	r.workingFigures(s)
	b.FeedAssumption(s)
	if c.Corner() < under(c.Recommended) && !ClearanceLow.holds(r) {
		s.Find("clearance-under-recommended", sheet.Note, "a lip has {} of clearance where {} to {} is recommended for the size and work: grind more the next time",
			quantity.Rad(c.Corner()), quantity.Rad(c.Recommended.Low), quantity.Rad(c.Recommended.High))
	}
	if c.FromDrop && c.Turn > shortTurn {
		s.Find("heel-turn-long", sheet.Note, "the heel drop was read over {}: the flank of a swung point falls ever faster behind the lip, so over more than about {} it reads more than the corner has; evenlip cone with the same heel-turn shows how much",
			quantity.Rad(c.Turn), quantity.Rad(shortTurn))
	}
	c.Contradiction(s)
}

func (r *Result) recommendedFigures(s *sheet.Sheet) {
	limit := &r.Clearance.Recommended
	for _, e := range [...]struct {
		key, label string
		value      float64
	}{
		{"recommended_low_deg", "recommended, from", limit.Low}, {"recommended_high_deg", "recommended, to", limit.High},
	} {
		s.Add(sheet.Figure{Key: e.key, Label: e.label, Value: e.value, Kind: quantity.Angle, Gauge: quantity.Protractor, Wants: "size", Shop: limit.Source.OfShop()})
		if !s.Explaining {
			continue // the source's words are for the working alone
		}
		s.Work(limit.Source.String(), limit.Source.How("from the table, by size and work"), "{}", quantity.Rad(e.value))
	}
}

// WorkingSheet adds what a feed leaves of the lip clearance to s.
func (r *Result) WorkingSheet(s *sheet.Sheet) {
	s.Open("Clearance left while cutting")
	r.workingFigures(s)
}

func (r *Result) workingFigures(s *sheet.Sheet) {
	c, b := &r.Clearance, &r.Drill
	needs := c.wants(on("size", b.D))
	s.Add(sheet.Figure{Key: "feed_angle_deg", Label: "feed angle at the corner", Value: c.FeedAngle, Kind: quantity.Angle, Gauge: quantity.Protractor, Wants: "size"})
	s.Work(geometry, "e = atan(f / (pi D))", "atan({} / (pi * {}))", quantity.Of(quantity.Feed, b.Feed), quantity.MM(b.D))
	s.Add(sheet.Figure{Key: "working_clearance_deg", Label: "working clearance, corner", Value: c.Working, Kind: quantity.Angle,
		Gauge: quantity.Protractor, Limit: &positive, Wants: needs})
	s.Work(geometry, "Cl_w = Cl - e", "{} - {}", quantity.Rad(c.Corner()), quantity.Rad(c.FeedAngle))
	r.alongFigures(s, needs)
}

// wants names what is wanted: the clearance first, then the rest.
func (c *Clearance) wants(rest ...need) string {
	if !known(c.Lip1) {
		return "clearance, or heel-drop with heel-turn and size"
	}
	return wants(rest...)
}

func (r *Result) lipClearance(s *sheet.Sheet, key, label string, v, drop float64, limit *handbook.Band) {
	c := &r.Clearance
	s.Add(sheet.Figure{Key: key, Label: label, Value: v, Kind: quantity.Angle, Gauge: quantity.Protractor, Limit: limit,
		Wants: c.wants()})
	if !c.FromDrop {
		s.Work("as read", "Cl as read", "{}", quantity.Rad(v))
		return
	}
	c.WorkDrop(s, drop, r.Drill.D)
}

// WorkDrop leaves, with the figure added to s last, how the clearance follows
// from the heel drop, on a drill of diameter d, both mm.
func (c *Clearance) WorkDrop(s *sheet.Sheet, drop, d float64) {
	s.Work(geometry, "Cl = atan(drop * 360 / (pi D * turn))", "atan({} * 360 / (pi * {} * {}))",
		quantity.Arg{Kind: quantity.Length, Gauge: quantity.Indicator, Value: drop}, quantity.MM(d), quantity.Rad(c.Turn))
}

func (r *Result) alongFigures(s *sheet.Sheet, needs string) {
	c, b := &r.Clearance, &r.Drill
	along := c.wants(on("size", b.D), on("web", r.Chisel.Web), on("lip-angle", r.Point.Angle))
	s.Add(sheet.Figure{Key: "least_working_clearance_deg", Label: "working clearance, least", Value: c.Least, Kind: quantity.Angle,
		Gauge: quantity.Protractor, Limit: &positive, Wants: along})
	f := point.NewFlank(b.D, r.Chisel.Web, r.Point.K(), c.Corner())
	rad := math.Max(c.LeastAt*b.D/2, r.Chisel.Web/2) // not inside the lip by a last digit
	beta := point.WebAngle(r.Chisel.Web, rad)
	s.Work(geometry, "Cl_w = atan(g cos(b) + sin(b) / tan(k)) - atan(f / (2 pi r)), sin(b) = w / (2 r)",
		"atan({} * cos({}) + sin({}) / tan({})) - atan({} / (2 * pi * {}))", quantity.Num(f.Slope()), quantity.Rad(beta), quantity.Rad(beta),
		quantity.Rad(r.Point.K()), quantity.Of(quantity.Feed, b.Feed), quantity.MM(rad))
	s.Add(sheet.Figure{Key: "least_working_at_ratio", Label: "least at r/R", Value: c.LeastAt, Kind: quantity.Number, Wants: along})
	s.Work(geometry, "r / (D / 2), r where the least was found", "{} / ({} / 2)", quantity.MM(rad), quantity.MM(b.D))
	label := "corner rubs at a feed of"
	if c.Along {
		label = "a flank rubs at a feed of"
	}
	s.Add(sheet.Figure{Key: "feed_limit_mm", Label: label, Value: c.FeedLimit, Kind: quantity.Feed, Wants: needs})
	if !c.Along {
		s.Work(geometry, "f = pi D tan(Cl), not under 0", "max(0, pi * {} * tan({}))", quantity.MM(b.D), quantity.Rad(c.Corner()))
		return
	}
	inner, outer := lipEnds(r)
	_, at := f.FeedLimit(inner, outer)
	s.Work(geometry, "f = 2 pi r tan(Cl(r)), least along the lip, not under 0", "max(0, 2 * pi * {} * tan({}))", quantity.MM(at), quantity.Rad(f.Clearance(at)))
}

// positive is the bound of a clearance that does not rub.
var positive = handbook.Band{Low: 0, High: math.Inf(1), Source: &handbook.Source{Label: handbook.Derived, Text: "a flank without clearance rubs"}}
