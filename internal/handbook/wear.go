package handbook

import "math"

// Sources of the figures about wear.
var (
	flankWearSource  = &Source{Practice, "", "regrind at a flank land of 0.25 to 0.38 mm (0.010 to 0.015 in)"}
	WornLandSource   = &Source{InPrint, "", "Subramanian and Cook, J. Eng. Ind. 99(2), 1977, 295-301, equations 3 and 7: high-speed-steel drills in cast iron"}
	smallLandSource  = &Source{Own, "", "on drills under 8.3 mm a land of three hundredths of the diameter, since 0.25 mm is blunt on a small one"}
	marginWearSource = &Source{Own, "", "worn near the corner: take that much off; worn far up the body: retire (common practice); the line is drawn at one diameter"}
	chipRoomSource   = &Source{Own, "", "a flute must outreach the hole by one diameter for the chips to leave"}
)

const (
	flankWearFrom, flankWearTo = 0.25, 0.38 // mm
	smallLandDiameters         = 0.03
	marginWearDiameters        = 1.0
	chipRoomDiameters          = 1.0
)

// Worn is what each length adds to the thrust or the torque of a drill in cast iron,
// by hardness and diameter.
type Worn struct{ Feed, Land, Edge, Diameter float64 }

// WornThrust and WornTorque are those of thrust and of torque, by [WornLandSource].
var (
	WornThrust = Worn{Feed: 0.325, Land: 0.1242, Edge: 0.755, Diameter: 0.0022}
	WornTorque = Worn{Feed: 0.125, Land: 0.0487, Edge: 0.289}
)

// WornLandEnd is the widest worn land, mm, that forces were measured with.
const WornLandEnd = 0.38

// FlankWear returns the band of flank land, mm, with which a drill of diameter
// d mm may go on: the trade's 0.25 mm, and less on a small drill. One of no known
// diameter takes the trade's.
func FlankWear(d float64) Band {
	if small := smallLandDiameters * d; small < flankWearFrom {
		return Band{0, small, smallLandSource}
	}
	return Band{0, flankWearFrom, flankWearSource}
}

// MarginWear returns how far back from the corner a margin of a drill of
// diameter d mm may be worn and still be ground out: one diameter, or as much
// flute, mm, as the job does not need; NaN where that is not known.
func MarginWear(d, spare float64) Band {
	if most := marginWearDiameters * d; !(spare > most) {
		return Band{0, most, marginWearSource}
	}
	return Band{0, spare, marginWearSource}
}

// FluteNeeded returns the least usable flute, mm, for a hole of that depth.
func FluteNeeded(d, depth float64) Band {
	return Band{depth + chipRoomDiameters*d, math.Inf(1), chipRoomSource}
}

func wearTables() []Table {
	return []Table{
		{"flank-wear", "Flank land at which to regrind, mm", flankWearSource, []string{"from", "to"}, [][]string{row(flankWearFrom, flankWearTo)}},
		{"flank-wear-small", "Flank land at which to regrind a small drill, diameters", smallLandSource, []string{"diameters"}, [][]string{row(smallLandDiameters)}},
		{"worn-land", "Thrust and torque of a worn drill in cast iron: H D f, H D w, H D r, H D^2 each times", WornLandSource,
			[]string{"of", "feed f", "land w", "edge r", "diameter"}, [][]string{
				append([]string{"thrust"}, row(WornThrust.Feed, WornThrust.Land, WornThrust.Edge, WornThrust.Diameter)...),
				append([]string{"torque, by D once more"}, row(WornTorque.Feed, WornTorque.Land, WornTorque.Edge, WornTorque.Diameter)...),
			}},
		{"margin-wear", "Worn margin that can be ground out, diameters from the corner", marginWearSource, []string{"diameters"}, [][]string{row(marginWearDiameters)}},
		{"chip-room", "Flute beyond the hole's depth, diameters", chipRoomSource, []string{"diameters"}, [][]string{row(chipRoomDiameters)}},
	}
}
