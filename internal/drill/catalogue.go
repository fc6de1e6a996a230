// Package drill holds what was read off one drill: the catalogue of readings,
// and a Drill that is filled from flags, a file, a JSON line or at the bench by
// the same names and the same rules.
package drill

import (
	"strings"
	"sync"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
)

// Reading names one entry of the catalogue.
type Reading uint8

// The readings. The order is the order of help pages, forms and echoes.
const (
	Size Reading = iota
	Material
	Web
	SecondWeb
	SecondWebAt
	WebTaper
	ChiselAngle
	ChiselLength
	PointAngle
	LipAngle
	LipLength
	LipHeight
	Clearance
	HeelDrop
	HeelTurn
	Helix
	Flute
	FlankWear
	CornerWear
	MarginWear
	LipChip
	Cracked
	Remove
	Feed
	Rpm
	Depth

	// What a drill is to do at the spindle.
	WearFactor
	Efficiency
	Drive
	ShankDiameter
	Pilot
	ToChiselRatio
	ToWeb
	ToThrust

	// The grinder's wheel.
	Wheel
	WornTo
	WheelRpm
	MarkedSpeed
	MarkedRpm
	RestGap
	TongueGap

	// What a regrind is to keep to.
	CleanUp
	Every
	Length
	BackTaper
	LeastDiameter

	// A swing fixture, and places on a lip.
	SemiAngle
	Vertex
	AxisAngle
	AxisOffset
	At

	readings // how many there are
)

// lastOfPoint is the last reading that describes a drill and its point.
const lastOfPoint = Depth

// Spec describes a reading to whoever has to take it, type it or print it.
type Spec struct {
	Name   string // the flag's name and the key in files
	Kind   quantity.Kind
	Gauge  quantity.Gauge
	Pair   bool   // one value a lip: "A,B", or "A" for both
	Signed bool   // may be negative
	Switch bool   // yes or no
	Help   string // one line, for the flag
	How    string // how to take it at the bench
	Usual  string // a sane range, in words
	// AsNew is what the word "new" stands for on a drill of diameter d, mm; nil
	// where it is not taken.
	AsNew func(d float64) float64
	// Keys are the names of its values in JSON, one or two.
	Keys [2]string
}

var specs = [readings]Spec{
	Size: {Name: "size", Kind: quantity.Size, Gauge: quantity.Caliper,
		Help:  "drill size: 12mm, 1/2in, 31/64, #7, F",
		How:   "Read it off the shank, or measure across the margins at the corners.",
		Usual: "#80 to 3-1/2 in, 0.2 to 90 mm", Keys: [2]string{"size_mm"}},
	Material: {Name: "material", Kind: quantity.Word,
		Help:  "work material, such as steel-200 (see: evenlip material)",
		How:   "What the drill is to cut next: kind and hardness.",
		Usual: "steel-200 when nothing is said", Keys: [2]string{"material"}},
	Web: {Name: "web", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "web thickness at the point",
		How:   "Caliper jaws in the two flutes, close behind the point; or the distance between the lips' lines seen from the end.",
		Usual: "10 to 20 % of the diameter, more after many grinds", Keys: [2]string{"web_mm"}},
	SecondWeb: {Name: "second-web", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "web measured again further up (with --second-web-at): gives this drill's own web taper",
		How:   "The same caliper reading, further up the flutes.",
		Usual: "a little more than the web at the point", Keys: [2]string{"second_web_mm"}},
	SecondWebAt: {Name: "second-web-at", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "how far up from the first reading the second web was measured",
		How:   "The distance between the two places.",
		Usual: "20 mm or more, the further the better", Keys: [2]string{"second_web_at_mm"}},
	WebTaper: {Name: "web-taper", Kind: quantity.Taper,
		Help:  "growth of the web toward the shank, mm per mm (or in per in)",
		How:   "From the maker's sheet, or leave it out.",
		Usual: "0.014 to 0.018", Keys: [2]string{"web_taper"}},
	ChiselAngle: {Name: "chisel-angle", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Help:  "chisel-edge angle to the lip, seen from the end: above 90 the obtuse one, below it the acute",
		How:   "Look at the point end-on; lay the protractor along a lip and read the chisel edge against it.",
		Usual: "120 to 135° (the same as 45 to 60°)", Keys: [2]string{"chisel_angle_deg"}},
	ChiselLength: {Name: "chisel-length", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "length of the chisel edge, corner to corner",
		How:   "End-on, from the inner end of one lip to the inner end of the other, with a scale or a magnifier.",
		Usual: "15 to 25 % of the diameter", Keys: [2]string{"chisel_length_mm"}},
	PointAngle: {Name: "point-angle", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Help:  "point angle wanted (when not given, what the material wants)",
		How:   "What the work wants, not what is on the drill now.",
		Usual: "118° for general work, 135° for hard work", Keys: [2]string{"point_angle_wanted_deg"}},
	LipAngle: {Name: "lip-angle", Kind: quantity.Angle, Gauge: quantity.Protractor, Pair: true,
		Help:  "angle of each lip to the axis: A,B (half the point angle each)",
		How:   "Chalk one lip: in every reading it is lip 1. Gauge or protractor along the body, blade on the lip; then turn the drill and read lip 2.",
		Usual: "59° each on a 118° point", Keys: [2]string{"lip_angle_1_deg", "lip_angle_2_deg"}},
	LipLength: {Name: "lip-length", Kind: quantity.Length, Gauge: quantity.Caliper, Pair: true,
		Help:  "length of each lip, chisel corner to outer corner: A,B",
		How:   "Along the cutting edge, from the end of the chisel to the margin.",
		Usual: "about half the diameter", Keys: [2]string{"lip_length_1_mm", "lip_length_2_mm"}},
	LipHeight: {Name: "lip-height", Kind: quantity.Length, Gauge: quantity.Indicator, Pair: true, Signed: true,
		Help:  "indicator reading on each lip A,B, the larger on the higher lip, or their difference (lip 1 minus lip 2)",
		How:   "Drill turning in a V-block against a stop, indicator along the axis on the lip at the corner; read lip 1, half a turn, read lip 2 as far out as lip 1.",
		Usual: "0 to 0.1 mm apart", Keys: [2]string{"lip_height_1_mm", "lip_height_2_mm"}},
	Clearance: {Name: "clearance", Kind: quantity.Angle, Gauge: quantity.Protractor, Pair: true, Signed: true,
		Help:  "lip clearance at the outer corner of each lip: A[,B]",
		How:   "Protractor across the margin at the corner, against a plane square to the axis.",
		Usual: "8 to 16°, more on small drills", Keys: [2]string{"clearance_1_deg", "clearance_2_deg"}},
	HeelDrop: {Name: "heel-drop", Kind: quantity.Length, Gauge: quantity.Indicator, Pair: true, Signed: true,
		Help:  "how far the flank falls behind each corner when the drill is turned: A[,B] (with --heel-turn)",
		How:   "Indicator at the outer corner along the axis, zero on the lip; turn the drill and read the fall.",
		Usual: "about 0.02 of the diameter in 10°", Keys: [2]string{"heel_drop_1_mm", "heel_drop_2_mm"}},
	HeelTurn: {Name: "heel-turn", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Help:  "turn of the drill over which the heel drop was read",
		How:   "The turn between zero and the reading; as little as the indicator allows: a long one reads more than the corner has.",
		Usual: "5 to 10°", Keys: [2]string{"heel_turn_deg"}},
	Helix: {Name: "helix", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Help:  "helix angle of the flutes at the margin",
		How:   "Roll the drill over carbon paper and measure the margin's slant, or from the maker's sheet.",
		Usual: "24 to 32° on ordinary drills", Keys: [2]string{"helix_deg"}},
	Flute: {Name: "flute", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "usable flute length left, from the corner up",
		How:   "From the outer corner to where the flute runs out.",
		Usual: "8 to 12 diameters when new", Keys: [2]string{"flute_mm"}},
	FlankWear: {Name: "flank-wear", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "width of the worn land behind the lip, at its widest",
		How:   "The bright band behind the cutting edge, with a magnifier and scale.",
		Usual: "0 to 0.4 mm", Keys: [2]string{"flank_wear_mm"}},
	CornerWear: {Name: "corner-wear", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "width of the rounded or burnt corner, measured along the lip's radius",
		How:   "From the margin inward, as far as the lip is rounded.",
		Usual: "0 to 1 mm", Keys: [2]string{"corner_wear_mm"}},
	MarginWear: {Name: "margin-wear", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "how far back from the corner the margin is worn",
		How:   "From the corner up the body, as far as the margin is dull, scored or tapered.",
		Usual: "0 to 2 mm", Keys: [2]string{"margin_wear_mm"}},
	LipChip: {Name: "lip-chip", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "depth of the deepest chip in a lip, measured back from the lip along the axis",
		How:   "From where the lip ought to be to the bottom of the nick, along the drill, with a magnifier and scale.",
		Usual: "0 to 0.5 mm; a broken corner may be 2 mm", Keys: [2]string{"lip_chip_mm"}},
	Cracked: {Name: "cracked", Kind: quantity.Word, Switch: true,
		Help:  "the drill has a crack: it is never reground",
		How:   "Look along the flutes and across the web in good light.",
		Usual: "no", Keys: [2]string{"cracked"}},
	Remove: {Name: "remove", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "length to be ground off",
		How:   "What you mean to take off the end.",
		Usual: "0.2 to 2 mm a grind", Keys: [2]string{"remove_mm"}},
	Feed: {Name: "feed", Kind: quantity.Feed,
		Help:  "feed per revolution: 0.2mm, 0.008in",
		How:   "The machine's feed, or what a hand takes.",
		Usual: "about 1 to 2 % of the diameter", Keys: [2]string{"feed_mm"}},
	Rpm: {Name: "rpm", Kind: quantity.Rpm,
		Help: "spindle speed, revolutions per minute",
		How:  "The machine's setting.", Usual: "", Keys: [2]string{"rpm"}},
	Depth: {Name: "depth", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help: "depth of the hole the drill is wanted for",
		How:  "The deepest hole of the job.", Usual: "", Keys: [2]string{"depth_mm"}},
	WearFactor: {Name: "wear-factor", Kind: quantity.Number,
		Help:  "tool-wear factor W of the handbook: 1 sharp, 1.3 normal, 1.5 very dull",
		How:   "From the drill's condition.",
		Usual: "1 to 1.5", Keys: [2]string{"wear_factor"}},
	Efficiency: {Name: "efficiency", Kind: quantity.Share,
		Help:  "efficiency of the machine between motor and spindle: 0.8 or 80%",
		How:   "From the machine's sheet, or leave it out and name the drive.",
		Usual: "0.6 to 0.9", Keys: [2]string{"efficiency"}},
	Drive: {Name: "drive", Kind: quantity.Word,
		Help:  "the machine's drive, for its efficiency: belt, back-gear, geared-head, hydraulic",
		How:   "Look at the machine.",
		Usual: "belt or geared-head", Keys: [2]string{"drive"}},
	ShankDiameter: {Name: "shank-diameter", Kind: quantity.Size, Gauge: quantity.Caliper,
		Help:  "diameter of the shank where it is thinnest",
		How:   "Caliper on the shank, or on a taper's small end.",
		Usual: "the drill's own, or less on a reduced shank", Keys: [2]string{"shank_diameter_mm"}},
	Pilot: {Name: "pilot", Kind: quantity.Size, Gauge: quantity.Caliper,
		Help:  "diameter of the pilot hole there is or is meant",
		How:   "The pilot drill's size.",
		Usual: "the web of the drill that follows, or slightly more", Keys: [2]string{"pilot_mm"}},
	ToChiselRatio: {Name: "chisel-ratio", Kind: quantity.Number,
		Help:  "chisel edge wanted, as a part of the diameter (c/D)",
		How:   "What the point is to be thinned to.",
		Usual: "0.08 to 0.18", Keys: [2]string{"chisel_ratio_wanted"}},
	ToWeb: {Name: "to-web", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "web wanted at the point after thinning, or: new",
		How:   "What the point is to be thinned to.",
		Usual: "a new drill's web", Keys: [2]string{"web_wanted_mm"}, AsNew: handbook.NewWeb},
	ToThrust: {Name: "thrust", Kind: quantity.Force,
		Help:  "thrust wanted at this feed after thinning: 2000N, 450lb",
		How:   "What the machine or the work bears.",
		Usual: "", Keys: [2]string{"thrust_wanted_n"}},
	Wheel: {Name: "wheel", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "diameter of the grinding wheel when new: 200mm, 8in",
		How:   "Printed on the wheel's blotter.",
		Usual: "125 to 300 mm", Keys: [2]string{"wheel_mm"}},
	WornTo: {Name: "worn-to", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "diameter to which the wheel has worn",
		How:   "A rule across the stopped wheel.",
		Usual: "down to about half of new", Keys: [2]string{"worn_to_mm"}},
	WheelRpm: {Name: "wheel-rpm", Kind: quantity.Rpm,
		Help: "speed of the grinder's spindle",
		How:  "The grinder's plate.", Usual: "1400 to 3600 rpm", Keys: [2]string{"wheel_rpm"}},
	MarkedSpeed: {Name: "marked-speed", Kind: quantity.Surface,
		Help: "largest surface speed marked on the wheel: 35m/s, 6500sfm",
		How:  "Printed on the wheel's blotter.", Usual: "30 to 50 m/s", Keys: [2]string{"marked_speed_mps"}},
	MarkedRpm: {Name: "marked-rpm", Kind: quantity.Rpm,
		Help: "largest rpm marked on the wheel",
		How:  "Printed on the wheel's blotter.", Usual: "", Keys: [2]string{"marked_rpm"}},
	RestGap: {Name: "rest-gap", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "gap between the work rest and the wheel",
		How:   "Feeler or a strip of known thickness, the wheel stopped.",
		Usual: "1 to 3 mm", Keys: [2]string{"rest_gap_mm"}},
	TongueGap: {Name: "tongue-gap", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "gap between the adjustable tongue and the wheel",
		How:   "Feeler or a strip of known thickness, the wheel stopped.",
		Usual: "3 to 6 mm", Keys: [2]string{"tongue_gap_mm"}},
	CleanUp: {Name: "clean-up", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "clean-up allowance: what is taken beyond the wear, for a bright edge all over",
		How:   "The shop's habit.",
		Usual: "0.05 mm", Keys: [2]string{"clean_up_mm"}},
	Every: {Name: "every", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "usual stock a grind, for counting the grinds that are left",
		How:   "What this shop takes off on the average: length lost, by the number of grinds.",
		Usual: "0.3 to 1 mm", Keys: [2]string{"every_mm"}},
	Length: {Name: "length", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "overall length",
		How:   "From the point to the end of the shank.",
		Usual: "10 to 20 diameters when new", Keys: [2]string{"length_mm"}},
	BackTaper: {Name: "back-taper", Kind: quantity.Taper,
		Help:  "how much the diameter falls toward the shank, mm per mm (or in per in)",
		How:   "Diameter at the corners less diameter further up, by the distance between the two; or from the maker's sheet.",
		Usual: "0.0002 to 0.0008", Keys: [2]string{"back_taper"}},
	LeastDiameter: {Name: "least-diameter", Kind: quantity.Size, Gauge: quantity.Indicator,
		Help:  "least diameter with which the drill may go on, as back taper makes it smaller",
		How:   "The hole's lower limit, or the drill's own tolerance.",
		Usual: "a few hundredths under the size", Keys: [2]string{"least_diameter_mm"}},
	SemiAngle: {Name: "semi-angle", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Help:  "semi-angle of the grinding cone: swing axis to wheel face",
		How:   "The fixture's scale; it is the one free choice.",
		Usual: "13 to 30°", Keys: [2]string{"semi_angle_deg"}},
	Vertex: {Name: "vertex", Kind: quantity.Length, Gauge: quantity.Caliper,
		Help:  "distance of the cone's vertex beyond the drill axis, along the lip",
		How:   "Where the swing axis meets the wheel face, from the drill axis.",
		Usual: "0.3 to 2 diameters", Keys: [2]string{"vertex_mm"}},
	AxisAngle: {Name: "axis-angle", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Help:  "angle between the swing axis and the drill axis",
		How:   "The fixture's scale.",
		Usual: "half the point angle less the semi-angle", Keys: [2]string{"axis_angle_deg"}},
	AxisOffset: {Name: "axis-offset", Kind: quantity.Length, Gauge: quantity.Caliper, Signed: true,
		Help:  "shortest distance between the swing axis and the drill axis",
		How:   "The fixture's offset screw.",
		Usual: "about a tenth of the diameter", Keys: [2]string{"axis_offset_mm"}},
	At: {Name: "at", Kind: quantity.Word,
		Help:  "places on the lip, as parts of the outer radius: \"1,0.8,0.6\" or \"0.3..1 by 0.1\"",
		How:   "Any place from the chisel's corner to the outer corner, which is 1.",
		Usual: "1, 0.8, 0.6, 0.4", Keys: [2]string{"at"}},
}

// Spec returns the reading's entry in the catalogue.
func (r Reading) Spec() *Spec { return &specs[r] }

// String returns the flag's name.
func (r Reading) String() string { return specs[r].Name }

// KeysOf returns the names in JSON of n values that were read: one that stands
// for both lips carries no lip's number.
func (r Reading) KeysOf(n int) []string {
	if n == 1 && specs[r].Pair {
		return lone()[r][:]
	}
	return specs[r].Keys[:n]
}

var lone = sync.OnceValue(func() *[readings][1]string {
	out := new([readings][1]string)
	for r := range readings {
		out[r][0] = strings.Replace(specs[r].Keys[0], "_1_", "_", 1)
	}
	return out
})

// All returns every reading in the catalogue's order.
func All() []Reading {
	all := make([]Reading, readings)
	for i := range all {
		all[i] = Reading(i)
	}
	return all
}

// ForPoint returns the readings that describe one drill and its point, in the
// catalogue's order.
func ForPoint() []Reading { return All()[:lastOfPoint+1] }

// ForPlan returns the readings that only the plan of a regrind takes.
func ForPlan() []Reading { return All()[CleanUp : LeastDiameter+1] }

// Find returns the reading of that name.
func Find(name string) (Reading, bool) {
	for i := range specs {
		if specs[i].Name == name {
			return Reading(i), true
		}
	}
	return 0, false
}
