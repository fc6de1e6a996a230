package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"math"
)

// Clearance is evenlip clearance.
var Clearance = command.Of[judge.Result]{Info: command.Info{
	Name: "clearance", Safety: &command.AtBench, Short: "lip clearance, read or from heel drop, and what a feed leaves",
	Long:     "The clearance at each lip's outer corner, as read or from the heel's drop over\na turn, against the band for size and material; what is left of it at a feed,\nwhere along the lip least is left, and the feed at which the flank would rub.",
	Examples: "  evenlip clearance --size 12mm --heel-drop 0.64mm --heel-turn 30 --feed 0.2mm\n  evenlip clearance --size 1/2 --clearance 11,12 --web 0.075 --lip-angle 59 --material cast-iron-150",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Feed, drill.Web, drill.ChiselAngle, drill.ChiselLength, drill.LipAngle},
}, Compute: judge.Compute, Figures: clearanceFigures, Rest: clearanceRest, Screen: clearanceScreen}

func clearanceFigures(r *judge.Result, s *sheet.Sheet) {
	sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.FeedLetter, &judge.CornerClearance, &judge.FlankSlopes, &judge.WorkingClearance)
	sheet.Letters(s, r, &judge.ChiselEdge)
}

func clearanceRest(r *judge.Result, s *sheet.Sheet) {
	r.ClearanceRemarks(s)
	r.Chisel.Contradiction(s)
}

func clearanceScreen(r *judge.Result, s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: r.About(s, true)}
	if scr.Want(s, "lip_clearance_1_deg") {
		return scr
	}
	c := &r.Clearance
	v := &sheet.Verdict{}
	heads := [...]struct {
		reason judge.Reason
		head   quantity.Text
	}{
		{judge.ClearanceLow, quantity.Sayf("TOO LITTLE CLEARANCE ON {}", quantity.Say(c.Outside(r)))},
		{judge.ClearanceHigh, quantity.Sayf("TOO MUCH CLEARANCE ON {}", quantity.Say(c.Outside(r)))},
		{judge.FlankRubs, quantity.Sayf("THE HEEL DRAGS AT {} A TURN", quantity.Of(quantity.Feed, r.Drill.Feed))},
		{judge.ClearancesUneven, quantity.Sayf("CLEARANCES {} APART", quantity.Rad(math.Abs(c.Lip1-c.Lip2)))},
	}
	for _, h := range heads {
		if !r.Verdict.Reasons[h.reason] {
			continue
		}
		if scr.Head.Format == "" {
			scr.Head = h.head
		}
		v.Reasons = append(v.Reasons, h.reason.Code())
	}
	if scr.Head.Format == "" {
		scr.Head = quantity.Sayf("CLEARANCE {}: within", quantity.Rad(c.Corner()))
		if c.Both && c.Lip1 != c.Lip2 {
			scr.Head = quantity.Sayf("CLEARANCE {} AND {}: within", quantity.Rad(c.Lip1), quantity.Rad(c.Lip2))
		}
	} else {
		v.Word = "regrind"
		r.Items(scr, v)
		scr.Next = append(scr.Next, sheet.Next{Command: "regrind", Says: "what comes off, all told"})
	}
	r.ClearanceRows(s, scr)
	if c.FromDrop {
		r.HeelRow(scr)
	}
	if !r.Outside(judge.WorkingLimit) && sheet.Known(r.Drill.Feed) {
		scr.Show(s.Row("while it cuts", "working_clearance_deg").Saying("left of it at the corner, {} a turn", quantity.Of(quantity.Feed, r.Drill.Feed)))
	}
	if !r.Outside(judge.WorkingLimit) && !r.Outside(judge.LeastWorkingLimit) {
		scr.Show(s.Row("heel drags above", "feed_limit_mm").Saying("a turn"))
	}
	for _, f := range s.Findings {
		if f.Code == "heel-turn-long" {
			scr.Note("note", "a drop over {} reads high; 10° comes closer to the corner", quantity.Rad(c.Turn))
		}
	}
	return scr
}
