package cli

import (
	"cmp"
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/draw"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print"
)

// drawReadings are what a picture shows.
var drawReadings = []drill.Reading{
	drill.Size, drill.Material, drill.Web, drill.SecondWeb, drill.SecondWebAt, drill.WebTaper, drill.ChiselAngle, drill.ChiselLength,
	drill.PointAngle, drill.LipAngle, drill.LipLength, drill.LipHeight, drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Helix, drill.Remove,
}

// drawn is draw as far as it is a calculation: the figures beside the picture.
// A reading that is moved may leave a drill that cannot be drawn: of that one
// there is no figure.
var drawn = calculation{name: "draw", readings: drawReadings, compute: func(d *drill.Drill, explain bool) *sheet.Sheet {
	w, err := newDrawing(d, quantity.Format{System: d.System()}, explain)
	if err != nil {
		return sheet.New("draw", explain)
	}
	w.figures()
	return w.s
}}

// drawFlags are the flags of draw that are no readings.
type drawFlags struct {
	svg, scale string
	ascii      bool
}

func (a *app) drawCommand() *cobra.Command {
	var f drawFlags
	t := &taking{flags: make(map[drill.Reading]*string, len(drawReadings))}
	cmd := &cobra.Command{
		Use: "draw [FILE] [flags]", Short: "the point to scale, from the end and from the side", GroupID: "drill",
		Long: `The point of one drill to scale, seen from the end and from the side: both lips
as measured, uneven ones too, the web, the chisel edge at its angle, margins and
flutes. In the terminal, or with --svg as a dimensioned drawing that prints true
to scale. With --remove the drill before the grind lies dashed under the one
after. Size and lip-angle have to be read; what else was not is drawn as usual,
and the remarks say so. A picture is of one drill: no ranges.
Readings come from flags, from a YAML file whose keys are the flags' names (- is
standard input), or from --sample.
` + lipHelp,
		Example: `  evenlip draw --size 12mm --lip-angle 59,58 --web 2mm --chisel-angle 126
  evenlip draw --sample --svg sample.svg
  evenlip draw --size 1/2 --lip-angle 59 --remove 1/16in --svg half.svg --scale 5:1`,
		Args: atMostOne,
		RunE: func(cmd *cobra.Command, args []string) error {
			h, err := a.drillToDraw(t, args)
			if err != nil {
				return err
			}
			w, err := a.drawing(h.Drill, &f, args)
			if err != nil {
				return err
			}
			return a.draw(h, w, &f)
		},
	}
	t.cmd = cmd
	for _, r := range drawReadings {
		t.flags[r] = textFlag(cmd, r)
	}
	cmd.Flags().StringVar(&f.svg, "svg", "", "write a drawing for paper to this file (- is standard output)")
	cmd.Flags().StringVar(&f.scale, "scale", "", "scale of that drawing, 5:1 (default: the largest of ISO 5455 that fits A4)")
	cmd.Flags().BoolVar(&f.ascii, "ascii", false, "letters in place of dots in the terminal (default: where the locale has no UTF-8)")
	t.sourceFlags()
	return cmd
}

// drillToDraw takes the drill of which enough was read to draw it.
func (a *app) drillToDraw(t *taking, args []string) (*held, error) {
	h, err := a.hold(t, strings.Join(args, ""))
	if err != nil {
		return nil, err
	}
	for _, r := range drill.All() {
		if quantity.IsRange(h.Written(r)) {
			return nil, h.fault(r, "a range makes many drills, and a picture is of one", "give one value; evenlip inspect and the like take ranges")
		}
	}
	if errs := a.faults(drawn, h); len(errs) > 0 {
		return nil, errs
	}
	wants, hint := unreadable(h.Drill)
	switch {
	case wants == "":
		return h, nil
	case len(args) == 1 || h.from != "":
		return nil, fault.NewData("", "%s: draw wants %s", cmp.Or(h.from, strings.Join(args, "")), strings.ReplaceAll(wants, "--", ""))
	}
	return nil, fault.New(hint, "draw wants %s", wants)
}

// drawing makes what is to be shown of a drill from flags or from a file.
func (a *app) drawing(d *drill.Drill, f *drawFlags, file []string) (*drawing, error) {
	if err := a.drawsWith(f); err != nil {
		return nil, err
	}
	gauges, err := a.gauges()
	if err != nil {
		return nil, err
	}
	units, err := a.system()
	if err != nil {
		return nil, err
	}
	w, err := newDrawing(d, quantity.Format{System: cmp.Or(units, d.System()), Gauges: gauges}, a.global.explain)
	switch {
	case err == nil:
		return w, nil
	case len(file) == 1:
		return nil, &fault.Fault{At: fault.Place{File: file[0]}, Text: notDrawn(err, d, "").Error()}
	}
	return nil, notDrawn(err, d, "--")
}

// drawsWith refuses a flag that the picture asked for has no use for.
func (a *app) drawsWith(f *drawFlags) error {
	table, json := a.global.format == string(print.Table), a.global.format == string(print.JSON)
	switch {
	case a.global.check:
		return fault.Flag("check", "evenlip inspect --check judges the drill", "draw holds nothing against a limit")
	case f.svg == "" && f.scale != "":
		return fault.Flag("scale", "add --svg FILE; a terminal's dots have no size on paper", "goes with --svg")
	case f.svg != "" && f.ascii:
		return fault.Flag("ascii", "leave one of the two out", "is for the picture in the terminal, and does not go with --svg")
	case f.ascii && !table && !json:
		return fault.Flag("ascii", "--format table and json have a picture", "there is no picture in --format %s", a.global.format)
	case f.svg == "-" && (!table || a.global.explain):
		return fault.New("name a file, --svg FILE: the figures then go to standard output", "--svg -: prints the drawing alone, without --format and --explain")
	}
	return nil
}

// draw shows the picture that was asked for.
func (a *app) draw(h *held, w *drawing, f *drawFlags) error {
	w.figures()
	if f.svg != "" {
		return a.onPaper(h, w, f)
	}
	return a.inTerminal(h, w, f.ascii || !showsUTF8())
}

// report prints the figures of a drawing.
func (a *app) report(h *held, w *drawing) error {
	return a.print([]print.Job{a.asHeld(h, a.finished(drawn, h.Drill, w.s))})
}

// notDrawn puts in words, in the drill's units, why a drill cannot be drawn: as
// it was read, or as the grind leaves it; dashes stand before a reading's name.
func notDrawn(err error, d *drill.Drill, dashes string) error {
	const hint = "evenlip inspect works out what cannot be drawn"
	var domain *point.DomainError
	if !errors.As(err, &domain) {
		return err
	}
	value := quantity.MM(domain.Value)
	r, ok := drill.Find(domain.Quantity)
	if ok && r.Spec().Kind == quantity.Angle {
		value = quantity.Rad(domain.Value)
	}
	what, reason := quantity.Sayf("{}", value).In(quantity.Format{System: d.System()}), ": it "+domain.Why
	var left *leavesNoDrill
	if errors.As(err, &left) {
		return fault.New("take less off", "%s%s %s: what it leaves cannot be drawn: %s %s%s",
			dashes, drill.Remove, strings.TrimSpace(d.Written(drill.Remove)), domain.Quantity, what, reason)
	}
	if ok && d.Has(r) {
		return fault.New(hint, "%s%s: cannot draw %s%s", dashes, r, what, reason)
	}
	return fault.New(hint, "cannot draw %s %s%s", domain.Quantity, what, reason)
}

// inTerminal prints the figures and the picture under them.
func (a *app) inTerminal(h *held, w *drawing, ascii bool) error {
	o, err := a.options()
	if err != nil {
		return err
	}
	p := draw.InCells(&w.now, w.before, o.Width, ascii)
	w.s.Open("Picture")
	dot := "one dot is"
	if ascii {
		dot = "half a letter's width is"
	}
	w.s.Add(sheet.Figure{Key: "dot_mm", Label: dot, Value: p.Dot, Kind: quantity.Length, Gauge: quantity.Caliper})
	w.s.Work("how the dots stand", "dot = width of the picture / (dots across - 1)", "{} / ({} - 1)", quantity.MM(p.Across), quantity.Of(quantity.Count, 2*float64(o.Width)))
	if o.Form == print.JSON {
		g := sheet.Grid{Key: "picture", Columns: []sheet.Column{{Key: "line", Kind: quantity.Word}}}
		for _, line := range p.Lines {
			g.Rows = append(g.Rows, []sheet.Cell{sheet.W(line)})
		}
		w.s.Grids = append(w.s.Grids, g)
	}
	if err := a.report(h, w); err != nil {
		return err
	}
	if o.Form == print.Table {
		a.buf.WriteByte('\n')
		for _, line := range w.caption(&p) {
			a.buf.WriteString(strings.Join(print.Wrap(line, o.Width), "\n") + "\n")
		}
		a.buf.WriteString(strings.Join(p.Lines, "\n") + "\n")
	}
	return nil
}

// caption says which view is which, and what dashes mean.
func (w *drawing) caption(p *draw.Picture) []string {
	lines := []string{"Left, from the end; right, from the side."}
	if p.Under {
		lines[0] = "Above, from the end; below, from the side."
	}
	if w.before != nil {
		lines = append(lines, "Dashed: as measured. Full lines: "+w.after()+".")
	}
	return lines
}

// onPaper writes the drawing and reports what was written.
func (a *app) onPaper(h *held, w *drawing, f *drawFlags) error {
	var scale draw.Scale
	if f.scale != "" {
		var err error
		if scale, err = draw.ParseScale(f.scale); err != nil {
			return fault.Flag("scale", "", "cannot read %q: %s", f.scale, err)
		}
	}
	sheet, err := draw.OnPaper(w.job(), scale)
	if err != nil {
		return fault.New("leave --scale out for the largest that fits A4", "--scale %s: the drawing %s", scale, err)
	}
	if f.svg == "-" {
		a.buf.Write(sheet.SVG())
		return nil
	}
	w.paperFigures(&sheet, f.svg)
	if err := a.report(h, w); err != nil {
		return err
	}
	return writeDrawing(f.svg, sheet.SVG())
}

func (w *drawing) paperFigures(paper *draw.Sheet, file string) {
	s, d := w.s, &w.now
	s.Open("Drawing")
	s.Add(sheet.Figure{Key: "svg", Label: "written to", Word: file, Kind: quantity.Word})
	s.Add(sheet.Figure{Key: "scale", Label: "scale", Word: paper.Scale.String(), Kind: quantity.Word})
	s.Add(sheet.Figure{Key: "paper", Label: "paper, landscape", Word: paper.Paper, Kind: quantity.Word})
	factor := paper.Scale.Factor()
	s.Add(sheet.Figure{Key: "scale_factor", Label: "drawn over real", Value: factor, Kind: quantity.Number})
	s.Work("ISO 5455, read as paper : drill", "paper / drill", "{} / {}", quantity.Num(paper.Scale.Paper), quantity.Num(paper.Scale.Real))
	w.length("paper_width_mm", "paper width", paper.Width)
	s.Work("ISO 216", paper.Paper+", long side", "{}", quantity.MM(paper.Width))
	w.length("paper_height_mm", "paper height", paper.Height)
	s.Work("ISO 216", paper.Paper+", short side", "{}", quantity.MM(paper.Height))
	w.length("drawn_diameter_mm", "diameter on paper", d.D*factor)
	s.Work(judge.Geometry, "D * scale", "{} * {}", quantity.MM(d.D), quantity.Num(factor))
}
