package quantity

import (
	"strconv"
	"strings"

	"evenlip/internal/fault"
)

// Value is one quantity as a person wrote it.
type Value struct {
	V       float64 // millimetres, radians, or the kind's own unit; always finite
	System  System  // of the unit it was read in; Unset for angles, counts and ratios
	Unit    string  // "mm", "in", "thou", "°", "rpm", ...; empty for a plain number and for a drill's number or letter
	Assumed bool    // no unit was written: Unit is what the number was taken to mean
	Text    string  // as written, without the space around it
}

// Echo returns what was written, with the unit made plain where it had to be
// assumed, so that a wrong guess is seen: "1.8mm" stays as it is, a bare "1.8"
// comes back as "1.8 mm", "1/2" as "1/2 in" and "59" as "59°".
func (v Value) Echo() string {
	switch {
	case !v.Assumed || v.Unit == "":
		return v.Text
	case v.Unit == degree:
		return v.Text + v.Unit
	}
	return v.Text + " " + v.Unit
}

// Spaced returns what Echo does, a blank between a number and its unit: "12 mm".
func (v Value) Spaced() string {
	if text, ok := strings.CutSuffix(v.Text, v.Unit); ok && v.Unit != "" && v.Unit != degree {
		return strings.TrimSpace(text) + " " + v.Unit
	}
	return v.Echo()
}

// Refusal is the fault of a text that is no quantity. The text may hold anything and
// is quoted; takes says what is taken: "a length such as 12mm, 0.5in, 1/2 or 85thou".
func Refusal(text, takes, hint string) *fault.Fault {
	return &fault.Fault{Text: "cannot read " + quote(text) + ": takes " + takes, Hint: hint}
}

// longestQuoted keeps a message on one line of a terminal.
const longestQuoted = 40

// quote shows a text of any content, control characters escaped and a long
// one cut short.
func quote(text string) string {
	seen := 0
	for at := range text {
		if seen == longestQuoted {
			return strconv.Quote(text[:at] + "…")
		}
		seen++
	}
	return strconv.Quote(text)
}
