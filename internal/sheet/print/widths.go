package print

import (
	"evenlip/internal/sheet"
	"evenlip/internal/sheet/print/style"
)

// narrow is the width below which a figure takes two lines and not one row.
const narrow = 80

// The columns of a row at 80: label, value, limit, state, basis.
const (
	labelCells = 26
	valueCells = 12
	limitCells = 16
	stateCells = 7
	basisCells = 8
	// spreadCells is what an uncertainty needs beside the value.
	spreadCells = 5
)

// rowCells are the widths of a row's columns, the last left out.
type rowCells struct{ label, value, limit, state int }

// measured returns the columns for a sheet. Where a state is in doubt, its column
// takes the cells it needs from what the width has to spare, and else from what the
// others do not fill.
func (t *tableWriter) measured(s *sheet.Sheet) rowCells {
	row := rowCells{labelCells, valueCells, limitCells, stateCells}
	if !s.Gauged {
		return row
	}
	row.value += spreadCells
	room := t.o.Width - (2 + row.label + 1 + row.value + 1 + row.limit + 1 + row.state + 1 + basisCells)
	row.state += max(0, min(doubtCells-row.state, room))
	full, doubt := t.filled(s)
	if !doubt {
		return row
	}
	for _, c := range [...]struct{ cells, full *int }{{&row.label, &full.label}, {&row.value, &full.value}, {&row.limit, &full.limit}} {
		spare := max(0, min(doubtCells-row.state, *c.cells-*c.full))
		*c.cells -= spare
		row.state += spare
	}
	return row
}

var doubtCells = len(sheet.Unsure.String())

// filled returns how wide the cells of the rows are, and whether a state is in doubt.
func (t *tableWriter) filled(s *sheet.Sheet) (full rowCells, doubt bool) {
	for i := range s.Sections {
		sec := &s.Sections[i]
		if sec.Quiet {
			continue
		}
		for j := range sec.Figures {
			fig := &sec.Figures[j]
			if !fig.Known() {
				continue
			}
			full.label = max(full.label, style.Width(t.ascii(fig.Label)))
			full.value = max(full.value, style.Width(t.ascii(t.value(fig))))
			full.limit = max(full.limit, style.Width(t.limit(fig)))
			doubt = doubt || fig.State() == sheet.Unsure
		}
	}
	return full, doubt
}
