package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
)

// Lips is evenlip lips.
var Lips = command.Of[judge.Result]{Info: command.Info{
	Name: "lips", Short: "lip-height mismatch, what it does, and what to take off which lip",
	Long:     "The lip-height difference from an indicator, or from lip lengths and angles; how\nfar the point is off the axis, how the lips share the chip, the bound on hole\noversize, and the stock to take off each lip at its inner and outer end.",
	Examples: "  evenlip lips --size 12mm --lip-angle 59 --lip-height 0.12mm --feed 0.2mm\n  evenlip lips --size 1/2 --lip-angle 60,58 --lip-length 0.245,0.25",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.PointAngle, drill.LipAngle, drill.LipLength, drill.LipHeight, drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.Feed},
}, Compute: judge.Compute, Figures: lipFigures, Rest: lipRest}

func lipFigures(r *judge.Result, s *sheet.Sheet) {
	sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.FeedLetter, &judge.LipFigures)
	sheet.Letters(s, r, &judge.LipPlace, &judge.ChiselEdge, &judge.CornerClearance, &judge.FlankSlopes)
}

func lipRest(r *judge.Result, s *sheet.Sheet) {
	r.LipRemarks(s)
	if share, _ := r.Shares(); sheet.Known(share) {
		r.Drill.FeedAssumption(s)
	}
	r.Chisel.Contradiction(s)
}
