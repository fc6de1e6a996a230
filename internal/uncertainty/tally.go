package uncertainty

import (
	"math"
	"slices"
)

// Tally keeps the results of the draws. The zero value is an empty one.
type Tally struct {
	n       int       // draws added
	width   int       // figures a draw
	figures []float64 // N of the first figure, N of the second, and so on
	words   [][]count // the words met in each place
}

type count struct {
	word  string
	draws int
}

// Add adds the results of a draw: its figures, NaN where one is unknown, and its words,
// such as a verdict or the state of a limit, "" where there is none. The draws are
// added in the order of their points, each with the same figures and words in the
// same places. It panics where there are more or fewer, and at the draw after N.
// The slices may be used again.
func (t *Tally) Add(figures []float64, words []string) {
	if t.n == 0 {
		t.width = len(figures)
		t.figures = make([]float64, N*len(figures))
		t.words = make([][]count, len(words))
	}
	if t.n == N || len(figures) != t.width || len(words) != len(t.words) {
		panic("uncertainty: a draw too many, or one unlike those before")
	}
	for i, v := range figures {
		t.figures[i*N+t.n] = v
	}
	for i, word := range words {
		t.words[i] = met(t.words[i], word)
	}
	t.n++
}

// met counts a word.
func met(counts []count, word string) []count {
	for i := range counts {
		if counts[i].word == word {
			counts[i].draws++
			return counts
		}
	}
	return append(counts, count{word, 1})
}

// draws are those of a figure, in the order they were added.
func (t *Tally) draws(figure int) []float64 { return t.figures[figure*N:][:t.n] }

// known appends to room the draws in which a figure was known.
func (t *Tally) known(figure int, room []float64) []float64 {
	for _, v := range t.draws(figure) {
		if !math.IsNaN(v) {
			room = append(room, v)
		}
	}
	return room
}

// Known returns the share of the draws in which a figure was known.
func (t *Tally) Known(figure int) float64 {
	var room [N]float64
	return float64(len(t.known(figure, room[:0]))) / float64(t.n)
}

// Interval returns the probabilistically symmetric interval of a figure, over the
// draws in which it was known: its ends are drawn values, with at most half of what
// Coverage leaves beyond either. Both are NaN where the figure was never known.
// Source: JCGM 101:2008, 7.7.
func (t *Tally) Interval(figure int) Interval {
	var room [N]float64
	known := t.known(figure, room[:0])
	if len(known) == 0 {
		return Interval{math.NaN(), math.NaN()}
	}
	slices.Sort(known)
	beyond := int((1 - Coverage) / 2 * float64(len(known)))
	return Interval{known[beyond], known[len(known)-1-beyond]}
}

// Mean returns the mean of a figure over the draws: of one that is 1 or 0 the share of
// the draws in which it is 1. It is NaN where the figure was unknown in any.
func (t *Tally) Mean(figure int) float64 {
	sum := 0.0
	for _, v := range t.draws(figure) {
		sum += v
	}
	return sum / float64(t.n)
}

// Share returns the share of the draws that gave a word in a place.
func (t *Tally) Share(place int, word string) float64 {
	for _, c := range t.words[place] {
		if c.word == word {
			return float64(c.draws) / float64(t.n)
		}
	}
	return 0
}

// Words returns the words that the draws gave in a place, the most frequent first.
func (t *Tally) Words(place int) []string {
	counts := slices.Clone(t.words[place])
	slices.SortStableFunc(counts, func(a, b count) int { return b.draws - a.draws })
	out := make([]string, len(counts))
	for i, c := range counts {
		out[i] = c.word
	}
	return out
}

// Blame returns which of the values of Point, dims in all, accounts for most of a
// figure's spread, or -1 where the figure does not spread. The draws are parted into
// eighths by each value in turn, from its least to its largest, and the mean of the
// figure is taken over each eighth: the value whose means part most is the one. A
// slope would see nothing where the figure has its least or largest value.
func (t *Tally) Blame(figure, dims int) int {
	if !t.spreads(figure) {
		return -1
	}
	const parts = 8
	apart, at := t.apart(figure), points()
	most, blamed := 0.0, -1
	for d := range dims {
		var sums [parts]float64
		for i, v := range apart[:t.n] {
			sums[int(parts*at[i][d])] += v
		}
		between := 0.0
		for _, sum := range sums {
			between += sum * sum
		}
		if between > most {
			most, blamed = between, d
		}
	}
	return blamed
}

// Finer says what to read again where a figure is too much in doubt: the reading that
// accounts for most of its spread, or where the draws are all alike and only the
// readings by themselves give something else, all of them.
func (t *Tally) Finer(figure int, draws []Draw) string {
	if k := t.Blame(figure, len(draws)); k >= 0 {
		return draws[k].Reading.String() + " on a finer gauge"
	}
	return "all of it on finer gauges"
}

// spreads reports whether the known draws of a figure differ by more than rounding.
func (t *Tally) spreads(figure int) bool {
	whole := Interval{math.Inf(1), math.Inf(-1)}
	for _, v := range t.draws(figure) {
		if finite(v) {
			whole.Low, whole.High = min(whole.Low, v), max(whole.High, v)
		}
	}
	return whole.U() > 0
}

// apart returns how far each draw of a figure lies from their mean, zero where it is
// unknown or infinite.
func (t *Tally) apart(figure int) (out [N]float64) {
	total, known := 0.0, 0.0
	for _, v := range t.draws(figure) {
		if finite(v) {
			total += v
			known++
		}
	}
	for i, v := range t.draws(figure) {
		if finite(v) {
			out[i] = v - total/known
		}
	}
	return out
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
