package cli

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/gauge"
	"evenlip/internal/judge"
	"evenlip/internal/plan"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print"
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
	// check returns what cannot be beyond what judge.Check finds; may be nil.
	check   func(*drill.Drill) []judge.Impossible
	compute func(d *drill.Drill, explain bool) *sheet.Sheet
}

// takes returns the readings of the command.
func (c *calculation) takes() []drill.Reading {
	if c.rule != nil {
		return c.rule()
	}
	return c.readings
}

// impossible returns everything about the readings that cannot be; where some were
// not understood, of the others what cannot be whatever those are.
func (c *calculation) impossible(d *drill.Drill, understood bool) []judge.Impossible {
	if !understood {
		return judge.CheckGiven(d)
	}
	found := judge.Check(d)
	if len(found) == 0 && c.check != nil {
		found = c.check(d)
	}
	return found
}

// lipHelp and sourceHelp stand in the help of every command that they hold of.
const (
	lipHelp = `Lip 1 is the lip that you choose: chalk it. Of a pair A,B the first is lip 1's.`

	sourceHelp = `Readings come from flags, from YAML files whose keys are the flags' names (- is
standard input), from --sample, or one by one at the bench with --ask.`
)

// calculation makes the command of c.
func (a *app) calculation(c *calculation) *cobra.Command {
	cmd := &cobra.Command{
		Use: c.name + " [flags]", Short: c.short, Long: c.long, Example: c.examples, GroupID: cmp.Or(c.group, "drill"), Args: noArgs,
	}
	readings := c.takes()
	if slices.Contains(readings, drill.LipAngle) {
		cmd.Long += "\n" + lipHelp
	}
	t := &taking{cmd: cmd, flags: make(map[drill.Reading]*string, len(readings))}
	if !c.grinder {
		cmd.Use = c.name + " [FILE...] [flags]"
		cmd.Args = cobra.ArbitraryArgs
		cmd.Long += "\n" + sourceHelp
		cmd.Flags().BoolVar(&t.ask, "ask", false, "ask for the readings one by one, at the bench")
		t.sourceFlags()
	}
	cmd.Long += "\n" + rangeHelp
	for _, r := range readings {
		if r.Spec().Switch {
			cmd.Flags().BoolVar(&t.cracked, r.String(), false, r.Spec().Help)
			continue
		}
		t.flags[r] = textFlag(cmd, r)
	}
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := unquoted(c.name, args); err != nil {
			return err
		}
		if len(args) > 1 {
			return a.several(c, t, args)
		}
		return a.single(c, t, strings.Join(args, ""))
	}
	return cmd
}

// single computes and prints one drill, or as many as its ranges make of it.
func (a *app) single(c *calculation, t *taking, file string) error {
	h, err := a.hold(t, file)
	if err != nil {
		return err
	}
	ranges, err := a.sweeps(h)
	switch {
	case err != nil:
		return append(h.unread, fault.Of(err)...)
	case len(h.unread) > 0:
		return a.faults(*c, h)
	case len(ranges) > 0 && t.ask:
		return fault.Flag(ranges[0].reading.String(), "give the range without --ask", "a range and --ask do not go together")
	case len(ranges) > 0:
		return a.ranged(*c, h.Drill, ranges)
	}
	if t.ask {
		if err := a.ask(t.cmd, *c, h); err != nil {
			return err
		}
	}
	if errs := a.faults(*c, h); len(errs) > 0 {
		return errs
	}
	if !anyRead(h.Drill) {
		hint := "evenlip " + c.name + " --help lists the readings"
		if !c.grinder {
			hint += "; --sample shows one"
		}
		return fault.New(hint, "%s: no reading was given", c.name)
	}
	return a.print([]print.Job{a.heldJob(*c, h)})
}

// several computes and prints the drills of files, each with what the flags
// change; "-" is standard input.
func (a *app) several(c *calculation, t *taking, files []string) error {
	if t.ask || t.sample || t.id != "" {
		return fault.New("give one file, or the files alone", "%s: several files do not go together with --ask, --sample or --drill", c.name)
	}
	var jobs []print.Job
	var errs fault.List
	for _, file := range files {
		h, err := a.hold(t, file)
		if err != nil {
			errs = append(errs, fault.Of(err)...)
			continue
		}
		if faults := a.faults(*c, h); len(faults) > 0 {
			errs = append(errs, faults...)
			continue
		}
		jobs = append(jobs, a.heldJob(*c, h))
	}
	if len(errs) > 0 {
		return errs
	}
	return a.print(jobs)
}

// textFlag adds the flag of a reading; what is written is understood later,
// when the size is known.
func textFlag(cmd *cobra.Command, r drill.Reading) *string {
	s := new(string)
	cmd.Flags().Var(&text{value: s, kind: "value", pair: r.Spec().Pair}, r.String(), r.Spec().Help)
	return s
}

// onceFlag adds a flag that says what is done or to which drill: of two, the
// last must not win unseen.
func onceFlag(f *pflag.FlagSet, to *string, name, help string) {
	f.Var(&text{value: to, kind: "string"}, name, help)
}

// text is a flag whose value is kept as written. It is written once: of two
// readings nobody knows which one holds, and the second may be the other lip's.
type text struct {
	value *string
	kind  string // in the help
	given bool
	pair  bool
}

func (t *text) String() string {
	if t.value == nil { // pflag asks an empty one what no value looks like
		return ""
	}
	return *t.value
}

func (t *text) Type() string { return t.kind }

func (t *text) Set(s string) error {
	if t.given {
		return &twice{first: *t.value, second: s, pair: t.pair}
	}
	*t.value, t.given = s, true
	return nil
}

// twice is a reading that was given two times.
type twice struct {
	first, second string
	pair          bool
}

func (t *twice) Error() string { return fmt.Sprintf("given twice, as %q and as %q", t.first, t.second) }

func (t *twice) hint() string {
	if t.pair && !strings.Contains(t.first+t.second, ",") {
		return "the readings of two lips go together: " + t.first + "," + t.second
	}
	return "give it once"
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
func (a *app) say(im judge.Impossible, d *drill.Drill) string {
	return im.Text.In(quantity.Format{System: d.System()})
}

func (a *app) job(c calculation, d *drill.Drill) print.Job {
	return a.finished(c, d, c.compute(d, a.global.explain))
}

// finished is the job of a sheet that c computed of d.
func (a *app) finished(c calculation, d *drill.Drill, s *sheet.Sheet) print.Job {
	a.doubt(c, d, s)
	s.Title, s.Sample, s.Shop = title(c.name, d), d.Sample, a.shop != nil
	s.Inputs = echo(s.Inputs, d)
	c.unused(d, s)
	if s.Cautions == nil {
		s.Cautions = print.Cautions
	}
	return print.Job{Sheet: s, System: d.System()}
}

// heldJob is the job of a drill that flags may have changed.
func (a *app) heldJob(c calculation, h *held) print.Job {
	return a.asHeld(h, a.job(c, h.Drill))
}

// asHeld tells in the job what of the drill's own the flags stand in place of.
func (a *app) asHeld(h *held, job print.Job) print.Job {
	if h.gone != "" {
		job.Sheet.Find("retired-and-gone", sheet.Warn, "the crib says that this drill was thrown away on {}", quantity.Say(h.gone))
	}
	if len(h.replaced) > 0 {
		job.Sheet.Find("changed-by-flag", sheet.Note, "given as flags, in place of the drill's own: {}", quantity.Say(strings.Join(h.replaced, ", ")))
	}
	if units, err := a.system(); err == nil && units != quantity.Unset {
		job.System = units
	}
	return job
}

// doubt gives the figures their uncertainty where gauges were named, and takes
// back of the verdict what they do not bear out.
func (a *app) doubt(c calculation, d *drill.Drill, s *sheet.Sheet) {
	g, err := a.gauges()
	if err != nil || g == (quantity.Gauges{}) { // a bad flag is told when printing
		return
	}
	hinged := func(d *drill.Drill, s *sheet.Sheet) *sheet.Sheet {
		if c.judged {
			judge.Hinges(d, s)
		}
		return s
	}
	gauge.Spread(d, g, hinged(d, s), func(d *drill.Drill) *sheet.Sheet { return hinged(d, c.compute(d, false)) })
	judge.Guard(s)
	if c.judged {
		plan.Guard(s)
	}
}

// unused tells of readings in a file that this command has no use for, so that
// nobody takes them for heeded; the sample drill has something for everyone.
func (c *calculation) unused(d *drill.Drill, s *sheet.Sheet) {
	takes := c.takes()
	if !slices.ContainsFunc(drill.All(), func(r drill.Reading) bool { return d.Has(r) && !slices.Contains(takes, r) }) {
		return
	}
	var names []string
	s.Inputs = slices.DeleteFunc(s.Inputs, func(in sheet.Input) bool {
		r, _ := drill.Find(in.Name)
		idle := !slices.Contains(takes, r)
		if idle {
			names = append(names, in.Name)
		}
		return idle
	})
	if len(names) > 0 && !d.Sample && !d.Kept {
		s.Find("not-used", sheet.Note, "{} makes no use of {}", quantity.Say(c.name), quantity.Say(strings.Join(names, ", ")))
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
func echo(out []sheet.Input, d *drill.Drill) []sheet.Input {
	for _, r := range drill.All() {
		if !d.Has(r) {
			continue
		}
		s := r.Spec()
		in := sheet.Input{Name: s.Name, Text: strings.TrimSpace(d.Written(r)), Kind: s.Kind}
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
