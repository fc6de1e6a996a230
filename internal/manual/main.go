// Manual writes the manual pages and the shells' completions where a system
// looks for them, under a folder such as /usr/local/share:
//
//	go run ./internal/manual DIR
//	go run ./internal/manual pictures docs/screens
//
// the second draws the screens that the documents show.
// It is no part of the program.
package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra/doc"

	"evenlip/internal/cli"
)

// exampleWidth is what a page on a screen of 80 columns has beside its indent.
const exampleWidth = 66

// scripts are where the shells look for their completions.
var scripts = map[string]string{
	"bash":       "bash-completion/completions/evenlip",
	"zsh":        "zsh/site-functions/_evenlip",
	"fish":       "fish/vendor_completions.d/evenlip.fish",
	"powershell": "doc/evenlip/evenlip.ps1",
}

func main() {
	do := write
	if len(os.Args) == 3 && os.Args[1] == "pictures" {
		do, os.Args = pictures, os.Args[1:]
	}
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: manual [pictures] DIR")
		os.Exit(2)
	}
	if err := do(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "manual:", err)
		os.Exit(1)
	}
}

// write fills a folder. Pages bear the date of SOURCE_DATE_EPOCH, if it is set.
func write(dir string) error {
	pages := filepath.Join(dir, "man", "man1")
	if err := os.MkdirAll(pages, 0o755); err != nil {
		return err
	}
	header := doc.GenManHeader{Section: "1", Source: "evenlip", Manual: "Regrinding twist drills"}
	if err := doc.GenManTree(cli.Manual(exampleWidth), &header, pages); err != nil {
		return err
	}
	for shell, name := range scripts {
		var script, complaint bytes.Buffer
		if status := cli.Main([]string{"completion", shell}, strings.NewReader(""), &script, &complaint); status != 0 {
			return fmt.Errorf("completion %s: status %d: %s", shell, status, &complaint)
		}
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(path, script.Bytes(), 0o644); err != nil {
			return err
		}
	}
	return nil
}
