package cli

import (
	"errors"
	"fmt"
	"io"
	"runtime"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
)

// bench is the order in which a drill in the hand is looked at: first what ends
// the matter, then its dullness, its point, and what is left of it.
var bench = [...]drill.Reading{
	drill.Size, drill.Cracked, drill.Material, drill.FlankWear, drill.CornerWear, drill.MarginWear, drill.LipChip,
	drill.LipAngle, drill.LipHeight, drill.Clearance, drill.HeelDrop, drill.HeelTurn,
	drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.Flute, drill.Depth,
}

// inBenchOrder returns the readings that are taken at the bench, in its order, and
// the rest.
func inBenchOrder(readings []drill.Reading) (usual, rest []drill.Reading) {
	for _, r := range bench {
		if slices.Contains(readings, r) {
			usual = append(usual, r)
		}
	}
	for _, r := range readings {
		if !slices.Contains(bench[:], r) {
			rest = append(rest, r)
		}
	}
	return usual, rest
}

// ask takes the readings one by one on a terminal. A mistake is explained and
// asked again; nothing that was typed before is lost.
func (a *app) ask(cmd *cobra.Command, c calculation, h *held) error {
	if _, ok := terminal(a.in); !ok {
		return fault.Flag("ask", "give the readings as flags or in a file", "wants a terminal to ask on")
	}
	if errs := a.faults(c, h); len(errs) > 0 {
		return errs
	}
	t := newTalk(a, c, h.Drill)
	t.lines("", "One reading at a time. Enter skips it, "+goBack+" goes back, "+helpMe+" says more; "+
		enough+" or Ctrl-D ends the questions, and what was read is worked out.")
	switch err := t.all(); {
	case errors.Is(err, io.EOF):
		fmt.Fprintln(a.err)
	case err != nil && !errors.Is(err, errEnough):
		return err
	}
	fmt.Fprintf(a.err, "\nThe same again:\n%s\n\n", broken("  "+commandLine(cmd, h.Drill), t.width()))
	return nil
}

// needless reports whether a reading would say nothing that is not known from
// those taken before it.
func needless(d *drill.Drill, r drill.Reading) bool {
	switch r {
	case drill.SecondWebAt:
		return !d.Has(drill.SecondWeb)
	case drill.WebTaper:
		return d.Has(drill.SecondWeb) && d.Has(drill.SecondWebAt)
	case drill.ChiselLength:
		return d.Has(drill.Web) && d.Has(drill.ChiselAngle)
	case drill.HeelDrop:
		return d.Has(drill.Clearance)
	case drill.LipLength:
		return d.Has(drill.LipHeight)
	case drill.HeelTurn:
		return !d.Has(drill.HeelDrop)
	}
	return false
}

// commandLine is the command that gives the same answer again.
func commandLine(cmd *cobra.Command, d *drill.Drill) string {
	out := "evenlip " + cmd.Name()
	for _, r := range drill.All() {
		switch text := d.Written(r); {
		case !d.Has(r):
		case r.Spec().Switch:
			out += " --" + r.String()
		default:
			out += " --" + r.String() + " " + shellQuoted(text)
		}
	}
	cmd.InheritedFlags().VisitAll(func(f *pflag.Flag) {
		if f.Changed {
			out += " --" + f.Name + "=" + shellQuoted(f.Value.String())
		}
	})
	return out
}

// shellQuoted quotes a word for the system's shells where it needs it.
func shellQuoted(s string) string { return quotedFor(runtime.GOOS, s) }

// quotedFor quotes a word for a POSIX shell or, on Windows, for PowerShell, which
// takes a word apart at a comma.
func quotedFor(system, s string) string {
	plain := "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789./-+=:_"
	if system != "windows" {
		plain += ","
	}
	switch {
	case strings.Trim(s, plain) == "":
		return s
	case system == "windows":
		return "'" + strings.ReplaceAll(s, "'", "''") + "'"
	}
	return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'"
}
