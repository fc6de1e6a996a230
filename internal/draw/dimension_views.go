package draw

import "math"

// dimensionEnd puts the diameter, the web and the chisel edge to the end view.
func (p *plan) dimensionEnd() {
	d, l := &p.j.Drill, &p.j.Labels
	r := d.D / 2 * p.factor
	p.upright(Pt{p.end.X, p.end.Y + r}, Pt{p.end.X, p.end.Y - r}, p.end.X-r-p.lanes.beside, l.Diameter)
	outer := p.put(p.end, fromEnd(d.lip(0)[0]))
	first, second := p.put(p.end, fromEnd(d.chisel()[0])), p.put(p.end, fromEnd(d.chisel()[1]))
	p.level(outer, second, p.end.Y+p.lanes.up, l.Web)
	p.chiselAngle(first, second)
	edge := Pt{(first.X + second.X) / 2, (first.Y + second.Y) / 2}
	from := Pt{p.end.X + 0.9*r + 2, p.end.Y - p.lanes.low}
	p.leader(edge, from, l.ChiselLength)
	p.arrow(edge, math.Atan2(edge.Y-from.Y, edge.X-from.X))
	switch {
	case p.j.showsOffset(p.factor):
		p.upright(edge, Pt{p.end.X - r - overhang*d.D*p.factor, p.end.Y}, p.end.X-r-p.lanes.beside+lane, l.Offset)
	case l.Offset != "":
		p.s.LeftOut = append(p.s.LeftOut, "how far the point is off the axis")
	}
}

// leastOffset is how far off the axis, on paper, the point is seen to be.
const leastOffset = 0.5

// showsOffset reports whether how far the point is off the axis is to be seen in
// the end view, and has room to be dimensioned there.
func (j *Job) showsOffset(factor float64) bool {
	d := &j.Drill
	off := math.Abs(d.Offset) * factor
	return j.Labels.Offset != "" && off >= leastOffset && off+past+written(j.Labels.Offset)+2 < d.D/2*factor
}

// leastChiselArc is the smallest arc that two arrowheads fit on.
const leastChiselArc = 7

// chiselAngle dimensions the angle from lip 1's line to the chisel edge, beyond
// the edge's end where the drill is drawn small.
func (p *plan) chiselAngle(first, second Pt) {
	r := p.j.Drill.D / 2 * p.factor
	along := math.Atan2(second.Y-first.Y, second.X-first.X)
	edge := math.Hypot(second.X-first.X, second.Y-first.Y)
	radius := math.Max(math.Max(0.5*r, leastChiselArc), math.Min(edge+tail, 0.75*r))
	if radius+past > edge+gap {
		p.line(second, first.plus(unit(along), radius+past))
	}
	middle := p.arc(first, along, math.Pi/2, radius)
	p.leader(middle, Pt{p.end.X + math.Max(r, middle.X-p.end.X+2), p.end.Y + p.lanes.chisel}, p.j.Labels.ChiselAngle)
}

// lipMarks numbers the lips in the end view, each beside its lip or, where
// there is no room, outside its corner.
func (p *plan) lipMarks() {
	d := &p.j.Drill
	for i := range d.Lips {
		corner := p.put(p.end, fromEnd(d.lip(i)[0].half(i)))
		way := 1 - 2*float64(i)
		over := Pt{corner.X - way*3.2, corner.Y + way*(2+capital*textSize/2)}
		places := []Pt{p.put(p.end, d.besideLip(i))}
		for _, step := range [...]Pt{{}, {-way, 0}, {0, way}, {-way, way}, {-2 * way, way}, {2 * way, way}, {2 * way, 2 * way}, {-2 * way, 2 * way}, {-4 * way, 0}, {3 * way, 0}} {
			places = append(places, over.plus(step, 2))
		}
		for n := range places {
			places[n].Y -= capital * textSize / 2
		}
		p.settle(Text{Text: lipNames[i], Size: textSize, Bold: true, Align: Middle}, places)
	}
}

// sideMarks numbers the lips in the side view. A lip whose angle is written there is
// named by that as well.
func (p *plan) sideMarks() {
	for i := range p.j.Drill.Lips {
		if !p.number(i) && p.j.Labels.Lips[i] == "" {
			p.s.LeftOut = append(p.s.LeftOut, "lip "+lipNames[i]+"'s number in the side view")
		}
	}
}

// number writes a lip's number beside it in the side view, if there is room: what
// stands across the axis from lip 1 is its line gone on, and not lip 2.
func (p *plan) number(i int) bool {
	lip := p.j.Drill.lip(i)
	outer, inner := p.put(p.side, fromSide(lip[0].half(i))), p.put(p.side, fromSide(lip[1].half(i)))
	away := unit(math.Atan2(outer.Y-inner.Y, outer.X-inner.X) + (1-2*float64(i))*math.Pi/2)
	for _, off := range [...]float64{4.5, 8, 11.5} {
		beside := outer.plus(away, off)
		beside.Y -= capital * textSize / 2
		for _, along := range [...]float64{0.3, 0.45, 0.15, 0.6} {
			t := Text{At: beside.plus(Pt{inner.X - outer.X, inner.Y - outer.Y}, along), Text: lipNames[i], Size: textSize, Bold: true, Align: Middle}
			if p.s.collisions(t.box().wider(rim)) == 0 {
				p.text(t)
				return true
			}
		}
	}
	return false
}

// The arc that dimensions the point angle: its usual radius, and how far
// above and below its centre there is always room for the lips' own angles.
const (
	pointArc = 20
	lipLabel = 8.5
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
		p.line(inner, apex.plus(unit(angles[i]), p.lanes.arc+past))
	}
	p.arc(apex, angles[1], angles[0]+2*math.Pi, p.lanes.arc)
	p.pointAngle(apex, angles[0]+2*math.Pi)
	if l.Height != "" {
		p.level(corners[0], corners[1], p.side.Y+p.lanes.up, l.Height)
	}
	if p.j.showsRemoval() {
		p.dimensionRemoved()
	}
	p.clearance()
}

// clearance names each lip's clearance at the rim that falls away behind it,
// lip 1's over the view and lip 2's under it, right of whatever else is written
// there.
func (p *plan) clearance() {
	d := &p.j.Drill
	for i, label := range p.j.Labels.Clearance {
		if label == "" {
			continue
		}
		k := d.flank(i)
		behind := [...]float64{k.f.corner + (k.heel-k.f.corner)/2, k.f.corner / 2}[i] // of lip 2's rim the view shows the beginning
		rim := k.rim(behind)
		to := p.put(p.side, fromSide(rim[len(rim)-1].half(i)))
		from := Pt{p.side.X + p.j.besideSide(i, p.factor) + 6, p.side.Y + [...]float64{p.lanes.up, -p.lanes.removed}[i]}
		if i == 1 { // the line comes from over the writing
			from.X = math.Max(from.X, to.X+2)
		}
		if letter := cornerLetters[i]; p.shows(letter) {
			label = letter + ": " + label
		}
		start, next := to, from
		if i == 1 && p.j.removesUnder() { // the line bends round what is written there
			next = Pt{from.X - 2, p.side.Y - d.D/2*p.factor - 2}
			start = next
			p.line(to, next)
		}
		p.leader(start, from, label)
		p.arrow(to, math.Atan2(to.Y-next.Y, to.X-next.X))
	}
}

// besideSide returns how far to the right of the side view's origin anything is
// written on a lip's side of it, over it or under it.
func (j *Job) besideSide(lip int, factor float64) float64 {
	right := math.Inf(-1)
	for _, l := range j.Drill.Lips {
		right = math.Max(right, -l.Corner*factor)
	}
	label := [...]string{j.Labels.Height, ""}[lip]
	if label == "" && j.showsRemoval() && j.removesUnder() == (lip == 1) {
		label = j.Labels.Remove
	}
	if label != "" {
		right += tail + written(label)
	}
	return right
}

// pointAngle writes the point angle left of the arc that ends at the angle last, or
// left of the drill before where that reaches further, with a line leading there.
func (p *plan) pointAngle(apex Pt, last float64) {
	right := p.side.X - p.lanes.labels
	p.text(Text{At: Pt{right, apex.Y + clear}, Text: p.j.Labels.PointAngle, Size: textSize, Align: Finish})
	if apex.X-p.lanes.arc-right > 3 {
		p.line(apex.plus(unit(math.Pi-(last-math.Pi)/3), p.lanes.arc), Pt{right + 1, apex.Y + clear + capital*textSize/2})
	}
}

// lipAngles writes each lip's angle beside the point angle, on that lip's side of the
// axis, where there is always room, with an arrow to the middle of the lip.
func (p *plan) lipAngles() {
	d := &p.j.Drill
	x, _ := d.apex()
	for i, label := range p.j.Labels.Lips {
		if label == "" {
			continue
		}
		way := 1 - 2*float64(i)
		lip := seen(fromSide, i, d.lipLine(i))
		a, b := lip[(len(lip)-1)/2], lip[len(lip)/2]
		to := p.put(p.side, Pt{(a.X + b.X) / 2, (a.Y + b.Y) / 2})
		// The upper one stands over the point angle, the lower one under it.
		base := math.Max(way*x*p.factor+lipLabel, clear) - clear
		if i == 1 {
			base = math.Max(way*x*p.factor+lipLabel, 0) + capital*textSize + clear
		}
		from := Pt{p.side.X - p.lanes.labels + 1, p.side.Y + way*base}
		p.leaderFromLeft(to, from, label)
		p.arrow(to, math.Atan2(to.Y-from.Y, to.X-from.X))
	}
}

// dimensionRemoved dimensions what comes off.
func (p *plan) dimensionRemoved() {
	from, to, top := p.j.removal()
	y := p.side.Y - p.lanes.removed
	if top {
		y = p.side.Y + p.lanes.up
	}
	p.level(p.put(p.side, from), p.put(p.side, to), y, p.j.Labels.Remove)
}

// removal returns where in the side view most comes off, at one of the four
// ends of the lips, and whether its dimension stands over the view.
func (j *Job) removal() (from, to Pt, top bool) {
	d, most := &j.Drill, math.Inf(-1)
	topIsFree, order := j.Labels.Height == "", [...]int{0, 1}
	if !topIsFree {
		order = [...]int{1, 0}
	}
	for _, i := range order {
		for _, end := range d.lip(i) {
			was := vec{end.x, end.y, j.Before.height(i, end.x)}
			if was.z-end.z > most+1e-9 {
				most, top = was.z-end.z, topIsFree && i == 0
				from, to = fromSide(was.half(i)), fromSide(end.half(i))
			}
		}
	}
	return from, to, top
}

// removesUnder reports whether what comes off is dimensioned under the view.
func (j *Job) removesUnder() bool {
	if !j.showsRemoval() {
		return false
	}
	_, _, top := j.removal()
	return !top
}

// showsRemoval reports whether what comes off is dimensioned.
func (j *Job) showsRemoval() bool { return j.Before != nil && j.Labels.Remove != "" }
