// Package point holds the commands on the state of one drill's point.
package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
)

// Point is evenlip point.
var Point = command.Of[judge.Result]{Info: command.Info{
	Name: "point", Short: "point angle, evenness and point length from the two lip angles",
	Long:     "The point angle from the angle of each lip to the axis, how far the lips differ,\nhow far the point is off the angle wanted, and the point's length.",
	Examples: "  evenlip point --size 12mm --lip-angle 59,58.5\n  evenlip point --size 7/8 --lip-angle 59 --explain",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.PointAngle, drill.LipAngle},
}, Compute: judge.Compute, Figures: pointFigures, Rest: (*judge.Result).PointRemarks}

func pointFigures(r *judge.Result, s *sheet.Sheet) {
	sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.PointFigures)
}
