package uncertainty_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenlip/internal/testkit"
)

// covered is the least part of a figure's distribution that its interval of 95 % may
// hold: what 512 draws leave.
const covered = 0.925

// The intervals of figures with a kink that the readings come near hold what they
// should of many random draws.
func TestCoverageBesideKinks(t *testing.T) {
	const functions, draws = 10, 100_000
	cases := 0
	for name, kink := range kinks {
		for seed := range uint64(functions) {
			for _, dims := range []int{8, 24} {
				cases++
				if part := coverage(kink, dims, draws, seed); part < covered {
					t.Errorf("%s of %d readings, seed %d: the interval holds %.4f", name, dims, seed, part)
				}
			}
		}
	}
	testkit.Cases(t, "the interval of a figure beside a kink holds 92.5 % of its distribution or more", cases)
}

// kinks are figures of two sums of readings, each of mean 0 and standard deviation 1,
// with a kink that lies at a distance from the mean.
var kinks = map[string]func(a, b, at float64) float64{
	"absolute value": func(a, _, at float64) float64 { return math.Abs(a - at) },
	"larger of two":  func(a, b, at float64) float64 { return max(a, b+at) },
	"clipped":        func(a, _, at float64) float64 { return min(a, at) },
	"on one side":    func(a, b, at float64) float64 { return b * max(0, a-at) },
}

// coverage returns the part of random draws that lies within the interval of a figure
// whose two sums and whose place of the kink are drawn from a seed.
func coverage(kink func(a, b, at float64) float64, dims, draws int, seed uint64) float64 {
	rng := rand.New(rand.NewPCG(seed, 8))
	first, second := weights(rng, dims), weights(rng, dims)
	place := 2*rng.Float64() - 1
	f := func(at []float64) float64 {
		a, b := 0.0, 0.0
		for d, x := range at {
			a += rectangular(first[d], x)
			b += rectangular(second[d], x)
		}
		return kink(a, b, place)
	}
	ours := interval(dims, f)
	within := 0
	for _, v := range atRandom(dims, draws, f) {
		if v >= ours.Low && v <= ours.High {
			within++
		}
	}
	return float64(within) / float64(draws)
}

// weights are the standard deviations that readings give a sum of standard deviation 1,
// some of them far more than others, and their signs.
func weights(rng *rand.Rand, dims int) []float64 {
	out := make([]float64, dims)
	total := 0.0
	for d := range out {
		out[d] = rng.NormFloat64()
		total += out[d] * out[d]
	}
	for d := range out {
		out[d] /= math.Sqrt(total)
	}
	return out
}
