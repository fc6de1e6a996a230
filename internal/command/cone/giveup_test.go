package cone

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit"
	"evenlip/internal/testkit/drilltest"
)

var way = regexp.MustCompile(`(clearance|semi-angle|point-angle|chisel-angle|vertex|axis-angle|axis-offset) (-?[0-9.]+)(°| mm) \(`)

// ways are the values that a refusal says would do.
func ways(t *rapid.T, hint string) map[drill.Reading]string {
	out := map[drill.Reading]string{}
	for _, m := range way.FindAllStringSubmatch(hint, -1) {
		r, ok := drill.Find(m[1])
		if !ok {
			t.Fatalf("%s: nothing is called %s", hint, m[1])
		}
		out[r] = m[2]
	}
	return out
}

// refused is what cannot be of the readings, by all that looks at them.
func refused(t *rapid.T, r readings) fault.List {
	d := r.Drill(t)
	if found := d.Possible(); len(found) > 0 {
		return found
	}
	return Check(d)
}

// span is where a test draws a reading from, as finely as it is shown.
type span struct {
	low, high float64
	digits    int
}

// anyhow holds whatever a slip of the finger may type, usual what is ground.
var (
	anyhow = map[drill.Reading]span{
		drill.PointAngle: {20, 178, 1}, drill.Clearance: {0.5, 45, 1}, drill.SemiAngle: {2, 80, 1}, drill.ChiselAngle: {91, 175, 1},
		drill.AxisAngle: {2, 85, 1}, drill.AxisOffset: {-40, 40, 2}, drill.Vertex: {0.05, 1500, 2},
	}
	usual = map[drill.Reading]span{
		drill.PointAngle: {90, 150, 1}, drill.Clearance: {5, 20, 1}, drill.SemiAngle: {10, 35, 1}, drill.ChiselAngle: {105, 145, 1},
		drill.AxisAngle: {15, 45, 1}, drill.AxisOffset: {0.2, 3, 2}, drill.Vertex: {2, 10, 2},
	}
)

// draw draws a reading: lengths as often about a tenth of a millimetre as about ten.
func (s span) draw(t *rapid.T, r drill.Reading) string {
	v := rapid.Float64Range(s.low, s.high).Draw(t, r.String())
	if r.Spec().Kind == quantity.Length {
		least := math.Max(s.low, 0.01)
		v = math.Copysign(least*math.Pow(s.high/least, rapid.Float64Range(0, 1).Draw(t, "size of it")), v)
	}
	return strconv.FormatFloat(v, 'f', s.digits, 64)
}

// sets are the three sets of readings that a point is worked out from.
var sets = [...][]drill.Reading{
	{drill.PointAngle, drill.Clearance, drill.SemiAngle, drill.ChiselAngle},
	{drill.PointAngle, drill.Clearance, drill.SemiAngle, drill.Vertex},
	{drill.SemiAngle, drill.AxisAngle, drill.AxisOffset, drill.Vertex},
}

// drawSet draws one of the sets and its readings.
func drawSet(t *rapid.T, from map[drill.Reading]span) ([]drill.Reading, readings) {
	set := rapid.SampledFrom(sets[:]).Draw(t, "set")
	out := readings{drill.Size: "10mm", drill.Web: rapid.SampledFrom([]string{"0.8mm", "1.5mm", "4mm"}).Draw(t, "web")}
	for _, r := range set {
		out[r] = from[r].draw(t, r)
	}
	return set, out
}

// What a refusal says can be had, can: each way out, taken alone, works.
func TestGivingUpWhatIsSaid(t *testing.T) {
	refusals, offered := 0, 0
	testkit.Property(t, "each way out that a refusal names works", func(t *rapid.T) {
		set, r := drawSet(t, anyhow)
		for _, left := range set[:3] { // what is taken for it goes with the others
			if set[3] == drill.ChiselAngle && rapid.Bool().Draw(t, "without "+left.String()) {
				delete(r, left)
			}
		}
		found := refused(t, r)
		if len(found) == 0 {
			return
		}
		refusals++
		for reading, text := range ways(t, found[0].Hint) {
			offered++
			if left := refused(t, r.With(readings{reading: text})); len(left) > 0 {
				t.Fatalf("%v: %s; with --%s %s it is still refused: %v", r, found[0].Hint, reading, text, left)
			}
		}
	})
	if refusals == 0 || offered < refusals/2 {
		t.Errorf("%d refused, %d ways out", refusals, offered)
	}
}

// Nothing that would do is kept back, nor anything nearer than what is said: any
// reading of a point that can be ground, moved anywhere, is offered back, and
// between what is offered and what was typed nothing can be ground.
func TestGivingUpTheNearest(t *testing.T) {
	moved := map[drill.Reading]int{}
	testkit.Property(t, "a reading moved out of reach is offered back, no farther off than it was moved, and nothing nearer can be ground", func(t *rapid.T) {
		from := usual
		if rapid.IntRange(0, 4).Draw(t, "of five") == 0 {
			from = anyhow
		}
		set, r := drawSet(t, from)
		if len(refused(t, r)) > 0 {
			t.Skip("it cannot be ground to begin with")
		}
		for _, reading := range set {
			typed := r.With(readings{reading: anyhow[reading].draw(t, reading)})
			d := typed.Drill(t)
			if found := Check(d); len(found) > 0 && len(d.Possible()) == 0 {
				moved[reading]++
				offeredBack(t, reading, r, typed, found[0].Hint)
			}
		}
	})
	for _, r := range slices.Concat(sets[:]...) {
		if moved[r] == 0 {
			t.Errorf("%s was never moved out of reach", r)
		}
	}
}

// offeredBack fails the test unless the hint about readings of which one was
// moved offers it back.
func offeredBack(t *rapid.T, moved drill.Reading, r, typed readings, hint string) {
	number := func(text string) float64 {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	text, ok := ways(t, hint)[moved]
	if !ok {
		t.Fatalf("%v: %s; --%s %s is not offered", typed, hint, moved, r[moved])
	}
	asked, back, step := number(typed[moved]), number(text), math.Pow10(-anyhow[moved].digits)
	steps := math.Round((back - asked) / step)
	if most := math.Abs(number(r[moved]) - asked); math.Abs(back-asked) > most+step/2 {
		t.Fatalf("%v: %s; --%s %s is nearer", typed, hint, moved, r[moved])
	}
	nearer := func(part float64) readings {
		at := asked + step*math.Trunc(part*(steps-math.Copysign(1, steps)))
		return typed.With(readings{moved: strconv.FormatFloat(at, 'f', anyhow[moved].digits, 64)})
	}
	if r := nearer(rapid.Float64Range(0, 1).Draw(t, "part of the way")); len(refused(t, r)) == 0 {
		t.Fatalf("%v: %s; --%s %s is nearer", typed, hint, moved, r[moved])
	}
	beside := nearer(1)
	found := refused(t, beside)
	if len(found) == 0 {
		t.Fatalf("%v: %s; --%s %s is nearer", typed, hint, moved, beside[moved])
	}
	if again := ways(t, found[0].Hint)[moved]; math.Abs(number(again)-number(beside[moved])) > 1.5*step {
		t.Fatalf("%v: %s, but %s would do", beside, found[0].Hint, text)
	}
}

// What was typed far off is brought back as near as what was typed close by,
// from an offset beyond the drill as well.
func TestGivingUpFarOff(t *testing.T) {
	setting := readings{drill.Size: "10mm", drill.Web: "1.5mm", drill.SemiAngle: "30", drill.AxisAngle: "29.28", drill.AxisOffset: "1.2mm", drill.Vertex: "4mm"}
	for _, c := range []struct{ typed, hint string }{
		{"axis-offset 8mm", "axis-offset 2.43 mm (-5.57 mm)"},
		{"axis-offset 20mm", "axis-offset 2.43 mm (-17.57 mm)"},
		{"axis-offset 20mm", "vertex 19.99 mm (+15.99 mm)"}, // (20^2 - 0.75^2)^0.5 = 19.986
		{"axis-offset 2000mm", "axis-offset 2.43 mm (-1997.57 mm)"},
		{"axis-offset 60.04mm", "vertex 60.04 mm (+56.04 mm)"}, // (60.04^2 - 0.75^2)^0.5 = 60.035
		{"axis-offset 60.05mm", "vertex 60.05 mm (+56.05 mm)"}, // 60.045
		{"vertex 4000mm", "vertex 1000.00 mm (-3000.00 mm)"},   // a hundred diameters
	} {
		found := Check(setting.With(drilltest.Of(c.typed)).Drill(t))
		if len(found) == 0 || !strings.Contains(found[0].Hint, c.hint) {
			t.Errorf("%s: %v", c.typed, found)
		}
	}
}
