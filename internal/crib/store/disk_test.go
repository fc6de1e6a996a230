package store

import (
	"errors"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// errStep is what a step fails with.
var errStep = errors.New("the disk fails")

// recorder is the system, with a note of each step; one of them fails.
type recorder struct {
	steps []string
	fails int // the number of the step, from 1; 0 for none
}

func (r *recorder) step(name string, do func() error) error {
	r.steps = append(r.steps, name)
	if len(r.steps) == r.fails {
		return errStep
	}
	return do()
}

// written is a file that notes what is done to it.
type written struct {
	file
	r *recorder
}

func (w written) Write(p []byte) (n int, err error) {
	err = w.r.step("write", func() error {
		n, err = w.file.Write(p)
		return err
	})
	return n, err
}

func (w written) Sync() error { return w.r.step("sync", w.file.Sync) }

func (w written) Close() error {
	return errors.Join(w.file.Close(), w.r.step("close", func() error { return nil }))
}

// disk returns the system that notes its steps.
func (r *recorder) disk() *disk {
	return &disk{
		read: func(path string) (data []byte, info fs.FileInfo, err error) {
			err = r.step("read", func() error {
				data, info, err = system.read(path)
				return err
			})
			return data, info, err
		},
		create: func(dir, pattern string) (f file, err error) {
			err = r.step("create", func() error {
				f, err = system.create(dir, pattern)
				return err
			})
			return written{f, r}, err
		},
		like: func(f file, info fs.FileInfo) error {
			return r.step("like", func() error { return system.like(f, info) })
		},
		rename: func(from, to string) error {
			return r.step("rename "+filepath.Ext(from)+" to "+filepath.Ext(to), func() error { return system.rename(from, to) })
		},
		sync: func(dir string) error { return r.step("sync folder", func() error { return system.sync(dir) }) },
	}
}

// The steps in their order: the new file is whole, has the old one's owner and mode
// and is on the disk before it gets its name, and the last thing before that is a look
// at the old one.
var inOrder = []string{"read", "create", "like", "write", "sync", "close", "read", "rename .part to .yaml", "sync folder"}

func TestStepsInOrder(t *testing.T) {
	path := inFile(t, text)
	var r recorder
	if err := r.disk().transform(path, ours); err != nil || contents(t, path) != text+"# ours\n" || leftovers(path) != nil {
		t.Errorf("%v, %v:\n%s", err, leftovers(path), contents(t, path))
	}
	if !slices.Equal(r.steps, inOrder) {
		t.Errorf("steps %q,\nnot %q", r.steps, inOrder)
	}
}

// Whatever step fails, the old file stands, nothing is left beside it and the error
// says why. Only where the new file had its name already, the error says that.
func TestEveryStepMayFail(t *testing.T) {
	for i, step := range inOrder {
		path := inFile(t, text)
		r := recorder{fails: i + 1}
		err := r.disk().transform(path, ours)
		isIn := strings.Contains(err.Error(), "the change is in it")
		want := text
		if step == "sync folder" {
			want += "# ours\n"
		}
		if !errors.Is(err, errStep) || leftovers(path) != nil || contents(t, path) != want || isIn != (want != text) {
			t.Errorf("step %d, %s, fails: %v, %v:\n%s", i+1, step, err, leftovers(path), contents(t, path))
		}
		if err := Transform(path, ours); err != nil || contents(t, path) != want+"# ours\n" {
			t.Errorf("after step %d, %s, failed: %v", i+1, step, err)
		}
	}
}

// An edit made at any step before the last look is seen: it stands, and the change
// is refused.
func TestEditedMeanwhile(t *testing.T) {
	const edited = "edited meanwhile\n"
	steps := map[string]func(d *disk, edit func()){
		"read": func(d *disk, edit func()) {
			reads := 0
			d.read = func(path string) ([]byte, fs.FileInfo, error) {
				if reads++; reads == 2 {
					edit()
				}
				return system.read(path)
			}
		},
		"create": func(d *disk, edit func()) {
			d.create = func(dir, pattern string) (file, error) {
				edit()
				return system.create(dir, pattern)
			}
		},
		"like": func(d *disk, edit func()) {
			d.like = func(f file, info fs.FileInfo) error {
				edit()
				return system.like(f, info)
			}
		},
	}
	for step, at := range steps {
		for how, save := range map[string]func(*testing.T, string, string){"in place": write, "by another file": save} {
			path := inFile(t, text)
			d := system
			at(&d, func() { save(t, path, edited) })
			err := d.transform(path, ours)
			if f := cannotWrite(t, err, "another program changed it meanwhile"); f != nil && f.Hint == "" {
				t.Errorf("at %s: no hint", step)
			}
			if contents(t, path) != edited || leftovers(path) != nil {
				t.Errorf("at %s, %s: %v:\n%s", step, how, leftovers(path), contents(t, path))
			}
			if err := Transform(path, ours); err != nil || contents(t, path) != edited+"# ours\n" {
				t.Errorf("at %s, %s, once more: %v", step, how, err)
			}
		}
	}
}
