// Package verify keeps the evidence: what the tests hold the program to, from
// where, and how near it comes. Only tests use it.
//
// A test asks a source with Against and checks each printed value with Within,
// Part, Between or Says; these fail as any check does, and remember what was
// printed and what came out. Property does the same for an invariant. A
// package's TestMain runs its tests through Keep, which compares the evidence
// with testdata/verified.jsonl, and this package's own test makes
// docs/verification.md of all those files.
package verify

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// tester is what a check needs of *testing.T.
type tester interface {
	Helper()
	Name() string
	Errorf(format string, args ...any)
	Fatal(args ...any)
}

// Outside is a source about to be asked, at one place in it.
type Outside struct {
	t      tester
	source Source
	place  string
	digits int // decimals in print; 0 for as many as the number needs
}

// Against begins checks against a source: place is its table or page, or what
// else tells a reader where to look; it may be empty.
func Against(t tester, source Source, place string) Outside {
	t.Helper()
	return Outside{t: t, source: source, place: place}
}

// To says that the source prints to so many decimals: 1.1 stands as 1.100.
func (o Outside) To(digits int) Outside {
	o.digits = digits
	return o
}

// Within fails unless ours is the printed value, give or take tolerance, all in
// one unit; NaN is near nothing.
func (o Outside) Within(what string, ours, printed, tolerance float64, unit string) {
	o.t.Helper()
	if !(math.Abs(ours-printed) <= tolerance) {
		o.t.Errorf("%s (%s): got %.9g%s, printed is %.9g, allowed %.3g", what, o.source.Work, ours, spaced(unit), printed, tolerance)
		return
	}
	o.record(what, ours, allowance(tolerance, printed, unit), unit, "", printed)
}

// Part fails unless ours is the printed value within a part of it.
func (o Outside) Part(what string, ours, printed, part float64, unit string) {
	o.t.Helper()
	if !(math.Abs(ours-printed) <= part*math.Abs(printed)) {
		o.t.Errorf("%s (%s): got %.9g%s, printed is %.9g, allowed %.3g of it", what, o.source.Work, ours, spaced(unit), printed, part)
		return
	}
	allowed := "± " + brief(100*part) + " %"
	if part <= rounding {
		allowed = "to rounding"
	}
	o.record(what, ours, allowed, unit, "", printed)
}

// Between fails unless ours lies in a printed band, ends included.
func (o Outside) Between(what string, ours, low, high float64, unit string) {
	o.t.Helper()
	if !(ours >= low && ours <= high) {
		o.t.Errorf("%s (%s): got %.9g%s, printed is %.9g to %.9g", what, o.source.Work, ours, spaced(unit), low, high)
		return
	}
	o.record(what, ours, "in the band", unit, "", low, high)
}

// Below fails unless ours is less than a printed limit.
func (o Outside) Below(what string, ours, limit float64, unit string) {
	o.t.Helper()
	o.beside(what, "under", ours, limit, ours < limit, unit)
}

// Above fails unless ours is more than a printed limit.
func (o Outside) Above(what string, ours, limit float64, unit string) {
	o.t.Helper()
	o.beside(what, "over", ours, limit, ours > limit, unit)
}

func (o Outside) beside(what, side string, ours, limit float64, holds bool, unit string) {
	o.t.Helper()
	if !holds {
		o.t.Errorf("%s (%s): got %.9g%s, printed is %s %.9g", what, o.source.Work, ours, spaced(unit), side, limit)
		return
	}
	o.record(what, ours, "on that side", unit, side+" ", limit)
}

// Says fails unless ours is the printed word.
func (o Outside) Says(what, ours, printed string) {
	o.t.Helper()
	if ours != printed {
		o.t.Errorf("%s (%s): got %q, printed is %q", what, o.source.Work, ours, printed)
		return
	}
	keep(o.t, Record{Work: o.source.Work, Label: o.source.Label(), Place: o.place, What: what, Printed: printed, Ours: ours, Allowed: "the same"})
}

// rounding is the part of a number within which only rounding differs.
const rounding = 1e-7

// allowance says what a check lets pass.
func allowance(tolerance, printed float64, unit string) string {
	switch {
	case tolerance == 0:
		return "exact"
	case tolerance <= rounding*max(1, math.Abs(printed)):
		return "to rounding"
	}
	return "± " + brief(tolerance) + spaced(unit)
}

// record keeps a number two digits finer than the printed one, so that the
// difference shows, and no finer: the last digits differ among processors.
func (o Outside) record(what string, ours float64, allowed, unit, before string, printed ...float64) {
	o.t.Helper()
	var texts []string
	digits := o.digits
	for _, p := range printed {
		text := short(p)
		if decimals(text) < o.digits {
			text = fixed(p, o.digits)
		}
		texts = append(texts, text)
		digits = max(digits, decimals(text))
	}
	keep(o.t, Record{
		Work: o.source.Work, Label: o.source.Label(), Place: o.place, What: what,
		Printed: before + strings.Join(texts, " to "), Ours: fixed(ours, digits+2), Allowed: allowed, Unit: unit,
	})
}

// short writes v as a book would: no exponent, six figures at most.
func short(v float64) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	if err != nil {
		return fmt.Sprint(v)
	}
	if rounded != 0 && math.Abs(rounded) < 1e-4 {
		return strconv.FormatFloat(rounded, 'g', -1, 64)
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// brief writes a tolerance: three figures say enough of it.
func brief(v float64) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
	if err != nil {
		return short(v)
	}
	return short(rounded)
}

// fixed writes v to so many decimals, zero without a sign.
func fixed(v float64, digits int) string {
	out := strconv.FormatFloat(v, 'f', digits, 64)
	if strings.Trim(out, "-0.") == "" {
		out = strings.TrimPrefix(out, "-")
	}
	return out
}

// decimals counts the digits behind the point.
func decimals(number string) int {
	_, behind, _ := strings.Cut(number, ".")
	return len(behind)
}

// spaced puts a unit behind a number: "12 mm", "12°", "12".
func spaced(unit string) string {
	if unit == "" || unit == "°" {
		return unit
	}
	return " " + unit
}
