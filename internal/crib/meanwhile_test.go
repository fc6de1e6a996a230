package crib

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// ours adds a line to a crib, as a record that cannot be taken for an editor's.
func ours(data []byte) ([]byte, error) { return append(data, "# ours\n"...), nil }

// save is an editor that puts a file of its own in the place of a crib's.
func save(t *testing.T, path, text string) {
	t.Helper()
	own := path + ".edited"
	if err := errors.Join(os.WriteFile(own, []byte(text), 0o644), os.Rename(own, path)); err != nil {
		t.Error(err)
	}
}

// exchanging skips a test where two files cannot change places.
func exchanging(t *testing.T) {
	t.Helper()
	a, b := inFile(t, "a"), inFile(t, "b")
	if done, err := exchange(a, b); !done || err != nil {
		t.Skip("files cannot change places here", err)
	}
}

// Someone who asks for no lock saves the file while a record is being made: the
// record begins again, and both are in the file.
func TestEditedMeanwhile(t *testing.T) {
	path := inFile(t, small)
	edited := strings.Replace(small, "# the end", "# edited meanwhile", 1)
	tries := 0
	err := update(path, func(data []byte) ([]byte, error) {
		if tries++; tries == 1 {
			if err := os.WriteFile(path, []byte(edited), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		_, next, err := Rewrite(path, data, "A1", ground("1mm"), nil)
		return next, err
	})
	text := contents(t, path)
	if err != nil || tries != 2 || !strings.Contains(text, "# edited meanwhile") || !strings.Contains(text, "what: grind\n") {
		t.Errorf("%v after %d tries:\n%s", err, tries, text)
	}
}

// Where that goes on, the editor's file stands and the record says so.
func TestEditedAgainAndAgain(t *testing.T) {
	path := inFile(t, small)
	tries := 0
	err := update(path, func(data []byte) ([]byte, error) {
		tries++
		if err := os.WriteFile(path, fmt.Appendf(nil, "%s# edit %d\n", small, tries), 0o644); err != nil {
			t.Fatal(err)
		}
		return append(data, "# ours\n"...), nil
	})
	var store *StoreError
	if !errors.As(err, &store) || !errors.Is(err, errChanged) || store.Hint == "" {
		t.Errorf("%v", err)
	}
	if text := contents(t, path); tries != mostTries || text != fmt.Sprintf("%s# edit %d\n", small, tries) {
		t.Errorf("%d tries:\n%s", tries, text)
	}
}

// An editor has saved a file of its own after the last look at the old one and
// before the two change places: the record begins again from there.
func TestEditedInTheVeryMoment(t *testing.T) {
	exchanging(t)
	path := inFile(t, small)
	edited := strings.Replace(small, "# the end", "# edited meanwhile", 1)
	d, changed := system, 0
	d.exchange = func(a, b string) (bool, error) {
		if changed++; changed == 1 {
			save(t, path, edited)
		}
		return exchange(a, b)
	}
	if err := d.update(path, ours); err != nil || contents(t, path) != edited+"# ours\n" || leftovers(path) != nil {
		t.Errorf("%v, %v:\n%s", err, leftovers(path), contents(t, path))
	}
	if changed != 3 { // taken away, put back, taken away
		t.Errorf("files changed places %d times", changed)
	}
}

// Two editors save while a record is being written, the second one over the
// record itself: the file is his, and what the first one saved is told.
func TestEditedTwiceInTheVeryMoment(t *testing.T) {
	exchanging(t)
	path := inFile(t, small)
	d, changed := system, 0
	d.exchange = func(a, b string) (bool, error) {
		changed++
		save(t, path, fmt.Sprint("# edit ", changed, "\n"))
		return exchange(a, b)
	}
	err := d.update(path, ours)
	left := leftovers(path)
	var store *StoreError
	if !errors.As(err, &store) || len(left) != 1 || !strings.Contains(err.Error(), left[0]) || store.Hint == "" {
		t.Fatalf("%v, %v", err, left)
	}
	other := contents(t, filepath.Join(filepath.Dir(path), left[0]))
	if contents(t, path) != "# edit 1\n" || other != "# edit 2\n" {
		t.Errorf("%q stands, and %q beside it", contents(t, path), other)
	}
	if err := update(path, ours); !errors.As(err, &store) || !strings.Contains(err.Error(), left[0]) || contents(t, path) != "# edit 1\n" {
		t.Errorf("while that is there: %v", err)
	}
}

// A record is killed after it has taken an editor's file away and before it could
// put that back: the next one does.
func TestKilledBeforeItIsPutBack(t *testing.T) {
	exchanging(t)
	path := inFile(t, small)
	next, _ := ours([]byte(small))
	left := nameOf(path, []byte(small), next)
	edited := strings.Replace(small, "# the end", "# edited meanwhile", 1)
	if err := errors.Join(os.WriteFile(path, next, 0o644), os.WriteFile(left, []byte(edited), 0o644)); err != nil {
		t.Fatal(err)
	}
	if err := update(path, ours); err != nil || contents(t, path) != edited+"# ours\n" || leftovers(path) != nil {
		t.Errorf("%v, %v:\n%s", err, leftovers(path), contents(t, path))
	}
}

// The same where the file was changed since: nobody but a hand can put the two
// together, and nothing is recorded until one has.
func TestKilledAndEditedSince(t *testing.T) {
	path := inFile(t, small)
	next, _ := ours([]byte(small))
	left := nameOf(path, []byte(small), next)
	if err := os.WriteFile(left, []byte("# theirs\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	var store *StoreError
	err := update(path, ours)
	if !errors.As(err, &store) || !strings.Contains(err.Error(), filepath.Base(left)) || !strings.Contains(store.Hint, "by hand") {
		t.Errorf("%v", err)
	}
	if contents(t, path) != small || contents(t, left) != "# theirs\n" {
		t.Errorf("%q stands, and %q beside it", contents(t, path), contents(t, left))
	}
	if err := errors.Join(os.Remove(left), update(path, ours)); err != nil {
		t.Errorf("once it is gone: %v", err)
	}
}

// What a killed record has left goes; what only looks like it, and is somebody's,
// stays.
func TestOnlyOurLeftoversGo(t *testing.T) {
	path := inFile(t, small)
	dir := filepath.Dir(path)
	old, next := []byte(small), []byte("# next\n")
	full := filepath.Base(nameOf(path, old, next))
	for name, text := range map[string]string{
		".crib.yaml.123456.part": "half", full: string(next), filepath.Base(nameOf(path, []byte("x"), next)): string(next), filepath.Base(nameOf(path, old, []byte("x"))): small,
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	theirs := []string{".crib.yaml.backup.new", ".crib.yaml.x.part", ".crib.yaml..part", ".other.yaml.123.part", "." + full, strings.TrimSuffix(full, "new") + "old", ".crib.yaml." + strings.Repeat("x", 16) + full[len(full)-21:], ".crib.yaml.old." + full[len(".crib.yaml."):]}
	for _, name := range theirs {
		if err := os.WriteFile(filepath.Join(dir, name), next, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := update(path, ours); err != nil {
		t.Fatal(err)
	}
	left := leftovers(path)
	if len(left) != len(theirs) {
		t.Errorf("left are %q", left)
	}
	for _, name := range theirs {
		if contents(t, filepath.Join(dir, name)) != string(next) {
			t.Errorf("%s is another", name)
		}
	}
}

// A file that is empty because someone is writing it anew is waited for; one that
// stays empty is taken for what it is.
func TestEmptyForAMoment(t *testing.T) {
	path := inFile(t, "")
	go func() {
		time.Sleep(20 * knock)
		save(t, path, small)
	}()
	if err := update(path, ours); err != nil || contents(t, path) != small+"# ours\n" {
		t.Errorf("%v: %q", err, contents(t, path))
	}
	if err := os.Truncate(path, 0); err != nil {
		t.Fatal(err)
	}
	d, began := system, time.Now()
	d.patience = 4 * knock
	err := d.update(path, func(data []byte) ([]byte, error) {
		if len(data) > 0 || time.Since(began) < d.patience {
			t.Errorf("%d bytes after %v", len(data), time.Since(began))
		}
		return nil, errShape
	})
	if !errors.Is(err, errShape) {
		t.Errorf("%v", err)
	}
}

// What is wrong with half of a file, caught while it was being written, is not
// told: the record begins again.
func TestRefusedForHalfOfAFile(t *testing.T) {
	path := inFile(t, "version: 1\ndril")
	err := update(path, func(data []byte) ([]byte, error) {
		if _, faults := Read(path, data, nil); len(faults) > 0 {
			save(t, path, small)
			return nil, Faults(faults)
		}
		return ours(data)
	})
	if err != nil || contents(t, path) != small+"# ours\n" {
		t.Errorf("%v: %q", err, contents(t, path))
	}
}

// A file with two names would come apart: it is left as it is.
func TestHardLinks(t *testing.T) {
	path := inFile(t, small)
	other := filepath.Join(filepath.Dir(path), "other.yaml")
	if err := os.Link(path, other); err != nil {
		t.Skip(err)
	}
	err := update(path, ours)
	var store *StoreError
	if !errors.As(err, &store) || !strings.Contains(err.Error(), "2 names (hard links)") || !strings.Contains(store.Hint, "symbolic") || contents(t, path) != small {
		t.Errorf("%v", err)
	}
	if err := errors.Join(os.Remove(other), update(path, ours)); err != nil {
		t.Errorf("with one name: %v", err)
	}
}
