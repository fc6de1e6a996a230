package draw

import "math"

// bodyShown is how much of the body is drawn behind the corners, as a part of D.
const bodyShown = 1.6

// Side returns the side view, lips in the plane of the picture, the point to
// the left. The drill that before is, where it is not nil, is laid over it
// dashed.
func Side(d, before *Drill) View {
	var v View
	end := math.Min(d.Lips[0].Corner, d.Lips[1].Corner) - bodyShown*d.D
	tip := d.Tip()
	if before != nil {
		tip = math.Max(tip, before.Tip())
	}
	over := overhang * d.D
	v.add(Chain, Pt{-tip - over, 0}, Pt{-end + over, 0})
	if before != nil {
		before.pointLines(&v, "side-before-", Dashed, fromSide)
		before.ends(&v, Dashed, d)
	}
	d.pointLines(&v, "side-", Wide, fromSide)
	d.ends(&v, Wide, nil)
	if d.Flat > 0 { // along lip 2, whose face is on the near side
		land := seen(fromSide, 1, d.lipLine(1))
		for i := range land {
			land[i].X += d.Flat
		}
		v.addNamed("side-flat", Wide, land)
	}
	v.add(Wide, seen(fromSide, 1, d.edge(1))...)
	top, bottom := d.silhouette(end)
	v.addNamed("outline-top", Wide, top)
	v.addNamed("outline-bottom", Wide, bottom)
	d.helices(&v, end)
	v.add(Narrow, torn(top[len(top)-1], bottom[len(bottom)-1])...)
	for i := range d.Lips {
		at := d.lip(i)[0].half(i)
		v.Marks = append(v.Marks, Mark{Pt{-at.z - 0.13*d.D, at.x * 0.85}, lipNames[i]})
	}
	return v
}

// ends adds the rims of the flanks as far as the side view shows them: that of
// lip 1 to its heel, that of lip 2 to the outline. Of a drill before grinding
// the outline goes on to that of the drill after.
func (d *Drill) ends(v *View, l Line, after *Drill) {
	for i := range d.Lips {
		k := d.flank(i)
		to := k.f.corner
		if i == 0 && after == nil {
			to = k.heel
		}
		rim := seen(fromSide, i, k.rim(to))
		if after != nil {
			next := after.flank(i)
			reached := rim[len(rim)-1]
			rim = append(rim, Pt{-next.depth(next.f.corner), reached.Y})
		}
		v.add(l, rim...)
	}
}

// silhouette returns the outline behind the flanks, top and bottom, from the
// point to the end shown: the furthest that any part of the turning section
// reaches.
func (d *Drill) silhouette(end float64) (top, bottom []Pt) {
	var sections [2][]polar
	var bases [2]float64
	for i := range sections {
		f, across := d.flute(i), d.flute(1-i)
		sections[i], bases[i] = f.section(&across), f.base
	}
	twist := d.flute(0).twist
	reach := func(z float64) (low, high float64) {
		for i, s := range sections {
			for _, p := range s {
				x := p.r * math.Cos(p.theta+(z-bases[i])*twist)
				if i == 1 {
					x = -x
				}
				low, high = math.Min(low, x), math.Max(high, x)
			}
		}
		return low, high
	}
	start := [2]float64{}
	for i := range start {
		k := d.flank(i)
		start[i] = k.depth(math.Min(k.f.corner, k.heel))
	}
	for _, z := range steps(start[0], end, d.D/150) {
		_, high := reach(z)
		top = append(top, Pt{-z, high})
	}
	for _, z := range steps(start[1], end, d.D/150) {
		low, _ := reach(z)
		bottom = append(bottom, Pt{-z, low})
	}
	return top, bottom
}

// helices adds the edges of the lands where they are on the near side: the
// leading edge, the back of the margin and the heel.
func (d *Drill) helices(v *View, end float64) {
	for i := range d.Lips {
		own, k, across := d.flute(i), d.flank(i), d.flute(1-i)
		heel := across.heel - math.Pi + (own.base-across.base)*own.twist
		for _, e := range [...]struct{ r, theta, from float64 }{
			{own.radius, own.corner, own.base},
			{own.radius, own.corner - own.margin, k.depth(k.margin)},
			{own.body, heel, k.depth(k.heel)},
		} {
			var run []Pt
			for _, z := range steps(e.from, end, d.D/150) {
				p := at(e.r, e.theta+(z-own.base)*own.twist, z).half(i)
				if p.y < 0 {
					run = append(run, fromSide(p))
					continue
				}
				v.addRun(run)
				run = nil
			}
			v.addRun(run)
		}
	}
}

func (v *View) addRun(run []Pt) {
	if len(run) > 1 {
		v.add(Wide, run...)
	}
}

// torn returns a line that is drawn freehand, where a part is broken off.
func torn(a, b Pt) []Pt {
	swing := math.Abs(a.Y-b.Y) * 0.025
	var out []Pt
	for _, t := range steps(0, 1, 1.0/48) {
		wave := math.Sin(4*math.Pi*t) + 0.5*math.Sin(6*math.Pi*t)
		out = append(out, Pt{a.X + (b.X-a.X)*t + swing*wave, a.Y + (b.Y-a.Y)*t})
	}
	return out
}
