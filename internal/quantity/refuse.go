package quantity

import (
	"strconv"
	"strings"
	"unicode"

	"evenlip/internal/fault"
)

// takes says what each kind that can be typed takes, in the words of a message.
var takes = [kinds]string{
	Number:  "a number such as 0.5",
	Length:  "a length such as 12mm, 0.5in, 1/2 or 85thou",
	Size:    "a drill size such as 12mm, 0.5in, 1/2, #7 or F",
	Angle:   "an angle such as 59, 59.5deg or 59°30'",
	Feed:    "a feed a revolution such as 0.2mm or 0.008in",
	Taper:   "a taper such as 0.016 or 0.016mm/mm",
	Share:   "a share such as 0.8 or 80%",
	Rpm:     "a spindle speed such as 600 or 600rpm",
	Cutting: "a cutting speed such as 25m/min or 80ft/min",
	Surface: "a surface speed such as 30m/s or 6000ft/min",
	Force:   "a force such as 900N or 200lbf",
}

// Takes says what is to be typed for a quantity of the kind: "an angle such as
// 59, 59.5deg or 59°30'".
func (k Kind) Takes() string { return takes[k] }

func (r Reader) refuse(text, hint string) *fault.Fault {
	return Refusal(text, r.Kind.Takes(), hint)
}

// guess looks for the likeliest slip in a text that could not be read.
func (r Reader) guess(s string) string {
	s = straighten(s)
	number := cutSign(s)
	switch {
	case s == "":
		return "nothing was written"
	case IsRange(s) && strings.Contains(s, " by "):
		return "this takes one value; a range is for the flags of one drill"
	case strings.Contains(s, "/") && !r.Kind.takesFraction():
		return "write the number as a decimal"
	}
	_, n, _ := amount(number)
	unit := strings.TrimLeft(number[n:], " ")
	begins := numberEnd(number) > 0 && cutSign(number) == number
	switch {
	case strings.Contains(s, "/") && begins && (n == 0 || strings.IndexAny(unit, "-./0123456789") == 0):
		return "write a fraction as 1/2 or 1-1/4, in whole numbers and without spaces beside the stroke"
	case n == 0 && begins:
		return beyond
	case n == 0 && r.Kind != Size && isDrillName(s):
		return "a drill's number or letter is a size; write the length itself"
	case n == 0:
		return "begin with a number"
	case digits(unit) > 0:
		return "write the number without spaces between its digits"
	}
	return r.guessUnit(strings.ToLower(unit))
}

// thousandsGroup is the number of digits behind a comma that may stand for
// thousands as well as for a decimal point.
const thousandsGroup = 3

// aboutComma explains a comma where one value is wanted.
func aboutComma(s string) string {
	left, right, _ := strings.Cut(s, ",")
	left, right = strings.TrimSpace(left), strings.TrimSpace(right)
	whole, n := cutSign(left), digits(right)
	unit := strings.TrimSpace(right[n:])
	if whole == "" || digits(whole) < len(whole) || n == 0 || strings.ContainsAny(unit, ",.") {
		return "a comma stands only between two values, never for a decimal point or between thousands"
	}
	if strings.ContainsFunc(unit, func(r rune) bool { return !unicode.IsLetter(r) }) {
		unit = ""
	}
	point := left + "." + right[:n] + unit
	if n == thousandsGroup && strings.Trim(whole, "0") != "" {
		return "a comma is never a decimal point, nor a thousands mark: write " + left + right[:n] + unit + " or " + point
	}
	return "a comma is never a decimal point: write " + point
}

// twoWhole parts two whole numbers with a stroke between them, of which the second is
// none that a fraction has below its stroke.
func twoWhole(s string) (a, b string, ok bool) {
	a, b, _ = strings.Cut(s, "/")
	n, err := strconv.Atoi(b)
	return a, b, err == nil && digits(a) == len(a) && n&(n-1) != 0
}

// guessUnit explains a unit that the kind does not have.
func (r Reader) guessUnit(unit string) string {
	switch k := r.Kind; {
	case unit == "":
		return ""
	case k == Angle && (unit == "'" || unit == `"`):
		return "an angle begins with its degrees: 0°30'"
	case k == Angle && strings.HasPrefix(unit, degree):
		return "mark the minutes and the seconds too: 59°30'15\""
	case (k == Length || k == Size) && (unit == "m" || unit == "ft" || strings.HasPrefix(unit, "'")):
		return "no drill is measured in metres or feet: write mm or in"
	case k == Feed && (strings.HasSuffix(unit, "/min") || unit == "ipm"):
		return "a feed is for one revolution: divide by the rpm"
	}
	for kind, text := range takes {
		if _, ok := find(Kind(kind), unit); ok && text != "" {
			return unit + " goes with " + strings.Split(text, " such as ")[0]
		}
	}
	return quote(unit) + " is no unit that is known here"
}

func isDrillName(s string) bool {
	_, hint, named := drillName(s)
	return named && hint == ""
}
