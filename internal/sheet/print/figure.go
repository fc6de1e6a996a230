package print

import (
	"math"
	"strconv"
	"strings"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/uncertainty"
)

// limitText puts a band in words: "115.0 to 121.0°", "max 0.10 mm", "min 0.025",
// "none" of what there may be none of.
func limitText(fig *sheet.Figure, f quantity.Format) string {
	b := fig.Limit
	f.Bench = false // to round a limit would move it
	f = apart(fig, f)
	text := func(v float64) string { return f.Text(fig.Kind, fig.Gauge, v) }
	switch {
	case b == nil || math.IsNaN(b.Low) || math.IsNaN(b.High):
		return ""
	case math.IsInf(b.High, 1) && b.Low >= 0 && b.Low <= math.SmallestNonzeroFloat64:
		return "above 0"
	case math.IsInf(b.High, 1):
		return "min " + text(b.Low)
	case b.Low == 0 && b.High == 0:
		return "none"
	case b.Low == 0 || b.Low == -b.High:
		return "max " + text(b.High)
	}
	return f.Number(fig.Kind, fig.Gauge, b.Low) + " to " + text(b.High)
}

// basis is the label of a limit's source, in one word; of a figure without a limit,
// the shop that has set it.
func basis(fig *sheet.Figure) string {
	label := handbook.Label(0)
	switch b := fig.Limit; {
	case b != nil && b.Source != nil:
		label = b.Source.Label
	case fig.Shop:
		label = handbook.Shop
	}
	switch label {
	case handbook.InPrint:
		return "print"
	case handbook.Practice:
		return "practice"
	case handbook.Memory:
		return "recalled"
	case handbook.Derived:
		return "derived"
	case handbook.Own:
		return "own rule"
	case handbook.Shop:
		return "shop"
	}
	return ""
}

// stateWord is the state as printed; both sides of a symmetrical limit are over.
func stateWord(fig *sheet.Figure) string {
	s := fig.State()
	if s == sheet.Under && fig.Limit.Low == -fig.Limit.High {
		s = sheet.Over
	}
	return s.String()
}

// number prints a figure's digits, shown the same with its unit.
func number(fig *sheet.Figure, f quantity.Format) string {
	if fig.Exact {
		return quantity.Digits(fig.Value, 8)
	}
	return apart(fig, f).Number(fig.Kind, fig.Gauge, fig.Value)
}

func shown(fig *sheet.Figure, f quantity.Format) string {
	if fig.Exact {
		return quantity.Digits(fig.Value, 8)
	}
	return apart(fig, f).Text(fig.Kind, fig.Gauge, fig.Value)
}

// apart returns f with as many decimals more as tell a figure that breaks its
// limit from that limit: "0.10 mm" over "max 0.10 mm" would say nothing.
func apart(fig *sheet.Figure, f quantity.Format) quantity.Format {
	if !fig.State().Outside() {
		return f
	}
	const most = 3
	finer := f
	for ; finer.Finer <= most; finer.Finer++ {
		text := func(v float64) string { return finer.Number(fig.Kind, fig.Gauge, v) }
		if v := text(fig.Value); v != text(fig.Limit.Low) && v != text(fig.Limit.High) {
			return finer
		}
	}
	return f
}

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
