package cli

import (
	"evenlip/internal/drill"
	"evenlip/internal/spindle"
)

var thinCommand = calculation{
	name: "thin", group: "spindle", short: "thinning a thick web back: how deep a notch, and what it saves",
	long: `The notch to grind along each lip so that a chisel edge grown long comes back to
a new drill's (as regrind plans it), to a web or a chisel ratio asked for, or to
a wanted thrust; the chisel edge and the thrust after, and the point form of DIN
1412 that it is nearest to. --to-web new leaves a new drill's web.`,
	examples: `  evenlip thin --size 12mm --web 2.6mm --chisel-angle 126
  evenlip thin --size 1/2 --web 0.11 --chisel-angle 125 --chisel-ratio 0.1
  evenlip thin --size 25mm --web 5mm --chisel-angle 125 --to-web new
  evenlip thin --size 20mm --web 4mm --chisel-angle 125 --material steel-200 --feed 0.25mm --thrust 6kN`,
	rule: func() []drill.Reading {
		return withEdge(drill.Feed, drill.WearFactor, drill.ToWeb, drill.ToChiselRatio, drill.ToThrust)
	},
	check: spindle.CheckDrill, compute: spindle.Thin,
}
