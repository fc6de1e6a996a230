package edge

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
)

// Command is evenlip edge.
var Command = command.Of[Result]{Info: command.Info{
	Name: "edge", Short: "rake, clearance and inclination along the lip and the chisel edge",
	Long: `The angles along the lip, place by place from the margin to the chisel's
corner: inclination, rake, clearance, wedge, what a feed leaves of the
clearance, and the cutting speed; where the rake passes through zero and where
the clearance left is least; and the chisel edge, which scrapes and near the
axis cuts nothing at all. What was not read is taken from a usual drill of the
size, and said.`,
	Examples: `  evenlip edge --size 10mm --web 1.5mm --point-angle 118 --helix 30 --clearance 12 --feed 0.2mm
  evenlip edge --size 1/2 --at 1,0.8,0.6,0.4 --rpm 800
  evenlip edge --size 10mm --at 1 --helix "20..40 by 5"`,
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.PointAngle, drill.LipAngle,
		drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Helix, drill.FlutePoint, drill.LipFlat, drill.Feed, drill.Rpm, drill.At},
}, Cannot: Check, Compute: Compute, Figures: Figures, Rest: Rest}
