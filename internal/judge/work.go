package judge

import (
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// digsIn reports whether a helix digs in in the work.
func digsIn(m *handbook.Material) bool { return m != nil && m.StraightFlutes }

// FlatWanted returns the land along the lips that the work wants; false where it wants
// none.
func (r *Result) FlatWanted() (handbook.Band, bool) {
	return handbook.LipFlat, digsIn(r.Drill.Material)
}

// DigsIn adds a remark for work in which a helix digs in, unless the lips are flattened.
func (r *Result) DigsIn(s *sheet.Sheet) {
	if !known(r.Face.Flat) {
		DigsIn(s, r.Drill.Material)
	}
}

// DigsIn adds a remark for work in which a helix digs in: its lips are ground
// flat, which is part of grinding the point.
func DigsIn(s *sheet.Sheet, m *handbook.Material) {
	if digsIn(m) {
		land := handbook.LipFlat
		s.Extra = append(s.Extra, handbook.FluteSource, land.Source)
		s.Find("straight-flutes", sheet.Note, "{} is best drilled with straight flutes, or the lips flattened to no rake, a land of {} to {} along each, parallel to the axis: a helix digs in",
			quantity.Say(m.Name), quantity.MM(land.Low), quantity.MM(land.High))
	}
}

// Burns adds a remark for work whose chips and dust burn.
func Burns(s *sheet.Sheet, m *handbook.Material) {
	if m != nil && m.Burns {
		s.Extra = append(s.Extra, handbook.FireSource)
		s.Find("fire", sheet.Warn, "chips and grinding dust of this metal burn: keep them swept up and dry, no water on a fire; ask for the shop's own rules before you start")
	}
}

// Hardens adds a remark for work that hardens where the drill rubs.
func Hardens(s *sheet.Sheet, m *handbook.Material) {
	if m != nil && m.Hardens {
		s.Extra = append(s.Extra, handbook.HardenSource)
		s.Find("work-hardens", sheet.Note, "{} hardens where the drill rubs: keep it feeding, neither dwell nor let it rub, and change a drill that is dulling", quantity.Say(m.Name))
	}
}
