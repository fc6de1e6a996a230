package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Chisel is evenlip chisel.
var Chisel = command.Of[judge.Result]{Info: command.Info{
	Name: "chisel", Pictured: true, Safety: &command.AtBench, Short: "chisel-edge angle and length from any two of web, angle, length",
	Long:     "The chisel edge from any two of web, angle and length. The angle is taken and\ngiven both ways: obtuse (120 to 135) and acute (45 to 60).",
	Examples: "  evenlip chisel --size 12mm --web 1.8mm --chisel-angle 125\n  evenlip chisel --size 1/2 --web 0.075 --chisel-length 0.092",
	Readings: []drill.Reading{drill.Size, drill.Web, drill.ChiselAngle, drill.ChiselLength},
}, Compute: judge.Compute, Figures: chiselFigures, Rest: chiselRest, Screen: chiselScreen}

func chiselFigures(r *judge.Result, s *sheet.Sheet) {
	sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.ChiselEdge)
}

func chiselRest(r *judge.Result, s *sheet.Sheet) { r.Chisel.Contradiction(s) }

func chiselScreen(r *judge.Result, s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: s.Drill}
	if scr.Want(s, "chisel_length_mm") {
		return scr
	}
	c := &r.Chisel
	long, off := r.Outside(judge.ChiselRatioLimit), r.Outside(judge.ChiselAngleLimit)
	switch {
	case c.Gap != 0:
		scr.Verdict = "MEASURE"
		scr.Item(quantity.Sayf("three readings disagree"), quantity.Sayf("web and angle make an edge of {}, {} was read", quantity.MM(c.Length+c.Gap), quantity.MM(c.Length)))
		scr.Told = "chisel-contradiction"
	case long:
		scr.Head = quantity.Sayf("CHISEL EDGE {}: too long", quantity.MM(c.Length))
	case off:
		scr.Head = quantity.Sayf("CHISEL EDGE AT {}", quantity.Rad(c.Angle))
	case !sheet.Known(c.Angle):
		scr.Head = quantity.Sayf("CHISEL EDGE {}", quantity.MM(c.Length))
		scr.Say("It is shorter than the web, so the point is thinned: its angle gives the web there.")
	case sheet.Known(r.Drill.D):
		scr.Head = quantity.Sayf("CHISEL EDGE {}, {}: both within", quantity.Rad(c.Angle), quantity.MM(c.Length))
	default:
		scr.Head = quantity.Sayf("CHISEL EDGE {}, {}", quantity.Rad(c.Angle), quantity.MM(c.Length))
	}
	v := &sheet.Verdict{Word: "regrind"}
	if off {
		v.Reasons = append(v.Reasons, judge.ChiselOff.Code())
	}
	if long {
		v.Reasons = append(v.Reasons, judge.ChiselLong.Code())
	}
	r.Items(scr, v)
	switch {
	case off:
		scr.Next = append(scr.Next, sheet.Next{Command: "regrind", Says: "grind it right first, then measure"})
	case long:
		scr.Next = append(scr.Next, sheet.Next{Command: "thin", Says: "how deep a notch, and the push it saves"})
	case c.Gap == 0 && sheet.Known(c.Angle):
		scr.Next = append(scr.Next, sheet.Next{Command: "web", Args: "--remove 1mm", Says: "after a grind"})
	}
	r.ChiselRows(s, scr)
	web := s.Row("web", "web_mm")
	if sheet.Known(r.Drill.D) {
		web = web.Saying("a new one has about {}", quantity.MM(handbook.NewWeb(r.Drill.D)))
	}
	scr.Show(web)
	scr.Show(s.Row("or, acute", "chisel_angle_acute_deg").Saying("the same angle, quoted the other way"))
	return scr
}
