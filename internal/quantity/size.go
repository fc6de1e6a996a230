package quantity

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"evenlip/internal/handbook"
)

// Series is a run of drill sizes with one way of naming them.
type Series uint8

// The series.
const (
	FractionSize Series = iota
	MetricSize
	NumberSize
	LetterSize
)

// AllSeries lists the series.
var AllSeries = [...]Series{FractionSize, MetricSize, NumberSize, LetterSize}

// String returns the name of the series.
func (s Series) String() string { return [...]string{"fraction", "metric", "number", "letter"}[s] }

// SizeName is one ordinary drill size. Parse reads its Name back.
type SizeName struct {
	Series Series
	Name   string // "1/2 in", "1-1/4 in", "12 mm", "#7", "F"
	MM     float64
}

// Neighbours are the sizes of a series about a diameter. One that does not
// exist has an empty Name.
type Neighbours struct {
	Below, At, Above SizeName
}

// sameSize is how far, in millimetres, a diameter may be from a size and still
// be that size: half of the last digit in which tables give sizes.
const sameSize = 0.0005

// Names returns every ordinary size that has the diameter mm, to within 0.0005
// mm: 6.35 is both 1/4 in and E, 12.7 both 1/2 in and 12.7 mm. It is empty if there is none.
func Names(mm float64) []SizeName {
	var out []SizeName
	for _, s := range AllSeries {
		if n := Nearest(mm, s); n.At.Name != "" {
			out = append(out, n.At)
		}
	}
	return out
}

// The decimals, of an inch and of a millimetre, to which a name is rounded at most
// when it is typed as a number: 13/64 as .203 or .2031, 5.159 or 5.16.
const (
	inchPlaces = 3
	mmPlaces   = 2
)

// Called returns the names of a size as it was written: those that have its
// diameter, or else those whose decimal, rounded as was typed, it is.
func Called(v Value) []SizeName {
	if exact := Names(v.V); len(exact) > 0 {
		return exact
	}
	var out []SizeName
	off := typedWithin(v)
	for _, s := range AllSeries {
		n := Nearest(v.V, s)
		for _, size := range [...]SizeName{n.Below, n.Above} {
			if size.Name != "" && math.Abs(size.MM-v.V) <= off {
				out = append(out, size)
			}
		}
	}
	return out
}

// typedWithin returns half of the last digit that was typed, mm, and a hair: what a
// decimal may be off by rounding. It is 0 for what was written as no decimal.
func typedWithin(v Value) float64 {
	sc, ok := find(Size, v.Unit)
	if !ok || isFraction(v.Text) {
		return 0
	}
	places := 0
	if _, decimals, point := strings.Cut(v.Text, "."); point {
		places = digits(decimals)
	}
	least := sc.of(1) / math.Pow10(places)
	if sc.system == Inch {
		least = min(least, mmPerInch/math.Pow10(inchPlaces))
	} else {
		least = min(least, 1/math.Pow10(mmPlaces))
	}
	const hair = 1e-9
	return least/2 + hair
}

// AsNumber returns the number drill that a bare whole number may have been meant as,
// such as #43 for 43; false where its diameter, as it was read, is an ordinary drill's
// or no drill has that number. Under 25 mm and 3-1/2 in whole numbers are diameters
// more often than names.
func AsNumber(v Value) (SizeName, bool) {
	most := handbook.LargestOften(v.System == Inch)
	if !v.Assumed || v.V <= most || digits(v.Text) != len(v.Text) {
		return SizeName{}, false
	}
	mm, hint, _ := drillName("#" + v.Text)
	return SizeName{NumberSize, "#" + v.Text, mm}, hint == ""
}

// Worn is the size that a drill may have been made to that measures another.
type Worn struct {
	SizeName
	By float64 // mm less than its size; negative where it was read larger
}

// WornFrom returns the nearest size of which a diameter may be what is left, in the
// series of a system of units or else in any; false where there is none. How far
// under its size a drill that is still good may measure: handbook.Undersize. Over it
// none measures but by what a caliper cannot tell.
func WornFrom(mm float64, first System) (Worn, bool) {
	var best [2]Worn // of the system, and of the other
	for _, s := range AllSeries {
		other := 0
		if (s == MetricSize) == (first == Inch) {
			other = 1
		}
		n := Nearest(mm, s)
		for _, size := range [...]SizeName{n.Above, n.Below} {
			w := Worn{size, size.MM - mm}
			if size.Name == "" || w.By < -DefaultGauges.Caliper || w.By > handbook.Undersize(size.MM).High {
				continue
			}
			if best[other].Name == "" || math.Abs(w.By) < math.Abs(best[other].By)-sameSize {
				best[other] = w
			}
		}
	}
	for _, w := range best {
		if w.Name != "" {
			return w, true
		}
	}
	return Worn{}, false
}

// Nearest returns the sizes of one series about a diameter in millimetres; outside
// the series there is one. The steps of the series are common practice, the
// numbers and letters from memory; see handbook.SizeTables.
func Nearest(mm float64, in Series) (n Neighbours) {
	if math.IsNaN(mm) {
		return n
	}
	list := catalogue()[in]
	i, _ := slices.BinarySearchFunc(list, mm-sameSize, func(s SizeName, target float64) int { return cmp.Compare(s.MM, target) })
	if i > 0 {
		n.Below = list[i-1]
	}
	if i < len(list) && list[i].MM <= mm+sameSize {
		n.At = list[i]
		i++
	}
	if i < len(list) {
		n.Above = list[i]
	}
	return n
}

// NextUp returns the next larger size of any series; none, without a name, beyond the last.
// Of two names for one size it gives the fraction; Names gives both.
func NextUp(mm float64) SizeName {
	return next(mm, func(n Neighbours) SizeName { return n.Above })
}

// NextDown returns the next smaller size of any series; none below the first.
// Of two names for one size it gives the fraction; Names gives both.
func NextDown(mm float64) SizeName {
	return next(mm, func(n Neighbours) SizeName { return n.Below })
}

// next returns the nearest of the neighbours in all series.
func next(mm float64, of func(Neighbours) SizeName) (best SizeName) {
	for _, s := range AllSeries {
		n := Nearest(mm, s)
		if size := of(n); size.Name != "" && (best.Name == "" || math.Abs(size.MM-mm) < math.Abs(best.MM-mm)-sameSize) {
			best = size
		}
	}
	return best
}

// catalogue holds every series in ascending order. It is built when first asked
// for: most commands never do.
var catalogue = sync.OnceValue(func() (all [len(AllSeries)][]SizeName) {
	for _, n := range handbook.FractionDrills() {
		all[FractionSize] = append(all[FractionSize], SizeName{FractionSize, handbook.SixtyFourths(n) + " in", fractionMM(n)})
	}
	for _, n := range handbook.MetricDrills() {
		mm := float64(n) / 100
		all[MetricSize] = append(all[MetricSize], SizeName{MetricSize, strconv.FormatFloat(mm, 'f', -1, 64) + " mm", mm})
	}
	for n := 1; ; n++ {
		mm, ok := handbook.NumberDrill(n)
		if !ok {
			break
		}
		all[NumberSize] = append(all[NumberSize], SizeName{NumberSize, "#" + strconv.Itoa(n), mm})
	}
	for c := byte('A'); c <= 'Z'; c++ {
		mm, _ := handbook.LetterDrill(c)
		all[LetterSize] = append(all[LetterSize], SizeName{LetterSize, string(c), mm})
	}
	for _, list := range all {
		slices.SortFunc(list, func(a, b SizeName) int { return cmp.Compare(a.MM, b.MM) })
	}
	return all
})

// fractionMM is exact in its numerator, so the quotient is the nearest float64.
func fractionMM(sixtyFourths int) float64 { return float64(sixtyFourths*254) / 640 }
