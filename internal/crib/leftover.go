package crib

import (
	"errors"
	"fmt"
	"hash/fnv"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// A new file has two names before it has that of the crib: one while it is being
// written, and one that tells what it holds and what it is to take the place of. By
// these a later record knows what a killed one has left behind.
const (
	partEnd = ".part"
	fullEnd = ".new"
)

// partOf is how a file is called while it is being written; the star stands for
// digits that the system chooses.
func partOf(real string) string { return before(real) + "*" + partEnd }

// nameOf is how it is called once it is written.
func nameOf(real string, old, next []byte) string {
	return filepath.Join(filepath.Dir(real), before(real)+digest(old)+"-"+digest(next)+fullEnd)
}

// before is what all these names begin with.
func before(real string) string { return "." + filepath.Base(real) + "." }

// digest is a short name for what a file holds.
func digest(data []byte) string {
	h := fnv.New64a()
	h.Write(data)
	return fmt.Sprintf("%016x", h.Sum64())
}

// digests returns what such a name tells, if it is one.
func digests(real, name string) (old, next string, ok bool) {
	sums, begins := strings.CutPrefix(name, before(real))
	sums, ends := strings.CutSuffix(sums, fullEnd)
	old, next, _ = strings.Cut(sums, "-")
	return old, next, begins && ends && isDigest(old) && isDigest(next)
}

func isDigest(s string) bool { return len(s) == 16 && strings.Trim(s, "0123456789abcdef") == "" }

// isPart reports whether a file is one that was never written to its end.
func isPart(real, name string) bool {
	digits, begins := strings.CutPrefix(name, before(real))
	digits, ends := strings.CutSuffix(digits, partEnd)
	return begins && ends && digits != "" && strings.Trim(digits, "0123456789") == ""
}

// tidy clears up after killed records. Only the holder of the lock may: nobody
// else has such files then.
func (d *disk) tidy(real string) error {
	dir := filepath.Dir(real)
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil // what is left does no harm
	}
	for _, e := range entries {
		path := filepath.Join(dir, e.Name())
		if isPart(real, e.Name()) {
			d.remove(path)
		}
		if old, next, ok := digests(real, e.Name()); ok {
			if err := d.restore(path, real, old, next); err != nil {
				return err
			}
		}
	}
	return nil
}

// restore removes what a killed record has left, if that is of no use any more.
// If it is what another program has saved, and the record was killed before it
// could put that back, it is put back now, as long as nothing was done to the file
// since.
func (d *disk) restore(left, real, old, next string) error {
	err := d.discard(left, old, next)
	if err == nil {
		return nil
	}
	if now, unread := os.ReadFile(real); unread != nil || digest(now) != next {
		return err
	}
	if done, failed := d.exchange(left, real); !done || failed != nil {
		return err
	}
	return d.discard(left, old, next)
}

// discard removes a file that holds one of the two things that a record leaves.
// Anything else is somebody's work, and stays; so does what cannot be read, and
// what somebody has open for writing: a hold has nothing of these.
func (d *disk) discard(path, old, next string) error {
	h, err := d.hold(path)
	defer h.release()
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if sum := digest(h.data); sum != old && sum != next {
		return &advised{fmt.Errorf("what another program wrote meanwhile is in %s", filepath.Base(path)), "put together by hand what is to stay in the crib, and remove that file"}
	}
	d.remove(path) // left there, it does no harm
	return nil
}
