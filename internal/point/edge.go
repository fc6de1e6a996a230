package point

import "math"

// Edge is a straight lip with its flank and the flute's helix: everything the
// angles along the cutting edge depend on.
type Edge struct {
	flank   Flank
	helix   float64 // at the periphery
	sin, cs float64 // of the half angle
}

// NewEdge returns the cutting edge of a flank on a drill with the helix angle
// helix at the periphery; a left-hand helix is negative.
// Domain: |helix| < pi/2; an edge that answers NaN outside.
func NewEdge(flank Flank, helix float64) Edge {
	if !between(helix, -math.Pi/2, math.Pi/2) {
		helix = math.NaN()
	}
	sin, cs := math.Sincos(flank.halfAngle)
	return Edge{flank, helix, sin, cs}
}

// Inclination returns the angle of the lip out of square with the cutting
// direction: asin(sin k sin b), k the half angle and b the web angle.
// Domain: web/2 < r <= d/2; NaN outside.
func (e Edge) Inclination(r float64) float64 {
	return math.Asin(e.sin * math.Sin(e.webAngle(r)))
}

// NormalRake returns the rake in the plane square to the lip, at rest:
//
//	tan(rake) = tan H(r) (1 - sin^2 k sin^2 b) / (sin k cos b) - cos k tan b
//
// with tan H(r) = (2 r/d) tan(helix). Domain: web/2 < r <= d/2; NaN outside.
func (e Edge) NormalRake(r float64) float64 {
	sin, cos := math.Sincos(e.webAngle(r))
	lead := 2 * r / e.flank.d * math.Tan(e.helix)
	return math.Atan(lead*(1-e.sin*e.sin*sin*sin)/(e.sin*cos) - e.cs*sin/cos)
}

// WorkingRake returns the rake in the plane square to the lip with the cutting
// direction tilted by the feed. The rake face holds the lip and the helix
// through the place; the rake is how far the face leans back from the plane
// square to the cutting direction.
// Domain: web/2 < r <= d/2, feed >= 0; NaN outside.
func (e Edge) WorkingRake(r, feed float64) float64 {
	if math.IsNaN(e.webAngle(r)) || !notNegative(feed) {
		return math.NaN()
	}
	v := e.Vectors(r)
	chip := v.Helix.across(v.Lip)
	cutting := v.Cutting.Add(Vec{Z: feed / (2 * math.Pi * r)}).across(v.Lip)
	return -math.Asin(chip.Dot(cutting) / (chip.Norm() * cutting.Norm()))
}

// EdgeVectors are the directions at one place on the lip, x along the lip in
// the end view, y the way it moves, z out of the point.
type EdgeVectors struct {
	Lip     Vec // along the lip, outward, unit length: (sin k, 0, -cos k)
	Helix   Vec // along the flute, toward the shank, one down: (tan H(r) sin b, -tan H(r) cos b, -1)
	Cutting Vec // the way the place turns, unit length: (-sin b, cos b, 0)
	Across  Vec // in the flank, ahead of the lip: (0, 1, g)
}

// Vectors returns the directions at radius r. The rake face is square to
// Lip x Helix, the flank to Lip x Across.
// Domain: web/2 < r <= d/2; vectors of NaN outside.
func (e Edge) Vectors(r float64) EdgeVectors {
	sin, cos := math.Sincos(e.webAngle(r))
	lead := 2 * r / e.flank.d * math.Tan(e.helix)
	return EdgeVectors{Vec{e.sin, 0, -e.cs}, Vec{lead * sin, -lead * cos, -1}, Vec{-sin, cos, 0}, Vec{0, 1, e.flank.slope}}
}

// NormalClearance returns the clearance in the plane square to the lip:
// atan(g sin k) + atan(cos k tan b), g the flank's slope.
// Domain: web/2 < r <= d/2; NaN outside.
func (e Edge) NormalClearance(r float64) float64 {
	return math.Atan(e.flank.slope*e.sin) + math.Atan(e.cs*math.Tan(e.webAngle(r)))
}

// RakeZero returns the radius where the normal rake at rest passes through
// zero, positive outside it and negative inside:
// (web/2) sqrt((sin k cos k + T sin^2 k) / T), T = (web/d) tan(helix).
// NaN where no place on the lip has zero rake.
func (e Edge) RakeZero() float64 {
	t := e.flank.web / e.flank.d * math.Tan(e.helix)
	r := e.flank.web / 2 * math.Sqrt(e.sin*(e.cs+t*e.sin)/t)
	if !(t > 0) || math.IsNaN(e.webAngle(r)) {
		return math.NaN()
	}
	return r
}

// webAngle is the web angle at r, or NaN where r is not on the lip.
func (e Edge) webAngle(r float64) float64 {
	if !e.flank.onLip(r) || r == e.flank.web/2 {
		return math.NaN()
	}
	return WebAngle(e.flank.web, r)
}

// ChiselRake returns the rake on the chisel edge, always negative:
// -atan(tan k sin(angle)), the chisel-edge angle acute or obtuse. It is exact
// for flat flanks; [Cone.ChiselRake] is for a cone.
// Domain: 0 < halfAngle < pi/2, 0 < angle < pi; NaN outside.
func ChiselRake(halfAngle, angle float64) float64 {
	if !between(halfAngle, 0, math.Pi/2) || !between(angle, 0, math.Pi) {
		return math.NaN()
	}
	return -math.Atan(math.Tan(halfAngle) * math.Sin(angle))
}

// IndentationRadius returns the radius inside which the chisel edge no longer
// cuts but pushes the metal aside, because the feed angle there exceeds the
// slope of the flank behind it: feed/(2 pi) tan k sin(angle).
// Domain: feed >= 0, 0 < halfAngle < pi/2, 0 < angle < pi; NaN outside.
func IndentationRadius(feed, halfAngle, angle float64) float64 {
	if !notNegative(feed) {
		return math.NaN()
	}
	return feed / (2 * math.Pi) * math.Tan(-ChiselRake(halfAngle, angle))
}
