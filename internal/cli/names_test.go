package cli_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"evenlip/internal/cli"
)

// Scripts rest on the names in the JSON of each command: one may be added, none
// may change or go. testdata/names has them all with their types, a file a
// command; -update writes them anew, and the difference is to be read.
func TestNames(t *testing.T) {
	for _, c := range commands(cli.Root()) {
		switch c.CommandPath() {
		case "evenlip", "evenlip crib", "evenlip crib schema", "evenlip schema":
			continue // no answer, or a document of another kind
		}
		name := strings.TrimPrefix(c.CommandPath(), "evenlip ")
		t.Run(name, func(t *testing.T) {
			names := map[string][]string{}
			for _, args := range asked(t, c, name) {
				answers := json.NewDecoder(strings.NewReader(run("", append(args, "--format", "json")...).out))
				for answers.More() {
					var answer any
					if err := answers.Decode(&answer); err != nil {
						t.Fatalf("%q: %v", args, err)
					}
					gather(names, "", answer)
				}
			}
			var now strings.Builder
			for _, path := range keys(names) {
				slices.Sort(names[path])
				fmt.Fprintln(&now, path, strings.Join(names[path], "|"))
			}
			golden(t, filepath.Join("testdata", "names", strings.ReplaceAll(name, " ", "-")+".txt"), now.String())
		})
	}
}

// asked are command lines of a command that between them bring out every name:
// the sample with all that its answer may have, and each drill of the bench.
func asked(t *testing.T, c *cobra.Command, name string) [][]string {
	words := strings.Fields(name)
	more := func(args ...string) []string { return append(slices.Clone(words), args...) }
	switch name {
	case "batch":
		drills := filepath.Join(repository, "testdata", "crib.jsonl")
		return [][]string{more(drills), more("--sources", drills, drills)}
	case "crib new":
		return [][]string{more("--sample", "--file", filepath.Join(t.TempDir(), "crib.yaml"))}
	case "crib record":
		return [][]string{more("M120-1", "--sample", "--dry-run", "--web", "2mm")}
	case "crib list", "crib audit", "crib plan":
		return [][]string{more("--sample")}
	case "material":
		return [][]string{more(), more("steel-200", "--size", "12mm")}
	case "size":
		return [][]string{more("12mm"), more("#7")}
	case "sources":
		return [][]string{more(), more("lip-height-by-size")}
	case "version":
		return [][]string{more()}
	}
	var out [][]string
	for _, full := range [][]string{nil, {"--explain", "--caliper", "0.02mm", "--protractor", "1deg", "--indicator", "0.01mm"}} {
		if c.Flags().Lookup("sample") != nil {
			out = append(out, more(append(full, "--sample")...), more(append(full, "--sample", "--remove", "0mm..1mm by 0.5mm")...),
				more(append(full, "--sample", "--drill", "M120-1")...), more(append(full, filepath.Join(repository, "testdata", "half-inch.yaml"))...))
		}
		for _, readings := range bench {
			args := slices.Clone(full)
			for flag, text := range readings {
				if c.Flags().Lookup(flag) != nil {
					args = append(args, "--"+flag, text)
				}
			}
			out = append(out, more(args...))
		}
	}
	return out
}

// gather notes the type of whatever lies below a path.
func gather(names map[string][]string, path string, v any) {
	kind := ""
	switch v := v.(type) {
	case map[string]any:
		for name, below := range v {
			gather(names, strings.TrimPrefix(path+"."+name, "."), below)
		}
		return
	case []any:
		for _, below := range v {
			gather(names, path+"[]", below)
		}
		return
	case nil:
		kind = "null"
	case bool:
		kind = "boolean"
	case float64:
		kind = "number"
	case string:
		kind = "string"
	}
	if !slices.Contains(names[path], kind) {
		names[path] = append(names[path], kind)
	}
}

// golden holds a text to a file; -update writes the file.
func golden(t *testing.T, file, now string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(now), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	was, err := os.ReadFile(file)
	if err != nil || string(was) != now {
		t.Errorf("%s (go test ./internal/cli -run %s -update): %v, %s", file, strings.Split(t.Name(), "/")[0], err, firstDifference(string(was), now))
	}
}
