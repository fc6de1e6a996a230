package verify

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// updating is the variable that has the files rewritten instead of compared.
const updating = "UPDATE_VERIFICATION"

// goldenFile is a package's evidence as committed.
var goldenFile = filepath.Join("testdata", "verified.jsonl")

// remedy ends every complaint about evidence that has changed.
const remedy = "run `make verification` and read the difference"

// Runner is what *testing.M is.
type Runner interface{ Run() int }

// Keep returns tests that, when all have passed, compare what they showed with
// what is committed. A package's TestMain runs them:
//
//	func TestMain(m *testing.M) { os.Exit(verify.Keep(m).Run()) }
func Keep(m Runner) Runner { return keeper{m} }

type keeper struct{ tests Runner }

// Run runs the tests and returns the exit code of the whole.
func (k keeper) Run() int {
	path, err := filepath.Abs(goldenFile)
	if err == nil {
		goldenFile = path
		evidence.Lock()
		evidence.keeping, evidence.kept = true, map[[4]string]Record{}
		evidence.Unlock()
		if code := k.tests.Run(); code != 0 {
			return code
		}
		if subtestsLeftOut() {
			return 0
		}
		err = settle(allRun())
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "verify:", err)
		return 1
	}
	return 0
}

// settle compares the evidence of this run with the committed, or rewrites it;
// of the tests that ran, unless the run was whole.
func settle(whole bool) error {
	evidence.Lock()
	defer evidence.Unlock()
	if evidence.recall(); evidence.failed != nil {
		return evidence.failed
	}
	var kept []Record
	ran := map[string]bool{}
	for _, r := range evidence.kept {
		kept = append(kept, r)
		ran[r.Test] = true
	}
	others := slices.DeleteFunc(slices.Clone(evidence.golden), func(r Record) bool { return ran[r.Test] })
	switch {
	case evidence.update && whole:
		return write(goldenFile, sorted(kept))
	case evidence.update:
		return write(goldenFile, sorted(append(others, kept...)))
	case whole && len(others) > 0:
		return fmt.Errorf("%s has %q of %s, which the tests no longer show: %s", goldenFile, others[0].What, others[0].Test, remedy)
	}
	return unlike(kept, slices.DeleteFunc(slices.Clone(evidence.golden), func(r Record) bool { return !ran[r.Test] }))
}

// unlike returns an error about the first record that the two do not share.
func unlike(kept, golden []Record) error {
	committed := map[[4]string]Record{}
	for _, r := range golden {
		committed[r.key()] = r
	}
	for _, r := range sorted(kept) {
		was, known := committed[r.key()]
		delete(committed, r.key())
		if fewer() {
			was.Cases, r.Cases = 0, 0
		}
		if !known || !was.agrees(r) {
			return fmt.Errorf("%s: %q now shows %s; committed is %s: %s", r.Test, r.What, r, was, remedy)
		}
	}
	for _, r := range committed {
		return fmt.Errorf("%s no longer shows %q: %s", r.Test, r.What, remedy)
	}
	return nil
}

// allRun reports whether no test was left out by a flag.
func allRun() bool {
	for _, narrowing := range []string{"test.run", "test.skip", "test.list"} {
		if given(narrowing) != "" {
			return false
		}
	}
	return !testing.Short() && given("test.fuzzworker") != "true"
}

// subtestsLeftOut reports whether a test may have run in part.
func subtestsLeftOut() bool { return strings.Contains(given("test.run")+given("test.skip"), "/") }

// fewer reports whether properties ran another number of cases than usual.
func fewer() bool {
	checks := flag.Lookup("rapid.checks")
	return testing.Short() || checks != nil && checks.Value.String() != checks.DefValue
}

func given(name string) string {
	if f := flag.Lookup(name); f != nil {
		return f.Value.String()
	}
	return ""
}
