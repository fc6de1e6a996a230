package handbook

// Sources of the figures about the hole.
var (
	deepSource       = &Source{Practice, "", "cut the speed and the feed in holes of three diameters and more"}
	DeepestSource    = &Source{Practice, "", "straight to 3 diameters, pecks to 8, deep-hole tooling beyond 8 to 10; a long-series drill goes deeper with pecks and care"}
	DeepFromSource   = &Source{Own, "", "called deep, and a high helix advised, beyond five diameters: an ordinary jobber drill does three to five every day (common practice)"}
	PeckFirstSource  = &Source{Practice, "", "2 to 3 diameters in one stroke; the deeper, the more often withdrawn"}
	PeckNextSource   = &Source{Memory, "medium", "after the first 3 diameters, pecks of 1 diameter or less"}
	PeckShrinkSource = &Source{Own, "", "each peck four fifths of the one before, none under half a diameter: what the last lacks, those before it give up; a rest under that after the first stroke goes with it"}
	PilotSource      = &Source{Practice, "", "pilot equal to the web of the final drill or slightly above: 3/4 in drill, web 0.090 to 0.112 in, pilot 7/64 to 1/8 in"}
	PilotPickSource  = &Source{Own, "", "between web and chisel edge, a tenth of the way off either, so that what is left of the chisel edge still holds the feed back: of whole and half millimetres, or of fractions of an inch, the one nearest the middle; then of the finer and of the other sizes"}
	PilotFromSource  = &Source{Memory, "medium", "no pilot for drills up to 6 mm or 1/4 in, common practice"}
	PilotDepthSource = &Source{Practice, "", "the chisel edge is relieved as deep as the pilot goes; a short pilot, a diameter or two deep, only locates the point"}
	PilotTopSource   = &Source{Memory, "low", "keep the pilot under about 60 % of the final diameter, or the corners are overloaded"}
	OversizeSource   = &Source{Memory, "high", "hole oversize by drill size, tests of the United States Cutting Tool Institute (more than 2800 holes in steel and cast iron; that they were made is read in print)"}
)

// DeepCut is the part by which speed and feed are cut in a deep hole.
type DeepCut struct {
	Depth       float64 // diameters, from which it holds
	Speed, Feed float64 // parts: 0.1 is 10 % less
	Source      *Source
}

var deepRows = [...]DeepCut{
	{3, 0.10, 0.10, deepSource},
	{4, 0.20, 0.10, deepSource},
	{5, 0.30, 0.20, deepSource},
	{6, 0.40, 0.20, deepSource}, // the speed by 35 to 40 %
}

// Deep returns the cuts of speed and feed for a hole that is ratio diameters
// deep: those of the last row that it reaches, the larger of two published
// figures; none under three diameters. ratio must not be negative or NaN: then
// the cuts are NaN.
func Deep(ratio float64) DeepCut {
	if !(ratio >= 0) {
		return DeepCut{Depth: nan, Speed: nan, Feed: nan}
	}
	out := DeepCut{Source: deepSource}
	for _, r := range deepRows {
		if ratio >= r.Depth-edge {
			out = r
		}
	}
	return out
}

// DeepestPecked is how deep a hole is drilled with an ordinary twist drill and
// pecks, diameters; beyond it is for deep-hole tooling, or for a long-series drill
// and care.
const DeepestPecked = 8.0

// DeepFrom is the depth, diameters, beyond which a hole is called deep. Source:
// own rule.
const DeepFrom = 5.0

// The rule of pecks, diameters: the first stroke, the second, the factor from
// each to the next, and the least.
const (
	PeckFirst  = 3.0
	PeckNext   = 1.0
	PeckShrink = 0.8
	PeckLeast  = 0.5
)

// PilotTop is the largest pilot, part of the final diameter.
const PilotTop = 0.6

// PilotBorder is how far off the web and the chisel edge the pilot to use keeps
// where it can, part of the way between them. Source: own rule.
const PilotBorder = 0.1

// PilotFromMetric and PilotFromInch are the largest drills, mm, that want no
// pilot, in either system.
const (
	PilotFromMetric = 6.0
	PilotFromInch   = InchMM / 4
)

// oversizeRow is one row of the oversize of drilled holes, inches.
type oversizeRow struct{ d, high, mean, low float64 }

var oversizeRows = [...]oversizeRow{
	{0.0625, 0.002, 0.0015, 0.001},
	{0.125, 0.0045, 0.003, 0.001},
	{0.25, 0.0065, 0.004, 0.0025},
	{0.5, 0.008, 0.005, 0.003},
	{0.75, 0.008, 0.005, 0.003},
	{1, 0.009, 0.007, 0.004},
}

// Oversize is how much larger than the drill a hole comes out, mm.
type Oversize struct {
	Low, Mean, High float64 // average minimum, mean, average maximum
}

// UsualOversize returns the oversize of a hole of a drill of diameter d mm under
// average shop conditions; between the published sizes in a straight line. All
// are NaN outside 1/16 to 1 in.
func UsualOversize(d float64) Oversize {
	in := d / InchMM
	for i, r := range oversizeRows[:len(oversizeRows)-1] {
		next := oversizeRows[i+1]
		if in >= r.d-edge && in <= next.d+edge {
			at := func(y0, y1 float64) float64 { return between(in, r.d, next.d, y0, y1) * InchMM }
			return Oversize{at(r.low, next.low), at(r.mean, next.mean), at(r.high, next.high)}
		}
	}
	return Oversize{nan, nan, nan}
}

// between returns the value at x on the straight line from (x0, y0) to (x1, y1).
func between(x, x0, x1, y0, y1 float64) float64 {
	return y0 + (y1-y0)*(x-x0)/(x1-x0)
}

func holeTables() []Table {
	return []Table{
		{"deep-holes", "Cuts of speed and feed in deep holes, part", deepSource, []string{"depth/D", "speed", "feed"},
			rows(deepRows[:], func(r DeepCut) []string { return row(r.Depth, r.Speed, r.Feed) })},
		{"deep-from", "Depth beyond which a hole is called deep, diameters", DeepFromSource, []string{"diameters"}, [][]string{row(DeepFrom)}},
		{"deepest-pecked", "Depth to which pecks serve, diameters", DeepestSource, []string{"straight", "with pecks"}, [][]string{row(PeckFirst, DeepestPecked)}},
		{"peck-first", "First stroke, diameters", PeckFirstSource, []string{"used", "published"}, [][]string{{cell(PeckFirst), "2-3"}}},
		{"peck-next", "Second stroke, diameters", PeckNextSource, []string{"at most"}, [][]string{row(PeckNext)}},
		{"peck-shrink", "How the pecks shrink", PeckShrinkSource, []string{"factor", "least, diameters", "one stroke, under"}, [][]string{row(PeckShrink, PeckLeast, PeckFirst+PeckLeast)}},
		{"pilot", "Pilot hole for a following drill", PilotSource, []string{"drill in", "web in", "pilot in"}, [][]string{{"3/4", "0.090-0.112", "7/64-1/8"}}},
		{"pilot-taken", "Pilot taken of the sizes that serve", PilotPickSource, []string{"drill", "first", "then", "last"}, [][]string{
			{"metric", "whole and half mm", "tenths of a mm, finer", "fractions, numbers, letters"}, {"inch", "fractions", "numbers, letters", "mm"},
		}},
		{"pilot-from", "Largest drill that wants no pilot", PilotFromSource, []string{"mm", "in"}, [][]string{{cell(PilotFromMetric), "1/4"}}},
		{"pilot-depth", "Depth of a pilot hole", PilotDepthSource, []string{"to locate the point, its own diameters", "to relieve the chisel edge"}, [][]string{{"1-2", "as deep as the hole"}}},
		{"pilot-largest", "Largest pilot, part of the final diameter", PilotTopSource, []string{"part"}, [][]string{row(PilotTop)}},
		{"oversize-by-size", "Oversize of drilled holes, inches", OversizeSource, []string{"drill in", "average max.", "mean", "average min."},
			rows(oversizeRows[:], func(r oversizeRow) []string { return row(r.d, r.high, r.mean, r.low) })},
	}
}
