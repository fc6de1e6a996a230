package cutting

import (
	"cmp"
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
	TooFast    bool    // the spindle runs faster than the marking allows
}

// Result returns the surface speed and the largest speed that the marking
// allows. A wheel that has worn smaller cuts more slowly, yet is not allowed
// more: the marking was made for the new wheel, so the allowed speed is that of
// the new diameter. A *point.DomainError names an impossible input. Source:
// derived, and the safety rule that the spindle must not exceed the marking.
func (w Wheel) Result() (WheelResult, error) {
	if err := w.err(); err != nil {
		return WheelResult{}, err
	}
	r := WheelResult{
		Speed:      WheelSpeed(w.Now, w.Rpm),
		SpeedNew:   WheelSpeed(w.New, w.Rpm),
		Kept:       w.Now / w.New,
		AllowedRpm: w.allowed(),
	}
	r.TooFast = w.Rpm > r.AllowedRpm*(1+1e-9)
	return r, nil
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

// err returns an error unless the wheel makes sense.
func (w Wheel) err() error {
	return cmp.Or(
		wantsPositive("wheel diameter as new", w.New),
		wants(w.Now > 0 && w.Now <= w.New, "wheel diameter", w.Now, "must be above 0, and not over that of the new wheel"),
		wants(notNegative(w.Rpm), "spindle speed", w.Rpm, "must not be negative"),
		wants(positive(w.MarkedSpeed) || math.IsNaN(w.MarkedSpeed), "marked surface speed", w.MarkedSpeed, "must be greater than zero"),
		wants(positive(w.MarkedRpm) || math.IsNaN(w.MarkedRpm), "marked speed", w.MarkedRpm, "must be greater than zero"),
	)
}
