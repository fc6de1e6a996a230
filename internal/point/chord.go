package point

import "math"

// chord relates the corner of the chisel edge to the cone's vertex. Flank 1
// passes under the other lip at (-x, -web/2), where that lip stands at
// -x/tan k, when
//
//	q2 s^2 + (q1 + lift vertex) s + q0 = 0,  s = x - flat
//
// with flat the place of the corner on a flat flank of the same slope. The
// vertex enters in the first power only, because moving it slides the cone
// along its own generator. q0 is below zero always.
type chord struct {
	flat, lift, q0, q1, q2 float64
}

// newChord returns the chord relation of the cones that meet the wish, all of
// which have this axis.
func newChord(w Wanted, axis Vec) chord {
	g, m := w.flank().Slope(), cot(w.HalfAngle)
	cos := math.Cos(w.SemiAngle)
	along, side := axis.X+axis.Z*m, w.Web*axis.Y
	flat := w.Web * g / (2 * m)
	q2 := along*along - cos*cos*(1+m*m)
	return chord{
		flat: flat,
		lift: 4 * cos * math.Sin(w.SemiAngle) * m / math.Sqrt(1+m*m+g*g) * math.Sqrt(1+m*m),
		q0:   q2*flat*flat + 2*along*side*flat + side*side - cos*cos*w.Web*w.Web,
		q1:   2 * (q2*flat + along*side),
		q2:   q2,
	}
}

// corner returns x of the chisel's corner for a vertex distance that leaves a
// chisel edge: the place nearest the axis, beyond that of a flat flank, where
// the other flank rises to the lip.
func (c chord) corner(vertex float64) float64 {
	b := c.q1 + c.lift*vertex
	return c.flat - 2*c.q0/(b+math.Sqrt(math.Max(0, b*b-4*c.q2*c.q0)))
}

// vertex returns the vertex distance that puts the chisel's corner at x, which
// must lie beyond that of a flat flank.
func (c chord) vertex(x float64) float64 {
	s := x - c.flat
	return -(c.q2*s + c.q1 + c.q0/s) / c.lift
}

// closest returns the smallest vertex distance that leaves a chisel edge at
// all.
func (c chord) closest() float64 {
	return (2*math.Sqrt(c.q2*c.q0) - c.q1) / c.lift
}
