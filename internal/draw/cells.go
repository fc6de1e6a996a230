package draw

import (
	"math"
	"strings"
)

// Picture is both views as text.
type Picture struct {
	Lines  []string
	Under  bool    // the side view stands under the end view, not right of it
	Across float64 // millimetres of the drill over the whole width
	Dot    float64 // the same to a dot, across and down alike
}

// A cell of a terminal is twice as high as wide, so two by four dots of it are
// square.
const (
	dotsAcross = 2
	dotsDown   = 4
	apart      = 0.2 // between the views, as a part of D
)

// InCells draws both views side by side, in cells columns of text; dots of
// braille, or letters where ascii is set. The views stand one under the other
// where the columns are few.
func InCells(d, before *Drill, columns int, ascii bool) Picture {
	end, side := End(d, before), Side(d, before)
	endLow, endHigh := end.Bounds()
	sideLow, sideHigh := side.Bounds()
	width, height := endHigh.X-endLow.X+apart*d.D+sideHigh.X-sideLow.X, endHigh.Y-endLow.Y
	down := columns < fewColumns
	if down {
		width, height = math.Max(endHigh.X-endLow.X, sideHigh.X-sideLow.X), height+sideHigh.Y-sideLow.Y+apart*d.D
	}
	g := grid{columns: columns, letters: ascii, dot: width / float64(dotsAcross*columns-1)}
	g.rows = int(math.Ceil((height/g.dot + 1) / dotsDown))
	g.clear()
	g.view(&end, Pt{-endLow.X, -endHigh.Y})
	if down {
		g.view(&side, Pt{-sideLow.X, endLow.Y - endHigh.Y - apart*d.D - sideHigh.Y})
	} else {
		g.view(&side, Pt{endHigh.X - endLow.X + apart*d.D - sideLow.X, -endHigh.Y})
	}
	return Picture{Lines: g.lines(), Under: down, Across: width, Dot: g.dot}
}

// EndInCells draws the end view alone, as large as so many columns take.
func EndInCells(d *Drill, columns int, ascii bool) []string {
	end := End(d, nil)
	low, high := end.Bounds()
	g := grid{columns: columns, letters: ascii, dot: (high.X - low.X) / float64(dotsAcross*columns-1)}
	g.rows = int(math.Ceil(((high.Y-low.Y)/g.dot + 1) / dotsDown))
	g.clear()
	g.view(&end, Pt{-low.X, -high.Y})
	return g.lines()
}

// fewColumns is where two views side by side become too small to read.
const fewColumns = 60

// grid is a field of dots, the first row on top.
type grid struct {
	columns, rows int
	letters       bool    // it is shown in letters, not in dots
	dot           float64 // millimetres
	dots          []uint8 // the dots of each cell, in the order of braille
	seen          []bool  // cells that a visible edge passes through
	marks         []rune  // letters that stand in place of dots; 0 for none
}

// clear leaves the field empty.
func (g *grid) clear() {
	n := g.columns * g.rows
	g.dots, g.seen, g.marks = make([]uint8, n), make([]bool, n), make([]rune, n)
}

// view draws a view moved by that much; Y runs downward from zero. What is seen
// comes first: in letters the other lines keep to the cells that it leaves.
func (g *grid) view(v *View, by Pt) {
	for _, wide := range [...]bool{true, false} {
		for _, p := range v.Paths {
			run := 0.0
			for i := 1; i < len(p.Points) && (p.Line == Wide) == wide; i++ {
				run = g.line(p.Line, p.Points[i-1].plus(by, 1), p.Points[i].plus(by, 1), run)
			}
		}
	}
	for _, m := range v.Marks {
		g.mark(m.At.plus(by, 1), []rune(m.Text)[0])
	}
}

// around are the cells where a mark may stand, the one that it belongs to first.
var around = [...]struct{ x, y int }{{0, 0}, {-1, 0}, {1, 0}, {0, -1}, {0, 1}, {-2, 0}, {2, 0}}

// mark puts a letter where no line passes, or else where it belongs.
func (g *grid) mark(at Pt, letter rune) {
	x, y := g.place(at)
	best := g.cell(x, y)
	for _, off := range around {
		c := g.cell(x+off.x*dotsAcross, y+off.y*dotsDown)
		if c >= 0 && g.dots[c] == 0 && g.marks[c] == 0 {
			best = c
			break
		}
	}
	if best >= 0 {
		g.marks[best] = letter
	}
}

func (g *grid) place(q Pt) (x, y int) {
	return int(math.Round(q.X / g.dot)), int(math.Round(-q.Y / g.dot))
}

// cell returns the index of the cell of a dot, -1 for one outside.
func (g *grid) cell(x, y int) int {
	if x < 0 || y < 0 || x >= g.columns*dotsAcross || y >= g.rows*dotsDown {
		return -1
	}
	return y/dotsDown*g.columns + x/dotsAcross
}

// line sets the dots from a to b and returns how long the path is by then.
func (g *grid) line(l Line, a, b Pt, run float64) float64 {
	length := math.Hypot(b.X-a.X, b.Y-a.Y) / g.dot
	n := int(math.Ceil(length * 2))
	for i := 0; i <= n; i++ {
		t := 1.0
		if n > 0 {
			t = float64(i) / float64(n)
		}
		x, y := g.place(Pt{a.X + (b.X-a.X)*t, a.Y + (b.Y-a.Y)*t})
		if g.letters && (l == Dashed || l == Chain) {
			y = levelled(a, b, y)
			if !drawnInLetters(l, a, b, x, y) {
				continue
			}
		} else if math.Mod(run+t*length, pattern[l].period) >= pattern[l].drawn {
			continue
		}
		if c := g.cell(x, y); c >= 0 {
			g.set(l, c, brailleDot[y%dotsDown][x%dotsAcross])
		}
	}
	return run + length
}

// set sets a dot of a cell.
func (g *grid) set(l Line, cell int, dot uint8) {
	switch {
	case l == Wide:
		g.seen[cell] = true
	case g.letters && g.seen[cell]:
		return
	}
	g.dots[cell] |= dot
}

// brailleDot is the bit of each dot of a cell: U+2800 and these make a letter.
var brailleDot = [dotsDown][dotsAcross]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

func (g *grid) lines() []string {
	out := make([]string, g.rows)
	for r := range out {
		row := make([]rune, g.columns)
		for c := range row {
			i := r*g.columns + c
			switch dots := g.dots[i]; {
			case g.marks[i] != 0:
				row[c] = g.marks[i]
			case dots == 0:
				row[c] = ' '
			case g.letters:
				row[c] = letter(dots)
			default:
				row[c] = 0x2800 + rune(dots)
			}
		}
		out[r] = strings.TrimRight(string(row), " ")
	}
	return out
}
