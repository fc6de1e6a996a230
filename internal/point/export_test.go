package point

// Chisels returns the acute chisel-edge angles that the other wishes leave
// within reach, the lowest with the vertex as close to the drill axis as it
// may be, the highest with a vertex a hundred diameters off, close to what a
// flat flank of the same clearance gives.
// Errors: [*DomainError]; [*UnreachableError] when there are none.
func (w Wanted) Chisels() (low, high float64, err error) {
	r, err := w.reach()
	return r.low, r.high, err
}

// Vertices returns the vertex distances that leave a chisel edge, the closest
// going with the lowest of [Wanted.Chisels] and the farthest with the highest.
// Errors: those of [Wanted.Chisels].
func (w Wanted) Vertices() (closest, farthest float64, err error) {
	r, err := w.reach()
	return r.near, r.far, err
}
