package cli_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"evenlip/internal/sheet/print/style"
)

// Every command that the documents show in a console block is run, and what
// stands under it has to be what it prints; -update writes it there. A line … of
// it stands for lines that are not shown.
func TestDocuments(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the documents show a POSIX shell")
	}
	ran := 0
	for _, file := range append(documents(t), filepath.Join(repository, "README.md")) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			was, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			now, commands := rerun(t, string(was), placeOf(t, string(was)))
			ran += commands
			if now == string(was) {
				return
			}
			if *update {
				if err := os.WriteFile(file, []byte(now), 0o666); err != nil {
					t.Fatal(err)
				}
				return
			}
			t.Errorf("the program prints something else (go test ./internal/cli -run Documents -update):\n%s", firstDifference(string(was), now))
		})
	}
	if ran < 5 {
		t.Errorf("only %d commands found in the documents", ran)
	}
}

// documents lists what stands in docs, the lessons too.
func documents(t *testing.T) []string {
	var all []string
	for _, pattern := range []string{"*.md", "class/*.md"} {
		found, err := filepath.Glob(filepath.Join(repository, "docs", pattern))
		if err != nil || len(found) == 0 {
			t.Fatalf("no documents in docs/%s: %v", pattern, err)
		}
		all = append(all, found...)
	}
	return all
}

const (
	fence   = "```"
	console = fence + "console"
	prompt  = "$ "
	goesOn  = "> " // a command of several lines, as a shell shows it
	widest  = 80
)

// apart at the head of a document runs its commands, one after the other, in an
// empty folder.
const apart = "<!-- run in a folder of its own -->\n"

func placeOf(t *testing.T, text string) string {
	if strings.HasPrefix(text, apart) {
		return t.TempDir()
	}
	return repository
}

// rerun returns the document with what its commands print now in that folder.
func rerun(t *testing.T, text, folder string) (now string, commands int) {
	var out []string
	inside := false
	lines := strings.Split(text, "\n")
	for i := 0; i < len(lines); i++ {
		line := lines[i]
		switch {
		case line == console:
			inside = true
		case line == fence:
			inside = false
		case inside && strings.HasPrefix(line, prompt):
			command := strings.TrimPrefix(line, prompt)
			out = append(out, line)
			for i+1 < len(lines) && (strings.HasPrefix(lines[i+1], goesOn) || strings.HasSuffix(command, `\`)) {
				i++
				command += "\n" + strings.TrimPrefix(lines[i], goesOn)
				out = append(out, lines[i])
			}
			commands++
			var was []string // what an earlier run printed
			for i+1 < len(lines) && lines[i+1] != fence && !strings.HasPrefix(lines[i+1], prompt) {
				i++
				was = append(was, lines[i])
			}
			now, err := shown(was, shell(t, folder, command))
			if err != nil {
				t.Errorf("%s\n%v", command, err)
				now = was
			}
			out = append(out, now...)
			continue
		}
		out = append(out, line)
	}
	if inside {
		t.Error("a console block does not end")
	}
	return strings.Join(out, "\n"), commands
}

// shell runs a command in the folder as a reader would and returns the lines it
// prints.
func shell(t *testing.T, folder, command string) []string {
	cmd := exec.Command("sh", "-c", command)
	cmd.Dir = folder
	cmd.Env = append(os.Environ(), "LC_ALL=C.UTF-8")
	printed, err := cmd.CombinedOutput()
	if _, exited := err.(*exec.ExitError); err != nil && !exited {
		t.Fatalf("%s: %v", command, err)
	}
	text := strings.TrimRight(string(printed), "\n")
	if text == "" {
		return nil
	}
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		complaint := strings.HasPrefix(l, "error: ") || strings.HasPrefix(l, "hint: ") // on one line, for grep
		if n := style.Width(l); n > widest && !complaint {
			t.Errorf("%s\nprints %d cells, more than %d: %s", command, n, widest, l)
		}
		lines[i] = strings.TrimRight(l, " \r")
	}
	return lines
}

// firstDifference shows where two texts part.
func firstDifference(was, now string) string {
	a, b := strings.Split(was, "\n"), strings.Split(now, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return fmt.Sprintf("line %d\n- %s\n+ %s", i+1, a[i], b[i])
		}
	}
	return fmt.Sprintf("%d lines, now %d", len(a), len(b))
}
