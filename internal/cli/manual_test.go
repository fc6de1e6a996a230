package cli_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/cobra/doc"

	"evenlip/internal/cli"
)

// The manual pages and the shells' completions that are kept under docs are what
// the commands give today; -update writes them anew.
func TestManual(t *testing.T) {
	root := cli.Root()
	keep(t, filepath.Join(repository, "docs", "man"), manual(t, root))
	keep(t, filepath.Join(repository, "docs", "completions"), shells(t))
}

// keep holds a folder to these files and no others.
func keep(t *testing.T, dir string, files map[string][]byte) {
	t.Helper()
	if *update {
		for _, err := range []error{os.RemoveAll(dir), os.MkdirAll(dir, 0o777)} {
			if err != nil {
				t.Fatal(err)
			}
		}
		for name, text := range files {
			if err := os.WriteFile(filepath.Join(dir, name), text, 0o666); err != nil {
				t.Fatal(err)
			}
		}
		return
	}
	kept, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range kept {
		if _, wanted := files[e.Name()]; !wanted {
			t.Errorf("%s is of no use any more (make docs)", filepath.Join(dir, e.Name()))
		}
	}
	for name, now := range files {
		was, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil || !bytes.Equal(was, now) {
			t.Errorf("%s is out of date (make docs): %v, %s", filepath.Join(dir, name), err, firstDifference(string(was), string(now)))
		}
	}
}

// exampleWidth is what a manual page on a screen has left beside its indent.
const exampleWidth = 66

// manual makes a page for every command. It bears no date, so that a page
// changes only when the command does.
func manual(t *testing.T, root *cobra.Command) map[string][]byte {
	t.Helper()
	files := map[string][]byte{}
	root.DisableAutoGenTag = true
	paragraphs := strings.Split(cli.FrontPage, "\n\n")
	root.Long += "\n\n" + strings.Join(paragraphs[1:len(paragraphs)-1], "\n\n") // the commands, by what is in hand
	for _, c := range commands(root) {
		c.Long, c.Example = verbatim(c.Long), cli.Broken(c.Example, exampleWidth)
		c.DisableAutoGenTag = true
		var page bytes.Buffer
		header := doc.GenManHeader{Section: "1", Source: "evenlip", Manual: "Regrinding twist drills", Date: new(time.Time)}
		if err := doc.GenMan(c, &header, &page); err != nil {
			t.Fatal(err)
		}
		name := strings.ReplaceAll(c.CommandPath(), " ", "-") + ".1"
		files[name] = bytes.Replace(page.Bytes(), []byte(new(time.Time).Format(`"Jan 2006"`)), []byte(`""`), 1)
	}
	return files
}

// verbatim lets lines that are set in keep their columns in a manual page.
func verbatim(text string) string {
	var out []string
	before := false
	for _, line := range strings.Split(text, "\n") {
		set := strings.HasPrefix(line, "  ")
		if set != before {
			out = append(out, "")
		}
		if set {
			line = "  " + line
		}
		out, before = append(out, line), set
	}
	return strings.Join(out, "\n")
}

// shells are the completion scripts, under the names that the shells look for.
func shells(t *testing.T) map[string][]byte {
	t.Helper()
	files := map[string][]byte{}
	for shell, name := range map[string]string{"bash": "evenlip", "zsh": "_evenlip", "fish": "evenlip.fish", "powershell": "evenlip.ps1"} {
		a := run("", "completion", shell)
		if a.status != 0 || !strings.Contains(a.out, "__complete") {
			t.Fatalf("completion %s: status %d, %s", shell, a.status, a.err)
		}
		if mended := strings.Contains(a.out, "# A quote that is still open"); !mended && shell != "powershell" {
			t.Errorf("completion %s: the mend found no place in cobra's script", shell)
		}
		files[name] = []byte(a.out)
	}
	return files
}
