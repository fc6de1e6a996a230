package crib

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

// recorder is the system, with a note of each step; that of one name fails, the
// first time.
type recorder struct {
	steps []string
	fails string
}

func (r *recorder) step(name string, do func() error) error {
	r.steps = append(r.steps, name)
	if name == r.fails {
		r.fails = ""
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

// kind is what a file is by its name.
func kind(path string) string {
	if path = filepath.Base(path); path == FileName {
		return "the crib"
	}
	return strings.TrimPrefix(filepath.Ext(path), ".")
}

// disk returns the system that notes its steps; two files change places in it only
// if that is said.
func (r *recorder) disk(exchanges bool) *disk {
	d := system
	d.create = func(dir, pattern string) (f file, err error) {
		err = r.step("create "+kind(pattern), func() error {
			f, err = system.create(dir, pattern)
			return err
		})
		return written{f, r}, err
	}
	d.like = func(f file, info fs.FileInfo) error {
		return r.step("like", func() error { return system.like(f, info) })
	}
	d.hold = func(path string) (h *hold, err error) {
		h = &hold{}
		err = r.step("hold "+kind(path), func() error {
			h, err = system.hold(path)
			return err
		})
		return h, err
	}
	d.rename = func(from, to string) error {
		return r.step("rename "+kind(from)+" to "+kind(to), func() error { return system.rename(from, to) })
	}
	d.exchange = func(a, b string) (done bool, err error) {
		if !exchanges {
			return false, nil
		}
		err = r.step("exchange", func() error {
			done, err = exchange(a, b)
			return err
		})
		return done, err
	}
	d.sync = func(dir string) error { return r.step("sync folder", func() error { return syncFolder(dir) }) }
	d.remove = func(path string) error {
		return r.step("remove "+kind(path), func() error { return system.remove(path) })
	}
	return &d
}

// The steps of a record in their order: the new file is whole, has the old one's
// owner and mode and is on the disk before it gets its name, and its name is on the
// disk before the old one goes.
var inOrder = map[bool][]string{
	true:  {"hold the crib", "create part", "write", "like", "sync", "close", "rename part to new", "hold the crib", "exchange", "sync folder", "remove new"},
	false: {"hold the crib", "create part", "write", "like", "sync", "close", "rename part to new", "hold the crib", "rename new to the crib", "sync folder"},
}

func TestStepsInOrder(t *testing.T) {
	for exchanges, want := range inOrder {
		if exchanges {
			exchanging(t)
		}
		path := inFile(t, small)
		var r recorder
		if err := r.disk(exchanges).update(path, ours); err != nil || contents(t, path) != small+"# ours\n" || leftovers(path) != nil {
			t.Errorf("%v, %v:\n%s", err, leftovers(path), contents(t, path))
		}
		if !slices.Equal(r.steps, want) {
			t.Errorf("steps %q,\nnot %q", r.steps, want)
		}
	}
}

// What is put back is on the disk before the record begins again.
func TestStepsOfPuttingBack(t *testing.T) {
	exchanging(t)
	path := inFile(t, small)
	var r recorder
	d := r.disk(true)
	change, tries := d.exchange, 0
	d.exchange = func(a, b string) (bool, error) {
		if tries++; tries == 1 {
			save(t, path, small+"# edited\n")
		}
		return change(a, b)
	}
	if err := d.update(path, ours); err != nil {
		t.Fatal(err)
	}
	want := slices.Concat(inOrder[true][:10], []string{"exchange", "sync folder", "hold new", "remove new"}, inOrder[true])
	if !slices.Equal(r.steps, want) {
		t.Errorf("steps %q,\nnot %q", r.steps, want)
	}
}

// Whatever step fails, the old file stands, nothing is left beside it and the error
// says why. Only where the new file had its name already and cannot be taken back,
// the error says that.
func TestEveryStepMayFail(t *testing.T) {
	for exchanges, steps := range inOrder {
		if exchanges {
			exchanging(t)
		}
		for _, step := range steps {
			path := inFile(t, small)
			r := recorder{fails: step}
			err := r.disk(exchanges).update(path, ours)
			switch {
			case step == "remove new":
				if err != nil || contents(t, path) != small+"# ours\n" || len(leftovers(path)) != 1 {
					t.Errorf("%s fails: %v, %v:\n%s", step, err, leftovers(path), contents(t, path))
				}
				if err := update(path, ours); err != nil || leftovers(path) != nil {
					t.Errorf("after that: %v, %v", err, leftovers(path))
				}
			case !errors.Is(err, errStep) || leftovers(path) != nil:
				t.Errorf("%s fails: %v, %v", step, err, leftovers(path))
			case step == "sync folder" && !exchanges:
				if !strings.Contains(err.Error(), "the record is in it") || contents(t, path) != small+"# ours\n" {
					t.Errorf("%s fails: %v:\n%s", step, err, contents(t, path))
				}
			case contents(t, path) != small:
				t.Errorf("%s fails, and the file is\n%s", step, contents(t, path))
			}
		}
	}
}

// Where two files cannot change places, an edit made while the new file is being
// written is seen all the same.
func TestEditedMeanwhileWithoutExchange(t *testing.T) {
	path := inFile(t, small)
	var r recorder
	d := r.disk(false)
	create, tries := d.create, 0
	d.create = func(dir, pattern string) (file, error) {
		if tries++; tries == 1 {
			save(t, path, small+"# edited meanwhile\n")
		}
		return create(dir, pattern)
	}
	if err := d.update(path, ours); err != nil || tries != 2 || contents(t, path) != small+"# edited meanwhile\n# ours\n" || leftovers(path) != nil {
		t.Errorf("%v after %d tries, %v:\n%s", err, tries, leftovers(path), contents(t, path))
	}
}

// A file that cannot be put back either is left beside the new one, and told.
func TestWhatCannotBePutBack(t *testing.T) {
	exchanging(t)
	path := inFile(t, small)
	d, changed := system, 0
	d.exchange = func(a, b string) (bool, error) {
		if changed++; changed == 1 {
			save(t, path, "# theirs\n")
			return exchange(a, b)
		}
		return false, errStep
	}
	err := d.update(path, ours)
	left := leftovers(path)
	if len(left) != 1 || !strings.Contains(err.Error(), left[0]) || contents(t, filepath.Join(filepath.Dir(path), left[0])) != "# theirs\n" {
		t.Fatalf("%v, %v", err, left)
	}
	if err := update(path, ours); err != nil || contents(t, path) != "# theirs\n# ours\n" || leftovers(path) != nil {
		t.Errorf("the next record: %v, %v:\n%s", err, leftovers(path), contents(t, path))
	}
}
