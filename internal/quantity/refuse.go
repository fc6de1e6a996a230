package quantity

import (
	"strconv"
	"strings"

	"evenlip/internal/fault"
)

// takes says what each kind takes, in the words of a message.
var takes = [...]string{
	Number:   "a number such as 0.5",
	Length:   "a length such as 12mm, 0.5in, 1/2 or 85thou",
	Size:     "a drill size such as 12mm, 0.5in, 1/2, #7 or F",
	Angle:    "an angle such as 59, 59.5deg or 59°30'",
	Feed:     "a feed a revolution such as 0.2mm or 0.008in",
	Taper:    "a taper such as 0.016 or 0.016mm/mm",
	Share:    "a share such as 0.8 or 80%",
	Count:    "a whole number such as 3",
	Rpm:      "a spindle speed such as 600 or 600rpm",
	Cutting:  "a cutting speed such as 25m/min or 80ft/min",
	Surface:  "a surface speed such as 30m/s or 6000ft/min",
	Force:    "a force such as 900N or 200lbf",
	Torque:   "a torque such as 12Nm or 9ft-lb",
	Power:    "a power such as 1.5kW or 2hp",
	Stress:   "a stress such as 155MPa or 22000psi",
	Duration: "nothing that can be typed",
	Word:     "nothing that can be typed",
}

// Takes says what is to be typed for a quantity of the kind: "an angle such as
// 59, 59.5deg or 59°30'".
func (k Kind) Takes() string {
	if int(k) < len(takes) {
		return takes[k]
	}
	return takes[Word]
}

func (r reader) refuse(text, hint string) *fault.Fault {
	return Refusal(text, r.kind.Takes(), hint)
}

// guess looks for the likeliest slip in a text that could not be read.
func (r reader) guess(s string) string {
	s = straighten(s)
	low := strings.ToLower(cutSign(s))
	switch {
	case s == "":
		return "nothing was written"
	case strings.HasPrefix(low, "nan"), strings.HasPrefix(low, "inf"), strings.HasPrefix(low, "∞"):
		return "a measurement is a finite number"
	case strings.HasPrefix(low, "0x"), strings.HasPrefix(low, "0b"), strings.HasPrefix(low, "0o"):
		return "write the number in decimal digits"
	case strings.Contains(s, "_"):
		return "write the digits without underscores"
	case IsRange(s) && strings.Contains(s, " by "):
		return "this takes one value; a range is for the flags of one drill"
	case strings.Contains(s, ","):
		return aboutComma(s)
	case aboutSpace(s):
		return "write the number without spaces between its digits"
	}
	return r.guessUnit(cutSign(s))
}

// thousandsGroup is the number of digits behind a comma that may stand for
// thousands as well as for a decimal point.
const thousandsGroup = 3

// aboutComma tells a decimal comma from two values.
func aboutComma(s string) string {
	left, right, _ := strings.Cut(s, ",")
	whole, n := cutSign(left), digits(right)
	plain := whole != "" && digits(whole) == len(whole) && n > 0 && !strings.ContainsAny(right, ",.")
	if plain && (n != thousandsGroup || whole == "0") {
		number := left + "," + right[:n]
		return "a comma is never a decimal point: " + number + " is two values; write " + strings.Replace(number, ",", ".", 1)
	}
	return "this takes one value; a comma stands only between two, never for a decimal point or between thousands"
}

// aboutSpace finds a number that was broken up: "1 000".
func aboutSpace(s string) bool {
	n := numberEnd(s)
	rest := strings.TrimLeft(s[n:], " ")
	return n > 0 && len(rest) < len(s)-n && digits(rest) > 0 && !strings.Contains(s, "/")
}

// guessUnit explains what stands behind the number, or why there is none.
func (r reader) guessUnit(s string) string {
	_, n, _ := amount(s)
	if n == 0 {
		return r.guessNumber(s)
	}
	unit := strings.TrimLeft(s[n:], " ")
	switch {
	case strings.Contains(s[:n], "/") && !r.kind.takesFraction(),
		strings.Contains(s, "/") && strings.IndexAny(unit, "-./0123456789") == 0:
		return r.guessNumber(s)
	case unit == "":
		return ""
	case unit[0] == '.':
		return "one decimal point is enough"
	}
	if hint := r.kind.commonSlip(strings.ToLower(unit)); hint != "" {
		return hint
	}
	return guessKind(unit)
}

// commonSlip explains the wrong units that people do write with a kind.
func (k Kind) commonSlip(unit string) string {
	switch k {
	case Angle:
		if unit == "'" || unit == `"` {
			return "an angle begins with its degrees: 0°30'"
		}
		if strings.HasPrefix(unit, degree) {
			return "mark the minutes and the seconds too: 59°30'15\""
		}
	case Length, Size:
		if strings.HasPrefix(unit, "'") {
			return "mark the inches too: 1'2\""
		}
		if unit == "m" {
			return "no drill is measured in metres: write mm"
		}
	case Feed:
		if strings.HasSuffix(unit, "/min") || unit == "ipm" {
			return "a feed is for one revolution: divide by the rpm"
		}
	}
	return ""
}

// guessNumber explains why the start of s is no number.
func (r reader) guessNumber(s string) string {
	n := numberEnd(s)
	slash := strings.Contains(s, "/")
	switch {
	case slash && !r.kind.takesFraction():
		return "write the number as a decimal"
	case slash && n > 0:
		return "write a fraction as 1/2 or 1-1/4, in whole numbers and without spaces beside the stroke"
	case n > 0 && (s[0] == '-' || s[0] == '+'):
		return "one sign is enough"
	case n > 0 && overflows(s[:n]):
		return tooLarge
	case n > 0:
		return tooSmall
	case r.kind != Size && isDrillName(s):
		return "a drill's number or letter is a size; write the length itself"
	}
	return "begin with a number"
}

func overflows(number string) bool {
	_, err := strconv.ParseFloat(number, 64)
	return err != nil
}

func isDrillName(s string) bool {
	_, hint, named := drillName(s)
	return named && hint == ""
}

// guessKind finds the kind that a unit belongs to.
func guessKind(unit string) string {
	for kind, text := range takes {
		if _, ok := find(Kind(kind), unit); ok && len(scales[kind]) > 0 {
			return unit + " goes with " + strings.Split(text, " such as ")[0]
		}
	}
	return quote(unit) + " is no unit that is known here"
}
