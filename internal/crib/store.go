package crib

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/gofrs/flock"
)

// How long a record waits for the others, and how often it begins again when
// the file was changed meanwhile by someone who asks for no lock.
const (
	longestWait = 60 * time.Second
	knock       = 5 * time.Millisecond
	mostTries   = 5
)

// errChanged says that the file is no longer what was read.
var errChanged = errors.New("the file was changed while it was being written; nothing was recorded")

// StoreError is a failure to write a crib's file.
type StoreError struct {
	File string
	Err  error
	Hint string
}

// Error implements error.
func (e *StoreError) Error() string { return fmt.Sprintf("cannot write %s: %v", e.File, e.Err) }

// Unwrap returns the cause.
func (e *StoreError) Unwrap() error { return e.Err }

// update replaces a file with what change makes of it. Records that come at
// once wait for one another; the file is never to be seen half-written, and one
// that was changed meanwhile is not overwritten but read again.
func update(path string, change func([]byte) ([]byte, error)) error {
	fail := func(err error, hint string) error { return &StoreError{path, err, hint} }
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return fail(bare(err), "")
	}
	if _, err := regular(real); err != nil {
		return fail(bare(err), "")
	}
	unlock, err := lock(real)
	if err != nil {
		return fail(err, "the folder must be one that can be written to")
	}
	defer unlock()
	for range mostTries {
		data, err := os.ReadFile(real)
		if err != nil {
			return fail(bare(err), "")
		}
		next, err := change(data)
		if err != nil {
			return err
		}
		if err = replace(real, data, next); err == nil {
			return nil
		}
		if !errors.Is(err, errChanged) {
			return fail(bare(err), "")
		}
	}
	return fail(errChanged, "close the editor, or try again")
}

// regular returns what is known of a file, if it is an ordinary one.
func regular(real string) (fs.FileInfo, error) {
	info, err := os.Stat(real)
	if err == nil && !info.Mode().IsRegular() {
		err = errors.New("it is no ordinary file")
	}
	return info, err
}

// bare strips the name that the system's error repeats.
func bare(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}

// lock keeps other records out until it is undone. The lock is a file beside
// the crib, since the crib itself is replaced; it goes with its holder, even
// one that is killed.
func lock(real string) (unlock func(), err error) {
	l := flock.New(LockName(real), flock.SetPermissions(0o666))
	ctx, cancel := context.WithTimeout(context.Background(), longestWait)
	defer cancel()
	if _, err := l.TryLockContext(ctx, knock); err != nil {
		if errors.Is(err, context.DeadlineExceeded) {
			return nil, fmt.Errorf("another record has held it for %v", longestWait)
		}
		return nil, bare(err)
	}
	clearLeftovers(real)
	return func() { l.Close() }, nil
}

// LockName returns the name of the file that records of a crib are kept apart by.
// It is never removed: a record that waits holds it open, and one that comes
// after its removal would lock another file of that name.
func LockName(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".lock")
}

// newName is how the file is called while it is being written; the star stands
// for what the system chooses.
func newName(real string) string { return "." + filepath.Base(real) + ".*.new" }

// clearLeftovers removes what a killed record has left half-written. Only the
// holder of the lock may have such files.
func clearLeftovers(real string) {
	head, tail, _ := strings.Cut(newName(real), "*")
	entries, err := os.ReadDir(filepath.Dir(real))
	if err != nil {
		return // they do no harm
	}
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), head) && strings.HasSuffix(e.Name(), tail) {
			os.Remove(filepath.Join(filepath.Dir(real), e.Name()))
		}
	}
}

// replace puts next in the place of old: written in full beside it, brought to
// the disk, then renamed over it.
func replace(real string, old, next []byte) (err error) {
	info, err := regular(real)
	if err != nil {
		return err
	}
	if err := writable(real, info); err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(real), newName(real))
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	if _, err = f.Write(next); err != nil {
		return err
	}
	if err = likeness(f, info); err != nil {
		return err
	}
	if err = f.Sync(); err != nil {
		return err
	}
	if err = f.Close(); err != nil {
		return err
	}
	if err = holds(real, old); err != nil {
		return err
	}
	if err = swap(f.Name(), real, old); err != nil {
		return err
	}
	return syncFolder(filepath.Dir(real))
}

// swap renames the file next over real, which is to hold old. Where the system
// can exchange two files in one step, it looks at what it has taken away, so
// that not even an editor that saves in this very moment loses anything: a file
// that is not the one expected is newer, and is put back.
func swap(next, real string, old []byte) error {
	put, err := os.ReadFile(next)
	if err != nil {
		return err
	}
	for expected, result := old, error(nil); ; result = errChanged {
		done, err := exchange(next, real)
		switch {
		case err != nil:
			return err
		case !done:
			return rename(next, real)
		}
		taken, err := os.ReadFile(next)
		if err != nil {
			return err
		}
		if bytes.Equal(taken, expected) {
			return errors.Join(result, os.Remove(next))
		}
		put, expected = taken, put
	}
}

// holds returns errChanged unless the file holds just these bytes.
func holds(path string, want []byte) error {
	got, err := os.ReadFile(path)
	if err == nil && !bytes.Equal(got, want) {
		err = errChanged
	}
	return err
}

// writable refuses a file that its owner has closed to writing: renaming
// another over it would get round that.
func writable(real string, info fs.FileInfo) error {
	if info.Mode().Perm()&0o222 == 0 {
		return errors.New("the file is read-only")
	}
	f, err := os.OpenFile(real, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	return f.Close()
}
