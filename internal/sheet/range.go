package sheet

import "evenlip/internal/quantity"

// StopsShort notes that the steps of the range that was given for a reading do
// not meet its end, so that nobody takes the last row for it.
func (s *Sheet) StopsShort(reading string, r quantity.Range, kind quantity.Kind, gauge quantity.Gauge) {
	last, short := r.StopsShort()
	if !short {
		return
	}
	arg := func(v float64) quantity.Arg { return quantity.Arg{Kind: kind, Gauge: gauge, Value: v} }
	s.Find("range-stops-short", Note, "the range of {} stops at {}: steps of {} do not meet {}", quantity.Say(reading), arg(last), arg(r.Step.V), arg(r.To.V))
}
