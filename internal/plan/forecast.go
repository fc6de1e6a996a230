package plan

import (
	"math"

	"evenlip/internal/point"
)

// Job is a drill as it was measured and what its regrind is to keep to.
type Job struct {
	Wear    Wear
	Lips    Lips
	Body    Body
	CleanUp float64 // allowance beyond the wear
	Asks    Cause   // what wants the flanks ground all over: Reshaping, TouchUp or none
	Waits   bool    // it is not ground now, whatever a grind would take
	Every   float64 // usual stock a grind; NaN lets it follow from this one's
	Least   float64 // the least that a usual grind is then counted with
	Deepest float64 // the deepest wear that it is counted with: any that is deeper is a mishap
}

// Forecast is the regrind of a drill and the life that is left; NaN where that is
// not known.
type Forecast struct {
	Stock  Stock   // what comes off now: nothing where the grind waits
	Would  Stock   // what a grind would take, now or later
	Usual  float64 // stock of every later grind
	Loss   Loss    // what of the drill comes off now
	First  Loss    // what the next grind takes, now or later
	Now    State   // as measured
	Ground State   // after this grind
	Done   State   // after this grind, thinned where that pays
	Left   float64 // grinds, this one included
	End    End     // what forbids one more
}

// unknown returns the forecast of a drill of which nothing can be foretold.
func unknown() Forecast {
	nan := math.NaN()
	f := Forecast{Usual: nan, First: even(nan), Loss: even(nan), Left: nan}
	f.Would = Stock{Steep1: nan, Steep2: nan, CleanUp: nan, Lip1: Ends{nan, nan}, Lip2: Ends{nan, nan}, Total: nan}
	for i := range f.Would.By {
		f.Would.By[i] = nan
	}
	f.Now = State{nan, nan, nan, nan, nan, nan, nan, nan, false}
	f.Stock, f.Ground, f.Done = f.Would, f.Now, f.Now
	return f
}

// ForecastOf plans the regrind of j. Where nothing is to come off now, the first
// grind of the life is a usual one. Errors: see [StockOf]; a [*point.DomainError]
// also for a usual stock that is not above zero.
func ForecastOf(j *Job) (Forecast, error) {
	f := unknown()
	would, err := StockOf(j.Wear, j.Lips, j.CleanUp, j.Asks)
	if err != nil {
		return f, err
	}
	if j.Every <= 0 || math.IsInf(j.Every, 0) {
		return f, &point.DomainError{Quantity: "usual stock", Why: "must be greater than zero and finite", Value: j.Every}
	}
	f.Would, f.Stock, f.Usual = would, would, j.Every
	if j.Waits {
		f.Stock = Stock{}
	}
	if math.IsNaN(f.Usual) {
		f.Usual = math.Max(would.Usual(j.Deepest), j.Least)
	}
	f.Loss = f.Stock.Loss(&j.Lips)
	f.First = f.Loss
	if f.First == (Loss{}) {
		f.First = even(f.Usual)
	}
	b := &j.Body
	f.Now, f.Ground, f.Done = b.now(), b.Ground(f.Loss), b.After(f.Loss)
	f.Left, f.End = b.Left(f.First, f.Usual)
	return f, nil
}
