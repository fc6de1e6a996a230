package draw

import "math"

// vec is a point of the drill.
type vec struct{ x, y, z float64 }

// at returns the point of the drill at a radius, angle and height.
func at(r, theta, z float64) vec { return vec{r * math.Cos(theta), r * math.Sin(theta), z} }

// half turns a point about the axis by half a turn for the second lip.
func (v vec) half(lip int) vec {
	if lip == 1 {
		return vec{-v.x, -v.y, v.z}
	}
	return v
}

// flank is where the flank behind one lip meets the periphery: from the corner
// it falls by the tangent of the clearance, and ends at the heel.
type flank struct {
	f      flute   // the flute of the flank's own lip
	slope  float64 // fall per angle
	margin float64 // angle behind the corner at which the margin ends
	heel   float64 // angle behind the corner of the heel
}

// flank returns the flank behind lip i. Both margin and heel move round with
// the helix as the flank falls, so an angle a of the section is met at
// a / (1 - tan(clearance) tan(helix)).
func (d *Drill) flank(i int) flank {
	own, across := d.flute(i), d.flute(1-i)
	tan := math.Tan(d.Lips[i].Clearance)
	lead := 1 - tan*math.Tan(d.Helix)
	land := math.Pi + own.corner - across.heel - (own.base-across.base)*own.twist
	return flank{f: own, slope: own.radius * tan, margin: own.margin / lead, heel: land / lead}
}

// depth returns the height of the flank's rim at an angle behind the corner.
func (k *flank) depth(behind float64) float64 { return k.f.base - k.slope*behind }

// rim returns the rim from the corner as far round as asked, at most to the heel.
func (k *flank) rim(to float64) []vec {
	to = math.Min(to, k.heel)
	var out []vec
	for _, b := range steps(0, math.Min(to, k.margin), fine) {
		out = append(out, at(k.f.radius, k.f.corner-b, k.depth(b)))
	}
	if to <= k.margin {
		return out
	}
	for _, b := range steps(k.margin, to, fine) {
		out = append(out, at(k.f.body, k.f.corner-b, k.depth(b)))
	}
	return out
}

// edge returns the rim of the flute into which lip i cuts, from the lip's inner
// end on, over the web to the heel across: where the other lip's flank ends.
// Along it the flank is taken to fall evenly.
func (d *Drill) edge(i int) []vec {
	f, across := d.flute(i), d.flank(1-i)
	inner := d.inner(i)
	var way []polar
	for _, x := range steps(inner, 0, f.radius/100) {
		way = append(way, f.face(x))
	}
	way = append(way, f.back()...)
	run := lengths(way)
	top, bottom := d.height(i, inner), across.depth(across.heel)
	out := make([]vec, len(way))
	for n, p := range way {
		z := top + (bottom-top)*run[n]
		out[n] = at(p.r, p.theta+(z-f.base)*f.twist, z)
	}
	return out
}

// lengths returns how far along its way each point is, from 0 to 1.
func lengths(way []polar) []float64 {
	run := make([]float64, len(way))
	for n := 1; n < len(way); n++ {
		p, q := at(way[n-1].r, way[n-1].theta, 0), at(way[n].r, way[n].theta, 0)
		run[n] = run[n-1] + math.Hypot(q.x-p.x, q.y-p.y)
	}
	for n := range run {
		run[n] /= run[len(run)-1]
	}
	return run
}
