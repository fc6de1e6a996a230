package uncertainty_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/testkit"
	"evenlip/internal/uncertainty"
)

// figures are values of one figure, as many as a tally takes or fewer.
func figures(t *rapid.T) []float64 {
	return rapid.SliceOfN(rapid.Float64Range(-1e3, 1e3), 1, uncertainty.N).Draw(t, "figures")
}

func intervalOf(figures []float64) uncertainty.Interval {
	var t uncertainty.Tally
	for _, v := range figures {
		t.Add([]float64{v}, nil)
	}
	return t.Interval(0)
}

func TestIntervalIsOfTheValuesAlone(t *testing.T) {
	testkit.Property(t, "the order of the draws does not change an interval", func(t *rapid.T) {
		values := figures(t)
		if one, other := intervalOf(values), intervalOf(rapid.Permutation(values).Draw(t, "other order")); one != other {
			t.Fatalf("%+v in one order, %+v in another", one, other)
		}
	})
}

func TestIntervalIsSymmetric(t *testing.T) {
	testkit.Property(t, "what is measured the other way round has the interval the other way round", func(t *rapid.T) {
		values := figures(t)
		one := intervalOf(values)
		for i := range values {
			values[i] = -values[i]
		}
		if other := intervalOf(values); one.Low != -other.High || one.High != -other.Low {
			t.Fatalf("%+v, and %+v the other way round", one, other)
		}
	})
}

func TestIntervalFollowsItsFigure(t *testing.T) {
	testkit.Property(t, "a figure that grows with another has the interval that follows from the other's", func(t *rapid.T) {
		values := figures(t)
		grown := func(v float64) float64 { return math.Cbrt(v) + 2*v - 5 }
		one := intervalOf(values)
		for i := range values {
			values[i] = grown(values[i])
		}
		if other := intervalOf(values); other.Low != grown(one.Low) || other.High != grown(one.High) {
			t.Fatalf("%+v becomes %+v", one, other)
		}
	})
}

func TestIntervalHoldsItsPart(t *testing.T) {
	testkit.Property(t, "at most 2.5 % of the draws lie beyond each end of an interval, and more would beyond the next draw", func(t *rapid.T) {
		values := figures(t)
		got := intervalOf(values)
		below, upTo := 0, 0
		for _, v := range values {
			if v < got.Low {
				below++
			}
			if v <= got.Low {
				upTo++
			}
		}
		if n := len(values); 40*below > n || 40*upTo <= n {
			t.Fatalf("of %d draws %d are below %g, %d not above it", n, below, got.Low, upTo)
		}
	})
}

// One reading by itself: its interval is 95 % of its step, at the reading.
func TestIntervalOfAReading(t *testing.T) {
	testkit.Property(t, "a reading's own interval is 95 % of its step, to a cell of the draws", func(t *rapid.T) {
		read, step := rapid.Float64Range(-100, 100).Draw(t, "read"), rapid.Float64Range(0.001, 10).Draw(t, "step")
		d := rapid.IntRange(0, uncertainty.Dims-1).Draw(t, "which")
		got := interval(uncertainty.Dims, func(at []float64) float64 { return uncertainty.Rectangular(read, step, at[d]) })
		cell := step / uncertainty.N
		if math.Abs(got.U()-uncertainty.Coverage*step/2) > cell || math.Abs((got.Low+got.High)/2-read) > 1e-12*100 {
			t.Fatalf("%+v", got)
		}
	})
}

// What is unknown in some draws is judged by the others, and what always is has no
// interval; a figure that does not change has an uncertainty of 0.
func TestUnknown(t *testing.T) {
	var tally uncertainty.Tally
	for i := range 400 {
		sometimes := float64(i)
		if i%4 == 0 {
			sometimes = math.NaN()
		}
		tally.Add([]float64{math.NaN(), sometimes, 7}, nil)
	}
	if got := tally.Interval(0); !math.IsNaN(got.Low) || !math.IsNaN(got.High) || tally.Known(0) != 0 {
		t.Errorf("never known: %+v, known in %g", got, tally.Known(0))
	}
	// 300 values are known, all but the multiples of 4: 7 lie beyond either end.
	if got := tally.Interval(1); got != (uncertainty.Interval{Low: 10, High: 390}) || tally.Known(1) != 0.75 {
		t.Errorf("sometimes known: %+v, known in %g", got, tally.Known(1))
	}
	if got := tally.Interval(2); got.U() != 0 || got.Low != 7 || tally.Known(2) != 1 {
		t.Errorf("always 7: %+v, known in %g", got, tally.Known(2))
	}
	if got := (uncertainty.Interval{Low: 0.3, High: math.Nextafter(0.3, 1)}).U(); got != 0 {
		t.Errorf("ends that differ by rounding: U %g", got)
	}
}

func TestWords(t *testing.T) {
	testkit.Property(t, "the shares of the words are their parts of the draws, the most frequent word stands first", func(t *rapid.T) {
		drawn := rapid.SliceOfN(rapid.SampledFrom([]string{"fit", "regrind", "", "retire"}), 1, uncertainty.N).Draw(t, "words")
		var tally uncertainty.Tally
		want := map[string]int{}
		for _, word := range drawn {
			tally.Add(nil, []string{"always", word})
			want[word]++
		}
		total, last := 0.0, 1.0
		words := tally.Words(1)
		for _, word := range words {
			share := tally.Share(1, word)
			if share != float64(want[word])/float64(len(drawn)) || share > last {
				t.Fatalf("%q: share %g of %v", word, share, want)
			}
			total, last = total+share, share
		}
		if len(words) != len(want) || math.Abs(total-1) > 1e-12 || tally.Share(1, "never") != 0 || tally.Share(0, "always") != 1 {
			t.Fatalf("words %q of %v, shares %g in all", words, want, total)
		}
	})
}

// The reading to blame, also where a slope at the reading itself is nothing, or all.
func TestBlame(t *testing.T) {
	const dims = 12
	for name, f := range map[string]func(at []float64) float64{
		"a sum":               func(at []float64) float64 { return at[5] + 0.7*at[2] - 0.8*at[9] },
		"an absolute value":   func(at []float64) float64 { return math.Abs(at[5]-0.5) + 0.2*at[2] },
		"a larger of two":     func(at []float64) float64 { return max(at[5], 0.2*at[2]+0.4) },
		"rarely another":      func(at []float64) float64 { return math.Floor(at[5] + 0.01) },
		"a jump":              func(at []float64) float64 { return math.Floor(at[5]+0.3) + 0.3*at[2] },
		"often unknown":       func(at []float64) float64 { return 100 + at[5] + 0*math.Sqrt(at[2]-0.4) },
		"infinite":            func(at []float64) float64 { return 1/math.Floor(32*at[2]) + 3*at[5] },
		"steep in the middle": func(at []float64) float64 { return math.Tanh(1e6*(at[2]-0.5)) + 4*at[5] },
	} {
		if got := tally(dims, f).Blame(0, dims); got != 5 {
			t.Errorf("%s: value %d", name, got)
		}
	}
	for name, f := range map[string]func(at []float64) float64{
		"no spread": func([]float64) float64 { return 3 },
		"unknown":   func([]float64) float64 { return math.NaN() },
	} {
		if got := tally(dims, f).Blame(0, dims); got != -1 {
			t.Errorf("%s: value %d", name, got)
		}
	}
}

func TestBlameFollowsTheReading(t *testing.T) {
	testkit.Property(t, "the value that a figure depends on by far is to blame, whichever it is", func(t *rapid.T) {
		dims := rapid.IntRange(1, uncertainty.Dims).Draw(t, "values")
		d := rapid.IntRange(0, dims-1).Draw(t, "which")
		steps := rapid.SliceOfN(rapid.Float64Range(-1, 1), dims, dims).Draw(t, "steps")
		steps[d] = 3 * math.Sqrt(float64(dims))
		got := tally(dims, func(at []float64) float64 {
			sum := 0.0
			for i, step := range steps {
				sum += step * at[i]
			}
			return sum
		}).Blame(0, dims)
		if got != d {
			t.Fatalf("value %d, not %d", got, d)
		}
	})
}

func TestAddRefuses(t *testing.T) {
	for name, draw := range map[string]struct {
		after   int
		figures []float64
		words   []string
	}{
		"a draw too many":  {uncertainty.N, []float64{1, 2}, []string{"fit"}},
		"a figure too few": {1, []float64{1}, []string{"fit"}},
		"a word too many":  {1, []float64{1, 2}, []string{"fit", "thin"}},
	} {
		t.Run(name, func(t *testing.T) {
			var tally uncertainty.Tally
			for range draw.after {
				tally.Add([]float64{1, 2}, []string{"fit"})
			}
			defer func() {
				if told, _ := recover().(string); !strings.HasPrefix(told, "uncertainty:") {
					t.Errorf("it is taken, or told as %q", told)
				}
			}()
			tally.Add(draw.figures, draw.words)
		})
	}
}

func TestRounded(t *testing.T) {
	for _, c := range []struct {
		low, high        float64
		decimals         int
		u, lower, higher float64
	}{
		{0.109, 0.192, 2, 0.04, 0.11, 0.19},
		{0.1, 0.1192, 2, 0.01, 0.1, 0.12}, // 0.0096
		{-1.25, 4.9, 0, 3, -1, 5},
		{61.2, 113.6, -1, 30, 60, 110},
		{1234, 5678, -3, 2000, 1000, 6000},
		{3, 3, 0, 0, 3, 3},
		{-0.001, 0.5, 1, 0.3, 0, 0.5},
		{-0.00041, 0.00031, 4, 0.0004, -0.0004, 0.0003},
	} {
		v := uncertainty.Interval{Low: c.low, High: c.high}
		u, ends := v.Rounded()
		if v.Decimals() != c.decimals || u != c.u || ends.Low != c.lower || math.Signbit(ends.Low) != (c.lower < 0) || ends.High != c.higher {
			t.Errorf("%+v: %d decimals, U %g, %+v", v, v.Decimals(), u, ends)
		}
	}
	for _, v := range []uncertainty.Interval{{Low: math.NaN(), High: math.NaN()}, {Low: 0, High: math.Inf(1)}} {
		if v.Decimals() != 0 || v.U() == 0 {
			t.Errorf("%+v: U %g, %d decimals", v, v.U(), v.Decimals())
		}
	}
}

func TestRoundedIsWhatIsPrinted(t *testing.T) {
	testkit.Property(t, "an uncertainty is rounded to its first figure, by half a unit of it at most", func(t *rapid.T) {
		low := rapid.Float64Range(-1e3, 1e3).Draw(t, "low")
		width := math.Pow(10, rapid.Float64Range(-6, 4).Draw(t, "digits of the width"))
		v := uncertainty.Interval{Low: low, High: low + width}
		u, ends := v.Rounded()
		unit := math.Pow(10, float64(-v.Decimals()))
		if figure := u / unit; math.Abs(figure-math.Round(figure)) > 1e-6 || figure < 0.999 || figure > 9.001 {
			t.Fatalf("U %g is %g units of %g", u, figure, unit)
		}
		for _, r := range [][2]float64{{v.U(), u}, {v.Low, ends.Low}, {v.High, ends.High}} {
			if math.Abs(r[0]-r[1]) > 0.501*unit {
				t.Fatalf("%g becomes %g in units of %g", r[0], r[1], unit)
			}
		}
		if v.Decimals() >= 0 {
			if text := strconv.FormatFloat(u, 'f', -1, 64); len(text) > 2+v.Decimals() {
				t.Fatalf("U prints as %s", text)
			}
		}
	})
}

// A reading is drawn from half a step below it to half a step above, and no further.
func TestRectangular(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 100 {
		read, step := rng.NormFloat64(), rng.Float64()
		for _, c := range [][2]float64{{0, read - step/2}, {0.5, read}, {1, read + step/2}} {
			if got := uncertainty.Rectangular(read, step, c[0]); math.Abs(got-c[1]) > 1e-15 {
				t.Errorf("%g of a step of %g around %g: %g", c[0], step, read, got)
			}
		}
	}
}
