package handbook

import (
	"math"

	"evenlip/internal/point"
)

// The web of a new drill and how it grows.
var (
	webTaperSource       = &Source{Practice, "", "web grows 1.4 to 1.8 mm per 100 mm of length (0.014 to 0.018 in per in); 0.016 is the middle"}
	NewWebSource         = &Source{Memory, "medium", "web as new: 20 % of diameter at 1/8 in, 17 % at 1/4, 14 % at 1/2, 12 % at 1 in and over, an old US cutting-tool handbook; the curve between is fitted and held at its ends (derived)"}
	StandardChiselSource = &Source{InPrint, "", "Machinery's Handbook, 31st ed., p. 1153: c/D 0.18 for standard drills, 0.03 for split points"}
	thinSource           = &Source{Own, "", "thin once the chisel is a quarter longer than a new drill's: thrust is then about a sixth up by the handbook's brackets"}
	thinSmallSource      = &Source{Own, "", "drills under 3 mm are not thinned: nobody does it by hand"}
	webMostSource        = &Source{Own, "", "past thinning once the web is half the diameter: no flute is left to carry chips; wide-web drills have 0.33 to 0.40 when new (common practice)"}
	HandbookChiselSource = &Source{Derived, "", "w/c over the rows of the Machinery's Handbook's Table 7 averages 0.865, near sin 60: a chisel edge at 120 degrees to the lips"}
	ThinnedPointSource   = &Source{Own, "", "a web under 0.7 of a new drill's is a thinned or split point: drills are not made so thin, and the web behind it is a new drill's at the least"}
	TableEndSource       = &Source{InPrint, "", "Machinery's Handbook, 31st ed., Table 7 ends at w/D 0.35 (c/D 0.40)"}
)

// WebTaperLow, WebTaper and WebTaperHigh are the growth of the web toward the
// shank, mm of web per mm of length.
const (
	WebTaperLow  = 0.014
	WebTaper     = 0.016
	WebTaperHigh = 0.018
)

// The handbook's chisel ratios c/D.
const (
	StandardChiselRatio = 0.18
	SplitChiselRatio    = 0.03
)

// HandbookChiselAngle is the acute chisel-edge angle, radians, at which the
// handbook's table of factors pairs web and chisel.
const HandbookChiselAngle = 60 * deg

const (
	webCurve, webPower = 0.12, -0.245 // w/D = 0.12 D^-0.245, D in inches
	thinFactor         = 1.25
)

// NewWeb returns the web thickness at the point of a new drill of diameter d,
// mm: w/D = 0.12 D^-0.245 with D in inches, held at its ends: 0.20 up to 1/8 in
// and 0.12 from one inch on. NaN when d is not above zero.
func NewWeb(d float64) float64 {
	if !(d > 0) {
		return nan
	}
	return d * webCurve * math.Pow(math.Min(math.Max(d/InchMM, 0.125), 1), webPower)
}

// thinnedWeb is the part of a new drill's web under which a point must have been
// thinned.
const thinnedWeb = 0.7

// ThinnedPoint reports whether a web, mm, is too thin for a point of a drill of
// diameter d mm that was never thinned; false for what is not known.
func ThinnedPoint(d, web float64) bool { return web < thinnedWeb*NewWeb(d) }

// NewChiselRatio returns c/D of a new drill of diameter d, mm: the handbook's
// 0.18, or more where a small drill comes with a thicker web (chisel at 120).
func NewChiselRatio(d float64) float64 {
	return math.Max(StandardChiselRatio, point.ChiselLength(NewWeb(d), 120*deg)/d)
}

// leastThinned is the diameter, mm, under which nobody thins a web.
const leastThinned = 3.0

// ChiselRatio returns the band of c/D within which a drill of diameter d mm
// needs no thinning: up to a quarter over a new drill's, and any under 3 mm, where
// nobody thins.
func ChiselRatio(d float64) Band {
	if d > 0 && d < leastThinned {
		return Band{math.Inf(-1), math.Inf(1), thinSmallSource}
	}
	return Band{0, thinFactor * NewChiselRatio(d), thinSource}
}

// WebTableEnd is w/D at which the handbook's table of chisel edges ends: beyond it
// its forces are extrapolated.
const WebTableEnd = 0.35

// webMost is w/D over which no flute is left to carry chips, past any thinning.
const webMost = 0.5

// WebLimit is the band of w/D that thinning can answer.
var WebLimit = Band{0, webMost, webMostSource}

func webTables() []Table {
	return []Table{
		{"web-taper", "Growth of the web toward the shank, mm per mm", webTaperSource, []string{"low", "used", "high"}, [][]string{row(WebTaperLow, WebTaper, WebTaperHigh)}},
		{"web-as-new", "Web at the point of a new drill, part of diameter", NewWebSource, []string{"drill in", "w/D"},
			[][]string{{"1/8", "0.20"}, {"1/4", "0.17"}, {"1/2", "0.14"}, {"1 and over", "0.12"}}},
		{"web-thinned", "Web under which a point was thinned, part of a new drill's web", ThinnedPointSource, []string{"of a new drill's"}, [][]string{row(thinnedWeb)}},
		{"chisel-ratio", "Chisel-edge length, part of diameter", StandardChiselSource, []string{"drill", "c/D"},
			[][]string{{"standard", cell(StandardChiselRatio)}, {"split point", cell(SplitChiselRatio)}}},
		{"handbook-chisel-angle", "Chisel-edge angle taken where none was read, degrees", HandbookChiselSource, []string{"acute", "obtuse"}, [][]string{{"60", "120"}}},
		{"thin-rule", "When a chisel is to be thinned, times a new drill's c/D", thinSource, []string{"times"}, [][]string{row(thinFactor)}},
		{"web-limit", "Web past which a drill is retired, part of diameter", webMostSource, []string{"w/D"}, [][]string{row(webMost)}},
		{"web-table-end", "Web at which the table of chisel edges ends, part of diameter", TableEndSource, []string{"w/D"}, [][]string{row(WebTableEnd)}},
		{"thinned-least", "Diameter under which no web is thinned, mm", thinSmallSource, []string{"mm"}, [][]string{row(leastThinned)}},
	}
}
