// Package point holds the commands on the state of one drill's point.
package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
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

// Point is evenlip point.
var Point = command.Of[judge.Result]{Info: command.Info{
	Name: "point", Short: "point angle, evenness and point length from the two lip angles",
	Long:     "The point angle from the angle of each lip to the axis, how far the lips differ,\nhow far the point is off the angle wanted, and the point's length.",
	Examples: "  evenlip point --size 12mm --lip-angle 59,58.5\n  evenlip point --size 7/8 --lip-angle 59 --explain",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.PointAngle, drill.LipAngle},
}, Compute: judge.Compute,
	Figures: func(r *judge.Result, s *sheet.Sheet) {
		sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.PointFigures)
	},
	Rest: func(r *judge.Result, s *sheet.Sheet) {
		r.PointRemarks(s)
	},
}

// Clearance is evenlip clearance.
var Clearance = command.Of[judge.Result]{Info: command.Info{
	Name: "clearance", Short: "lip clearance, read or from heel drop, and what a feed leaves",
	Long:     "The clearance at each lip's outer corner, as read or from the heel's drop over\na turn, against the band for size and material; what is left of it at a feed,\nwhere along the lip least is left, and the feed at which the flank would rub.",
	Examples: "  evenlip clearance --size 12mm --heel-drop 0.64mm --heel-turn 30 --feed 0.2mm\n  evenlip clearance --size 1/2 --clearance 11,12 --web 0.075 --lip-angle 59 --material cast-iron-150",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Feed, drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.LipAngle},
}, Compute: judge.Compute,
	Figures: func(r *judge.Result, s *sheet.Sheet) {
		sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.CornerClearance, &judge.FlankSlopes, &judge.WorkingClearance)
		sheet.Letters(s, r, &judge.ChiselEdge)
	},
	Rest: func(r *judge.Result, s *sheet.Sheet) {
		r.ClearanceRemarks(s)
		r.Chisel.Contradiction(s)
	},
}

// Chisel is evenlip chisel.
var Chisel = command.Of[judge.Result]{Info: command.Info{
	Name: "chisel", Short: "chisel-edge angle and length from any two of web, angle, length",
	Long:     "The chisel edge from any two of web, angle and length. The angle is taken and\ngiven both ways: obtuse (120 to 135) and acute (45 to 60).",
	Examples: "  evenlip chisel --size 12mm --web 1.8mm --chisel-angle 125\n  evenlip chisel --size 1/2 --web 0.075 --chisel-length 0.092",
	Readings: []drill.Reading{drill.Size, drill.Web, drill.ChiselAngle, drill.ChiselLength},
}, Compute: judge.Compute,
	Figures: func(r *judge.Result, s *sheet.Sheet) {
		sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.ChiselEdge)
	},
	Rest: func(r *judge.Result, s *sheet.Sheet) {
		r.Chisel.Contradiction(s)
	},
}

// Web is evenlip web.
var Web = command.Of[judge.Result]{Info: command.Info{
	Name: "web", Short: "the web after a grind, and what that does to chisel and thrust",
	Long:     "The web, chisel edge and thrust after a length is ground off. The web's taper is\nthe usual one, one given, or this drill's own from two measured webs.",
	Examples: "  evenlip web --size 12mm --web 1.8mm --chisel-angle 125 --remove 6mm\n  evenlip web --size 12mm --web 1.8mm --second-web 2.2mm --second-web-at 25mm --chisel-angle 125 --remove 6mm\n  evenlip web --size 12mm --web 1.8mm --chisel-angle 125 --remove \"0mm..20mm by 2mm\"",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.SecondWeb, drill.SecondWebAt, drill.WebTaper, drill.ChiselAngle, drill.ChiselLength, drill.Remove, drill.Feed},
}, Cannot: judge.Cannot, Compute: judge.Compute,
	Figures: func(r *judge.Result, s *sheet.Sheet) {
		sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.WebFigures)
		sheet.Letters(s, r, &judge.ChiselEdge)
	},
	Rest: func(r *judge.Result, s *sheet.Sheet) {
		r.WebRemarks(s)
		r.FeedTaken(s, r.ThrustRatio())
		r.Chisel.Contradiction(s)
	},
}

// Lips is evenlip lips.
var Lips = command.Of[judge.Result]{Info: command.Info{
	Name: "lips", Short: "lip-height mismatch, what it does, and what to take off which lip",
	Long:     "The lip-height difference from an indicator, or from lip lengths and angles; how\nfar the point is off the axis, how the lips share the chip, the bound on hole\noversize, and the stock to take off each lip at its inner and outer end.",
	Examples: "  evenlip lips --size 12mm --lip-angle 59 --lip-height 0.12mm --feed 0.2mm\n  evenlip lips --size 1/2 --lip-angle 60,58 --lip-length 0.245,0.25",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.PointAngle, drill.LipAngle, drill.LipLength, drill.LipHeight, drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.Feed},
}, Compute: judge.Compute,
	Figures: func(r *judge.Result, s *sheet.Sheet) {
		sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.LipFigures)
		sheet.Letters(s, r, &judge.LipPlace, &judge.ChiselEdge, &judge.CornerClearance, &judge.FlankSlopes)
	},
	Rest: func(r *judge.Result, s *sheet.Sheet) {
		r.LipRemarks(s)
		share, _ := r.Shares()
		r.FeedTaken(s, share)
		r.Chisel.Contradiction(s)
	},
}
