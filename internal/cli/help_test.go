package cli_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"evenlip/internal/cli"
	"evenlip/internal/drill"
	"evenlip/internal/sheet/print/style"
)

// commands are all that a person is told of, with those under crib.
func commands(under *cobra.Command) []*cobra.Command {
	out := []*cobra.Command{under}
	for _, c := range under.Commands() {
		if c.IsAvailableCommand() {
			out = append(out, commands(c)...)
		}
	}
	return out
}

// A shell user finds a script for every command.
func TestEveryCommandHasAScript(t *testing.T) {
	for _, c := range cli.Root().Commands() {
		if !c.IsAvailableCommand() || c.Name() == "help" || c.Name() == "completion" {
			continue
		}
		if _, err := os.Stat(filepath.Join(repository, "testdata", "script", c.Name()+".txtar")); err != nil {
			t.Errorf("%s: %v", c.Name(), err)
		}
	}
}

// No line of a help page is wider than a screen.
func TestHelpFitsTheScreen(t *testing.T) {
	for _, args := range pages() {
		if len(args) > 1 && args[0] == "completion" {
			continue // cobra's own words
		}
		help := run("", args...)
		if help.status != 0 || help.out == "" {
			t.Fatalf("%v: status %d, %s", args, help.status, help.err)
		}
		for _, line := range strings.Split(help.out, "\n") {
			if style.Width(line) > widest {
				t.Errorf("%v: %d cells: %s", args, style.Width(line), line)
			}
		}
	}
}

// -h leaves room on a screen of 24 lines for what was typed and the prompt.
func TestShortHelpIsOneScreen(t *testing.T) {
	const lines = 22
	for _, c := range commands(cli.Root()) {
		page := run("", append(strings.Fields(c.CommandPath())[1:], "-h")...).out
		if n := strings.Count(page, "\n"); n > lines || n == 0 {
			t.Errorf("%s -h: %d lines\n%s", c.CommandPath(), n, page)
		}
		first, _, _ := strings.Cut(c.Example, "\n")
		if c.HasParent() && (!strings.Contains(page, c.Short) || !strings.Contains(strings.ReplaceAll(page, " \\\n      ", " "), first)) {
			t.Errorf("%s -h says not what it is for, or shows no example:\n%s", c.CommandPath(), page)
		}
	}
	for _, r := range []drill.Reading{drill.Size, drill.Cracked, drill.LipAngle, drill.LipLength, drill.LipHeight, drill.Depth} {
		if page := run("", "inspect", "-h").out; !strings.Contains(page, "--"+r.String()+" ") {
			t.Errorf("inspect -h leaves out --%s:\n%s", r, page)
		}
	}
}

// On a narrower terminal the front page and every help page fit as well, and say
// the same, word by word; what a shell has to go on reading ends with a \.
func TestHelpFitsANarrowScreen(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the pages show a POSIX shell")
	}
	for _, width := range []int{60, 45} {
		narrow := "--width=" + strconv.Itoa(width)
		for _, args := range pages() {
			wide, page := run("", args...).out, run("", append(args, narrow)...).out
			said := strings.ReplaceAll(page, " \\\n", "\n")
			if got, want := strings.Fields(said), strings.Fields(strings.ReplaceAll(wide, " \\\n", "\n")); !slices.Equal(got, want) {
				t.Errorf("%v says on %d columns\n%s", args, width, page)
			}
			for _, line := range strings.Split(page, "\n") {
				toType := strings.HasPrefix(line, "\t") || strings.HasPrefix(line, "  evenlip ") && !strings.Contains(line, " --")
				if line != strings.TrimRight(line, " ") {
					t.Errorf("%v on %d columns: blanks at the end of %q", args, width, line)
				}
				if style.Width(line) > width && !toType {
					t.Errorf("%v: %d cells of %d: %s", args, style.Width(line), width, line)
				}
			}
		}
	}
	if page := run("", "inspect", "-h", "--width=60").out; !strings.Contains(page, "2mm \\\n") {
		t.Errorf("the example is not broken as a shell takes it:\n%s", page)
	}
	for _, c := range commands(cli.Root()) {
		page := run("", append(strings.Fields(c.CommandPath())[1:], "--help")...).out
		if !strings.HasPrefix(page, strings.TrimSpace(c.Long)) {
			t.Errorf("on a usual terminal the sentences are set anew:\n%s", page)
		}
	}
	if wide := run("", "inspect", "--help", "--width=120").out; wide != run("", "inspect", "--help").out {
		t.Errorf("on a wide terminal the page is another:\n%s", wide)
	}
	if odd := run("", "inspect", "--help", "--width=3").out; odd != run("", "inspect", "--help").out {
		t.Errorf("with a width that cannot be the page is another:\n%s", odd)
	}
}

// pages are the front page, the help pages of all commands in both sizes, and the topics.
func pages() [][]string {
	out := [][]string{{}}
	for _, c := range commands(cli.Root()) {
		for _, help := range []string{"--help", "-h"} {
			out = append(out, append(strings.Fields(c.CommandPath())[1:], help))
		}
	}
	for _, topic := range cli.Topics() {
		out = append(out, []string{"help", topic})
	}
	return append(out, []string{"completion", "bash", "--help"}, []string{"help", "crib", "record"})
}

// Every command but the two that only gather others has two examples; each is
// run as it stands, in a folder with a crib, and answers; nothing but cautions is told
// beside the answer.
func TestExamples(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the examples show a POSIX shell")
	}
	for _, c := range commands(cli.Root()) {
		if c.Name() == "evenlip" {
			continue
		}
		t.Run(strings.ReplaceAll(c.CommandPath(), " ", "-"), func(t *testing.T) {
			lines := strings.Split(c.Example, "\n")
			if len(lines) < 2 {
				t.Errorf("%d worked examples", len(lines))
			}
			for _, line := range lines {
				example(t, c.CommandPath(), strings.TrimSpace(cli.Broken(line, widest)))
				if whole := strings.ReplaceAll(cli.Broken(line, widest), " \\\n      ", " "); whole != line {
					t.Errorf("broken and put together again it is %q", whole)
				}
			}
		})
	}
}

func example(t *testing.T, command, line string) {
	if !strings.HasPrefix(line, command+" ") && line != command && !strings.Contains(line, "| "+command) {
		t.Errorf("%q is no example of %s", line, command)
	}
	cmd := exec.Command("sh", "-c", line)
	cmd.Dir = yard(t, command != "evenlip crib new")
	cmd.Env = append(os.Environ(), "LC_ALL=C.UTF-8")
	var complaint strings.Builder
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	_, beside, cautioned := strings.Cut(complaint.String(), "when unsure\n")
	if !cautioned {
		beside = complaint.String()
	}
	if err != nil || len(out) == 0 || beside != "" {
		t.Errorf("%s\n%v, %d bytes, %s", line, err, len(out), complaint.String())
	}
}

// yard is a folder as the examples have it in mind.
func yard(t *testing.T, started bool) string {
	t.Helper()
	dir := t.TempDir()
	if !started {
		return dir
	}
	text, err := os.ReadFile(filepath.Join(repository, "internal", "crib", "sample.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "tools"), 0o777); err != nil {
		t.Fatal(err)
	}
	for name, lines := range map[string]string{
		"drills.jsonl": `{"name": "M120-1", "size": "12mm", "web": "2.1mm", "chisel-angle": 126}` + "\n" + `{"size": "#7", "remove": "1mm", "web": 0.035}` + "\n",
		"drills.csv":   "name,size,web\nM120-1,12mm,2.1mm\nN7-1,#7,0.035in\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(lines), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"crib.yaml", "tools/crib.yaml"} {
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}
