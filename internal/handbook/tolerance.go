package handbook

import "math"

// Point-angle tolerance about the angle wanted.
var pointToleranceSource = &Source{Memory, "medium", "118 ± 3 degrees in DIN 1414 / ISO 10899; taken for every wanted angle"}

const pointTolerance = 3.0 // degrees

// PointAngle returns the band for a point whose wanted angle is given, radians.
func PointAngle(wanted float64) Band {
	return Band{wanted - pointTolerance*deg, wanted + pointTolerance*deg, pointToleranceSource}
}

// StandardPointAngle is the point angle of a general-purpose drill, radians.
var StandardPointAngle = 118 * deg

var chiselSource = &Source{Practice, "", "chisel edge 120 to 135 degrees to the lip (45 to 60 measured the acute way)"}

// ChiselAngle is the band of the obtuse chisel-edge angle, radians.
var ChiselAngle = Band{120 * deg, 135 * deg, chiselSource}

var (
	lipHeightRecalled    = &Source{Memory, "medium", "relative lip height by size, general-purpose two-flute drills, as recalled from ASME B94.11M; not read again"}
	lipHeightSource      = &Source{Own, "", "0.004 in at 1/2 in, 0.001 in more for every doubling of the size, 0.002 in at the least and 0.006 in at the most: a line through the steps recalled from ASME B94.11M (from memory, medium)"}
	lipHeightSmallSource = &Source{Practice, "", "axial run-out of the lips at most 0.05 mm, drills of 2 to 10 mm, read at mid lip"}
)

const (
	lipHeightSmallFrom, lipHeightSmallTo = 2.0, 10.0 // mm
	lipHeightSmall                       = 0.05      // mm
)

// The rule of the lip height by size, inches.
const (
	lipHeightAtHalf   = 0.004 // at 1/2 in
	lipHeightDoubling = 0.001 // more for every doubling
	lipHeightLeast    = 0.002
	lipHeightMost     = 0.006
)

// LipHeight returns the band of the lip-height difference, mm, for a drill of
// diameter d mm: it grows with the logarithm of the size, without a step, through
// the limits that are recalled for the ends of ranges of sizes. The ends are NaN when
// d is not above zero.
func LipHeight(d float64) Band {
	if !(d > 0) {
		return Band{nan, nan, lipHeightSource}
	}
	limit := lipHeightAtHalf + lipHeightDoubling*math.Log2(d/InchMM/0.5)
	limit = math.Min(math.Max(limit, lipHeightLeast), lipHeightMost) * InchMM
	return Band{-limit, limit, lipHeightSource}
}

// CloseLipHeight returns the closer limit of the lip height half way along, mm, that
// some ask for; ok is false for sizes that it is not quoted for.
func CloseLipHeight(d float64) (limit float64, source *Source, ok bool) {
	return lipHeightSmall, lipHeightSmallSource, d >= lipHeightSmallFrom-edge && d <= lipHeightSmallTo+edge
}

type jigRow struct {
	from, to float64 // in
	plus     float64 // in
}

var jigSource = &Source{Practice, "", "hole tolerance for drilling with jigs, US Air Force-Navy design standard AND10387"}

var jigRows = [...]jigRow{
	{0.0135, 0.125, 0.004}, {0.126, 0.25, 0.005}, {0.251, 0.5, 0.006},
	{0.501, 0.75, 0.008}, {0.751, 1, 0.010}, {1.001, 2, 0.012},
}

// HoleOversize returns how far a drilled hole may exceed the drill, mm, by the
// tolerance for jig drilling. ok is false outside 0.0135 to 2 in.
func HoleOversize(d float64) (Band, bool) {
	in := d / InchMM
	if in < jigRows[0].from-1e-6 || in > jigRows[len(jigRows)-1].to+1e-6 {
		return Band{}, false
	}
	for _, r := range jigRows {
		if in <= r.to+1e-6 {
			return Band{0, r.plus * InchMM, jigSource}, true
		}
	}
	return Band{}, false
}

var (
	// diameterSource: the row of under 1 mm is that of 1 to 3 mm.
	diameterSource  = &Source{Practice, "", "twist drills are made to ISO h8 across the margins"}
	undersizeSource = &Source{Derived, "", "the least that h8 allows, and a back taper of 0.08 mm in 100 mm over five diameters ground off (both common practice)"}
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
	return Band{0, row.under + taperedBy*d, undersizeSource}
}

func toleranceTables() []Table {
	return []Table{
		{"point-angle-tolerance", "Tolerance about the wanted point angle, degrees", pointToleranceSource, []string{"wanted", "tolerance"},
			[][]string{{"as wanted, 118 for general work", "± " + cell(pointTolerance)}}},
		{"chisel-edge-angle", "Chisel-edge angle, degrees", chiselSource, []string{"from", "to"}, [][]string{{"120", "135"}}},
		{"lip-height", "Lip-height difference, the rule, inches", lipHeightSource, []string{"at 1/2", "more for every doubling", "least", "most"},
			[][]string{row(lipHeightAtHalf, lipHeightDoubling, lipHeightLeast, lipHeightMost)}},
		{"lip-height-small", "Lip-height difference, drills of 2 to 10 mm, the closer figure", lipHeightSmallSource, []string{"from mm", "to mm", "limit mm"},
			[][]string{row(lipHeightSmallFrom, lipHeightSmallTo, lipHeightSmall)}},
		{"lip-height-by-size", "Lip-height difference by size, as recalled", lipHeightRecalled, []string{"drill in", "limit in"},
			[][]string{{"up to 1/8", "0.002"}, {"over 1/8 to 1/4", "0.003"}, {"over 1/4 to 1/2", "0.004"}, {"over 1/2 to 1", "0.005"}, {"over 1 to 3 1/2", "0.006"}}},
		{"hole-oversize", "Hole tolerance for drilling with jigs", jigSource, []string{"from in", "to in", "plus in"},
			rows(jigRows[:], func(r jigRow) []string { return row(r.from, r.to, r.plus) })},
		{"drill-diameter-tolerance", "How far under its size a drill may be made, mm", diameterSource, []string{"to mm", "under mm"},
			rows(diameterRows[:], func(r diameterRow) []string { return row(r.to, r.under) })},
		{"drill-undersize", "How far under its size a drill that is still good may measure", undersizeSource, []string{"under mm"},
			[][]string{{"as made, and " + cell(taperedBy) + " of the diameter"}}},
	}
}
