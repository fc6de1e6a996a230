package spindle

import (
	"strconv"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// trim writes v in full.
func trim(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// whole writes v to the nearest whole number.
func whole(v float64) string { return strconv.FormatFloat(v, 'f', 0, 64) }

// inShort writes out a sheet's answer, in millimetres.
func inShort(s *sheet.Sheet) string {
	if s.Answer == nil {
		return ""
	}
	out := s.Answer.Format
	for _, a := range s.Answer.Args {
		text := a.Word
		if a.Kind != quantity.Word {
			text = quantity.Format{}.Text(a.Kind, a.Gauge, a.Value)
		}
		out = strings.Replace(out, "{}", text, 1)
	}
	return out
}
