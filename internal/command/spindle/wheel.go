package spindle

import (
	"math"

	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// wheel is a grinding wheel and the limits that it is held against.
type wheel struct {
	cutting.Wheel
	cutting.WheelResult
	marked        bool
	top, topSpeed handbook.Band // rpm; m/s
	rest, tongue  float64
	system        quantity.System
	worn          bool
}

// Wheel is the sheet of the grinder.
func Wheel(d *drill.Drill, explain bool) *sheet.Sheet {
	w := wheelOf(d)
	s := sheet.New("wheel", explain)
	s.Cautions = wheelCautions
	s.Open("Speed")
	w.speedFigures(s)
	s.Open("Gaps")
	w.gapFigures(s)
	s.Grids = append(s.Grids, beforeStart())
	wheelSlip(d, s)
	w.warn(s)
	return s
}

func wheelOf(d *drill.Drill) *wheel {
	w := &wheel{rest: d.Value(drill.RestGap), tongue: d.Value(drill.TongueGap), system: d.System(), worn: d.Has(drill.WornTo)}
	w.Wheel = cutting.Wheel{New: d.Value(drill.Wheel), Now: d.Value(drill.WornTo), Rpm: d.Value(drill.WheelRpm),
		MarkedSpeed: d.Value(drill.MarkedSpeed), MarkedRpm: d.Value(drill.MarkedRpm)}
	if !w.worn {
		w.Now = w.New
	}
	w.marked = d.Has(drill.MarkedSpeed) || d.Has(drill.MarkedRpm)
	source := handbook.MarkedSpeedSource()
	if !w.marked {
		w.MarkedSpeed, source = w.common(), handbook.OrdinaryWheelSource()
	}
	out, err := w.Wheel.Result()
	if err != nil { // a reading is missing: what hangs on it is not known
		out = cutting.WheelResult{Speed: cutting.WheelSpeed(w.Now, w.Rpm), SpeedNew: cutting.WheelSpeed(w.New, w.Rpm), Kept: w.Now / w.New, AllowedRpm: math.NaN()}
		if sheet.Known(w.New) {
			out.AllowedRpm = allowed(w.Wheel)
		} else if sheet.Known(w.MarkedRpm) {
			out.AllowedRpm = w.MarkedRpm
		}
		out.TooFast = w.Rpm > out.AllowedRpm*(1+1e-9)
	}
	w.WheelResult = out
	w.top = handbook.Band{Low: 0, High: out.AllowedRpm, Source: source}
	w.topSpeed = handbook.Band{Low: 0, High: cutting.WheelSpeed(w.New, out.AllowedRpm), Source: source}
	return w
}

// common is the speed that stands in for a marking, as published in the system
// that is read.
func (w *wheel) common() float64 {
	if w.system == quantity.Inch {
		return handbook.OrdinaryWheelInch
	}
	return handbook.OrdinaryWheelMetric
}

// allowed is the speed that the marking allows a wheel that does not turn yet.
func allowed(w cutting.Wheel) float64 {
	w.Rpm = 0
	out, err := w.Result()
	if err != nil {
		return math.NaN()
	}
	return out.AllowedRpm
}

func (w *wheel) speedFigures(s *sheet.Sheet) {
	needs := sheet.Wanted(sheet.Need{Reading: "wheel", Value: w.New}, sheet.Need{Reading: "wheel-rpm", Value: w.Rpm})
	s.Add(w.limited(sheet.Figure{Key: "surface_speed_mps", Label: "surface speed now", Value: w.Speed, Kind: quantity.Surface, Wants: needs}, &w.topSpeed))
	w.workSpeed(s, w.Now)
	s.Add(sheet.Figure{Key: "surface_speed_new_mps", Label: "when the wheel was new", Value: w.SpeedNew, Kind: quantity.Surface, Wants: needs})
	w.workSpeed(s, w.New)
	s.Add(sheet.Figure{Key: "surface_speed_kept", Label: "surface speed, now / new", Value: w.Kept, Kind: quantity.Share, Wants: sheet.Wanted(sheet.Need{Reading: "wheel", Value: w.New})})
	s.Work(rim, "diameter now / diameter new", "100 * {} / {}", quantity.MM(w.Now), quantity.MM(w.New))
	label := "spindle speed allowed"
	if !w.marked {
		label = "commonly allowed"
	}
	s.Add(sheet.Figure{Key: "allowed_rpm", Label: label, Value: w.AllowedRpm, Kind: quantity.Rpm, Wants: sheet.Wanted(sheet.Need{Reading: "wheel, or marked-rpm", Value: w.AllowedRpm})})
	w.workAllowed(s)
	s.Add(w.limited(sheet.Figure{Key: "wheel_rpm", Label: "spindle speed", Value: w.Rpm, Kind: quantity.Rpm, Wants: sheet.Wanted(sheet.Need{Reading: "wheel-rpm", Value: w.Rpm})}, &w.top))
	s.Work("as read", "N as read", "{}", num(w.Rpm))
}

const rim = "derived: the rim's way in a turn"

func (w *wheel) limited(f sheet.Figure, limit *handbook.Band) sheet.Figure {
	if sheet.Known(limit.High) {
		f.Limit = limit
	}
	return f
}

// foot is a foot a minute in m/s.
const foot = 0.3048 / 60

// workSpeed leaves the working of the surface speed of a wheel d mm across.
func (w *wheel) workSpeed(s *sheet.Sheet, d float64) {
	if w.system == quantity.Inch {
		s.Work(rim, "v = pi D N / 12 * 1 ft/min, D in inches", "pi * {} * {} / 12 * {}", num(d/handbook.InchMM), num(w.Rpm), quantity.Of(quantity.Surface, foot))
		return
	}
	s.Work(rim, "v = pi D N / 60000, D in mm", "pi * {} * {} / 60000", num(d), num(w.Rpm))
}

func (w *wheel) workAllowed(s *sheet.Sheet) {
	bySpeed, whose := cutting.WheelRpm(w.MarkedSpeed, w.New), "marked"
	if !w.marked {
		whose = "common for ordinary wheels"
	}
	switch {
	case !(bySpeed <= w.AllowedRpm*(1+1e-9)):
		s.Work("as marked", "N as marked, the lower of the two markings", "{}", num(w.AllowedRpm))
	case w.system == quantity.Inch:
		s.Work(rim, "N = 12 v / (pi D), v in ft/min as "+whose+", D as new in inches", "12 * {} / (pi * {})", num(w.MarkedSpeed/foot), num(w.New/handbook.InchMM))
	default:
		s.Work(rim, "N = 60000 v / (pi D), v as "+whose+", D as new in mm", "60000 * {} / (pi * {})", num(w.MarkedSpeed), num(w.New))
	}
}

func (w *wheel) gapFigures(s *sheet.Sheet) {
	for _, g := range [...]struct {
		key, label string
		value      float64
		limit      *handbook.Band
	}{
		{"rest_gap_mm", "work rest to wheel", w.rest, &handbook.RestGap},
		{"tongue_gap_mm", "tongue to wheel", w.tongue, &handbook.TongueGap},
	} {
		s.Add(sheet.Figure{Key: g.key, Label: g.label, Value: g.value, Kind: quantity.Length, Gauge: quantity.Caliper, Limit: g.limit,
			Wants: sheet.Wanted(sheet.Need{Reading: "rest-gap", Value: w.rest}, sheet.Need{Reading: "tongue-gap", Value: w.tongue})})
		s.Work("as read", "as read", "{}", quantity.MM(g.value))
	}
}

// smallWheel is under any bench grinder's wheel, mm.
const smallWheel = 40

// wheelSlip finds a bare number that reads better in inches.
func wheelSlip(d *drill.Drill, s *sheet.Sheet) {
	for _, v := range d.AsRead(drill.Wheel) {
		if v.Assumed && v.System == quantity.Metric && v.V < smallWheel {
			s.Find("wheel-may-be-inches", sheet.Warn, "wheel {} was read as millimetres; if inches were meant, write {}in", quantity.Say(v.Text), quantity.Say(v.Text))
		}
	}
}

func (w *wheel) warn(s *sheet.Sheet) {
	w.speedFindings(s)
	if w.rest > handbook.RestGap.High*(1+1e-9) {
		s.Find("rest-gap-wide", sheet.Stop, "the rest stands {} off: work can be drawn in and break the wheel; set it with the wheel stopped", quantity.MM(w.rest))
	}
	if w.tongue > handbook.TongueGap.High*(1+1e-9) {
		s.Find("tongue-gap-wide", sheet.Stop, "the tongue stands {} off: a broken wheel would come out; set it down to the wheel", quantity.MM(w.tongue))
	}
	if w.worn && w.Kept < 1 {
		s.Find("wheel-worn", sheet.Note, "the worn wheel's rim runs at {} of its speed when new and cuts that much slower; it must not be sped up past its marking, and rest and tongue must follow it down",
			quantity.Of(quantity.Share, w.Kept))
	}
}

// speedFindings stops a wheel that is faster than its marking. Where none was
// read the common speed decides nothing, so that a spindle over it is a warning.
func (w *wheel) speedFindings(s *sheet.Sheet) {
	turns, allowed := quantity.Of(quantity.Rpm, w.Rpm), quantity.Of(quantity.Rpm, w.AllowedRpm)
	if w.marked {
		if w.TooFast {
			s.Find("wheel-too-fast", sheet.Stop, "the spindle turns at {} where the wheel allows {}: do not start it", turns, allowed)
		}
		return
	}
	s.Find("marking-not-read", sheet.Warn, "no marking was given, and the wheel's own decides: read it before starting; {}, common for ordinary vitrified wheels, stands in for it here, and a wheel without a marking is not to be run",
		quantity.Of(quantity.Surface, w.MarkedSpeed))
	if w.TooFast {
		s.Find("wheel-over-common", sheet.Warn, "the spindle turns at {} where that common speed would allow {}", turns, allowed)
	}
}
