package point

import (
	"cmp"
	"math"
)

// TruingPlan is what must come off each lip, along the drill axis, to make
// both lips the same line.
type TruingPlan struct {
	Line                     Lip     // what both lips become
	Stock1Inner, Stock1Outer float64 // off lip 1 at its inner and outer end
	Stock2Inner, Stock2Outer float64 // off lip 2
}

// Most returns the largest of the four stocks: what the drill gets shorter by
// at most, and zero for a point that is true already.
func (p TruingPlan) Most() float64 {
	return math.Max(math.Max(p.Stock1Inner, p.Stock1Outer), math.Max(p.Stock2Inner, p.Stock2Outer))
}

// Truing returns the plan with the least stock that gives both lips the half
// angle target and one height. Metal can only come off, so the common line
// must lie under both lips at both ends; the highest such line touches the
// lowest of the four ends once each is carried to the axis at the target
// angle. With equal angles at target the height difference comes off the
// higher lip and nothing off the other.
// Domain: 0 <= inner < outer, angles in (0, pi/2), heights finite; a
// [*DomainError] outside.
func Truing(l1, l2 Lip, inner, outer, target float64) (TruingPlan, error) {
	if err := cmp.Or(
		l1.check("height of lip 1", "angle of lip 1"), l2.check("height of lip 2", "angle of lip 2"),
		requireHalfAngle("target half angle", target),
		requirePositive("outer end of the lips", outer), requireFinite("inner end of the lips", inner),
	); err != nil {
		return TruingPlan{}, err
	}
	if inner < 0 || inner >= outer {
		return TruingPlan{}, &DomainError{"inner end of the lips", "must lie between the axis and the outer end", inner}
	}
	slope := Lip{0, target}
	in1, out1 := l1.At(inner)-slope.At(inner), l1.At(outer)-slope.At(outer)
	in2, out2 := l2.At(inner)-slope.At(inner), l2.At(outer)-slope.At(outer)
	height := math.Min(math.Min(in1, out1), math.Min(in2, out2))
	return TruingPlan{
		Line:        Lip{height, target},
		Stock1Inner: in1 - height, Stock1Outer: out1 - height,
		Stock2Inner: in2 - height, Stock2Outer: out2 - height,
	}, nil
}

// check returns a [*DomainError] under one of the names when it is no lip.
func (l Lip) check(height, angle string) error {
	return cmp.Or(requireFinite(height, l.Height0), requireHalfAngle(angle, l.HalfAngle))
}
