//go:build unix

package cli_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// asNobody runs the program as an account that owns nothing here; a test that is not
// root's owns little enough by itself.
func asNobody(t *testing.T, home string, args ...string) (out, errs string, status int) {
	t.Helper()
	cmd := exec.Cmd{Path: os.Args[0], Args: append([]string{"evenlip"}, args...), Env: []string{"HOME=" + home, "PATH=" + os.Getenv("PATH")}, Dir: "/"}
	if os.Getuid() == 0 {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}}
		for _, dir := range []string{filepath.Dir(os.Args[0]), filepath.Dir(filepath.Dir(os.Args[0]))} {
			if err := os.Chmod(dir, 0o755); err != nil {
				t.Fatal(err)
			}
		}
	}
	var stdout, stderr bytes.Buffer
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	if err := cmd.Run(); err != nil && cmd.ProcessState == nil {
		t.Fatal(err)
	}
	return stdout.String(), stderr.String(), cmd.ProcessState.ExitCode()
}

// A service that is left with another's HOME works all the same, and is told that no
// settings were looked for. Settings that are there and may not be read are no
// reason to go on without them.
func TestAnothersHome(t *testing.T) {
	home, err := os.MkdirTemp("", "home") // the folders of a test are closed to others
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(home)
	settings := filepath.Join(home, ".config", "evenlip")
	if err := os.MkdirAll(settings, 0o755); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(settings, "shop.yaml")
	if err := os.WriteFile(file, []byte("name: theirs\n"), 0); err != nil {
		t.Fatal(err)
	}
	mode := func(m os.FileMode) {
		if err := os.Chmod(home, m); err != nil {
			t.Fatal(err)
		}
	}
	defer mode(0o755)
	for _, command := range [][]string{{"crib", "audit", "--sample"}, {"size", "12mm"}} {
		mode(0)
		out, errs, status := asNobody(t, home, command...)
		if status != 0 || out == "" || !strings.HasPrefix(errs, "note: "+file+" cannot be looked for: permission denied") || strings.Count(errs, "\n") != 1 {
			t.Errorf("%v in a home that is closed: status %d\n%s%s", command, status, out, errs)
		}
		mode(0o755)
		out, errs, status = asNobody(t, home, command...)
		if status != 3 || out != "" || !strings.HasPrefix(errs, "error: cannot read "+file+": permission denied") {
			t.Errorf("%v with settings that are closed: status %d\n%s%s", command, status, out, errs)
		}
	}
}
