package point

import "math"

// solve returns a root of f between lo and hi, to the last digits of the
// larger of them. f must be continuous and change sign, or be zero at an end;
// NaN when it does neither or is NaN on the way.
//
// The step is regula falsi, moved toward the middle and kept within a slack of
// it that halves each time, so that no more steps are ever needed than one
// above bisection's (the method of Oliveira and Takahashi, 2020).
func solve(f func(float64) float64, lo, hi float64) float64 {
	flo, fhi := f(lo), f(hi)
	switch {
	case flo == 0:
		return lo
	case fhi == 0:
		return hi
	case !(flo < 0 && fhi > 0 || flo > 0 && fhi < 0):
		return math.NaN()
	}
	width := hi - lo
	eps := math.Max(0x1p-52*math.Max(math.Abs(lo), math.Abs(hi)), 1e-300)
	steps := math.Ceil(math.Log2(width/(2*eps))) + 1
	for slack := eps * math.Exp2(steps); hi-lo > 2*eps; slack /= 2 {
		// Kept off the ends, the step closes the bracket from both sides.
		at := math.Max(lo+eps, math.Min(hi-eps, guardedStep(lo, hi, flo, fhi, slack, width)))
		switch fat := f(at); {
		case fat == 0:
			return at
		case fat != fat:
			return fat
		case (fat < 0) == (flo < 0):
			lo, flo = at, fat
		default:
			hi, fhi = at, fat
		}
	}
	return lo + (hi-lo)/2
}

// guardedStep returns the next place to try inside the bracket: where the
// chord is zero, moved toward the middle by a part of the bracket squared, and
// no farther from the middle than the slack allows.
func guardedStep(lo, hi, flo, fhi, slack, width float64) float64 {
	mid := lo + (hi-lo)/2
	chord := lo + (hi-lo)*(flo/(flo-fhi))
	reach := math.Max(0, slack-(hi-lo)/2)
	nudge := 0.2 / width * (hi - lo) * (hi - lo)
	toward := math.Copysign(1, mid-chord)
	if nudge > math.Abs(mid-chord) {
		return mid
	}
	at := chord + toward*nudge
	if math.Abs(at-mid) > reach {
		return mid - toward*reach
	}
	return at
}

// golden is the part of a bracket that is left of it when one of the two places tried
// in it is tried again in the next: (sqrt(5) - 1) / 2.
const golden = math.Phi - 1

// summit returns where between lo and hi f is highest, to within the distance off, by
// golden-section search. f must have one summit there; an end may be it.
func summit(f func(float64) float64, lo, hi, off float64) float64 {
	a, b := hi-golden*(hi-lo), lo+golden*(hi-lo)
	fa, fb := f(a), f(b)
	for hi-lo > 2*off {
		if fa < fb {
			lo, a, fa = a, b, fb
			b = lo + golden*(hi-lo)
			fb = f(b)
		} else {
			hi, b, fb = b, a, fa
			a = hi - golden*(hi-lo)
			fa = f(a)
		}
	}
	return lo + (hi-lo)/2
}

// cubic is a polynomial c[0] + c[1] t + c[2] t^2 + c[3] t^3.
type cubic [4]float64

// at returns the polynomial's value.
func (c cubic) at(t float64) float64 { return c[0] + t*(c[1]+t*(c[2]+t*c[3])) }

// turns returns the real roots of the derivative in rising order, and their
// number; a double root counts as none.
func (c cubic) turns() (t [2]float64, n int) {
	a, b, e := 3*c[3], c[2], c[1]
	disc := b*b - a*e
	if !(disc > 0) {
		return t, 0
	}
	q := -(b + math.Copysign(math.Sqrt(disc), b))
	if a == 0 {
		return [2]float64{e / q}, 1
	}
	return [2]float64{math.Min(q/a, e/q), math.Max(q/a, e/q)}, 2
}

// rootsIn returns the places between lo and hi where the polynomial changes
// sign, and their number. Between its turns it only rises or only falls, so
// each piece holds one at most.
func (c cubic) rootsIn(lo, hi float64) (roots [3]float64, n int) {
	turns, m := c.turns()
	from := lo
	for i := 0; i <= m; i++ {
		to := hi
		if i < m {
			to = math.Min(hi, math.Max(lo, turns[i]))
		}
		if t := solve(c.at, from, to); t == t && from < to {
			roots[n] = t
			n++
		}
		from = to
	}
	return roots, n
}
