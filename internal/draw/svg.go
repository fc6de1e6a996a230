package draw

import (
	"bytes"
	"math"
	"strconv"
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
	w := svg{height: s.Height}
	w.put(`<?xml version="1.0" encoding="UTF-8"?>`, "\n", Maker, "\n")
	w.put(`<svg xmlns="http://www.w3.org/2000/svg" width="`, number(s.Width), `mm" height="`, number(s.Height), `mm" viewBox="0 0 `, number(s.Width), " ", number(s.Height), `">`, "\n<title>")
	w.escape(s.Title + ", scale " + s.Scale.String())
	w.put("</title>\n", `<rect width="`, number(s.Width), `" height="`, number(s.Height), `" fill="#fff"/>`, "\n")
	for _, group := range [...]struct {
		line  Line
		style string
	}{
		{Narrow, `stroke-width="` + narrowWidth + `"`},
		{Chain, `stroke-width="` + narrowWidth + `" stroke-dasharray="` + chainDashes + `"`},
		{Dashed, `stroke-width="` + narrowWidth + `" stroke-dasharray="` + dashes + `"`},
		{Wide, `stroke-width="` + wideWidth + `"`},
	} {
		w.put(`<g fill="none" stroke="#000" stroke-linejoin="round" `, group.style, ">\n")
		for i := range s.Paths {
			if s.Paths[i].Line == group.line {
				w.path(&s.Paths[i])
			}
		}
		w.put("</g>\n")
	}
	w.put("<g fill=\"#000\">\n")
	for _, a := range s.Arrows {
		w.put(`<path d="`)
		w.points(a[:])
		w.put("Z\"/>\n")
	}
	w.put("</g>\n", `<g font-family="`, font, `" fill="#000" stroke="#fff" stroke-width="`, halo, `" stroke-linejoin="round" paint-order="stroke">`, "\n")
	for i := range s.Texts {
		w.text(&s.Texts[i])
	}
	w.put("</g>\n</svg>\n")
	return w.Bytes()
}

type svg struct {
	bytes.Buffer
	height float64
}

func (w *svg) put(parts ...string) {
	for _, p := range parts {
		w.WriteString(p)
	}
}

// escape writes text with what XML keeps for itself escaped, and anything that
// XML cannot hold replaced. encoding/xml can do it too, and makes its tables
// whenever the program starts; the templates are there for cobra's sake.
func (w *svg) escape(text string) { template.HTMLEscape(w, []byte(strings.Map(held, text))) }

// held returns r where XML 1.0 (section 2.2) has a place for it, else the
// replacement character. A carriage return has none that a reader would keep.
func held(r rune) rune {
	switch {
	case r == '\t', r == '\n', r >= ' ' && r != 0xFFFE && r != 0xFFFF:
		return r
	}
	return utf8.RuneError
}

// coordinate writes v to the thousandth of a millimetre.
func (w *svg) coordinate(v float64) {
	w.WriteString(number(math.Round(v*1000)/1000 + 0))
}

func (w *svg) points(points []Pt) {
	for i, q := range points {
		w.put([...]string{"M", "L"}[min(i, 1)])
		w.coordinate(q.X)
		w.put(" ")
		w.coordinate(w.height - q.Y)
	}
}

func (w *svg) path(p *Path) {
	w.put("<path ")
	if p.Name != "" {
		w.put(`id="`, p.Name, `" `)
	}
	w.put(`d="`)
	w.points(p.Points)
	w.put("\"/>\n")
}

func (w *svg) text(t *Text) {
	w.put(`<text x="`)
	w.coordinate(t.At.X)
	w.put(`" y="`)
	w.coordinate(w.height - t.At.Y)
	w.put(`" font-size="`, number(t.Size), `"`)
	if t.Bold {
		w.put(` font-weight="bold"`)
	}
	if t.Align != Start {
		w.put(` text-anchor="`, [...]string{"start", "middle", "end"}[t.Align], `"`)
	}
	if t.Angle != 0 {
		w.put(` transform="rotate(`, strconv.FormatFloat(-t.Angle, 'f', -1, 64), " ")
		w.coordinate(t.At.X)
		w.put(" ")
		w.coordinate(w.height - t.At.Y)
		w.put(`)"`)
	}
	w.put(">")
	w.escape(t.Text)
	w.put("</text>\n")
}
