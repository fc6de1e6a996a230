package cone

import (
	"errors"
	"math"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Check returns what cannot be about the setting or the wishes; a wish that the
// others put out of reach comes with what to give up, and by how much.
func Check(d *drill.Drill) fault.List {
	if found := contradiction(d); found != nil {
		return found
	}
	for _, v := range d.Values(drill.Clearance) {
		if v <= 0 {
			return fault.List{d.Refuse(drill.Clearance, "", "{} cannot be: it lies between 0 and 90°", quantity.Rad(v))}
		}
	}
	r := Compute(d)
	if r.err == nil {
		return nil
	}
	reading, why := r.blamed()
	value := d.Value(reading)
	if reading == drill.PointAngle {
		value = 2 * r.wish.HalfAngle
	}
	text := quantity.Sayf(why)
	if sheet.Known(value) {
		text = quantity.Sayf("{}: "+why, quantity.Of(reading.Spec().Kind, value))
	}
	var reach *point.UnreachableError
	if errors.As(r.err, &reach) && reading == drill.ChiselAngle && sheet.Known(reach.Low, reach.High) {
		text.Format += "; {} to {} can be ground"
		text.Args = append(text.Args, quantity.Rad(math.Pi-reach.High), quantity.Rad(math.Pi-reach.Low))
	}
	return fault.List{d.Fault(reading, text, r.giveUp(quantity.Format{System: d.System()}))}
}

// contradiction finds a point and a setting that were given together.
func contradiction(d *drill.Drill) fault.List {
	var rivals []drill.Reading
	hint := "give point-angle, clearance and chisel-angle for the setting, or semi-angle, axis-angle, axis-offset and vertex for the point"
	switch basisOf(d) {
	case fromVertex:
		rivals = []drill.Reading{drill.ChiselAngle, drill.ChiselLength}
	case fromSetting:
		rivals = []drill.Reading{drill.PointAngle, drill.Clearance, drill.HeelDrop, drill.ChiselAngle, drill.ChiselLength}
	}
	for _, reading := range rivals {
		if !d.Has(reading) || d.Sample {
			continue
		}
		if basisOf(d) == fromVertex {
			hint = reading.String() + " and vertex fix each other: give one of them"
		}
		return fault.List{d.Refuse(reading, hint, "it follows from the setting and cannot be asked for as well")}
	}
	return nil
}

// blamed returns the reading that the error of package point is about, and what
// stands against it.
func (r *Result) blamed() (reading drill.Reading, why string) {
	var name string
	var domain *point.DomainError
	var reach *point.UnreachableError
	switch {
	case errors.As(r.err, &domain):
		name, why = domain.Quantity, domain.Why
	case errors.As(r.err, &reach):
		name, why = reach.Wish, reach.Why
	default:
		return drill.Size, r.err.Error()
	}
	for _, b := range [...]struct {
		name          string
		wish, setting drill.Reading
	}{
		{"cone semi-angle", drill.SemiAngle, drill.SemiAngle},
		{"axis angle", drill.AxisAngle, drill.AxisAngle},
		{"axis offset", drill.AxisOffset, drill.AxisOffset},
		{"vertex distance", drill.Vertex, drill.Vertex},
		{"chisel-edge angle", drill.ChiselAngle, drill.ChiselAngle},
		{"web thickness", drill.Web, drill.Web},
		{"half point angle", drill.PointAngle, drill.AxisAngle},
		{"lip clearance", drill.Clearance, drill.AxisOffset},
	} {
		switch {
		case b.name != name:
		case r.basis == fromSetting:
			return b.setting, why
		default:
			return b.wish, why
		}
	}
	return drill.Size, why
}

// wish is one of the numbers that may be given up.
type wish struct {
	reading   drill.Reading
	at        func(*Result) *float64
	step      float64 // as finely as the number is shown
	low, high float64 // nothing beyond them grinds a point
}

// shown turns the number into the one that the flag takes.
func (w *wish) shown(v float64) float64 {
	switch w.reading {
	case drill.PointAngle:
		return 2 * v
	case drill.ChiselAngle:
		return point.Obtuse(v)
	}
	return v
}

func (r *Result) wishes(f quantity.Format) []wish {
	const tenth = degree / 10
	fine := math.Pow10(-f.Decimals(quantity.Length, quantity.Caliper, 1)) / f.InSystem(quantity.Length, 1)
	vertex := wish{drill.Vertex, func(r *Result) *float64 { return &r.setting.Vertex }, fine, 0, point.FarthestVertex * r.wish.D}
	if r.basis == fromSetting {
		apart := math.Hypot(r.setting.Vertex, r.wish.Web/2)
		return []wish{
			{drill.SemiAngle, func(r *Result) *float64 { return &r.setting.SemiAngle }, tenth, 0, math.Pi / 2},
			{drill.AxisAngle, func(r *Result) *float64 { return &r.setting.AxisAngle }, tenth, 0, math.Pi / 2},
			{drill.AxisOffset, func(r *Result) *float64 { return &r.setting.Offset }, fine, -apart, apart},
			vertex,
		}
	}
	last := wish{drill.ChiselAngle, func(r *Result) *float64 { return &r.Chisel.Acute }, tenth, 0, math.Pi / 2}
	if r.basis == fromVertex {
		last = vertex
	}
	return []wish{
		{drill.Clearance, func(r *Result) *float64 { return &r.wish.Clearance }, tenth, 0, math.Pi / 2},
		{drill.SemiAngle, func(r *Result) *float64 { return &r.wish.SemiAngle }, tenth, 0, math.Pi / 2},
		{drill.PointAngle, func(r *Result) *float64 { return &r.wish.HalfAngle }, tenth / 2, 0, math.Pi / 2},
		last,
	}
}

// giveUp names, for each wish, the nearest value that would do, the others kept.
func (r *Result) giveUp(f quantity.Format) string {
	var ways []string
	for _, w := range r.wishes(f) {
		v, ok := r.nearest(&w)
		if !ok {
			continue
		}
		kind, gauge := w.reading.Spec().Kind, quantity.Caliper
		if kind == quantity.Angle {
			gauge = quantity.Protractor
		}
		by, sign := w.shown(v)-w.shown(*w.at(r)), "+"
		if by < 0 {
			sign = "-"
		}
		ways = append(ways, w.reading.String()+" "+f.Text(kind, gauge, w.shown(v))+" ("+sign+f.Text(kind, gauge, math.Abs(by))+")")
	}
	if len(ways) == 0 {
		return "no one of them alone can be changed to make it possible"
	}
	return "give up one of these: " + strings.Join(ways, ", or ")
}

// nearest returns the value of a wish closest to the one asked for with which
// the point can be ground, of those that can be shown without rounding.
func (r *Result) nearest(w *wish) (float64, bool) {
	asked := *w.at(r)
	below, lower := r.toward(w, -1)
	above, higher := r.toward(w, 1)
	if lower && (!higher || asked-below <= above-asked) {
		return below, true
	}
	return above, higher
}

// strides is how many strides a search takes to the value it has come to: a
// vertex that is a thousand times too far is brought back in no more of them
// than one that is twice too far takes.
const strides = 1024

// toward returns the first value of a wish, on one side of the one asked for,
// with which the point can be ground.
func (r *Result) toward(w *wish, side float64) (float64, bool) {
	trial := *r
	trial.semiTaken = r.semiTaken && w.reading == drill.PointAngle // taken from that, it goes with it
	v := w.at(&trial)
	asked := *v
	grinds := func(n float64) bool {
		*v = side * n * w.step
		_, err := trial.grind()
		return err == nil
	}
	// Counted in steps, and so that the count rises on either side.
	const rounding = 1e-9
	nearer, end := w.low, w.high
	if side < 0 {
		nearer, end = -w.high, -w.low
	}
	first := math.Max(math.Floor(side*asked/w.step+rounding)+1, math.Ceil(nearer/w.step))
	passed := first - 1
	for n := first; n <= end/w.step; n += math.Max(1, math.Floor(math.Abs(n)/strides)) {
		if !grinds(n) {
			passed = n
			continue
		}
		for n = passed + 1; !grinds(n); n++ { // what the stride passed over may do as well
		}
		return side * n * w.step, true
	}
	return 0, false
}
