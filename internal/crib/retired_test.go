package crib

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

const worn = `version: 1
keep: {12mm: 2}
drills:
  - id: spent
    size: 12mm
    flute: 30mm
    depth: 30mm
  - id: good
    size: 12mm
    web: 1.8mm
    chisel-angle: 127
    lip-angle: 59,59
    lip-height: 0
    clearance: 12
    flute: 80mm
    depth: 30mm
`

func thrownAway(readings map[drill.Reading]string) Change {
	return Change{Date: "2026-11-25", What: Retired, Note: "in two pieces", Readings: readings}
}

// A drill that was thrown away is listed with the day, and is in no count, plan or
// number of usable ones; its size is bought all the same.
func TestRetiredCountsNoMore(t *testing.T) {
	c := read(t, rewritten(t, worn, "spent", thrownAway(nil)))
	if d := find(t, c, "spent"); d.Retired() != "2026-11-25" || find(t, c, "good").Retired() != "" {
		t.Errorf("retired on %q", d.Retired())
	}
	day := c.Day()
	if len(day.Tasks) != 1 || day.Tasks[0].ID != "good" || len(day.Buy) != 1 || day.Buy[0].Usable != 1 || day.Buy[0].Count() != 1 {
		t.Errorf("%+v", day)
	}
	audit := c.Audit(c.Judge(), People)
	if rows := len(audit.Grids[0].Rows); rows != 1 || audit.Findings[0].Text.Args[0].Word != "1 drill: 1 fit; 1 retired and gone" {
		t.Errorf("%d rows, %v", rows, audit.Findings)
	}
	list := c.List(c.Listed(Filter{}), People).Grids[0]
	at := slices.IndexFunc(list.Columns, func(c sheet.Column) bool { return c.Key == "retired" })
	if len(list.Rows) != 2 || list.Rows[0][at].Word != "2026-11-25" || list.Rows[1][at].Word != "" {
		t.Errorf("%v", list.Rows)
	}
	for _, s := range []*sheet.Sheet{c.Plan(&day, People), c.Plan(&day, Scripts)} {
		if got := s.Findings[0].Text.Args[0].Word; !strings.HasSuffix(got, "; 1 retired and gone") {
			t.Error(got)
		}
	}
}

// Nothing more happens to a drill that is gone.
func TestRetiredIsTheEnd(t *testing.T) {
	c := read(t, rewritten(t, worn, "spent", thrownAway(nil)))
	for _, ch := range []Change{thrownAway(nil), ground("1mm"), {Date: "2026-11-26", What: Correction, Readings: map[drill.Reading]string{drill.Web: "2mm"}}} {
		var refusal *fault.Fault
		if _, err := c.Apply("spent", ch); !errors.As(err, &refusal) || refusal.Text != `"spent" was retired on 2026-11-25` {
			t.Errorf("%s: %v", ch.What, err)
		}
	}
	if out, err := c.Apply("good", thrownAway(map[drill.Reading]string{drill.Cracked: "yes"})); err != nil || !out.New.Has(drill.Cracked) {
		t.Errorf("%v", err)
	}
}

// A drill that still had work in it is thrown away with a warning.
func TestRetiredBeforeItsTime(t *testing.T) {
	for id, want := range map[string]bool{"spent": false, "good": true} {
		out, _, err := Rewrite("crib.yaml", []byte(worn), id, thrownAway(nil), nil)
		if err != nil {
			t.Fatal(err)
		}
		var codes []string
		for _, f := range out.Sheet("crib.yaml", false, quantity.Gauges{}).Findings {
			codes = append(codes, f.Code)
		}
		if slices.Contains(codes, "not-due") != want || !slices.Contains(codes, "retired") || slices.Contains(codes, "to-be-read") {
			t.Errorf("%s: %v", id, codes)
		}
	}
}

// A list takes the filters of an audit; what is gone has no verdict.
func TestListed(t *testing.T) {
	c := theSample(t)
	for _, f := range []Filter{{Size: 12}, {Verdicts: []string{"fit", "retire"}}, {Material: "cast-iron-150"}, {Size: 12, Verdicts: []string{"fit"}}} {
		listed, judged := c.Listed(f), f.Select(c.Judge())
		if len(listed) == 0 || len(listed) != len(judged) {
			t.Fatalf("%+v: %d listed, %d in an audit", f, len(listed), len(judged))
		}
		for i := range listed {
			if listed[i] != judged[i].Drill {
				t.Errorf("%+v: %s, in an audit %s", f, listed[i].ID, judged[i].ID)
			}
		}
	}
	c = read(t, rewritten(t, worn, "spent", thrownAway(nil)))
	if all := c.Listed(Filter{}); len(all) != 2 {
		t.Errorf("%d drills", len(all))
	}
	if sized := c.Listed(Filter{Size: 12}); len(sized) != 2 {
		t.Errorf("%d of 12 mm", len(sized))
	}
	if retire := c.Listed(Filter{Verdicts: []string{"retire"}}); len(retire) != 0 {
		t.Errorf("%s is still to be retired", retire[0].ID)
	}
}
