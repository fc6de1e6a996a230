package verify

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// Record is one thing that held: a check against a source, or, where Cases is
// not 0, an invariant.
type Record struct {
	Test    string `json:"test"`
	Work    string `json:"work,omitempty"`
	Label   string `json:"label,omitempty"`
	Place   string `json:"place,omitempty"`
	What    string `json:"what"`
	Printed string `json:"printed,omitempty"`
	Ours    string `json:"ours,omitempty"`
	Allowed string `json:"allowed,omitempty"`
	Unit    string `json:"unit,omitempty"`
	Cases   int    `json:"cases,omitempty"`
}

// key tells records apart: a test checks a thing at a place once.
func (r Record) key() [4]string { return [4]string{r.Test, r.Work, r.Place, r.What} }

// evidence is what the tests of this process have kept.
var evidence store

type store struct {
	sync.Mutex
	kept     map[[4]string]Record
	golden   []Record
	update   bool
	keeping  bool // TestMain runs through Keep
	recalled bool
	failed   error
}

// recall reads what is committed, once. Called within a test, go test knows
// that the test's result hangs on the file and the variable.
func (s *store) recall() {
	if s.recalled {
		return
	}
	s.recalled = true
	s.update = os.Getenv(updating) != ""
	s.golden, s.failed = read(goldenFile)
}

// keep files a record under the test that made it. A test run twice keeps the
// same twice; two different records under one name are an error.
func keep(t tester, r Record) {
	t.Helper()
	evidence.Lock()
	defer evidence.Unlock()
	if !evidence.keeping {
		t.Fatal("the package's TestMain does not run its tests through verify.Keep: what they show would be lost")
	}
	if evidence.recall(); evidence.failed != nil {
		t.Fatal(evidence.failed)
	}
	r.Test, _, _ = strings.Cut(t.Name(), "/")
	if old, twice := evidence.kept[r.key()]; twice && !old.agrees(r) {
		t.Errorf("%q is checked twice, and shows %s, then %s", r.What, old, r)
	}
	evidence.kept[r.key()] = r
}

// String says what the record shows.
func (r Record) String() string {
	switch {
	case r == Record{}:
		return "nothing"
	case r.Cases > 0:
		return fmt.Sprint(r.Cases, " cases")
	}
	return fmt.Sprintf("%s%s where %s prints %s, allowed %s", r.Ours, spaced(r.Unit), r.Work, r.Printed, r.Allowed)
}

// agrees reports whether two runs showed the same: words as they are, numbers
// within the last digit kept, whose rounding processors do not share.
func (r Record) agrees(other Record) bool {
	a, b := r, other
	a.Ours, b.Ours = "", ""
	return a == b && (r.Ours == other.Ours || alike(r.Ours, other.Ours))
}

func alike(a, b string) bool {
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	if errX != nil || errY != nil || decimals(a) != decimals(b) {
		return false
	}
	return math.Abs(x-y) <= 1.01*math.Pow10(-decimals(a))
}

// read returns the records of a file; one that is not there has none.
func read(path string) ([]Record, error) {
	text, err := os.ReadFile(path)
	if os.IsNotExist(err) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var out []Record
	for i, line := range bytes.Split(bytes.TrimSuffix(text, []byte("\n")), []byte("\n")) {
		var r Record
		if err := json.Unmarshal(line, &r); err != nil {
			return nil, fmt.Errorf("%s:%d: %w", path, i+1, err)
		}
		out = append(out, r)
	}
	return out, nil
}

// write puts records into a file, in order, a line each.
func write(path string, records []Record) error {
	var out bytes.Buffer
	lines := json.NewEncoder(&out)
	lines.SetEscapeHTML(false)
	for _, r := range records {
		if err := lines.Encode(r); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		return err
	}
	return os.WriteFile(path, out.Bytes(), 0o666)
}

// sorted puts records in an order that does not hang on that of the tests.
func sorted(records []Record) []Record {
	slices.SortFunc(records, func(a, b Record) int {
		return cmp.Or(cmp.Compare(a.Work, b.Work), natural(a.Place, b.Place), cmp.Compare(a.Test, b.Test), natural(a.What, b.What))
	})
	return records
}

// natural compares texts with the numbers in them as numbers, so that 9 comes
// before 10.
func natural(a, b string) int {
	for a != "" && b != "" {
		x, restA := head(a)
		y, restB := head(b)
		if c := compare(x, y); c != 0 {
			return c
		}
		a, b = restA, restB
	}
	return cmp.Compare(a, b)
}

func compare(a, b string) int {
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	if errX == nil && errY == nil {
		return cmp.Or(cmp.Compare(x, y), cmp.Compare(a, b))
	}
	return cmp.Compare(a, b)
}

// head cuts the leading number off a text, or what stands before the first.
func head(s string) (first, rest string) {
	digit := func(r rune) bool { return r >= '0' && r <= '9' }
	end := strings.IndexFunc(s, digit)
	if end == 0 {
		end = strings.IndexFunc(s, func(r rune) bool { return !digit(r) && r != '.' })
	}
	if end < 0 {
		return s, ""
	}
	return s[:end], s[end:]
}
