package cli

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/figure"
)

// lipsTakenEven says how the lips are drawn without a height, and where lips of
// two angles then meet.
func (w *drawing) lipsTakenEven() {
	why := "no lip height was read"
	if w.d.Has(drill.LipLength) {
		why += ", and lip-length gives none"
	}
	const drawn = "{}: both corners are drawn at one height"
	if off := math.Abs(w.first().Offset); off < leastHeight {
		w.s.Find("lips-taken-even", figure.Note, drawn, figure.Say(why))
	} else {
		w.s.Find("lips-taken-even", figure.Note, drawn+", and lips of these angles then meet {} off the axis", figure.Say(why), figure.Len(off))
	}
}
