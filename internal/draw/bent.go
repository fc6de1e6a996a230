package draw

import (
	"math"

	"evenlip/internal/point"
)

// bent is a lip ground to another angle than its flute was made for: the curve of
// [point.BentLip], laid with its ends on those of the straight lip that was read.
type bent struct {
	lip          point.BentLip
	d            *Drill // nil for a straight lip
	i            int
	inner, outer float64 // along the lip
	from, to     Pt      // the curve's own ends, seen from the end
	slope        float64 // of the flank, ahead of the lip
	long         float64 // between those ends
}

// leastBow is the bow, as a part of D, under which a lip is drawn straight: on A4 a
// third of a narrow line's width.
const leastBow = 0.002

// bent returns the curve of lip i.
func (d *Drill) bent(i int) bent {
	l, outer, inner := &d.Lips[i], point.AlongLip(d.D/2, d.Web), math.Max(0, d.inner(i))
	lead := (1/math.Tan(l.HalfAngle) - 1/math.Tan(d.Made)) * math.Tan(d.Helix) / (d.D / 2)
	if about := lead * (outer - inner) * (outer - inner) / 4; d.Made == 0 || !(math.Abs(about) >= leastBow*d.D) {
		return bent{}
	}
	flank := point.NewFlank(d.D, d.Web, l.HalfAngle, l.Clearance)
	b := bent{lip: point.NewBentLip(flank, d.Made, d.Helix), d: d, i: i, inner: inner, outer: outer, slope: flank.Slope()}
	b.from.X, b.from.Y = b.lip.At(inner)
	b.to.X, b.to.Y = b.lip.At(outer)
	b.long = math.Hypot(b.to.X-b.from.X, b.to.Y-b.from.Y)
	if !(b.long > 0) { // flute and flank do not meet
		return bent{}
	}
	return b
}

// at returns where the place at x along the straight lip stands on the curve; false
// where the lip is straight there.
func (b *bent) at(x float64) (vec, bool) {
	if b.d == nil || x < b.inner {
		return vec{}, false
	}
	var q Pt
	q.X, q.Y = b.lip.At(math.Min(x, b.outer))
	u, v := Pt{(b.to.X - b.from.X) / b.long, (b.to.Y - b.from.Y) / b.long}, Pt{q.X - b.from.X, q.Y - b.from.Y}
	along, off := b.inner+(u.X*v.X+u.Y*v.Y)*(b.outer-b.inner)/b.long, u.X*v.Y-u.Y*v.X
	return vec{along, b.d.Web/2 + off, b.d.height(b.i, along) + b.slope*off}, true
}

// Bow returns how far lip i is drawn off the straight line between its ends, seen from
// the end, positive where it stands ahead: 0 for a lip that is drawn straight.
func (d *Drill) Bow(i int) float64 {
	b := d.bent(i)
	if b.d == nil {
		return 0
	}
	return b.lip.Bow(b.inner)
}

// lipLine returns the line of lip i, the outer end first, in its own frame.
func (d *Drill) lipLine(i int) []vec {
	ends, b := d.lip(i), d.bent(i)
	if b.d == nil {
		return ends
	}
	out := []vec{ends[0]}
	for _, x := range steps(b.outer, b.inner, d.D/80)[1:] {
		v, _ := b.at(x)
		out = append(out, v)
	}
	if ends[1].x < b.inner { // past the axis it is straight
		out = append(out, ends[1])
	}
	return out
}
