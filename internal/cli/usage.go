package cli

import (
	"fmt"
	"io"
	"runtime"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/sheet/print"
)

// usagePage prints how a command is called. It is cobra's own page but for the
// broken lines, which cobra takes as a template only; a template calls methods
// by their names, and to hold them all ready makes the program a third larger
// and slower to start.
func (a *app) usagePage(cmd *cobra.Command) error {
	width := a.pageWidth()
	own := cmd.LocalFlags() // the line of use depends on its having put all flags together
	var b strings.Builder
	b.WriteString("Usage:")
	if cmd.Runnable() {
		b.WriteString("\n  " + cmd.UseLine())
	}
	if cmd.HasAvailableSubCommands() {
		b.WriteString("\n  " + cmd.CommandPath() + " [command]")
	}
	if cmd.HasExample() {
		b.WriteString("\n\nExamples:\n" + broken(cmd.Example, width))
	}
	usageCommands(&b, cmd)
	if !cmd.HasParent() {
		own = cmd.LocalNonPersistentFlags()
	}
	usageFlags(&b, "Flags:", own, width)
	if cmd.HasParent() {
		usageFlags(&b, "Flags of every command of "+cmd.Parent().Name()+":", shared(cmd), width)
	}
	if all := cmd.Root().PersistentFlags(); all.HasAvailableFlags() {
		b.WriteString("\n\nFlags of every command (evenlip help flags says what they do):\n")
		b.WriteString(strings.TrimRight(flagNames(all, width), "\n"))
	}
	if cmd.HasAvailableSubCommands() {
		fmt.Fprintf(&b, "\n\nUse %q for more information about a command.", cmd.CommandPath()+" [command] --help")
	}
	b.WriteByte('\n')
	_, err := io.WriteString(cmd.OutOrStderr(), b.String())
	return err
}

// shared are the flags that a command has from the one it is under, and not from evenlip.
func shared(cmd *cobra.Command) *pflag.FlagSet {
	flags := pflag.NewFlagSet("", pflag.ContinueOnError)
	cmd.InheritedFlags().VisitAll(func(f *pflag.Flag) {
		if cmd.Root().PersistentFlags().Lookup(f.Name) == nil {
			flags.AddFlag(f)
		}
	})
	return flags
}

// usageCommands lists the commands below cmd, group by group.
func usageCommands(b *strings.Builder, cmd *cobra.Command) {
	rest := "Available Commands:"
	for _, g := range cmd.Groups() {
		usageGroup(b, g.Title, g.ID, cmd)
		rest = "Additional Commands:"
	}
	usageGroup(b, rest, "", cmd)
}

func usageGroup(b *strings.Builder, title, id string, cmd *cobra.Command) {
	for _, sub := range cmd.Commands() {
		if sub.GroupID != id || !sub.IsAvailableCommand() && sub.Name() != "help" {
			continue
		}
		if title != "" {
			b.WriteString("\n\n" + title)
			title = ""
		}
		fmt.Fprintf(b, "\n  %-*s %s", sub.NamePadding(), sub.Name(), sub.Short)
	}
}

// broken goes on with examples too wide for a screen on another line, before a
// flag, in the way of a POSIX shell; others could not take them so.
func broken(examples string, width int) string {
	if runtime.GOOS == "windows" {
		return examples
	}
	const goesOn, indent = " \\", "      "
	var out []string
	for _, line := range strings.Split(examples, "\n") {
		for len(line)+len(goesOn) > width {
			at := strings.LastIndex(line[:width-len(goesOn)+1], " --")
			if at <= len(indent) {
				break
			}
			out = append(out, line[:at]+goesOn)
			line = indent + line[at+1:]
		}
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}

func usageFlags(b *strings.Builder, title string, flags *pflag.FlagSet, width int) {
	if flags.HasAvailableFlags() {
		b.WriteString("\n\n" + title + "\n" + strings.TrimRight(flags.FlagUsagesWrapped(width), " \n"))
	}
}

// flagNames lists flags by their names alone.
func flagNames(flags *pflag.FlagSet, width int) string {
	var all []string
	flags.VisitAll(func(f *pflag.Flag) { all = append(all, "--"+f.Name) })
	var b strings.Builder
	for _, line := range print.Wrap(strings.Join(all, " "), width-2) {
		b.WriteString("  " + line + "\n")
	}
	return b.String()
}
