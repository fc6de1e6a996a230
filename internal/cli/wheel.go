package cli

import (
	"evenlip/internal/drill"
	"evenlip/internal/spindle"
)

var wheelCommand = calculation{
	name: "wheel", group: "grinder", short: "the wheel's surface speed against its marking, and the gaps",
	long: `The wheel's surface speed, new and worn, against what is marked on it; the
largest speed that the marking allows; the gaps of work rest and tongue; and
what to look at before it is started.`,
	examples: `  evenlip wheel --wheel 200mm --wheel-rpm 2850 --marked-speed 35m/s --rest-gap 2mm --tongue-gap 5mm
  evenlip wheel --wheel 8in --worn-to 6-1/2in --wheel-rpm 3450 --marked-rpm 3600 --check`,
	readings: []drill.Reading{drill.Wheel, drill.WornTo, drill.WheelRpm, drill.MarkedSpeed, drill.MarkedRpm, drill.RestGap, drill.TongueGap},
	grinder:  true, check: spindle.CheckWheel, compute: spindle.Wheel,
}
