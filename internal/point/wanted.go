package point

import (
	"cmp"
	"math"
)

// Wanted is a point to be ground with cones of a chosen semi-angle. The
// diameter, the web, the half angle and the lip clearance leave two choices
// free: the semi-angle, and either the chisel-edge angle or the vertex
// distance, which fix each other.
type Wanted struct {
	D         float64
	Web       float64
	HalfAngle float64 // half the point angle
	Clearance float64 // lip clearance at the outer corner
	SemiAngle float64 // of the grinding cone
}

// WithChisel returns the point with the given chisel-edge angle, acute or
// obtuse, read corner to corner. One vertex distance alone gives it.
// Errors: [*DomainError]; [*UnreachableError] when no vertex distance gives
// this chisel with the other wishes.
func (w Wanted) WithChisel(angle float64) (Cone, error) {
	if !between(angle, 0, math.Pi) {
		return Cone{}, &DomainError{"chisel-edge angle", "must lie between 0 and 180 degrees", angle}
	}
	r, err := w.reach()
	if err != nil {
		return Cone{}, err
	}
	acute := Acute(angle)
	if acute < r.low || acute > r.high {
		const why = "out of reach with this point angle, clearance, web and semi-angle"
		return Cone{}, &UnreachableError{"chisel-edge angle", why, acute, r.low, r.high}
	}
	return Cone{w, r.chord.vertex(ChiselCorner(w.Web, acute)), r.axis, acute}, nil
}

// WithVertex returns the point ground with the cone's vertex the given
// distance beyond the drill axis.
// Errors: [*DomainError]; [*UnreachableError] when the vertex is too close to
// the drill axis for the flanks to meet in a chisel edge that leaves some lip,
// or so far that the chisel edge leans past square to the lips.
func (w Wanted) WithVertex(vertex float64) (Cone, error) {
	if err := requirePositive("vertex distance", vertex); err != nil {
		return Cone{}, err
	}
	r, err := w.reach()
	switch {
	case err != nil:
		return Cone{}, err
	case vertex < r.near:
		const why = "too close to the drill axis to leave a chisel edge and some lip"
		return Cone{}, &UnreachableError{"vertex distance", why, vertex, r.low, r.high}
	case vertex > r.far:
		const why = "so far that the chisel edge leans past square to the lips, or the flank is as good as flat"
		return Cone{}, &UnreachableError{"vertex distance", why, vertex, r.low, r.high}
	}
	return Cone{w, vertex, r.axis, r.chisel(vertex)}, nil
}

const (
	// FarthestVertex, in diameters, is where a cone counts as a flat flank.
	FarthestVertex = 100
	// leastLean is how far, in radians, the swing axis must lean away from the
	// drill axis, and pass it ahead of the vertex, for the setting to be told
	// apart from its neighbours.
	leastLean = 1e-3
)

// reach is what the wishes other than chisel and vertex leave open.
type reach struct {
	web       float64
	axis      Vec
	chord     chord
	near, far float64 // vertex distances
	low, high float64 // acute chisel-edge angles that go with them
}

// reach returns the range of vertex distances and chisel-edge angles.
func (w Wanted) reach() (reach, error) {
	if err := w.check(); err != nil {
		return reach{low: math.NaN(), high: math.NaN()}, err
	}
	r := reach{web: w.Web, axis: w.axis(), low: math.NaN(), high: math.NaN()}
	if r.axis.X < leastLean {
		const why = "must be less than about half the point angle, or the swing axis leans the wrong way"
		return r, &UnreachableError{"cone semi-angle", why, w.SemiAngle, r.low, r.high}
	}
	r.chord = newChord(w, r.axis)
	r.far = FarthestVertex * w.D
	longest := AlongLip(w.D/2, w.Web)
	if r.chord.corner(r.far) >= longest {
		const why = "too large for this web: the chisel edge would reach the margin"
		return r, &UnreachableError{"lip clearance", why, w.Clearance, r.low, r.high}
	}
	ahead := w.Web / 2 * (r.axis.Y + leastLean*r.axis.X) / (r.axis.X - leastLean*r.axis.Y)
	r.near = math.Max(r.chord.closest(), math.Max(ahead, leastLean*w.Web))
	if r.chord.corner(r.near) > longest {
		r.near = r.chord.vertex(longest)
	}
	if r.chord.corner(r.far) < 0 {
		r.far = r.chord.vertex(0)
	}
	if !(r.near < r.far) {
		const why = "too small for this web: the chisel edge would lean past square to the lips"
		return r, &UnreachableError{"lip clearance", why, w.Clearance, r.low, r.high}
	}
	r.low = r.chisel(r.near)
	r.high = r.chisel(r.far)
	return r, nil
}

// chisel returns the acute chisel-edge angle that goes with a vertex distance, the
// inverse of [ChiselCorner].
func (r *reach) chisel(vertex float64) float64 { return math.Atan2(r.web/2, r.chord.corner(vertex)) }

// axis returns the direction of the cone's axis, from the vertex into the
// drill: u cos th - n sin th, u along the lip and n square to the flank.
func (w Wanted) axis() Vec {
	sin, cos := math.Sincos(w.HalfAngle)
	out := Vec{cos / sin, -w.flank().Slope(), 1}
	rise, run := math.Sincos(w.SemiAngle)
	return Vec{sin, 0, -cos}.Scale(run).Sub(out.Scale(rise / out.Norm()))
}

// flank returns the flank along the lip.
func (w Wanted) flank() Flank { return NewFlank(w.D, w.Web, w.HalfAngle, w.Clearance) }

// check returns a [*DomainError] when a wish is impossible by itself.
func (w Wanted) check() error {
	return cmp.Or(
		requireWeb(w.D, w.Web),
		requireHalfAngle("half point angle", w.HalfAngle),
		requireHalfAngle("lip clearance", w.Clearance),
		requireHalfAngle("cone semi-angle", w.SemiAngle),
	)
}
