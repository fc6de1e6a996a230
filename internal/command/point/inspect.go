package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
)

// Inspect is evenlip inspect.
var Inspect = command.Of[judge.Result]{Info: command.Info{
	Name: "inspect", Short: "the whole point in one go: five results, limits, a verdict",
	Long: `The point angle, lip clearance, chisel edge, web after regrind and lip height of
one drill, each against its limit, and a verdict: fit, regrind, thin or retire.
Any reading may be missing: what can be computed is, and what cannot says which
reading it wants.`,
	Examples: `  evenlip inspect --size 12mm --web 2mm --chisel-angle 126 --lip-angle 59,58 --lip-height 0.12mm --clearance 11
  evenlip inspect --size 1/2 --web 0.085 --chisel-length 0.105 --lip-angle 59,59 --format json
  evenlip inspect --sample --explain`,
	Rule: func() []drill.Reading { return drill.Of(drill.Point) },
}, Cannot: judge.Cannot, Compute: judge.Compute, Figures: (*judge.Result).Figures, Rest: (*judge.Result).Rest}
