package cli

import (
	"cmp"

	"github.com/spf13/cobra"
)

const rootLong = `evenlip works out the regrinding of a twist-drill point from what a machinist
can read at the bench: is it worth grinding, how much comes off which lip, and
what the shorter drill will be like.

To begin, see the sample:  evenlip inspect --sample
For the tabulator to complete words, in bash, zsh, fish or PowerShell:
evenlip completion --help

evenlip help status says what the exit status is, evenlip help flags what every
command takes; help units, environment and safety are about those.`

func (a *app) root(args []string) *cobra.Command {
	commands := a.asked(args)
	root := &cobra.Command{
		Use:           "evenlip",
		Short:         "regrinding twist-drill points, worked out at the bench",
		Long:          rootLong,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return noCommand(cmd, args[0], "no command is called %q")
		},
		PersistentPreRunE: func(cmd *cobra.Command, _ []string) error {
			if err := cmp.Or(blanks(cmd), heeded(cmd)); err != nil {
				return err
			}
			return a.settle(true)
		},
		CompletionOptions: cobra.CompletionOptions{HiddenDefaultCmd: true, DisableDefaultCmd: len(commands) == 1},
	}
	version := root.Flags().BoolP("version", "V", false, "the version in one line; evenlip version tells more")
	root.RunE = func(*cobra.Command, []string) error {
		if *version {
			return a.printRelease()
		}
		a.buf.WriteString(a.shown(frontPage(a.pageWidth())))
		return nil
	}
	root.SetHelpCommand(a.helpCommand())
	root.PersistentFlags().BoolP("help", "h", false, "all about a command; -h is one screen of it")
	a.global.flags(root.PersistentFlags())
	root.SetFlagErrorFunc(flagMistake)
	root.SetUsageFunc(a.usagePage)
	a.helpPage(root)
	root.AddGroup(
		&cobra.Group{ID: "drill", Title: "With a drill in hand:"},
		&cobra.Group{ID: "grinder", Title: "At the grinder:"},
		&cobra.Group{ID: "drawer", Title: "With a drawer of drills:"},
		&cobra.Group{ID: "look", Title: "With nothing in hand yet:"},
	)
	root.AddCommand(commands...)
	return root
}
