package cli

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/drill"
	"evenlip/internal/sheet"
)

// place says in sh where its drill came from, and how to give it to another command.
func (a *app) place(sh *sheet.Sheet, s *source, h *held, file string) {
	begin := ""
	switch {
	case s.id != "":
		sh.From = h.from + " of the sample crib"
		begin = "--sample --drill " + shellQuoted(h.from)
		if !s.sample {
			sh.From, begin = h.from+" of the crib", "--drill "+shellQuoted(h.from)
		}
		if file != "" {
			sh.From, begin = h.from+" of "+file, shellQuoted(file)+" "+begin
		}
	case s.sample:
		sh.From, begin = "sample: an invented drill", "--sample"
	case file == "-":
		sh.From = "standard input"
	case file != "":
		sh.From, begin = file, shellQuoted(file)
	}
	sh.Again = func(command, _ string) (string, bool) {
		if command == "crib record" {
			return shellQuoted(h.from), s.id != "" && !s.sample
		}
		var words []string
		if begin != "" {
			words = append(words, begin)
		}
		flags := s.flags.given(s.cmd)
		if begin == "" {
			flags = h.Given()
		}
		if to := onDrill(command); to != nil {
			takes := to.About().Takes()
			flags = slices.DeleteFunc(flags, func(g drill.Given) bool { return !slices.Contains(takes, g.Reading) })
		}
		words = append(words, asFlags(flags)...)
		return strings.Join(append(words, lasting(s.cmd)...), " "), true
	}
}

// lasting returns the flags of a command line that the next has to have, too.
func lasting(cmd *cobra.Command) []string {
	var words []string
	cmd.Flags().Visit(func(f *pflag.Flag) {
		if slices.Contains([]string{"units", "shop", "caliper", "protractor", "indicator"}, f.Name) {
			words = append(words, "--"+f.Name+" "+shellQuoted(f.Value.String()))
		}
	})
	return words
}
