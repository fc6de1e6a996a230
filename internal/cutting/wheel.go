package cutting

import (
	"math"
)

// WheelSpeed returns the surface speed, m/s, of a grinding wheel of diameter d
// mm turning at rpm: pi d rpm / 60000. NaN unless rpm is not negative and d
// above zero. Source: the same as SFPM = pi D N / 12 in inches.
func WheelSpeed(d, rpm float64) float64 {
	return orNaN(notNegative(rpm) && positive(d), math.Pi*d*rpm/60000)
}

// WheelRpm returns the speed, rpm, at which a wheel of diameter d mm has a
// surface speed in m/s: 60000 v / (pi d). NaN unless v is not negative and d
// above zero.
func WheelRpm(v, d float64) float64 {
	return orNaN(notNegative(v) && positive(d), 60000*v/(math.Pi*d))
}

// Wheel is a grinding wheel on its spindle.
type Wheel struct {
	New, Now    float64 // diameter as new and as worn, mm
	Rpm         float64 // of the spindle
	MarkedSpeed float64 // largest surface speed on the blotter, m/s; NaN when not marked
	MarkedRpm   float64 // largest speed on the blotter, rpm; NaN when not marked
}

// WheelResult is how a wheel runs.
type WheelResult struct {
	Speed      float64 // surface speed now, m/s
	SpeedNew   float64 // surface speed when new, m/s
	Kept       float64 // Speed over SpeedNew
	AllowedRpm float64 // NaN when the wheel is not marked
}

// Result returns the surface speed and the largest speed that the marking
// allows, NaN where a reading is missing. A wheel that has worn smaller cuts more
// slowly, yet is not allowed more: the marking was made for the new wheel, so the
// allowed speed is that of the new diameter. Source: derived, and the safety rule that
// the spindle must not exceed the marking.
func (w Wheel) Result() WheelResult {
	return WheelResult{
		Speed:      WheelSpeed(w.Now, w.Rpm),
		SpeedNew:   WheelSpeed(w.New, w.Rpm),
		Kept:       w.Now / w.New,
		AllowedRpm: w.allowed(),
	}
}

// allowed returns the lower of the marked speeds, rpm; NaN when there is none.
func (w Wheel) allowed() float64 {
	bySpeed := WheelRpm(w.MarkedSpeed, w.New)
	switch {
	case math.IsNaN(bySpeed):
		return w.MarkedRpm
	case math.IsNaN(w.MarkedRpm):
		return bySpeed
	}
	return min(bySpeed, w.MarkedRpm)
}
