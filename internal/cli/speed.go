package cli

import (
	"evenlip/internal/drill"
	"evenlip/internal/spindle"
)

var speedCommand = calculation{
	name: "speed", short: "rpm, feed and strokes for a hole, and the load on the spindle",
	long: `Spindle speed and feed from the published ones for diameter and work, cut back
for a deep hole; the strokes to drill it in, and the time; thrust, torque and
power at that feed; the clearance it leaves; what the shank carries, and which
flutes serve. A speed or a feed that is set already is looked at instead.`,
	examples: `  evenlip speed --size 12mm --material steel-200 --depth 60mm
  evenlip speed --size 1/2 --material cast-iron-150 --depth 1.5in --web 0.075 --chisel-angle 125 --clearance 12 --lip-angle 59
  evenlip speed --size 25mm --shank-diameter 13mm --web 4mm --rpm 240 --feed 0.3mm`,
	rule: func() []drill.Reading {
		return withEdge(drill.LipAngle, drill.PointAngle, drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Helix, drill.Flute,
			drill.Feed, drill.Rpm, drill.Depth, drill.WearFactor, drill.Efficiency, drill.Drive, drill.ShankDiameter)
	},
	check: spindle.CheckDrill, compute: spindle.Speed,
}
