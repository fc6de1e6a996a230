package crib

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/command/point"
	"evenlip/internal/drill"
	"evenlip/internal/sheet"
)

func theSample(t *testing.T) *Crib {
	t.Helper()
	c, errs := Sample(nil)
	if len(errs) > 0 {
		t.Fatal(complaints(errs))
	}
	return c
}

// The embedded crib shows every kind of drill and of state there is.
func TestSampleShowsAllKinds(t *testing.T) {
	c := theSample(t)
	if len(c.Drills) < 24 || !c.Sample {
		t.Fatalf("%d drills", len(c.Drills))
	}
	seen, histories := map[string]int{}, 0
	for _, j := range c.Judge() {
		seen[j.Series]++
		seen[j.Shank]++
		seen[j.Word()]++
		for _, r := range j.Verdict.Reasons {
			seen[r]++
		}
		if len(j.History) > 0 {
			histories++
		}
		switch size := j.Readings.Written(drill.Size); {
		case strings.HasPrefix(size, "#"):
			seen["number"]++
		case strings.HasSuffix(size, "mm"):
			seen["metric"]++
		case strings.Contains(size, "/"):
			seen["fraction"]++
		case len(size) == 1:
			seen["letter"]++
		}
	}
	for _, kind := range append(slices.Clone(Verdicts), "jobber", "stub", "long", "parallel", "taper", "reduced", "number", "letter", "fraction", "metric", "lips-uneven", "dull", "flute-short", "cracked") {
		if seen[kind] == 0 {
			t.Errorf("no drill of the sample is %s", kind)
		}
	}
	if histories < 5 {
		t.Errorf("only %d drills have a history", histories)
	}
}

// An audit says of each drill what inspect says of it alone.
func TestAuditIsInspect(t *testing.T) {
	c := theSample(t)
	s := c.Audit(c.Judge(), Scripts)
	g := &s.Grids[0]
	col := func(key string) int {
		return slices.IndexFunc(g.Columns, func(c sheet.Column) bool { return c.Key == key })
	}
	for _, row := range g.Rows {
		d := find(t, c, row[0].Word)
		alone := point.Inspect.Sheet(d.Readings, false)
		if word := alone.Verdict.Word; word != "" && word != row[3].Word {
			t.Errorf("%s: %s, alone %s", d.ID, row[3].Word, word)
		}
		alone.Each(func(f *sheet.Figure) {
			if got := row[col(f.Key)]; got.Word != f.Word || got.Value != f.Value && !math.IsNaN(f.Value) {
				t.Errorf("%s: %s is %v, alone %v", d.ID, f.Key, got, f.Value)
			}
		})
	}
}

func TestWorstFirst(t *testing.T) {
	c := theSample(t)
	drills := c.Judge()
	before := make([]string, len(drills))
	for i := range drills {
		before[i] = drills[i].ID
	}
	WorstFirst(drills)
	for i := 1; i < len(drills); i++ {
		a, b := &drills[i-1], &drills[i]
		switch x, y := rank(a.Word()), rank(b.Word()); {
		case x > y:
			t.Errorf("%s, %s, stands before %s, %s", a.ID, a.Word(), b.ID, b.Word())
		case x == y && len(a.Verdict.Reasons) < len(b.Verdict.Reasons):
			t.Errorf("%s has fewer reasons than %s", a.ID, b.ID)
		case x == y && len(a.Verdict.Reasons) == len(b.Verdict.Reasons) && slices.Index(before, a.ID) > slices.Index(before, b.ID):
			t.Errorf("%s and %s changed places", a.ID, b.ID)
		}
	}
	if drills[0].Word() != "retire" || drills[len(drills)-1].Word() != "fit" {
		t.Errorf("from %s to %s", drills[0].Word(), drills[len(drills)-1].Word())
	}
}

func TestFilter(t *testing.T) {
	all := theSample(t).Judge()
	ids := func(f Filter) (out []string) {
		for _, j := range f.Select(all) {
			out = append(out, j.ID)
		}
		return out
	}
	if got := ids(Filter{}); len(got) != len(all) {
		t.Errorf("no filter takes %d of %d", len(got), len(all))
	}
	if got := ids(Filter{Size: 12, Verdicts: []string{"fit"}}); !slices.Equal(got, []string{"M120-2"}) {
		t.Errorf("%v", got)
	}
	if got := ids(Filter{Material: "cast-iron-150"}); !slices.Equal(got, []string{"M210-1"}) {
		t.Errorf("%v", got)
	}
	total := 0
	for _, v := range Verdicts {
		total += len(ids(Filter{Verdicts: []string{v}}))
	}
	if total != len(all) {
		t.Errorf("the verdicts have %d drills of %d", total, len(all))
	}
}

// The counts add up.
func TestCounts(t *testing.T) {
	drills := theSample(t).Judge()
	of := func(list []Judged) (total, sum int) {
		head, rest, _ := strings.Cut(counts(list), ":")
		fmt.Sscan(head, &total)
		for _, part := range strings.Split(rest, ",") {
			n := 0
			fmt.Sscan(part, &n)
			sum += n
		}
		return total, sum
	}
	if total, sum := of(drills); total != len(drills) || sum != total {
		t.Errorf("%s, of %d", counts(drills), len(drills))
	}
	if got := counts(nil); got != "0 drills" {
		t.Errorf("%q", got)
	}
	if got := counts(drills[:1]); !strings.HasPrefix(got, "1 drill: 1 ") {
		t.Errorf("%q", got)
	}
}
