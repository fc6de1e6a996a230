// Package regrind is the command that plans a regrind.
package regrind

import (
	"slices"
	"sync"

	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/plan"
)

// Command is evenlip regrind.
var Command = command.Of[plan.Plan]{Info: command.Info{
	Name: "regrind", Short: "what comes off which lip and why, and the life that is left",
	Long: `What to take off the end of a worn drill and why: each kind of wear asks for its
own stock, the deepest governs, the clean-up allowance comes on top and uneven
lips are trued up. Then the drill before and after, whether to thin it and to
what, and its life grind by grind until it is retired, and for what. Any reading
may be missing; what was taken in its place is said. The drill comes from flags,
from YAML files whose keys are the flags' names (- is standard input), or from
--sample.`,
	Examples: `  evenlip regrind --size 12mm --web 2.1mm --chisel-angle 126 --lip-angle 59 --lip-height 0.12mm --clearance 11 --corner-wear 0.4mm --flute 78mm --depth 30mm
  evenlip regrind --size 1/2 --flank-wear 0.012 --margin-wear 0.03 --web 0.085 --chisel-angle 125 --flute 3in --depth 1in --every 0.03
  evenlip regrind --sample --explain`,
	Answers: "REGRIND and how much, THIN, FIT, RETIRE, or MEASURE for too little",
	Rule:    readings, Safety: &command.AtWheel,
}, Cannot: judge.Cannot, Compute: plan.Of, Figures: plan.Figures, Rest: plan.Rest, Declares: plan.Declares, Screen: (*plan.Plan).Screen}

var readings = sync.OnceValue(func() []drill.Reading {
	return slices.DeleteFunc(drill.Of(drill.Point, drill.Plan), func(r drill.Reading) bool { return r == drill.Rpm || r == drill.Remove })
})
