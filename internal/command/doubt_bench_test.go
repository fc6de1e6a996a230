package command_test

import (
	"testing"

	"evenlip/internal/command"
	"evenlip/internal/command/cone"
	"evenlip/internal/command/edge"
	"evenlip/internal/command/point"
	"evenlip/internal/command/regrind"
	"evenlip/internal/command/spindle"
	"evenlip/internal/quantity"
	"evenlip/internal/testkit/drilltest"
)

// BenchmarkDoubt works a drill out with what its gauges leave in doubt.
func BenchmarkDoubt(b *testing.B) {
	g := quantity.Gauges{Caliper: 0.02, Protractor: 0.017, Indicator: 0.01}
	line := "size 12mm; web 2.1mm; chisel-angle 126; lip-angle 59.5,58.5; lip-height 0.14mm,0.02mm; clearance 11,13; flute 78mm; depth 30mm; flank-wear 0.2mm; remove 5mm; feed 0.3mm; corner-wear 0.6mm"
	for _, x := range []struct {
		c    command.Command
		line string
	}{{&point.Inspect, line}, {&point.Lips, line}, {&point.Web, line}, {&point.Point, line}, {&regrind.Command, line}, {&edge.Command, line},
		{&cone.Command, "size 10mm; web 1.5mm; point-angle 118; clearance 12; chisel-angle 126.5; semi-angle 30"},
		{&spindle.Thrust, line}, {&spindle.Speed, line}, {&spindle.Pilot, line + "; pilot 2.3mm"}, {&spindle.Thin, line}} {
		d := drilltest.Read(b, x.line)
		b.Run(x.c.About().Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				command.Compute(x.c, d, command.Options{Gauges: g}).Free()
			}
		})
	}
}
