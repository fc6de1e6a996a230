package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"evenlip/internal/cli"
)

// Every command has a page, and every shell its script.
func TestWrite(t *testing.T) {
	dir := t.TempDir()
	if err := write(dir); err != nil {
		t.Fatal(err)
	}
	wanted := map[string]bool{}
	for _, c := range commands(cli.Manual(exampleWidth)) {
		wanted["man/man1/"+strings.ReplaceAll(c.CommandPath(), " ", "-")+".1"] = true
	}
	for _, name := range scripts {
		wanted[name] = true
	}
	err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, err := filepath.Rel(dir, path)
		if name = filepath.ToSlash(name); !wanted[name] {
			t.Errorf("nothing wants %s", name)
		}
		delete(wanted, name)
		if info, err := d.Info(); err != nil || info.Size() == 0 {
			t.Errorf("%s is empty (%v)", name, err)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for name := range wanted {
		t.Errorf("no %s", name)
	}
}

// commands are all that a person is told of.
func commands(under *cobra.Command) []*cobra.Command {
	out := []*cobra.Command{under}
	for _, c := range under.Commands() {
		if c.IsAvailableCommand() {
			out = append(out, commands(c)...)
		}
	}
	return out
}
