package cli

import (
	"github.com/spf13/cobra"

	"evenlip/internal/command"
	"evenlip/internal/command/cone"
	"evenlip/internal/command/edge"
	"evenlip/internal/command/point"
	"evenlip/internal/command/regrind"
	"evenlip/internal/command/spindle"
	"evenlip/internal/command/wheel"
)

// commands are the commands on a drill. They and their lists are data that the linker
// lays out: starting the program works out none.
var commands = [...]command.Command{
	&point.Inspect, &point.Point, &point.Clearance, &point.Chisel, &point.Web, &point.Lips,
	&regrind.Command,
	&edge.Command, &cone.Command,
	&spindle.Thrust, &spindle.Thin, &spindle.Pilot, &spindle.Speed, &wheel.Command,
}

// others are the commands that are no calculation on one drill.
var others = [...]struct {
	name string
	make func(*app) *cobra.Command
}{
	{"batch", (*app).batchCommand},
	{"crib", (*app).cribCommand},
	{"draw", (*app).drawCommand},
	{"size", (*app).sizeCommand},
	{"material", (*app).materialCommand},
	{"sources", (*app).sourcesCommand},
	{"version", (*app).versionCommand},
	{"schema", (*app).schemaCommand},
}

// asked makes the command that the first word names, and none of the rest: a
// script that runs once a drill would wait for them longer than for its answer.
// Where no command is named there (help, completion, a flag, a slip), it makes
// all.
func (a *app) asked(args []string) []*cobra.Command {
	if len(args) > 0 {
		if cmd := a.named(args[0]); cmd != nil {
			return []*cobra.Command{cmd}
		}
	}
	return a.commands()
}

// named makes the command of that name; nil where there is none.
func (a *app) named(name string) *cobra.Command {
	if c := onDrill(name); c != nil {
		return a.onDrill(c)
	}
	for i := range others {
		if others[i].name == name {
			return others[i].make(a)
		}
	}
	return nil
}

// commands makes every command.
func (a *app) commands() []*cobra.Command {
	var all []*cobra.Command
	for _, c := range commands {
		all = append(all, a.onDrill(c))
	}
	for i := range others {
		all = append(all, others[i].make(a))
	}
	return all
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
