package cli

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"evenlip/internal/crib"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/sheet/print"
)

// completer offers what may stand where a person has typed so far.
type completer = cobra.CompletionFunc

// completing reports whether a shell asks what could be typed next. What it is
// told then costs no other run anything.
func completing(args []string) bool {
	return len(args) > 0 && (args[0] == cobra.ShellCompRequestCmd || args[0] == cobra.ShellCompNoDescRequestCmd)
}

// completions tells the shell, for every flag and argument below root, what may
// stand there: files only where a file is wanted.
func (a *app) completions(root *cobra.Command) {
	flags, arguments := a.flagCompletions(), a.argumentCompletions()
	var visit func(*cobra.Command)
	visit = func(cmd *cobra.Command) {
		cmd.LocalFlags().VisitAll(func(f *pflag.Flag) {
			_, f.Usage = pflag.UnquoteUsage(f)
			complete, ok := flags[f.Name]
			if !ok {
				complete = cobra.NoFileCompletions
			}
			if _, set := cmd.GetFlagCompletionFunc(f.Name); !set && f.Value.Type() != "bool" {
				_ = cmd.RegisterFlagCompletionFunc(f.Name, complete) // fails only where one is set
			}
		})
		if complete, ok := arguments[cmd.CommandPath()]; ok {
			cmd.ValidArgsFunction = complete
		} else if cmd.ValidArgsFunction == nil {
			cmd.ValidArgsFunction = yamlFiles
			if !strings.Contains(cmd.Use, "FILE") {
				cmd.ValidArgsFunction = cobra.NoFileCompletions
			}
		}
		for _, sub := range cmd.Commands() {
			visit(sub)
		}
	}
	visit(root)
}

// completionCommand makes cobra's own command ours: it refuses a shell that it does
// not know, where by itself it shows its help and calls that a success.
func completionCommand(root *cobra.Command) {
	root.InitDefaultCompletionCmd()
	cmd, _, err := root.Find([]string{"completion"})
	if err != nil || cmd == root { // only one command was made, and it is another
		return
	}
	cmd.RunE = func(cmd *cobra.Command, _ []string) error { return cmd.Help() }
	cmd.Args = func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return nil
		}
		return noCommand(cmd, args[0], "completion knows no shell called %q")
	}
}

// flagCompletions holds what may follow a flag, by its name.
func (a *app) flagCompletions() map[string]completer {
	return map[string]completer{
		"format":                words(string(print.Table), string(print.Plain), string(print.JSON), string(print.CSV)),
		"units":                 words("mm", "in"),
		"color":                 words("auto", "always", "never"),
		"shop":                  yamlFiles,
		"file":                  yamlFiles,
		"svg":                   files("svg"),
		"drill":                 offer(a.drillNames),
		"verdict":               words(crib.Verdicts...),
		"command":               offer(commandNames),
		"input":                 words("json", "csv"),
		drill.Material.String(): offer(a.materialNames),
		drill.Drive.String():    offer(driveNames),
	}
}

// argumentCompletions holds what may stand after a command, by its path.
func (a *app) argumentCompletions() map[string]completer {
	return map[string]completer{
		"evenlip material":    first(offer(a.materialNames)),
		"evenlip sources":     first(offer(tableNames)),
		"evenlip schema":      first(words(answering()...)),
		"evenlip crib record": first(offer(a.drillNames)),
	}
}

// helpSubjects offers the topics and the commands, or what is below a command.
func (a *app) helpSubjects(cmd *cobra.Command, args []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
	about, rest, err := cmd.Root().Find(args)
	if err != nil || len(rest) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var subjects []cobra.Completion
	for _, sub := range about.Commands() {
		if sub.IsAvailableCommand() && strings.HasPrefix(sub.Name(), typed) {
			subjects = append(subjects, cobra.CompletionWithDesc(sub.Name(), sub.Short))
		}
	}
	for _, t := range topics {
		if len(args) == 0 && strings.HasPrefix(t.name, typed) {
			subjects = append(subjects, cobra.CompletionWithDesc(t.name, t.about))
		}
	}
	return subjects, cobra.ShellCompDirectiveNoFileComp
}

// first offers something for the first argument only.
func first(complete completer) completer {
	return func(cmd *cobra.Command, args []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return complete(cmd, args, typed)
	}
}

// offer offers those of a list, in its order, that begin with what was typed.
func offer(list func(cmd *cobra.Command, args []string) []cobra.Completion) completer {
	return func(cmd *cobra.Command, args []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
		others := func(word cobra.Completion) bool {
			return !strings.HasPrefix(strings.ToLower(word), strings.ToLower(typed))
		}
		return slices.DeleteFunc(list(cmd, args), others), cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
	}
}

func words(list ...string) completer {
	return offer(func(*cobra.Command, []string) []cobra.Completion { return slices.Clone(list) })
}

func files(endings ...string) completer {
	return cobra.FixedCompletions(endings, cobra.ShellCompDirectiveFilterFileExt)
}

var yamlFiles = files("yaml", "yml", "json")

func (a *app) materialNames(*cobra.Command, []string) (out []cobra.Completion) {
	_ = a.useShop() // a shop's file with a fault leaves the embedded materials
	for _, m := range a.set.book.Materials() {
		out = append(out, cobra.CompletionWithDesc(m.Name, m.Title))
	}
	return out
}

// commandNames lists the commands on a drill.
func commandNames(*cobra.Command, []string) (out []cobra.Completion) {
	for _, c := range commands {
		if info := c.About(); !info.Grinder {
			out = append(out, cobra.CompletionWithDesc(info.Name, info.Short))
		}
	}
	return out
}

func driveNames(*cobra.Command, []string) (out []cobra.Completion) {
	for _, f := range handbook.DriveFactors {
		out = append(out, f.Name)
	}
	return out
}

func tableNames(*cobra.Command, []string) (out []cobra.Completion) {
	for _, t := range handbook.Tables() {
		out = append(out, cobra.CompletionWithDesc(t.Name, t.Title))
	}
	return out
}

// drillNames lists the drills of the crib that is meant; a crib that cannot be
// read has none to offer.
func (a *app) drillNames(cmd *cobra.Command, args []string) (out []cobra.Completion) {
	from := new(cribFrom)
	from.file, _ = cmd.Flags().GetString("file")
	if cmd.Flags().Lookup("drill") != nil && len(args) > 0 {
		from.file = args[0]
	}
	from.sample, _ = cmd.Flags().GetBool("sample")
	c, err := a.openCrib(from)
	if err != nil {
		return nil
	}
	for i := range c.Drills {
		d := &c.Drills[i]
		if harmless(d.ID) == d.ID { // another could not be typed either
			out = append(out, cobra.CompletionWithDesc(d.ID, harmless(d.Readings.Written(drill.Size)+" "+d.Note)))
		}
	}
	return out
}

// harmless is a text on one line without control characters.
func harmless(text string) string {
	const anyWidth = 1 << 12
	return strings.TrimSpace(strings.Join(print.Wrap(text, anyWidth), " "))
}
