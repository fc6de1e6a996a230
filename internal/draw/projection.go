package draw

import "math"

// The symbol of third-angle projection, ISO 5456-2: a cone cut off, seen from its
// small end on the left and from the side on the right of that.
const (
	symbolWide  = 12.0 // of the whole
	symbolSmall = 1.0  // radius of the small end
	symbolLarge = 2.0  // and of the large one
	symbolLong  = 4.5  // the cone
)

// projection draws the symbol, its lower left corner near that place.
func (p *plan) projection(at Pt) {
	middle := at.Y + capital*noteSize/2
	centre := Pt{at.X + symbolLarge + 1, middle}
	p.round(centre, symbolSmall)
	p.round(centre, symbolLarge)
	from, to := at.X+symbolWide-symbolLong-0.5, at.X+symbolWide-0.5
	p.line(Pt{from, middle - symbolSmall}, Pt{from, middle + symbolSmall}, Pt{to, middle + symbolLarge}, Pt{to, middle - symbolLarge}, Pt{from, middle - symbolSmall})
	const past = 0.8
	for _, line := range [...][2]Pt{
		{{centre.X - symbolLarge - past, middle}, {centre.X + symbolLarge + past, middle}},
		{{centre.X, middle - symbolLarge - past}, {centre.X, middle + symbolLarge + past}},
		{{from - past, middle}, {math.Min(to+past, at.X+symbolWide), middle}},
	} {
		p.s.Paths = append(p.s.Paths, Path{Line: Chain, Points: line[:]})
	}
}

// round draws a circle.
func (p *plan) round(centre Pt, radius float64) {
	var points []Pt
	for _, t := range steps(0, 2*math.Pi, math.Pi/90) {
		points = append(points, centre.plus(unit(t), radius))
	}
	p.line(points...)
}
