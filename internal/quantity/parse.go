package quantity

import (
	"math"
	"strings"

	"evenlip/internal/fault"
)

// Reader reads quantities of one kind: "12mm", "1-1/4in", "#7" for a size, "59°30'"
// for an angle. A number without a unit is taken in the system Bare, millimetres if
// that is Unset; a fraction without a unit is inches whatever Bare says; an angle
// without a unit is degrees. A negative value is refused, unless Signed says that it
// may be and the kind can have one.
type Reader struct {
	Kind   Kind
	Bare   System
	Signed bool
}

// Parse reads one quantity that is not negative.
func Parse(kind Kind, text string, bare System) (Value, *fault.Fault) {
	return Reader{Kind: kind, Bare: bare}.One(text)
}

// ParseUnits reads the name of a system of units: "mm" or "in".
func ParseUnits(text string) (System, *fault.Fault) {
	switch s := strings.TrimSpace(text); {
	case strings.EqualFold(s, "mm"):
		return Metric, nil
	case strings.EqualFold(s, "in"):
		return Inch, nil
	}
	return Unset, Refusal(text, "mm or in", "")
}

// One reads one quantity.
func (r Reader) One(text string) (Value, *fault.Fault) {
	s := strings.TrimSpace(text)
	v, ok := r.plain(s)
	if !ok {
		var hint string
		if v, hint, ok = r.written(s); !ok {
			if hint == "" && strings.Contains(s, ",") {
				return Value{}, Refusal(text, "one value", aboutComma(s))
			}
			if hint == "" {
				hint = r.guess(s)
			}
			return Value{}, r.refuse(text, hint)
		}
	}
	v.Text = s
	if hint := r.unfit(v); hint != "" {
		return Value{}, r.refuse(text, hint)
	}
	v.V += 0 // a negative zero becomes zero
	return v, nil
}

// Pair reads one value or two with a comma between them: n says how many,
// and b is the zero Value when there is one. Where only one of two carries a
// unit it holds for both: "0.24,0.25in" is inches twice.
func (r Reader) Pair(text string) (a, b Value, n int, err *fault.Fault) {
	first, second, two := strings.Cut(text, ",")
	if two && strings.Contains(second, ",") {
		return a, b, 0, r.refuse(text, "more than two values; a comma is never a decimal point or a thousands mark")
	}
	if two && strings.TrimSpace(first) == "" || two && strings.TrimSpace(second) == "" {
		return a, b, 0, r.refuse(text, "a value is missing beside the comma")
	}
	if a, err = r.One(first); err != nil {
		return Value{}, Value{}, 0, err
	}
	if !two {
		return a, Value{}, 1, nil
	}
	if b, err = r.One(second); err != nil {
		return Value{}, Value{}, 0, err
	}
	if err = r.agree(&a, &b); err != nil {
		return Value{}, Value{}, 0, err
	}
	return a, b, 2, nil
}

// agree lets the last unit written hold for the values without one.
func (r Reader) agree(values ...*Value) *fault.Fault {
	var giver *Value
	for _, v := range values {
		if !v.Assumed {
			giver = v
		}
	}
	for _, v := range values {
		if giver == nil || !r.borrows(*v, *giver) {
			continue
		}
		borrowed, err := r.One(v.Text + " " + giver.Unit)
		if err != nil {
			return err
		}
		borrowed.Text, borrowed.Assumed = v.Text, true
		*v = borrowed
	}
	return nil
}

// borrows reports whether v is a bare number beside one with a unit. A
// fraction is not bare, since it means inches; nor is a taper, which is a
// plain ratio.
func (r Reader) borrows(v, neighbour Value) bool {
	return v.Assumed && !neighbour.Assumed && neighbour.System != Unset && neighbour.Unit != "" &&
		r.Kind != Taper && !isFraction(v.Text)
}

// plain reads a decimal number with or without one of the kind's units behind
// it. Nearly all that a file holds is of this form, so it allocates nothing.
func (r Reader) plain(s string) (Value, bool) {
	n := numberEnd(s)
	f, ok := decimal(s[:n])
	if !ok {
		return Value{}, false
	}
	return r.scaled(f, s[n:], false)
}

// written reads everything else that people write: typographic marks,
// fractions, drill names, degrees with minutes, feet with inches.
func (r Reader) written(s string) (v Value, hint string, ok bool) {
	s = straighten(s)
	if r.Kind == Size {
		s = cutDiameterMark(s)
		if mm, hint, named := drillName(s); named {
			return Value{V: mm, System: Inch}, hint, hint == ""
		}
	}
	negative := strings.HasPrefix(s, "-")
	if v, hint, ok = r.unsigned(cutSign(s)); negative {
		v.V = -v.V
	}
	return v, hint, ok
}

func (r Reader) unsigned(s string) (v Value, hint string, ok bool) {
	if r.Kind == Angle {
		if deg, hint, ok := arc(s); ok || hint != "" {
			v, _ := r.scaled(deg, degree, false)
			return v, hint, ok
		}
	}
	f, n, fraction := amount(s)
	if n == 0 || fraction && !r.Kind.takesFraction() {
		return Value{}, "", false
	}
	if fraction && r.Kind == Angle && n == len(s) {
		if a, b, two := twoWhole(s); two {
			return Value{}, "two readings are written " + a + "," + b, false
		}
	}
	if fraction && r.Kind == Angle && f < 1 && n == len(s) {
		return Value{}, "a fraction alone is a length or a size; an angle has its degrees: 59-1/2, or 1/2°", false
	}
	v, ok = r.scaled(f, s[n:], fraction)
	return v, "", ok
}

// scaled turns f of the unit written behind it into the kind's own unit.
func (r Reader) scaled(f float64, unit string, fraction bool) (Value, bool) {
	unit = strings.TrimLeft(unit, " ")
	if unit == "" {
		bare := r.Bare
		if fraction {
			bare = Inch
		}
		sc, ok := assumed(r.Kind, bare)
		return Value{V: sc.of(f), System: sc.system, Unit: sc.unit, Assumed: sc.unit != ""}, ok
	}
	sc, ok := find(r.Kind, unit)
	return Value{V: sc.of(f), System: sc.system, Unit: sc.unit}, ok
}

// The range in which a reading is believed. It is far wider than any bench
// needs and narrow enough that no formula overflows or loses the value.
const (
	largest  = 1e9
	smallest = 1e-30

	// largestSize, mm, is twice the largest twist drill that a list has, so that no
	// drill is refused.
	largestSize = 200.0

	beyond = "beyond anything that can be measured"
)

// unfit returns why a value that was read cannot be one of its kind, or "".
func (r Reader) unfit(v Value) string {
	size := math.Abs(v.V)
	switch {
	case v.V < 0 && !(r.Signed && r.Kind.takesSign()):
		return "a negative value makes no sense here"
	case size > largest, size != 0 && size < smallest:
		return beyond
	case size == 0 && r.Kind == Size:
		return "a drill has a diameter above zero"
	case size > largestSize && r.Kind == Size:
		return r.tooLargeSize(v)
	case r.Kind == Share && v.V > 1:
		return "a share is at most the whole: 0.8 and 80% are the same"
	}
	return ""
}

// tooLargeSize says what was meant by a size that no drill has.
func (r Reader) tooLargeSize(v Value) string {
	if v.Assumed && v.System == Inch && !isFraction(v.Text) {
		hint := "larger than any twist drill: if millimetres were meant, write " + v.Text + "mm"
		if number, ok := AsNumber(v); ok {
			hint += "; " + number.Name + " is written '" + number.Name + "'"
		}
		return hint
	}
	return "larger than any twist drill: is it in the unit that was meant?"
}
