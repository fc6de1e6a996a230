package cli

import (
	"cmp"

	"github.com/spf13/cobra"
)

// frontPage is what evenlip says when it is called alone: one screen, by what
// is in the hand of whoever asks.
const frontPage = `evenlip works out the regrinding of a twist-drill point, before metal comes off.

With a drill in hand
    inspect                          the whole point, limits and a verdict
    regrind                          what comes off each lip; life left
    point clearance chisel web lips  one thing about it at a time
    edge draw                        along the lip; the point, to scale
    thin thrust pilot speed          a thick web; the drill at work
At the grinder
    wheel                            its speed against its marking; gaps
    cone                             how to set a swing fixture
With a drawer of drills
    crib                             one file for all: audit, plan, record
    batch                            one drill a line, as many as there are
With nothing in hand yet
    size material sources version    to look something up

The sample drill       evenlip inspect --sample
A drill, step by step  evenlip inspect --ask
From readings          evenlip inspect --size 12mm --web 2mm --lip-angle 59,58
Two examples of each   evenlip COMMAND --help
`

// withoutShop runs before a command to which the shop's own settings say
// nothing: a fault in their file must not keep back what helps to mend it.
func (a *app) withoutShop(cmd *cobra.Command, _ []string) error {
	return cmp.Or(blanks(cmd), a.settle(false))
}

// helpCommand is cobra's own, but for a word that is no command.
func (a *app) helpCommand() *cobra.Command {
	return &cobra.Command{
		Use: "help [COMMAND]", Short: "what a command does, its flags and two examples",
		Long:              "What a command does, its flags and two examples, as evenlip COMMAND --help.",
		Example:           "  evenlip help inspect\n  evenlip help crib record",
		PersistentPreRunE: a.withoutShop,
		RunE: func(cmd *cobra.Command, args []string) error {
			about, rest, err := cmd.Root().Find(args)
			if err != nil || len(rest) > 0 {
				return noCommand(about, rest[0], "no command is called %q")
			}
			about.InitDefaultHelpFlag()
			return about.Help()
		},
	}
}
