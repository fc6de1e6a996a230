package cli

import (
	"evenlip/internal/drill"
	"evenlip/internal/spindle"
)

// spindleCommands are the commands on a drill at work and on the grinder.
var spindleCommands = []*calculation{&thrustCommand, &thinCommand, &pilotCommand, &speedCommand, &wheelCommand}

// edgeReadings give the chisel edge.
var edgeReadings = []drill.Reading{drill.Web, drill.ChiselAngle, drill.ChiselLength}

// withEdge returns the readings of a drill at work, its chisel edge among them.
func withEdge(more ...drill.Reading) []drill.Reading {
	return append(append([]drill.Reading{drill.Size, drill.Material}, edgeReadings...), more...)
}

var thrustCommand = calculation{
	name: "thrust", group: "spindle", short: "thrust, torque and power, and the chisel edge's part in them",
	long: `Thrust, torque and power by the Machinery's Handbook's method, from the chisel
edge as measured or from web and angle; what the chisel edge alone takes; sharp
against dull; and this drill beside a new one. The inch equations are used where
the size is in inches, the metric ones elsewhere.`,
	examples: `  evenlip thrust --size 7/8 --material steel-200 --chisel-length 0.1575in --feed 0.008in --rpm 350 --wear-factor 1.3 --efficiency 0.8
  evenlip thrust --size 12mm --web 2.1mm --chisel-angle 126 --feed 0.2mm --rpm 600 --drive belt`,
	rule: func() []drill.Reading {
		return withEdge(drill.Feed, drill.Rpm, drill.WearFactor, drill.Efficiency, drill.Drive)
	},
	check: spindle.CheckDrill, compute: spindle.Thrust,
}
