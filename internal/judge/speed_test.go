package judge_test

import (
	"reflect"
	"testing"

	"evenlip/internal/command/point"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
)

var kept judge.Result

// A crib has thousands of drills: computing one allocates nothing, with any
// reading missing.
func TestComputeAllocatesNothing(t *testing.T) {
	all := possible(t, whole)
	check := func(what string, d *drill.Drill) {
		if n := testing.AllocsPerRun(20, func() { kept = judge.Compute(d) }); n != 0 {
			t.Errorf("%s: %g allocations", what, n)
		}
	}
	check("all read", all)
	check("nothing read", &drill.Drill{})
	check("by another name", possible(t, of("size 12mm; material mild-steel; lip-angle 59,59; lip-length 5mm,5.1mm")))
	for _, r := range drill.All() {
		d := *all
		d.Drop(r)
		check("without "+r.String(), &d)
		d.Drop(drill.LipHeight)
		check("without lip-height and "+r.String(), &d)
	}
}

// Sharing the list of materials does not let a calculation change it.
func TestTheListOfMaterialsStays(t *testing.T) {
	before := handbook.Materials()
	for _, m := range before {
		point.Inspect.Sheet(possible(t, whole.With(of("material "+m.Name))), true)
	}
	for i, m := range handbook.Materials() {
		if m.Name != before[i].Name || !reflect.DeepEqual(m.Also, before[i].Also) || m.Relief != before[i].Relief || m.Point != before[i].Point {
			t.Errorf("%s changed", before[i].Name)
		}
	}
}

func BenchmarkCompute(b *testing.B) {
	d := possible(b, whole)
	b.ReportAllocs()
	for b.Loop() {
		kept = judge.Compute(d)
	}
}

func BenchmarkSheet(b *testing.B) {
	d := possible(b, whole)
	b.ReportAllocs()
	for b.Loop() {
		point.Inspect.Sheet(d, false)
	}
}
