package draw

import "math"

// lanes are the heights over and under the axis at which dimensions of both
// views stand, and how far the side view keeps from the end view, in
// millimetres of paper: each has its own, however small the drill is drawn.
type lanes struct {
	up      float64 // web, lip height and what comes off the upper lip
	chisel  float64 // the chisel edge's angle
	low     float64 // the chisel edge's length, below
	removed float64 // what comes off the lower lip, below
	labels  float64 // the lips' angles end here, left of the side view's origin
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
	arm := (pointArc + past) * math.Sin(math.Max(d.Lips[0].HalfAngle, d.Lips[1].HalfAngle))
	l.chisel = math.Max(0.62*radius, arm+1)
	l.up = math.Max(radius+math.Max(off, over+2), math.Max(l.chisel+lane, arm+3))
	l.removed = math.Max(radius+0.7*off, arm+lane)
	l.low = l.removed
	if j.showsRemoval() {
		if _, _, top := j.removal(); !top {
			l.low += lane
		}
	}
	widest := written(j.Labels.PointAngle)
	for _, label := range j.Labels.Lips {
		widest = math.Max(widest, written(label))
	}
	_, apex := d.apex()
	l.labels = apex*factor + pointArc
	outermost, nearest := l.labels+widest, l.labels
	if j.Before != nil {
		tip := j.Before.Tip() * factor
		if !j.Before.encloses(outermost+4, radius, factor) {
			l.labels = math.Max(l.labels, tip)
		}
		outermost, nearest = math.Max(l.labels+widest, tip), math.Max(l.labels, tip)
	}
	l.labels += 2
	l.between = 2 + math.Max(outermost+math.Max(aside, over+3), nearest+leastChiselArc+5+written(j.Labels.ChiselAngle))
	return l
}

// encloses reports whether the angles fit between the arc and the point of the
// drill before, inside its outline: they reach so far left of the origin.
func (d *Drill) encloses(left, radius, factor float64) bool {
	return math.Min(d.Lips[0].Corner, d.Lips[1].Corner)*factor > left && radius > lipLabel+textSize+2
}

// aside keeps what is written between the views from the end view.
const aside = 8
