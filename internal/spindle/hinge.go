package spindle

import (
	"math"
	"strconv"

	"evenlip/internal/figure"
	"evenlip/internal/quantity"
	"evenlip/internal/reference"
)

// hinges adds, aside, the depths from which speed and feed are cut: where the hole's
// is not known well enough to tell which cut holds, neither is what hangs on it.
func (r *running) hinges(s *figure.Sheet) {
	if !figure.Known(r.depthRatio) {
		return
	}
	s.OpenAside("What speed and feed turn on")
	reference.DeepCuts(func(from float64) {
		s.Add(figure.Figure{Key: "cut_from_" + strconv.Itoa(int(from)), Label: "depth, in diameters", Value: r.depthRatio, Kind: quantity.Number,
			Limit: &reference.Band{Low: from, High: math.Inf(1)}})
	})
}
