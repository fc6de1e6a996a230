package handbook

// Sources of the figures about shanks and helix.
var (
	morseSource       = Source{Practice, "", "Morse taper dimensions"}
	morseMetric       = Source{Memory, "high", "Morse taper by drill diameter in DIN 345 / ISO 235, not read again"}
	morseInch         = Source{Memory, "medium", "Morse taper by drill diameter in ASME B94.11M, regular shanks, not read again"}
	parallelSource    = Source{Practice, "", "a drill chuck holds a parallel shank up to 13 mm or 1/2 in"}
	shankStressSource = Source{Own, "", "half of the shear stress at which a shank of 240 HV (common practice, the least) yields: 3.2 x 240 = 770 MPa tensile, yield 0.7 of it, in shear 0.58 of that: 310 MPa"}
	helixSource       = Source{Practice, "", "helix angle by diameter and drill type in conditions of supply"}
)

// ShankStress is the torsional stress, MPa, up to which a soft drill shank is
// taken to carry its torque.
const ShankStress = 155.0

// ShankStressSource is where ShankStress comes from.
func ShankStressSource() *Source { return &shankStressSource }

// The largest parallel shank of an ordinary drill chuck, mm.
const (
	ParallelShankMetric = 13.0
	ParallelShankInch   = InchMM / 2
)

// ParallelShankSource is where the largest parallel shank comes from.
func ParallelShankSource() *Source { return &parallelSource }

// morseRow is one row of the taper dimensions, inches.
type morseRow struct{ perFoot, perInch, small, gauge, depth float64 }

var morseRows = [...]morseRow{
	{0.62460, 0.05205, 0.252, 0.3561, 2},
	{0.59858, 0.04988, 0.369, 0.475, 2.125},
	{0.59941, 0.04995, 0.572, 0.700, 2.5625},
	{0.60235, 0.05019, 0.778, 0.938, 3.1875},
	{0.62326, 0.05193, 1.020, 1.231, 4.0625},
	{0.63151, 0.05262, 1.475, 1.748, 5.1875},
	{0.62565, 0.05213, 2.116, 2.494, 7.25},
	{0.62400, 0.05200, 2.750, 3.270, 10},
}

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

// MorseOfMetric returns the Morse taper that a taper-shank drill of diameter
// d mm carries in the metric series. A diameter between two ranges, where no
// drill is listed, takes the larger taper. ok is false outside 3 to 100 mm.
func MorseOfMetric(d float64) (number int, source *Source, ok bool) {
	number, ok = morseOf(morseRangesMetric[:], d, morseFromMetric, 1)
	return number, &morseMetric, ok
}

// MorseOfInch is MorseOfMetric for the inch series, 1/8 to 3 1/2 in; d in mm.
func MorseOfInch(d float64) (number int, source *Source, ok bool) {
	number, ok = morseOf(morseRangesInch[:], d, morseFromInch, InchMM)
	return number, &morseInch, ok
}

func morseOf(ranges []morseRange, d, from, unit float64) (int, bool) {
	if !(d >= from*unit-edge) {
		return 0, false
	}
	for _, r := range ranges {
		if d <= r.to*unit+edge {
			return r.number, true
		}
	}
	return 0, false
}

// DrillType is the helix of a drill as conditions of supply name it.
type DrillType uint8

// The types: N for general work, H for hard and brittle, W for soft and tough.
const (
	TypeN DrillType = iota
	TypeH
	TypeW
)

// helixRow is one row of the helix by diameter, degrees; diameter in mm.
type helixRow struct {
	to float64
	by [3]span // N, H, W
}

const helixFrom = 1.0 // mm

var helixRows = [...]helixRow{
	{3.2, [3]span{{22, 28}, {11, 15}, {31, 36}}},
	{5.0, [3]span{{24, 30}, {11, 15}, {33, 38}}},
	{10.0, [3]span{{25, 31}, {12, 17}, {34, 40}}},
	{40.0, [3]span{{27, 34}, {13, 17}, {37, 42}}},
	{50.0, [3]span{{29, 38}, {14, 19}, {39, 46}}},
}

// Helix returns the helix angle, radians, of a drill of diameter d mm and of
// that type. ok is false outside 1 to 50 mm and for an unknown type.
func Helix(d float64, kind DrillType) (Band, bool) {
	if !(d >= helixFrom-edge) || kind > TypeW {
		return Band{}, false
	}
	for _, r := range helixRows {
		if d <= r.to+edge {
			return r.by[kind].band(deg, &helixSource), true
		}
	}
	return Band{}, false
}

// ShankTables returns the tables about shanks and helix.
func ShankTables() []Table {
	return []Table{
		{"morse-tapers", "Morse tapers, inches", morseSource,
			[]string{"MT", "taper in/ft", "taper in/in", "small end", "gauge line", "plug depth"}, func() [][]string {
				var rows [][]string
				for i, r := range morseRows {
					rows = append(rows, []string{cell(float64(i)), cell(r.perFoot), cell(r.perInch), cell(r.small), cell(r.gauge), cell(r.depth)})
				}
				return rows
			}},
		{"morse-by-drill-metric", "Morse taper by drill diameter, mm", morseMetric,
			[]string{"MT", "drill mm"}, morseCells(morseRangesMetric[:])},
		{"morse-by-drill-inch", "Morse taper by drill diameter, inches", morseInch,
			[]string{"MT", "drill in"}, morseCells(morseRangesInch[:])},
		{"parallel-shank", "Largest parallel shank of a drill chuck", parallelSource,
			[]string{"mm", "in"}, func() [][]string {
				return [][]string{{cell(ParallelShankMetric), cell(ParallelShankInch / InchMM)}}
			}},
		{"shank-stress", "Torsional stress that a soft shank may carry, MPa", shankStressSource,
			[]string{"MPa"}, func() [][]string { return [][]string{{cell(ShankStress)}} }},
		{"helix-by-diameter", "Helix angle by diameter, degrees", helixSource,
			[]string{"up to mm", "N", "H", "W"}, func() [][]string {
				var rows [][]string
				for _, r := range helixRows {
					rows = append(rows, []string{cell(r.to), r.by[TypeN].String(), r.by[TypeH].String(), r.by[TypeW].String()})
				}
				return rows
			}},
	}
}

func morseCells(ranges []morseRange) func() [][]string {
	return func() [][]string {
		var rows [][]string
		for _, r := range ranges {
			rows = append(rows, []string{cell(float64(r.number)), r.name})
		}
		return rows
	}
}
