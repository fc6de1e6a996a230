package cli

import (
	"context"
	"errors"
	"os"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/command"
	"evenlip/internal/fault"
	"evenlip/internal/near"
)

const batchLong = `One measured drill a line in, one answer a line out, in the same order, for as
many drills as there are. A line is a JSON object whose keys are the flags'
names, or, with --input csv, the fields under a header of them. An answer is the
object that the command prints for that drill with --format json, with the
number of the line, and without cautions and sources unless --sources asks for
them: the cautions are told once, on standard error. With --format csv it is a
row of CSV. In a bad line's place stands an object with its number (line) and
what is wrong (error), and the rest goes on; the exit status is then 3. The
drills come from the files named, or from standard input (-).`

// batchFlags are what the command takes beside the globals.
type batchFlags struct {
	command, input  string
	strict, sources bool
}

func (a *app) batchCommand() *cobra.Command {
	f := new(batchFlags)
	cmd := &cobra.Command{
		Use: "batch [FILE...] [flags]", Short: "one measured drill a line, as many as there are",
		Long: batchLong, GroupID: "drawer", Args: cobra.ArbitraryArgs,
		Example: "  evenlip batch drills.jsonl | jq .results.verdict\n  evenlip batch --command web drills.jsonl\n  evenlip batch --strict --input csv <drills.csv",
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.batch(cmd.Context(), f, cmd.Flags().Changed("format"), args)
		},
	}
	cmd.Flags().StringVar(&f.command, "command", "inspect", "what to work out for each line: the name of a `COMMAND` on a drill")
	cmd.Flags().StringVar(&f.input, "input", "", "the `FORM` of the lines, json or csv (default: csv for a file called .csv, else json)")
	cmd.Flags().BoolVar(&f.strict, "strict", false, "stop at the first bad line")
	cmd.Flags().BoolVar(&f.sources, "sources", false, "the cautions and the sources in each answer too")
	return cmd
}

// garbage lets what lines leave behind grow to so many per cent of what is in
// use, some ten megabytes in all: less often collected, it costs less.
const garbage = 400

// batch answers the lines of every file.
func (a *app) batch(ctx context.Context, f *batchFlags, formatted bool, names []string) error {
	b, err := a.newBatch(f, formatted, len(names) > 1)
	if err != nil {
		return err
	}
	if len(names) == 0 {
		names = []string{"-"}
	}
	if err := readable(names); err != nil {
		return err
	}
	b.tellCautions()
	if slices.Contains(names, "-") {
		a.awaits("a drill a line")
	}
	defer debug.SetGCPercent(debug.SetGCPercent(garbage))
	ctx, stop := untilSignal(ctx)
	defer stop()
	b.progress = a.progress()
	defer b.progress.end()
	for i, name := range names {
		if err := b.file(ctx, name, i == 0); err != nil {
			return err
		}
	}
	return b.end()
}

// readable finds out about a file that is missing before anything is printed.
func readable(names []string) error {
	var errs fault.List
	for _, name := range names {
		if name == "-" {
			continue
		}
		info, err := os.Stat(name)
		if err == nil && info.IsDir() {
			err = errors.New("is a directory")
		}
		if err != nil {
			errs = append(errs, cannotRead(name, err))
		}
	}
	return errs.Err()
}

func cannotRead(name string, err error) *fault.Fault {
	return fault.Unreadable("cannot read "+name, err)
}

// ofDrill finds the command on a drill that is meant.
func ofDrill(name string) (command.Command, error) {
	var names []string
	for _, c := range commands {
		switch info := c.About(); {
		case info.Grinder:
			continue
		case info.Name == name:
			return c, nil
		default:
			names = append(names, info.Name)
		}
	}
	return nil, fault.Flag("command", near.Hint(name, "", names...), "cannot read %q: takes %s", name, strings.Join(names, ", "))
}
