package cli_test

import (
	"maps"
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
	listed, _ := licences(t)
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

// Each tool that is run at a version of its own is listed, with what would take its
// place, and no other.
func TestToolsAreListed(t *testing.T) {
	_, listed := licences(t)
	if len(listed) == 0 {
		t.Fatal("docs/dependencies.md lists no tool")
	}
	runs := toolsRun(t)
	for module := range listed {
		if !slices.ContainsFunc(runs, func(r string) bool { return isOf(r, module) }) {
			t.Errorf("docs/dependencies.md lists %s, which nothing runs", module)
		}
	}
	for _, r := range runs {
		if !slices.ContainsFunc(keys(listed), func(module string) bool { return isOf(r, module) }) {
			t.Errorf("docs/dependencies.md says nothing of %s", r)
		}
	}
	text, err := os.ReadFile(filepath.Join(repository, "docs", "dependencies.md"))
	if err != nil {
		t.Fatal(err)
	}
	for module := range listed {
		if !regexp.MustCompile(`(?m)^\| ` + module + ` \| [^|]+ \| [^|]+ \| [^|]{10,} \|$`).Match(text) {
			t.Errorf("docs/dependencies.md does not say what would take the place of %s", module)
		}
	}
}

// isOf reports whether a package at a version is one of a module.
func isOf(run, module string) bool {
	return strings.HasPrefix(run, module+"/") || strings.HasPrefix(run, module+"@")
}

// toolsRun are the packages that are run at a version of their own.
func toolsRun(t *testing.T) []string {
	t.Helper()
	var out []string
	for _, pattern := range []string{"Makefile", ".ci/*", ".dist/*", "docs/*.md"} {
		files, err := filepath.Glob(filepath.Join(repository, pattern))
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %d files, %v", pattern, len(files), err)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			out = append(out, regexp.MustCompile(`[\w.-]+\.\w+/[\w./-]+@v[\w.-]+`).FindAllString(string(text), -1)...)
		}
	}
	return out
}

// licences reads docs/dependencies.md, module and licence: of what go.mod requires,
// and of the tools.
func licences(t *testing.T) (required, tools map[string]string) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(repository, "docs", "dependencies.md"))
	if err != nil {
		t.Fatal(err)
	}
	part := func(text string) map[string]string {
		out := map[string]string{}
		for _, row := range regexp.MustCompile(`(?m)^\| (\S+\.\S+/\S+) \| ([^|]+) \|`).FindAllStringSubmatch(text, -1) {
			if _, twice := out[row[1]]; twice {
				t.Errorf("docs/dependencies.md lists %s twice", row[1])
			}
			out[row[1]] = row[2]
		}
		return out
	}
	modules, run, _ := strings.Cut(string(text), "\n## Tools that are run\n")
	return part(modules), part(run)
}

// Each licence is the one whose text comes with the module.
func TestLicences(t *testing.T) {
	own := map[string]string{
		"MIT": "permission is hereby granted, free of charge", "Apache-2.0": "apache license", "MPL-2.0": "mozilla public license version 2.0",
		"BSD-2-Clause": "redistributions in binary form", "BSD-3-Clause": "to endorse or promote products",
	}
	listed, run := licences(t)
	dirs := folders(t, keys(listed))
	maps.Copy(listed, run)
	for _, r := range toolsRun(t) {
		for module := range run {
			if _, version, _ := strings.Cut(r, "@"); isOf(r, module) {
				maps.Copy(dirs, folders(t, []string{module + "@" + version}))
			}
		}
	}
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
