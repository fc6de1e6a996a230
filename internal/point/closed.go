package point

import "math"

// Height returns the point length, the axial distance from the outer corner
// of a lip to the theoretical tip: (d/2) / tan(pointAngle/2).
// Domain: d > 0, 0 < pointAngle < pi; NaN outside.
func Height(d, pointAngle float64) float64 {
	if !positive(d) || !between(pointAngle, 0, math.Pi) {
		return math.NaN()
	}
	return d / 2 * cot(pointAngle/2)
}

// ChiselLength returns the length of the chisel edge, web / sin(angle). The
// angle may be given acute or obtuse: the sine is the same.
// Domain: web >= 0, 0 < angle < pi; NaN outside.
func ChiselLength(web, angle float64) float64 {
	if !notNegative(web) || !between(angle, 0, math.Pi) {
		return math.NaN()
	}
	return web / math.Sin(angle)
}

// ChiselAngle returns the acute chisel-edge angle, asin(web / length).
// Domain: 0 < web <= length (no chisel is shorter than the web is thick);
// NaN outside.
func ChiselAngle(web, length float64) float64 {
	if !positive(web) || !positive(length) {
		return math.NaN()
	}
	return math.Asin(web / length)
}

// WebOfChisel returns the web thickness at the point from the chisel edge,
// length x sin(angle), the angle acute or obtuse.
// Domain: length >= 0, 0 < angle < pi; NaN outside.
func WebOfChisel(length, angle float64) float64 {
	if !notNegative(length) || !between(angle, 0, math.Pi) {
		return math.NaN()
	}
	return length * math.Sin(angle)
}

// ChiselCorner returns where on its lip a corner of the chisel edge lies, along the
// lip from the axis: (web/2) / tan(angle), the angle to that lip. Below zero is
// behind the axis, where an obtuse angle puts it.
// Domain: web >= 0, 0 < angle < pi; NaN outside.
func ChiselCorner(web, angle float64) float64 {
	if !notNegative(web) || !between(angle, 0, math.Pi) {
		return math.NaN()
	}
	return web / 2 / math.Tan(angle)
}

// Obtuse returns the chisel-edge angle as quoted between 90 and 180 degrees,
// whichever way it is given. Domain: 0 < angle < pi; NaN outside.
func Obtuse(angle float64) float64 { return math.Pi - Acute(angle) }

// Acute returns the chisel-edge angle as quoted between 0 and 90 degrees,
// whichever way it is given. Domain: 0 < angle < pi; NaN outside.
func Acute(angle float64) float64 {
	if !between(angle, 0, math.Pi) {
		return math.NaN()
	}
	return math.Min(angle, math.Pi-angle)
}

// WebAfter returns the web thickness at the point once a length has been
// ground off: web + taper x removed, the taper in length per length of drill.
// Domain: web >= 0, removed >= 0, taper finite, and a web left that is not
// negative; NaN outside.
func WebAfter(web, taper, removed float64) float64 {
	after := web + taper*removed
	if !notNegative(web) || !notNegative(removed) || !notNegative(after) {
		return math.NaN()
	}
	return after
}

// WebTaper returns the web's growth per length of drill from two thicknesses
// measured the given distance apart, web2 the one nearer the shank:
// (web2 - web1) / distance. Domain: webs > 0, distance > 0; NaN outside.
func WebTaper(web1, web2, distance float64) float64 {
	if !positive(web1) || !positive(web2) || !positive(distance) {
		return math.NaN()
	}
	return (web2 - web1) / distance
}

// ClearanceOfDrop returns the lip clearance from a heel drop: an indicator at
// the outer corner, the drill turned on its axis by turn, the flank's fall
// read as drop: tan(clearance) = drop / (d/2 x turn). A negative drop, a heel
// above the lip, gives a negative clearance.
// Domain: d > 0, 0 < turn < pi, drop finite; NaN outside.
func ClearanceOfDrop(drop, d, turn float64) float64 {
	if !finite(drop) || !positive(d) || !between(turn, 0, math.Pi) {
		return math.NaN()
	}
	return math.Atan(drop / (d / 2 * turn))
}

// DropOfClearance returns how far the heel falls over a turn of the drill behind a
// corner of that clearance, in the units of the diameter: the inverse of
// [ClearanceOfDrop]. NaN outside its domain.
func DropOfClearance(clearance, d, turn float64) float64 {
	if !finite(clearance) || !positive(d) || !between(turn, 0, math.Pi) {
		return math.NaN()
	}
	return d / 2 * turn * math.Tan(clearance)
}

// FeedAngle returns the slope of the path a point at radius r follows,
// atan(feed / (2 pi r)), feed per revolution. It is what cutting takes away
// from the clearance. Domain: feed >= 0, r > 0; NaN outside.
func FeedAngle(feed, r float64) float64 {
	if !notNegative(feed) || !positive(r) {
		return math.NaN()
	}
	return math.Atan(feed / (2 * math.Pi * r))
}

// FeedLimit returns the largest feed per revolution before a flank of the
// given clearance rubs at radius r: 2 pi r tan(clearance); zero where there is
// no clearance to begin with. Domain: r > 0, |clearance| < pi/2; NaN outside.
func FeedLimit(r, clearance float64) float64 {
	if !positive(r) || !between(clearance, -math.Pi/2, math.Pi/2) {
		return math.NaN()
	}
	return math.Max(0, 2*math.Pi*r*math.Tan(clearance))
}

// WebAngle returns the angle in the end view between a straight lip and the
// radius to a place on it: asin(web / (2 r)).
// Domain: web >= 0, r >= web/2, r > 0; NaN outside.
func WebAngle(web, r float64) float64 {
	if !notNegative(web) || !positive(r) {
		return math.NaN()
	}
	return math.Asin(web / (2 * r))
}

// AlongLip returns how far out along a straight lip the radius r lies,
// counted from the foot of the perpendicular from the drill axis:
// sqrt(r^2 - web^2/4). Domain: web >= 0, r >= web/2; NaN outside.
func AlongLip(r, web float64) float64 {
	if !notNegative(web) || !notNegative(r) {
		return math.NaN()
	}
	return math.Sqrt((r - web/2) * (r + web/2))
}
