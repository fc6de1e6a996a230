package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"math"
)

// Web is evenlip web.
var Web = command.Of[judge.Result]{Info: command.Info{
	Name: "web", Safety: &command.AtBench, Short: "the web after a grind, and what that does to chisel and thrust",
	Long:     "The web, chisel edge and thrust after a length is ground off. The web's taper is\nthe usual one, one given, or this drill's own from two measured webs.",
	Examples: "  evenlip web --size 12mm --web 1.8mm --chisel-angle 125 --remove 6mm\n  evenlip web --size 12mm --web 1.8mm --second-web 2.2mm --second-web-at 25mm --chisel-angle 125 --remove 6mm\n  evenlip web --size 12mm --web 1.8mm --chisel-angle 125 --remove \"0mm..20mm by 2mm\"",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.SecondWeb, drill.SecondWebAt, drill.WebTaper, drill.ChiselAngle, drill.ChiselLength, drill.Remove, drill.Feed},
}, Cannot: judge.Cannot, Compute: judge.Compute, Figures: webFigures, Rest: webRest, Screen: webScreen}

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

func webScreen(r *judge.Result, s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: s.Drill}
	if scr.Want(s, "web_after_mm") {
		return scr
	}
	w, c := &r.Web, &r.Chisel
	scr.Head = quantity.Sayf("WEB {} after {} off", quantity.MM(w.After), quantity.MM(w.Remove))
	limit := r.Limit(judge.ChiselRatioLimit)
	room := (limit.High*r.Drill.D*math.Sin(c.Acute) - w.From) / w.Taper
	switch {
	case !sheet.Known(w.ChiselAfter):
	case r.Outside(judge.ChiselAfterLimit):
		scr.Item(quantity.Sayf("chisel edge {} long", quantity.MM(w.ChiselAfter)), quantity.Sayf("thin the web; {} is the most", quantity.MM(limit.High*r.Drill.D)))
		scr.Next = append(scr.Next, sheet.Next{Command: "thin", Says: "how deep a notch, and the push it saves"})
	case sheet.Known(room) && w.Taper > 0 && c.Behind == 0 && c.Gap == 0:
		scr.Say("Chisel edge {}, still within; thin once about {} in all has come off.", quantity.MM(w.ChiselAfter), quantity.MM(room))
	}
	scr.Show(s.Row("web", "web_after_mm").Saying("now {}", quantity.MM(w.From)))
	scr.Show(s.Row("chisel edge", "chisel_length_after_mm").HeldAs(s, "chisel_ratio_after", r.Drill.D))
	if ratio := r.ThrustRatio(); sheet.Known(ratio) {
		scr.Show(sheet.Row{Label: quantity.Sayf("push"), Kind: quantity.Word, Text: more(ratio)})
	}
	return scr
}

// more says how much more push a ratio is, or less.
func more(ratio float64) quantity.Text {
	switch {
	case ratio >= 1.005:
		return quantity.Sayf("{} more than now", quantity.Of(quantity.Share, ratio-1))
	case ratio <= 0.995:
		return quantity.Sayf("{} less than now", quantity.Of(quantity.Share, 1-ratio))
	}
	return quantity.Sayf("as now")
}
