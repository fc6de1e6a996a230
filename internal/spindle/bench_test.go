package spindle

import (
	"testing"

	"evenlip/internal/drill/drilltest"
	"evenlip/internal/figure"
)

func BenchmarkThrust(b *testing.B) {
	d := drilltest.Read(b, handbook)
	for b.Loop() {
		Thrust(d, false)
	}
}

func BenchmarkThinToThrust(b *testing.B) {
	d := drilltest.Read(b, "size 20mm; web 4mm; chisel-angle 125; feed 0.25mm; thrust 8kN")
	var s *figure.Sheet
	for b.Loop() {
		s = Thin(d, false)
	}
	if !figure.Known(s.Lookup("web_target_mm").Value) {
		b.Fatal("no target")
	}
}
