package cli

import (
	"cmp"

	"github.com/spf13/cobra"

	"evenlip/internal/command/lookup"
	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet/print"
)

func (a *app) materialCommand() *cobra.Command {
	size := ""
	cmd := &cobra.Command{
		Use: "material [NAME]", Short: "recommended point, clearance, helix and speed by work material", GroupID: "look",
		Long: `What is published about drilling a work material with a high-speed-steel drill:
point, lip clearance, chisel edge, helix, cutting speed, feed and force factors.
Without a name, the list. With a size, the clearance for that size as inspect
judges it.`,
		Example: "  evenlip material\n  evenlip material cast-iron-150 --size 12mm",
		RunE: func(_ *cobra.Command, args []string) error {
			name := joined(args)
			if name == "" {
				if size != "" {
					return fault.New("evenlip material steel-200 --size "+size, "--size: goes with a material's name")
				}
				return a.printSheet(lookup.Materials(a.set.book, a.set.Form == print.Table, orMetric(a.set.typed())), a.set.units)
			}
			m, ok := a.set.book.Material(name)
			if !ok {
				return fault.New(handbook.MaterialHint(name), "material: no material is called %q", name)
			}
			return a.oneMaterial(m, size)
		},
	}
	cmd.Flags().StringVar(&size, "size", "", "the drill `SIZE`, for the clearance, the feed and the spindle speed at that size")
	return cmd
}

func (a *app) oneMaterial(m *handbook.Material, size string) error {
	var v quantity.Value
	if size != "" {
		var bad *fault.Fault
		if v, bad = quantity.Parse(quantity.Size, size, a.set.typed()); bad != nil {
			return bad.In(fault.Place{Flag: "size"}, "")
		}
	}
	return a.printSheet(lookup.Material(m, a.set.book, v, a.set.Explain), cmp.Or(a.set.units, v.System))
}
