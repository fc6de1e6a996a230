package spindle

import (
	"math"
	"strconv"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// hinges adds, aside, the depths from which speed and feed are cut: where the hole's
// is not known well enough to tell which cut holds, neither is what hangs on it.
func (r *running) hinges(s *sheet.Sheet) {
	if !sheet.Known(r.depthRatio) {
		return
	}
	s.OpenAside("What speed and feed turn on")
	handbook.DeepCuts(func(from float64) {
		s.Add(sheet.Figure{Key: "cut_from_" + strconv.Itoa(int(from)), Label: "depth, in diameters", Value: r.depthRatio, Kind: quantity.Number,
			Limit: &handbook.Band{Low: from, High: math.Inf(1)}})
	})
}
