package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
)

// Clearance is evenlip clearance.
var Clearance = command.Of[judge.Result]{Info: command.Info{
	Name: "clearance", Short: "lip clearance, read or from heel drop, and what a feed leaves",
	Long:     "The clearance at each lip's outer corner, as read or from the heel's drop over\na turn, against the band for size and material; what is left of it at a feed,\nwhere along the lip least is left, and the feed at which the flank would rub.",
	Examples: "  evenlip clearance --size 12mm --heel-drop 0.64mm --heel-turn 30 --feed 0.2mm\n  evenlip clearance --size 1/2 --clearance 11,12 --web 0.075 --lip-angle 59 --material cast-iron-150",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Feed, drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.LipAngle},
}, Compute: judge.Compute, Figures: clearanceFigures, Rest: clearanceRest}

func clearanceFigures(r *judge.Result, s *sheet.Sheet) {
	sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.FeedLetter, &judge.CornerClearance, &judge.FlankSlopes, &judge.WorkingClearance)
	sheet.Letters(s, r, &judge.ChiselEdge)
}

func clearanceRest(r *judge.Result, s *sheet.Sheet) {
	r.ClearanceRemarks(s)
	r.Chisel.Contradiction(s)
}
