package judge

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/sheet"
)

// The limits that a point is held against.
const (
	_ sheet.Limit = iota
	CrackLimit
	PointAngleLimit
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
	WebLimit
	limits
)

// hold decides every limit, and nothing else does. Chisel readings that contradict
// each other are held against nothing.
func (r *Result) hold() {
	b, d, book := &r.Drill, r.Drill.D, r.Drill.Book
	put := func(l sheet.Limit, v float64, band handbook.Band) { r.Held[l] = sheet.Held{Value: v, Band: band} }

	cracked := 0.0
	if r.Wear.Cracked {
		cracked = 1
	}
	put(CrackLimit, cracked, none)
	put(PointAngleLimit, r.Point.Angle, r.pointBand())

	c := &r.Clearance
	accepted := AcceptedClearance(c.Recommended, b.Material)
	put(Clearance1Limit, c.Lip1, accepted)
	put(Clearance2Limit, c.Lip2, accepted)
	put(WorkingLimit, c.Working, positive)
	put(LeastWorkingLimit, c.Least, positive)

	angle, ratio := r.Chisel.Angle, r.Chisel.Ratio
	if r.Chisel.Gap != 0 {
		angle, ratio = math.NaN(), math.NaN()
	}
	short := book.ChiselRatio(d)
	put(ChiselAngleLimit, angle, book.ChiselAngle())
	put(ChiselRatioLimit, ratio, short)
	put(ChiselAfterLimit, r.Web.RatioAfter, short)

	even := book.LipHeight(d)
	put(LipHeightLimit, r.Lips.Height, even)
	put(MidLipLimit, r.Lips.MidLip, even)

	w := &r.Wear
	flute := book.FluteNeeded(d, w.Depth)
	put(FlankLimit, w.Flank, book.FlankWear(d))
	put(CornerLimit, w.Corner, none)
	put(MarginLimit, w.Margin, none)
	put(MarginFarLimit, w.Margin, book.MarginWear(d, w.Flute-flute.Low))
	put(ChipLimit, w.Chip, none)
	put(FluteLimit, w.Flute, flute)
	put(WebLimit, r.Chisel.WebRatio, book.WebLimit())
}

// pointBand is the band of point angles that the drill may have.
func (r *Result) pointBand() handbook.Band {
	b := &r.Drill
	if r.Point.Asked {
		return b.Book.PointAngle(r.Point.Wanted)
	}
	return AcceptedPoint(b.Book, b.Material)
}

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
