// Package lookup answers what needs no drill in hand: sizes in every notation, what
// is published of a work material, and where each embedded figure comes from.
package lookup

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

var sizeFigures = sheet.Group[quantity.Value]{Title: "Diameter", Figures: []sheet.Def[quantity.Value]{
	{Key: "diameter_mm", Letter: "mm", Label: "millimetres", Kind: quantity.Number, Exact: true, Fine: true, Work: "inch * 25.4", Source: inchSource,
		Value: func(v *quantity.Value) float64 { return v.V }},
	{Key: "diameter_in", Letter: "inch", Label: "inches", Kind: quantity.Number, Exact: true, Fine: true, Work: "mm / 25.4", Source: inchSource,
		Value: func(v *quantity.Value) float64 { return v.V / handbook.InchMM }},
}}

const inchSource = "by definition: 1 in is 25.4 mm"

// Size is the sheet of a drill size: every name it has, and the next ordinary sizes
// up and down in each series. Of a drill that measures no size it says which one it may
// have been, first in a system of units.
func Size(v quantity.Value, first quantity.System, explain bool) *sheet.Sheet {
	s := sheet.New("size", explain)
	s.Title = v.Echo() + " drill size"
	s.Inputs = append(s.Inputs, sizeInput(v))
	sheet.Put(s, &v, nil, &sizeFigures)
	names := sheet.Grid{Key: "names", Title: "Also called", Columns: []sheet.Column{word("name", "name")}}
	for _, n := range quantity.Called(v) {
		names.Rows = append(names.Rows, []sheet.Cell{sheet.W(n.Name)})
	}
	judge.SizePlausible(v, s)
	if len(names.Rows) == 0 {
		unnamed(v, first, s)
	}
	s.Grids = append(s.Grids, names, neighbours(v.V))
	sources(s, handbook.SizeTables())
	s.Screen = func() *sheet.Screen { return sizeScreen(v, s) }
	return s
}

// unnamed says what a drill may be that measures no ordinary size.
func unnamed(v quantity.Value, first quantity.System, s *sheet.Sheet) {
	switch worn, ok := quantity.WornFrom(v.V, first); {
	case !ok:
		s.Find("no-ordinary-size", sheet.Note, "no ordinary series has this size")
	case worn.By < 0:
		s.Find("read-over-size", sheet.Note, "{}, read {} over: no more than a caliper leaves open", quantity.Say(worn.Name), thin(-worn.By))
	default:
		s.Find("worn-size", sheet.Note, "{}, worn {}: no ordinary series has the size itself", quantity.Say(worn.Name), thin(worn.By))
		s.Extra = append(s.Extra, handbook.Undersize(worn.MM).Source)
	}
}

// thin makes the argument that is a small length, as fine as sizes are told.
func thin(v float64) quantity.Arg {
	return quantity.Of(quantity.Size, v)
}

func sizeInput(v quantity.Value) sheet.Input {
	return sheet.Input{Name: "size", Text: v.Text, Kind: quantity.Size, Keys: []string{"size_mm"}, Values: []quantity.Value{v}}
}

// neighbours is the list of the next sizes down and up, series by series.
func neighbours(mm float64) sheet.Grid {
	g := sheet.Grid{Key: "series", Title: "Next sizes, series by series", Columns: []sheet.Column{
		word("series", "series"), word("down", "down"), {Key: "down_mm", Label: "is", Kind: quantity.Size},
		word("up", "up"), {Key: "up_mm", Label: "is", Kind: quantity.Size},
	}}
	row := func(series string, down, up quantity.SizeName) {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(series), sheet.W(down.Name), millimetres(down), sheet.W(up.Name), millimetres(up)})
	}
	for _, series := range quantity.AllSeries {
		n := quantity.Nearest(mm, series)
		row(series.String(), n.Below, n.Above)
	}
	down := quantity.NextDown(mm)
	up := quantity.NextUp(mm)
	row("any", down, up)
	return g
}

func millimetres(n quantity.SizeName) sheet.Cell {
	if n.Name == "" {
		return sheet.V(math.NaN())
	}
	return sheet.V(n.MM)
}

func word(key, label string) sheet.Column {
	return sheet.Column{Key: key, Label: label, Kind: quantity.Word}
}

// sources adds where the tables come from.
func sources(s *sheet.Sheet, tables []handbook.Table) {
	for _, t := range tables {
		s.Extra = append(s.Extra, t.Source)
	}
}
