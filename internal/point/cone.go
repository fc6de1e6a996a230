package point

import "math"

// Cone is a point whose two flanks are cones, as a pedestal grinder, a swing
// fixture or a freehand roll leaves it: the drill swung about an axis inclined
// to a flat wheel face makes each flank a cone with its vertex where the swing
// axis meets the face and the metal inside. The lip is one of the cone's
// generators. Make one with [Wanted.WithChisel], [Wanted.WithVertex] or
// [Setting.Point].
type Cone struct {
	wanted Wanted
	vertex float64 // distance of the vertex beyond the drill axis
	axis   Vec     // from the vertex into the drill, unit length
	chisel float64 // acute chisel-edge angle, corner to corner
}

// Setting returns how a fixture must be set to grind the point. With th the
// semi-angle, k the half point angle, g the flank's slope along the lip and
// N = sqrt(1/sin^2 k + g^2), the angle phi between the axes follows from
// cos phi = cos th cos k + sin th/N, and their distance is
// (vertex g sin th/N + (web/2)(sin k cos th - sin th/(N tan k))) / sin phi.
func (c Cone) Setting() Setting {
	across := math.Hypot(c.axis.X, c.axis.Y)
	offset := (c.vertex*c.axis.Y + c.wanted.Web/2*c.axis.X) / across
	return Setting{c.wanted.SemiAngle, math.Atan2(across, -c.axis.Z), offset, c.vertex}
}

// Axis returns the direction of the swing axis, from the cone's vertex into the
// drill: u cos th - n sin th, u the unit vector along the lip and n the flank's.
func (c Cone) Axis() Vec { return c.axis }

// Point returns the ground point: diameter, web, half angle, lip clearance at
// the outer corner and the cone's semi-angle.
func (c Cone) Point() Wanted { return c.wanted }

// Flank returns the flank along the lip.
func (c Cone) Flank() Flank { return c.wanted.flank() }

// Chisel returns the acute chisel-edge angle between the lip and the line that
// joins the chisel's two corners: what a protractor reads.
func (c Cone) Chisel() float64 { return c.chisel }

// ChiselLength returns the length of the chisel edge, corner to corner.
func (c Cone) ChiselLength() float64 { return ChiselLength(c.wanted.Web, c.chisel) }

// ChiselTangent returns the acute chisel-edge angle at the drill axis. A cone
// leaves the chisel slightly S-shaped, so it differs from [Cone.Chisel].
func (c Cone) ChiselTangent() float64 {
	hx, hy := c.Slope(0, 0)
	return math.Atan2(-hx, hy)
}

// ChiselRake returns the rake on the chisel edge at the drill axis, always
// negative: -atan(1/slope), slope that of the flank there.
func (c Cone) ChiselRake() float64 {
	hx, hy := c.Slope(0, 0)
	return -math.Atan(1 / math.Hypot(hx, hy))
}

// Height returns the height of flank 1 over the place (x, y) in the end view,
// lip 1's line being at zero over x = 0. It is NaN where the cone does not
// reach: there the wheel leaves no metal.
func (c Cone) Height(x, y float64) float64 {
	p := Vec{x + c.vertex, y - c.wanted.Web/2, 0}
	cos := math.Cos(c.wanted.SemiAngle)
	k0 := c.axis.Dot(p)
	// Places on the vertical through (x, y) at the height t over the vertex
	// lie on the cone when a t^2 + 2 b t + e = 0 and the axis sees them ahead.
	a, b, e := c.axis.Z*c.axis.Z-cos*cos, k0*c.axis.Z, k0*k0-cos*cos*p.Dot(p)
	root := math.Sqrt(b*b - a*e)
	t := (-b - root) / a
	if b < 0 {
		t = e / (root - b)
	}
	if !(k0+c.axis.Z*t >= 0) || !finite(t) {
		return math.NaN()
	}
	return t + c.vertex*cot(c.wanted.HalfAngle)
}

// Slope returns the slopes dz/dx and dz/dy of flank 1 over the place (x, y) in
// the end view; NaN where [Cone.Height] is.
func (c Cone) Slope(x, y float64) (hx, hy float64) {
	cos := math.Cos(c.wanted.SemiAngle)
	p := Vec{x, y, c.Height(x, y)}.Sub(c.vertexPoint())
	n := c.axis.Scale(c.axis.Dot(p)).Sub(p.Scale(cos * cos))
	return -n.X / n.Z, -n.Y / n.Z
}

// Drop returns how far the flank has fallen below the lip, along the drill
// axis, at radius r and the angle turn behind the lip: what an indicator at
// that radius reads when the drill is turned by it.
// Domain: web/2 <= r <= d/2, 0 <= turn < pi; NaN outside and where the cone
// does not reach.
func (c Cone) Drop(r, turn float64) float64 {
	if !c.Flank().onLip(r) || !(turn >= 0 && turn < math.Pi) {
		return math.NaN()
	}
	at := WebAngle(c.wanted.Web, r) - turn
	sin, cos := math.Sincos(at)
	return -AlongLip(r, c.wanted.Web)*cot(c.wanted.HalfAngle) - c.Height(r*cos, r*sin)
}

// HeelClearance returns the clearance that a drop read over turn shows at
// radius r: atan(drop / (r turn)). A cone falls away faster behind the lip, so
// it grows with the turn, and toward no turn it is the lip clearance.
// Domain: that of [Cone.Drop] with turn > 0; NaN outside.
func (c Cone) HeelClearance(r, turn float64) float64 {
	if !(turn > 0) {
		return math.NaN()
	}
	return math.Atan(c.Drop(r, turn) / (r * turn))
}

// vertexPoint is the cone's vertex.
func (c Cone) vertexPoint() Vec {
	return Vec{-c.vertex, c.wanted.Web / 2, c.vertex * cot(c.wanted.HalfAngle)}
}
