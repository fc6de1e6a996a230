// Package testkit is what the tests of several packages share; nothing else
// imports it.
//
// A check against the outside keeps its source beside it:
//
//	testkit.Against(t, testkit.Navy, "feeds").Within("drill of 6 mm", got, 0.1, 0.005, "mm")
//
// and an invariant runs through Property. Where the variable VERIFICATION names
// a folder, each of them leaves there what it has shown, and the tool in page
// makes docs/verification.md of it.
package testkit

import (
	"encoding/json"
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"
)

// Properties draw so many cases in an ordinary run, and the same ones every
// time; make hunt draws others, and more. A seed tells how to draw a failed case
// again, so none is kept in a file, which would be one case more in the next run.
const cases, seed = "100", "1"

func init() {
	for name, value := range map[string]string{"rapid.checks": cases, "rapid.seed": seed, "rapid.nofailfile": "true"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
}

// Shown is what a check or an invariant has shown.
type Shown struct {
	Package          string
	Work             string // the source; none: an invariant
	Sure, Place, Why string
	What             string  // the figure, or what holds
	Off              float64 // the difference, as a part of what the source says
	Cases            int     // of an invariant
}

// Outside is a source about to be asked, at one place in it.
type Outside struct {
	t     rapid.TB
	shown Shown
}

// Against begins checks against a source: place is its table or page, or what
// else tells a reader where to look.
func Against(t rapid.TB, source Source, place string) Outside {
	return Outside{t, Shown{Work: source.Work, Sure: source.Sure, Place: place}}
}

// Because says why what is computed differs from what the source says.
func (o Outside) Because(why string) Outside {
	o.shown.Why = why
	return o
}

// Within fails unless got is what the source says, give or take tolerance.
func (o Outside) Within(what string, got, want, tolerance float64, unit string) {
	o.t.Helper()
	o.check(what, got, want, want, tolerance, unit)
}

// Part fails unless got is what the source says within a part of it.
func (o Outside) Part(what string, got, want, part float64, unit string) {
	o.t.Helper()
	o.check(what, got, want, want, part*math.Abs(want), unit)
}

// Between fails unless got lies in a band, ends included.
func (o Outside) Between(what string, got, low, high float64, unit string) {
	o.t.Helper()
	o.check(what, got, low, high, 0, unit)
}

// Below fails unless got is less than a limit.
func (o Outside) Below(what string, got, limit float64, unit string) {
	o.t.Helper()
	o.check(what, got, math.Inf(-1), math.Nextafter(limit, math.Inf(-1)), 0, unit)
}

// Above fails unless got is more than a limit.
func (o Outside) Above(what string, got, limit float64, unit string) {
	o.t.Helper()
	o.check(what, got, math.Nextafter(limit, math.Inf(1)), math.Inf(1), 0, unit)
}

// Says fails unless got is the source's word.
func (o Outside) Says(what, got, want string) {
	o.t.Helper()
	if got != want {
		o.t.Errorf("%s (%s): got %q, want %q", what, o.shown.Work, got, want)
		return
	}
	o.shown.What = what
	keep(o.t, o.shown)
}

func (o Outside) check(what string, got, low, high, tolerance float64, unit string) {
	o.t.Helper()
	end := min(max(got, low), high) // of the band, the nearest to got
	off := math.Abs(got - end)
	if !(off <= tolerance) { // NaN is near nothing
		o.t.Errorf("%s (%s): got %.9g %s, want %.9g to %.9g, give or take %.3g", what, o.shown.Work, got, unit, low, high, tolerance)
		return
	}
	o.shown.What = what
	if end != 0 {
		o.shown.Off = off / math.Abs(end)
	}
	keep(o.t, o.shown)
}

// Property checks that an invariant holds over drawn cases. holds says it as a
// sentence without its full stop.
func Property(t *testing.T, holds string, property func(*rapid.T)) {
	t.Helper()
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		property(t)
		n++
	})
	Cases(t, holds, n)
}

// Cases tells of an invariant that the test held over so many cases by itself.
func Cases(t *testing.T, holds string, n int) {
	t.Helper()
	if !t.Failed() {
		keep(t, Shown{What: holds, Cases: n})
	}
}

var (
	keeping sync.Mutex
	home, _ = os.Getwd() // where go test runs a package's tests
)

// keep adds what was shown to the package's file in the folder, if one is named.
func keep(t rapid.TB, s Shown) {
	t.Helper()
	folder := os.Getenv("VERIFICATION")
	if folder == "" {
		return
	}
	_, s.Package, _ = strings.Cut(filepath.ToSlash(home), "/internal/")
	line, err := json.Marshal(s)
	if err != nil {
		t.Fatalf("%s: %v", s.What, err)
	}
	keeping.Lock()
	defer keeping.Unlock()
	name := strings.ReplaceAll(s.Package, "/", "-") + ".jsonl"
	f, err := os.OpenFile(filepath.Join(folder, name), os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o666)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if _, err := f.Write(append(line, '\n')); err != nil {
		t.Fatal(err)
	}
}
