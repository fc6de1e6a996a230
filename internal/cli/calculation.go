package cli

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/drill"
	"evenlip/internal/figure"
	"evenlip/internal/gauge"
	"evenlip/internal/inspect"
	"evenlip/internal/quantity"
	"evenlip/internal/report"
)

// calculations are the commands that turn readings into a sheet. They and the
// lists are data that the linker lays out: starting the program works out none.
var calculations = [...][]*calculation{pointCommands, planCommands, shapeCommands, spindleCommands}

// calculation is a command that turns the readings of a drill into a sheet.
type calculation struct {
	name, short, long string
	group             string // of the help page; "drill" when empty
	examples          string
	readings          []drill.Reading
	rule              func() []drill.Reading // gives the readings where they are not listed
	grinder           bool                   // is about the grinder: no drill, no files, no --ask
	judged            bool                   // rests on the verdict of inspect
	// check returns what cannot be beyond what inspect.Check finds; may be nil.
	check   func(*drill.Drill) []inspect.Impossible
	compute func(d *drill.Drill, explain bool) *figure.Sheet
}

// takes returns the readings of the command.
func (c *calculation) takes() []drill.Reading {
	if c.rule != nil {
		return c.rule()
	}
	return c.readings
}

// impossible returns everything about the readings that cannot be.
func (c *calculation) impossible(d *drill.Drill) []inspect.Impossible {
	found := inspect.Check(d)
	if len(found) == 0 && c.check != nil {
		found = c.check(d)
	}
	return found
}

// calculation makes the command of c.
func (a *app) calculation(c *calculation) *cobra.Command {
	readings := c.takes()
	flags := make(map[drill.Reading]*string, len(readings))
	cracked, sample, ask := false, false, false
	cmd := &cobra.Command{
		Use: c.name + " [flags]", Short: c.short, Long: c.long + "\n" + rangeHelp, Example: c.examples, GroupID: cmp.Or(c.group, "drill"), Args: noArgs,
	}
	if !c.grinder {
		cmd.Use = c.name + " [FILE...] [flags]"
		cmd.Args = cobra.ArbitraryArgs
		cmd.Flags().BoolVar(&ask, "ask", false, "ask for the readings one by one, at the bench")
	}
	for _, r := range readings {
		if r.Spec().Switch {
			cmd.Flags().BoolVar(&cracked, r.String(), false, r.Spec().Help)
			continue
		}
		flags[r] = textFlag(cmd, r)
	}
	if !c.grinder {
		cmd.Flags().BoolVar(&sample, "sample", false, "use the built-in sample drill; other flags change its readings")
	}
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		units, err := a.system()
		if err != nil {
			return err
		}
		if len(args) > 0 {
			if sample || ask || readingGiven(cmd, readings) {
				return usage("give either files or readings", "%s: files and readings do not go together", c.name)
			}
			return a.files(*c, args, units)
		}
		d := &drill.Drill{Units: units, Book: a.book()}
		if sample {
			d = drill.Sample()
			d.Units, d.Book = units, a.book()
		}
		if err := fromFlags(cmd, d, flags); err != nil {
			return err
		}
		if cracked {
			d.Set(drill.Cracked, "yes")
		}
		ranges, err := a.sweeps(d)
		switch {
		case err != nil:
			return err
		case len(ranges) > 0 && ask:
			return usage("give the range without --ask", "--%s: a range and --ask do not go together", ranges[0].reading)
		case len(ranges) > 0:
			return a.ranged(*c, d, ranges)
		}
		if ask {
			if err := a.ask(cmd, *c, d); err != nil {
				return err
			}
		}
		return a.one(*c, d)
	}
	return cmd
}

func readingGiven(cmd *cobra.Command, readings []drill.Reading) bool {
	return slices.ContainsFunc(readings, func(r drill.Reading) bool { return cmd.Flags().Changed(r.String()) })
}

// textFlag adds the flag of a reading; what is written is understood later,
// when the size is known.
func textFlag(cmd *cobra.Command, r drill.Reading) *string {
	s := new(string)
	cmd.Flags().Var((*text)(s), r.String(), r.Spec().Help)
	return s
}

// text is a flag whose value is kept as written.
type text string

func (t *text) String() string     { return string(*t) }
func (t *text) Set(s string) error { *t = text(s); return nil }
func (t *text) Type() string       { return "value" }

func fromFlags(cmd *cobra.Command, d *drill.Drill, flags map[drill.Reading]*string) error {
	var errs many
	for _, r := range drill.All() {
		s, ok := flags[r]
		if !ok || !cmd.Flags().Changed(r.String()) {
			continue
		}
		if strings.TrimSpace(*s) == "" {
			errs = append(errs, usage("leave the flag out if it was not read", "--%s: nothing was written", r))
			continue
		}
		d.Set(r, *s)
	}
	if len(errs) > 0 {
		return errs
	}
	return nil
}

// one computes and prints a drill whose readings came from flags.
func (a *app) one(c calculation, d *drill.Drill) error {
	if errs := a.faults(c, d); len(errs) > 0 {
		return errs
	}
	if !anyRead(d) {
		hint := "evenlip " + c.name + " --help lists the readings"
		if !c.grinder {
			hint += "; --sample shows one"
		}
		return usage(hint, "%s: no reading was given", c.name)
	}
	return a.print([]report.Job{a.job(c, d)})
}

// faults returns everything that is wrong with the readings of d.
func (a *app) faults(c calculation, d *drill.Drill) (errs many) {
	for _, e := range d.Resolve() {
		errs = append(errs, flagError(e))
	}
	if len(errs) > 0 {
		return errs
	}
	for _, im := range c.impossible(d) {
		errs = append(errs, usage(im.Hint, "--%s: %s", im.Reading, a.say(im, d)))
	}
	return errs
}

func anyRead(d *drill.Drill) bool {
	for _, r := range drill.All() {
		if d.Has(r) {
			return true
		}
	}
	return false
}

// say puts an impossible reading in words, in the drill's units.
func (a *app) say(im inspect.Impossible, d *drill.Drill) string {
	return report.Say(im.Text, d.System())
}

func (a *app) job(c calculation, d *drill.Drill) report.Job {
	s := c.compute(d, a.global.explain)
	a.doubt(c, d, s)
	s.Title, s.Sample = title(c.name, d), d.Sample
	s.Inputs = echo(s.Inputs, d)
	c.unused(d, s)
	if s.Cautions == nil {
		s.Cautions = report.Cautions
	}
	return report.Job{Sheet: s, System: d.System()}
}

// doubt gives the figures their uncertainty where gauges were named, and takes
// back of the verdict what they do not bear out.
func (a *app) doubt(c calculation, d *drill.Drill, s *figure.Sheet) {
	g, err := a.gauges()
	if err != nil || g == (quantity.Gauges{}) { // a bad flag is told when printing
		return
	}
	gauge.Spread(d, g, s, func(d *drill.Drill) *figure.Sheet { return c.compute(d, false) })
	inspect.Guard(s)
	if c.judged {
		judgedInDoubt(d, g, s)
	}
}

// judgedInDoubt tells where an answer that rests on the verdict of inspect
// rests on a limit that the gauges cannot tell.
func judgedInDoubt(d *drill.Drill, g quantity.Gauges, s *figure.Sheet) {
	point := inspect.Sheet(d, false)
	before := point.Verdict.Word
	gauge.Spread(d, g, point, func(d *drill.Drill) *figure.Sheet { return inspect.Sheet(d, false) })
	inspect.Guard(point)
	for _, f := range point.Findings {
		if f.Code == "cannot-tell" {
			s.Findings = append(s.Findings, f)
		}
	}
	if point.Verdict.Word != before {
		s.Find("plan-in-doubt", figure.Warn, "these gauges cannot bear out what the plan rests on ({}): read again before metal comes off", figure.Say(before))
	}
}

// unused tells of readings in a file that this command has no use for, so that
// nobody takes them for heeded; the sample drill has something for everyone.
func (c *calculation) unused(d *drill.Drill, s *figure.Sheet) {
	takes := c.takes()
	if !slices.ContainsFunc(drill.All(), func(r drill.Reading) bool { return d.Has(r) && !slices.Contains(takes, r) }) {
		return
	}
	var names []string
	s.Inputs = slices.DeleteFunc(s.Inputs, func(in figure.Input) bool {
		r, _ := drill.Find(in.Name)
		idle := !slices.Contains(takes, r)
		if idle {
			names = append(names, in.Name)
		}
		return idle
	})
	if len(names) > 0 && !d.Sample {
		s.Find("not-used", figure.Note, "{} makes no use of {}", figure.Say(c.name), figure.Say(strings.Join(names, ", ")))
	}
}

// title names the drill; the sample's says that it is one.
func title(command string, d *drill.Drill) string {
	out := command
	switch {
	case d.Has(drill.Size):
		out = d.Values(drill.Size)[0].Echo() + " drill, " + command
	case d.Has(drill.Wheel):
		out = d.Values(drill.Wheel)[0].Echo() + " wheel"
	}
	if d.Name != "" {
		out += " - " + d.Name
	}
	return out
}

// echo lists what was read, as it was read, behind what out holds already.
func echo(out []figure.Input, d *drill.Drill) []figure.Input {
	for _, r := range drill.All() {
		if !d.Has(r) {
			continue
		}
		s := r.Spec()
		in := figure.Input{Name: s.Name, Text: strings.TrimSpace(d.Written(r)), Kind: s.Kind}
		if s.Kind == quantity.Word {
			in.Word, in.Echo = in.Text, in.Text
		} else {
			in.Values = d.Values(r)
			in.Keys = r.KeysOf(len(in.Values))
		}
		out = append(out, in)
	}
	return out
}

// files computes and prints the drills of files, "-" being standard input.
func (a *app) files(c calculation, names []string, units quantity.System) error {
	var jobs []report.Job
	var errs many
	for _, name := range names {
		d, faults := a.file(c, name, units)
		if len(faults) > 0 {
			errs = append(errs, faults...)
			continue
		}
		jobs = append(jobs, a.job(c, d))
	}
	if len(errs) > 0 {
		return errs
	}
	return a.print(jobs)
}

func (a *app) file(c calculation, name string, units quantity.System) (*drill.Drill, []error) {
	in, shown := a.in, "standard input"
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, []error{noFile(name, err)}
		}
		defer f.Close()
		in, shown = f, name
	}
	text, err := io.ReadAll(io.LimitReader(in, largestFile+1))
	switch {
	case err != nil:
		return nil, []error{noFile(name, err)}
	case len(text) > largestFile:
		return nil, []error{&dataError{fmt.Errorf("%s is too large for the readings of one drill: over %d bytes", shown, largestFile)}}
	}
	d, places, errs := drill.ReadFile(shown, bytes.NewReader(text), units)
	if len(errs) > 0 {
		return nil, errs
	}
	d.Book = a.book()
	for _, im := range c.impossible(d) {
		fault := places.Fault(im.Reading, fmt.Errorf("%s", a.say(im, d)))
		fault.Hint = im.Hint
		errs = append(errs, fault)
	}
	return d, errs
}

// noFile says why a file cannot be read; a reading in a file's place is wrong
// usage.
func noFile(name string, err error) error {
	if _, noSize := quantity.Parse(quantity.Size, name, quantity.Unset); noSize == nil && errors.Is(err, os.ErrNotExist) {
		return usage("readings are flags: --size "+shellQuoted(name), "no file is called %q", name)
	}
	return &dataError{fmt.Errorf("cannot read %s: %w", name, cause(err))}
}

// largestFile bounds a file of one drill: a mistaken name must not fill the
// memory.
const largestFile = 1 << 20

// cause strips the file's name that the system's error repeats.
func cause(err error) error {
	if p, ok := err.(*os.PathError); ok {
		return p.Err
	}
	return err
}
