package handbook

var (
	// diameterSource: the row of under 1 mm is that of 1 to 3 mm.
	diameterSource  = Source{Practice, "", "twist drills are made to ISO h8 across the margins"}
	undersizeSource = Source{Derived, "", "the least that h8 allows, and a back taper of 0.08 mm in 100 mm over five diameters ground off (both common practice)"}
)

// diameterRow is how far under its size a drill may be made, mm.
type diameterRow struct{ to, under float64 }

var diameterRows = [...]diameterRow{
	{3, 0.014}, {6, 0.018}, {10, 0.022}, {18, 0.027}, {30, 0.033}, {50, 0.039}, {80, 0.046}, {100, 0.054},
}

const (
	mostTaper = 0.08 / 100 // mm per mm
	groundOff = 5          // diameters: about half of a jobber drill's flute
	taperedBy = mostTaper * groundOff
)

// Undersize returns how far, mm, a drill of nominal diameter d mm that is still good
// may measure under its size: made small, and ground back along its back taper. A
// diameter past the last row takes the last row.
func Undersize(d float64) Band {
	row := diameterRows[len(diameterRows)-1]
	for i := len(diameterRows) - 1; i >= 0; i-- {
		if d <= diameterRows[i].to+edge {
			row = diameterRows[i]
		}
	}
	return Band{0, row.under + taperedBy*d, &undersizeSource}
}

func undersizeTables() []Table {
	return []Table{
		{Name: "drill-diameter-tolerance", Title: "How far under its size a drill may be made, mm", Source: diameterSource,
			Head: []string{"to mm", "under mm"},
			Rows: func() [][]string {
				var out [][]string
				for _, r := range diameterRows {
					out = append(out, []string{cell(r.to), cell(r.under)})
				}
				return out
			}},
		{Name: "drill-undersize", Title: "How far under its size a drill that is still good may measure", Source: undersizeSource,
			Head: []string{"under mm"},
			Rows: func() [][]string {
				return [][]string{{"as made, and " + cell(taperedBy) + " of the diameter"}}
			}},
	}
}
