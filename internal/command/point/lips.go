package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"math"
)

// Lips is evenlip lips.
var Lips = command.Of[judge.Result]{Info: command.Info{
	Name: "lips", Pictured: true, Safety: &command.AtBench, Short: "lip-height mismatch, what it does, and what to take off which lip",
	Long:     "The lip-height difference from an indicator, or from lip lengths and angles; how\nfar the point is off the axis, how the lips share the chip, the bound on hole\noversize, and the stock to take off each lip at its inner and outer end.",
	Examples: "  evenlip lips --size 12mm --lip-angle 59 --lip-height 0.12mm --feed 0.2mm\n  evenlip lips --size 1/2 --lip-angle 60,58 --lip-length 0.245,0.25",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.PointAngle, drill.LipAngle, drill.LipLength, drill.LipHeight, drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.Feed},
}, Compute: judge.Compute, Figures: lipFigures, Rest: lipRest, Screen: lipsScreen}

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

func lipsScreen(r *judge.Result, s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: s.Drill}
	if scr.Want(s, "lip_height_difference_mm") {
		return scr
	}
	l := &r.Lips
	switch {
	case l.TakenLevel:
		scr.Head = quantity.Sayf("LIPS {} APART HALF WAY IN", quantity.MM(math.Abs(l.MidLip)))
	case l.High() == 0:
		scr.Head = quantity.Sayf("LIPS LEVEL")
	default:
		scr.Head = quantity.Sayf("LIP {} IS HIGH BY {}", quantity.Of(quantity.Count, float64(l.High())), quantity.MM(math.Abs(l.Height)))
	}
	if r.Outside(judge.LipHeightLimit) || r.Outside(judge.MidLipLimit) || r.Outside(judge.AngleDifferenceLimit) {
		r.LipItems(scr)
		scr.Next = append(scr.Next, sheet.Next{Command: "regrind", Says: "what comes off, all told"})
	} else if l.High() != 0 {
		scr.Say("Within what is allowed: leave them.")
	}
	r.LipRows(s, scr)
	if !r.Outside(judge.MidLipLimit) || r.Outside(judge.LipHeightLimit) {
		mid := s.Row("half way in", "lip_height_mid_lip_mm").Size()
		mid.Under = true
		if l.MidLip*l.Height >= 0 && l.MidLip != 0 {
			scr.Show(mid)
		}
	}
	if share, _ := r.Shares(); sheet.Known(share) {
		row := s.Row("lips cut", "chip_share_1", "chip_share_2")
		scr.Show(row.Saying("of the metal"))
	}
	over := s.Row("oversize, up to", "oversize_bound_mm")
	if usual := handbook.UsualOversize(r.Drill.D); usual.High > 0 {
		over = over.Saying("from the lips; usual {} to {}", quantity.MM(usual.Low), quantity.MM(usual.High))
	}
	scr.Show(over)
	if off := l.Offset; sheet.Known(off) && math.Abs(off) >= 0.005 {
		lip := "lip 1"
		if off < 0 {
			lip = "lip 2"
		}
		scr.Show(s.Row("point off axis", "point_offset_mm").Size().Saying("toward {}", quantity.Say(lip)))
	}
	return scr
}
