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

// ParseRange reads "0mm..6mm by 0.5mm", each value as Parse reads it. The step
// must be above zero and lead from the first value to the last in 10 000 steps
// at most. Values without a unit take that of the last one that has one.
func ParseRange(kind Kind, text string, bare System) (Range, *fault.Fault) {
	return reader{kind, bare, false}.span(text)
}

// ParseRangeSigned is to ParseRange as ParsePairSigned is to ParsePair.
func ParseRangeSigned(kind Kind, text string, bare System) (Range, *fault.Fault) {
	return reader{kind, bare, true}.span(text)
}

// ParseRangeBeside reads a range and, of the same reading, the one value of the other
// lip. As in a pair, a unit that stands with either holds for both.
func ParseRangeBeside(kind Kind, text, other string, bare System, signed bool) (span Range, beside Value, err *fault.Fault) {
	r := reader{kind, bare, signed}
	if beside, err = r.one(other); err != nil {
		return Range{}, Value{}, err
	}
	if span, err = r.span(text, &beside); err != nil {
		return Range{}, Value{}, err
	}
	return span, beside, nil
}

func (r reader) span(text string, beside ...*Value) (Range, *fault.Fault) {
	from, rest, dots := strings.Cut(text, "..")
	to, step, by := strings.Cut(rest, " by ")
	if !dots || !by {
		return Range{}, r.refuseRange(text, "write first..last by step")
	}
	values := make([]Value, 3, 4)
	for i, part := range [...]string{from, to, step} {
		v, err := r.one(part)
		if err != nil {
			return Range{}, err
		}
		values[i] = v
	}
	for _, v := range beside {
		values = append(values, *v)
	}
	if err := r.agree(values); err != nil {
		return Range{}, err
	}
	for i, v := range beside {
		*v = values[3+i]
	}
	out := Range{values[0], values[1], values[2]}
	if hint := out.fault(); hint != "" {
		return Range{}, r.refuseRange(text, hint)
	}
	return out, nil
}

// agree lets the last unit written hold for the values without one.
func (r reader) agree(values []Value) *fault.Fault {
	var giver Value
	for _, v := range values {
		if !v.Assumed {
			giver = v
		}
	}
	for i, v := range values {
		if !r.borrows(v, giver) {
			continue
		}
		borrowed, err := r.borrow(v, giver.Unit)
		if err != nil {
			return err
		}
		values[i] = borrowed
	}
	return nil
}

func (r reader) refuseRange(text, hint string) *fault.Fault {
	return Refusal(text, r.kind.Takes()+takesRange, hint)
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
