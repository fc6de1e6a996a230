package cli

import (
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/command"
	"evenlip/internal/command/drawing"
	"evenlip/internal/command/lookup"
	"evenlip/internal/crib"
	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/near"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print"
)

func (a *app) schemaCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use: "schema COMMAND", Short: "the JSON Schema of what a command prints as JSON", GroupID: "look",
		Long: `The JSON Schema (2020-12) of a command's answer with --format json; that of
batch is of one line. It is made of what the command itself declares: its
readings, figures, limits and lists.`,
		Example: "  evenlip schema inspect\n  evenlip schema crib audit | jq '.\"$defs\".answer.properties.results'",
		RunE: func(cmd *cobra.Command, args []string) error {
			if f := cmd.Flags(); f.Changed("format") && a.set.Form != print.JSON {
				return fault.New("leave --format out", "schema: prints JSON, not %s", a.set.Form)
			}
			return a.schema(strings.Join(args, " "))
		},
	}
	return without(cmd, "check", "evenlip inspect --check says whether a drill is fit", "explain", "evenlip inspect --explain shows how each figure is got")
}

// schema prints the JSON Schema of the command of that name.
func (a *app) schema(name string) error {
	if name == "batch" {
		var all []print.Contract
		for _, c := range commands {
			if !c.About().Grinder {
				all = append(all, onDrillContract(c))
			}
		}
		a.buf.Write(print.BatchSchema(all))
		return nil
	}
	c, ok := contract(name)
	if !ok {
		names := answering()
		return fault.New(near.Hint(name, "", names...), "schema: takes the name of a command that prints JSON: %s", strings.Join(names, ", "))
	}
	a.buf.Write(c.JSONSchema())
	return nil
}

// answering lists the commands that have a schema.
func answering() []string {
	var names []string
	for _, c := range commands {
		names = append(names, c.About().Name)
	}
	return append(names, "draw", "size", "material", "sources", "version", "batch", "crib list", "crib audit", "crib plan", "crib record", "crib new")
}

// contract returns what the answers of a command have.
func contract(name string) (print.Contract, bool) {
	if c := onDrill(name); c != nil {
		return onDrillContract(c), true
	}
	var declared []*sheet.Sheet
	switch name {
	case "draw":
		declared = append(declared, drawing.Command.Declare())
	case "size":
		declared = append(declared, lookup.Size(quantity.Value{V: 1}, quantity.Metric, false))
	case "material":
		var book *handbook.Book
		declared = append(declared, lookup.Materials(book, false, quantity.Metric), lookup.Material(&book.Materials()[0], book, quantity.Value{V: 1}, false))
	case "sources":
		declared = append(declared, lookup.Sources("", false))
	case "version":
		declared = append(declared, versionSheet(new(debug.BuildInfo)))
	default:
		if s := crib.Declared(name); s != nil {
			declared = append(declared, s)
		}
	}
	return print.Contract{Declared: declared}, len(declared) > 0
}

func onDrillContract(c command.Command) print.Contract {
	return print.Contract{Declared: []*sheet.Sheet{c.Declare()}, Steps: true, Several: !c.About().Grinder}
}
