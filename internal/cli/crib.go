package cli

import (
	"cmp"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/crib"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print"
)

const cribLong = `The drills of a tool crib in one YAML file, kept in version control and edited
by hand and by scripts alike. The file is the one given, or the nearest
crib.yaml in this folder or above; --sample is an embedded crib to look at.`

// cribFrom says which crib is meant.
type cribFrom struct {
	file   string
	sample bool
	named  string // how a file is named, where not by --file
}

func (a *app) cribCommand() *cobra.Command {
	from := new(cribFrom)
	cmd := &cobra.Command{
		Use: "crib", Short: "a tool crib's drills in one YAML file: list, audit, plan, record", Long: cribLong, GroupID: "drawer",
		Example: "  evenlip crib audit --sample\n  evenlip crib plan --file tools/crib.yaml\n  evenlip crib record M120-1 --grind 0.6mm",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return noCommand(cmd, args[0], "crib has no command %q")
		},
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	f := cmd.PersistentFlags()
	f.StringVar(&from.file, "file", "", "the crib's `FILE` (default: the nearest "+crib.FileName+" in this folder or above)")
	f.BoolVar(&from.sample, "sample", false, "use the embedded crib, all of it invented")
	cmd.AddCommand(
		without(a.cribNew(from), "check", noStatus, "explain", workings),
		without(a.cribList(from), "check", noStatus, "explain", workings),
		without(a.cribAudit(from), "explain", workings),
		without(a.cribPlan(from), "explain", "evenlip regrind --drill ID --explain shows how the plan of one drill is made"),
		without(a.cribRecord(from), "check", noStatus, "explain", workings),
		without(a.cribSchema(), "check", noStatus, "explain", workings),
	)
	return cmd
}

// What does instead, where a flag that every command has says nothing.
const (
	noStatus = "evenlip crib audit --check says whether all are fit, evenlip crib plan --check whether there is anything to do"
	workings = "evenlip inspect --drill ID --explain shows how the figures of one drill are got"
)

// path returns the file of the crib that is meant.
func (c *cribFrom) path() (string, error) {
	if c.file != "" {
		return c.file, nil
	}
	dir, err := os.Getwd()
	if err != nil {
		return "", fault.Unreadable("cannot tell which folder this is", err)
	}
	path, found := crib.Nearest(dir)
	if !found {
		return "", fault.NewData("name it "+cmp.Or(c.named, "with --file")+", start one with evenlip crib new, or look at --sample",
			"no %s in this folder or above", crib.FileName)
	}
	if rel, err := filepath.Rel(dir, path); err == nil {
		path = rel
	}
	return path, nil
}

// largestCrib bounds a crib's file: some hundred thousand drills.
const largestCrib = 64 << 20

// openCrib reads the crib that is meant.
func (a *app) openCrib(from *cribFrom) (*crib.Crib, error) {
	if from.sample {
		if from.file != "" {
			return nil, fault.New("give one of the two", "crib: --file and --sample do not go together")
		}
		return a.judging(crib.Sample(a.set.book))
	}
	path, err := from.path()
	if err != nil {
		return nil, err
	}
	data, f := readFile(path, largestCrib, "a crib")
	if f != nil {
		return nil, f
	}
	return a.judging(crib.Read(path, data, a.set.book))
}

// judging tells the crib what the gauges can resolve.
func (a *app) judging(c *crib.Crib, faults fault.List) (*crib.Crib, error) {
	if len(faults) > 0 {
		return nil, faults
	}
	c.Gauges = a.set.Gauges
	return c, nil
}

// audience is who reads the format that was asked for.
func (a *app) audience() crib.Audience { return crib.Audience(a.set.forScripts()) }

// printCrib prints the sheet of a whole crib. Where nobody asked for units, a screen
// shows each drill in its own.
func (a *app) printCrib(cmd *cobra.Command, from *cribFrom, c *crib.Crib, s *sheet.Sheet) error {
	s.Again = cribAgain(cmd, from)
	return a.print(print.Job{Sheet: s, System: cmp.Or(a.set.units, c.Units)})
}

// cribAgain returns how another command line is about the same crib, or a drill of it.
func cribAgain(cmd *cobra.Command, from *cribFrom) func(command, id string) (string, bool) {
	return func(command, id string) (string, bool) {
		var words []string
		record := command == "crib record"
		switch {
		case record && from.sample:
			return "", false
		case record:
			words = append(words, shellQuoted(id))
		}
		switch ofCrib := strings.HasPrefix(command, "crib "); {
		case from.sample:
			words = append(words, "--sample")
		case from.file != "" && ofCrib:
			words = append(words, "--file "+shellQuoted(from.file))
		case from.file != "":
			words = append(words, shellQuoted(from.file))
		}
		if id != "" && !record {
			words = append(words, "--drill "+shellQuoted(id))
		}
		return strings.Join(append(words, lasting(cmd)...), " "), true
	}
}

func (a *app) cribList(from *cribFrom) *cobra.Command {
	var which whichDrills
	cmd := &cobra.Command{
		Use: "list", Short: "the drills as they stand in the file", Args: noArgs,
		Long:    "Every drill in the order of the file, or those that are picked. JSON and CSV\nhave every reading besides, in millimetres and degrees.",
		Example: "  evenlip crib list --size 12mm\n  evenlip crib list --sample --format csv",
		RunE: func(cmd *cobra.Command, _ []string) error {
			filter, err := a.cribFilter(which)
			if err != nil {
				return err
			}
			c, err := a.openCrib(from)
			if err != nil {
				return err
			}
			return a.printCrib(cmd, from, c, c.List(c.Listed(filter), a.audience()))
		},
	}
	which.flags(cmd)
	return cmd
}

// whichDrills picks drills of a crib; what is empty picks all.
type whichDrills struct{ verdict, size, material string }

func (w *whichDrills) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringVar(&w.verdict, "verdict", "", "only drills of this `VERDICT`, or of these, A,B: "+strings.Join(crib.Verdicts, ", "))
	f.StringVar(&w.size, "size", "", "only drills of this `SIZE`")
	f.StringVar(&w.material, "material", "", "only drills for this work `MATERIAL`")
}

func (a *app) cribAudit(from *cribFrom) *cobra.Command {
	var which whichDrills
	cmd := &cobra.Command{
		Use: "audit", Short: "every drill inspected, the worst first", Args: noArgs,
		Long: `Every drill through the same rules as evenlip inspect, the worst first, and how
many there are of each verdict. With --check the exit status is 1 unless there
are some and all that are shown are fit. JSON and CSV have every figure of
inspect besides.`,
		Example: "  evenlip crib audit --verdict retire,regrind\n  evenlip crib audit --size 12mm --format csv",
		RunE: func(cmd *cobra.Command, _ []string) error {
			filter, err := a.cribFilter(which)
			if err != nil {
				return err
			}
			c, err := a.openCrib(from)
			if err != nil {
				return err
			}
			drills := filter.Select(c.Judge())
			crib.WorstFirst(drills)
			if a.set.check {
				a.outside = len(drills) == 0 || slices.ContainsFunc(drills, func(j crib.Judged) bool { return j.Word() != "fit" })
			}
			return a.printCrib(cmd, from, c, c.Audit(drills, a.audience()))
		},
	}
	which.flags(cmd)
	return cmd
}

func (a *app) cribFilter(which whichDrills) (crib.Filter, error) {
	var f crib.Filter
	if which.verdict != "" {
		f.Verdicts = strings.Split(which.verdict, ",")
	}
	for _, v := range f.Verdicts {
		if !slices.Contains(crib.Verdicts, v) {
			return f, fault.Flag("verdict", "", "cannot read %q: takes %s", v, strings.Join(crib.Verdicts, ", "))
		}
	}
	if which.size != "" {
		v, bad := quantity.Parse(quantity.Size, which.size, a.set.typed())
		if bad != nil {
			return f, bad.In(fault.Place{Flag: "size"}, "")
		}
		f.Size = v.V
	}
	if which.material != "" {
		m, ok := a.set.book.Material(which.material)
		if !ok {
			return f, fault.Flag("material", "evenlip material lists them", "no material is called %q", which.material)
		}
		f.Material = m.Name
	}
	return f, nil
}

func (a *app) cribPlan(from *cribFrom) *cobra.Command {
	return &cobra.Command{
		Use: "plan", Short: "what to take to the grinder today, to retire, to buy", Args: noArgs,
		Long: `What to take to the grinder, in that order: sizes of which no drill is fit come
first, then drills that want the same lip angle together, so that the rest is
set once. Then what to retire, what is still to be measured, and what to buy to
keep each size: as many as the file's keep says, else one. The file is not
changed. With --check the exit status is 1 when there is anything to do.`,
		Example: "  evenlip crib plan --sample\n  evenlip crib plan --format csv",
		RunE: func(cmd *cobra.Command, _ []string) error {
			c, err := a.openCrib(from)
			if err != nil {
				return err
			}
			day := c.Day()
			a.outside = a.set.check && !day.Idle()
			return a.printCrib(cmd, from, c, c.Plan(&day, a.audience()))
		},
	}
}
