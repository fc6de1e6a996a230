package plan

import (
	"math"

	"evenlip/internal/point"
)

// Cause is a ground for taking metal off the end of a drill.
type Cause uint8

// The causes.
const (
	NoCause   Cause = iota
	FlankLand       // the wear land
	Corner          // the rounded outer corner
	Margin          // the margin worn back from the corner
	LipChip         // a piece broken out of a lip
	Truing          // uneven lips, or an angle that is not the one wanted
	Reshaping       // a flank of the wrong clearance or chisel, ground anew
	TouchUp         // nothing but the clean-up: no more was asked for or read
	Causes          // how many there are
)

// String returns the cause's name, as scripts read it.
func (c Cause) String() string {
	return [...]string{"none", "flank-land", "corner", "margin", "lip-chip", "truing", "reshaping", "touch-up"}[c]
}

// Wear is the dullness that was read off a drill, in millimetres and radians;
// NaN where it was not read.
type Wear struct {
	Land      float64 // width of the flank land, along the cutting direction
	Clearance float64 // lip clearance where the land is
	FeedAngle float64 // feed angle there; 0 takes no credit for the feed
	Corner    float64 // width of lip over which the corner is rounded
	HalfAngle float64 // the lip's angle to the axis
	Margin    float64 // length over which the margin is worn
	Chip      float64 // depth of the deepest chip, along the axis
	Steep     Steep
}

// Steep is what a flank of too much clearance asks for: it is ground anew over a
// width, down from its own clearance to the one to aim for. NaN is the clearance
// of a lip that has not too much.
type Steep struct {
	Width, Aim float64
	Lip1, Lip2 float64
}

// depth returns how deep the new flank lies under the old one at the lip.
func (s *Steep) depth(clearance float64) float64 {
	return point.StockOfFlankLand(s.Width, clearance, s.Aim)
}

// Depths returns how deep, along the axis, the wear of each cause reaches;
// NaN for what was not read. Formulas: [point.StockOfFlankLand], for a flank of
// too much clearance as for a land, [point.StockOfCorner], [point.StockOfMargin]; a
// chip's depth is read as such.
// A [*point.DomainError] names a cause whose readings give no depth.
func (w Wear) Depths() (by [Causes]float64, err error) {
	nan := math.NaN()
	steep := larger(w.Steep.Lip1, w.Steep.Lip2)
	read := [Causes]float64{nan, w.Land, w.Corner, w.Margin, w.Chip, nan, steep, nan}
	by = [Causes]float64{nan, point.StockOfFlankLand(w.Land, w.Clearance, w.FeedAngle), point.StockOfCorner(w.Corner, w.HalfAngle),
		point.StockOfMargin(w.Margin), point.StockOfMargin(w.Chip), nan, w.Steep.depth(steep), nan}
	for c := range by {
		if math.IsNaN(by[c]) && !math.IsNaN(read[c]) {
			return by, &point.DomainError{Quantity: Cause(c).String(), Why: "gives no depth with the angles there are", Value: read[c]}
		}
	}
	return by, nil
}

// Lips are the two lips as they stand and what both are to become.
type Lips struct {
	Lip1, Lip2   point.Lip
	Inner, Outer float64 // the ends of the lips, along them from the axis in the end view
	Target       float64 // the half angle wanted
}

// Ends is a length, along the axis, at either end of a lip.
type Ends struct{ Inner, Outer float64 }

// Loss is what a grind takes off a drill, along the axis: its corners, which flute and
// margin lose; the inner ends of its lips, which bring a thicker web to the point; its
// tip, by which it gets shorter.
type Loss struct{ Corner, Inner, Tip float64 }

// even is a loss that is the same everywhere.
func even(stock float64) Loss { return Loss{stock, stock, stock} }

// plus returns both losses together.
func (l Loss) plus(stock float64) Loss { return Loss{l.Corner + stock, l.Inner + stock, l.Tip + stock} }

// Loss returns what s takes off a drill whose lips stand like l before: a change of
// the point's angle takes less at one end of the lips than at the other, and the tip
// goes with the lips' lines where they meet the axis.
func (s *Stock) Loss(l *Lips) Loss {
	if s.Total == 0 {
		return Loss{}
	}
	ground := point.LipThrough(l.Outer, l.Lip1.At(l.Outer)-s.Lip1.Outer, l.Target)
	return Loss{math.Max(s.Lip1.Outer, s.Lip2.Outer), math.Max(s.Lip1.Inner, s.Lip2.Inner), math.Max(l.Lip1.At(0), l.Lip2.At(0)) - ground.At(0)}
}

// Stock is what one grind takes off.
type Stock struct {
	By           [Causes]float64 // what each cause alone would take; NaN where it was not read
	Governs      Cause           // the one that takes most
	Steep1       float64         // how deep the new flank of lip 1 lies under one that is too steep; NaN where it is not
	Steep2       float64         // and of lip 2
	Worn1, Worn2 Ends            // how deep each lip is worn
	CleanUp      float64         // taken at all four ends beyond that
	Lip1, Lip2   Ends            // what comes off each lip, the clean-up included
	Total        float64         // the most at any end: what the drill gets shorter by at most
}

// Wear returns how deep the drill is worn, along the axis: the deepest of land,
// corner and margin. A chip and an uneven point are no wear.
func (s *Stock) Wear() float64 { return s.Habit(math.Inf(1)) }

// Habit returns the wear that comes back grind after grind: the deepest of land,
// corner and margin, without any that is over deepest, which is a mishap.
func (s *Stock) Habit(deepest float64) float64 {
	habit := 0.0
	for _, depth := range [...]float64{s.By[FlankLand], atCorner(&s.By, deepest)} {
		if depth > habit && depth <= deepest {
			habit = depth
		}
	}
	return habit
}

// atCorner returns how deep the corner is worn: as far up as the margin was measured to
// be, unless that is over deepest; else as its rounding reaches if it is even.
func atCorner(by *[Causes]float64, deepest float64) float64 {
	if margin := by[Margin]; margin > 0 && margin <= deepest {
		return margin
	}
	return by[Corner]
}

// Usual returns the stock of a usual grind: the habitual wear with the clean-up;
// zero for a drill that is not worn.
func (s *Stock) Usual(deepest float64) float64 {
	if s.Wear() == 0 {
		return 0
	}
	return s.Habit(deepest) + s.CleanUp
}

// LipsAlike reports whether both lips give up the same, but for rounding.
func (s *Stock) LipsAlike() bool {
	return math.Abs(s.Lip1.Inner-s.Lip2.Inner) < dust && math.Abs(s.Lip1.Outer-s.Lip2.Outer) < dust
}

// EndsAlike reports whether all four ends of the lips do.
func (s *Stock) EndsAlike() bool {
	return s.LipsAlike() && math.Abs(s.Lip1.Inner-s.Lip1.Outer) < dust
}

// StockOf returns the least stock that clears all the wear and leaves both lips
// one line at the angle wanted. Land and chip may sit anywhere on a lip, so
// their depth must come off at both its ends; corner and margin are at the
// outer one. Too little clearance costs metal at the heel only, too much at the lip
// that has it: the new flank lies under the old one over its width. Each lip is
// lowered by its wear, which leaves a line again, and the lowered lips are trued by
// [point.Truing]: where truing already takes the outer end deep enough, a worn
// corner costs nothing more.
//
// cleanUp is added at every end where there is wear or where asks, Reshaping or
// TouchUp, wants the flanks ground all over; lips that are only uneven need none. With
// nothing to do all is zero. Derived from the point's geometry.
//
// Domain: that of [point.Truing] and [Wear.Depths], cleanUp >= 0; a
// [*point.DomainError] outside.
func StockOf(w Wear, l Lips, cleanUp float64, asks Cause) (Stock, error) {
	if !(cleanUp >= 0) || math.IsInf(cleanUp, 0) {
		return Stock{}, &point.DomainError{Quantity: "clean-up allowance", Why: "must not be negative, and finite", Value: cleanUp}
	}
	by, err := w.Depths()
	if err != nil {
		return Stock{}, err
	}
	bare, err := point.Truing(l.Lip1, l.Lip2, l.Inner, l.Outer, l.Target)
	if err != nil {
		return Stock{}, err
	}
	s := Stock{Steep1: w.Steep.depth(w.Steep.Lip1), Steep2: w.Steep.depth(w.Steep.Lip2)}
	s.Worn1, s.Worn2 = wornBy(&by, s.Steep1), wornBy(&by, s.Steep2)
	worn, err := point.Truing(l.lowered(l.Lip1, s.Worn1), l.lowered(l.Lip2, s.Worn2), l.Inner, l.Outer, l.Target)
	if err != nil {
		return Stock{}, err
	}
	if s.Worn1.Outer > 0 || s.Worn2.Outer > 0 || asks != NoCause {
		s.CleanUp = cleanUp
	}
	s.Lip1 = Ends{settled(worn.Stock1Inner) + s.Worn1.Inner + s.CleanUp, settled(worn.Stock1Outer) + s.Worn1.Outer + s.CleanUp}
	s.Lip2 = Ends{settled(worn.Stock2Inner) + s.Worn2.Inner + s.CleanUp, settled(worn.Stock2Outer) + s.Worn2.Outer + s.CleanUp}
	s.Total = max(s.Lip1.Inner, s.Lip1.Outer, s.Lip2.Inner, s.Lip2.Outer)
	by[Truing] = settled(bare.Most())
	if asks != NoCause && !(by[asks] > 0) {
		by[asks] = cleanUp
	}
	s.By = by
	for c, depth := range by { // of two that take as much, the first
		if Cause(c) == Corner && by[Margin] > 0 {
			continue // the margin's length decides
		}
		if depth > 0 && (s.Governs == NoCause || depth > by[s.Governs]) {
			s.Governs = Cause(c)
		}
	}
	return s, nil
}

// wornBy returns how deep a lip is worn at its ends whose flank is too steep by
// that depth.
func wornBy(by *[Causes]float64, steep float64) Ends {
	inner := larger(larger(larger(0, by[FlankLand]), by[LipChip]), steep)
	return Ends{inner, larger(inner, atCorner(by, math.Inf(1)))}
}

// lowered returns the line through the two ends of lip, each lowered by worn.
func (l *Lips) lowered(lip point.Lip, worn Ends) point.Lip {
	if worn.Inner == worn.Outer {
		return point.Lip{Height0: lip.Height0 - worn.Inner, HalfAngle: lip.HalfAngle}
	}
	inner, outer := lip.At(l.Inner)-worn.Inner, lip.At(l.Outer)-worn.Outer
	return point.LipThrough(l.Outer, outer, math.Atan2(l.Outer-l.Inner, inner-outer))
}

// Carried returns how high a lip stands at x, carried to the axis at the angle
// wanted: lips are true where their four ends are carried to one height.
func (l *Lips) Carried(lip point.Lip, x float64) float64 {
	return lip.At(x) - point.Lip{HalfAngle: l.Target}.At(x)
}

// dust is the stock, mm, under which a lip is true: what rounding leaves.
const dust = 1e-9

func settled(stock float64) float64 {
	if stock < dust {
		return 0
	}
	return stock
}

// larger returns the larger of two numbers, the other one where either is NaN.
func larger(a, b float64) float64 {
	if b > a || math.IsNaN(a) {
		return b
	}
	return a
}
