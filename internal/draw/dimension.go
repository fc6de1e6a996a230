package draw

import "math"

// Dimensioning in the way of ISO 129: narrow lines, filled arrowheads, text
// above its line and readable from below or from the right.
const (
	arrowLength = 3.5
	arrowHalf   = 0.6
	gap         = 1.0 // between a feature and its extension line
	past        = 1.8 // an extension line past the dimension line
	clear       = 1.4 // text over its line
	tail        = 7.0 // of an arrow from outside
)

func unit(angle float64) Pt { return Pt{math.Cos(angle), math.Sin(angle)} }

func (q Pt) plus(u Pt, by float64) Pt { return Pt{q.X + u.X*by, q.Y + u.Y*by} }

// arrow draws a head whose tip is at tip, pointing along the angle.
func (p *plan) arrow(tip Pt, angle float64) {
	u, n := unit(angle), unit(angle+math.Pi/2)
	back := tip.plus(u, -arrowLength)
	p.s.Arrows = append(p.s.Arrows, [3]Pt{tip, back.plus(n, arrowHalf), back.plus(n, -arrowHalf)})
}

// upright dimensions the height between two points at x.
func (p *plan) upright(a, b Pt, x float64, label string) {
	if a.Y < b.Y {
		a, b = b, a
	}
	for _, q := range [...]Pt{a, b} {
		way := math.Copysign(1, x-q.X)
		p.line(Pt{q.X + way*gap, q.Y}, Pt{x + way*past, q.Y})
	}
	p.line(Pt{x, a.Y}, Pt{x, b.Y})
	p.arrow(Pt{x, a.Y}, math.Pi/2)
	p.arrow(Pt{x, b.Y}, -math.Pi/2)
	p.text(Text{At: Pt{x - clear, (a.Y + b.Y) / 2}, Text: label, Size: textSize, Align: Middle, Angle: 90})
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
	if b.X-a.X >= 2*arrowLength+2 {
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
	if b.X-a.X < 2*arrowLength+2 {
		right = b.X + tail - 1
	}
	p.text(Text{At: Pt{right, y + clear}, Text: label, Size: textSize})
}

// written is about as long as a label is when written.
func written(label string) float64 { return 0.53 * textSize * float64(len([]rune(label))) }

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

// dimensionEnd puts the diameter, the web and the chisel edge to the end view.
func (p *plan) dimensionEnd() {
	d, l := &p.j.Drill, &p.j.Labels
	r := d.D / 2
	p.upright(p.put(p.end, Pt{0, r}), p.put(p.end, Pt{0, -r}), p.end.X-r*p.factor-off, l.Diameter)
	outer := p.put(p.end, fromEnd(d.lip(0)[0]))
	first, second := p.put(p.end, fromEnd(d.chisel()[0])), p.put(p.end, fromEnd(d.chisel()[1]))
	p.level(outer, second, p.end.Y+r*p.factor+off, l.Web)
	along := math.Atan2(second.Y-first.Y, second.X-first.X)
	middle := p.arc(first, along, math.Pi/2, 0.5*r*p.factor)
	p.leader(middle, Pt{p.end.X + r*p.factor, p.end.Y + math.Max(0.62*r*p.factor, leastRise)}, l.ChiselAngle)
	edge := Pt{first.X + 0.7*(second.X-first.X), first.Y + 0.7*(second.Y-first.Y)}
	from := Pt{p.end.X + 0.9*r*p.factor, p.end.Y - r*p.factor - 0.7*off}
	p.leader(edge, from, l.ChiselLength)
	p.arrow(edge, math.Atan2(edge.Y-from.Y, edge.X-from.X))
}

// leastRise keeps the chisel's angle above what is written beside the point's.
const leastRise = 21

// leader draws a line from a feature to a text.
func (p *plan) leader(to, from Pt, label string) {
	p.line(to, from, Pt{from.X + 2 + written(label), from.Y})
	p.text(Text{At: Pt{from.X + 1, from.Y + clear}, Text: label, Size: textSize})
}

// The arc that dimensions the point angle: its radius, and how far above and
// below the axis the lips' own angles are written.
const (
	pointArc = 20
	lipLabel = 8.5
	capital  = 0.72 // of a letter's body
)

// dimensionSide puts the point angle, the lips and what comes off to the side
// view.
func (p *plan) dimensionSide() {
	d, l := &p.j.Drill, &p.j.Labels
	x, z := d.apex()
	apex := p.put(p.side, Pt{-z, x})
	var angles [2]float64
	var corners [2]Pt
	for i := range d.Lips {
		corners[i] = p.put(p.side, fromSide(d.lip(i)[0].half(i)))
		inner := p.put(p.side, fromSide(d.lip(i)[1].half(i)))
		angles[i] = math.Atan2(apex.Y-corners[i].Y, apex.X-corners[i].X)
		p.line(inner, apex.plus(unit(angles[i]), pointArc+past))
	}
	middle := p.arc(apex, angles[1], angles[0]+2*math.Pi, pointArc)
	p.text(Text{At: Pt{middle.X - 2, middle.Y + clear}, Text: l.PointAngle, Size: textSize, Align: Finish})
	for i, base := range [...]float64{lipLabel, -lipLabel - textSize*capital} {
		p.text(Text{At: Pt{middle.X - 2, middle.Y + base}, Text: l.Lips[i], Size: textSize, Align: Finish})
	}
	if l.Height != "" {
		p.level(corners[0], corners[1], p.side.Y+d.D/2*p.factor+off, l.Height)
	}
	if l.Remove != "" && p.j.Before != nil {
		p.dimensionRemoved(l.Remove, l.Height == "")
	}
}

// dimensionRemoved dimensions what comes off where most of it does: at one of
// the four ends of the lips.
func (p *plan) dimensionRemoved(label string, topIsFree bool) {
	d, most := &p.j.Drill, math.Inf(-1)
	var from, to Pt
	top, order := false, [...]int{0, 1}
	if !topIsFree {
		order = [...]int{1, 0}
	}
	for _, i := range order {
		for _, end := range d.lip(i) {
			was := vec{end.x, end.y, p.j.Before.height(i, end.x)}
			if was.z-end.z > most+1e-9 {
				most, top = was.z-end.z, i == 0
				from, to = fromSide(was.half(i)), fromSide(end.half(i))
			}
		}
	}
	y := p.side.Y - d.D/2*p.factor - 0.7*off
	if top && topIsFree {
		y = p.side.Y + d.D/2*p.factor + off
	}
	p.level(p.put(p.side, from), p.put(p.side, to), y, label)
}
