package cli

import (
	"slices"
	"time"
	"unicode"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"evenlip/internal/crib"
	"evenlip/internal/crib/store"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/sheet/print"
)

// recorded returns the readings that a record may bring. The size is not one: on
// its units hang the bare numbers of the drill.
func recorded() []drill.Reading {
	return slices.DeleteFunc(crib.Kept(), func(r drill.Reading) bool {
		return r == drill.Size || r == drill.Remove
	})
}

// recordFlags are what crib record takes.
type recordFlags struct {
	grind, date, note    string
	thinning, correction bool
	retired, dryRun      bool
	readings             readingFlags
}

func (a *app) cribRecord(from *cribFrom) *cobra.Command {
	r := new(recordFlags)
	cmd := &cobra.Command{
		Use: "record ID [flags]", Short: "write a grind, a thinning or new readings into a history",
		Long: `Writes what was done into the drill's history and moves its readings on. After
a grind, flute, length and web follow from the stock, and what has to be read
anew goes from the readings into the history; readings given along with it
stand at once. After a thinning, give --web or --chisel-length as it is now.
With neither, the readings given take the place of the old ones. A reading that
does not follow from the drill as it stands, such as a longer flute, is refused
unless it is said to be a --correction. With --retired the drill was thrown
away: audit and plan leave it out from then on. No other byte of the file is
changed, and records made at the same time all land.`,
		Example: `  evenlip crib record M120-1 --grind 0.6mm
  evenlip crib record M120-1 --lip-angle 59,59 --lip-height 0.02mm --clearance 12 --chisel-angle 125
  evenlip crib record I32-2 --thinning --web 0.08in --note "small wheel" --dry-run`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				if hint := a.parted(args[len(args)-1]); hint != "" {
					return fault.New(hint, "crib record: takes the id of one drill, but %q was given too", args[len(args)-1])
				}
			}
			if len(args) != 1 {
				return fault.New("evenlip crib list shows them", "crib record: takes the id of one drill, not %d arguments", len(args))
			}
			return nil
		},
	}
	f := cmd.Flags()
	onceFlag(f, &r.grind, "grind", "a grind: the `STOCK` that came off the end, 0.6mm")
	f.BoolVar(&r.thinning, "thinning", false, "the web was thinned at the point (with --web or --chisel-length)")
	f.BoolVar(&r.correction, "correction", false, "what the file has was never so: the readings given are right")
	f.BoolVar(&r.retired, "retired", false, "the drill was thrown away, and counts no more")
	f.StringVar(&r.date, "date", "", "when: the `DAY` as year-month-day (default: today)")
	f.StringVar(&r.note, "note", "", "a remark for the history: `TEXT` on one line")
	f.BoolVar(&r.dryRun, "dry-run", false, "say what would change and write nothing")
	cmd.MarkFlagsMutuallyExclusive("grind", "thinning", "correction", "retired")
	r.readings = addReadings(cmd, recorded())
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		change, err := a.change(cmd, r)
		if err != nil {
			return err
		}
		return a.record(cmd, from, args[0], change, r.dryRun)
	}
	return cmd
}

// change puts what was typed together.
func (a *app) change(cmd *cobra.Command, r *recordFlags) (crib.Change, error) {
	ch := crib.Change{Date: r.date, What: crib.Readings, Note: r.note, Units: a.set.units, Today: time.Now(), Readings: map[drill.Reading]string{}}
	switch {
	case cmd.Flags().Changed("grind"):
		ch.What, ch.Stock = crib.Grind, r.grind
	case r.thinning:
		ch.What = crib.Thinning
	case r.correction:
		ch.What = crib.Correction
	case r.retired:
		ch.What = crib.Retired
	}
	if ch.Date == "" {
		ch.Date = time.Now().Format(time.DateOnly)
	}
	if !utf8.ValidString(r.note) || slices.ContainsFunc([]rune(r.note), unicode.IsControl) {
		return ch, fault.Flag("note", "write it on one line", "takes text without control characters")
	}
	for _, g := range r.readings.given(cmd) {
		ch.Readings[g.Reading] = g.Text
	}
	return ch, nil
}

// record writes the change, or only works it out.
func (a *app) record(cmd *cobra.Command, from *cribFrom, id string, ch crib.Change, dryRun bool) error {
	out, file, err := a.recordIn(from, id, ch, dryRun)
	if err != nil {
		return err
	}
	if !dryRun {
		a.done = "the record is in " + file + " all the same"
	}
	s := out.Sheet(file, dryRun, a.set.Gauges)
	s.Sample, s.Again = from.sample, cribAgain(cmd, from)
	s.From = id + " of the sample crib"
	if !from.sample {
		s.From, s.Origin.File = id+" of "+file, file
	}
	return a.print(print.Job{Sheet: s, System: out.New.System()})
}

func (a *app) recordIn(from *cribFrom, id string, ch crib.Change, dryRun bool) (*crib.Outcome, string, error) {
	if from.sample {
		if !dryRun || from.file != "" {
			return nil, "", fault.New("evenlip crib new --sample writes a file of it; or add --dry-run", "crib record: the embedded crib cannot be written to")
		}
		out, _, err := crib.Rewrite(crib.SampleFile, crib.SampleText(), id, ch, a.set.book)
		return out, crib.SampleFile, err
	}
	path, err := from.path()
	if err != nil {
		return nil, "", err
	}
	data, f := readFile(path, largestCrib, "a crib")
	if f != nil {
		return nil, "", f
	}
	if !dryRun {
		out, err := crib.Record(path, id, ch, a.set.book)
		return out, path, err
	}
	out, _, err := crib.Rewrite(path, data, id, ch, a.set.book)
	return out, path, err
}

func (a *app) cribNew(from *cribFrom) *cobra.Command {
	return &cobra.Command{
		Use: "new", Short: "start a crib's file", Args: noArgs,
		Long: `Writes a file to begin with, ` + crib.FileName + ` in this folder or the one named, with
remarks on what goes into it; with --sample, the embedded crib to try things on.
A file that is there is never written over.`,
		Example: "  evenlip crib new\n  evenlip crib new --sample --file try.yaml",
		RunE: func(cmd *cobra.Command, _ []string) error {
			path, text := from.file, []byte(crib.NewText)
			if path == "" {
				path = crib.FileName
			}
			if from.sample {
				text = crib.SampleText()
			}
			if err := store.Create(path, text); err != nil {
				return err
			}
			a.done = path + " is written all the same"
			c, errs := crib.Read(path, text, nil)
			if len(errs) > 0 {
				return errs
			}
			return a.printCrib(cmd, &cribFrom{file: from.file}, c, c.Started(from.sample))
		},
	}
}
