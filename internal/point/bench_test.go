package point_test

import (
	"math"
	"testing"

	"evenlip/internal/point"
)

var sink float64

func BenchmarkConeWithChisel(b *testing.B) {
	for b.Loop() {
		c, err := plain118.WithChisel(55 * deg)
		if err != nil {
			b.Fatal(err)
		}
		sink = c.Setting().Offset
	}
}

func BenchmarkConeFromSetting(b *testing.B) {
	s := point.Setting{SemiAngle: 30 * deg, AxisAngle: 29 * deg, Offset: 1.2, Vertex: 5}
	for b.Loop() {
		c, err := s.Point(10, 1.5)
		if err != nil {
			b.Fatal(err)
		}
		sink = c.Chisel()
	}
}

func BenchmarkClosedForms(b *testing.B) {
	for b.Loop() {
		sink = point.AlongLip(5, 1.5) + point.Height(10, 118*deg) + point.ChiselAngle(1.5, 1.8) + point.ClearanceOfDrop(0.3, 10, 0.3)
	}
}

func BenchmarkLeastWorking(b *testing.B) {
	f := point.NewFlank(10, 1.5, 59*deg, 12*deg)
	for b.Loop() {
		sink, _ = f.LeastWorking(0.2, 0.9, 5)
	}
}

func BenchmarkEdge(b *testing.B) {
	e := point.NewEdge(point.NewFlank(10, 1.5, 59*deg, 12*deg), 30*deg)
	for b.Loop() {
		sink = e.WorkingRake(3, 0.2)
	}
}

// Good input allocates nothing, whatever is asked.
func TestNothingAllocates(t *testing.T) {
	f := point.NewFlank(10, 1.5, 59*deg, 12*deg)
	e := point.NewEdge(f, 30*deg)
	for name, ask := range map[string]func() error{
		"closed forms": func() error { sink = point.AlongLip(5, 1.5) + point.Height(10, 2); return nil },
		"edge":         func() error { sink = e.WorkingRake(3, 0.2); return nil },
		"least":        func() error { sink, _ = f.LeastWorking(2, 0.76, 5); return nil },
		"chisel":       func() error { c, err := plain118.WithChisel(1); sink = c.ChiselTangent(); return err },
		"vertex":       func() error { c, err := plain118.WithVertex(5); sink = c.HeelClearance(5, 0.3); return err },
		"setting": func() error {
			c, err := point.Setting{SemiAngle: 0.5, AxisAngle: 0.5, Offset: 1, Vertex: 5}.Point(10, 1.5)
			sink = c.Setting().Offset
			return err
		},
		"truing": func() error {
			p, err := point.Truing(point.Lip{HalfAngle: 1}, point.Lip{HalfAngle: 1.1}, 1, 5, 1)
			sink = p.Most()
			return err
		},
		"lengths": func() error {
			p, err := point.LipsFromLengths(5, 5.1, 1, 1.01, 10, 1.5)
			sink = p.AtCorner
			return err
		},
		"facet": func() error { sink = point.SecondFacet(0.1, 1, 1); return nil },
	} {
		if err := ask(); err != nil || math.IsNaN(sink) {
			t.Errorf("%s: %g, %v", name, sink, err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = ask() }); n != 0 {
			t.Errorf("%s allocates %g times", name, n)
		}
	}
}
