package draw

import "math"

// lanes are the heights over and under the axis at which dimensions of both
// views stand, and how far the side view keeps from the end view, in
// millimetres of paper: each has its own, however small the drill is drawn.
type lanes struct {
	up      float64 // web, lip height and what comes off the upper lip
	chisel  float64 // the chisel edge's angle
	low     float64 // the chisel edge's length, below
	removed float64 // what comes off the lower lip, and its clearance, below
	arc     float64 // radius of the arc that dimensions the point angle
	labels  float64 // the point angle ends here, left of the side view's origin
	beside  float64 // the diameter, left of the end view's outline
	between float64 // from the end view's outline to the side view's origin
}

// lane is what a line of writing takes with room above and below it.
const lane = 8.4

// lanes lays the dimensions out for a drawing at so much paper a millimetre.
func (j *Job) lanes(factor float64) lanes {
	d := &j.Drill
	radius, over := d.D/2*factor, overhang*d.D*factor
	var l lanes
	l.beside = math.Max(off, over+lane)
	if j.showsOffset(factor) {
		l.beside += lane
	}
	shift, apex := d.apex()
	shift, apex = shift*factor, apex*factor
	arm := (pointArc + past) * math.Sin(math.Max(d.Lips[0].HalfAngle, d.Lips[1].HalfAngle))
	l.chisel = math.Max(0.62*radius, arm+shift+1)
	l.up = math.Max(radius+math.Max(off, over+2), math.Max(l.chisel+lane, arm+shift+3))
	l.removed = math.Max(radius+0.7*off, arm-shift+lane)
	l.low = l.removed
	if j.removesUnder() || j.Labels.Clearance[1] != "" {
		l.low += lane
	}
	widest, tall := written(j.Labels.PointAngle), clear+capital*textSize
	for _, label := range j.Labels.Lips {
		widest = math.Max(widest, written(label))
		if label != "" {
			tall = lipLabel + textSize
		}
	}
	askew := math.Abs(shift) > leastOffset // the angles do not stand along the axis, but across its line
	l.arc, l.labels = pointArc, apex+pointArc
	if askew {
		l.labels = math.Max(l.labels, d.Tip()*factor+over)
	}
	outermost, nearest := l.labels+widest, l.labels
	if j.Before != nil {
		tip := j.Before.Tip() * factor
		if askew {
			tip += over
		}
		switch {
		case !askew && j.Before.encloses(outermost+2, tall+2, factor):
		case !askew && j.Before.encloses(outermost+2-(pointArc-leastArcInside), tall+2, factor):
			l.arc = leastArcInside
			l.labels -= pointArc - leastArcInside
		default:
			l.labels = math.Max(l.labels, tip)
		}
		outermost, nearest = math.Max(l.labels+widest, tip), math.Max(l.labels, tip)
	}
	l.labels += 2
	l.between = 2 + math.Max(outermost+math.Max(aside, over+3), nearest+leastChiselArc+5+written(j.Labels.ChiselAngle))
	return l
}

// leastArcInside is the smallest arc that is taken for the point angle to have
// it with its label inside the point of the drill before.
const leastArcInside = 14

// encloses reports whether what is written up to so far left of the side view's
// origin, so high over the axis and under it, lies inside the drill's outline.
func (d *Drill) encloses(left, high, factor float64) bool {
	inside := left+2 <= d.Tip()*factor && high <= d.D/2*factor
	for i, l := range d.Lips {
		reach := d.flute(i).outer - (left/factor-l.Corner)*math.Tan(l.HalfAngle)
		inside = inside && high <= reach*factor
	}
	return inside
}

// aside keeps what is written between the views from the end view.
const aside = 8
