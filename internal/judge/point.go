package judge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Point is the point angle and what depends on it.
type Point struct {
	K1, K2     float64 // each lip to the axis
	Both       bool    // both lips were read; with one, the other is taken as equal
	Wanted     float64 // the point angle wanted
	Asked      bool    // Wanted was typed, not taken from the material
	Angle      float64 // 2k, the sum of the two lip angles
	Difference float64 // lip 1 minus lip 2
	Deviation  float64 // Angle minus Wanted
	Length     float64 // tip to full diameter
}

// K is the mean half point angle.
func (p *Point) K() float64 { return p.Angle / 2 }

// MeanTaken says that of two unlike lip angles the mean is reckoned with.
func (p *Point) MeanTaken(s *sheet.Sheet) {
	if known(p.K1, p.K2) && p.K1 != p.K2 {
		s.Find("mean-lip-angle", sheet.Note, "the lips stand at {} and {} to the axis: their mean, {}, is reckoned with", quantity.Rad(p.K1), quantity.Rad(p.K2), quantity.Rad(p.K()))
	}
}

func pointOf(d *drill.Drill, b *Basics) Point {
	var p Point
	p.K1, p.K2, p.Both = pair(d, drill.LipAngle)
	if p.K1 >= math.Pi/2 || p.K2 >= math.Pi/2 { // a whole angle typed for a half: see Plausible
		p.K1, p.K2, p.Both = math.NaN(), math.NaN(), false
	}
	p.Wanted, p.Asked = d.Get(drill.PointAngle)
	if !p.Asked {
		p.Wanted = wantedAngle(b.Material)
	}
	p.Angle = p.K1 + p.K2
	p.Deviation = p.Angle - p.Wanted
	p.Difference = math.NaN()
	if p.Both {
		p.Difference = p.K1 - p.K2
	}
	p.Length = point.Height(b.D, p.Angle)
	return p
}

// AcceptedPoint returns the band of point angles that a drill for the material, nil
// for one not known, may have: all that is published for the work, and the tolerance
// of a ground point either way; a shop's own angle alone.
func AcceptedPoint(book *handbook.Book, m *handbook.Material) handbook.Band {
	aim := wantedAngle(m)
	band := book.PointAngle(aim)
	switch {
	case m.ShopPoint():
		return book.ShopPointAngle(aim)
	case m == nil || !known(m.Point.Low, m.Point.High):
		return band
	}
	band.Low = math.Min(band.Low, book.PointAngle(m.Point.Low).Low)
	band.High = math.Max(band.High, book.PointAngle(m.Point.High).High)
	return band
}

func wantedAngle(m *handbook.Material) float64 {
	if m == nil || math.IsNaN(m.PointAim) {
		return handbook.StandardPointAngle
	}
	return m.PointAim
}

// PointFigures defines the figures of the point angle.
var PointFigures = sheet.Group[Result]{Title: "Point", Figures: []sheet.Def[Result]{
	{Key: "point_angle_deg", Letter: "A", Label: "point angle", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Point.Angle }, Limit: PointAngleLimit, Work: "k1 + k2"},
	{Key: "lip_angle_difference_deg", Label: "lip angles differ by", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Point.Difference }, Limit: AngleDifferenceLimit, Work: "k1 - k2", Of: "lip-angle A,B (one for each lip)"},
	{Key: "point_angle_deviation_deg", Label: "off the wanted angle by", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Point.Deviation }, Work: "A - Aw"},
	{Letter: "Aw", Label: "point angle wanted", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: sheet.AsRead,
		Value: func(r *Result) float64 { return r.Point.Wanted }},
	{Key: "point_length_mm", Letter: "L", Label: "point length", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.Point.Length }, Work: "D / 2 / tan((k1 + k2) / 2)"},
}}

// PointRemarks tells in s of a point that is no drill's first choice for the work, and
// is published for it all the same.
func (r *Result) PointRemarks(s *sheet.Sheet) {
	p, m := &r.Point, r.Drill.Material
	if m != nil && r.Drill.Given && !p.Asked && !r.Drill.Book.PointAngle(p.Wanted).Holds(p.Angle) && known(p.Angle) &&
		(m.Point.Holds(p.Angle) || !r.Held[PointAngleLimit].Outside()) {
		s.Find("point-published", sheet.Note, "{} is among the points published for {}; the one to grind when it is ground anew is {}: --point-angle holds the drill to one",
			quantity.Rad(p.Angle), quantity.Say(m.Name), quantity.Rad(p.Wanted))
		s.Extra = append(s.Extra, m.Point.Source)
	}
}

// Geometry is the source of what follows from the point's shape alone.
const Geometry = sheet.Geometry
