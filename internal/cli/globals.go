package cli

import (
	"math"
	"os"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"golang.org/x/term"

	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet/print"
)

// globals are the flags that every command takes.
type globals struct {
	format, units, colour, shop string
	width                       int
	explain, check              bool
	// What the gauges can resolve, as written.
	caliper, protractor, indicator string
}

func (a *app) globalFlags(f *pflag.FlagSet) {
	g := &a.global
	f.StringVar(&g.format, "format", "table", "how to print: table, plain, json or csv")
	f.StringVar(&g.units, "units", "", "mm or in: for bare numbers and for printing (default: as the size was given)")
	f.StringVar(&g.colour, "color", "auto", "auto, always or never")
	f.IntVar(&g.width, "width", 0, "columns to print for (default: the terminal's, else 80)")
	f.BoolVar(&g.explain, "explain", false, "show how each figure is got: formula, numbers, source")
	f.StringVar(&g.caliper, "caliper", "", "what the caliper can resolve: 0.02mm; figures then carry their uncertainty")
	f.StringVar(&g.protractor, "protractor", "", "what the protractor or gauge can resolve: 1deg")
	f.StringVar(&g.indicator, "indicator", "", "what the indicator can resolve: 0.01mm")
	f.StringVar(&g.shop, "shop", "", "a file of the shop's own limits, materials and gauges (default: shop.yaml in the user's evenlip configuration)")
	f.BoolVar(&g.check, "check", false, "exit with 1 when the verdict is not fit; without a verdict, when a figure is outside its limit")
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
		if hint, idle := cmd.Annotations[f.Name]; idle && f.Value.String() != "false" {
			errs = append(errs, fault.New(hint, "%s: --%s says nothing here", strings.TrimPrefix(cmd.CommandPath(), "evenlip "), f.Name))
		}
	})
	return errs.Err()
}

// system is what --units asks for.
func (a *app) system() (quantity.System, error) {
	if a.global.units == "" {
		return quantity.Unset, nil
	}
	s, err := quantity.ParseUnits(a.global.units)
	if err != nil {
		return s, err.In(fault.Place{Flag: "units"}, "")
	}
	return s, nil
}

// coarsest returns the step, mm or radians, beyond which a gauge is of no use on a
// drill point.
func coarsest(kind quantity.Kind) float64 {
	if kind == quantity.Angle {
		return 10 * math.Pi / 180
	}
	return 1
}

// gauges returns what the gauges resolve; zero for one that was not named.
func (a *app) gauges() (g quantity.Gauges, err error) {
	units, err := a.system()
	if err != nil {
		return g, err
	}
	if a.shop != nil {
		g = a.shop.Gauges
	}
	for _, x := range [...]struct {
		flag, text string
		kind       quantity.Kind
		to         *float64
	}{
		{"caliper", a.global.caliper, quantity.Length, &g.Caliper},
		{"protractor", a.global.protractor, quantity.Angle, &g.Protractor},
		{"indicator", a.global.indicator, quantity.Length, &g.Indicator},
	} {
		if x.text == "" {
			continue
		}
		v, bad := quantity.Parse(x.kind, x.text, units)
		if bad != nil {
			return g, bad.In(fault.Place{Flag: x.flag}, "")
		}
		if v.V <= 0 {
			return g, fault.Flag(x.flag, "give the smallest step that it shows", "%q resolves nothing", x.text)
		}
		if coarse := coarsest(x.kind); v.V > coarse {
			return g, fault.Flag(x.flag, "give the smallest step that it shows", "%q tells nothing on a drill", x.text)
		}
		*x.to = v.V
	}
	return g, nil
}

// What a table is printed for: at the least, usually, on a wide terminal, and
// at the most when it is asked for.
const leastWidth, usualWidth, mostWidth, widest = 30, 80, 120, 1000

func (a *app) options() (print.Options, error) {
	o := print.Options{Form: print.Form(a.global.format), Explain: a.global.explain, ASCII: !showsUTF8()}
	switch o.Form {
	case print.Table, print.Plain, print.JSON, print.CSV:
	default:
		return o, fault.Flag("format", "", "cannot read %q: takes table, plain, json or csv", a.global.format)
	}
	var err error
	if o.Gauges, err = a.gauges(); err != nil {
		return o, err
	}
	if o.Colour, err = a.useColour(); err != nil {
		return o, err
	}
	o.Width, err = a.columns()
	return o, err
}

func (a *app) columns() (int, error) {
	w := a.global.width
	switch {
	case w < 0 || w > 0 && w < leastWidth || w > widest:
		return 0, fault.Flag("width", "", "cannot use %d: takes %d to %d columns", w, leastWidth, widest)
	case w > 0:
		return w, nil
	}
	if fd, ok := terminal(a.out); ok {
		if n, _, err := term.GetSize(fd); err == nil && n >= leastWidth {
			return min(n, mostWidth), nil
		}
	}
	return usualWidth, nil
}

// useColour decides: the flag, then NO_COLOR and FORCE_COLOR, then whether a
// terminal is there that knows colours.
func (a *app) useColour() (bool, error) {
	switch a.global.colour {
	case "always":
		print.ReadyForColour(a.out)
		return true, nil
	case "never":
		return false, nil
	case "auto":
	default:
		return false, fault.Flag("color", "", "cannot read %q: takes auto, always or never", a.global.colour)
	}
	if os.Getenv("NO_COLOR") != "" {
		return false, nil
	}
	if v := os.Getenv("FORCE_COLOR"); v != "" {
		off, err := strconv.ParseBool(v)
		return err != nil || off, nil
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

// print writes the sheets into the buffer and keeps what --check asks.
func (a *app) print(jobs []print.Job) error {
	o, err := a.options()
	if err != nil {
		return err
	}
	for _, j := range jobs {
		j.Sheet.Shop = a.shop != nil
		if a.global.check && j.Sheet.Outside() {
			a.outside = true
		}
	}
	return print.Write(&a.buf, jobs, o)
}

// system of a sheet that hangs on no drill.
func orMetric(s quantity.System) quantity.System {
	if s == quantity.Unset {
		return quantity.Metric
	}
	return s
}
