package draw

import (
	"math"
	"slices"
)

// detail shows a part of the drill larger, under the views and where the paper
// has room left for it.
type detail struct {
	letter, title string  // the letter stands in the views too
	of            string  // what it shows, in words; "" where there is nothing to be shown
	width, height float64 // of paper; the title counts in its height alone
	draw          func(p *plan, left, foot float64)
}

// across is the paper that the detail takes across: its title may be the widest.
func (d *detail) across() float64 { return math.Max(d.width, written(d.title)) }

// What stands around a detail, in millimetres of paper.
const (
	titleLane = 10.0 // its title
	beneath   = 4.0  // it
	between   = 14.0 // two of them
)

// larger are the scales of ISO 5455 at least twice as large as s, largest first.
func larger(s Scale) []Scale {
	for i, c := range scales {
		if c.Factor() < 2*s.Factor() {
			return scales[:i]
		}
	}
	return scales[:]
}

// fitting returns the details in a row that take no more than so much paper, and
// what the others would have shown.
func (j *Job) fitting(s Scale, width, height float64) (row []detail, leftOut []string) {
	for _, show := range [...]func(at Scale) (detail, bool){
		func(at Scale) (detail, bool) { return j.cornerDetail(0, at) },
		func(at Scale) (detail, bool) { return j.middleDetail(s, at) },
		func(at Scale) (detail, bool) { return j.cornerDetail(1, at) },
	} {
		of, fits := "", false
		for _, scale := range larger(s) {
			var d detail
			d, fits = show(scale)
			of = d.of
			if fits = fits && d.across() <= width && d.height <= height; fits {
				row, width = append(row, d), width-d.across()-between
				break
			}
		}
		if !fits && of != "" {
			leftOut = append(leftOut, of)
		}
	}
	return row, leftOut
}

// shows reports whether the detail of that letter is on the sheet.
func (p *plan) shows(letter string) bool {
	return slices.ContainsFunc(p.row, func(d detail) bool { return d.letter == letter })
}

// rowHeight is the paper that a row takes.
func rowHeight(row []detail) (height float64) {
	for i := range row {
		height = math.Max(height, row[i].height)
	}
	return height
}

// details draws the row with its foot at that height, in the middle of the sheet.
func (p *plan) details(foot float64) {
	width := -between
	for i := range p.row {
		width += p.row[i].across() + between
	}
	left := (p.s.Width - width) / 2
	for _, d := range p.row {
		p.text(Text{At: Pt{left + d.across()/2, foot + d.height - titleLane + 3}, Text: d.title, Size: textSize, Align: Middle})
		d.draw(p, left+(d.across()-d.width)/2, foot)
		left += d.across() + between
	}
}

// clipped returns the parts of a line that lie in the circle around the origin.
func clipped(line []Pt, radius float64) (parts [][]Pt) {
	var run []Pt
	end := func() {
		if len(run) > 1 {
			parts = append(parts, run)
		}
		run = nil
	}
	for i := 1; i < len(line); i++ {
		a, u := line[i-1], Pt{line[i].X - line[i-1].X, line[i].Y - line[i-1].Y}
		// |a + t u| = radius
		square, half := u.X*u.X+u.Y*u.Y, a.X*u.X+a.Y*u.Y
		root := half*half - square*(a.X*a.X+a.Y*a.Y-radius*radius)
		if square == 0 || root <= 0 {
			end()
			continue
		}
		root = math.Sqrt(root)
		from, to := math.Max(0, (-half-root)/square), math.Min(1, (-half+root)/square)
		if from >= to {
			end()
			continue
		}
		if from > 0 || run == nil {
			end()
			run = []Pt{a.plus(u, from)}
		}
		run = append(run, a.plus(u, to))
		if to < 1 {
			end()
		}
	}
	end()
	return parts
}
