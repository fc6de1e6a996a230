//go:build unix

package store

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// nobody is an account that owns nothing here.
const nobody = 65534

// asNobody makes a writer that is not let do everything, which root is.
func asNobody(t *testing.T, path string) (out string, failed bool) {
	t.Helper()
	cmd := process(path, "# by another")
	if os.Getuid() == 0 {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
		open := path // the folders of a test are closed to others
		for range 3 {
			open = filepath.Dir(open)
			if info, err := os.Stat(open); err == nil && strings.Contains(open, "Test") {
				os.Chmod(open, info.Mode().Perm()|0o055)
			}
		}
		os.Chmod(filepath.Dir(os.Args[0]), 0o755)
		os.Chmod(filepath.Dir(filepath.Dir(os.Args[0])), 0o755)
	}
	b, err := cmd.CombinedOutput()
	return string(b), err != nil
}

// In a folder that is closed to writing nothing is written, and it says so.
func TestReadOnlyFolder(t *testing.T) {
	path := inFile(t, text)
	if err := os.Chmod(path, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(filepath.Dir(path), 0o555); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(filepath.Dir(path), 0o755)
	out, failed := asNobody(t, path)
	if !failed || !strings.Contains(out, "cannot write") || !strings.Contains(out, "permission denied") {
		t.Errorf("%v %s", failed, out)
	}
	if contents(t, path) != text {
		t.Error("the file was written")
	}
}

// Owner and group stay, where whoever changes the file may give them.
func TestOwnerStays(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("only root gives files away")
	}
	path := inFile(t, text)
	if err := os.Chown(path, nobody, nobody); err != nil {
		t.Skip(err)
	}
	if err := Transform(path, ours); err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if st := info.Sys().(*syscall.Stat_t); st.Uid != nobody || st.Gid != nobody {
		t.Errorf("owner %d, group %d", st.Uid, st.Gid)
	}
}

// Another's file whose group cannot be kept is left alone.
func TestGroupMustStay(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("the file must be another's")
	}
	path := inFile(t, text)
	if err := os.Chmod(path, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	out, failed := asNobody(t, path)
	if !failed || !strings.Contains(out, "its group cannot be kept") || contents(t, path) != text {
		t.Errorf("%v %s", failed, out)
	}
	if left := leftovers(path); len(left) > 0 {
		t.Errorf("left over: %v", left)
	}
}

// giver is a file that cannot be given to anyone.
type giver struct{ file }

func (giver) Chown(int, int) error { return &os.PathError{Op: "chown", Err: syscall.EPERM} }

// Who cannot keep a file's group is told who can.
func TestGroupThatCannotBeKept(t *testing.T) {
	path := inFile(t, text)
	d := system
	d.create = func(dir, pattern string) (file, error) {
		f, err := create(dir, pattern)
		return giver{f}, err
	}
	err := d.transform(path, ours)
	if f := cannotWrite(t, err, "its group cannot be kept"); f != nil && !strings.Contains(f.Hint, "member of its group") {
		t.Errorf("hint: %s", f.Hint)
	}
	if !errors.Is(err, syscall.EPERM) || contents(t, path) != text || leftovers(path) != nil {
		t.Errorf("%v, %v", err, leftovers(path))
	}
}

// A file that is another's, and open to a group, is changed by a member of it.
func TestAnothersFile(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("the file must be another's")
	}
	path := inFile(t, text)
	if err := errors.Join(os.Chown(path, 0, nobody), os.Chmod(path, 0o660), os.Chmod(filepath.Dir(path), 0o777)); err != nil {
		t.Skip(err)
	}
	if out, failed := asNobody(t, path); failed || !strings.Contains(contents(t, path), "# by another") || leftovers(path) != nil {
		t.Errorf("%v %s", out, leftovers(path))
	}
}
