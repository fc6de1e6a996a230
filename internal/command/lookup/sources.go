package lookup

import (
	"slices"
	"strings"

	"evenlip/internal/handbook"
	"evenlip/internal/sheet"
)

// Sources is the sheet of the embedded tables, or of the one of that name: one
// under the other for people, one long list of figures for scripts; nil where no
// table has the name.
func Sources(name string, people bool) *sheet.Sheet {
	tables := handbook.Tables()
	if name != "" {
		tables = slices.DeleteFunc(tables, func(t handbook.Table) bool { return t.Name != name })
	}
	if len(tables) == 0 {
		return nil
	}
	s := sheet.New("sources", false)
	s.Title = "Every embedded figure and where it comes from"
	if !people {
		s.Grids = append(s.Grids, allFigures(tables))
		return s
	}
	for _, t := range tables {
		g := sheet.Grid{Key: t.Name, Title: t.Title + " [" + t.Name + "]", Note: t.Source.String()}
		for _, head := range t.Head {
			g.Columns = append(g.Columns, word(head, head))
		}
		for _, row := range t.Rows {
			g.Rows = append(g.Rows, words(row...))
		}
		s.Grids = append(s.Grids, g)
	}
	return s
}

func allFigures(tables []handbook.Table) sheet.Grid {
	g := sheet.Grid{Key: "tables", Main: true}
	for _, key := range [...]string{"table", "title", "figures", "label", "sureness", "source"} {
		g.Columns = append(g.Columns, word(key, key))
	}
	for _, t := range tables {
		for _, row := range t.Rows {
			parts := make([]string, len(row))
			for i, cell := range row {
				parts[i] = t.Head[i] + " " + cell
			}
			g.Rows = append(g.Rows, words(t.Name, t.Title, strings.Join(parts, "; "), t.Source.Label.String(), t.Source.Sureness, t.Source.Text))
		}
	}
	return g
}

func words(texts ...string) []sheet.Cell {
	cells := make([]sheet.Cell, len(texts))
	for i, text := range texts {
		cells[i] = sheet.W(text)
	}
	return cells
}
