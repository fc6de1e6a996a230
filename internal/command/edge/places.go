package edge

import (
	"math"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// mostPlaces bounds the table that a slip of the finger asks for.
const mostPlaces = 10_000

// places returns the radii, as parts of the outer one, at which the angles are
// wanted: those asked for, or every tenth from the margin to the chisel's
// corner.
func (r *Result) places() []float64 {
	if r.at != "" {
		out, _ := readPlaces(r.at)
		return out
	}
	corner := r.inner / r.outer
	if !(corner < 1) {
		return nil
	}
	var out []float64
	for tenths := 10; float64(tenths)/10 > corner+0.02; tenths-- {
		out = append(out, float64(tenths)/10)
	}
	return append(out, corner)
}

func readSpan(text string) (quantity.Range, *fault.Fault) {
	return quantity.Reader{Kind: quantity.Number}.Range(text)
}

// readPlaces reads "1,0.8,0.6" or "0.2..1 by 0.1".
func readPlaces(text string) ([]float64, *fault.Fault) {
	if quantity.IsRange(text) {
		r, err := readSpan(text)
		if err != nil {
			return nil, err
		}
		return r.Values(), nil
	}
	parts := strings.Split(text, ",")
	if len(parts) > mostPlaces {
		return nil, fault.New("", "takes 10 000 places at most")
	}
	out := make([]float64, len(parts))
	for i, part := range parts {
		v, err := quantity.Parse(quantity.Number, part, quantity.Unset)
		if err != nil {
			return nil, err
		}
		out[i] = v.V
	}
	return out, nil
}

// Check returns what cannot be about the places asked for and about a point
// that leaves no lip.
func Check(d *drill.Drill) fault.List {
	r := Compute(d)
	inner, outer := r.inner, r.outer
	if inner >= outer {
		return fault.List{d.Refuse(drill.Web, "measure web and chisel again", "{} leaves no lip: the chisel edge reaches the margin", quantity.MM(r.web))}
	}
	if r.at == "" {
		return nil
	}
	places, err := readPlaces(r.at)
	if err != nil {
		return fault.List{err.In(d.At(drill.At), drill.At.String())}
	}
	for _, p := range places {
		// Four digits are what the hint shows of the corner's place.
		if p > 1 || math.IsNaN(p) || sheet.Known(outer) && p < inner/outer-5e-4 {
			return fault.List{d.Refuse(drill.At, "places are parts of the outer radius: 1 is the outer corner",
				"{} is not on the lip, which runs from {} (the chisel's corner) to 1", quantity.Num(p), quantity.Num(inner/outer))}
		}
	}
	return nil
}
