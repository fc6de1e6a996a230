package cli

import (
	"cmp"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/command"
	"evenlip/internal/command/drawing"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/sheet/print"
)

// lipHelp, sourceHelp and rangeHelp stand in the help of every command that they hold
// of.
const (
	lipHelp = `Lip 1 is the lip that you choose: chalk it. Of a pair A,B the first is lip 1's.`

	sourceHelp = `Readings come from flags, from YAML files whose keys are the flags' names (- is
standard input), from --sample, or one by one at the bench with --ask.`

	rangeHelp = `Any quantity may be a range, "0mm..6mm by 0.5mm": one row a step.`
)

// onDrill makes the command line of a command on a drill.
func (a *app) onDrill(c command.Command) *cobra.Command {
	info := c.About()
	cmd := &cobra.Command{
		Use: info.Name + " [flags]", Short: info.Short, Long: info.Long, Example: info.Examples, GroupID: cmp.Or(info.Group, "drill"), Args: a.noArgs,
	}
	readings := info.Takes()
	if slices.Contains(readings, drill.LipAngle) {
		cmd.Long += "\n" + lipHelp
	}
	s := &source{cmd: cmd, flags: addReadings(cmd, readings)}
	if !info.Grinder {
		cmd.Use = info.Name + " [FILE...] [flags]"
		cmd.Args = cobra.ArbitraryArgs
		cmd.Long += "\n" + sourceHelp
		cmd.Flags().BoolVar(&s.ask, "ask", false, "ask for the readings one by one, at the bench")
		s.addFlags()
	}
	cmd.Long += "\n" + rangeHelp
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := unquoted(info.Name, args); err != nil {
			return err
		}
		return a.answer(c, s, args)
	}
	return cmd
}

// answer computes and prints the drills that the arguments name, or the one of the
// flags.
func (a *app) answer(c command.Command, s *source, files []string) error {
	several := len(files) > 1
	if several && (s.ask || s.sample || s.id != "") {
		return fault.New("give one file, or the files alone", "%s: several files do not go together with --ask, --sample or --drill", c.About().Name)
	}
	if len(files) == 0 {
		files = []string{""}
	}
	var jobs []print.Job
	var faults fault.List
	for _, file := range files {
		job, found := a.one(c, s, file, several)
		faults = append(faults, found...)
		jobs = append(jobs, job)
	}
	if len(faults) > 0 {
		return faults
	}
	return a.print(jobs...)
}

// one works out a drill, or all the steps of its ranges.
func (a *app) one(c command.Command, s *source, file string, several bool) (print.Job, fault.List) {
	h, faults := a.read(s, file)
	if h == nil {
		return print.Job{}, faults
	}
	if len(h.Ranges) > 0 && (s.ask || several) {
		with := map[bool]string{true: "several files", false: "--ask"}[several]
		return print.Job{}, fault.List{fault.Flag(h.Ranges[0].String(), "give the range without", "a range and %s do not go together", with)}
	}
	if faults = a.possible(c, h, faults); len(faults) > 0 {
		return print.Job{}, faults
	}
	if s.ask {
		if err := a.ask(s.cmd, c, h); err != nil {
			return print.Job{}, fault.Of(err)
		}
	}
	if len(h.Taken()) == 0 {
		hint := "evenlip " + c.About().Name + " --help lists the readings"
		if !c.About().Grinder {
			hint += "; --sample shows one"
		}
		return print.Job{}, fault.List{fault.New(hint, "%s: no reading was given", c.About().Name)}
	}
	if len(h.Ranges) > 0 {
		return a.steps(c, h)
	}
	sheet := command.Answer(c, &h.Drill, a.set.answering())
	h.tell(sheet)
	a.place(sheet, s, h, file)
	if c.About().Pictured && a.set.Form == print.Table && a.set.Width >= print.PictureFrom {
		sheet.Picture = drawing.FromEnd(&h.Drill)
	}
	return print.Job{Sheet: sheet, System: a.system(&h.Drill)}, nil
}

// possible returns everything that is wrong with a drill, faults being what is wrong
// with its form and its numbers. The steps of a range are looked at one by one.
func (a *app) possible(c command.Command, h *held, faults fault.List) fault.List {
	if len(h.Ranges) == 0 {
		faults = append(faults, command.Possible(c, &h.Read, &h.Drill, len(faults) == 0)...)
	}
	faults.Sort()
	return faults
}

// unquoted complains of a range that the shell took apart at its spaces.
func unquoted(command string, args []string) error {
	if at := slices.Index(args, "by"); at >= 0 {
		return fault.New(`a range wants quotes: "0mm..6mm by 0.5mm"`, "%s: %q stands alone", command, strings.Join(args[at:], " "))
	}
	return nil
}
