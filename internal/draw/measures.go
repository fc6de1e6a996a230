package draw

// Measures are what the drawing is laid out by, in millimetres and radians.
type Measures struct {
	Outer       float64    // along a lip, from the middle of the drill to its corner
	Inner       [2]float64 // the same to where each lip ends at the chisel edge
	Rise        [2]float64 // of each lip from its corner to the chisel edge
	Turn        float64    // of the helix over the height of lip 1's line, corner to axis
	Bottom      float64    // where the flute of lip 1 touches the web, from the lip's direction
	FaceR, Face float64    // radius and angle of the flute's section under mid lip 1
}

// Measures returns what the drawing is laid out by: the lip's ends
// sqrt(d^2 - web^2)/2 and (web/2)/tan(chisel) -+ offset, its rise
// (outer - inner)/tan k, and the flute's section as [Drill]'s flute has it.
// Domain: a drill that passes Check.
func (d *Drill) Measures() Measures {
	f := d.flute(0)
	mid := f.face(f.outer / 2)
	m := Measures{Outer: f.outer, Turn: f.turn, Bottom: f.bottom(), FaceR: mid.r, Face: mid.theta}
	for i := range d.Lips {
		m.Inner[i] = d.inner(i)
		m.Rise[i] = d.height(i, m.Inner[i]) - d.Lips[i].Corner
	}
	return m
}
