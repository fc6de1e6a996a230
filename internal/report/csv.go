package report

import (
	"encoding/csv"
	"io"
	"math"
	"strings"

	"evenlip/internal/figure"
	"evenlip/internal/quantity"
)

// writeCSV prints RFC 4180: a header, then a row a drill in millimetres and
// degrees; or the rows of the list that is a sheet's main answer.
func writeCSV(w io.Writer, jobs []Job) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	for i, j := range jobs {
		if g := mainGrid(j.Sheet); g != nil {
			csvGrid(out, g, i == 0)
			continue
		}
		if i == 0 {
			out.Write(csvHead(j.Sheet))
		}
		out.Write(csvRow(j.Sheet))
	}
	out.Flush()
	return out.Error()
}

func mainGrid(s *figure.Sheet) *figure.Grid {
	for i := range s.Grids {
		if s.Grids[i].Main {
			return &s.Grids[i]
		}
	}
	return nil
}

func csvHead(s *figure.Sheet) []string {
	head := []string{"drill"}
	s.Each(func(f *figure.Figure) { head = append(head, f.Key) })
	if s.Verdict != nil {
		head = append(head, "verdict")
	}
	return append(head, "findings")
}

func csvRow(s *figure.Sheet) []string {
	row := []string{clean(s.Title)}
	s.Each(func(f *figure.Figure) {
		if f.Word != "" {
			row = append(row, f.Word)
		} else {
			row = append(row, full(quantity.Export(f.Kind, f.Value)))
		}
	})
	if s.Verdict != nil {
		row = append(row, s.Verdict.Word)
	}
	codes := make([]string, len(s.Findings))
	for i, f := range s.Findings {
		codes[i] = f.Code
	}
	return append(row, strings.Join(codes, " "))
}

func csvGrid(out *csv.Writer, g *figure.Grid, head bool) {
	if head {
		keys := make([]string, len(g.Columns))
		for i, c := range g.Columns {
			keys[i] = c.Key
		}
		out.Write(keys)
	}
	for _, row := range g.Rows {
		cells := make([]string, len(row))
		for i, c := range row {
			cells[i] = clean(c.Word)
			if c.Word == "" && !math.IsNaN(c.Value) {
				cells[i] = full(quantity.Export(g.Columns[i].Kind, c.Value))
			}
		}
		out.Write(cells)
	}
}
