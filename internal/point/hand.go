package point

import "math"

// levelSlack is what rounding may put on the cosine of the least drop.
const levelSlack = 1e-12

// Hand is the swing that grinds a cone point, as a hand on a pedestal grinder's
// rest does it: the lip laid level on the wheel's face, the shank a little low,
// then dropped while the drill rolls. The swing axis lies level, so all of it is
// drop about a level line and roll about the drill's own axis, and it is as good
// as a pivot on the rest that the drill swings about.
type Hand struct {
	Plan     float64 // drill axis to wheel face, seen from above
	ShankLow float64 // the shank under level while the lip is laid on; below zero above it
	Drop     float64 // drop of the shank to roll of the drill, radian to radian
	Pivot    float64 // how far behind the lip's height at the axis the pivot lies
}

// Hand returns how a hand would swing the drill to grind this point. With k the
// half angle, g the flank's slope and N = sqrt(1/sin^2 k + g^2):
// sin(ShankLow) = g sin k/N, tan(Plan) = 1/(N cos k), Drop = tan phi, phi the
// angle between swing axis and drill axis. Derived from the point's geometry.
func (c Cone) Hand() Hand {
	sin, cos := math.Sincos(c.wanted.HalfAngle)
	n := c.steepness()
	return Hand{
		Plan:     math.Atan2(1/n, cos),
		ShankLow: math.Asin(c.Flank().Slope() * sin / n),
		Drop:     math.Tan(c.Setting().AxisAngle),
		Pivot:    -c.pivot().Z,
	}
}

// steepness is N: the length of the flank's normal (1/tan k, -g, 1).
func (c Cone) steepness() float64 {
	return math.Hypot(1/math.Sin(c.wanted.HalfAngle), c.Flank().Slope())
}

// pivot is the place on the swing axis nearest the drill axis.
func (c Cone) pivot() Vec {
	v := c.vertexPoint()
	across := c.axis.X*c.axis.X + c.axis.Y*c.axis.Y
	return v.Add(c.axis.Scale(-(v.X*c.axis.X + v.Y*c.axis.Y) / across))
}

// ShankLowered returns the point that the same swing grinds with the shank held
// lower by that angle while the lip is laid on; higher, below zero.
// Errors: those of [Wanted.WithVertex]; [*DomainError] where the shank stands
// too steep for the lip to lie on the face.
func (c Cone) ShankLowered(by float64) (Cone, error) {
	rise := math.Sin(c.Hand().ShankLow + by)
	sin := math.Sin(c.wanted.HalfAngle)
	slope := rise / (sin * math.Sqrt(sin*sin-rise*rise))
	w := c.wanted
	w.Clearance = flankOfSlope(w.D, w.Web, w.HalfAngle, slope).Clearance(w.D / 2)
	return w.WithVertex(c.vertex)
}

// DropTimes returns the point that is ground when the shank drops so many times
// as much for the same roll, about the same pivot, the lip laid on alike.
// Errors: those of [Wanted.WithVertex]; [*DomainError] for a drop that no level
// swing about the pivot has.
func (c Cone) DropTimes(factor float64) (Cone, error) {
	if err := requirePositive("drop", factor); err != nil {
		return Cone{}, err
	}
	sin, cos := math.Sincos(c.wanted.HalfAngle)
	n := c.steepness()
	// Level axes at th to the face: cos phi = cos th cos k + sin th / N, which is
	// largest for th = Plan; the cone keeps to its own side of that.
	phi := math.Atan(factor * math.Tan(c.Setting().AxisAngle))
	plan := math.Atan2(1/n, cos)
	beside := math.Cos(phi) / math.Hypot(cos, 1/n)
	if beside > 1+levelSlack {
		return Cone{}, &DomainError{"drop", "is less than any level swing has with the drill so laid on", factor}
	}
	th := plan - math.Copysign(math.Acos(math.Min(1, beside)), plan-c.wanted.SemiAngle)
	from := c.pivot().Sub(c.vertexPoint())
	along := from.Dot(Vec{sin, 0, -cos})
	deep := math.Sqrt(math.Max(0, from.Dot(from)-along*along))
	w := c.wanted
	w.SemiAngle = th
	return w.WithVertex(c.vertex + (deep*cot(th)-along)*sin)
}

// RolledFirst returns the clearance that an indicator shows over a turn at
// radius r when the drill rolled by first before its shank began to drop: as far
// as that the flank runs round level and clears nothing, and what follows is the
// cone, late by as much.
// Domain: that of [Cone.HeelClearance] with first >= 0; NaN outside.
func (c Cone) RolledFirst(r, turn, first float64) float64 {
	if !(first >= 0) || !(turn > 0) {
		return math.NaN()
	}
	return math.Atan(c.Drop(r, math.Max(0, turn-first)) / (r * turn))
}

// RolledFirstChisel returns the acute chisel-edge angle, corner to corner, when
// the drill rolled by first before its shank began to drop. Near the axis the
// edge lies turned back by first, but it ends on the lip, which stays where it
// was: at the radius where the other flank, late by first, has come up to the
// lip's own height after half a turn, Drop(r, pi - first) = 0. Derived from the
// point's geometry.
// Domain: first > 0; NaN outside, and where the edge ends nowhere on the lip.
func (c Cone) RolledFirstChisel(first float64) float64 {
	if !(first > 0) {
		return math.NaN()
	}
	const step = math.Pi / 180
	under := func(chisel float64) float64 {
		return c.Drop(ChiselLength(c.wanted.Web, chisel)/2, math.Pi-first)
	}
	for high := c.chisel; ; high -= step {
		if low := high - step; !(under(low) > 0) {
			return solve(under, low, high)
		}
	}
}
