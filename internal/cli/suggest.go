package cli

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/near"
	"evenlip/internal/quantity"
)

// flagMistake says which flag was meant.
func flagMistake(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	var value *pflag.InvalidValueError
	var lacking *pflag.ValueRequiredError
	switch {
	case errors.As(err, &value):
		return badValue(value)
	case errors.As(err, &lacking):
		return noValue(cmd, lacking.GetFlag())
	case !errors.As(err, &unknown):
		return fault.New(cmd.CommandPath()+" --help", "%s", err)
	}
	if words := cmd.Flags().Args(); cmd.HasSubCommands() && len(words) > 0 {
		if err := cmd.ValidateArgs(words); err != nil {
			return err // the flag is that of a command that there is not
		}
	}
	name := unknown.GetSpecifiedName()
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	hint := cmd.CommandPath() + " --help lists the flags"
	if meant := near.Name(name, names...); meant != "" {
		hint = "did you mean --" + meant + "?"
	}
	dashes := "--"
	if short := unknown.GetSpecifiedShortnames(); short != "" {
		dashes = "-"
		if word, _, _ := strings.Cut(short, "="); cmd.Flags().Lookup(word) != nil {
			name, hint = word, "did you mean --"+word+"?"
		}
	}
	return fault.New(hint, "%s has no flag %s%s", cmd.Name(), dashes, name)
}

// noValue says what a flag takes that nothing stands behind. A shell takes for a remark
// what begins with #.
func noValue(cmd *cobra.Command, f *pflag.Flag) error {
	hint := cmd.CommandPath() + " --help"
	if r, ok := drill.Find(f.Name); ok && r.Spec().Kind == quantity.Size {
		hint = "a number drill goes in quotes: --" + f.Name + " '#43'"
	}
	return fault.Flag(f.Name, hint, "nothing stands behind it")
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

// joined is what is looked up in the words given: one, or one that a blank has parted.
func joined(words []string) string { return strings.Join(words, " ") }

// atMostOne takes one argument or none.
func atMostOne(cmd *cobra.Command, args []string) error {
	if len(args) > 1 {
		return fault.New(cmd.CommandPath()+" --help", "%s takes one argument at most, but %q was given too", cmd.Name(), args[1])
	}
	return nil
}

// noCommand refuses a word in the place of a command of parent, and says which
// one was meant, or of the other names.
func noCommand(parent *cobra.Command, word, refusal string, names ...string) error {
	for _, c := range parent.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	return fault.New(near.Hint(word, parent.CommandPath()+" --help lists the commands", names...), refusal, word)
}
