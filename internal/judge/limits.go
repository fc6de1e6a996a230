package judge

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/sheet"
)

// The limits that a point is held against.
const (
	_ sheet.Limit = iota
	CrackLimit
	PointAngleLimit
	AngleDifferenceLimit
	ClearanceDifferenceLimit
	Clearance1Limit
	Clearance2Limit
	WorkingLimit
	LeastWorkingLimit
	ChiselAngleLimit
	ChiselRatioLimit
	ChiselAfterLimit
	LipHeightLimit
	MidLipLimit
	FlankLimit
	CornerLimit
	MarginLimit    // none may be left
	MarginFarLimit // beyond which it cannot be ground out
	ChipLimit
	FluteLimit
	WebLimit      // what is known of the chisel edge by the web alone, else the next
	WebSpentLimit // past thinning
	limits
)

// What a bench gauge cannot tell: half a degree, and what a caliper or an indicator in
// the shop shows twice alike.
const (
	benchAngle     = 0.5 * math.Pi / 180
	benchCaliper   = 0.02
	benchIndicator = 0.01
)

// hold decides every limit, and nothing else does. Chisel readings that contradict
// each other are held against nothing.
func (r *Result) hold() {
	b, d, book := &r.Drill, r.Drill.D, r.Drill.Book
	put := func(l sheet.Limit, v float64, band handbook.Band, give float64) {
		if b.Gauged {
			give = 0
		}
		r.Held[l] = sheet.Held{Value: v, Band: band, Give: give}
	}

	cracked := 0.0
	if r.Wear.Cracked {
		cracked = 1
	}
	put(CrackLimit, cracked, none, 0)
	put(PointAngleLimit, r.Point.Angle, r.pointBand(), benchAngle)
	even := book.LipHeight(d)
	difference := r.Point.Difference
	if known(r.Lips.Height) {
		difference = math.NaN() // the heights themselves are judged
	}
	angles := r.angleDifference(even)
	put(AngleDifferenceLimit, difference, angles, benchAngle)

	c := &r.Clearance
	accepted := AcceptedClearance(d, c.Recommended, b.Material)
	put(Clearance1Limit, c.Lip1, accepted, benchAngle)
	put(Clearance2Limit, c.Lip2, accepted, benchAngle)
	put(WorkingLimit, c.Working, positive, benchAngle)
	put(LeastWorkingLimit, c.Least, positive, benchAngle)
	clearances := math.NaN()
	if c.Both {
		clearances = c.Lip1 - c.Lip2
	}
	put(ClearanceDifferenceLimit, clearances, r.clearanceDifference(even), benchAngle)

	angle, ratio := r.Chisel.Angle, r.Chisel.Ratio
	if r.Chisel.Gap != 0 {
		angle, ratio = math.NaN(), math.NaN()
	}
	short := book.ChiselRatio(d)
	put(ChiselAngleLimit, angle, book.ChiselAngle(), benchAngle)
	put(ChiselRatioLimit, ratio, short, benchCaliper/d)
	put(ChiselAfterLimit, r.Web.RatioAfter, short, 0)

	height := benchIndicator
	if r.Lips.From == LipsFromLengths {
		height = benchCaliper
	}
	put(LipHeightLimit, r.Lips.Height, even, height)
	if r.Lips.TakenLevel {
		even = r.levelMidLip(even, angles)
		height = r.levelHeight(benchAngle)
	}
	put(MidLipLimit, r.Lips.MidLip, even, height)

	w := &r.Wear
	flute := book.FluteNeeded(d, w.Depth)
	put(FlankLimit, w.Flank, book.FlankWear(d), benchCaliper)
	corner := book.FlankWear(d)
	corner.Source = &cornerSource
	put(CornerLimit, w.Corner, corner, benchCaliper)
	put(MarginLimit, w.Margin, none, benchCaliper)
	put(MarginFarLimit, w.Margin, book.MarginWear(d, w.Flute-flute.Low), benchCaliper)
	put(ChipLimit, w.Chip, none, benchCaliper)
	put(FluteLimit, w.Flute, flute, benchCaliper)
	spent, thick := book.WebLimit(), book.WebLimit()
	if !known(ratio) && known(short.High) && short.High < thick.High {
		thick = handbook.Band{Low: short.Low, High: short.High, Source: &thickSource}
	}
	put(WebSpentLimit, r.Chisel.WebRatio, spent, benchCaliper/d)
	put(WebLimit, r.Chisel.WebRatio, thick, benchCaliper/d)
}

// pointBand is the band of point angles that the drill may have.
func (r *Result) pointBand() handbook.Band {
	b := &r.Drill
	if r.Point.Asked {
		return b.Book.PointAngle(r.Point.Wanted)
	}
	return AcceptedPoint(b.Book, b.Material)
}

// leastAngleDifference is what lip angles may always differ by: no hand grinds
// closer, and no gauge in it tells.
const leastAngleDifference = 1 * math.Pi / 180

// angleDifference is what the lip angles may differ by, the corners level, until
// the lips stand as far apart half way along as they may at the corner. Of a drill of no
// size that is what the smallest may that is reground by hand: larger ones less.
func (r *Result) angleDifference(even handbook.Band) handbook.Band {
	half := (r.Lips.Outer - r.Lips.Inner) / 2
	if d := handbook.SeldomReground; !known(r.Drill.D) {
		web := handbook.NewWeb(d)
		even = r.Drill.Book.LipHeight(d)
		half = (point.AlongLip(d/2, web) - point.AlongLip(handbook.NewChiselRatio(d)*d/2, web)) / 2
	}
	most := point.AngleDifferenceOf(even.High/half, r.Point.K())
	if !known(most) {
		return handbook.Band{Low: math.NaN(), High: math.NaN(), Source: &anglesSource}
	}
	most = math.Max(most, leastAngleDifference)
	return handbook.Band{Low: -most, High: most, Source: &anglesSource}
}

// levelMidLip is the limit half way along the lips where the corners are taken
// level: the lip height's, or what the angles may always make.
func (r *Result) levelMidLip(even, angles handbook.Band) handbook.Band {
	if most := r.levelHeight(angles.High); most > even.High*(1+rounding) {
		even.Low, even.High, even.Source = -most, most, &anglesSource
	}
	return even
}

// levelHeight is how far apart lips stand half way along whose angles differ by that,
// the corners level.
func (r *Result) levelHeight(difference float64) float64 {
	k, half := r.Point.K(), (r.Lips.Outer-r.Lips.Inner)/2
	return half * math.Abs(1/math.Tan(k-difference/2)-1/math.Tan(k+difference/2))
}

// clearanceDifference is what the two clearances may differ by until the chisel
// edge sits as far off the axis as lips at the limit of their height put it.
func (r *Result) clearanceDifference(even handbook.Band) handbook.Band {
	f1, f2 := r.Clearance.Flank1, r.Clearance.Flank2
	b, k := point.WebAngle(r.Chisel.Web, r.Drill.D/2), r.Point.K()
	middle, half := (f1.Slope()+f2.Slope())/2, point.SlopeDifferenceAt(even.High, r.Chisel.Web)/2
	clearance := func(g float64) float64 { return math.Atan(g*math.Cos(b) + math.Sin(b)/math.Tan(k)) }
	most := clearance(middle+half) - clearance(middle-half)
	return handbook.Band{Low: -most, High: most, Source: &clearancesSource}
}

var (
	cornerSource     = handbook.Source{Label: handbook.Own, Text: "a corner may be rounded as wide as the wear land may be worn: both are where the drill wore"}
	thickSource      = handbook.Source{Label: handbook.Derived, Text: "no chisel edge is shorter than its web is thick, unless the point was thinned: the limit of the chisel edge holds of the web"}
	anglesSource     = handbook.Source{Label: handbook.Derived, Text: "lips of unlike angles, level at the corner, stand as far apart half way along as the lip-height limit allows; never under one degree, and of no size as of 3.2 mm, the smallest that is reground by hand (own rules)"}
	clearancesSource = handbook.Source{Label: handbook.Derived, Text: "flat flanks of unlike clearance put the chisel edge as far off the axis as lips apart by the lip-height limit"}
)

// Limit returns the band of a limit; its ends are NaN where it is not known.
func (r *Result) Limit(l sheet.Limit) *handbook.Band { return &r.Held[l].Band }

// Outside reports whether the figure of a limit is known to break it.
func (r *Result) Outside(l sheet.Limit) bool { return r.Held[l].Outside() }

var (
	// none is the limit of what a sound drill has none of.
	none = handbook.Band{Source: &handbook.Source{Label: handbook.Own, Text: "whatever there is of it has to be ground out"}}
	// positive is the limit of a clearance that does not rub: more than nothing.
	positive = handbook.Band{Low: math.SmallestNonzeroFloat64, High: math.Inf(1), Source: &handbook.Source{Label: handbook.Derived, Text: "a flank without clearance rubs"}}
)
