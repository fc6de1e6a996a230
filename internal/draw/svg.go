package draw

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"text/template"
	"unicode/utf8"
)

// Maker is the comment by which a drawing of ours is known again.
const Maker = "<!-- drawn by evenlip -->"

// IsOurs reports whether a file that begins like this is a drawing of ours.
func IsOurs(head []byte) bool { return bytes.Contains(head, []byte(Maker)) }

// The widths of ISO 128, wide to narrow as two to one, in millimetres, and the
// dashes: drawn, left out, drawn, left out.
const (
	wideWidth   = "0.7"
	narrowWidth = "0.35"
	dashes      = "3 1.5"
	chainDashes = "8 1.6 0.6 1.6"
	halo        = "0.8" // white around letters, half of it on either side
	font        = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif"
)

// SVG returns the sheet as an SVG document: one user unit is one millimetre,
// and width and height say so, so that it prints true to scale.
func (s *Sheet) SVG() []byte {
	var w bytes.Buffer
	width, height := number(s.Width), number(s.Height)
	fmt.Fprintf(&w, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n%s\n", Maker)
	fmt.Fprintf(&w, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\" viewBox=\"0 0 %s %s\">\n", width, height, width, height)
	fmt.Fprintf(&w, "<title>%s</title>\n", escaped(s.Title+", scale "+s.Scale.String()))
	fmt.Fprintf(&w, "<rect width=\"%s\" height=\"%s\" fill=\"#fff\"/>\n", width, height)
	for _, group := range [...]struct {
		line  Line
		style string
	}{
		{Narrow, `stroke-width="` + narrowWidth + `"`},
		{Chain, `stroke-width="` + narrowWidth + `" stroke-dasharray="` + chainDashes + `"`},
		{Dashed, `stroke-width="` + narrowWidth + `" stroke-dasharray="` + dashes + `"`},
		{Wide, `stroke-width="` + wideWidth + `"`},
	} {
		fmt.Fprintf(&w, "<g fill=\"none\" stroke=\"#000\" stroke-linejoin=\"round\" %s>\n", group.style)
		for _, p := range s.Paths {
			if p.Line != group.line {
				continue
			}
			id := ""
			if p.Name != "" {
				id = `id="` + p.Name + `" `
			}
			fmt.Fprintf(&w, "<path %sd=\"%s\"/>\n", id, s.way(p.Points))
		}
		w.WriteString("</g>\n")
	}
	w.WriteString("<g fill=\"#000\">\n")
	for _, a := range s.Arrows {
		fmt.Fprintf(&w, "<path d=\"%sZ\"/>\n", s.way(a[:]))
	}
	fmt.Fprintf(&w, "</g>\n<g font-family=\"%s\" fill=\"#000\" stroke=\"#fff\" stroke-width=\"%s\" stroke-linejoin=\"round\" paint-order=\"stroke\">\n", font, halo)
	for _, t := range s.Texts {
		x, y := coordinate(t.At.X), coordinate(s.Height-t.At.Y)
		fmt.Fprintf(&w, `<text x="%s" y="%s" font-size="%s"`, x, y, number(t.Size))
		if t.Bold {
			w.WriteString(` font-weight="bold"`)
		}
		if t.Align != Start {
			fmt.Fprintf(&w, ` text-anchor="%s"`, [...]string{Middle: "middle", Finish: "end"}[t.Align])
		}
		if t.Angle != 0 {
			fmt.Fprintf(&w, ` transform="rotate(%s %s %s)"`, number(-t.Angle), x, y)
		}
		fmt.Fprintf(&w, ">%s</text>\n", escaped(t.Text))
	}
	w.WriteString("</g>\n</svg>\n")
	return w.Bytes()
}

// way is a line through points as a path has it.
func (s *Sheet) way(points []Pt) string {
	var w strings.Builder
	for i, q := range points {
		w.WriteString([...]string{"M", "L"}[min(i, 1)] + coordinate(q.X) + " " + coordinate(s.Height-q.Y))
	}
	return w.String()
}

// coordinate writes v to the thousandth of a millimetre.
func coordinate(v float64) string { return number(math.Round(v*1000)/1000 + 0) }

// escaped is text with what XML keeps for itself escaped, and anything that XML cannot
// hold replaced. encoding/xml can do it too, and makes its tables whenever the program
// starts; the templates are there for cobra's sake.
func escaped(text string) string { return template.HTMLEscapeString(strings.Map(held, text)) }

// held returns r where XML 1.0 (section 2.2) has a place for it, else the
// replacement character. A carriage return has none that a reader would keep.
func held(r rune) rune {
	if r == '\t' || r == '\n' || r >= ' ' && r != 0xFFFE && r != 0xFFFF {
		return r
	}
	return utf8.RuneError
}
