package print

import (
	"math"
	"strconv"
	"strings"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/uncertainty"
)

// interval is what the gauges leave of a figure, in units that in gives, and whether
// they leave anything in doubt.
func interval(fig *sheet.Figure, in func(quantity.Kind, float64) float64) (v uncertainty.Interval, ok bool) {
	if fig.Doubt == nil || fig.Word != "" {
		return v, false
	}
	v = uncertainty.Interval{Low: in(fig.Kind, fig.Doubt.Low), High: in(fig.Kind, fig.Doubt.High)}
	return v, v.U() > 0 && !math.IsInf(v.U(), 1)
}

// exported is the same for scripts: the expanded uncertainty to one figure, and the
// ends to the same place.
func exported(fig *sheet.Figure) (u float64, ends uncertainty.Interval, ok bool) {
	v, ok := interval(fig, quantity.Export)
	if ok {
		u, ends = v.Rounded()
	}
	return u, ends, ok
}

// plusMinus is the expanded uncertainty of a figure as printed: to one significant
// figure, or where that is finer than the figure itself, as finely as that and rounded
// up. It is "" where none is claimed.
func plusMinus(fig *sheet.Figure, f quantity.Format) string {
	v, ok := interval(fig, f.InSystem)
	if !ok {
		return ""
	}
	n, u := decimals(fig, v, f), v.U()
	if n < v.Decimals() {
		u = math.Ceil(u*math.Pow10(n)-1e-9) / math.Pow10(n)
	}
	if text := rounded(u, n); strings.Trim(text, "0.") != "" {
		return text
	}
	return ""
}

// decimals are those of an uncertainty as printed.
func decimals(fig *sheet.Figure, v uncertainty.Interval, f quantity.Format) int {
	return min(v.Decimals(), f.Decimals(fig.Kind, fig.Gauge, fig.Value))
}

// rounded prints a number to so many decimals, to tens or hundreds where they are
// below zero.
func rounded(x float64, decimals int) string {
	if decimals < 0 {
		unit := math.Pow10(-decimals)
		x = math.Round(x/unit) * unit
	}
	text := strconv.FormatFloat(x, 'f', max(0, decimals), 64)
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text
}

// withDoubt is a figure with what is uncertain of it: "2.00 mm ±0.03" where its
// interval lies about it, else the interval, "0.11 to 0.19 mm".
func withDoubt(fig *sheet.Figure, f quantity.Format) string {
	switch u := plusMinus(fig, f); {
	case u == "":
		return shown(fig, f)
	case aside(fig, f):
		return ends(fig, f)
	default:
		return shown(fig, f) + " ±" + u
	}
}

// aside reports whether the middle of a figure's interval lies further from the
// figure than half the last digit of its uncertainty. A count has no middle.
func aside(fig *sheet.Figure, f quantity.Format) bool {
	if fig.Kind == quantity.Count {
		return true
	}
	v, _ := interval(fig, f.InSystem)
	off := (v.Low+v.High)/2 - f.InSystem(fig.Kind, fig.Value)
	return !(math.Abs(off) <= math.Pow10(-decimals(fig, v, f))/2)
}

// ends are those of a figure's interval.
func ends(fig *sheet.Figure, f quantity.Format) string {
	v, _ := interval(fig, f.InSystem)
	n := decimals(fig, v, f)
	return strings.TrimSpace(rounded(v.Low, n) + " to " + rounded(v.High, n) + " " + f.Unit(fig.Kind))
}
