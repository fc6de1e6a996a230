package draw

import (
	"errors"
	"math"
	"strings"
	"unicode/utf8"
)

// Job is a drill to be drawn on paper.
type Job struct {
	Drill  Drill
	Before *Drill // laid under it, dashed; nil for none
	Labels Labels
	Title  string
	Notes  []string // what stands under the title
	Units  string   // what the dimensions are in, in words
}

// Labels are the texts of the dimensions; an empty one is not drawn.
type Labels struct {
	Diameter, Web, ChiselLength, ChiselAngle, PointAngle string
	Lips                                                 [2]string
	Height, Remove                                       string
	Offset                                               string    // of the point, off the axis
	Clearance                                            [2]string // lip 2's where it has its own
	// What the details say: the clearances again.
	ClearanceAngle [2]string
	Flat           string // of lips flattened to no rake
}

// Text is writing on a sheet.
type Text struct {
	At    Pt
	Text  string
	Size  float64 // of the letters' body, mm
	Bold  bool
	Align Align
	Angle float64 // degrees, counter-clockwise
}

// Align says which part of a text stands at its place.
type Align uint8

// The alignments.
const (
	Start Align = iota
	Middle
	Finish
)

// Sheet is a drawing ready for paper: millimetres from the lower left corner,
// at the scale stated.
type Sheet struct {
	Paper         string // "A4"
	Width, Height float64
	Scale         Scale
	Title         string
	Paths         []Path
	Arrows        [][3]Pt // filled
	Texts         []Text
	LeftOut       []string // what was asked for and has no room, in words
}

// The zones around the views, in millimetres of paper.
const (
	border    = 8.0
	before    = 9.0  // left of the diameter's dimension
	after     = 6.0  // right of the side view and of what is written over it
	above     = 26.0 // at least, over the views
	below     = 20.0 // at least, under them
	textSize  = 5.0
	noteSize  = 4.0
	titleSize = 6.0
	lineStep  = 1.4 // of a line of writing, in its size
	off       = 13.0
)

// ErrPaper says that no paper is large enough for a scale.
var ErrPaper = errors.New("does not fit on A0")

// OnPaper draws the job at a scale; the zero Scale takes the largest one of ISO
// 5455 that fits A4. The paper is the smallest from A4 to A0 that is large
// enough; [ErrPaper] where none is. The drills must have passed Check.
func OnPaper(j Job, s Scale) (Sheet, error) {
	j.Notes = wrapped(j.Notes)
	side := Side(&j.Drill, j.Before)
	if s == (Scale{}) {
		for _, s = range scales {
			if w, h := j.room(&side, s.Factor()); w <= papers[0].width && h <= papers[0].height {
				break
			}
		}
	}
	w, h := j.room(&side, s.Factor())
	for _, p := range papers {
		if w <= p.width && h <= p.height {
			sheet := Sheet{Paper: p.name, Width: p.width, Height: p.height, Scale: s, Title: j.Title}
			j.onto(&sheet, &side, (p.width-w)/2, p.height-h)
			return sheet, nil
		}
	}
	return Sheet{}, ErrPaper
}

// room returns the paper that the drawing wants at a scale.
func (j *Job) room(side *View, factor float64) (width, height float64) {
	d, l := &j.Drill, j.lanes(factor)
	_, high := side.Bounds()
	right := high.X * factor
	for i, label := range j.Labels.Clearance {
		right = math.Max(right, j.besideSide(i, factor)+written(label)+2*after)
	}
	width = 2*border + before + l.beside + d.D*factor + l.between + right + after
	over, under := j.zones(factor)
	return width, 2*border + over + d.D*factor + under + j.stripHeight()
}

// zones returns the room for dimensions over and under the views.
func (j *Job) zones(factor float64) (over, under float64) {
	l, radius := j.lanes(factor), j.Drill.D/2*factor
	return math.Max(above, l.up-radius+lane), math.Max(below, l.low-radius+past+1)
}

// noteLetters is how many letters of a note fit beside the scale on A4.
const noteLetters = 88

// wrapped breaks notes between words into lines that fit.
func wrapped(notes []string) []string {
	var out []string
	for _, note := range notes {
		line := ""
		for _, word := range strings.Fields(note) {
			if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > noteLetters {
				out, line = append(out, line), ""
			}
			line = strings.TrimPrefix(line+" "+word, " ")
		}
		out = append(out, line)
	}
	return out
}

func (j *Job) stripHeight() float64 {
	return math.Max(26, 2*titleSize+lineStep*noteSize*float64(len(j.Notes))+3)
}

// onto draws everything: the views, moved by the room that is left over, and in
// what is left of that the details.
func (j *Job) onto(s *Sheet, side *View, spareX, spareY float64) {
	factor, d := s.Scale.Factor(), &j.Drill
	strip := border + j.stripHeight()
	p := plan{s: s, j: j, factor: factor, lanes: j.lanes(factor)}
	radius := d.D / 2 * factor
	_, under := j.zones(factor)
	p.row, s.LeftOut = j.fitting(s.Scale, s.Width-2*border-2*after, spareY)
	spareY -= rowHeight(p.row)
	y := strip + under + radius + spareY/2 + rowHeight(p.row)
	p.end = Pt{border + before + p.lanes.beside + radius + spareX, y}
	p.side = Pt{p.end.X + radius + p.lanes.between, y}
	end := End(d, j.Before)
	p.view(&end, p.end)
	p.view(side, p.side)
	p.dimensionEnd()
	p.dimensionSide()
	p.details(strip + spareY/4)
	p.lipAngles()
	p.lipMarks()
	p.sideMarks()
	p.strip(strip)
}

// plan is a drawing in the making.
type plan struct {
	s         *Sheet
	j         *Job
	factor    float64
	lanes     lanes
	row       []detail
	end, side Pt // where the views' origins stand on the paper
}

// put returns the place on paper of a point of a view.
func (p *plan) put(origin, q Pt) Pt {
	return Pt{origin.X + q.X*p.factor, origin.Y + q.Y*p.factor}
}

func (p *plan) view(v *View, origin Pt) {
	for _, path := range v.Paths {
		out := Path{path.Name, path.Line, make([]Pt, len(path.Points))}
		for i, q := range path.Points {
			out.Points[i] = p.put(origin, q)
		}
		p.s.Paths = append(p.s.Paths, out)
	}
}

func (p *plan) line(points ...Pt) {
	p.s.Paths = append(p.s.Paths, Path{Line: Narrow, Points: points})
}

// text writes; of an empty text there is nothing to write.
func (p *plan) text(t Text) {
	if t.Text != "" {
		p.s.Texts = append(p.s.Texts, t)
	}
}

// strip writes title, scale and notes under the views, with a line to hold a
// rule against.
func (p *plan) strip(top float64) {
	s, right := p.s, p.s.Width-border
	p.line(Pt{border, border}, Pt{right, border}, Pt{right, s.Height - border}, Pt{border, s.Height - border}, Pt{border, border})
	p.line(Pt{border, top}, Pt{right, top})
	y := top - 1.3*titleSize
	p.text(Text{At: Pt{border + 3, y}, Text: p.j.Title, Size: titleSize, Bold: true})
	p.text(Text{At: Pt{right - 3, y}, Text: "scale " + s.Scale.String(), Size: titleSize, Bold: true, Align: Finish})
	p.text(Text{At: Pt{right - 3 - symbolWide - 3, y - lineStep*noteSize}, Text: "dimensions in " + p.j.Units, Size: noteSize, Align: Finish})
	p.projection(Pt{right - 3 - symbolWide, y - lineStep*noteSize})
	for i, note := range p.j.Notes {
		p.text(Text{At: Pt{border + 3, y - lineStep*noteSize*float64(i+1)}, Text: note, Size: noteSize})
	}
	const rule = 50
	from, at := right-3-rule, top-20.5
	p.line(Pt{from, at}, Pt{right - 3, at})
	for t := 0.0; t <= rule; t += 10 {
		p.line(Pt{from + t, at - 1.2}, Pt{from + t, at + 1.2})
	}
	p.text(Text{At: Pt{from - 2, at - 1.2}, Text: "50 mm on paper", Size: noteSize, Align: Finish})
}
