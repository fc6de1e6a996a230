package cli

import (
	"cmp"

	"github.com/spf13/cobra"

	"evenlip/internal/command/lookup"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
)

func (a *app) sizeCommand() *cobra.Command {
	return &cobra.Command{
		Use: "size SIZE", Short: "a drill size in every notation, with the next sizes up and down", GroupID: "look",
		Long: `A drill size in millimetres and inches, every name it has (number, letter,
fraction, metric), and the next ordinary sizes up and down in each series.`,
		Example: "  evenlip size '#7'\n  evenlip size 1-1/4in",
		RunE: func(_ *cobra.Command, args []string) error {
			v, bad := quantity.Parse(quantity.Size, joined(args), a.set.typed())
			switch {
			case bad != nil && len(args) != 1:
				return fault.New("evenlip size '#7'; quote the # for the shell", "size takes one drill size")
			case bad != nil:
				return bad.In(fault.Place{}, "size")
			}
			units := cmp.Or(a.set.units, v.System)
			return a.printSheet(lookup.Size(v, units, a.set.Explain), units)
		},
	}
}
