package spindle

import (
	"cmp"
	"math"
	"slices"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// sizesIn returns the ordinary sizes from low to high mm, smallest first.
func sizesIn(low, high float64) []quantity.SizeName {
	const edge = 1e-9
	var out []quantity.SizeName
	for _, series := range quantity.AllSeries {
		n := quantity.Nearest(low, series)
		size := n.At
		if size.Name == "" || size.MM < low-edge {
			size = n.Above
		}
		for size.Name != "" && size.MM <= high+edge {
			out = append(out, size)
			n = quantity.Nearest(size.MM, series)
			size = n.Above
		}
	}
	slices.SortStableFunc(out, func(a, b quantity.SizeName) int { return cmp.Compare(a.MM, b.MM) })
	return out
}

// byChoice sorts sizes, the one to use first: well inside the band, then what a crib
// of the drill's own system has most likely, then nearest the middle. Source: own
// rule.
func (p *piloted) byChoice(a, b quantity.SizeName) int {
	worth := func(n quantity.SizeName) [3]float64 {
		return [3]float64{p.border(n.MM), commonness(n, p.load.System), math.Abs(n.MM - (p.low+p.high)/2)}
	}
	x, y := worth(a), worth(b)
	return slices.Compare(x[:], y[:])
}

// border ranks a size by how near it is to the web or the chisel edge: 0 well
// inside, 1 within a tenth of the band of an end, 2 on an end.
func (p *piloted) border(mm float64) float64 {
	off := math.Min(mm-p.low, p.high-mm)
	switch {
	case off > handbook.PilotBorder*(p.high-p.low):
		return 0
	case off > 1e-9:
		return 1
	}
	return 2
}

// commonness ranks a size for a drill read in that system, 0 first: whole and
// half millimetres, tenths, finer steps, the rest; fractions, numbers and
// letters, millimetres.
func commonness(n quantity.SizeName, system quantity.System) float64 {
	metric := n.Series == quantity.MetricSize
	switch {
	case system == quantity.Inch && n.Series == quantity.FractionSize:
		return 0
	case system == quantity.Inch && !metric:
		return 1
	case system == quantity.Inch:
		return 2
	case !metric:
		return 3
	case stepOf(n.MM, 0.5):
		return 0
	case stepOf(n.MM, 0.1):
		return 1
	}
	return 2
}

// stepOf reports whether v, mm, is so many whole steps.
func stepOf(v, step float64) bool { return math.Abs(math.Remainder(v, step)) < 1e-9 }

// mostShown is how many sizes a table lists; scripts have them all.
const mostShown = 7

func pilotDeclares(s *sheet.Sheet) { s.Grids = append(s.Grids, pilotList()) }

// pilotList is the list of the sizes that serve, without its rows.
func pilotList() sheet.Grid {
	return sheet.Grid{Key: "pilot_sizes", Title: "Ordinary sizes that serve", Columns: []sheet.Column{
		{Key: "name", Label: "size", Kind: quantity.Word}, {Key: "series", Label: "series", Kind: quantity.Word}, {Key: "diameter_mm", Label: "is", Kind: quantity.Size},
		{Key: "use", Label: "use", Kind: quantity.Switch},
	}}
}

// grid lists the sizes that serve, the one to use marked.
func (p *piloted) grid() sheet.Grid {
	g := pilotList()
	for i, n := range p.sizes {
		use := "no"
		if n == p.use {
			use = "yes"
		}
		g.Rows = append(g.Rows, []sheet.Cell{sheet.W(n.Name), sheet.W(n.Series.String()), sheet.V(n.MM), sheet.W(use)})
		g.Brief = append(g.Brief, i)
	}
	if len(g.Rows) <= mostShown {
		g.Brief = nil
		return g
	}
	slices.SortStableFunc(g.Brief, func(i, j int) int { return p.byChoice(p.sizes[i], p.sizes[j]) })
	g.Brief = g.Brief[:mostShown]
	slices.Sort(g.Brief)
	g.Note = "The likeliest ones; --format plain or json lists all."
	return g
}
