package cli_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The list of what the program stands on is go.mod's.
func TestDependenciesAreListed(t *testing.T) {
	mod, err := os.ReadFile(filepath.Join(repository, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	var required []string
	for _, m := range regexp.MustCompile(`(?m)^\t(\S+) v\S+( // indirect)?$`).FindAllStringSubmatch(string(mod), -1) {
		required = append(required, m[1])
	}
	listed := licences(t)
	for _, module := range required {
		if listed[module] == "" {
			t.Errorf("docs/dependencies.md says nothing of %s", module)
		}
	}
	for module := range listed {
		if !slices.Contains(required, module) {
			t.Errorf("docs/dependencies.md lists %s, which go.mod does not require", module)
		}
	}
	if len(required) < 10 {
		t.Errorf("only %d modules found in go.mod", len(required))
	}
}

// licences reads docs/dependencies.md: module and licence.
func licences(t *testing.T) map[string]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(repository, "docs", "dependencies.md"))
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, row := range regexp.MustCompile(`(?m)^\| (\S+\.\S+/\S+) \| ([^|]+) \|`).FindAllStringSubmatch(string(text), -1) {
		if _, twice := out[row[1]]; twice {
			t.Errorf("docs/dependencies.md lists %s twice", row[1])
		}
		out[row[1]] = row[2]
	}
	return out
}

// Each licence is the one whose text comes with the module.
func TestLicences(t *testing.T) {
	own := map[string]string{
		"MIT": "permission is hereby granted, free of charge", "Apache-2.0": "apache license", "MPL-2.0": "mozilla public license version 2.0",
		"BSD-2-Clause": "redistributions in binary form", "BSD-3-Clause": "to endorse or promote products",
	}
	listed := licences(t)
	dirs := folders(t, keys(listed))
	if len(dirs) == 0 {
		t.Skip("no module is at hand")
	}
	for module, dir := range dirs {
		named, text := listed[module], licenceText(t, dir)
		for _, one := range strings.Split(named, " and ") {
			words, known := own[one]
			if !known || !strings.Contains(text, words) {
				t.Errorf("the licence of %s is not %s", module, one)
			}
		}
		if named == "BSD-2-Clause" && strings.Contains(text, own["BSD-3-Clause"]) {
			t.Errorf("the licence of %s has a third clause", module)
		}
	}
}

// atHome is what the environment was before TestMain tidied it: where the
// module cache is hangs on it.
var atHome = os.Environ()

// folders finds the modules that are at hand in the module cache.
func folders(t *testing.T, modules []string) map[string]string {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-m", "-e", "-f", "{{.Path}} {{.Dir}}"}, modules...)...)
	cmd.Dir, cmd.Env = repository, append(slices.Clone(atHome), "GOPROXY=off")
	text, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, line := range strings.Split(string(text), "\n") {
		if module, dir, _ := strings.Cut(line, " "); dir != "" {
			out[module] = dir
		}
	}
	return out
}

// licenceText is the licence of a module in lower case, its lines joined.
func licenceText(t *testing.T, dir string) string {
	t.Helper()
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		name := strings.ToLower(f.Name())
		if !strings.HasPrefix(name, "licen") && !strings.HasPrefix(name, "copying") {
			continue
		}
		text, err := os.ReadFile(filepath.Join(dir, f.Name()))
		if err != nil {
			t.Fatal(err)
		}
		return strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(string(text)), "\n>", "\n")), " ")
	}
	t.Errorf("%s holds no licence", dir)
	return ""
}
