package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
)

// Chisel is evenlip chisel.
var Chisel = command.Of[judge.Result]{Info: command.Info{
	Name: "chisel", Short: "chisel-edge angle and length from any two of web, angle, length",
	Long:     "The chisel edge from any two of web, angle and length. The angle is taken and\ngiven both ways: obtuse (120 to 135) and acute (45 to 60).",
	Examples: "  evenlip chisel --size 12mm --web 1.8mm --chisel-angle 125\n  evenlip chisel --size 1/2 --web 0.075 --chisel-length 0.092",
	Readings: []drill.Reading{drill.Size, drill.Web, drill.ChiselAngle, drill.ChiselLength},
}, Compute: judge.Compute, Figures: chiselFigures, Rest: chiselRest}

func chiselFigures(r *judge.Result, s *sheet.Sheet) {
	sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.ChiselEdge)
}

func chiselRest(r *judge.Result, s *sheet.Sheet) { r.Chisel.Contradiction(s) }
