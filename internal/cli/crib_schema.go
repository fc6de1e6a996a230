package cli

import (
	"github.com/spf13/cobra"

	"evenlip/internal/crib"
	"evenlip/internal/fault"
	"evenlip/internal/sheet/print"
)

func (a *app) cribSchema() *cobra.Command {
	return &cobra.Command{
		Use: "schema", Short: "the JSON Schema of a crib's file, for editors", Args: noArgs,
		Long: `The JSON Schema (draft 07) of a crib's file: with it an editor completes keys,
shows how each reading is taken, and marks most of what would be refused.`,
		Example: "  evenlip crib schema\n  evenlip crib schema | jq '.properties | keys'",
		RunE: func(cmd *cobra.Command, _ []string) error {
			if f := cmd.Flags(); f.Changed("format") && a.set.Form != print.JSON {
				return fault.New("leave --format out", "crib schema: prints JSON, not %s", a.set.Form)
			}
			a.buf.Write(crib.Schema())
			return nil
		},
	}
}
