package cone

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
)

// Command is evenlip cone.
var Command = command.Of[Result]{Info: command.Info{
	Name: "cone", Group: "grinder", Short: "setting of a swing fixture for a point, or the point it grinds",
	Long: `A fixture that swings the drill about an axis grinds each flank to a cone. Any
of three sets of readings will do, beside size and web:
  point-angle, clearance, chisel-angle, semi-angle   gives the setting
  point-angle, clearance, semi-angle, vertex         gives the rest of both
  semi-angle, axis-angle, axis-offset, vertex        gives the point
A heel-drop over its heel-turn does for the clearance, a chisel-length for the
web or the chisel-angle.
It also tells how the flank stands at the heel (over --heel-turn), how a hand
on a pedestal grinder swings the drill to the same point and what its faults
do, what a change of each does, what a thicker web makes of it, and what flat
facets would give instead. A wish out of reach of the others is refused, with
what to give up and by how much.`,
	Examples: `  evenlip cone --size 10mm --web 1.5mm --point-angle 118 --clearance 12 --chisel-angle 126.5 --semi-angle 30
  evenlip cone --size 10mm --web 1.5mm --point-angle 118 --clearance 12 --semi-angle 30 --vertex 4.808mm
  evenlip cone --size 10mm --web 1.5mm --semi-angle 30 --axis-angle 29.28 --axis-offset 1.264mm --vertex 4.808mm`,
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.PointAngle, drill.Clearance, drill.HeelDrop, drill.HeelTurn,
		drill.ChiselAngle, drill.ChiselLength, drill.SemiAngle, drill.Vertex, drill.AxisAngle, drill.AxisOffset},
}, Cannot: Check, Compute: Compute, Figures: Figures, Rest: Rest}
