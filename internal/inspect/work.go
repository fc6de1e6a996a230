package inspect

import (
	"evenlip/internal/figure"
	"evenlip/internal/reference"
)

// DigsIn adds a remark for work in which a helix digs in: its lips are ground
// flat, which is part of grinding the point.
func DigsIn(s *figure.Sheet, m *reference.Material) {
	if flute, source := reference.FluteFor(m, false); flute == reference.StraightFlutes {
		s.Extra = append(s.Extra, source)
		s.Find("straight-flutes", figure.Note, "{} is best drilled with straight flutes, or the lips flattened to no rake: a helix digs in", figure.Say(m.Name))
	}
}

// Hardens adds a remark for work that hardens where the drill rubs.
func Hardens(s *figure.Sheet, m *reference.Material) {
	if m != nil && m.Hardens {
		s.Extra = append(s.Extra, reference.HardenSource())
		s.Find("work-hardens", figure.Note, "{} hardens where the drill rubs: keep it feeding, neither dwell nor let it rub, and change a drill that is dulling", figure.Say(m.Name))
	}
}
