package quantity

import (
	"strconv"
	"strings"
)

// longestWhole bounds the digits of a whole number inside a fraction, so that
// every step of the arithmetic is exact.
const longestWhole = 7

// numberEnd returns the length of the decimal number, with its sign and
// exponent, at the start of s; 0 if there is none.
func numberEnd(s string) int {
	i := 0
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	whole := digits(s[i:])
	i += whole
	part := 0
	if i < len(s) && s[i] == '.' {
		part = digits(s[i+1:])
		i += 1 + part
	}
	if whole+part == 0 {
		return 0
	}
	return i + exponentEnd(s[i:])
}

func exponentEnd(s string) int {
	if s == "" || s[0] != 'e' && s[0] != 'E' {
		return 0
	}
	i := 1
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	n := digits(s[i:])
	if n == 0 {
		return 0
	}
	return i + n
}

// digits counts the decimal digits at the start of s.
func digits(s string) int {
	i := 0
	for i < len(s) && s[i]-'0' <= 9 {
		i++
	}
	return i
}

// decimal converts what numberEnd found. A number so small that it would
// come out as zero is refused: zero was not what was written.
func decimal(s string) (float64, bool) {
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0, false
	}
	return f, f != 0 || isZero(s)
}

func isZero(number string) bool {
	mantissa := number
	if i := strings.IndexAny(number, "eE"); i >= 0 {
		mantissa = number[:i]
	}
	return !strings.ContainsAny(mantissa, "123456789")
}

// amount reads an unsigned number in any notation at the start of s: "1.5",
// "1/2", "1-1/4", "1 1/4". It returns how many bytes it used, 0 if it found
// no number.
func amount(s string) (f float64, n int, fraction bool) {
	if f, n := ratio(s); n > 0 {
		return f, n, true
	}
	if f, n := mixed(s); n > 0 {
		return f, n, true
	}
	if s == "" || s[0] == '+' || s[0] == '-' {
		return 0, 0, false
	}
	n = numberEnd(s)
	f, ok := decimal(s[:n])
	if !ok {
		return 0, 0, false
	}
	return f, n, false
}

// ratio reads "3/4".
func ratio(s string) (f float64, n int) {
	top, i := whole(s)
	if i == 0 || i == len(s) || s[i] != '/' {
		return 0, 0
	}
	bottom, j := whole(s[i+1:])
	if j == 0 || bottom == 0 {
		return 0, 0
	}
	return top / bottom, i + 1 + j
}

// mixed reads "1-3/4" and "1 3/4". The fraction must be less than one: "1-5/4"
// is more likely a slip than a way of writing 2-1/4.
func mixed(s string) (f float64, n int) {
	w, i := whole(s)
	if i == 0 || i == len(s) {
		return 0, 0
	}
	rest := s[i:]
	part := strings.TrimLeft(rest, " ")
	if rest[0] == '-' {
		part = rest[1:]
	}
	f, n = ratio(part)
	if n == 0 || f >= 1 {
		return 0, 0
	}
	return w + f, len(s) - len(part) + n
}

// whole reads an unsigned whole number.
func whole(s string) (f float64, n int) {
	n = digits(s)
	if n == 0 || n > longestWhole {
		return 0, 0
	}
	for i := range n {
		f = f*10 + float64(s[i]-'0')
	}
	return f, n
}

// isFraction reports whether a text that was read holds a fraction.
func isFraction(text string) bool { return strings.ContainsAny(text, "/⁄∕½¼¾⅛⅜⅝⅞") }
