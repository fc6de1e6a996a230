package crib

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/gofrs/flock"
)

// How long a record waits for the others, and for a program that writes to the
// file itself; how often it looks; and how often it begins again when the file was
// changed meanwhile by someone who asks for no lock.
const (
	longestWait = 60 * time.Second
	longestOpen = 3 * time.Second
	knock       = 5 * time.Millisecond
	mostTries   = 5
)

// Why a record begins again: the file is no longer what was read, or someone is
// about to change it.
var (
	errChanged = errors.New("the file was changed while it was being written; nothing was recorded")
	errOpen    = errors.New("another program has the file open for writing; nothing was recorded")
)

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

// advised is an error and what to do about it.
type advised struct {
	error
	hint string
}

// Unwrap returns the error alone.
func (a *advised) Unwrap() error { return a.error }

// notStored says that a file could not be written, and what to do.
func notStored(path string, err error) error {
	hint := ""
	var a *advised
	switch {
	case errors.As(err, &a):
		hint, err = a.hint, a.error
	case errors.Is(err, errChanged), errors.Is(err, errOpen):
		hint = "close the editor, or try again"
	}
	return &StoreError{path, bare(err), hint}
}

// update replaces a file with what change makes of it. Records that come at
// once wait for one another; the file is never to be seen half-written, and one
// that was changed meanwhile is not overwritten but read again.
func update(path string, change func([]byte) ([]byte, error)) error {
	return system.update(path, change)
}

func (d *disk) update(path string, change func([]byte) ([]byte, error)) error {
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return notStored(path, err)
	}
	if _, err := regular(real); err != nil {
		return notStored(path, err)
	}
	unlock, err := lock(real)
	if err != nil {
		return notStored(path, err)
	}
	defer unlock()
	if err := d.tidy(real); err != nil {
		return notStored(path, err)
	}
	for range mostTries {
		var data, next []byte
		if data, err = d.settled(real); err != nil {
			break
		}
		if next, err = change(data); err == nil {
			err = d.replace(real, data, next)
		} else if now, _ := os.ReadFile(real); bytes.Equal(now, data) {
			return err
		} else { // half of a file that was being written
			err = errChanged
		}
		if !errors.Is(err, errChanged) && !errors.Is(err, errOpen) {
			break
		}
	}
	if err != nil {
		return notStored(path, err)
	}
	return nil
}

// settled returns what a file holds once nobody writes to it. One without a byte
// is about to be written anew, for so long as anyone may be waited for.
func (d *disk) settled(real string) ([]byte, error) {
	for began := time.Now(); ; time.Sleep(knock) {
		h, err := d.hold(real)
		h.release()
		passing := errors.Is(err, errOpen) || err == nil && len(h.data) == 0
		if !passing || time.Since(began) > d.patience {
			return h.data, err
		}
	}
}

// regular returns what is known of a file, if it is an ordinary one and has no
// other name: a new file in its place would leave that one the old.
func regular(real string) (fs.FileInfo, error) {
	info, err := os.Stat(real)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("it is no ordinary file")
	}
	n, err := names(real, info)
	if n > 1 {
		err = &advised{fmt.Errorf("the file has %d names (hard links), and a record would come under one of them alone", n), "leave it one name, and make the others symbolic links"}
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
			return nil, &advised{fmt.Errorf("another record has held it for %v", longestWait), "try again"}
		}
		return nil, &advised{err, "the folder must be one that can be written to"}
	}
	return func() { l.Close() }, nil
}

// LockName returns the name of the file that records of a crib are kept apart by.
// It is never removed: a record that waits holds it open, and one that comes
// after its removal would lock another file of that name.
func LockName(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".lock")
}
