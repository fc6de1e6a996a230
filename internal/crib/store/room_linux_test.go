package store

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// room is a file system, or a limit, that leaves little room to write in.
type room struct {
	mount  string // options of a file system in memory; "" for the one there is
	change func(dir string) error
	want   error // that a change fails with; nil where it may or may not
	fits   bool  // a change does not fail
}

var rooms = map[string]room{
	"no file more":    {mount: "size=1m,nr_inodes=3", want: syscall.ENOSPC},
	"no lock either":  {mount: "size=1m,nr_inodes=2", want: syscall.ENOSPC},
	"closed":          {mount: "size=1m", change: closed, want: syscall.EROFS},
	"limited in size": {change: limited, want: syscall.EFBIG},
}

func closed(dir string) error {
	return syscall.Mount("none", dir, "tmpfs", syscall.MS_REMOUNT|syscall.MS_RDONLY, "")
}

func limited(string) error {
	return syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: 5000, Max: 5000})
}

func init() {
	for pages := 4; pages < 10; pages++ { // the old file has three; a change needs three more
		r := room{mount: fmt.Sprintf("size=%dk", 4*pages)}
		switch {
		case pages < 6:
			r.want = syscall.ENOSPC
		case pages > 8:
			r.fits = true
		}
		rooms[fmt.Sprintf("%d pages", pages)] = r
	}
	inRoom = changeInRoom
}

// noRoom says that a system lets nobody make a room of his own.
const noRoom = 77

// changeInRoom makes a room in this process, changes a file in it, and says what was
// wrong.
func changeInRoom(name string) int {
	r, dir := rooms[name], os.Getenv("STORE_TEST_WRITER")
	if r.mount != "" {
		if err := syscall.Mount("none", dir, "tmpfs", 0, r.mount); err != nil {
			fmt.Println(err)
			return noRoom
		}
	}
	if wrong := r.try(filepath.Join(dir, "crib.yaml")); wrong != nil {
		fmt.Println(wrong)
		return 1
	}
	return 0
}

func (r *room) try(path string) error {
	old := []byte(large(450))
	if err := os.WriteFile(path, old, 0o644); err != nil {
		return err
	}
	if r.change != nil {
		if err := r.change(filepath.Dir(path)); err != nil {
			return err
		}
	}
	err := Transform(path, ours)
	if r.want != nil && !errors.Is(err, r.want) {
		return fmt.Errorf("%v, not %v", err, r.want)
	}
	if r.fits && err != nil {
		return err
	}
	want := old
	if err == nil {
		want, _ = ours(old)
	}
	if now, unread := os.ReadFile(path); !bytes.Equal(now, want) {
		return fmt.Errorf("after %v, %v: the file has %d bytes, not %d", err, unread, len(now), len(want))
	}
	if left := leftovers(path); len(left) > 0 {
		return fmt.Errorf("left over: %v", left)
	}
	if err == nil {
		return nil
	}
	fresh := filepath.Join(filepath.Dir(path), "new.yaml")
	if err := Create(fresh, old); err == nil {
		return errors.New("a new file was written where a change was not")
	}
	if _, err := os.Stat(fresh); !errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("half a new file was left: %v", err)
	}
	return nil
}

// Where there is no room, the old file stays whole, nothing is left beside it,
// and the error says why.
func TestNoRoom(t *testing.T) {
	for name, r := range rooms {
		t.Run(name, func(t *testing.T) {
			cmd := exec.Command(os.Args[0])
			cmd.Env = append(os.Environ(), "STORE_TEST_ROOM="+name, "STORE_TEST_WRITER="+t.TempDir())
			if r.mount != "" {
				cmd.SysProcAttr = &syscall.SysProcAttr{
					Cloneflags:  syscall.CLONE_NEWUSER | syscall.CLONE_NEWNS,
					UidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getuid(), Size: 1}},
					GidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getgid(), Size: 1}},
				}
			}
			out, err := cmd.CombinedOutput()
			var exit *exec.ExitError
			switch {
			case err == nil:
			case !errors.As(err, &exit) || exit.ExitCode() == noRoom:
				t.Skipf("this system lets nobody mount a file system of his own: %v %s", err, out)
			default:
				t.Errorf("%v: %s", err, strings.TrimSpace(string(out)))
			}
		})
	}
}
