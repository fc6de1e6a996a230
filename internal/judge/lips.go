package judge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/point"
)

// LipsFrom says what the lip-height difference was got from.
type LipsFrom uint8

// The origins.
const (
	LipsUnknown LipsFrom = iota
	LipsIndicated
	LipsFromLengths
)

// Lips is how the two lips stand to each other, at the outer corner.
type Lips struct {
	From         LipsFrom
	Height       float64 // lip 1 minus lip 2, axial
	MidLip       float64 // the same half way along the lip
	Line1, Line2 point.Lip
	Length       float64 // true lip lengths, 1 minus 2
	Read1, Read2 float64 // the lip lengths as read, NaN where they were not
	// Indicated1 and 2 are the indicator on each lip, NaN where their difference alone
	// was read.
	Indicated1, Indicated2 float64
	Offset                 float64 // the chisel's middle off the axis, along the lips, positive toward lip 1
	OfClearance            float64 // the part of Offset that unequal clearances make
	// TakenLevel says that no height was read, and the lips are taken level at the
	// corner for the height half way along.
	TakenLevel bool
	// ByLengths is the height difference that lip lengths and angles give; where
	// the indicator gave one too, the two can be compared.
	ByLengths    float64
	Inner, Outer float64          // the lip's ends, along the lip in the end view
	Evened       point.TruingPlan // what makes the lips even, all NaN where there is no telling
}

// even is the height difference, mm, under which lips count as even: less than
// an indicator in the shop shows.
const even = 0.0005

// High returns the higher lip, 0 when they are even.
func (l *Lips) High() int {
	switch {
	case l.Height > even:
		return 1
	case l.Height < -even:
		return 2
	}
	return 0
}

func lipsOf(dr *drill.Drill, r *Result) Lips {
	nan := math.NaN()
	l := Lips{Height: nan, ByLengths: nan, Read1: nan, Read2: nan, Indicated1: nan, Indicated2: nan}
	l.Inner, l.Outer = alongLip(r)
	p := &r.Point
	l.OfClearance = ofClearance(r)
	if a, b, both := pair(dr, drill.LipLength); both {
		l.Read1, l.Read2 = a, b
		l.ByLengths = l.heightOfLengths(r)
	}
	l.height(dr)
	l.Offset = point.OffsetOfCorners(l.Height, l.Outer, p.K1, p.K2) + l.OfClearance
	l.Length = l.Read1 - l.Read2
	if !known(l.Length) {
		l.Length = lengthDifference(&l, p)
	}
	l.TakenLevel = !known(l.Height) && p.Both
	l.lines(p)
	l.MidLip = point.HeightDifference(l.Line1, l.Line2, (l.Inner+l.Outer)/2)
	if p.K1 == p.K2 || !known(p.K1) { // one height all along the lip
		l.MidLip = l.Height
	}
	return l
}

// lengthDifference is the lengths of the lips, 1 less 2, as the offset makes them.
func lengthDifference(l *Lips, p *Point) float64 {
	return point.LengthDifference(l.Offset, l.Outer-l.Inner, p.K1, p.K2)
}

// ofClearance is how far unequal clearances put the chisel edge off the axis: zero
// where not both were read, or where they are not known to lie on one drill.
func ofClearance(r *Result) float64 {
	f1, f2 := r.Clearance.Flank1, r.Clearance.Flank2
	u := point.OffsetOfSlopes(f1.Slope(), f2.Slope(), r.Chisel.Web, r.Point.K1, r.Point.K2)
	if !r.Clearance.Both || !known(u) {
		return 0
	}
	return u
}

// lines lays each lip's line through its outer corner, lip 2's at height 0.
func (l *Lips) lines(p *Point) {
	height := l.Height
	if l.TakenLevel {
		height = 0
	}
	l.Line1 = point.LipThrough(l.Outer, height, p.K1)
	l.Line2 = point.LipThrough(l.Outer, 0, p.K2)
}

// height takes the indicator's word, else that of the lip lengths.
func (l *Lips) height(dr *drill.Drill) {
	a, b, n := dr.Pair(drill.LipHeight)
	switch {
	case n == 1:
		l.From, l.Height = LipsIndicated, a
	case n == 2:
		l.From, l.Height, l.Indicated1, l.Indicated2 = LipsIndicated, a-b, a, b
	case known(l.ByLengths):
		l.From, l.Height = LipsFromLengths, l.ByLengths
	}
}

// heightOfLengths is the height difference that the lip lengths tell, once the part
// of the offset that the clearances make is taken off.
func (l *Lips) heightOfLengths(r *Result) float64 {
	p := &r.Point
	if !known(p.Angle, r.Drill.D) {
		return math.NaN()
	}
	uneven, err := point.LipsFromLengths(l.Read1, l.Read2, p.K1, p.K2, r.Drill.D, webOrNew(r))
	if err != nil {
		return math.NaN()
	}
	return point.HeightOfOffset(uneven.Offset-l.OfClearance, l.Outer, p.K1, p.K2)
}

// webOrNew returns the web, or a new drill's where none was read: the lips'
// place depends on it only to the second order.
func webOrNew(r *Result) float64 {
	if known(r.Chisel.Web) {
		return r.Chisel.Web
	}
	return handbook.NewWeb(r.Drill.D)
}

// alongLip returns where a lip begins and ends, measured along it from the axis
// in the end view.
func alongLip(r *Result) (inner, outer float64) {
	from, to := lipEnds(r)
	web := webOrNew(r)
	inner = point.AlongLip(from, web)
	if !known(inner) { // a chisel too short for its web: the lip reaches the axis
		inner = 0
	}
	return inner, point.AlongLip(to, web)
}

// Oversize is the bound on how far over its size a hole comes out for the lips.
func (r *Result) Oversize() float64 {
	return point.OversizeOfLips(r.Lips.Offset, r.Lips.Height, r.Point.K1, r.Point.K2)
}

// Shares are the parts of the metal removed that the lips take at the feed.
func (r *Result) Shares() (share1, share2 float64) {
	l, f := &r.Lips, r.Drill.Feed
	switch {
	case !known(l.Height):
		share1 = math.NaN()
	case r.alike(): // one height all along the lip
		share1, _ = point.ChipShare(f, l.Height)
	default:
		share1 = r.shareLine().Metal()
	}
	return share1, 1 - share1
}

// shareLine is lip 1's part of the feed along the lips.
func (r *Result) shareLine() point.ShareLine {
	l := &r.Lips
	return point.ShareOf(r.Drill.Feed, l.Line1, l.Line2, l.Inner, l.Outer)
}

// gaugeReach is how far, half angle, the lips may stand from an angle that a gauge
// checks to be ground to it.
const gaugeReach = 3 * math.Pi / 180

// Target is the half angle that both lips are evened up to: that of the point asked
// for, or that the work wants where the point is none for it; else the angle that a
// gauge checks, of 118 degrees, of the point to grind and of the ends of what is
// published for the work the nearest; else, where none is near, the lips' own mean.
func (r *Result) Target() float64 {
	p, m := &r.Point, r.Drill.Material
	if p.Asked || r.Outside(PointAngleLimit) || !known(p.Angle) {
		return p.Wanted / 2
	}
	points := [4]float64{p.Wanted, handbook.StandardPointAngle, p.Wanted, p.Wanted}
	if m != nil && !m.ShopPoint() && known(m.Point.Low, m.Point.High) {
		points[2], points[3] = m.Point.Low, m.Point.High
	}
	target, reach := p.K(), gaugeReach
	for _, angle := range points {
		off := math.Abs(angle/2 - p.K())
		if off < rounding {
			return p.K()
		}
		if off < reach && r.Limit(PointAngleLimit).Holds(angle) {
			target, reach = angle/2, off
		}
	}
	return target
}

// Evening is what to take off which lip to make the two even.
func (r *Result) Evening() (plan point.TruingPlan, ok bool) {
	if !known(r.Lips.Evened.Line.Height0) {
		return plan, false
	}
	return r.Lips.Evened, true
}

// evened works the plan out, once the limits are held: the target goes by them.
func (r *Result) evened() point.TruingPlan {
	l, nan := &r.Lips, math.NaN()
	if known(l.Height, l.Outer, r.Point.Angle) {
		if plan, err := point.Truing(l.Line1, l.Line2, l.Inner, l.Outer, r.Target()); err == nil {
			return plan
		}
	}
	return point.TruingPlan{Line: point.Lip{Height0: nan, HalfAngle: nan}, Stock1Inner: nan, Stock1Outer: nan, Stock2Inner: nan, Stock2Outer: nan}
}

// saved is how much less comes off when the lips are evened up to their own mean and
// not to the angle that a gauge checks.
func (r *Result) saved() float64 {
	l := &r.Lips
	own, err := point.Truing(l.Line1, l.Line2, l.Inner, l.Outer, r.Point.K())
	plan, ok := r.Evening()
	if err != nil || !ok {
		return 0
	}
	return plan.Most() - own.Most()
}
