// Package point holds the commands on the state of one drill's point.
package point

import (
	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"math"
)

// Point is evenlip point.
var Point = command.Of[judge.Result]{Info: command.Info{
	Name: "point", Safety: &command.AtBench, Short: "point angle, evenness and point length from the two lip angles",
	Long:     "The point angle from the angle of each lip to the axis, how far the lips differ,\nhow far the point is off the angle wanted, and the point's length.",
	Examples: "  evenlip point --size 12mm --lip-angle 59,58.5\n  evenlip point --size 7/8 --lip-angle 59 --explain",
	Readings: []drill.Reading{drill.Size, drill.Material, drill.PointAngle, drill.LipAngle},
}, Compute: judge.Compute, Figures: pointFigures, Rest: (*judge.Result).PointRemarks, Screen: pointScreen}

func pointFigures(r *judge.Result, s *sheet.Sheet) {
	sheet.Put(s, r, r.Held[:], &judge.Letters, &judge.PointFigures)
}

func pointScreen(r *judge.Result, s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: r.About(s, true)}
	if scr.Want(s, "point_angle_deg") {
		return scr
	}
	p := &r.Point
	switch apart := math.Abs(p.Difference); {
	case r.Outside(judge.AngleDifferenceLimit):
		scr.Head = quantity.Sayf("LIPS {} APART", quantity.Rad(apart))
	case r.Outside(judge.PointAngleLimit):
		scr.Head = quantity.Sayf("POINT {}, {} IS WANTED", quantity.Rad(p.Angle), quantity.Rad(p.Wanted))
	case p.Both && apart > 0:
		scr.Head = quantity.Sayf("POINT {}, LIPS {} APART: within", quantity.Rad(p.Angle), quantity.Rad(apart))
	default:
		scr.Head = quantity.Sayf("POINT {}", quantity.Rad(p.Angle))
	}
	if r.Outside(judge.AngleDifferenceLimit) || r.Outside(judge.PointAngleLimit) {
		r.LipItems(scr)
	}
	if len(scr.Items) > 0 {
		scr.Next = append(scr.Next, sheet.Next{Command: "regrind", Says: "what comes off, all told"})
	}
	if p.Both {
		scr.Show(s.Row("lips apart", "lip_angle_difference_deg").Size())
	}
	r.PointRow(s, scr)
	scr.Show(s.Row("point length", "point_length_mm"))
	return scr
}
