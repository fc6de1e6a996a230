package swing

import (
	"errors"
	"math"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/figure"
	"evenlip/internal/inspect"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
)

const degree = math.Pi / 180

// Check returns what cannot be about the setting or the wishes; a wish that the
// others put out of reach comes with what to give up, and by how much.
func Check(d *drill.Drill) []inspect.Impossible {
	if found := contradiction(d); found != nil {
		return found
	}
	if found := ranges(d); found != nil {
		return found
	}
	g := grindOf(d)
	if g.err == nil {
		return nil
	}
	r := blamed(g.err, g.basis)
	value := d.Value(r)
	if r == drill.PointAngle {
		value = 2 * g.wish.HalfAngle
	}
	text := figure.Sayf(why(g.err))
	if !math.IsNaN(value) {
		text = figure.Sayf("{}: "+why(g.err), figure.Of(r.Spec().Kind, value))
	}
	var reach *point.UnreachableError
	if errors.As(g.err, &reach) && r == drill.ChiselAngle && figure.Known(reach.Low, reach.High) {
		text.Format += "; {} to {} can be ground"
		text.Args = append(text.Args, figure.Deg(math.Pi-reach.High), figure.Deg(math.Pi-reach.Low))
	}
	return []inspect.Impossible{{Reading: r, Text: text, Hint: g.giveUp(quantity.Format{System: d.System()})}}
}

// contradiction finds a point and a setting that were given together.
func contradiction(d *drill.Drill) []inspect.Impossible {
	if d.Sample {
		return nil
	}
	rivals := map[basis][]drill.Reading{fromVertex: {drill.ChiselAngle}, fromSetting: {drill.PointAngle, drill.Clearance, drill.ChiselAngle}}
	from := basisOf(d)
	for _, r := range rivals[from] {
		if !d.Has(r) {
			continue
		}
		hint := "give point-angle, clearance and chisel-angle for the setting, or semi-angle, axis-angle, axis-offset and vertex for the point"
		if from == fromVertex {
			hint = "chisel-angle and vertex fix each other: give one of them"
		}
		return []inspect.Impossible{{Reading: r, Text: figure.Sayf("it follows from the setting and cannot be wished as well"), Hint: hint}}
	}
	return nil
}

// ranges finds settings that no fixture can have.
func ranges(d *drill.Drill) (found []inspect.Impossible) {
	for _, r := range [...]drill.Reading{drill.SemiAngle, drill.AxisAngle, drill.Clearance} {
		for _, v := range d.Values(r) {
			if v.V <= 0 || v.V >= math.Pi/2 {
				found = append(found, inspect.Impossible{Reading: r, Text: figure.Sayf("{} cannot be: it lies between 0 and 90°", figure.Deg(v.V))})
			}
		}
	}
	if v, ok := d.Get(drill.Vertex); ok && v <= 0 {
		found = append(found, inspect.Impossible{Reading: drill.Vertex, Text: figure.Sayf("it cannot be zero")})
	}
	return found
}

// wish is one of the numbers that may be given up.
type wish struct {
	name string
	kind quantity.Kind
	at   *float64
	step float64 // as finely as the number is shown
	most float64 // how far
	// shown turns the number into the one the flag takes.
	shown func(float64) float64
}

func (g *grind) wishes(f quantity.Format) []wish {
	same := func(v float64) float64 { return v }
	fine := math.Pow10(-f.Decimals(quantity.Length, quantity.Caliper, 1)) / f.InSystem(quantity.Length, 1)
	if g.basis == fromSetting {
		return []wish{
			{"semi-angle", quantity.Angle, &g.setting.SemiAngle, degree / 10, 45 * degree, same},
			{"axis-angle", quantity.Angle, &g.setting.AxisAngle, degree / 10, 45 * degree, same},
			{"axis-offset", quantity.Length, &g.setting.Offset, fine, g.d, same},
			{"vertex", quantity.Length, &g.setting.Vertex, fine, g.d, same},
		}
	}
	out := []wish{
		{"clearance", quantity.Angle, &g.wish.Clearance, degree / 10, 30 * degree, same},
		{"semi-angle", quantity.Angle, &g.wish.SemiAngle, degree / 10, 45 * degree, same},
		{"point-angle", quantity.Angle, &g.wish.HalfAngle, degree / 20, 30 * degree, func(v float64) float64 { return 2 * v }},
	}
	if g.basis == fromVertex {
		return append(out, wish{"vertex", quantity.Length, &g.vertex, fine, g.d, same})
	}
	return append(out, wish{"chisel-angle", quantity.Angle, &g.chisel, degree / 10, 60 * degree, point.Obtuse})
}

// giveUp names, for each wish, the nearest value that would do, the others kept.
func (g *grind) giveUp(f quantity.Format) string {
	var ways []string
	for _, w := range g.wishes(f) {
		asked := *w.at
		if v, ok := g.nearest(w); ok {
			gauge := quantity.Caliper
			if w.kind == quantity.Angle {
				gauge = quantity.Protractor
			}
			by := w.shown(v) - w.shown(asked)
			sign := "+"
			if by < 0 {
				sign = "-"
			}
			ways = append(ways, w.name+" "+f.Text(w.kind, gauge, w.shown(v))+" ("+sign+f.Text(w.kind, gauge, math.Abs(by))+")")
		}
		*w.at = asked
	}
	if len(ways) == 0 {
		return "no one of them alone can be changed to make it possible"
	}
	return "give up one of these: " + strings.Join(ways, ", or ")
}

// nearest returns the value of a wish closest to the one asked for with which
// the point can be ground, of those that can be shown without rounding.
func (g *grind) nearest(w wish) (float64, bool) {
	asked := *w.at
	for n := 1.0; n*w.step <= w.most; n++ {
		for _, side := range [...]float64{-1, 1} {
			*w.at = (math.Round(asked/w.step) + side*n) * w.step
			if _, err := g.make(); err == nil {
				return *w.at, true
			}
		}
	}
	return 0, false
}
