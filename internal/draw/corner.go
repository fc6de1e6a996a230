package draw

import "math"

// The corner of a lip as it is seen from outside along the lip, the point down,
// shows the clearance at its true size: the lip moves to the left, a line square
// to the drill axis runs through the corner, and the flank rises from it.
const (
	cornerShown = math.Pi / 6 // how far behind the corner, as a turn of the drill
	cornerWide  = 100.0       // the most paper that the flank is drawn over
	cornerArc   = 0.75        // the arc of the angle, as a part of the flank's length
	cornerBody  = 12.0        // of the face over the end of the flank, on paper
	ahead       = 8.0         // the level line to the left of the corner
	leastCorner = 20.0        // a flank to be dimensioned, on paper
)

// cornerLetters name the details of the two corners.
var cornerLetters = [...]string{"A", "B"}

// cornerDetail is the detail of a lip's clearance that was read; false where it is
// too small or too large at a scale.
func (j *Job) cornerDetail(lip int, s Scale) (detail, bool) {
	if j.Labels.Clearance[lip] == "" {
		return detail{}, false
	}
	d, factor, letter := &j.Drill, s.Factor(), cornerLetters[lip]
	long := d.D / 2 * math.Sin(cornerShown) * factor
	tan := math.Tan(d.Lips[lip].Clearance)
	sinks := math.Max(tail+2, -long*tan+tail) // below the level line
	rises := math.Max(0, long*tan) + cornerBody + d.Flat*factor
	left := ahead
	if d.Flat > 0 {
		left = math.Max(ahead, clear+written(j.Labels.Flat)+1)
	}
	c := detail{
		letter: letter, of: "the detail of lip " + lipNames[lip] + "'s clearance", title: letter + " (" + s.String() + "): lip " + lipNames[lip] + " from outside, point down",
		width: left + long + 4 + written(j.Labels.ClearanceAngle[lip]), height: beneath + sinks + rises + titleLane,
	}
	c.draw = func(p *plan, from, foot float64) {
		p.corner(lip, Pt{from + left, foot + beneath + sinks}, factor, rises)
	}
	return c, long >= leastCorner && long <= cornerWide
}

// corner draws the corner of a lip at that place of the paper, its metal so high.
func (p *plan) corner(lip int, at Pt, factor, rises float64) {
	d := &p.j.Drill
	k := d.flank(lip)
	tip := k.rim(0)[0]
	var flank []Pt
	for _, v := range k.behind(cornerShown) {
		flank = append(flank, Pt{at.X + (tip.y-v.y)*factor, at.Y + (tip.z-v.z)*factor})
	}
	last := flank[len(flank)-1]
	flat := d.Flat * factor
	face := []Pt{at, {at.X + (rises-flat)*math.Tan(d.Helix), at.Y + rises}}
	if flat > 0 {
		face = []Pt{at, {at.X, at.Y + flat}, face[1]}
		p.text(Text{At: Pt{at.X - clear, at.Y + math.Max(clear, flat/2-capital*textSize/2)}, Text: p.j.Labels.Flat, Size: textSize, Align: Finish})
	}
	back := face[len(face)-1]
	name := "corner-" + lipNames[lip]
	p.s.Paths = append(p.s.Paths, Path{Name: name + "-flank", Line: Wide, Points: flank}, Path{Name: name + "-face", Line: Wide, Points: face})
	p.line(torn(last, Pt{last.X, back.Y})...)
	p.line(back, Pt{last.X, back.Y})
	long := last.X - at.X
	p.line(Pt{at.X - ahead, at.Y}, Pt{at.X + long + 2, at.Y})
	clearance := d.Lips[lip].Clearance
	p.between(at, math.Min(0, clearance), math.Max(0, clearance), cornerArc*long)
	p.text(Text{At: Pt{at.X + long + 4, (at.Y+last.Y)/2 - capital*textSize/2}, Text: p.j.Labels.ClearanceAngle[lip], Size: textSize})
}

// behind returns the rim of a flank that goes on as its margin does, so far
// behind the corner.
func (k *flank) behind(turn float64) (out []vec) {
	for _, b := range steps(0, turn, fine) {
		out = append(out, at(k.f.radius, k.f.corner-b, k.depth(b)))
	}
	return out
}

// between dimensions an angle by two arrows that point at its sides from outside.
func (p *plan) between(centre Pt, from, to, radius float64) {
	reach, lean := tail/radius, arrowLength/radius/2
	for _, side := range [...][2]float64{{from, -1}, {to, 1}} {
		var points []Pt
		for _, t := range steps(side[0], side[0]+side[1]*reach, math.Pi/180) {
			points = append(points, centre.plus(unit(t), radius))
		}
		p.line(points...)
		p.arrow(centre.plus(unit(side[0]), radius), side[0]-side[1]*(math.Pi/2-lean))
	}
}
