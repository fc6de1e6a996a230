package uncertainty_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenlip/internal/testkit"
	"evenlip/internal/uncertainty"
)

var guide = testkit.Source{Work: "JCGM 101:2008", Sure: testkit.Recalled + ", high"}

// An example is a model of the guide with the interval that it prints: the shortest,
// which for these is the symmetric one as well.
type example struct {
	place, what string
	dims        int
	model       func(at []float64) float64
	low, high   float64
	printed     float64 // half the last printed digit
	unit        string
}

// rectangular is a distribution of mean 0 and that standard deviation, at a part of it.
func rectangular(u, at float64) float64 {
	return uncertainty.Rectangular(0, u*2*math.Sqrt(3), at)
}

// normal is the same of a normal distribution.
func normal(u, at float64) float64 { return u * math.Sqrt2 * math.Erfinv(2*at-1) }

var examples = []example{
	{"9.2.3, additive model, four rectangular distributions", "standard deviations 1", 4, func(at []float64) float64 {
		return rectangular(1, at[0]) + rectangular(1, at[1]) + rectangular(1, at[2]) + rectangular(1, at[3])
	}, -3.88, 3.88, 0.005, ""},
	{"9.2.4, additive model, four rectangular distributions", "standard deviations 1, 1, 1 and 10", 4, func(at []float64) float64 {
		return rectangular(1, at[0]) + rectangular(1, at[1]) + rectangular(1, at[2]) + rectangular(10, at[3])
	}, -17.0, 17.0, 0.05, ""},
	{"9.3, mass calibration", "difference of mass", 5, calibration, 1.0834, 1.3825, 0.00005, "mg"},
}

// calibration is the mass of a weight of 100 g over its nominal mass, mg: weighed in air
// against a reference and a small weight, of densities in kg/m3.
func calibration(at []float64) float64 {
	reference := 100_000 + normal(0.050, at[0])
	small := 1.234 + normal(0.020, at[1])
	air := uncertainty.Rectangular(1.20, 0.20, at[2])
	weight := uncertainty.Rectangular(8000, 2000, at[3])
	against := uncertainty.Rectangular(8000, 100, at[4])
	return (reference+small)*(1+(air-1.2)*(1/weight-1/against)) - 100_000
}

// The guide's examples, by the draws: a few per cent of U are allowed.
func TestExamplesOfTheGuide(t *testing.T) {
	const few = 0.05
	for _, e := range examples {
		ours := interval(e.dims, e.model)
		allowed := few * (e.high - e.low) / 2
		from := testkit.Against(t, guide, e.place).Because("512 draws, where the guide takes a million")
		from.Within(e.what+", low end", ours.Low, e.low, allowed, e.unit)
		from.Within(e.what+", high end", ours.High, e.high, allowed, e.unit)
	}
}

// The same by many random draws, as the guide does it: so the models above are its.
// Where a distribution is flat, its shortest interval lies to one side or the other
// by chance, within a hundredth of U.
func TestExamplesAtRandom(t *testing.T) {
	const draws = 400_000
	for _, e := range examples {
		all := atRandom(e.dims, draws, e.model)
		slices.Sort(all)
		low, high := all[draws*25/1000], all[draws*975/1000]
		allowed := e.printed + 0.01*(e.high-e.low)/2
		if math.Abs(low-e.low) > allowed || math.Abs(high-e.high) > allowed {
			t.Errorf("%s, %s: %g to %g, printed is %g to %g", e.place, e.what, low, high, e.low, e.high)
		}
	}
}

// tally is that of one figure over the draws.
func tally(dims int, f func(at []float64) float64) *uncertainty.Tally {
	var out uncertainty.Tally
	for i := range uncertainty.N {
		out.Add([]float64{f(uncertainty.Point(i, dims))}, nil)
	}
	return &out
}

func interval(dims int, f func(at []float64) float64) uncertainty.Interval {
	return tally(dims, f).Interval(0)
}

// atRandom returns a figure of as many random draws.
func atRandom(dims, draws int, f func(at []float64) float64) []float64 {
	rng := rand.New(rand.NewPCG(1, 2))
	at, out := make([]float64, dims), make([]float64, draws)
	for i := range out {
		for d := range at {
			at[d] = rng.Float64()
		}
		out[i] = f(at)
	}
	return out
}

// The standard deviations of the draws: of a reading on a gauge that resolves 1, and of
// the end gauge of 50 mm, whose readings move it by 25, 9.7, 2.9 and 16.6 nm.
func TestStandardUncertainty(t *testing.T) {
	deviation := func(dims int, f func(at []float64) float64) float64 {
		squares := 0.0
		for i := range uncertainty.N {
			v := f(uncertainty.Point(i, dims))
			squares += v * v
		}
		return math.Sqrt(squares / uncertainty.N)
	}
	one := deviation(1, func(at []float64) float64 { return uncertainty.Rectangular(0, 1, at[0]) })
	testkit.Against(t, testkit.Metrology, "F.2.2.1, standard uncertainty of a reading that resolves 1").Within("u", one, 0.29, 0.005, "")
	gauge := deviation(4, func(at []float64) float64 {
		return rectangular(25, at[0]) + rectangular(9.7, at[1]) + rectangular(2.9, at[2]) + rectangular(16.6, at[3])
	})
	testkit.Against(t, testkit.Metrology, "H.1, combined standard uncertainty of an end gauge").Within("to the nearest nm", math.Round(gauge), 32, 0, "nm")
}
