package cli

import (
	"cmp"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"golang.org/x/term"

	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/handbook/shop"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print"
)

// globals are the flags that every command takes, as written.
type globals struct {
	format, units, colour, shop    string
	width                          int
	explain, full, check, crlf     bool
	quiet                          bool
	caliper, protractor, indicator string // what the gauges can resolve
}

func (g *globals) flags(f *pflag.FlagSet) {
	f.StringVar(&g.format, "format", "table", "the `FORM` to print in: table, plain, json or csv")
	f.BoolVar(&g.crlf, "crlf", false, "end the lines of CSV as RFC 4180 does, in carriage return and line feed")
	f.StringVar(&g.units, "units", "", "`UNITS`, mm or in: for bare numbers and for printing (default: as the size was given)")
	f.StringVar(&g.colour, "color", "", "`WHEN` to colour: auto, always or never (default: auto)")
	f.BoolVarP(&g.quiet, "quiet", "q", false, "leave cautions, notes and progress out of standard error; errors stay")
	f.IntVar(&g.width, "width", 0, "the `COLUMNS` to print for (default: the terminal's, else 80)")
	f.BoolVar(&g.full, "full", false, "every figure, limit and basis in a table, not the screen of what matters")
	f.BoolVar(&g.explain, "explain", false, "show how each figure is got: formula, numbers, source")
	f.StringVar(&g.caliper, "caliper", "", "the `STEP` that the caliper can resolve: 0.02mm; figures then carry their uncertainty")
	f.StringVar(&g.protractor, "protractor", "", "the `STEP` that the protractor or gauge can resolve: 1deg")
	f.StringVar(&g.indicator, "indicator", "", "the `STEP` that the indicator can resolve: 0.01mm")
	f.StringVar(&g.shop, "shop", "", "a `FILE` of the shop's own limits, materials and gauges, or none (default: $EVENLIP_SHOP, else shop.yaml in the user's evenlip configuration)")
	f.BoolVar(&g.check, "check", false, "exit with 1 when the verdict is not fit; without a verdict, when a figure is outside its limit")
}

// settings are what the flags, the environment and the shop's file say: resolved once,
// before the first drill is read.
type settings struct {
	print.Options
	units quantity.System // Unset goes by the drill
	check bool
	book  *handbook.Book // nil is the embedded one
	shop  bool           // the shop has set something
	usual shop.Screen    // how the shop has its answers
}

// reading is what readings are understood with.
func (s *settings) reading() drill.Options {
	return drill.Options{Units: s.units, Book: s.book}
}

// typed are the units of a bare number that nothing else tells of.
func (s *settings) typed() quantity.System { return cmp.Or(s.units, s.usual.Units) }

// answering is what an answer is computed with.
func (s *settings) answering() command.Options {
	return command.Options{Explain: s.Explain, Gauges: s.Gauges}
}

// forScripts reports whether a program reads the answer.
func (s *settings) forScripts() bool { return s.Form == print.JSON || s.Form == print.CSV }

// settle resolves the settings; without a shop its file is not looked for.
func (a *app) settle(withShop bool) error {
	g := &a.global
	a.set = settings{check: g.check}
	s := &a.set
	s.Explain, s.Full, s.ASCII, s.CRLF = g.explain, g.full, !showsUTF8(), g.crlf
	var faults fault.List
	note := func(f *fault.Fault) {
		if f != nil {
			faults = append(faults, f)
		}
	}
	if withShop {
		faults = append(faults, a.useShop()...)
	}
	if g.units != "" {
		var f *fault.Fault
		if s.units, f = quantity.ParseUnits(g.units); f != nil {
			note(f.In(fault.Place{Flag: "units"}, ""))
		}
	}
	s.printAs(print.Form(g.format))
	switch s.Form {
	case print.Table, print.Plain, print.JSON, print.CSV:
	default:
		note(fault.Flag("format", "", "cannot read %q: takes table, plain, json or csv", g.format))
	}
	note(s.gauge("caliper", g.caliper, quantity.Length, &s.Gauges.Caliper))
	note(s.gauge("protractor", g.protractor, quantity.Angle, &s.Gauges.Protractor))
	note(s.gauge("indicator", g.indicator, quantity.Length, &s.Gauges.Indicator))
	var f *fault.Fault
	s.Colour, f = a.useColour()
	note(f)
	s.Width, f = a.columns()
	note(f)
	return faults.Err()
}

// printAs takes a form, and what it says of the program.
func (s *settings) printAs(form print.Form) {
	s.Form = form
	if form == print.JSON {
		s.Version = versionOf(buildInfo())
	}
}

// gauge takes what a gauge can resolve, if it was named.
func (s *settings) gauge(flag, text string, kind quantity.Kind, to *float64) *fault.Fault {
	if text == "" {
		return nil
	}
	v, f := quantity.Parse(kind, text, s.typed())
	switch {
	case f != nil:
		return f.In(fault.Place{Flag: flag}, "")
	case v.V <= 0:
		return fault.Flag(flag, "give the smallest step that it shows", "%q resolves nothing", text)
	case v.V > coarsest(kind):
		return fault.Flag(flag, "give the smallest step that it shows", "%q tells nothing on a drill", text)
	}
	*to = v.V
	return nil
}

// coarsest returns the step, mm or radians, beyond which a gauge is of no use on a
// drill point.
func coarsest(kind quantity.Kind) float64 {
	if kind == quantity.Angle {
		return 10 * math.Pi / 180
	}
	return 1
}

// What a table is printed for: at the least, usually, on a wide terminal, and
// at the most when it is asked for.
const leastWidth, usualWidth, mostWidth, widest = shop.LeastWidth, 80, 120, shop.MostWidth

func (a *app) columns() (int, *fault.Fault) {
	w := a.global.width
	switch {
	case w < 0 || w > 0 && w < leastWidth || w > widest:
		return usualWidth, fault.Flag("width", "", "cannot use %d: takes %d to %d columns", w, leastWidth, widest)
	case w > 0:
		return w, nil
	case a.set.usual.Width > 0:
		return a.set.usual.Width, nil
	}
	if fd, ok := terminal(a.out); ok {
		if n, _, err := term.GetSize(fd); err == nil && n >= leastWidth {
			return min(n, mostWidth), nil
		}
	}
	return usualWidth, nil
}

// useColour decides: the flag, then NO_COLOR and FORCE_COLOR, then the shop, then whether
// a terminal is there that knows colours.
func (a *app) useColour() (bool, *fault.Fault) {
	asked := a.global.colour
	if asked != "" && !slices.Contains(shop.Colours, asked) {
		return false, fault.Flag("color", "", "cannot read %q: takes auto, always or never", asked)
	}
	if asked == "" || asked == "auto" {
		if os.Getenv("NO_COLOR") != "" {
			return false, nil
		}
		if v := os.Getenv("FORCE_COLOR"); v != "" {
			off, err := strconv.ParseBool(v)
			return err != nil || off, nil
		}
	}
	switch cmp.Or(asked, a.set.usual.Colour) {
	case "always":
		print.ReadyForColour(a.out)
		return true, nil
	case "never":
		return false, nil
	}
	_, tty := terminal(a.out)
	return tty && takesColour(a.out), nil
}

func terminal(v any) (fd int, ok bool) {
	f, isFile := v.(*os.File)
	if !isFile {
		return 0, false
	}
	fd = int(f.Fd())
	return fd, term.IsTerminal(fd)
}

// without marks global flags that say nothing to a command: each by its name, and
// what does instead.
func without(cmd *cobra.Command, flagsAndHints ...string) *cobra.Command {
	cmd.Annotations = map[string]string{}
	for i := 0; i+1 < len(flagsAndHints); i += 2 {
		cmd.Annotations[flagsAndHints[i]] = flagsAndHints[i+1]
	}
	return cmd
}

// heeded refuses the global flags that say nothing to the command: whoever gives
// one would wait in vain for what it does elsewhere.
func heeded(cmd *cobra.Command) error {
	var errs fault.List
	cmd.Flags().Visit(func(f *pflag.Flag) {
		hint, idle := cmd.Annotations[f.Name]
		if cmd.GroupID == "look" && !idle {
			switch f.Name {
			case "caliper", "protractor", "indicator":
				hint, idle = cmd.Name()+" works nothing out from what was measured", true
			case "check":
				hint, idle = "evenlip inspect --check judges a drill", true
			}
		}
		if idle && f.Value.String() != "false" {
			errs = append(errs, fault.New(hint, "%s: --%s says nothing here", strings.TrimPrefix(cmd.CommandPath(), "evenlip "), f.Name))
		}
	})
	return errs.Err()
}

// print writes the sheets into the buffer and keeps what --check asks.
func (a *app) print(jobs ...print.Job) error {
	for _, j := range jobs {
		j.Sheet.Shop = a.set.shop
		if a.set.check && j.Sheet.Outside() {
			a.outside = true
		}
	}
	return print.Write(&a.buf, jobs, a.set.Options)
}

// printSheet prints a sheet that depends on no drill.
func (a *app) printSheet(s *sheet.Sheet, units quantity.System) error {
	return a.print(print.Job{Sheet: s, System: orMetric(cmp.Or(units, a.set.usual.Units))})
}

func orMetric(s quantity.System) quantity.System {
	if s == quantity.Unset {
		return quantity.Metric
	}
	return s
}
