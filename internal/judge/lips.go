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
	Offset                 float64 // the point off the axis, along the lips, positive toward lip 1
	// ByLengths is the height difference that lip lengths and angles give; where
	// the indicator gave one too, the two can be compared.
	ByLengths    float64
	Inner, Outer float64 // the lip's ends, along the lip in the end view
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
	if a, b, both := pair(dr, drill.LipLength); both {
		l.Read1, l.Read2 = a, b
		l.ByLengths = heightOfLengths(a, b, r)
	}
	l.height(dr)
	l.Offset = point.OffsetOfCorners(l.Height, l.Outer, p.K1, p.K2)
	l.Length = l.Read1 - l.Read2
	if !known(l.Length) {
		l.Length = point.LengthDifference(l.Offset, l.Outer-l.Inner, p.K1, p.K2)
	}
	l.lines(p)
	l.MidLip = point.HeightDifference(l.Line1, l.Line2, (l.Inner+l.Outer)/2)
	if p.K1 == p.K2 || !known(p.K1) { // one height all along the lip
		l.MidLip = l.Height
	}
	return l
}

// lines lays each lip's line through its outer corner, lip 2's at height 0.
func (l *Lips) lines(p *Point) {
	l.Line1 = point.LipThrough(l.Outer, l.Height, p.K1)
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

func heightOfLengths(a, b float64, r *Result) float64 {
	if !known(r.Point.Angle, r.Drill.D) {
		return math.NaN()
	}
	uneven, err := point.LipsFromLengths(a, b, r.Point.K1, r.Point.K2, r.Drill.D, webOrNew(r))
	if err != nil {
		return math.NaN()
	}
	return uneven.AtCorner
}

// webOrNew returns the web, or a new drill's where none was read: the lips'
// place hangs on it only to the second order.
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

// Shares are the parts of the chip that the lips cut at the feed.
func (r *Result) Shares() (share1, share2 float64) {
	l, f := &r.Lips, r.Drill.Feed
	if r.Point.K1 == r.Point.K2 || !known(r.Point.K1) { // one height all along the lip
		return point.ChipShare(f, l.Height)
	}
	return point.ChipShareAlong(f, l.Line1, l.Line2, l.Inner, l.Outer)
}

// Target is the half angle that both lips are evened up to: that of the point asked
// for; else the lips' own mean, while that is within the limit; else the material's.
func (r *Result) Target() float64 {
	p := &r.Point
	if p.Asked || r.Outside(PointAngleLimit) {
		return p.Wanted / 2
	}
	return p.K()
}

// Evening is what to take off which lip to make the two even.
func (r *Result) Evening() (plan point.TruingPlan, ok bool) {
	l := &r.Lips
	if !known(l.Height, l.Outer, r.Point.Angle) {
		return plan, false
	}
	plan, err := point.Truing(l.Line1, l.Line2, l.Inner, l.Outer, r.Target())
	return plan, err == nil
}
