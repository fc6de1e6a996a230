package cli

import (
	"errors"
	"strings"

	"github.com/agnivade/levenshtein"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// flagMistake says which flag was meant.
func flagMistake(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	if !errors.As(err, &unknown) {
		return &hinted{err, cmd.CommandPath() + " --help"}
	}
	name := unknown.GetSpecifiedName()
	best, least := "", 4
	if len(name) <= 5 { // a short name with three letters changed is another name
		least = 3
	}
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		if n := levenshtein.ComputeDistance(name, f.Name); n < least {
			best, least = f.Name, n
		}
	})
	hint := cmd.CommandPath() + " --help lists the flags"
	if best != "" {
		hint = "did you mean --" + best + "?"
	}
	dashes := "--"
	if unknown.GetSpecifiedShortnames() != "" {
		dashes = "-"
	}
	return usage(hint, "%s has no flag %s%s", cmd.Name(), dashes, name)
}

// noCommand refuses a word in the place of a command of parent, and says which
// one was meant.
func noCommand(parent *cobra.Command, word, refusal string) error {
	best, least := "", 3
	for _, c := range parent.Commands() {
		if n := levenshtein.ComputeDistance(strings.ToLower(word), c.Name()); c.IsAvailableCommand() && n < min(least, len(c.Name())) {
			best, least = c.Name(), n
		}
	}
	hint := parent.CommandPath() + " --help lists the commands"
	if best != "" {
		hint = "did you mean " + best + "?"
	}
	return usage(hint, refusal, word)
}
