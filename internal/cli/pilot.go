package cli

import (
	"evenlip/internal/drill"
	"evenlip/internal/spindle"
)

var pilotCommand = calculation{
	name: "pilot", group: "spindle", short: "the pilot hole for a following drill",
	long: `The pilot that takes the chisel edge out of the cut: at least as wide as the
web, no wider than the chisel edge; the ordinary sizes between, and the one to
use; and thrust and torque with and without it. A pilot that there is already
can be looked at, and a depth tells whether it must be pecked.`,
	examples: `  evenlip pilot --size 20mm --web 3mm --chisel-angle 125
  evenlip pilot --size 3/4 --web 0.1 --chisel-length 0.125 --pilot 7/64 --material steel-200
  evenlip pilot --size 25mm --web 3.7mm --chisel-angle 125 --depth 80mm`,
	rule:  func() []drill.Reading { return withEdge(drill.Feed, drill.Depth, drill.WearFactor, drill.Pilot) },
	check: spindle.CheckDrill, compute: spindle.Pilot,
}
