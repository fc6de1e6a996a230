package quantity

import (
	"math"
	"strings"

	"evenlip/internal/fault"
)

// Range is a run of values, one row of a table a step.
type Range struct {
	From, To, Step Value
}

// mostSteps bounds a table that a slip of the finger asks for.
const mostSteps = 10_000

// takesRange is what a message about a range adds to what the kind takes.
const takesRange = ", or a range such as 0mm..6mm by 0.5mm"

// IsRange reports whether a text is meant as a range.
func IsRange(text string) bool { return strings.Contains(text, "..") }

// Range reads "0mm..6mm by 0.5mm". The step must be above zero and lead from the first
// value to the last in 10 000 steps at most. Values without a unit take that of the
// last one that has one, and so do those beside it: of a reading of two lips, the other
// lip's.
func (r Reader) Range(text string, beside ...*Value) (Range, *fault.Fault) {
	from, rest, dots := strings.Cut(text, "..")
	to, step, by := strings.Cut(rest, " by ")
	if !dots || !by {
		return Range{}, r.refuseRange(text, "write first..last by step")
	}
	var out Range
	values := [...]*Value{&out.From, &out.To, &out.Step}
	for i, part := range [...]string{from, to, step} {
		var err *fault.Fault
		if *values[i], err = r.One(part); err != nil {
			return Range{}, err
		}
	}
	if err := r.agree(append(values[:], beside...)...); err != nil {
		return Range{}, err
	}
	if hint := out.fault(); hint != "" {
		return Range{}, r.refuseRange(text, hint)
	}
	return out, nil
}

func (r Reader) refuseRange(text, hint string) *fault.Fault {
	return Refusal(text, r.Kind.Takes()+takesRange, hint)
}

func (r Range) fault() string {
	switch {
	case r.To.V < r.From.V:
		return "the first value is the smaller one"
	case r.Step.V <= 0:
		return "the step is above zero"
	case (r.To.V-r.From.V)/r.Step.V > mostSteps:
		return "a range has at most 10000 steps"
	}
	return ""
}

// slack is the part of a step that rounding may take: the last step of 0..0.3 by
// 0.1 falls short by that.
const slack = 1e-9

// Len returns how many values the range has.
func (r Range) Len() int { return int(math.Floor((r.To.V-r.From.V)/r.Step.V+slack)) + 1 }

// Values returns the values of the range in the kind's own unit, the first
// and, if the steps meet it, the last included.
func (r Range) Values() []float64 {
	out := make([]float64, r.Len())
	for i := range out {
		out[i] = r.From.V + float64(i)*r.Step.V
	}
	return out
}

// StopsShort returns the last of the values, in the kind's own unit, and whether
// the steps pass the end of the range without meeting it.
func (r Range) StopsShort() (last float64, short bool) {
	values := r.Values()
	last = values[len(values)-1]
	return last, r.To.V-last > 2*slack*r.Step.V
}
