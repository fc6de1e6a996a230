package draw

import "math"

// Line is a kind of line, after ISO 128: two widths, and dashes with a meaning.
type Line uint8

// The lines.
const (
	Wide   Line = iota // continuous wide: visible edges and outlines
	Narrow             // continuous narrow: dimensions, extension lines, breaks
	Dashed             // dashed narrow: the drill before grinding
	Chain              // long-dashed dotted narrow: axes
)

// Pt is a point of a view: X to the right, Y upward, in millimetres.
type Pt struct{ X, Y float64 }

// Path is a line through points. Name, where there is one, tells it apart from
// the others of the drawing.
type Path struct {
	Name   string
	Line   Line
	Points []Pt
}

// Mark is a short text that belongs to a place of a view.
type Mark struct {
	At   Pt
	Text string
}

// View is one view of the drill in its own millimetres.
type View struct {
	Paths []Path
	Marks []Mark
}

func (v *View) add(l Line, points ...Pt) {
	v.Paths = append(v.Paths, Path{Line: l, Points: points})
}

func (v *View) addNamed(name string, l Line, points []Pt) {
	v.Paths = append(v.Paths, Path{name, l, points})
}

// Bounds returns the corners of the box around the view's lines.
func (v *View) Bounds() (low, high Pt) {
	low, high = Pt{math.Inf(1), math.Inf(1)}, Pt{math.Inf(-1), math.Inf(-1)}
	for _, p := range v.Paths {
		for _, q := range p.Points {
			low = Pt{math.Min(low.X, q.X), math.Min(low.Y, q.Y)}
			high = Pt{math.Max(high.X, q.X), math.Max(high.Y, q.Y)}
		}
	}
	return low, high
}

// fromEnd and fromSide show points of the drill in the two views.
func fromEnd(v vec) Pt  { return Pt{-v.y, v.x} }
func fromSide(v vec) Pt { return Pt{-v.z, v.x} }

func seen(show func(vec) Pt, lip int, way []vec) []Pt {
	out := make([]Pt, len(way))
	for i, v := range way {
		out[i] = show(v.half(lip))
	}
	return out
}

// lip returns both ends of lip i, the outer one first, in its own frame.
func (d *Drill) lip(i int) []vec {
	f := d.flute(i)
	in := d.inner(i)
	return []vec{{f.outer, f.web, f.base}, {in, f.web, d.height(i, in)}}
}

// chisel returns both ends of the chisel edge.
func (d *Drill) chisel() []vec {
	return []vec{d.lip(0)[1], d.lip(1)[1].half(1)}
}

// overhang is how far an axis is drawn past the outline, as a part of D.
const overhang = 0.07

// End returns the end view: the point as the work sees it. The drill that
// before is, where it is not nil, is laid over it dashed, lips on lips.
func End(d, before *Drill) View {
	var v View
	r := d.D / 2
	var round []vec
	for _, t := range steps(0, 2*math.Pi, fine) {
		round = append(round, at(r, t, 0))
	}
	v.addNamed("circle", Narrow, seen(fromEnd, 0, round))
	far := r + overhang*d.D
	v.add(Chain, Pt{-far, 0}, Pt{far, 0})
	v.add(Chain, Pt{0, -far}, Pt{0, far})
	if before != nil {
		before.pointLines(&v, "end-before-", Dashed, fromEnd)
	}
	for i := range d.Lips {
		k := d.flank(i)
		v.add(Wide, seen(fromEnd, i, d.edge(i))...)
		v.add(Wide, seen(fromEnd, i, k.rim(k.heel))...)
	}
	d.pointLines(&v, "end-", Wide, fromEnd)
	for i := range d.Lips {
		v.Marks = append(v.Marks, Mark{d.besideLip(i), lipNames[i]})
	}
	return v
}

// besideLip is where the number of lip i stands in the end view.
func (d *Drill) besideLip(i int) Pt {
	f := d.flute(i)
	return fromEnd(vec{0.7 * f.outer, f.web + 0.09*d.D, 0}.half(i))
}

var lipNames = [...]string{"1", "2"}

// pointLines adds the two lips and the chisel edge, named behind prefix.
func (d *Drill) pointLines(v *View, prefix string, l Line, show func(vec) Pt) {
	for i := range d.Lips {
		v.addNamed(prefix+"lip-"+lipNames[i], l, seen(show, i, d.lipLine(i)))
	}
	v.addNamed(prefix+"chisel", l, seen(show, 0, d.chisel()))
}
