package draw

import "math"

// Dimensioning in the way of ISO 129: narrow lines, filled arrowheads, text
// above its line and readable from below or from the right.
const (
	arrowLength = 3.5
	arrowHalf   = 0.6
	gap         = 1.0 // between a feature and its extension line
	past        = 1.8 // an extension line past the dimension line
	clear       = 1.8 // text over its line
	tail        = 7.0 // of an arrow from outside
	// roomForArrows is what two arrows pointing outward take.
	roomForArrows = 2*arrowLength + 2
)

func unit(angle float64) Pt { return Pt{math.Cos(angle), math.Sin(angle)} }

func (q Pt) plus(u Pt, by float64) Pt { return Pt{q.X + u.X*by, q.Y + u.Y*by} }

// arrow draws a head whose tip is at tip, pointing along the angle.
func (p *plan) arrow(tip Pt, angle float64) {
	u, n := unit(angle), unit(angle+math.Pi/2)
	back := tip.plus(u, -arrowLength)
	p.s.Arrows = append(p.s.Arrows, [3]Pt{tip, back.plus(n, arrowHalf), back.plus(n, -arrowHalf)})
}

// upright dimensions the height between two points at x, to the left of them.
// Where the label does not fit between, it stands over the upper arrow.
func (p *plan) upright(a, b Pt, x float64, label string) {
	if a.Y < b.Y {
		a, b = b, a
	}
	for _, q := range [...]Pt{a, b} {
		p.line(Pt{q.X - gap, q.Y}, Pt{x - past, q.Y})
	}
	at := Text{At: Pt{x - clear, (a.Y + b.Y) / 2}, Text: label, Size: textSize, Align: Middle, Angle: 90}
	top, bottom := a.Y, b.Y
	if a.Y-b.Y < roomForArrows {
		bottom, top = b.Y-tail, a.Y+tail
		p.arrow(Pt{x, a.Y}, -math.Pi/2)
		p.arrow(Pt{x, b.Y}, math.Pi/2)
	} else {
		p.arrow(Pt{x, a.Y}, math.Pi/2)
		p.arrow(Pt{x, b.Y}, -math.Pi/2)
	}
	if a.Y-b.Y < written(label)+2 {
		at.At.Y, at.Align = a.Y+past, Start
		top = math.Max(top, at.At.Y+written(label))
	}
	p.line(Pt{x, top}, Pt{x, bottom})
	p.text(at)
}

// level dimensions the distance between two points along the page at y. Where
// the arrows do not fit between, they point in from outside.
func (p *plan) level(a, b Pt, y float64, label string) {
	if a.X > b.X {
		a, b = b, a
	}
	for _, q := range [...]Pt{a, b} {
		way := math.Copysign(1, y-q.Y)
		p.line(Pt{q.X, q.Y + way*gap}, Pt{q.X, y + way*past})
	}
	wide := b.X-a.X >= written(label)+2
	if b.X-a.X >= roomForArrows {
		p.arrow(Pt{a.X, y}, math.Pi)
		p.arrow(Pt{b.X, y}, 0)
		if wide {
			p.line(Pt{a.X, y}, Pt{b.X, y})
			p.text(Text{At: Pt{(a.X + b.X) / 2, y + clear}, Text: label, Size: textSize, Align: Middle})
			return
		}
		p.line(Pt{a.X, y}, Pt{b.X + 3 + written(label), y})
	} else {
		p.arrow(Pt{a.X, y}, 0)
		p.arrow(Pt{b.X, y}, math.Pi)
		p.line(Pt{a.X - tail, y}, Pt{b.X + tail + written(label), y})
	}
	right := b.X + 3
	if b.X-a.X < roomForArrows {
		right = b.X + tail - 1
	}
	p.text(Text{At: Pt{right, y + clear}, Text: label, Size: textSize})
}

// arc dimensions an angle about a point, counter-clockwise from one angle to
// the other, and returns the middle of the arc.
func (p *plan) arc(centre Pt, from, to, radius float64) Pt {
	var points []Pt
	for _, t := range steps(from, to, math.Pi/90) {
		points = append(points, centre.plus(unit(t), radius))
	}
	p.line(points...)
	// A head is a chord of its arc, so it leans by half of what it spans.
	lean := arrowLength / radius / 2
	p.arrow(centre.plus(unit(from), radius), from-math.Pi/2+lean)
	p.arrow(centre.plus(unit(to), radius), to+math.Pi/2-lean)
	return centre.plus(unit((from+to)/2), radius)
}

// leader draws a line from a feature to a text, which begins where the line is level.
func (p *plan) leader(to, from Pt, label string) {
	p.line(to, from, Pt{from.X + 2 + written(label), from.Y})
	p.text(Text{At: Pt{from.X + 1, from.Y + clear}, Text: label, Size: textSize})
}

// leaderFromLeft draws one to a text that ends where the line is level.
func (p *plan) leaderFromLeft(to, from Pt, label string) {
	p.line(to, from, Pt{from.X - 2 - written(label), from.Y})
	p.text(Text{At: Pt{from.X - 1, from.Y + clear}, Text: label, Size: textSize, Align: Finish})
}
