package cli

import (
	"math"

	"github.com/spf13/cobra"

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
		Args:    atMostOne,
		RunE: func(_ *cobra.Command, args []string) error {
			units, err := a.system()
			if err != nil {
				return err
			}
			if len(args) == 0 {
				if size != "" {
					return fault.New("evenlip material steel-200 --size "+size, "--size: goes with a material's name")
				}
				return a.print([]print.Job{{Sheet: materialList(a.book(), a.global.format == string(print.Table), orMetric(units)), System: orMetric(units)}})
			}
			m, ok := a.book().Material(args[0])
			if !ok {
				hint := "evenlip material lists them"
				if near := handbook.SuggestMaterial(args[0]); near != "" {
					hint = "did you mean " + near + "?"
				}
				return fault.New(hint, "material: no material is called %q", args[0])
			}
			return a.oneMaterial(m, size, units)
		},
	}
	cmd.Flags().StringVar(&size, "size", "", "drill size, for the clearance, the feed and the spindle speed at that size")
	return cmd
}

func (a *app) oneMaterial(m *handbook.Material, size string, units quantity.System) error {
	v := quantity.Value{V: math.NaN()}
	if size != "" {
		var bad *fault.Fault
		if v, bad = quantity.Parse(quantity.Size, size, units); bad != nil {
			return bad.In(fault.Place{Flag: "size"}, "")
		}
		if units == quantity.Unset {
			units = v.System
		}
	}
	return a.print([]print.Job{{Sheet: materialSheet(m, a.book(), v, a.global.explain), System: orMetric(units)}})
}
