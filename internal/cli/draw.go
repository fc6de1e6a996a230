package cli

import (
	"errors"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/command"
	"evenlip/internal/command/drawing"
	"evenlip/internal/draw"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print"
)

// drawFlags are the flags of draw that are no readings.
type drawFlags struct {
	svg, scale string
	ascii      bool
}

func (a *app) drawCommand() *cobra.Command {
	var f drawFlags
	about := drawing.Command.About()
	cmd := &cobra.Command{
		Use: "draw [FILE] [flags]", Short: about.Short, GroupID: "drill", Long: about.Long + "\n" + lipHelp, Example: about.Examples,
		Args: atMostOne,
	}
	from := &source{cmd: cmd, flags: addReadings(cmd, about.Readings)}
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		h, faults := a.drillToDraw(from, args)
		if len(faults) > 0 {
			return faults
		}
		if f := a.drawsWith(&f); f != nil {
			return f
		}
		return a.draw(h, &f, func(s *sheet.Sheet) { a.place(s, from, h, strings.Join(args, "")) })
	}
	cmd.Flags().StringVar(&f.svg, "svg", "", "write a drawing for paper to `FILE` (- is standard output)")
	cmd.Flags().StringVar(&f.scale, "scale", "", "the `SCALE` of that drawing, 5:1 (default: the largest of ISO 5455 that fits A4)")
	cmd.Flags().BoolVar(&f.ascii, "ascii", false, "letters in place of dots in the terminal (default: where the locale has no UTF-8)")
	from.addFlags()
	return without(cmd, "check", "evenlip inspect --check judges the drill")
}

// drillToDraw takes the drill of which enough was read to draw it.
func (a *app) drillToDraw(s *source, args []string) (*held, fault.List) {
	h, faults := a.read(s, strings.Join(args, ""))
	if h == nil {
		return nil, faults
	}
	if len(h.Ranges) > 0 {
		return nil, fault.List{fault.Flag(h.Ranges[0].String(), "give one value; evenlip inspect and the like take ranges", "a range makes many drills, and a picture is of one")}
	}
	if faults = a.possible(&drawing.Command, h, faults); len(faults) > 0 {
		return nil, faults
	}
	wants, hint := drawing.Missing(&h.Drill)
	switch {
	case wants == "":
		return h, nil
	case h.from != "":
		return nil, fault.List{fault.NewData("", "%s: draw wants %s", h.from, strings.ReplaceAll(wants, "--", ""))}
	}
	return nil, fault.List{fault.New(hint, "draw wants %s", wants)}
}

// drawsWith refuses a flag that the picture asked for has no use for.
func (a *app) drawsWith(f *drawFlags) *fault.Fault {
	table, json := a.set.Form == print.Table, a.set.Form == print.JSON
	switch {
	case f.svg == "" && f.scale != "":
		return fault.Flag("scale", "add --svg FILE; a terminal's dots have no size on paper", "goes with --svg")
	case f.svg != "" && f.ascii:
		return fault.Flag("ascii", "leave one of the two out", "is for the picture in the terminal, and does not go with --svg")
	case f.ascii && !table && !json:
		return fault.Flag("ascii", "--format table and json have a picture", "there is no picture in --format %s", a.set.Form)
	case f.svg == "-" && (!table || a.set.Explain):
		return fault.New("name a file, --svg FILE: the figures then go to standard output", "--svg -: prints the drawing alone, without --format and --explain")
	}
	return nil
}

// draw shows the picture that was asked for; place says where the drill came from.
func (a *app) draw(h *held, f *drawFlags, place func(*sheet.Sheet)) error {
	d, o := &h.Drill, &a.set
	format := quantity.Format{System: a.system(d), Gauges: o.Gauges}
	r, s := drawing.Compute(d), drawing.Command.Sheet(d, o.Explain)
	report := func() error {
		command.Doubt(&drawing.Command, d, s, o.Gauges)
		h.tell(command.Finish(&drawing.Command, d, s))
		place(s)
		return a.print(print.Job{Sheet: s, System: format.System})
	}
	if f.svg != "" {
		return a.onPaper(&r, s, format, f, report)
	}
	screen := o.Form == print.Table && !o.Full && !o.Explain
	columns := o.Width
	if screen && columns > narrower && columns <= usualWidth { // to leave lines for what is said
		columns -= narrower
	}
	caption, lines := r.InTerminal(s, format, columns, f.ascii || o.ASCII)
	if screen {
		s.Screen = func() *sheet.Screen {
			return command.Finished(r.Screen(s, caption, lines), s, drawing.Command.About())
		}
		return report()
	}
	if o.Form == print.JSON {
		s.Grids = append(s.Grids, drawing.Lines(lines))
	}
	if err := report(); err != nil || o.Form != print.Table {
		return err
	}
	a.buf.WriteByte('\n')
	for _, line := range caption {
		a.buf.WriteString(strings.Join(print.Wrap(line, o.Width), "\n") + "\n")
	}
	a.buf.WriteString(strings.Join(lines, "\n") + "\n")
	return nil
}

// narrower is by how many columns a picture leaves room on a usual terminal.
const narrower = 10

// onPaper writes the drawing and reports what was written.
func (a *app) onPaper(r *drawing.Result, s *sheet.Sheet, format quantity.Format, f *drawFlags, report func() error) error {
	var scale draw.Scale
	if f.scale != "" {
		var err error
		if scale, err = draw.ParseScale(f.scale); err != nil {
			return fault.Flag("scale", "", "cannot read %q: %s", f.scale, err)
		}
	}
	drawn, err := r.OnPaper(s, format, scale, f.svg)
	if err != nil {
		return fault.New("leave --scale out for the largest that fits A4", "--scale %s: the drawing %s", scale, err)
	}
	if f.svg == "-" {
		if left := drawing.LeftOut(&drawn); left != "" {
			a.remark("note:", left)
		}
		a.buf.Write(drawn.SVG())
		return nil
	}
	if err := report(); err != nil {
		return err
	}
	if err := writeDrawing(f.svg, drawn.SVG()); err != nil {
		return err
	}
	a.done = f.svg + " is written all the same"
	return nil
}

// writeDrawing writes an SVG. An older drawing of ours is replaced; anything else in its
// place is left alone.
func writeDrawing(name string, svg []byte) error {
	const head = 200 // bytes, in which a drawing says that it is ours
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return fault.Flag("svg", "--svg - writes to standard output", "%s is no file", name)
	}
	old, f := readFile(name, largestFile, "a drawing by evenlip")
	switch {
	case f != nil && !errors.Is(f, os.ErrNotExist):
		return f
	case len(old) > 0 && !draw.IsOurs(old[:min(len(old), head)]):
		return fault.Flag("svg", "give another name, or remove it first", "%s is not a drawing by evenlip and is left as it is", name)
	}
	if err := os.WriteFile(name, svg, 0o644); err != nil {
		return fault.Unreadable("cannot write "+name, err)
	}
	return nil
}
