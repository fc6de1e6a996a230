package handbook

// Sources of the figures about shanks and helix.
var (
	morseMetric         = &Source{Memory, "high", "Morse taper by drill diameter in DIN 345 / ISO 235, not read again"}
	morseInch           = &Source{Memory, "medium", "Morse taper by drill diameter in ASME B94.11M, regular shanks, not read again"}
	ParallelShankSource = &Source{Practice, "", "a drill chuck holds a parallel shank up to 13 mm or 1/2 in"}
	ShankStressSource   = &Source{Own, "", "half of the shear stress at which a shank of 240 HV (common practice, the least) yields: 3.2 x 240 = 770 MPa tensile, yield 0.7 of it, in shear 0.58 of that: 310 MPa"}
	helixSource         = &Source{Practice, "", "helix angle by diameter and drill type in conditions of supply"}
)

// ShankStress is the torsional stress, MPa, up to which a soft drill shank is
// taken to carry its torque.
const ShankStress = 155.0

// The largest parallel shank of an ordinary drill chuck, mm.
const (
	ParallelShankMetric = 13.0
	ParallelShankInch   = InchMM / 2
)

// morseRange is the drills that carry a Morse taper, up to a largest diameter.
type morseRange struct {
	number int
	to     float64
	name   string
}

// The smallest drills with a Morse taper.
const (
	morseFromMetric = 3.0   // mm
	morseFromInch   = 0.125 // in
)

var morseRangesMetric = [...]morseRange{
	{1, 14.0, "3.0 to 14.0"},
	{2, 23.0, "over 14.0 to 23.0"},
	{3, 31.75, "over 23.0 to 31.75"},
	{4, 50.5, "over 31.75 to 50.5"},
	{5, 76, "51 to 76"},
	{6, 100, "77 to 100"},
}

var morseRangesInch = [...]morseRange{
	{1, 0.5625, "1/8 to 9/16"},
	{2, 0.90625, "37/64 to 29/32"},
	{3, 1.25, "59/64 to 1 1/4"},
	{4, 2, "1 17/64 to 2"},
	{5, 3, "2 1/64 to 3"},
	{6, 3.5, "over 3 (special)"},
}

// MorseOf returns the Morse taper that a taper-shank drill of diameter d mm carries in
// the metric series or in that in inches. A diameter between two ranges, where no drill
// is listed, takes the larger taper. ok is false outside 3 to 100 mm or 1/8 to 3 1/2 in.
func MorseOf(d float64, inches bool) (number int, source *Source, ok bool) {
	ranges, from, unit, source := morseRangesMetric, morseFromMetric, 1.0, morseMetric
	if inches {
		ranges, from, unit, source = morseRangesInch, morseFromInch, InchMM, morseInch
	}
	for _, r := range ranges {
		if d >= from*unit-edge && d <= r.to*unit+edge {
			return r.number, source, true
		}
	}
	return 0, source, false
}

// helixRow is one row of the helix by diameter, up to one, mm; radians.
type helixRow struct {
	to             float64
	ordinary, high Band
}

const helixFrom = 1.0 // mm

var helixRows = [...]helixRow{
	{3.2, Band{22 * deg, 28 * deg, helixSource}, Band{31 * deg, 36 * deg, helixSource}},
	{5.0, Band{24 * deg, 30 * deg, helixSource}, Band{33 * deg, 38 * deg, helixSource}},
	{10.0, Band{25 * deg, 31 * deg, helixSource}, Band{34 * deg, 40 * deg, helixSource}},
	{40.0, Band{27 * deg, 34 * deg, helixSource}, Band{37 * deg, 42 * deg, helixSource}},
	{50.0, Band{29 * deg, 38 * deg, helixSource}, Band{39 * deg, 46 * deg, helixSource}},
}

// Helix returns the helix angle, radians, of a drill of diameter d mm for general work,
// type N, and the high one for soft and tough work, type W. ok is false outside 1 to
// 50 mm.
func Helix(d float64) (ordinary, high Band, ok bool) {
	if d >= helixFrom-edge {
		for _, r := range helixRows {
			if d <= r.to+edge {
				return r.ordinary, r.high, true
			}
		}
	}
	return Band{}, Band{}, false
}

func shankTables() []Table {
	morse := func(r morseRange) []string { return []string{cell(float64(r.number)), r.name} }
	return []Table{
		{"morse-by-drill-metric", "Morse taper by drill diameter, mm", morseMetric, []string{"MT", "drill mm"}, rows(morseRangesMetric[:], morse)},
		{"morse-by-drill-inch", "Morse taper by drill diameter, inches", morseInch, []string{"MT", "drill in"}, rows(morseRangesInch[:], morse)},
		{"parallel-shank", "Largest parallel shank of a drill chuck", ParallelShankSource, []string{"mm", "in"}, [][]string{row(ParallelShankMetric, ParallelShankInch/InchMM)}},
		{"shank-stress", "Torsional stress that a soft shank may carry, MPa", ShankStressSource, []string{"MPa"}, [][]string{row(ShankStress)}},
		{"helix-by-diameter", "Helix angle by diameter, degrees", helixSource, []string{"up to mm", "N", "W"},
			rows(helixRows[:], func(r helixRow) []string { return []string{cell(r.to), r.ordinary.in(deg), r.high.in(deg)} })},
	}
}
