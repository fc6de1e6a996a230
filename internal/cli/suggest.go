package cli

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/fault"
	"evenlip/internal/near"
)

// flagMistake says which flag was meant.
func flagMistake(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var value *pflag.InvalidValueError
	switch {
	case errors.As(err, &value):
		return badValue(value)
	case !errors.As(err, &unknown):
		return fault.New(cmd.CommandPath()+" --help", "%s", err)
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
	return fault.New(hint, "%s has no flag %s%s", cmd.Name(), dashes, name)
}

// badValue says what a flag takes that was given something else.
func badValue(err *pflag.InvalidValueError) error {
	f := err.GetFlag()
	var again *fault.Fault
	if errors.As(err, &again) {
		return again.In(fault.Place{Flag: f.Name}, "")
	}
	takes, hint := "a whole number", "write --"+f.Name+" 80"
	if f.Value.Type() == "bool" {
		takes, hint = "nothing, or true or false", "write --"+f.Name
	}
	return fault.Flag(f.Name, hint, "cannot read %q: takes %s", err.GetValue(), takes)
}

// blanks refuses a flag with nothing behind it, as a script writes it whose
// variable is empty: what it would have said must not be lost unseen.
func blanks(cmd *cobra.Command) error {
	var errs fault.List
	cmd.Flags().Visit(func(f *pflag.Flag) {
		if f.Value.Type() != "bool" && strings.TrimSpace(f.Value.String()) == "" {
			errs = append(errs, fault.Flag(f.Name, "leave the flag out", "nothing was written"))
		}
	})
	return errs.Err()
}

// atMostOne takes one argument or none.
func atMostOne(cmd *cobra.Command, args []string) error {
	if len(args) > 1 {
		return fault.New(cmd.CommandPath()+" --help", "%s takes one argument at most, but %q was given too", cmd.Name(), args[1])
	}
	return nil
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
	return fault.New(near.Hint(word, parent.CommandPath()+" --help lists the commands", names...), refusal, word)
}
