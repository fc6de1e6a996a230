package judge

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Curved says in s that lips are curved, which bow by so much, seen from the end, on
// flutes made, or only taken as made, for a point angle.
func Curved(s *sheet.Sheet, bow, made float64, taken bool) {
	as, way := "", "ahead of"
	if taken {
		as = "taken as "
		s.Extra = append(s.Extra, handbook.FlutePointSource())
	}
	if bow < 0 {
		way = "behind"
	}
	s.Find("lips-curved", sheet.Note, "on flutes {}made for a point of {} the lips are not straight at this angle: seen from the end they stand up to {} {} a straight line",
		quantity.Say(as), quantity.Set(made), quantity.MM(math.Abs(bow)), quantity.Say(way))
}
