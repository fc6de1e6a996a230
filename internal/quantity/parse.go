package quantity

import (
	"math"
	"strings"

	"evenlip/internal/fault"
)

// Parse reads one quantity of a kind: "12mm", "1-1/4in", "#7" for a size,
// "59°30'" for an angle. A number without a unit is taken in the system bare,
// millimetres if that is Unset; a fraction without a unit is inches whatever
// bare says; an angle without a unit is degrees. A negative value is refused.
func Parse(kind Kind, text string, bare System) (Value, *fault.Fault) {
	return reader{kind, bare, false}.one(text)
}

// ParsePair reads one value or two with a comma between them: n says how many,
// and b is the zero Value when there is one. Where only one of two carries a
// unit it holds for both: "0.24,0.25in" is inches twice.
func ParsePair(kind Kind, text string, bare System) (a, b Value, n int, err *fault.Fault) {
	return reader{kind, bare, false}.pair(text)
}

// ParsePairSigned reads as ParsePair does, and takes a negative number, length,
// angle or taper as well: an indicator reads either way. For the other kinds it
// is ParsePair.
func ParsePairSigned(kind Kind, text string, bare System) (a, b Value, n int, err *fault.Fault) {
	return reader{kind, bare, true}.pair(text)
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

// reader is what has to be known to read one quantity.
type reader struct {
	kind   Kind
	bare   System
	signed bool
}

func (r reader) one(text string) (Value, *fault.Fault) {
	s := strings.TrimSpace(text)
	v, ok := r.plain(s)
	if !ok {
		var hint string
		if v, hint, ok = r.written(s); !ok {
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

func (r reader) pair(text string) (a, b Value, n int, err *fault.Fault) {
	first, second, two := strings.Cut(text, ",")
	if two && strings.Contains(second, ",") {
		return a, b, 0, r.refuse(text, "more than two values; a comma is never a decimal point or a thousands mark")
	}
	if two && strings.TrimSpace(first) == "" || two && strings.TrimSpace(second) == "" {
		return a, b, 0, r.refuse(text, "a value is missing beside the comma")
	}
	if a, err = r.one(first); err != nil {
		return Value{}, Value{}, 0, err
	}
	if !two {
		return a, Value{}, 1, nil
	}
	if b, err = r.one(second); err != nil {
		return Value{}, Value{}, 0, err
	}
	return r.alike(a, b)
}

// alike lets the unit that one of a pair carries hold for both.
func (r reader) alike(a, b Value) (Value, Value, int, *fault.Fault) {
	var err *fault.Fault
	switch {
	case r.borrows(a, b):
		a, err = r.borrow(a, b.Unit)
	case r.borrows(b, a):
		b, err = r.borrow(b, a.Unit)
	}
	if err != nil {
		return Value{}, Value{}, 0, err
	}
	return a, b, 2, nil
}

// borrows reports whether v is a bare number beside one with a unit. A
// fraction is not bare, since it means inches; nor is a taper, which is a
// plain ratio.
func (r reader) borrows(v, neighbour Value) bool {
	return v.Assumed && !neighbour.Assumed && neighbour.System != Unset && neighbour.Unit != "" &&
		r.kind != Taper && !isFraction(v.Text)
}

func (r reader) borrow(v Value, unit string) (Value, *fault.Fault) {
	out, err := r.one(v.Text + " " + unit)
	out.Text, out.Assumed = v.Text, true
	return out, err
}

// plain reads a decimal number with or without one of the kind's units behind
// it. Nearly all that a file holds is of this form, so it allocates nothing.
func (r reader) plain(s string) (Value, bool) {
	n := numberEnd(s)
	f, ok := decimal(s[:n])
	if !ok {
		return Value{}, false
	}
	return r.scaled(f, s[n:], false)
}

// written reads everything else that people write: typographic marks,
// fractions, drill names, degrees with minutes, feet with inches.
func (r reader) written(s string) (v Value, hint string, ok bool) {
	s = straighten(s)
	if r.kind == Size {
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

func (r reader) unsigned(s string) (v Value, hint string, ok bool) {
	if total, hint, ok := compound(r.kind, s); ok || hint != "" {
		v, _ := r.scaled(total, compounds[r.kind].unit, false)
		return v, hint, ok
	}
	f, n, fraction := amount(s)
	if n == 0 || fraction && !r.kind.takesFraction() {
		return Value{}, "", false
	}
	if fraction && r.kind == Angle && f < 1 && n == len(s) {
		return Value{}, "a fraction alone is a length or a size; an angle has its degrees: 59-1/2, or 1/2°", false
	}
	v, ok = r.scaled(f, s[n:], fraction)
	return v, "", ok
}

// scaled turns f of the unit written behind it into the kind's own unit.
func (r reader) scaled(f float64, unit string, fraction bool) (Value, bool) {
	unit = strings.TrimLeft(unit, " ")
	if unit == "" {
		bare := r.bare
		if fraction {
			bare = Inch
		}
		sc, ok := assumed(r.kind, bare)
		return Value{V: sc.of(f), System: sc.system, Unit: sc.unit, Assumed: sc.unit != ""}, ok
	}
	sc, ok := find(r.kind, unit)
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

	tooLarge = "larger than anything on a bench"
	tooSmall = "smaller than anything that can be measured"
)

// unfit returns why a value that was read cannot be one of its kind, or "".
func (r reader) unfit(v Value) string {
	size := math.Abs(v.V)
	switch {
	case v.V < 0 && !(r.signed && r.kind.takesSign()):
		return "a negative value makes no sense here"
	case size > largest:
		return tooLarge
	case size != 0 && size < smallest:
		return tooSmall
	case size == 0 && r.kind == Size:
		return "a drill has a diameter above zero"
	case size > largestSize && r.kind == Size:
		return r.tooLargeSize(v)
	case r.kind == Count && v.V != math.Trunc(v.V):
		return "a count is a whole number"
	case r.kind == Share && v.V > 1:
		return "a share is at most the whole: 0.8 and 80% are the same"
	}
	return ""
}

// tooLargeSize says what was meant by a size that no drill has.
func (r reader) tooLargeSize(v Value) string {
	if v.Assumed && v.System == Inch && !isFraction(v.Text) {
		hint := "larger than any twist drill: if millimetres were meant, write " + v.Text + "mm"
		if number, ok := AsNumber(v); ok {
			hint += "; " + number.Name + " is written '" + number.Name + "'"
		}
		return hint
	}
	return "larger than any twist drill: is it in the unit that was meant?"
}
