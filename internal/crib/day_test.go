package crib

import (
	"fmt"
	"strings"
	"testing"

	"evenlip/internal/plan"
	"evenlip/internal/sheet"
)

// Every drill is told what to do with exactly once, and it is what its own plan
// says.
func TestDayLeavesNoDrillOut(t *testing.T) {
	c := theSample(t)
	day := c.Day()
	if len(day.Tasks) != len(c.Drills) {
		t.Fatalf("%d tasks for %d drills", len(day.Tasks), len(c.Drills))
	}
	seen := map[string]bool{}
	for _, task := range day.Tasks {
		if seen[task.ID] {
			t.Errorf("%s twice", task.ID)
		}
		seen[task.ID] = true
		alone := plan.Of(find(t, c, task.ID).Readings)
		want := map[plan.Do]Do{plan.Retire: ToRetire, plan.Regrind: ToGrind, plan.Thin: ToThin, plan.Leave: ToLeave, plan.Undecided: ToMeasure}[alone.Do]
		if task.Do != want {
			t.Errorf("%s: %s, alone %s", task.ID, task.Do, want)
		}
	}
}

const queue = `version: 1
drills:
  - {id: spare-fit, size: 10mm, web: 1.5mm, chisel-angle: 125, lip-angle: "59,59", lip-height: 0, clearance: 12}
  - {id: spare, size: 10mm, web: 1.5mm, chisel-angle: 125, lip-angle: "59,59", lip-height: 0, clearance: 12, flank-wear: 0.9mm}
  - {id: flat, size: 8mm, web: 1.2mm, chisel-angle: 125, lip-angle: "67.5,67.5", lip-height: 0, clearance: 12, flank-wear: 0.9mm, point-angle: 135}
  - {id: big, size: 20mm, web: 3mm, chisel-angle: 125, lip-angle: "59,59", lip-height: 0, clearance: 11, flank-wear: 0.9mm}
  - {id: little, size: 5mm, web: 0.75mm, chisel-angle: 125, lip-angle: "59,59", lip-height: 0, clearance: 14, flank-wear: 0.9mm}
`

// Sizes with no fit drill first, then one setting of the rest after the other,
// then small to large.
func TestOrderAtTheGrinder(t *testing.T) {
	c := read(t, queue)
	var got []string
	for _, task := range c.Day().Tasks {
		got = append(got, task.ID)
	}
	want := []string{"little", "big", "flat", "spare", "spare-fit"}
	for i := range want {
		if got[i] != want[i] {
			t.Fatalf("%v, not %v", got, want)
		}
	}
}

// What is usable after the day, and what is bought, are together what is kept;
// a size that the file does not name keeps one.
func TestBuying(t *testing.T) {
	c := read(t, `version: 1
keep: {12mm: 3, 1/4in: 2, 5mm: 1}
drills:
  - {id: a, size: 12mm, cracked: yes}
  - {id: b, size: 12mm}
  - {id: c, size: 1/2, cracked: yes}
  - {id: d, size: 5mm}
`)
	got := map[string]int{}
	for _, p := range c.Day().Buy {
		got[p.Size.Echo()] = p.Count()
		if p.Usable+p.Count() != p.Wanted {
			t.Errorf("%+v", p)
		}
	}
	want := map[string]int{"12mm": 2, "1/4in": 2, "1/2 in": 1}
	if len(got) != len(want) {
		t.Errorf("%v, not %v", got, want)
	}
	for size, n := range want {
		if got[size] != n {
			t.Errorf("%s: buy %d, not %d", size, got[size], n)
		}
	}
}

// What is usually taken off counts the grinds that are left.
func TestUsualStockOfTheHistory(t *testing.T) {
	text := "version: 1\ndrills:\n  - {id: a, size: 10mm, flute: 60mm, depth: 20mm, web: 1.5mm, chisel-angle: 125, web-taper: 0.0001, history: [{date: 2026-01-01, what: grind, stock: %s}, {date: 2026-01-02, what: grind, stock: %s}, {date: 2026-01-02, what: grind}]}\n"
	left := func(a, b string) float64 {
		c := read(t, fmt.Sprintf(text, a, b))
		return c.Day().Tasks[0].Plan.Left
	}
	often, seldom := left("0.4mm", "0.6mm"), left("1.5mm", "2.5mm")
	if often < 3*seldom || seldom == 0 {
		t.Errorf("%g grinds of half a millimetre, %g of two", often, seldom)
	}
}

// A script's list has a row for every drill and every size to buy, each as wide
// as its head.
func TestPlanForScripts(t *testing.T) {
	c := theSample(t)
	day := c.Day()
	for _, s := range []*sheet.Sheet{c.Plan(&day, Scripts), c.Plan(&day, People), c.List(c.Listed(Filter{}), Scripts), c.List(c.Listed(Filter{}), People), c.Audit(c.Judge(), People)} {
		for _, g := range s.Grids {
			for _, row := range g.Rows {
				if len(row) != len(g.Columns) {
					t.Fatalf("%s %s: %d cells under %d heads", s.Command, g.Key, len(row), len(g.Columns))
				}
			}
		}
	}
	if rows := len(c.Plan(&day, Scripts).Grids[0].Rows); rows != len(day.Tasks)+len(day.Buy) {
		t.Errorf("%d rows", rows)
	}
	for i := range day.Tasks {
		task := &day.Tasks[i]
		cells, shown := task.grindCells(Scripts)[1].Value, task.grindCells(People)[1].Value
		if task.Do == ToGrind && !(cells >= 0) || task.Do == ToRetire && cells >= 0 || task.Do == ToThin && (cells != 0 || shown == 0) {
			t.Errorf("%s, to %s: %v, shown %v", task.ID, task.Do, cells, shown)
		}
	}
}

// What is to be retired is told for what retires it, and for nothing that a grind
// would have put right.
func TestRetiredForWhatRetires(t *testing.T) {
	c := read(t, `version: 1
drills:
  - {id: all, size: 8.5mm, web: 4.4mm, chisel-angle: 110, clearance: 5, flute: 20mm, depth: 25mm, flank-wear: 1mm}
  - {id: last, size: 12mm, web: 1.8mm, chisel-angle: 127, flank-wear: 0.9mm, flute: 42.1mm, depth: 30mm}
  - {id: broken, size: 12mm, cracked: yes, flute: 20mm, depth: 25mm}
`)
	day := c.Day()
	want := map[string]string{"all": "flute-short web-spent", "last": "flute-short once ground", "broken": "cracked"}
	for i := range day.Tasks {
		task := &day.Tasks[i]
		if got := task.retiredFor(); task.Do != ToRetire || got != want[task.ID] {
			t.Errorf("%s: %s, %q", task.ID, task.Do, got)
		}
		if task.ID == "all" && len(strings.Fields(task.because())) < 4 {
			t.Errorf("a script is not told the rest: %q", task.because())
		}
	}
}
