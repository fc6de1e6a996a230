package print

import (
	"strings"

	"evenlip/internal/sheet"
)

// shopMark stands behind what a shop has set in a table's list; a figure by itself
// has the shop for its basis.
const shopMark = "*"

// ofShopKey is where a script finds what the shop has set: in JSON beside the
// figures, or in the row of a list; in CSV a column.
const ofShopKey = "set_by_shop"

// anyOfShop reports whether a shop has set anything in a list.
func anyOfShop(g *sheet.Grid) bool {
	for _, row := range g.Rows {
		for _, c := range row {
			if c.Shop {
				return true
			}
		}
	}
	return false
}

// ofShop names the columns of a row that a shop has set, apart by blanks.
func ofShop(g *sheet.Grid, row []sheet.Cell) string {
	var keys []string
	for i, c := range row {
		if c.Shop {
			keys = append(keys, g.Columns[i].Key)
		}
	}
	return strings.Join(keys, " ")
}

// setByShop names the figures of a sheet that a shop has set.
func setByShop(s *sheet.Sheet) []string {
	var keys []string
	s.Each(func(f *sheet.Figure) {
		if f.Shop {
			keys = append(keys, f.Key)
		}
	})
	return keys
}
