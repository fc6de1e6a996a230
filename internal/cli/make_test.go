package cli_test

import (
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// makes runs make in the repository, and returns what it says.
func makes(t *testing.T, args ...string) string {
	t.Helper()
	program, err := exec.LookPath("make")
	if err != nil {
		t.Skip("no make here")
	}
	cmd := exec.Command(program, args...)
	cmd.Dir = repository
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("make %q: %v\n%s", args, err, out)
	}
	return string(out)
}

// What is installed goes where it belongs in a folder of any name, and all of it
// can be taken away again.
func TestInstall(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a b")
	program := filepath.Join(dir, "built for it", "evenlip")
	if err := os.MkdirAll(filepath.Dir(program), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(program, []byte("the program"), 0o666); err != nil {
		t.Fatal(err)
	}
	root := filepath.Join(dir, "to go in")
	where := []string{"DESTDIR=" + root, "PREFIX=/usr", "PROGRAM=" + program}
	makes(t, append(where, "install")...)
	for _, name := range []string{
		"bin/evenlip", "share/man/man1/evenlip.1", "share/man/man1/evenlip-inspect.1", "share/bash-completion/completions/evenlip",
		"share/zsh/site-functions/_evenlip", "share/fish/vendor_completions.d/evenlip.fish", "share/doc/evenlip/README.md",
		"share/doc/evenlip/docs/crib.md", "share/doc/evenlip/docs/class/1-web.svg", "share/doc/evenlip/testdata/shop.yaml",
	} {
		if _, err := os.Stat(filepath.Join(root, "usr", name)); err != nil {
			t.Error(err)
		}
	}
	makes(t, append(where, "uninstall")...)
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			t.Errorf("%s is left", path)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}
