package handbook

import "math"

// How much a regrind takes beyond what the wear asks for.
var (
	cleanUpSource    = Source{Own, "", "0.05 mm beyond the wear, five divisions of a 0.01 mm indicator, so that the edge is bright all over"}
	leastUsualSource = Source{Own, "", "a usual grind at a pedestal takes a twenty-fifth of the diameter, and 0.25 mm at least, whatever this one takes: off-hand nobody takes less"}
	mostUsualSource  = Source{Own, "", "land, corner or margin worn over a twentieth of the diameter deep is a mishap and no habit: a usual grind is counted without it"}
	steepSource      = Source{Own, "", "a flank of too much clearance is ground anew over 0.15 of the diameter behind the lip: on a narrower facet the lip stays weak"}
	smallSource      = Source{Memory, "low", "drills up to about 3 mm (1/8 in) are thrown away rather than reground in many shops"}
	oneOffSource     = Source{Own, "", "a chip, an uneven point and a wrong angle are put right once; the usual grind is for land, corner and margin"}
)

// CleanUp is the allowance taken beyond the wear, mm.
const CleanUp = 0.05

const (
	leastUsual          = 0.25 // mm
	leastUsualDiameters = 0.04
	mostUsualDiameters  = 0.05
)

// LeastUsualStock returns the least, mm, that a usual grind of a drill of diameter
// d mm is counted with.
func LeastUsualStock(d float64) float64 { return math.Max(leastUsual, leastUsualDiameters*d) }

// MostUsualWear returns the deepest wear, mm, that a usual grind of a drill of
// diameter d mm is counted with.
func MostUsualWear(d float64) float64 { return mostUsualDiameters * d }

// MostUsualWearSource is where MostUsualWear comes from.
func MostUsualWearSource() *Source { return &mostUsualSource }

const steepDiameters = 0.15

// SteepFlank returns the width, mm, over which a flank of too much clearance is
// ground anew on a drill of diameter d mm.
func SteepFlank(d float64) float64 { return steepDiameters * d }

// SteepFlankSource is where SteepFlank comes from.
func SteepFlankSource() *Source { return &steepSource }

// SeldomReground is the diameter, mm, up to which drills are seldom reground by
// hand.
const SeldomReground = 3.2

// SeldomRegroundSource is where SeldomReground comes from.
func SeldomRegroundSource() *Source { return &smallSource }

// CleanUpSource is where CleanUp comes from.
func CleanUpSource() *Source { return &cleanUpSource }

// LeastUsualStockSource is where LeastUsualStock comes from.
func LeastUsualStockSource() *Source { return &leastUsualSource }

// UsualStockSource is the rule by which the usual stock follows from this grind's.
func UsualStockSource() *Source { return &oneOffSource }

// regrindTables returns the tables of this file.
func regrindTables() []Table {
	return []Table{
		{Name: "clean-up", Title: "Clean-up allowance beyond the wear, mm", Source: cleanUpSource,
			Head: []string{"allowance"}, Rows: func() [][]string { return [][]string{{cell(CleanUp)}} }},
		{Name: "least-usual-stock", Title: "Least stock a usual grind is counted with", Source: leastUsualSource,
			Head: []string{"diameters", "at least, mm"}, Rows: func() [][]string { return [][]string{{cell(leastUsualDiameters), cell(leastUsual)}} }},
		{Name: "steep-flank", Title: "Width of flank ground anew where the clearance is too much, diameters", Source: steepSource,
			Head: []string{"diameters"}, Rows: func() [][]string { return [][]string{{cell(steepDiameters)}} }},
		{Name: "seldom-reground", Title: "Diameter up to which drills are seldom reground by hand, mm", Source: smallSource,
			Head: []string{"diameter"}, Rows: func() [][]string { return [][]string{{cell(SeldomReground)}} }},
		{Name: "most-usual-wear", Title: "Deepest wear a usual grind is counted with, diameters", Source: mostUsualSource,
			Head: []string{"diameters"}, Rows: func() [][]string { return [][]string{{cell(mostUsualDiameters)}} }},
		{Name: "usual-stock", Title: "What a usual grind is for", Source: oneOffSource,
			Head: []string{"counted", "put right once"}, Rows: func() [][]string {
				return [][]string{{"flank land, corner, margin, clean-up", "chip, uneven lips, wrong angle"}}
			}},
	}
}
