package draw

import (
	"math"

	"evenlip/internal/point"
)

// flute is one flute and the land across it, in the frame of the lip that cuts
// into it: that lip lies at y = web/2, x > 0.
//
// A lip that is bent ([Drill.Bow]) has a section of its own, from where each of its
// points stands.
//
// The flute's section, square to the axis through the lip's corner, is the one
// that makes the lip straight. The lip is a line in space; the helix carries
// each of its points down to the plane of the section and turns it by
// depth x tan(helix)/R on the way. So the point of the lip at x, whose height
// over the corner is z, stands in the section at the radius and angle
//
//	r = sqrt(x^2 + w^2/4)    theta = atan2(w/2, x) - z tan(helix)/R
//
// At x = 0 that curve touches the circle of the web. From there the back of the
// flute is our own curve: along the web as far as needed, then one arc that
// touches the web's circle from outside, and so clears it, up to the heel.
type flute struct {
	radius, web float64 // of the drill; half its web
	body        float64 // radius behind the margin
	corner      float64 // angle of the lip's outer corner
	outer       float64 // of the lip, along it
	cot         float64 // of the lip's half angle
	twist       float64 // turn of the helix per length
	turn        float64 // turn of the helix over the height of the lip
	heel        float64 // angle of the heel across the flute
	margin      float64 // angle of the margin
	base        float64 // height of the corner
	bent        bent    // the lip, where it is not straight
}

// polar is a point of a section.
type polar struct{ r, theta float64 }

func (d *Drill) flute(i int) flute {
	r := d.D / 2
	f := flute{
		radius: r, web: d.Web / 2, body: r * d.Land.Body, corner: point.WebAngle(d.Web, r),
		outer: point.AlongLip(r, d.Web), cot: 1 / math.Tan(d.Lips[i].HalfAngle), twist: math.Tan(d.Helix) / r,
		margin: d.Land.Margin / r, base: d.Lips[i].Corner,
	}
	f.bent = d.bent(i)
	f.turn = f.outer * f.cot * f.twist
	f.heel = math.Max(f.corner+d.Land.Flute, f.bottom()+leastArc)
	return f
}

// face returns the section's point that the helix brings to the lip at x.
func (f *flute) face(x float64) polar {
	if v, ok := f.bent.at(x); ok {
		return polar{math.Hypot(v.x, v.y), math.Atan2(v.y, v.x) - (v.z-f.base)*f.twist}
	}
	return polar{math.Hypot(x, f.web), math.Atan2(f.web, x) - (f.outer-x)*f.cot*f.twist}
}

// bottom returns the angle where the section touches the web's circle.
func (f *flute) bottom() float64 { return math.Pi/2 - f.turn }

// backSpread is how far round from the heel the arc of the flute's back starts.
const backSpread = 55 * math.Pi / 180

// back returns the section from the web to the heel.
func (f *flute) back() []polar {
	bottom := f.bottom()
	start := math.Max(bottom, f.heel-backSpread)
	var out []polar
	for _, t := range steps(bottom, start, fine) {
		out = append(out, polar{f.web, t})
	}
	spread := f.heel - start
	radius := (f.body*f.body - 2*f.web*f.body*math.Cos(spread) + f.web*f.web) / (2 * (f.body*math.Cos(spread) - f.web))
	cx, cy := (f.web+radius)*math.Cos(start), (f.web+radius)*math.Sin(start)
	end := math.Atan2(f.body*math.Sin(f.heel)-cy, f.body*math.Cos(f.heel)-cx)
	sweep := math.Mod(start+math.Pi-end+4*math.Pi, 2*math.Pi)
	for _, t := range steps(0, sweep, fine) {
		x, y := cx+radius*math.Cos(start+math.Pi-t), cy+radius*math.Sin(start+math.Pi-t)
		theta := math.Atan2(y, x)
		theta += 2 * math.Pi * math.Round((start+spread*t/sweep-theta)/(2*math.Pi))
		out = append(out, polar{math.Hypot(x, y), theta})
	}
	return out
}

// section returns the flute from the corner over the web to the heel, then the
// land across it up to the corner of the lip there, which may stand at another
// height.
func (f *flute) section(across *flute) []polar {
	var out []polar
	for _, x := range steps(f.outer, 0, f.radius/50) {
		out = append(out, f.face(x))
	}
	out = append(out, f.back()...)
	next := math.Pi + across.corner + (f.base-across.base)*f.twist
	for _, t := range steps(f.heel, next-f.margin, fine) {
		out = append(out, polar{f.body, t})
	}
	for _, t := range steps(next-f.margin, next, fine) {
		out = append(out, polar{f.radius, t})
	}
	return out
}

// fine is the angle between neighbouring points of a curve: at half a degree a
// chord stays within 1e-5 of its radius.
const fine = math.Pi / 360

// steps returns evenly spaced values from one to the other, both included, no
// further apart than step; one value where the two are the same.
func steps(from, to, step float64) []float64 {
	n := int(math.Ceil(math.Abs(to-from) / step))
	out := make([]float64, 0, n+1)
	for i := 0; i < n; i++ {
		out = append(out, from+(to-from)*float64(i)/float64(n))
	}
	return append(out, to)
}
