package draw

import (
	"math"
	"strings"
)

// How much of a letter's body a letter takes, on the wide side of what the
// usual sans-serif faces need: across, above and below its foot.
const (
	letterWide = 0.64
	narrowWide = 0.37
	boldMore   = 1.1
	capital    = 0.73
	descender  = 0.22

	narrow = "() .,:'|lit"
)

// ems is at most how many bodies of its letters a text is long.
func ems(text string) (long float64) {
	for _, r := range text {
		if strings.ContainsRune(narrow, r) {
			long += narrowWide
		} else {
			long += letterWide
		}
	}
	return long
}

// written is at most how long a label is when written.
func written(label string) float64 { return textSize * ems(label) }

// box is a part of the sheet.
type box struct{ low, high Pt }

// box returns the part of the sheet that the text covers at most.
func (t *Text) box() box {
	long := t.Size * ems(t.Text)
	if t.Bold {
		long *= boldMore
	}
	from := -long * [...]float64{0, 0.5, 1}[t.Align]
	below, above := -descender*t.Size, capital*t.Size
	if t.Angle == 90 {
		return box{Pt{t.At.X - above, t.At.Y + from}, Pt{t.At.X - below, t.At.Y + from + long}}
	}
	return box{Pt{t.At.X + from, t.At.Y + below}, Pt{t.At.X + from + long, t.At.Y + above}}
}

// wider returns the box with a rim around it.
func (b box) wider(by float64) box {
	return box{Pt{b.low.X - by, b.low.Y - by}, Pt{b.high.X + by, b.high.Y + by}}
}

// meets reports whether two boxes have a place in common.
func (b box) meets(c box) bool {
	return b.low.X < c.high.X && c.low.X < b.high.X && b.low.Y < c.high.Y && c.low.Y < b.high.Y
}

// crossed reports whether the line from p to q passes through the box: the part
// of it between the sides is not empty.
func (b box) crossed(p, q Pt) bool {
	if p.X <= b.low.X && q.X <= b.low.X || p.X >= b.high.X && q.X >= b.high.X || p.Y <= b.low.Y && q.Y <= b.low.Y || p.Y >= b.high.Y && q.Y >= b.high.Y {
		return false
	}
	from, to := 0.0, 1.0
	clip := func(at, run, low, high float64) {
		if run == 0 {
			return
		}
		s, t := (low-at)/run, (high-at)/run
		from, to = math.Max(from, math.Min(s, t)), math.Min(to, math.Max(s, t))
	}
	clip(p.X, q.X-p.X, b.low.X, b.high.X)
	clip(p.Y, q.Y-p.Y, b.low.Y, b.high.Y)
	return from < to
}

// collisions counts the lines, arrows and texts of the sheet that a box covers.
func (s *Sheet) collisions(b box) (n int) {
	for i := range s.Paths {
		points := s.Paths[i].Points
		for k := 1; k < len(points); k++ {
			if b.crossed(points[k-1], points[k]) {
				n++
				break
			}
		}
	}
	for _, a := range s.Arrows {
		if b.crossed(a[0], a[1]) || b.crossed(a[1], a[2]) || b.crossed(a[2], a[0]) {
			n++
		}
	}
	for i := range s.Texts {
		if b.meets(s.Texts[i].box()) {
			n++
		}
	}
	return n
}

// rim is kept free around a text that looks for its place.
const rim = 0.4

// settle writes a text at the first of the places where it covers nothing, or
// where it covers least.
func (p *plan) settle(t Text, places []Pt) {
	best, least := t.At, math.MaxInt
	for _, at := range places {
		t.At = at
		if n := p.s.collisions(t.box().wider(rim)); n < least {
			best, least = at, n
		}
	}
	t.At = best
	p.text(t)
}
