package cli

import (
	"strings"

	"github.com/spf13/cobra"

	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
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
			tables := handbook.Tables()
			if len(args) == 1 {
				if tables = named(tables, args[0]); len(tables) == 0 {
					return fault.New("evenlip sources lists them", "sources: no table is called %q", args[0])
				}
			}
			return a.printSheet(sourcesSheet(tables, a.set.Form == print.Table), a.set.units)
		},
	}
}

func named(tables []handbook.Table, name string) []handbook.Table {
	var out []handbook.Table
	for _, t := range tables {
		if t.Name == name {
			out = append(out, t)
		}
	}
	return out
}

// sourcesSheet lists the tables: one under the other for people, one long list
// of figures for scripts.
func sourcesSheet(tables []handbook.Table, people bool) *sheet.Sheet {
	s := &sheet.Sheet{Command: "sources", Title: "Every embedded figure and where it comes from"}
	if !people {
		s.Grids = []sheet.Grid{sourceList(tables)}
		return s
	}
	for _, t := range tables {
		g := sheet.Grid{Key: t.Name, Title: t.Title + " [" + t.Name + "]", Note: t.Source.String()}
		for _, h := range t.Head {
			g.Columns = append(g.Columns, sheet.Column{Key: h, Label: h, Kind: quantity.Word})
		}
		for _, row := range t.Rows() {
			cells := make([]sheet.Cell, len(row))
			for i, c := range row {
				cells[i] = sheet.W(c)
			}
			g.Rows = append(g.Rows, cells)
		}
		s.Grids = append(s.Grids, g)
	}
	return s
}

func sourceList(tables []handbook.Table) sheet.Grid {
	g := sheet.Grid{Key: "tables", Main: true}
	for _, key := range [...]string{"table", "title", "figures", "label", "sureness", "source"} {
		g.Columns = append(g.Columns, sheet.Column{Key: key, Label: key, Kind: quantity.Word})
	}
	for _, t := range tables {
		for _, row := range t.Rows() {
			parts := make([]string, len(row))
			for i, c := range row {
				parts[i] = t.Head[i] + " " + c
			}
			g.Rows = append(g.Rows, []sheet.Cell{sheet.W(t.Name), sheet.W(t.Title), sheet.W(strings.Join(parts, "; ")),
				sheet.W(t.Source.Label.String()), sheet.W(t.Source.Sureness), sheet.W(t.Source.Text)})
		}
	}
	return g
}
