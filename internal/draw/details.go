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
	for lip := range j.Drill.Lips {
		of, fits := "", false
		for _, scale := range larger(s) {
			var d detail
			d, fits = j.cornerDetail(lip, scale)
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
