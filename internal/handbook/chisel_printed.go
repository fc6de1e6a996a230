package handbook

import (
	"strconv"
	"sync"
)

var edgeAngleSource = Source{Derived, "", "w/c over the rows of the Machinery's Handbook's Table 7 averages 0.865, near sin 60: a chisel edge at 120 degrees to the lips"}

// HandbookChiselAngle is the acute chisel-edge angle, radians, at which the
// handbook's table of factors pairs web and chisel.
const HandbookChiselAngle = 60 * deg

// HandbookChiselSource is where it comes from.
func HandbookChiselSource() *Source { return &edgeAngleSource }

// printedRow is one row of the chisel-edge factors as printed.
type printedRow struct{ ratio, a, b, j float64 }

var printedRows = sync.OnceValue(func() []printedRow {
	var out []printedRow
	for _, cells := range published(chiselFactors)() {
		out = append(out, printedRow{figureOf(cells[0]), figureOf(cells[2]), figureOf(cells[3]), figureOf(cells[4])})
	}
	return out
})

// figureOf reads a printed figure; NaN stands for one that cannot be read.
func figureOf(cell string) float64 {
	if v, err := strconv.ParseFloat(cell, 64); err == nil {
		return v
	}
	return nan
}

// PrintedFactors returns the handbook's chisel-edge factors A, B and J at
// ratio = c/D from its Table 7, between two rows in a straight line. ok is false
// outside the table, 0.03 to 0.40.
func PrintedFactors(ratio float64) (a, b, j float64, ok bool) {
	rows := printedRows()
	for i, r := range rows[:len(rows)-1] {
		next := rows[i+1]
		if ratio >= r.ratio-edge && ratio <= next.ratio+edge {
			at := func(y0, y1 float64) float64 { return between(ratio, r.ratio, next.ratio, y0, y1) }
			return at(r.a, next.a), at(r.b, next.b), at(r.j, next.j), true
		}
	}
	return nan, nan, nan, false
}

// chiselPrintedTables returns the table of this file.
func chiselPrintedTables() []Table {
	return []Table{{"handbook-chisel-angle", "Chisel-edge angle taken where none was read, degrees", edgeAngleSource,
		[]string{"acute", "obtuse"}, func() [][]string { return [][]string{{"60", "120"}} }}}
}
