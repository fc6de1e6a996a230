package handbook

import "math"

// How much a regrind takes beyond what the wear asks for.
var (
	CleanUpSource         = &Source{Own, "", "0.05 mm beyond the wear, five divisions of a 0.01 mm indicator, so that the edge is bright all over"}
	LeastUsualStockSource = &Source{Own, "", "a usual grind at a pedestal takes a twenty-fifth of the diameter, and 0.25 mm at least, whatever this one takes: off-hand nobody takes less"}
	MostUsualWearSource   = &Source{Own, "", "land, corner or margin worn over a twentieth of the diameter deep is a mishap and no habit: a usual grind is counted without it"}
	SteepFlankSource      = &Source{Own, "", "a flank of too much clearance is ground anew over 0.15 of the diameter behind the lip: on a narrower facet the lip stays weak"}
	SeldomRegroundSource  = &Source{Memory, "low", "drills up to about 3 mm (1/8 in) are thrown away rather than reground in many shops"}
	UsualStockSource      = &Source{Own, "", "a chip, an uneven point and a wrong angle are put right once; the usual grind is for land, corner and margin"}
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

const steepDiameters = 0.15

// SteepFlank returns the width, mm, over which a flank of too much clearance is
// ground anew on a drill of diameter d mm.
func SteepFlank(d float64) float64 { return steepDiameters * d }

// SeldomReground is the diameter, mm, up to which drills are seldom reground by
// hand.
const SeldomReground = 3.2

func regrindTables() []Table {
	return []Table{
		{"clean-up", "Clean-up allowance beyond the wear, mm", CleanUpSource, []string{"allowance"}, [][]string{row(CleanUp)}},
		{"least-usual-stock", "Least stock a usual grind is counted with", LeastUsualStockSource, []string{"diameters", "at least, mm"}, [][]string{row(leastUsualDiameters, leastUsual)}},
		{"steep-flank", "Width of flank ground anew where the clearance is too much, diameters", SteepFlankSource, []string{"diameters"}, [][]string{row(steepDiameters)}},
		{"seldom-reground", "Diameter up to which drills are seldom reground by hand, mm", SeldomRegroundSource, []string{"diameter"}, [][]string{row(SeldomReground)}},
		{"most-usual-wear", "Deepest wear a usual grind is counted with, diameters", MostUsualWearSource, []string{"diameters"}, [][]string{row(mostUsualDiameters)}},
		{"usual-stock", "What a usual grind is for", UsualStockSource, []string{"counted", "put right once"}, [][]string{{"flank land, corner, margin, clean-up", "chip, uneven lips, wrong angle"}}},
	}
}
