package crib

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// replace puts next in the place of old: written in full beside it, brought to
// the disk, then put under its name in one step.
func (d *disk) replace(real string, old, next []byte) error {
	info, err := regular(real)
	if err != nil {
		return err
	}
	if err := writable(real, info); err != nil {
		return err
	}
	part, err := d.write(real, info, next)
	if err != nil {
		return err
	}
	full := nameOf(real, old, next)
	if err := d.rename(part, full); err != nil {
		return errors.Join(err, d.remove(part))
	}
	err = d.swap(full, real, old)
	if err != nil {
		if left := d.discard(full, digest(old), digest(next)); left != nil {
			return left
		}
	}
	return err
}

// write writes a new file beside the old one and brings it to the disk; of one
// that fails nothing is left.
func (d *disk) write(real string, like fs.FileInfo, next []byte) (path string, err error) {
	f, err := d.create(filepath.Dir(real), partOf(real))
	if err != nil {
		return "", err
	}
	_, err = f.Write(next)
	if err == nil {
		err = d.like(f, like)
	}
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		d.remove(f.Name())
	}
	return f.Name(), err
}

// swap puts the file next under the name real, which is to hold old. Nobody gets
// to open the old one for writing meanwhile, where the system grants that; and
// where it can exchange two files in one step, a look at what was taken away tells
// whether someone has saved a file of his own in this very moment, or waits to
// write to the old one: then that is put back.
func (d *disk) swap(next, real string, old []byte) error {
	h, err := d.hold(real)
	if err != nil {
		return err
	}
	defer h.release()
	if !bytes.Equal(h.data, old) {
		return errChanged
	}
	done, err := d.exchange(next, real)
	if err != nil {
		return err
	}
	if !done {
		return d.overwrite(next, real)
	}
	err = d.sync(filepath.Dir(real))
	if taken, unread := os.ReadFile(next); err == nil && (unread != nil || !bytes.Equal(taken, old) || h.isSought()) {
		err = errChanged
	}
	if err != nil {
		return d.putBack(next, real, err)
	}
	d.remove(next) // left there, it does no harm
	return nil
}

// overwrite is how a file comes under another's name where two cannot change
// places.
func (d *disk) overwrite(next, real string) error {
	if err := d.rename(next, real); err != nil {
		return err
	}
	if err := d.sync(filepath.Dir(real)); err != nil {
		return fmt.Errorf("the record is in it, but may not be on the disk yet: %w", bare(err))
	}
	return nil
}

// putBack undoes an exchange, and returns why it was undone.
func (d *disk) putBack(next, real string, why error) error {
	done, err := d.exchange(next, real)
	if !done || err != nil {
		return &advised{fmt.Errorf("%w; and what stood there could not be put back", bare(why)), "look at the file: the record may be in it"}
	}
	d.sync(filepath.Dir(real))
	return why
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
