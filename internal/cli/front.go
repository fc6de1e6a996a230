package cli

import (
	"cmp"

	"github.com/spf13/cobra"
)

// frontPage is what evenlip says when it is called alone: one screen, by what
// is in the hand of whoever asks.
const frontPage = `evenlip  a good regrind is two even lips

start here      evenlip inspect --ask      is it fit? one reading at a time
                evenlip inspect --sample   the same with a made-up drill

drill in hand   inspect   fit or not, and why        regrind   what comes off
                point  clearance  chisel  web  lips  edge  draw   one thing
at the wheel    wheel     before it is started       cone      in a fixture
                thin      a web grown thick
at the spindle  speed     rpm, feed, pecks           pilot     its size
                thrust    push, torque, power
a drawer full   crib      list, audit, plan, record  batch     a drill a line
to look up      size      material  sources          version  schema

more    evenlip COMMAND -h  one screen each    evenlip help safety, units, flags
`

// withoutShop runs before a command to which the shop's own settings say
// nothing: a fault in their file must not keep back what helps to mend it.
func (a *app) withoutShop(cmd *cobra.Command, _ []string) error {
	return cmp.Or(blanks(cmd), a.settle(false))
}

// helpCommand is cobra's own, but for the topics and a word that is no command.
func (a *app) helpCommand() *cobra.Command {
	long := "All of what a command does, its flags and examples, as evenlip COMMAND --help;\n-h is one screen of it. Beside the commands it knows of"
	for _, t := range topics {
		long += "\n  " + padRight(t.name, helpLabel+2) + t.about
	}
	return &cobra.Command{
		Use: "help [COMMAND or TOPIC]", Short: "all about a command, or a topic such as units or safety",
		Long:              long,
		Example:           "  evenlip help inspect\n  evenlip help crib record\n  evenlip help units",
		ValidArgsFunction: a.helpSubjects,
		PersistentPreRunE: a.withoutShop,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 1 {
				if page, ok := a.topic(args[0]); ok {
					a.buf.WriteString(a.shown(page))
					return nil
				}
			}
			about, rest, err := cmd.Root().Find(args)
			if err != nil || len(rest) > 0 {
				return noCommand(about, rest[0], "no command or topic is called %q", topicNames()...)
			}
			return about.Help()
		},
	}
}

func topicNames() (names []string) {
	for _, t := range topics {
		names = append(names, t.name)
	}
	return names
}
