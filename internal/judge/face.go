package judge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Face is what was read of the face of the lips, the flute's side: NaN where it was not.
type Face struct {
	Helix      float64
	FlutePoint float64 // point angle that the flutes were made for
	Flat       float64 // height of the land along flattened lips
}

func faceOf(d *drill.Drill) Face {
	return Face{Helix: d.Value(drill.Helix), FlutePoint: d.Value(drill.FlutePoint), Flat: d.Value(drill.LipFlat)}
}

// FaceRemarks says in s what the face of the lips means for the work, and how far lips
// are curved on flutes that are known to be made for another point.
func (r *Result) FaceRemarks(s *sheet.Sheet) {
	r.FlatRemarks(s)
	if known(r.Face.FlutePoint) {
		r.CurvedAt(s, r.Point.K(), r.Clearance.Corner(), r.Chisel.Web, r.Chisel.Acute)
	}
}

// FlatRemarks says in s that a helix digs in where the lips are not flattened, and that
// flattened ones are not for work in which it does not.
func (r *Result) FlatRemarks(s *sheet.Sheet) {
	r.DigsIn(s)
	if m := r.Drill.Material; known(r.Face.Flat) && r.Drill.Given && !digsIn(m) {
		s.Extra = append(s.Extra, handbook.LipFlat.Source)
		s.Find("flat-lips", sheet.Note, "the lips are flattened to no rake over {}, as for brass and plastics: in {} they push harder than sharp ones, until a grind has taken that much off",
			quantity.MM(r.Face.Flat), quantity.Say(m.Name))
	}
}

// leastBow is the bow, as a part of the diameter, from which a lip is called curved.
const leastBow = 0.002

// CurvedAt says in s how far lips of that half angle, clearance, web and acute
// chisel-edge angle are curved, if it shows: on flutes as read, else as they usually are.
// What of the rest is NaN is taken as usual.
func (r *Result) CurvedAt(s *sheet.Sheet, k, clearance, web, chisel float64) {
	d, limit := r.Drill.D, r.Limit(ChiselAngleLimit)
	clearance, _ = OrUsual(clearance, r.Clearance.Aim)
	web, _ = OrUsual(web, handbook.NewWeb(d))
	chisel, _ = OrUsual(chisel, math.Pi-(limit.Low+limit.High)/2)
	usual, _, _ := handbook.Helix(d)
	helix, _ := OrUsual(r.Face.Helix, (usual.Low+usual.High)/2)
	made, taken := OrUsual(r.Face.FlutePoint, handbook.FlutePoint)
	lip := point.NewBentLip(point.NewFlank(d, web, k, clearance), made/2, helix)
	if bow := lip.Bow(math.Max(0, point.ChiselCorner(web, chisel))); math.Abs(bow) >= leastBow*d {
		Curved(s, bow, made, taken)
	}
}

// Curved says in s that lips are curved, which bow by so much, seen from the end, on
// flutes made, or only taken as made, for a point angle.
func Curved(s *sheet.Sheet, bow, made float64, taken bool) {
	as, way := "", "ahead of"
	if taken {
		as = "taken as "
		s.Extra = append(s.Extra, handbook.FlutePointSource)
	}
	if bow < 0 {
		way = "behind"
	}
	s.Find("lips-curved", sheet.Note, "on flutes {}made for a point of {} the lips are not straight at this angle: seen from the end they stand up to {} {} a straight line",
		quantity.Say(as), quantity.Set(made), quantity.MM(math.Abs(bow)), quantity.Say(way))
}
