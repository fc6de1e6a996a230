package cone

import (
	"errors"
	"math"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

const degree = math.Pi / 180

// Check returns what cannot be about the setting or the wishes; a wish that the
// others put out of reach comes with what to give up, and by how much.
func Check(d *drill.Drill) []judge.Impossible {
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
	text := quantity.Sayf(why(g.err))
	if !math.IsNaN(value) {
		text = quantity.Sayf("{}: "+why(g.err), quantity.Of(r.Spec().Kind, value))
	}
	var reach *point.UnreachableError
	if errors.As(g.err, &reach) && r == drill.ChiselAngle && sheet.Known(reach.Low, reach.High) {
		text.Format += "; {} to {} can be ground"
		text.Args = append(text.Args, quantity.Rad(math.Pi-reach.High), quantity.Rad(math.Pi-reach.Low))
	}
	return []judge.Impossible{{Reading: r, Text: text, Hint: g.giveUp(quantity.Format{System: d.System()})}}
}

// contradiction finds a point and a setting that were given together.
func contradiction(d *drill.Drill) []judge.Impossible {
	if d.Sample {
		return nil
	}
	rivals := map[basis][]drill.Reading{fromVertex: {drill.ChiselAngle, drill.ChiselLength},
		fromSetting: {drill.PointAngle, drill.Clearance, drill.HeelDrop, drill.ChiselAngle, drill.ChiselLength}}
	from := basisOf(d)
	for _, r := range rivals[from] {
		if !d.Has(r) {
			continue
		}
		hint := "give point-angle, clearance and chisel-angle for the setting, or semi-angle, axis-angle, axis-offset and vertex for the point"
		if from == fromVertex {
			hint = r.String() + " and vertex fix each other: give one of them"
		}
		return []judge.Impossible{{Reading: r, Text: quantity.Sayf("it follows from the setting and cannot be wished as well"), Hint: hint}}
	}
	return nil
}

// ranges finds settings that no fixture can have.
func ranges(d *drill.Drill) (found []judge.Impossible) {
	for _, r := range [...]drill.Reading{drill.SemiAngle, drill.AxisAngle, drill.Clearance} {
		for _, v := range d.Values(r) {
			if v.V <= 0 || v.V >= math.Pi/2 {
				found = append(found, judge.Impossible{Reading: r, Text: quantity.Sayf("{} cannot be: it lies between 0 and 90°", quantity.Rad(v.V))})
			}
		}
	}
	if v, ok := d.Get(drill.Vertex); ok && v <= 0 {
		found = append(found, judge.Impossible{Reading: drill.Vertex, Text: quantity.Sayf("it cannot be zero")})
	}
	return found
}

// wish is one of the numbers that may be given up.
type wish struct {
	name      string
	kind      quantity.Kind
	asked     float64
	put       func(*grind, float64)
	step      float64 // as finely as the number is shown
	low, high float64 // nothing beyond them grinds a point
	// shown turns the number into the one the flag takes.
	shown func(float64) float64
}

func (g *grind) wishes(f quantity.Format) []wish {
	same := func(v float64) float64 { return v }
	angle := func(name string, asked float64, put func(*grind, float64)) wish {
		return wish{name, quantity.Angle, asked, put, degree / 10, 0, math.Pi / 2, same}
	}
	fine := math.Pow10(-f.Decimals(quantity.Length, quantity.Caliper, 1)) / f.InSystem(quantity.Length, 1)
	length := func(name string, asked float64, put func(*grind, float64), low, high float64) wish {
		return wish{name, quantity.Length, asked, put, fine, low, high, same}
	}
	farthest := point.FarthestVertex * g.d
	if g.basis == fromSetting {
		apart := math.Hypot(g.setting.Vertex, g.web/2)
		return []wish{
			angle("semi-angle", g.setting.SemiAngle, func(g *grind, v float64) { g.setting.SemiAngle = v }),
			angle("axis-angle", g.setting.AxisAngle, func(g *grind, v float64) { g.setting.AxisAngle = v }),
			length("axis-offset", g.setting.Offset, func(g *grind, v float64) { g.setting.Offset = v }, -apart, apart),
			length("vertex", g.setting.Vertex, func(g *grind, v float64) { g.setting.Vertex = v }, 0, farthest),
		}
	}
	half := angle("point-angle", g.wish.HalfAngle, (*grind).putHalfAngle)
	half.step, half.shown = degree/20, func(v float64) float64 { return 2 * v }
	out := []wish{
		angle("clearance", g.wish.Clearance, func(g *grind, v float64) { g.wish.Clearance = v }),
		angle("semi-angle", g.wish.SemiAngle, func(g *grind, v float64) { g.wish.SemiAngle = v }),
		half,
	}
	if g.basis == fromVertex {
		return append(out, length("vertex", g.vertex, func(g *grind, v float64) { g.vertex = v }, 0, farthest))
	}
	chisel := angle("chisel-angle", g.chisel, func(g *grind, v float64) { g.chisel = v })
	chisel.shown = point.Obtuse
	return append(out, chisel)
}

// putHalfAngle wishes for another point; a semi-angle that was taken from it
// goes with it.
func (g *grind) putHalfAngle(k float64) {
	g.wish.HalfAngle = k
	if g.taken.semiAngle {
		g.wish.SemiAngle = usualSemiAngle(k)
	}
}

// giveUp names, for each wish, the nearest value that would do, the others kept.
func (g *grind) giveUp(f quantity.Format) string {
	var ways []string
	for _, w := range g.wishes(f) {
		v, ok := g.nearest(w)
		if !ok {
			continue
		}
		gauge := quantity.Caliper
		if w.kind == quantity.Angle {
			gauge = quantity.Protractor
		}
		by := w.shown(v) - w.shown(w.asked)
		sign := "+"
		if by < 0 {
			sign = "-"
		}
		ways = append(ways, w.name+" "+f.Text(w.kind, gauge, w.shown(v))+" ("+sign+f.Text(w.kind, gauge, math.Abs(by))+")")
	}
	if len(ways) == 0 {
		return "no one of them alone can be changed to make it possible"
	}
	return "give up one of these: " + strings.Join(ways, ", or ")
}

// nearest returns the value of a wish closest to the one asked for with which
// the point can be ground, of those that can be shown without rounding.
func (g *grind) nearest(w wish) (float64, bool) {
	below, lower := g.toward(w, -1)
	above, higher := g.toward(w, 1)
	if lower && (!higher || w.asked-below <= above-w.asked) {
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
func (g *grind) toward(w wish, side float64) (float64, bool) {
	trial := *g
	grinds := func(n float64) bool {
		w.put(&trial, side*n*w.step)
		_, err := trial.make()
		return err == nil
	}
	// Counted in steps, and so that the count rises on either side.
	const rounding = 1e-9
	nearer, end := w.low, w.high
	if side < 0 {
		nearer, end = -w.high, -w.low
	}
	first := math.Max(math.Floor(side*w.asked/w.step+rounding)+1, math.Ceil(nearer/w.step))
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
