package spindle

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
)

// ThrustCommand is evenlip thrust.
var ThrustCommand = command.Func{Info: command.Info{
	Name: "thrust", Short: "thrust, torque and power, and the chisel edge's part in them",
	Long: `Thrust, torque and power by the Machinery's Handbook's method, from the chisel
edge as measured or from web and angle; what the chisel edge alone takes; sharp
against dull; and this drill beside a new one. The inch equations are used where
the size is in inches, the metric ones elsewhere.`,
	Examples: `  evenlip thrust --size 7/8 --material steel-200 --chisel-length 0.1575in --feed 0.008in --rpm 350 --wear-factor 1.3 --efficiency 0.8
  evenlip thrust --size 12mm --web 2.1mm --chisel-angle 126 --feed 0.2mm --rpm 600 --drive belt`,
	Rule: func() []drill.Reading {
		return withEdge(drill.Feed, drill.Rpm, drill.WearFactor, drill.Efficiency, drill.Drive)
	},
}, Cannot: CheckDrill, Make: Thrust}

// ThinCommand is evenlip thin.
var ThinCommand = command.Func{Info: command.Info{
	Name: "thin", Short: "thinning a thick web back: how deep a notch, and what it saves",
	Long: `The notch to grind along each lip so that a chisel edge grown long comes back to
a new drill's (as regrind plans it), to a web or a chisel ratio asked for, or to
a wanted thrust; the chisel edge and the thrust after, and the point form of DIN
1412 that it is nearest to. --to-web new leaves a new drill's web.`,
	Examples: `  evenlip thin --size 12mm --web 2.6mm --chisel-angle 126
  evenlip thin --size 1/2 --web 0.11 --chisel-angle 125 --chisel-ratio 0.1
  evenlip thin --size 25mm --web 5mm --chisel-angle 125 --to-web new
  evenlip thin --size 20mm --web 4mm --chisel-angle 125 --material steel-200 --feed 0.25mm --thrust 6kN`,
	Rule: func() []drill.Reading {
		return withEdge(drill.Feed, drill.WearFactor, drill.ToWeb, drill.ToChiselRatio, drill.ToThrust)
	},
}, Cannot: CheckDrill, Make: Thin}

// PilotCommand is evenlip pilot.
var PilotCommand = command.Func{Info: command.Info{
	Name: "pilot", Short: "the pilot hole for a following drill",
	Long: `The pilot that takes the chisel edge out of the cut: at least as wide as the
web, no wider than the chisel edge; the ordinary sizes between, and the one to
use; and thrust and torque with and without it. A pilot that there is already
can be looked at, and a depth tells whether it must be pecked.`,
	Examples: `  evenlip pilot --size 20mm --web 3mm --chisel-angle 125
  evenlip pilot --size 3/4 --web 0.1 --chisel-length 0.125 --pilot 7/64 --material steel-200
  evenlip pilot --size 25mm --web 3.7mm --chisel-angle 125 --depth 80mm`,
	Rule: func() []drill.Reading { return withEdge(drill.Feed, drill.Depth, drill.WearFactor, drill.Pilot) },
}, Cannot: CheckDrill, Make: Pilot}

// SpeedCommand is evenlip speed.
var SpeedCommand = command.Func{Info: command.Info{
	Name: "speed", Short: "rpm, feed and strokes for a hole, and the load on the spindle",
	Long: `Spindle speed and feed from the published ones for diameter and work, cut back
for a deep hole; the strokes to drill it in, and the time; thrust, torque and
power at that feed; the clearance it leaves; what the shank carries, and which
flutes serve. A speed or a feed that is set already is looked at instead.`,
	Examples: `  evenlip speed --size 12mm --material steel-200 --depth 60mm
  evenlip speed --size 1/2 --material cast-iron-150 --depth 1.5in --web 0.075 --chisel-angle 125 --clearance 12 --lip-angle 59
  evenlip speed --size 25mm --shank-diameter 13mm --web 4mm --rpm 240 --feed 0.3mm`,
	Rule: func() []drill.Reading {
		return withEdge(drill.LipAngle, drill.PointAngle, drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Helix, drill.Flute,
			drill.Feed, drill.Rpm, drill.Depth, drill.WearFactor, drill.Efficiency, drill.Drive, drill.ShankDiameter)
	},
}, Cannot: CheckDrill, Make: Speed}

// edgeReadings give the chisel edge.
var edgeReadings = []drill.Reading{drill.Web, drill.ChiselAngle, drill.ChiselLength}

// withEdge returns the readings of a drill at work, its chisel edge among them.
func withEdge(more ...drill.Reading) []drill.Reading {
	return append(append([]drill.Reading{drill.Size, drill.Material}, edgeReadings...), more...)
}
