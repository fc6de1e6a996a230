package cli

import (
	"evenlip/internal/command"
	"evenlip/internal/command/cone"
	"evenlip/internal/command/edge"
	"evenlip/internal/command/point"
	"evenlip/internal/command/regrind"
	"evenlip/internal/command/spindle"
)

// commands are the commands on a drill. They and their lists are data that the linker
// lays out: starting the program works out none.
var commands = [...]command.Command{
	&point.Inspect, &point.Point, &point.Clearance, &point.Chisel, &point.Web, &point.Lips,
	&regrind.Command,
	&edge.Command, &cone.Command,
	&spindle.ThrustCommand, &spindle.ThinCommand, &spindle.PilotCommand, &spindle.SpeedCommand, &spindle.WheelCommand,
}

// onDrill returns the command on a drill of that name, nil where there is none.
func onDrill(name string) command.Command {
	for _, c := range commands {
		if c.About().Name == name {
			return c
		}
	}
	return nil
}
