package judge

import (
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// WorkDrop leaves, with the figure added to s last, how the clearance follows
// from the heel drop, on a drill of diameter d, both mm.
func (c *Clearance) WorkDrop(s *sheet.Sheet, drop, d float64) {
	s.Work(Geometry, "Cl = atan(drop * 360 / (pi D * turn))", "atan({} * 360 / (pi * {} * {}))",
		quantity.Arg{Kind: quantity.Length, Gauge: quantity.Indicator, Value: drop}, quantity.MM(d), quantity.Rad(c.Turn))
}

// WorkOffset leaves, with the figure added to s last, how the point's offset
// follows from the corners' height difference dh, the corner's place outer along
// the lip, mm, and the half angles, radians.
func WorkOffset(s *sheet.Sheet, dh, outer, k1, k2 float64) {
	if k1 == k2 {
		s.Work(Geometry, "u = dh tan(k) / 2", "{} * tan({}) / 2", quantity.MM(dh), quantity.Rad(k1))
		return
	}
	s.Work(Geometry, "u = (dh - x (1 / tan(k2) - 1 / tan(k1))) / (1 / tan(k1) + 1 / tan(k2)), x = the corner along the lip",
		"({} - {} * (1 / tan({}) - 1 / tan({}))) / (1 / tan({}) + 1 / tan({}))",
		quantity.MM(dh), quantity.MM(outer), quantity.Rad(k2), quantity.Rad(k1), quantity.Rad(k1), quantity.Rad(k2))
}
