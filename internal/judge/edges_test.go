package judge

import (
	"math"
	"testing"

	"evenlip/internal/handbook"
)

// A figure on its limit, with what rounding is forgiven, is within it; the next
// number beyond is not. Zero is no wear, and no clearance at all rubs.
func TestReasonsAtTheirLimits(t *testing.T) {
	band := handbook.Band{Low: 0.2, High: 0.7}
	onto := func(v, toward float64) [2]float64 { return [2]float64{v, math.Nextafter(v, toward)} }
	most, least := onto(over(band), 2), onto(under(band), -2)
	none := Result{}
	none.Wear = Wear{MarginLimit: band, FluteLimit: band, WebLimit: band, FlankLimit: band, Flute: 0.5}
	none.Point.Angle, none.Point.Limit = 0.5, band
	none.Chisel.Angle, none.Chisel.AngleLimit, none.Chisel.RatioLimit = 0.5, band, band
	none.Clearance = Clearance{Lip1: 0.5, Lip2: 0.5, Limit: band, Working: 0.5, Least: 0.5}
	none.Lips.Height, none.Lips.MidLip, none.Lips.Limit = 0.5, 0.5, band
	tiny := math.SmallestNonzeroFloat64
	tried := [reasons]bool{Cracked: true} // is read, not measured
	for _, c := range []struct {
		reason Reason
		figure func(*Result) *float64
		values [2]float64 // the last that is good, the first that is not
	}{
		{MarginGone, func(r *Result) *float64 { return &r.Wear.Margin }, most},
		{FluteShort, func(r *Result) *float64 { return &r.Wear.Flute }, least},
		{WebSpent, func(r *Result) *float64 { return &r.Chisel.WebRatio }, most},
		{Dull, func(r *Result) *float64 { return &r.Wear.Flank }, most},
		{CornerWorn, func(r *Result) *float64 { return &r.Wear.Corner }, [2]float64{0, tiny}},
		{MarginWorn, func(r *Result) *float64 { return &r.Wear.Margin }, [2]float64{0, tiny}},
		{Chipped, func(r *Result) *float64 { return &r.Wear.Chip }, [2]float64{0, tiny}},
		{PointOff, func(r *Result) *float64 { return &r.Point.Angle }, most},
		{PointOff, func(r *Result) *float64 { return &r.Point.Angle }, least},
		{ClearanceLow, func(r *Result) *float64 { return &r.Clearance.Lip1 }, least},
		{ClearanceLow, func(r *Result) *float64 { return &r.Clearance.Lip2 }, least},
		{ClearanceHigh, func(r *Result) *float64 { return &r.Clearance.Lip1 }, most},
		{ClearanceHigh, func(r *Result) *float64 { return &r.Clearance.Lip2 }, most},
		{FlankRubs, func(r *Result) *float64 { return &r.Clearance.Working }, [2]float64{tiny, 0}},
		{FlankRubs, func(r *Result) *float64 { return &r.Clearance.Least }, [2]float64{tiny, 0}},
		{ChiselOff, func(r *Result) *float64 { return &r.Chisel.Angle }, most},
		{ChiselOff, func(r *Result) *float64 { return &r.Chisel.Angle }, least},
		{LipsUneven, func(r *Result) *float64 { return &r.Lips.Height }, most},
		{LipsUneven, func(r *Result) *float64 { return &r.Lips.MidLip }, least},
		{ChiselLong, func(r *Result) *float64 { return &r.Chisel.Ratio }, most},
	} {
		tried[c.reason] = true
		for i, v := range c.values {
			r := none
			*c.figure(&r) = v
			if got := c.reason.holds(&r); got != (i == 1) {
				t.Errorf("%s at %v: %v", rules[c.reason].code, v, got)
			}
		}
	}
	for x := range rules {
		if !tried[x] {
			t.Errorf("%s is not tried at its limit", rules[x].code)
		}
		if Reason(x).holds(&none) {
			t.Errorf("%s holds of a sound drill", rules[x].code)
		}
	}
}

// What is forgiven is a part of the limit: on a limit of nothing, nothing is.
func TestSlackIsAPartOfTheLimit(t *testing.T) {
	for _, limit := range []float64{0, 0.001, 0.7, 40} {
		b := handbook.Band{Low: -limit, High: limit}
		if got := over(b) - limit; math.Abs(got-slack*limit) > 1e-15*limit {
			t.Errorf("over %v, %v is forgiven", limit, got)
		}
		if under(b) != -over(b) {
			t.Errorf("%v under, %v over", under(b), over(b))
		}
	}
}
