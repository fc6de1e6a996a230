package cli

import (
	"bytes"
	"strings"
	"testing"

	"github.com/spf13/pflag"
)

func printed(t *testing.T, args ...string) string {
	t.Helper()
	var out, errw bytes.Buffer
	if status := Main(args, strings.NewReader(""), &out, &errw); status != 0 || errw.Len() > 0 {
		t.Fatalf("%q: status %d, %s", args, status, errw.String())
	}
	return out.String()
}

// A command that was made alone is the one among all the others: its help,
// its flags with the global ones, its examples.
func TestAskedAlone(t *testing.T) {
	all := new(app).commands()
	if len(all) < 19 {
		t.Fatalf("only %d commands", len(all))
	}
	for _, cmd := range all {
		name := cmd.Name()
		if made := new(app).asked([]string{name, "--help"}); len(made) != 1 || made[0].Name() != name {
			t.Errorf("asked for %s, %d commands were made", name, len(made))
		}
		if alone, among := printed(t, name, "--help"), printed(t, "help", name); alone != among {
			t.Errorf("%s --help:\n%s\nhelp %s:\n%s", name, alone, name, among)
		}
	}
}

// Where no command stands first, all are there: for help, completion, a slip,
// and a flag ahead of the command.
func TestAskedForNone(t *testing.T) {
	for _, args := range [][]string{nil, {"help"}, {"--help"}, {"completion"}, {"__complete", ""}, {"chissel"}, {"--format", "json", "chisel"}} {
		if made, all := new(app).asked(args), new(app).commands(); len(made) != len(all) {
			t.Errorf("%q: %d of %d commands", args, len(made), len(all))
		}
	}
	var offered, errw bytes.Buffer
	if status := Main([]string{"__complete", ""}, strings.NewReader(""), &offered, &errw); status != 0 {
		t.Fatalf("status %d, %s", status, errw.String())
	}
	for _, cmd := range new(app).commands() {
		if !strings.Contains(offered.String(), cmd.Name()+"\t") {
			t.Errorf("completion does not offer %s:\n%s", cmd.Name(), offered.String())
		}
	}
	if first, last := printed(t, "chisel", "--size", "12mm", "--web", "2mm", "--units", "in"), printed(t, "--units", "in", "chisel", "--size", "12mm", "--web", "2mm"); first != last {
		t.Errorf("the flag ahead of the command:\n%s\nafter it:\n%s", last, first)
	}
}

// The page is cobra's own, but for lines that end before the 80th column, and for the
// global flags, of which it has the names.
func TestUsagePage(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"chisel", "--help"}, {"crib", "--help"}, {"crib", "record", "--help"}} {
		root := new(app).root(args)
		cmd, _, err := root.Find(args[:len(args)-1])
		if err != nil {
			t.Fatal(err)
		}
		ours := strings.ReplaceAll(cmd.UsageString(), " \\\n", "\n") // an example that goes on
		root.SetUsageFunc(nil)
		ours, names, _ := strings.Cut(ours, "\n\nFlags of every command")
		theirs, flags, _ := strings.Cut(cmd.UsageString(), "\n\nGlobal Flags:")
		cmd.InheritedFlags().VisitAll(func(f *pflag.Flag) {
			if !strings.Contains(flags, "--"+f.Name+" ") || !strings.Contains(names+" ", "--"+f.Name) {
				t.Errorf("%q: --%s is not named", args, f.Name)
			}
		})
		if !cmd.HasParent() { // its flags are those of every command
			ours, theirs = strings.Split(ours, "\n\nFlags:")[0], strings.Split(theirs, "\n\nFlags:")[0]
		}
		ours, theirs = strings.Split(ours, "\n\nUse \"")[0], strings.Split(theirs, "\n\nUse \"")[0]
		if strings.Join(strings.Fields(ours), " ") != strings.Join(strings.Fields(theirs), " ") {
			t.Errorf("%q:\n%s\nand cobra's:\n%s", args, ours, theirs)
		}
	}
	_, flags, _ := strings.Cut(printed(t, "chisel", "--help"), "\nFlags:\n")
	for line := range strings.Lines(flags) {
		if len([]rune(strings.TrimSuffix(line, "\n"))) > 80 {
			t.Errorf("longer than 80 columns: %s", line)
		}
	}
}
