package store

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"evenlip/internal/fault"
)

// TestMain makes the test's own program a writer, so that real processes can write
// at once and be killed.
func TestMain(m *testing.M) {
	if room := os.Getenv("STORE_TEST_ROOM"); room != "" {
		os.Exit(inRoom(room))
	}
	if path := os.Getenv("STORE_TEST_WRITER"); path != "" {
		os.Exit(writer(path, os.Getenv("STORE_TEST_LINE")))
	}
	os.Exit(m.Run())
}

// inRoom makes a change where there is little room; see room_linux_test.go.
var inRoom func(room string) int

// writer adds a line to a file.
func writer(path, line string) int {
	os.Stdout.WriteString("begun\n")
	if err := Transform(path, adding(line)); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return 0
}

// process is this test's program as a writer of its own.
func process(path, line string) *exec.Cmd {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), "STORE_TEST_WRITER="+path, "STORE_TEST_LINE="+line)
	return cmd
}

func adding(line string) func([]byte) ([]byte, error) {
	return func(old []byte) ([]byte, error) { return append(bytes.Clone(old), line+"\n"...), nil }
}

// ours is the change that most tests make.
var ours = adding("# ours")

const text = "version: 1\n# the only line\n"

// large is a text that takes a while to be written.
func large(lines int) string { return strings.Repeat("# a line of a large file\n", lines) }

func inFile(t *testing.T, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "crib.yaml")
	write(t, path, text)
	return path
}

// write is an editor that writes a file in its place.
func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Error(err)
	}
}

// save is an editor that puts a file of its own in the place of another.
func save(t *testing.T, path, text string) {
	t.Helper()
	own := path + ".edited"
	write(t, own, text)
	if err := os.Rename(own, path); err != nil {
		t.Error(err)
	}
}

func contents(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// leftovers returns what stands beside a file besides its lock.
func leftovers(path string) (names []string) {
	entries, _ := os.ReadDir(filepath.Dir(path))
	for _, e := range entries {
		if e.Name() != filepath.Base(path) && e.Name() != filepath.Base(LockName(path)) {
			names = append(names, e.Name())
		}
	}
	return names
}

// cannotWrite returns the fault that says why a file cannot be written.
func cannotWrite(t *testing.T, err error, why string) *fault.Fault {
	t.Helper()
	var f *fault.Fault
	if !errors.As(err, &f) || !strings.HasPrefix(f.Text, "cannot write ") || !strings.Contains(f.Text, why) || f.Exit() != fault.Data {
		t.Errorf("%v, not: %s", err, why)
		return nil
	}
	return f
}
