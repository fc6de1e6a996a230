// Package store changes a file as a whole: one change at a time, and so that
// whoever reads it finds the old text or the new one, never a part of either.
package store

import (
	"bytes"
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/gofrs/flock"

	"evenlip/internal/fault"
)

// How long a change waits for the others, and how often it looks.
const (
	longestWait = 60 * time.Second
	pause       = 5 * time.Millisecond
)

// Transform replaces a file with what change makes of it. Changes that come at once
// wait for one another. The new file is written beside the old one, with its owner
// and mode, brought to the disk, and renamed over it; a link is followed. Errors:
// those of change, as they are, and faults of a file that cannot be written or was
// changed by somebody else meanwhile. After an error the old file stands, unless the
// fault says otherwise.
func Transform(path string, change func(old []byte) ([]byte, error)) error {
	return system.transform(path, change)
}

func (d *disk) transform(path string, change func([]byte) ([]byte, error)) error {
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return cannot(path, err)
	}
	unlock, err := lock(real)
	if err != nil {
		return cannot(path, err)
	}
	defer unlock()
	old, info, err := d.read(real)
	if err != nil {
		return cannot(path, err)
	}
	next, err := change(old)
	if err != nil {
		return err
	}
	if err := d.replace(real, info, old, next); err != nil {
		return cannot(path, err)
	}
	return nil
}

// replace puts next in the place of the file real, if that still holds old.
func (d *disk) replace(real string, info fs.FileInfo, old, next []byte) error {
	dir := filepath.Dir(real)
	f, err := d.create(dir, "."+filepath.Base(real)+".*.part")
	if err != nil {
		return err
	}
	renamed := false
	defer func() {
		if !renamed {
			os.Remove(f.Name())
		}
	}()
	err = d.like(f, info)
	if filled := fill(f, next); err == nil {
		err = filled
	}
	if err != nil {
		return err
	}
	now, _, err := d.read(real)
	if err != nil {
		return err
	}
	if !bytes.Equal(now, old) {
		return fault.New("close the editor, or try again", "another program changed it meanwhile, and nothing was written")
	}
	if err := d.rename(f.Name(), real); err != nil {
		return err
	}
	renamed = true
	if err := d.sync(dir); err != nil {
		return &fault.Fault{Text: "the change is in it, but may not be on the disk yet: " + fault.Bare(err).Error(), Cause: err}
	}
	return nil
}

// Create writes a new file. Errors: one that is an [fs.ErrExist] where there is a
// file of that name; it is never written over.
func Create(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	switch {
	case errors.Is(err, fs.ErrExist):
		return &fault.Fault{Text: path + " is there already", Hint: "name another with --file", Status: fault.Refused, Cause: err}
	case err != nil:
		return cannot(path, err)
	}
	if err := fill(f, data); err != nil {
		os.Remove(path)
		return cannot(path, err)
	}
	return nil
}

// fill writes a file, brings it to the disk and closes it.
func fill(f file, data []byte) error {
	_, err := f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	return err
}

// read returns what is in a file that may be replaced: an ordinary one, that can be
// written to, since renaming would get round that, and of one name, since the others
// would keep the old text.
func read(real string) ([]byte, fs.FileInfo, error) {
	info, err := os.Stat(real)
	if err != nil {
		return nil, nil, err
	}
	switch {
	case !info.Mode().IsRegular():
		return nil, nil, errors.New("it is no ordinary file")
	case info.Mode().Perm()&0o222 == 0:
		return nil, nil, errors.New("the file is read-only")
	}
	f, err := os.OpenFile(real, os.O_RDWR, 0)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	if n, err := links(f); err != nil {
		return nil, nil, err
	} else if n > 1 {
		return nil, nil, fault.New("leave it one name, and make the others symbolic links", "the file has %d names (hard links), and only one of them would be changed", n)
	}
	data, err := io.ReadAll(f)
	return data, info, err
}

// lock keeps other changes out until it is undone. The lock is a file beside the
// other, since that one is replaced; it goes with its holder, even one that is
// killed.
func lock(real string) (unlock func() error, err error) {
	l := flock.New(LockName(real), flock.SetPermissions(0o666))
	ctx, cancel := context.WithTimeout(context.Background(), longestWait)
	defer cancel()
	_, err = l.TryLockContext(ctx, pause)
	switch {
	case errors.Is(err, context.DeadlineExceeded):
		return nil, fault.New("try again", "another evenlip has been changing it for %v", longestWait)
	case err != nil:
		return nil, &fault.Fault{Text: fault.Bare(err).Error(), Hint: "the folder must be one that can be written to", Cause: err}
	}
	return l.Close, nil
}

// LockName returns the name of the file that is locked while another is changed. It
// is never removed: whoever waits for the lock holds it open, and one who comes after
// its removal would lock another file of that name.
func LockName(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".lock")
}

// cannot says that a file could not be written, and why.
func cannot(path string, err error) error {
	f := fault.Unreadable("cannot write "+path, err)
	var why *fault.Fault
	if errors.As(err, &why) {
		f.Hint = why.Hint
	}
	return f
}
