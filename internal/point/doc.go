// Package point is the geometry of a twist drill's point: closed forms, lips,
// flanks, edges, the cone-ground and the flat-ground point.
//
// # Frame
//
// The frame is fixed in a right-hand drill. z runs along the drill axis,
// positive out of the point; x is parallel to lip 1 in the end view, positive
// outward along it; y is the direction in which lip 1 moves. Looking at the
// point, the drill turns counter-clockwise. Lip 1 is the line y = +web/2,
// x > 0: the lips are ahead of centre by half the web. Flank 1 is the surface
// z = h(x, y) with metal below it, flank 2 is the same surface turned half a
// turn, z = h(-x, -y), and the point is the lower of the two.
//
// # Conventions
//
// Lengths are millimetres and angles radians (any one unit of length will do:
// the formulas are homogeneous). Half angles are measured from a lip to the
// drill axis. The chisel-edge angle is measured in the end view from a lip to
// the chisel edge; the trade quotes it acute (45 to 60 degrees) or obtuse (120
// to 135), and [Acute] and [Obtuse] turn one into the other. Where two lips
// differ, differences are lip 1 minus lip 2, and a positive offset of the
// point is toward lip 1.
//
// # Impossible input
//
// The small functions return NaN outside the domain their comment states;
// functions that return an error return a [*DomainError] or an
// [*UnreachableError]. Nothing allocates on good input.
//
// Unless a comment names a source, a formula is derived from the point's
// geometry in the frame above.
package point
