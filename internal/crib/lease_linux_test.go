package crib

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"golang.org/x/sys/unix"

	"evenlip/internal/drill"
)

// appending opens a file as a shell does for >>.
func appending(t *testing.T, path string) *os.File {
	t.Helper()
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_APPEND, 0)
	if err != nil {
		t.Error(err)
	}
	return f
}

// leasing skips a test where the system does not keep writers out.
func leasing(t *testing.T) {
	t.Helper()
	f, err := os.Open(inFile(t, small))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if _, err := unix.FcntlInt(f.Fd(), unix.F_SETLEASE, unix.F_RDLCK); err != nil {
		t.Skip("no leases here", err)
	}
}

// A program that has the file open, and writes to it later, is waited for.
func TestOpenForWriting(t *testing.T) {
	leasing(t)
	path := inFile(t, small)
	f := appending(t, path)
	go func() {
		time.Sleep(20 * knock)
		fmt.Fprintln(f, "# theirs")
		f.Close()
	}()
	if err := update(path, ours); err != nil || contents(t, path) != small+"# theirs\n# ours\n" {
		t.Errorf("%v:\n%s", err, contents(t, path))
	}
}

// One that goes on having it open is told of; what it writes then is in the file.
func TestOpenForWritingTooLong(t *testing.T) {
	leasing(t)
	path := inFile(t, small)
	f := appending(t, path)
	d := system
	d.patience = 4 * knock
	err := d.update(path, ours)
	var store *StoreError
	if !errors.As(err, &store) || !errors.Is(err, errOpen) || store.Hint == "" {
		t.Errorf("%v", err)
	}
	fmt.Fprintln(f, "# theirs")
	f.Close()
	if contents(t, path) != small+"# theirs\n" || leftovers(path) != nil {
		t.Errorf("%v:\n%s", leftovers(path), contents(t, path))
	}
}

// One that opens the file between the reading and the renaming is noticed, even
// though it has not written yet.
func TestOpenedMeanwhile(t *testing.T) {
	leasing(t)
	path := inFile(t, small)
	tries := 0
	err := update(path, func(data []byte) ([]byte, error) {
		if tries++; tries == 1 {
			f := appending(t, path)
			go func() {
				time.Sleep(20 * knock)
				fmt.Fprintln(f, "# theirs")
				f.Close()
			}()
		}
		return ours(data)
	})
	if err != nil || contents(t, path) != small+"# theirs\n# ours\n" || leftovers(path) != nil {
		t.Errorf("%v after %d tries, %v:\n%s", err, tries, leftovers(path), contents(t, path))
	}
}

// One that opens the file in the very moment in which it is taken away gets to
// write to the one that stands, and the record begins again.
func TestOpenedInTheVeryMoment(t *testing.T) {
	leasing(t)
	exchanging(t)
	path := inFile(t, small)
	d, changed := system, 0
	var held *hold
	d.hold = func(path string) (h *hold, err error) {
		held, err = take(path)
		return held, err
	}
	done := make(chan bool)
	d.exchange = func(a, b string) (bool, error) {
		if changed++; changed == 1 {
			go func() {
				f := appending(t, path)
				fmt.Fprintln(f, "# theirs")
				f.Close()
				close(done)
			}()
			for began := time.Now(); !held.isSought() && time.Since(began) < longestOpen; {
				time.Sleep(knock)
			}
		}
		return exchange(a, b)
	}
	err := d.update(path, ours)
	<-done
	if err != nil || contents(t, path) != small+"# theirs\n# ours\n" || leftovers(path) != nil {
		t.Errorf("%v, %v:\n%s", err, leftovers(path), contents(t, path))
	}
}

// A record is killed when it has taken the old file away, while somebody waits to
// write to that: it stands again, and what he writes with it.
func TestKilledWhileOneIsOpen(t *testing.T) {
	leasing(t)
	exchanging(t)
	path := inFile(t, small)
	next, _ := ours([]byte(small))
	left := nameOf(path, []byte(small), next)
	if err := errors.Join(os.WriteFile(path, next, 0o644), os.WriteFile(left, []byte(small), 0o644)); err != nil {
		t.Fatal(err)
	}
	f := appending(t, left)
	go func() {
		time.Sleep(20 * knock)
		fmt.Fprintln(f, "# theirs")
		f.Close()
	}()
	if err := update(path, ours); err != nil || contents(t, path) != small+"# theirs\n# ours\n" || leftovers(path) != nil {
		t.Errorf("%v, %v:\n%s", err, leftovers(path), contents(t, path))
	}
}

// A shell that goes on adding lines to the file while records are made in it: of
// both everything is there.
func TestAppendedToMeanwhile(t *testing.T) {
	leasing(t)
	exchanging(t)
	const lines = 40
	path := inFile(t, manyDrills(20))
	done := make(chan bool)
	go func() {
		defer close(done)
		for i := range lines {
			f := appending(t, path)
			fmt.Fprintf(f, "# line %d\n", i)
			f.Close()
			time.Sleep(4 * knock)
		}
	}()
	tried, recorded := 0, 0
	for going := true; going; tried++ {
		ch := Change{Date: "2026-11-25", What: Readings, Readings: map[drill.Reading]string{drill.Depth: fmt.Sprintf("%dmm", tried%60+1)}}
		_, err := Record(path, "D7", ch, nil)
		switch {
		case err == nil:
			recorded++
		case !errors.Is(err, errChanged) && !errors.Is(err, errOpen):
			t.Error(err)
		}
		select {
		case <-done:
			going = false
		default:
		}
	}
	text := contents(t, path)
	if got := strings.Count(text, "# line "); got != lines {
		t.Errorf("%d of %d lines are there", got, lines)
	}
	if got := len(find(t, read(t, text), "D7").History); got != recorded || recorded == 0 {
		t.Errorf("%d of %d records are there, of %d tried", got, recorded, tried)
	}
	t.Logf("%d records of %d tried", recorded, tried)
}
