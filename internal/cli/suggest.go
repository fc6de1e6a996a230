package cli

import (
	"errors"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/near"
)

// flagMistake says which flag was meant.
func flagMistake(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	if !errors.As(err, &unknown) {
		return &hinted{err, cmd.CommandPath() + " --help"}
	}
	name := unknown.GetSpecifiedName()
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	hint := cmd.CommandPath() + " --help lists the flags"
	if meant := near.Name(name, names...); meant != "" {
		hint = "did you mean --" + meant + "?"
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
	var names []string
	for _, c := range parent.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	return usage(near.Hint(word, parent.CommandPath()+" --help lists the commands", names...), refusal, word)
}
