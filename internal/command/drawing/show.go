package drawing

import (
	"math"
	"strings"

	"evenlip/internal/draw"
	"evenlip/internal/drill"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// picture is one in a terminal.
type picture struct {
	draw.Picture
	columns int
	ascii   bool
}

var pictureFigures = sheet.Group[picture]{Title: "Picture", Figures: []sheet.Def[picture]{
	{Letter: "across", Label: "width of the picture", Kind: quantity.Length, Work: sheet.AsRead, Value: func(p *picture) float64 { return p.Across }},
	{Letter: "dots", Label: "dots across", Kind: quantity.Count, Work: sheet.AsRead, Value: func(p *picture) float64 { return 2 * float64(p.columns) }},
	{Key: "dot_mm", Kind: quantity.Length, Gauge: quantity.Caliper, Work: "across / (dots - 1)", Source: "how the dots stand",
		Value: func(p *picture) float64 { return p.Dot }, LabelOf: func(p *picture) string {
			if p.ascii {
				return "half a letter's width is"
			}
			return "one dot is"
		}},
}}

// InTerminal draws the point in so many columns and adds to s what a dot of it is;
// the caption says which view is which, and what dashes mean.
func (r *Result) InTerminal(s *sheet.Sheet, f quantity.Format, columns int, ascii bool) (caption, lines []string) {
	p := picture{draw.InCells(&r.Now, r.Before, columns, ascii), columns, ascii}
	sheet.Put(s, &p, nil, &pictureFigures)
	caption = []string{"Left, from the end; right, from the side."}
	if p.Under {
		caption[0] = "Above, from the end; below, from the side."
	}
	if r.Before != nil {
		caption = append(caption, "Dashed: as measured. Full lines: "+r.after(f)+".")
	}
	return caption, p.Lines
}

func declares(s *sheet.Sheet) {
	sheet.Put(s, new(picture), nil, &pictureFigures)
	sheet.Put(s, new(paper), nil, &paperFigures)
	s.Grids, s.Partial = append(s.Grids, Lines(nil)), true
}

// FromEnd returns what draws the point from the end in so many columns; nil where the
// readings make no point.
func FromEnd(d *drill.Drill) func(columns int, ascii bool) []string {
	r := Compute(d)
	if r.err != nil {
		return nil
	}
	return func(columns int, ascii bool) []string { return draw.EndInCells(&r.Now, columns, ascii) }
}

// Screen is the picture with its caption.
func (r *Result) Screen(s *sheet.Sheet, caption, lines []string) *sheet.Screen {
	scr := &sheet.Screen{Head: quantity.Sayf("THE POINT AS READ"), About: s.Drill, Picture: lines}
	if r.Before != nil {
		scr.Head = quantity.Sayf("THE POINT AFTER {} OFF", quantity.MM(r.Web.Remove))
	}
	scr.Say(strings.Join(caption, " "))
	scr.Next = append(scr.Next, sheet.Next{Command: "draw", Args: "--svg point.svg", Says: "on paper, with its measures"})
	return scr
}

// Lines lists the lines of a picture, for scripts.
func Lines(lines []string) sheet.Grid {
	g := sheet.Grid{Key: "picture", Columns: []sheet.Column{{Key: "line", Kind: quantity.Word}}}
	for _, line := range lines {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(line)})
	}
	return g
}

// paper is a drawing on paper.
type paper struct {
	draw.Sheet
	file string
	d    float64
}

var paperFigures = sheet.Group[paper]{Title: "Drawing", Figures: []sheet.Def[paper]{
	{Key: "svg", Label: "written to", Kind: quantity.Word, Word: func(p *paper) string { return p.file }},
	{Key: "scale", Label: "scale", Kind: quantity.Word, Word: func(p *paper) string { return p.Scale.String() }},
	{Key: "paper", Label: "paper, landscape", Kind: quantity.Word, Word: func(p *paper) string { return p.Paper }},
	{Letter: "mp", Label: "scale, on paper", Kind: quantity.Number, Work: sheet.AsRead, Value: func(p *paper) float64 { return p.Scale.Paper }},
	{Letter: "mr", Label: "scale, of the drill", Kind: quantity.Number, Work: sheet.AsRead, Value: func(p *paper) float64 { return p.Scale.Real }},
	{Key: "scale_factor", Letter: "m", Label: "drawn over real", Kind: quantity.Number, Work: "mp / mr", Source: "ISO 5455, read as paper : drill",
		Value: func(p *paper) float64 { return p.Scale.Factor() }},
	{Key: "paper_width_mm", Label: "paper width", Kind: quantity.Length, Gauge: quantity.Caliper, Work: sheet.AsRead, Source: "ISO 216, long side",
		Value: func(p *paper) float64 { return p.Width }},
	{Key: "paper_height_mm", Label: "paper height", Kind: quantity.Length, Gauge: quantity.Caliper, Work: sheet.AsRead, Source: "ISO 216, short side",
		Value: func(p *paper) float64 { return p.Height }},
	{Key: "drawn_diameter_mm", Label: "diameter on paper", Kind: quantity.Length, Gauge: quantity.Caliper, Work: "D * m",
		Value: func(p *paper) float64 { return p.d * p.Scale.Factor() }},
}}

// OnPaper draws the point for paper, with its dimensions in the units of f, and adds
// to s what was drawn; file is where it is to be written. The zero Scale takes the
// largest that fits A4.
func (r *Result) OnPaper(s *sheet.Sheet, f quantity.Format, scale draw.Scale, file string) (draw.Sheet, error) {
	drawn, err := draw.OnPaper(r.job(f), scale)
	if err != nil {
		return drawn, err
	}
	sheet.Put(s, &paper{drawn, file, r.Now.D}, nil, &paperFigures)
	if left := LeftOut(&drawn); left != "" {
		s.Find("left-out", sheet.Note, "{}", quantity.Say(left))
	}
	return drawn, nil
}

// LeftOut says what a drawing does not show for want of room, "" where it shows all.
func LeftOut(drawn *draw.Sheet) string {
	if len(drawn.LeftOut) == 0 {
		return ""
	}
	return "no room at " + drawn.Scale.String() + " on " + drawn.Paper + ", left out: " + strings.Join(drawn.LeftOut, ", ")
}

// after says what the drill drawn is: not the one that was measured, where
// something comes off.
func (r *Result) after(f quantity.Format) string {
	return "after " + f.Text(quantity.Length, quantity.Caliper, r.Web.Remove) + " has come off"
}

// leastHeight is the lip-height difference, mm, under which none is dimensioned.
const leastHeight = 0.0005

// labels are the dimensions on paper; one that was not measured stands in
// brackets.
func (r *Result) labels(f quantity.Format) draw.Labels {
	d := &r.Now
	length := func(g quantity.Gauge, v float64) string { return f.Number(quantity.Length, g, v) }
	degrees := func(v float64) string { return f.Text(quantity.Angle, quantity.Protractor, v) }
	l := draw.Labels{
		Diameter:     "Ø" + plainDigits(f.Number(quantity.Size, quantity.NoGauge, d.D)),
		Web:          bracketed(length(quantity.Caliper, d.Web), r.webUsual),
		ChiselLength: bracketed("chisel edge "+length(quantity.Caliper, point.ChiselLength(d.Web, d.Chisel)), r.webUsual || r.chiselUsual),
		ChiselAngle:  bracketed(degrees(point.Obtuse(d.Chisel)), r.chiselUsual),
		PointAngle:   degrees(d.Lips[0].HalfAngle + d.Lips[1].HalfAngle),
	}
	if d.Flat > 0 {
		l.Flat = "flat " + length(quantity.Caliper, d.Flat)
	}
	if !r.clearanceUsual || d.Flat > 0 { // the corner's detail shows the flat as well
		for i := range d.Lips {
			l.ClearanceAngle[i] = bracketed(degrees(d.Lips[i].Clearance), r.clearanceUsual)
		}
		l.Clearance[0] = "clearance " + l.ClearanceAngle[0]
	}
	if d.Lips[0].Clearance != d.Lips[1].Clearance {
		l.Clearance = [2]string{"lip 1 " + l.Clearance[0], "lip 2 clearance " + l.ClearanceAngle[1]}
	}
	if r.Point.Both {
		l.Lips = [2]string{"lip 1: " + degrees(d.Lips[0].HalfAngle), "lip 2: " + degrees(d.Lips[1].HalfAngle)}
	}
	switch h := d.Lips[0].Corner - d.Lips[1].Corner; {
	case h > leastHeight:
		l.Height = "lip 1 higher " + length(heightGauge(r), h)
	case h < -leastHeight:
		l.Height = "lip 2 higher " + length(heightGauge(r), -h)
	}
	if math.Abs(d.Offset) > leastHeight {
		l.Offset = bracketed(length(heightGauge(r), math.Abs(d.Offset)), r.heightUsual)
	}
	if r.Before != nil {
		l.Remove = length(quantity.Caliper, r.Web.Remove)
	}
	return l
}

func bracketed(label string, usual bool) string {
	if usual {
		return "(" + label + ")"
	}
	return label
}

// plainDigits drops the zeros at the end of a nominal size.
func plainDigits(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// job is the drawing for paper.
func (r *Result) job(f quantity.Format) draw.Job {
	j := draw.Job{Drill: r.Now, Before: r.Before, Labels: r.labels(f), Units: "millimetres", Title: r.read.AsRead(drill.Size)[0].Echo() + " drill"}
	if f.System == quantity.Inch {
		j.Units = "inches"
	}
	if r.read.Name != "" {
		j.Notes = append(j.Notes, r.read.Name)
	}
	if b := r.Before; b != nil {
		was := "Dashed: as measured"
		if !r.webUsual {
			was += ", web " + f.Text(quantity.Length, quantity.Caliper, b.Web)
		}
		if !r.webUsual && !r.chiselUsual {
			was += ", chisel edge " + f.Text(quantity.Length, quantity.Caliper, point.ChiselLength(b.Web, b.Chisel))
		}
		j.Title += ", before and after regrinding"
		j.Notes = append(j.Notes, was+". Full lines: "+r.after(f)+", lip laid on lip.")
	}
	usual := "Not measured, drawn at usual values: margin, back of the flute, heel"
	if r.clearanceUsual {
		usual += ", clearance " + f.Text(quantity.Angle, quantity.Protractor, r.Now.Lips[0].Clearance)
	}
	if r.helixUsual {
		usual += ", helix " + f.Text(quantity.Angle, quantity.Protractor, r.Now.Helix)
	}
	if r.heightUsual {
		usual += ", lips at one height"
	}
	if r.flutePointUsual && r.bow() != 0 {
		usual += ", flutes made for a point of " + f.Text(quantity.Angle, quantity.Setting, 2*r.Now.Made)
	}
	if r.webUsual || r.chiselUsual || r.clearanceUsual && r.Now.Flat > 0 || r.heightUsual && math.Abs(r.Now.Offset) > leastHeight {
		usual += ", what is in ( )"
	}
	j.Notes = append(j.Notes, usual+".")
	return j
}
