package plan

import (
	"math"

	"evenlip/internal/cutting"
)

// Job is a drill as it was measured and what its regrind is to keep to.
type Job struct {
	Wear    Wear
	Lips    Lips
	Body    Body
	CleanUp float64 // allowance beyond the wear
	Reshape bool    // the flanks are of the wrong shape and are ground anew
	Waits   bool    // it is not ground now, whatever a grind would take
	Every   float64 // usual stock a grind; NaN lets it follow from this one's
	Least   float64 // the least that a usual grind is then counted with
	Deepest float64 // the deepest wear that it is counted with: any that is deeper is a mishap
}

// Forecast is the regrind of a drill and the life that is left.
type Forecast struct {
	Stock  Stock   // what comes off now: nothing where the grind waits
	Would  Stock   // what a grind would take, now or later
	Usual  float64 // stock of every later grind
	Now    State   // as measured
	Ground State   // after this grind
	Done   State   // after this grind, thinned where that pays
	// Thinning brings the ground drill to Done; Needed is false where it does
	// not pay or the chisel edge is not known.
	Thinning cutting.Thinning
	Grinds   []State
	End      End
}

// ForecastOf plans the regrind of j. Where nothing is to come off now, the first
// grind of the life is a usual one. Errors: see [StockOf] and [Body.Life].
func ForecastOf(j Job) (Forecast, error) {
	would, err := StockOf(j.Wear, j.Lips, j.CleanUp, j.Reshape)
	if err != nil {
		return Forecast{}, err
	}
	stock := would
	if j.Waits {
		stock = Stock{}
	}
	b := &j.Body
	p := Forecast{Stock: stock, Would: would, Usual: j.Every, Now: b.now(), Ground: b.Ground(stock.Total), Done: b.After(stock.Total)}
	if math.IsNaN(p.Usual) {
		p.Usual = math.Max(would.Usual(j.Deepest), j.Least)
	}
	if p.Done.Thinned {
		thick := cutting.Thick{D: b.D, Web: p.Ground.Web, ChiselAngle: b.ChiselAfter, Feed: b.Feed}
		if p.Thinning, err = thick.ToRatio(b.NewChisel); err != nil {
			return Forecast{}, err
		}
	}
	first := stock.Total
	if first == 0 {
		first = p.Usual
	}
	p.Grinds, p.End, err = b.Life(first, p.Usual)
	return p, err
}
