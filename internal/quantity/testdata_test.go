package quantity

import (
	"bufio"
	"bytes"
	"embed"
	"math"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenlip/internal/fault"
)

//go:embed testdata/*.txt
var bench embed.FS

var kindNames = map[string]Kind{
	"number": Number, "length": Length, "size": Size, "angle": Angle, "feed": Feed, "taper": Taper,
	"share": Share, "count": Count, "rpm": Rpm, "cutting": Cutting, "surface": Surface, "force": Force,
	"torque": Torque, "power": Power, "stress": Stress, "duration": Duration, "word": Word,
}

// row is one line of a file under testdata.
type row struct {
	Reader
	where, text string
	rest        []string
}

func (w row) read() (Value, *fault.Fault) { return w.One(w.text) }

func rows(t testing.TB, names ...string) []row {
	t.Helper()
	var out []row
	for _, name := range names {
		data, err := bench.ReadFile(path.Join("testdata", name))
		if err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(bytes.NewReader(data))
		for n := 1; lines.Scan(); n++ {
			if line := strings.TrimSpace(lines.Text()); line != "" && line[0] != '#' {
				out = append(out, parseRow(t, name+":"+strconv.Itoa(n), line))
			}
		}
	}
	if len(out) == 0 {
		t.Fatal("no rows in ", names)
	}
	return out
}

func parseRow(t testing.TB, where, line string) row {
	t.Helper()
	cells := strings.Split(line, "|")
	for i := range cells {
		cells[i] = strings.TrimSpace(cells[i])
	}
	if len(cells) < 3 {
		t.Fatalf("%s: want kind | as written | value", where)
	}
	w := row{where: where, text: cells[1], rest: cells[2:]}
	name, w2 := strings.CutPrefix(cells[0], "signed ")
	w.Signed = w2
	name, inches := strings.CutSuffix(name, " bare in")
	if inches {
		w.Bare = Inch
	}
	kind, ok := kindNames[name]
	if !ok {
		t.Fatalf("%s: no kind %q", where, name)
	}
	w.Kind = kind
	return w
}

var readable = []string{"lengths.txt", "sizes.txt", "angles.txt", "others.txt"}

func TestReadsWhatABenchWrites(t *testing.T) {
	for _, w := range rows(t, readable...) {
		number, unit, _ := strings.Cut(w.rest[0], " ")
		want, fails := strconv.ParseFloat(number, 64)
		if fails != nil {
			t.Fatalf("%s: %v", w.where, fails)
		}
		if unit == "deg" {
			want *= math.Pi / 180
		}
		got, err := w.read()
		if err != nil {
			t.Errorf("%s: %q: %v", w.where, w.text, err)
			continue
		}
		if !near(got.V, want) {
			t.Errorf("%s: %q reads as %v, want %v", w.where, w.text, got.V, want)
		}
		if got.Text != w.text {
			t.Errorf("%s: Text %q, want %q", w.where, got.Text, w.text)
		}
		if math.Signbit(got.V) && got.V == 0 {
			t.Errorf("%s: negative zero", w.where)
		}
	}
}

func TestRefuses(t *testing.T) {
	for _, w := range rows(t, "refused.txt") {
		v, err := w.read()
		if err == nil {
			t.Errorf("%s: %q reads as %v, error %v", w.where, w.text, v, err)
			continue
		}
		if v != (Value{}) {
			t.Errorf("%s: a value beside the error: %v", w.where, v)
		}
		if want := "cannot read " + strconv.Quote(w.text) + ": takes " + w.rest[0]; err.Error() != want {
			t.Errorf("%s:\n got %s\nwant %s", w.where, err.Error(), want)
		}
		if err.Hint != w.rest[1] {
			t.Errorf("%s: %q: hint\n got %s\nwant %s", w.where, w.text, err.Hint, w.rest[1])
		}
	}
}

// Each of the files holds every kind that can be typed at least once.
func TestEveryKindIsCovered(t *testing.T) {
	var seen []Kind
	for _, w := range rows(t, readable...) {
		seen = append(seen, w.Kind)
	}
	for name, kind := range kindNames {
		if takes[kind] != "" && !slices.Contains(seen, kind) {
			t.Errorf("no row for the kind %s", name)
		}
	}
}

// near compares to a few units in the last place.
func near(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 4e-16*math.Max(math.Abs(a), math.Abs(b))
}
