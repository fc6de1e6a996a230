package point

import (
	"cmp"
	"math"
)

// Setting is how a swing fixture is set.
type Setting struct {
	SemiAngle float64 // of the cone: the swing axis to the wheel face
	AxisAngle float64 // between the swing axis and the drill axis
	Offset    float64 // shortest distance between the two axes; below zero on the far side of the drill axis
	Vertex    float64 // of the cone's vertex beyond the drill axis, along the lip
}

// Point returns the point that the setting grinds on a drill of diameter d,
// the drill held so that the lip being ground runs web/2 ahead of the drill
// axis; the inverse of [Cone.Setting].
//
// In the end view the swing axis makes with the lip the angle a for which
// Offset = Vertex sin a + (web/2) cos a, and passes the drill axis ahead of
// the vertex. With phi the axis angle and th the semi-angle, the half angle k
// is the larger root of cos th = cos phi cos k + sin phi sin k cos a, the one
// whose flank faces out of the point.
// Errors: [*DomainError], naming the part of the setting that leaves no point;
// those of [Wanted.WithVertex].
func (s Setting) Point(d, web float64) (Cone, error) {
	if err := cmp.Or(
		requireWeb(d, web),
		requireHalfAngle("cone semi-angle", s.SemiAngle),
		requireHalfAngle("axis angle", s.AxisAngle),
		requirePositive("vertex distance", s.Vertex),
		requireFinite("axis offset", s.Offset),
	); err != nil {
		return Cone{}, err
	}
	apart := math.Hypot(s.Vertex, web/2)
	if math.Abs(s.Offset) > apart {
		return Cone{}, &DomainError{"axis offset", "must not exceed the vertex's distance from the drill axis", s.Offset}
	}
	sina, cosa := math.Sincos(math.Asin(s.Offset/apart) - math.Atan2(web/2, s.Vertex))
	sinf, cosf := math.Sincos(s.AxisAngle)
	sint, cost := math.Sincos(s.SemiAngle)
	tilt := math.Sqrt(sint*sint - sinf*sinf*sina*sina)
	k := math.Atan2(sinf*cosa, cosf) + math.Atan2(tilt, cost)
	switch {
	case !(tilt > 0):
		return Cone{}, &DomainError{"axis offset", "leaves no lip parallel to the web at this axis angle", s.Offset}
	case !between(k, 0, math.Pi/2):
		return Cone{}, &DomainError{"axis angle", "opens the point beyond 180 degrees with this semi-angle", s.AxisAngle}
	}
	flank := flankOfSlope(d, web, k, sinf*sina/(tilt*math.Sin(k)))
	clearance := flank.Clearance(d / 2)
	if clearance <= 0 {
		return Cone{}, &DomainError{"axis offset", "leaves the lips no clearance", s.Offset}
	}
	return Wanted{d, web, k, clearance, s.SemiAngle}.WithVertex(s.Vertex)
}
