// Package wheel is the command on the grinding wheel: its speed against its marking,
// and the gaps of rest and tongue.
package wheel

import (
	"math"

	"evenlip/internal/command"
	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Command is evenlip wheel.
var Command = command.Of[Result]{Info: command.Info{
	Name: "wheel", Safety: &command.OfWheel, Group: "grinder", Short: "the wheel's surface speed against its marking, and the gaps",
	Long: `The wheel's surface speed, new and worn, against what is marked on it; the
largest speed that the marking allows; the gaps of work rest and tongue; and
what to look at before it is started.`,
	Examples: `  evenlip wheel --wheel 200mm --wheel-rpm 2850 --marked-speed 35m/s --rest-gap 2mm --tongue-gap 5mm
  evenlip wheel --wheel 8in --worn-to 6-1/2in --wheel-rpm 3450 --marked-rpm 3600 --check`,
	Readings: []drill.Reading{drill.Wheel, drill.WornTo, drill.WheelRpm, drill.MarkedSpeed, drill.MarkedRpm, drill.RestGap, drill.TongueGap},
	Grinder:  true,
}, Compute: Compute, Figures: Figures, Rest: Rest, Declares: declares, Screen: (*Result).screen}

// The limits that a wheel is held against.
const (
	_ sheet.Limit = iota
	speedLimit
	rpmLimit
	restLimit
	tongueLimit
	limits
)

// Result is a grinding wheel and the limits that it is held against.
type Result struct {
	cutting.Wheel
	cutting.WheelResult
	Held [limits]sheet.Held

	marked bool // on the wheel: its speed, its rpm or both
	worn   bool
	asRead []quantity.Value // of the wheel
}

// Compute works out how a wheel runs. Where no marking was read, the speed that is
// common for ordinary wheels, as published in the system that is read, stands in.
func Compute(d *drill.Drill) Result {
	r := Result{worn: d.Has(drill.WornTo), marked: d.Has(drill.MarkedSpeed) || d.Has(drill.MarkedRpm), asRead: d.AsRead(drill.Wheel)}
	r.Wheel = cutting.Wheel{New: d.Value(drill.Wheel), Now: d.Value(drill.WornTo), Rpm: d.Value(drill.WheelRpm),
		MarkedSpeed: d.Value(drill.MarkedSpeed), MarkedRpm: d.Value(drill.MarkedRpm)}
	if !r.worn {
		r.Now = r.New
	}
	source := handbook.MarkedSpeedSource
	if !r.marked {
		r.MarkedSpeed, source = handbook.OrdinaryWheelMetric, handbook.OrdinaryWheelSource
		if d.System() == quantity.Inch {
			r.MarkedSpeed = handbook.OrdinaryWheelInch
		}
	}
	r.WheelResult = r.Wheel.Result()
	r.Held[speedLimit] = sheet.Held{Value: r.Speed, Band: handbook.Band{High: cutting.WheelSpeed(r.New, r.AllowedRpm), Source: source}}
	r.Held[rpmLimit] = sheet.Held{Value: r.Rpm, Band: handbook.Band{High: r.AllowedRpm, Source: source}}
	r.Held[restLimit] = sheet.Held{Value: d.Value(drill.RestGap), Band: handbook.RestGap}
	r.Held[tongueLimit] = sheet.Held{Value: d.Value(drill.TongueGap), Band: handbook.TongueGap}
	return r
}

type (
	def   = sheet.Def[Result]
	group = sheet.Group[Result]
)

// letters are what the formulas start from: diameters in millimetres, V a metre a
// second.
var letters = group{Figures: []def{
	{Letter: "dn", Label: "diameter when new, mm", Kind: quantity.Number, Work: sheet.AsRead, Of: "wheel", Value: func(r *Result) float64 { return r.New }},
	{Letter: "dw", Label: "diameter now, mm", Kind: quantity.Number, Work: sheet.AsRead, Of: "wheel", Value: func(r *Result) float64 { return r.Now }},
	{Letter: "n", Label: "spindle speed", Kind: quantity.Rpm, Work: sheet.AsRead, Of: "wheel-rpm", Value: func(r *Result) float64 { return r.Rpm }},
	{Letter: "vm", Label: "surface speed marked or common, m/s", Kind: quantity.Number, Work: sheet.AsRead, Of: "marked-speed", Value: func(r *Result) float64 { return r.MarkedSpeed }},
	{Letter: "V", Label: "1 m/s", Kind: quantity.Surface, Work: sheet.AsRead, Value: func(*Result) float64 { return 1 }},
}}

const rim = "derived: the rim's way in a turn"

var speeds = group{Title: "Speed", Figures: []def{
	{Key: "surface_speed_mps", Label: "surface speed now", Kind: quantity.Surface, Limit: speedLimit,
		Value: func(r *Result) float64 { return r.Speed }, Work: "pi * dw * n / 60000 * V", Source: rim},
	{Key: "surface_speed_new_mps", Label: "when the wheel was new", Kind: quantity.Surface,
		Value: func(r *Result) float64 { return r.SpeedNew }, Work: "pi * dn * n / 60000 * V", Source: rim},
	{Key: "surface_speed_kept", Label: "surface speed, now / new", Kind: quantity.Share,
		Value: func(r *Result) float64 { return r.Kept }, Work: "dw / dn", Source: rim},
	{Key: "allowed_rpm", Label: "spindle speed allowed", Kind: quantity.Rpm, Of: "wheel, or marked-rpm",
		Value: func(r *Result) float64 { return r.AllowedRpm },
		LabelOf: func(r *Result) string {
			if r.marked {
				return "spindle speed allowed"
			}
			return "commonly allowed"
		},
		Works: func(r *Result) (work, source string) {
			if cutting.WheelRpm(r.MarkedSpeed, r.New) > r.AllowedRpm || math.IsNaN(r.MarkedSpeed) || math.IsNaN(r.New) {
				return sheet.AsRead, "as marked, the lower of two markings"
			}
			return "60000 * vm / (pi * dn)", rim
		}},
	{Key: "wheel_rpm", Label: "spindle speed", Kind: quantity.Rpm, Limit: rpmLimit,
		Value: func(r *Result) float64 { return r.Rpm }, Work: sheet.AsRead, Source: sheet.AsRead, Of: "wheel-rpm"},
}}

var gaps = group{Title: "Gaps", Figures: []def{
	{Key: "rest_gap_mm", Label: "work rest to wheel", Kind: quantity.Length, Gauge: quantity.Caliper, Limit: restLimit,
		Value: func(r *Result) float64 { return r.Held[restLimit].Value }, Work: sheet.AsRead, Source: sheet.AsRead, OfWays: gapsMissing},
	{Key: "tongue_gap_mm", Label: "tongue to wheel", Kind: quantity.Length, Gauge: quantity.Caliper, Limit: tongueLimit,
		Value: func(r *Result) float64 { return r.Held[tongueLimit].Value }, Work: sheet.AsRead, Source: sheet.AsRead, OfWays: gapsMissing},
}}

// gapsMissing names the gaps that were not read.
func gapsMissing(r *Result) string {
	return sheet.Wanted(sheet.Need{Reading: "rest-gap", Value: r.Held[restLimit].Value}, sheet.Need{Reading: "tongue-gap", Value: r.Held[tongueLimit].Value})
}

// Figures puts the figures of r into s.
func Figures(r *Result, s *sheet.Sheet) { sheet.Put(s, r, r.Held[:], &letters, &speeds, &gaps) }

// Rest says what stands against starting the wheel, and what to look at before.
func Rest(r *Result, s *sheet.Sheet) {
	s.Cautions = cautions
	s.Grids = append(s.Grids, beforeStart())
	r.slip(s)
	r.warn(s)
}

// smallWheel is under any bench grinder's wheel, mm.
const smallWheel = 40

// slip finds a bare number that reads better in inches.
func (r *Result) slip(s *sheet.Sheet) {
	for _, v := range r.asRead {
		if v.Assumed && v.System == quantity.Metric && v.V < smallWheel {
			s.Find("wheel-may-be-inches", sheet.Warn, "wheel {} was read as millimetres; if inches were meant, write {}in", quantity.Say(v.Text), quantity.Say(v.Text))
		}
	}
}

func (r *Result) warn(s *sheet.Sheet) {
	r.speedFindings(s)
	if r.Held[restLimit].Outside() {
		s.Find("rest-gap-wide", sheet.Stop, "the rest stands {} off: work can be drawn in and break the wheel; set it with the wheel stopped", quantity.MM(r.Held[restLimit].Value))
	}
	if r.Held[tongueLimit].Outside() {
		s.Find("tongue-gap-wide", sheet.Stop, "the tongue stands {} off: a broken wheel would come out; set it down to the wheel", quantity.MM(r.Held[tongueLimit].Value))
	}
	if r.worn && r.Kept < 1 {
		s.Find("wheel-worn", sheet.Note, "the worn wheel's rim runs at {} of its speed when new and cuts that much slower; it must not be sped up past its marking, and rest and tongue must follow it down",
			quantity.Of(quantity.Share, r.Kept))
	}
}

// speedFindings stops a wheel that is faster than its marking. Where none was
// read the common speed decides nothing, so that a spindle over it is a warning.
func (r *Result) speedFindings(s *sheet.Sheet) {
	fast, turns, allowed := r.Held[rpmLimit].Outside(), quantity.Of(quantity.Rpm, r.Rpm), quantity.Of(quantity.Rpm, r.AllowedRpm)
	if r.marked {
		if fast {
			s.Find("wheel-too-fast", sheet.Stop, "the spindle turns at {} where the wheel allows {}: do not start it", turns, allowed)
		}
		return
	}
	s.Find("marking-not-read", sheet.Warn, "no marking was given, and the wheel's own decides: read it before starting; {}, common for ordinary vitrified wheels, stands in for it here, and a wheel without a marking is not to be run",
		quantity.Of(quantity.Surface, r.MarkedSpeed))
	if fast {
		s.Find("wheel-over-common", sheet.Warn, "the spindle turns at {} where that common speed would allow {}", turns, allowed)
	}
}

func declares(s *sheet.Sheet) { s.Grids = append(s.Grids, startList()) }

// startList is the list to go through, without its rows.
func startList() sheet.Grid {
	return sheet.Grid{Key: "before_start", Title: "Before it is started", Columns: []sheet.Column{
		{Key: "step", Label: "", Kind: quantity.Count}, {Key: "check", Label: "check that", Kind: quantity.Word}}}
}

// beforeStart is the list to go through before the wheel is started.
func beforeStart() sheet.Grid {
	g := startList()
	for i, line := range [...]string{
		"the wheel's marked speed is at least the spindle's",
		"the wheel rang clear before it was mounted; a dead sound is a crack",
		"both flanges are alike and a third of the wheel across, or more",
		"the guard is on, and its tongue is within 1/4 in (6 mm)",
		"the rest is clamped within 1/8 in (3 mm), set with the wheel stopped",
		"eye protection is on; no gloves, nothing loose near the wheel",
		"nobody stands in the wheel's plane while it runs up; a new wheel runs a minute first",
		"the drill goes to the face of the wheel, never to its side",
	} {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.V(float64(i + 1)), sheet.W(line)})
	}
	return g
}

var cautions = []string{
	"a wheel that was dropped or sounds dead is not run",
	"work to the shop's own rules and the local code; ask a qualified person when unsure",
}
