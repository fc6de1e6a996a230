package drawing

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
)

// Command is evenlip draw, as far as it is a calculation: the figures beside the
// picture.
var Command = command.Of[Result]{Info: command.Info{
	Name: "draw", Short: "the point to scale, from the end and from the side",
	Long: `The point of one drill to scale, seen from the end and from the side: both lips
as measured, uneven ones too, the web, the chisel edge at its angle, margins and
flutes. In the terminal, or with --svg as a dimensioned drawing that prints true
to scale. With --remove the drill before the grind lies dashed under the one
after. Size and lip-angle have to be read; what else was not is drawn as usual,
and the remarks say so. A picture is of one drill: no ranges.
Readings come from flags, from a YAML file whose keys are the flags' names (- is
standard input), or from --sample.`,
	Examples: `  evenlip draw --size 12mm --lip-angle 59,58 --web 2mm --chisel-angle 126
  evenlip draw --sample --svg sample.svg
  evenlip draw --size 1/2 --lip-angle 59 --remove 1/16in --svg half.svg --scale 5:1`,
	Readings: []drill.Reading{
		drill.Size, drill.Material, drill.Web, drill.SecondWeb, drill.SecondWebAt, drill.WebTaper, drill.ChiselAngle, drill.ChiselLength,
		drill.PointAngle, drill.LipAngle, drill.LipLength, drill.LipHeight, drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Helix, drill.FlutePoint, drill.LipFlat, drill.Remove,
	},
}, Cannot: Check, Compute: Compute, Figures: Figures, Rest: Rest}
