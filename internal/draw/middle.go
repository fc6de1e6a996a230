package draw

import "math"

// The middle of the end view larger, in a circle with a letter in the way of ISO
// 128: there the web and the chisel edge of the drill before and after can be
// told apart.
const (
	middleWide = 90.0 // the most paper across the circle
	leastEnd   = 11.0 // the radius of an end view with room for the letter
	leastLarge = 14.0 // and in the detail
	middleRoom = 1.25 // its radius in that of the chisel edges
	chiselOff  = 8.0  // a dimension of a chisel edge beside it

	middleLetter = "B"
)

// middleRadius is how far from the axis the detail of the middle reaches.
func (j *Job) middleRadius() (radius float64) {
	for _, d := range [...]*Drill{&j.Drill, j.Before} {
		for _, end := range d.chisel() {
			radius = math.Max(radius, middleRoom*math.Hypot(end.x, end.y))
		}
	}
	return radius
}

// middleDetail is the detail of a web that the grind changes; false where it is too
// small or too large at a scale, or the view too small for its letter.
func (j *Job) middleDetail(view, s Scale) (detail, bool) {
	if j.Before == nil || j.Labels.WebBefore == "" {
		return detail{}, false
	}
	m := detail{letter: middleLetter, of: "the detail of web and chisel edge", title: middleLetter + " (" + s.String() + ")"}
	factor := s.Factor()
	radius := j.middleRadius() * factor
	side := math.Max(written(j.Labels.ChiselBefore), written(j.Labels.ChiselAfter)) + chiselOff + 3
	m.width, m.height = 2*(radius+side), beneath+2*radius+3*lane+titleLane
	m.draw = func(p *plan, left, foot float64) {
		p.middle(Pt{left + radius + side, foot + beneath + radius}, factor, radius)
	}
	return m, j.Drill.D/2*view.Factor() >= leastEnd && radius >= leastLarge && 2*radius <= middleWide
}

// middle draws the middle of the end view around that place of the paper.
func (p *plan) middle(centre Pt, factor, radius float64) {
	large := *p
	large.factor = factor
	v := End(&p.j.Drill, p.j.Before)
	for _, path := range v.Paths {
		for _, part := range clipped(path.Points, radius/factor) {
			for i := range part {
				part[i] = large.put(centre, part[i])
			}
			name := path.Name
			if name != "" {
				name = "middle-" + name
			}
			p.s.Paths = append(p.s.Paths, Path{name, path.Line, part})
		}
	}
	p.round(centre, radius)
	for i, d := range [...]*Drill{&p.j.Drill, p.j.Before} {
		first, second := large.put(centre, fromEnd(d.chisel()[0])), large.put(centre, fromEnd(d.chisel()[1]))
		web := [...]string{p.j.Labels.WebAfter, p.j.Labels.WebBefore}[i]
		over := centre.Y + radius + 0.7*lane + float64(i)*lane
		top := math.Sqrt(math.Max(0, radius*radius-(first.X-centre.X)*(first.X-centre.X)))
		p.level(Pt{first.X, centre.Y + top}, second, over, web)
		p.beside(first, second, chiselOff*float64(2*i-1), centre, radius, [...]string{p.j.Labels.ChiselAfter, p.j.Labels.ChiselBefore}[i])
	}
}

// beside dimensions a chisel edge along itself, off millimetres to its left as
// it runs, and writes the label outside the circle: right of it for one on the
// left, left of it for one on the right.
func (p *plan) beside(first, second Pt, off float64, centre Pt, radius float64, label string) {
	along := math.Atan2(second.Y-first.Y, second.X-first.X)
	n := unit(along + math.Pi/2)
	way := math.Copysign(1, off)
	for _, q := range [...]Pt{first, second} {
		p.line(q.plus(n, way*gap), q.plus(n, off+way*past))
	}
	a, b := first.plus(n, off), second.plus(n, off)
	p.line(a, b)
	p.arrow(a, along+math.Pi)
	p.arrow(b, along)
	middle := Pt{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
	from := Pt{centre.X + way*(radius+chiselOff), centre.Y + way*0.55*radius}
	if way < 0 {
		from.X -= written(label) + 2
		p.line(Pt{centre.X - radius - chiselOff, from.Y}, middle)
		p.line(from, Pt{from.X + 2 + written(label), from.Y})
		p.text(Text{At: Pt{from.X + 1, from.Y + clear}, Text: label, Size: textSize})
		return
	}
	p.leader(middle, from, label)
}

// round draws a circle.
func (p *plan) round(centre Pt, radius float64) {
	var points []Pt
	for _, t := range steps(0, 2*math.Pi, math.Pi/90) {
		points = append(points, centre.plus(unit(t), radius))
	}
	p.line(points...)
}

// encircle marks in the end view what the detail of the middle shows.
func (p *plan) encircle() {
	radius := p.j.middleRadius() * p.factor
	p.round(p.end, radius)
	var places []Pt
	for _, far := range [...]float64{4, 7, 10} {
		for _, turn := range [...]float64{6, 10, 7, 9, 5, 11, 2, 14, 1, 15, 3, 13} {
			q := p.end.plus(unit(turn*math.Pi/8), radius+far)
			places = append(places, Pt{q.X, q.Y - capital*textSize/2})
		}
	}
	p.settle(Text{Text: middleLetter, Size: textSize, Align: Middle}, places)
}
