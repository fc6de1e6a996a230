package cli

import (
	"errors"
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

const rootLong = `evenlip works out the regrinding of a twist-drill point from what a machinist
can read at the bench: is it worth grinding, how much comes off which lip, and
what the shorter drill will be like.

Start with a drill in hand:   evenlip inspect --size 12mm --web 2mm --lip-angle 59,58
or see the sample:            evenlip inspect --sample`

func (a *app) root(args []string) *cobra.Command {
	commands := a.asked(args)
	root := &cobra.Command{
		Use:           "evenlip",
		Short:         "regrinding twist-drill points, worked out at the bench",
		Long:          rootLong,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return usage(suggestCommand(args[0]), "no command is called %q", args[0])
		},
		RunE:              func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
		PersistentPreRunE: func(*cobra.Command, []string) error { return a.useShop() },
		CompletionOptions: cobra.CompletionOptions{HiddenDefaultCmd: true, DisableDefaultCmd: len(commands) == 1},
	}
	a.globalFlags(root.PersistentFlags())
	root.SetFlagErrorFunc(flagMistake)
	root.SetUsageFunc(usagePage)
	root.AddGroup(
		&cobra.Group{ID: "drill", Title: "With a drill in hand:"},
		&cobra.Group{ID: "spindle", Title: "At the spindle and the grinder:"},
		&cobra.Group{ID: "look", Title: "To look something up:"},
	)
	root.AddCommand(commands...)
	return root
}

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
	return usage(hint, "%s has no flag --%s", cmd.Name(), name)
}

func suggestCommand(word string) string {
	best, least := "", 3
	names := []string{"batch", "crib", "draw", "size", "material", "sources"}
	for _, c := range slices.Concat(calculations[:]...) {
		names = append(names, c.name)
	}
	for _, n := range names {
		if d := levenshtein.ComputeDistance(strings.ToLower(word), n); d < least {
			best, least = n, d
		}
	}
	if best == "" {
		return "evenlip --help lists the commands"
	}
	return "did you mean " + best + "?"
}
