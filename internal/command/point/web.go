package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
)

// Web is evenlip web.
var Web = command.Of[judge.Result]{Info: command.Info{
	Name: "web", Short: "the web after a grind, and what that does to chisel and thrust",
	Long:     "The web, chisel edge and thrust after a length is ground off. The web's taper is\nthe usual one, one given, or this drill's own from two measured webs.",
	Examples: "  evenlip web --size 12mm --web 1.8mm --chisel-angle 125 --remove 6mm\n  evenlip web --size 12mm --web 1.8mm --second-web 2.2mm --second-web-at 25mm --chisel-angle 125 --remove 6mm\n  evenlip web --size 12mm --web 1.8mm --chisel-angle 125 --remove \"0mm..20mm by 2mm\"",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.SecondWeb, drill.SecondWebAt, drill.WebTaper, drill.ChiselAngle, drill.ChiselLength, drill.Remove, drill.Feed},
}, Cannot: judge.Cannot, Compute: judge.Compute, Figures: webFigures, Rest: webRest}

func webFigures(r *judge.Result, s *sheet.Sheet) {
	sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.ThrustLetters, &judge.WebFigures)
	sheet.Letters(s, r, &judge.ChiselEdge)
}

func webRest(r *judge.Result, s *sheet.Sheet) {
	r.WebRemarks(s)
	if sheet.Known(r.ThrustRatio()) {
		r.Drill.FeedAssumption(s)
	}
	r.Chisel.Contradiction(s)
}
