package judge_test

import (
	"math"
	"reflect"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/judge"
	"evenlip/internal/sheet"
	"evenlip/internal/testkit/drilltest"
)

const (
	deg  = math.Pi / 180
	inch = 25.4
)

type readings = drilltest.Readings

// of takes "size 12mm; web 2mm" apart.
func of(line string) readings { return drilltest.Of(line) }

// possible understands the readings and checks that they can be.
func possible(t drilltest.Tester, rs readings) *drill.Drill {
	t.Helper()
	d := rs.Drill(t)
	if found := check(d); len(found) > 0 {
		t.Fatalf("%v: %+v", rs, found)
	}
	return d
}

// check returns everything about the readings that cannot be.
func check(d *drill.Drill) fault.List {
	if found := d.Possible(); len(found) > 0 {
		return found
	}
	return judge.Cannot(d)
}

func compute(t drilltest.Tester, line string) judge.Result {
	t.Helper()
	return judge.Compute(possible(t, of(line)))
}

// whole is a drill of which everything was read.
var whole = of("size 12mm; material steel-200; web 2.1mm; second-web 2.5mm; second-web-at 30mm; chisel-angle 126; point-angle 118; " +
	"lip-angle 59.5,58.5; lip-length 5.6mm,5.7mm; lip-height 0.06mm,0.02mm; clearance 11,12; heel-drop 0.6mm,0.64mm; heel-turn 30; " +
	"helix 30; flute 78mm; depth 30mm; flank-wear 0.2mm; corner-wear 0.4mm; margin-wear 0.3mm; lip-chip 0.2mm; remove 0.8mm; feed 0.2mm; rpm 600")

// within fails unless got is want, give or take tolerance.
func within(t drilltest.Tester, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g within %.3g", what, got, want, tolerance)
	}
}

// between fails unless low <= got <= high.
func between(t drilltest.Tester, what string, got, low, high float64) {
	t.Helper()
	if !(got >= low && got <= high) {
		t.Errorf("%s: got %.6g, want %.6g to %.6g", what, got, low, high)
	}
}

// same fails unless two results agree in every number, to a part of it, and in
// everything else exactly.
func same(t drilltest.Tester, a, b judge.Result, part float64) {
	t.Helper()
	alike(t, "Result", reflect.ValueOf(a), reflect.ValueOf(b), part)
}

func alike(t drilltest.Tester, where string, a, b reflect.Value, part float64) {
	t.Helper()
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			alike(t, where+"."+a.Type().Field(i).Name, a.Field(i), b.Field(i), part)
		}
	case reflect.Float64:
		x, y := a.Float(), b.Float()
		if x == y || math.IsNaN(x) && math.IsNaN(y) {
			return
		}
		if !(math.Abs(x-y) <= part*max(1, math.Abs(x))) {
			t.Errorf("%s: %v and %v", where, x, y)
		}
	case reflect.Array:
		for i := range a.Len() {
			alike(t, where, a.Index(i), b.Index(i), part)
		}
	default:
		if !a.Equal(b) {
			t.Errorf("%s: %v and %v", where, a, b)
		}
	}
}

// numbers returns every figure of a sheet that is known, by key; words too.
func numbers(s *sheet.Sheet) map[string]sheet.Figure {
	out := map[string]sheet.Figure{}
	s.Each(func(f *sheet.Figure) {
		if f.Known() {
			out[f.Key] = *f
		}
	})
	return out
}
