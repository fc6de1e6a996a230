package print

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
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
		return "memory"
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
