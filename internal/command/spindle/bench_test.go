package spindle

import (
	"testing"

	"evenlip/internal/sheet"
	"evenlip/internal/testkit/drilltest"
)

func BenchmarkThrust(b *testing.B) {
	d := drilltest.Read(b, handbookExample)
	for b.Loop() {
		Thrust.Sheet(d, false)
	}
}

func BenchmarkThinToThrust(b *testing.B) {
	d := drilltest.Read(b, "size 20mm; web 4mm; chisel-angle 125; feed 0.25mm; thrust 8kN")
	var s *sheet.Sheet
	for b.Loop() {
		s = Thin.Sheet(d, false)
	}
	if !sheet.Known(s.Lookup("web_target_mm").Value) {
		b.Fatal("no target")
	}
}
