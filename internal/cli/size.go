package cli

import (
	"cmp"
	"math"

	"github.com/spf13/cobra"

	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

func (a *app) sizeCommand() *cobra.Command {
	return &cobra.Command{
		Use: "size SIZE", Short: "a drill size in every notation, with the next sizes up and down", GroupID: "look",
		Long: `A drill size in millimetres and inches, every name it has (number, letter,
fraction, metric), and the next ordinary sizes up and down in each series.`,
		Example: "  evenlip size '#7'\n  evenlip size 1-1/4in",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fault.New("evenlip size '#7'; quote the # for the shell", "size takes one drill size")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			v, bad := quantity.Parse(quantity.Size, args[0], a.set.units)
			if bad != nil {
				return bad.In(fault.Place{}, "size")
			}
			return a.printSheet(sizeSheet(v, a.set.Explain), cmp.Or(a.set.units, v.System))
		},
	}
}

func sizeSheet(v quantity.Value, explain bool) *sheet.Sheet {
	s := &sheet.Sheet{Command: "size", Explaining: explain, Title: v.Echo() + " drill size", Inputs: []sheet.Input{{
		Name: "size", Text: v.Text, Kind: quantity.Size, Keys: []string{"size_mm"}, Values: []quantity.Value{v}}}}
	s.Open("Diameter")
	s.Add(sheet.Figure{Key: "diameter_mm", Label: "millimetres", Value: v.V, Kind: quantity.Number, Exact: true})
	s.Work("by definition: 1 in is 25.4 mm", "mm = in * 25.4", "{} * 25.4", quantity.Num(v.V/handbook.InchMM))
	s.Add(sheet.Figure{Key: "diameter_in", Label: "inches", Value: v.V / handbook.InchMM, Kind: quantity.Number, Exact: true})
	s.Work("by definition: 1 in is 25.4 mm", "in = mm / 25.4", "{} / 25.4", quantity.Num(v.V))
	names := sheet.Grid{Key: "names", Title: "Also called", Columns: []sheet.Column{{Key: "name", Label: "name", Kind: quantity.Word}}}
	for _, n := range quantity.Names(v.V) {
		names.Rows = append(names.Rows, []sheet.Cell{sheet.W(n.Name)})
	}
	if len(names.Rows) == 0 {
		s.Find("no-ordinary-size", sheet.Note, "no ordinary series has this size")
	}
	s.Grids = append(s.Grids, names, neighbours(v.V))
	for _, t := range handbook.SizeTables() {
		src := t.Source
		s.Extra = append(s.Extra, &src)
	}
	return s
}

// neighbours is the grid of the next sizes down and up, series by series.
func neighbours(mm float64) sheet.Grid {
	g := sheet.Grid{Key: "series", Title: "Next sizes, series by series", Columns: []sheet.Column{
		{Key: "series", Label: "series", Kind: quantity.Word},
		{Key: "down", Label: "down", Kind: quantity.Word}, {Key: "down_mm", Label: "is mm", Kind: quantity.Number},
		{Key: "up", Label: "up", Kind: quantity.Word}, {Key: "up_mm", Label: "is mm", Kind: quantity.Number},
	}}
	row := func(series string, down, up quantity.SizeName) {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(series), sheet.W(down.Name), sizeCell(down), sheet.W(up.Name), sizeCell(up)})
	}
	for _, series := range quantity.AllSeries {
		n, _ := quantity.Nearest(mm, series)
		row(series.String(), n.Below, n.Above)
	}
	down, _ := quantity.NextDown(mm)
	up, _ := quantity.NextUp(mm)
	row("any", down, up)
	return g
}

func sizeCell(n quantity.SizeName) sheet.Cell {
	if n.Name == "" {
		return sheet.V(math.NaN())
	}
	return sheet.V(n.MM)
}
