package cli

import (
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/command/lookup"
	"evenlip/internal/fault"
	"evenlip/internal/sheet/print"
)

func (a *app) sourcesCommand() *cobra.Command {
	return &cobra.Command{
		Use: "sources [TABLE]", Short: "every embedded figure with where it comes from", GroupID: "look",
		Long: `Every figure that evenlip did not compute, table by table, with its source and
how far it may be trusted: read in print, common practice, from memory, derived,
or a rule of this program's own.`,
		Example: "  evenlip sources\n  evenlip sources lip-clearance-by-size",
		Args:    atMostOne,
		RunE: func(_ *cobra.Command, args []string) error {
			s := lookup.Sources(strings.Join(args, ""), a.set.Form == print.Table)
			if s == nil {
				return fault.New("evenlip sources lists them", "sources: no table is called %q", args[0])
			}
			return a.printSheet(s, a.set.units)
		},
	}
}
