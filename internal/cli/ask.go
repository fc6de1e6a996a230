package cli

import (
	"fmt"
	"runtime"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/cli/ask"
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/fault"
)

// ask takes the readings that are open one by one on a terminal, and says how to give
// them all on the command line.
func (a *app) ask(cmd *cobra.Command, c command.Command, h *held) error {
	if _, ok := terminal(a.in); !ok {
		return fault.Flag("ask", "give the readings as flags or in a file", "wants a terminal to ask on")
	}
	talk := ask.Talk{In: a.in, Out: a.err, Command: c, Options: h.o, Width: a.set.Width, ASCII: a.set.ASCII}
	given, err := talk.Ask(h.given)
	if err != nil {
		return err
	}
	h.given = given
	h.Resolve(h.given, h.o)
	fmt.Fprintf(a.err, "\nThe same again:\n%s\n\n", broken("  "+commandLine(cmd, &h.Drill), a.set.Width))
	return nil
}

// commandLine is the command that gives the same answer again.
func commandLine(cmd *cobra.Command, d *drill.Drill) string {
	words := append([]string{"evenlip", cmd.Name()}, asFlags(d.Given())...)
	cmd.InheritedFlags().VisitAll(func(f *pflag.Flag) {
		if f.Changed {
			words = append(words, "--"+f.Name+"="+shellQuoted(f.Value.String()))
		}
	})
	return strings.Join(words, " ")
}

// asFlags returns readings as they are typed.
func asFlags(given []drill.Given) (words []string) {
	for _, g := range given {
		switch {
		case !g.Spec().Switch:
			words = append(words, "--"+g.Reading.String()+" "+shellQuoted(g.Text))
		case g.Text != "no":
			words = append(words, "--"+g.Reading.String())
		}
	}
	return words
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
