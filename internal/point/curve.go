package point

import "math"

// The chisel edge of a cone-ground point is where the flank and its copy half a
// turn round stand at one height t over the vertex. Both p and -p then lie on
// the cone: a t^2 + 2 (b0 + b1.p) t + e0 + e1.p + p.E p = 0 in the words of
// [Cone.Height]. The difference of the two equations leaves
// t = -e1.p / (2 b1.p), which depends on the direction of p alone, and their sum
// the distance from the axis: |p|^2 = -(a t^2 + 2 b0 t + e0) / (u.E u), u the
// direction.

// chiselAt returns how far from the drill axis the chisel edge passes under the
// acute angle to the lip; NaN where it has no such place.
func (c Cone) chiselAt(acute float64) float64 {
	sin, cos := math.Sincos(acute)
	d, half, cosTh := c.vertex, c.wanted.Web/2, math.Cos(c.wanted.SemiAngle)
	k0, ahead := c.axis.X*d-c.axis.Y*half, c.axis.X*cos+c.axis.Y*sin
	t := -(2*k0*ahead - 2*cosTh*cosTh*(d*cos-half*sin)) / (2 * c.axis.Z * ahead)
	a, b0, e0 := c.axis.Z*c.axis.Z-cosTh*cosTh, k0*c.axis.Z, k0*k0-cosTh*cosTh*(d*d+half*half)
	return math.Sqrt(-(a*t*t + 2*b0*t + e0) / (ahead*ahead - cosTh*cosTh))
}

// chiselOff is how far off, radians, the largest departure may be found: less makes no
// difference to its digits.
const chiselOff = 1e-9

// ChiselBow returns how far the slightly S-shaped chisel edge departs at most
// from the straight line that joins its corners, and where: the distance from
// the drill axis and the acute angle to the lip of that place. Derived from the
// point's geometry.
func (c Cone) ChiselBow() (bow, radius, angle float64) {
	chord := c.chisel
	lo, hi := math.Min(chord, c.ChiselTangent()), math.Max(chord, c.ChiselTangent())
	off := func(angle float64) float64 { return c.chiselAt(angle) * math.Abs(math.Sin(angle-chord)) }
	angle = summit(off, lo, hi, chiselOff)
	return off(angle), c.chiselAt(angle), angle
}
