package crib

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

	"golang.org/x/sys/unix"

	"evenlip/internal/drill"
)

// room is a file system, or a limit, that leaves little room to write in.
type room struct {
	mount  string // options of a file system in memory; "" for the one there is
	change func(dir string) error
	want   error // that a record fails with; nil where it may or may not
	fits   bool  // a record does not fail
}

var rooms = map[string]room{
	"no file more":    {mount: "size=1m,nr_inodes=3", want: unix.ENOSPC},
	"no lock either":  {mount: "size=1m,nr_inodes=2", want: unix.ENOSPC},
	"closed":          {mount: "size=1m", change: closed, want: unix.EROFS},
	"limited in size": {change: limited, want: unix.EFBIG},
}

func closed(dir string) error {
	return unix.Mount("none", dir, "tmpfs", unix.MS_REMOUNT|unix.MS_RDONLY, "")
}

func limited(string) error {
	return unix.Setrlimit(unix.RLIMIT_FSIZE, &unix.Rlimit{Cur: 5000, Max: 5000})
}

func init() {
	for pages := 4; pages < 10; pages++ { // the old file has three; a record needs four more
		r := room{mount: fmt.Sprintf("size=%dk", 4*pages)}
		switch {
		case pages < 6:
			r.want = unix.ENOSPC
		case pages > 8:
			r.fits = true
		}
		rooms[fmt.Sprintf("%d pages", pages)] = r
	}
	inRoom = recordInRoom
}

// noRoom says that a system lets nobody make a room of his own.
const noRoom = 77

// recordInRoom makes a room in this process, records in it, and says what was
// wrong.
func recordInRoom(name string) int {
	r, dir := rooms[name], os.Getenv("CRIB_TEST_WRITER")
	if r.mount != "" {
		if err := unix.Mount("none", dir, "tmpfs", 0, r.mount); err != nil {
			fmt.Println(err)
			return noRoom
		}
	}
	if wrong := r.record(filepath.Join(dir, FileName)); wrong != nil {
		fmt.Println(wrong)
		return 1
	}
	return 0
}

func (r *room) record(path string) error {
	old := []byte(manyDrills(110))
	if err := os.WriteFile(path, old, 0o644); err != nil {
		return err
	}
	if r.change != nil {
		if err := r.change(filepath.Dir(path)); err != nil {
			return err
		}
	}
	_, err := Record(path, "D7", Change{Date: "2026-11-25", What: Readings, Readings: map[drill.Reading]string{drill.Web: "2mm"}}, nil)
	var store *StoreError
	if r.want != nil && (!errors.Is(err, r.want) || !errors.As(err, &store)) {
		return fmt.Errorf("%v, not %v", err, r.want)
	}
	if r.fits && err != nil {
		return err
	}
	now, unread := os.ReadFile(path)
	if unread != nil || bytes.Equal(now, old) == (err == nil) {
		return fmt.Errorf("after %v, %v: the file is as it was: %v", err, unread, bytes.Equal(now, old))
	}
	if _, faults := Read(path, now, nil); len(faults) > 0 {
		return Faults(faults)
	}
	if left := leftovers(path); len(left) > 0 {
		return fmt.Errorf("left over: %v", left)
	}
	if err == nil {
		return nil
	}
	fresh := filepath.Join(filepath.Dir(path), "new.yaml")
	if err := Start(fresh, old); err == nil {
		return errors.New("a new crib was written where a record was not")
	}
	if _, err := os.Stat(fresh); !errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("half a new crib was left: %v", err)
	}
	return nil
}

// Where there is no room, the old file stays whole, nothing is left beside it,
// and the record says why.
func TestNoRoom(t *testing.T) {
	for name, r := range rooms {
		t.Run(name, func(t *testing.T) {
			cmd := exec.Command(os.Args[0])
			cmd.Env = append(os.Environ(), "CRIB_TEST_ROOM="+name, "CRIB_TEST_WRITER="+t.TempDir())
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
