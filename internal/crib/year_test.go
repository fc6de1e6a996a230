package crib

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"
	"time"

	"evenlip/internal/drill"
)

// year is one year of the sample crib: drills are used and get dull, the day's
// plan is done, what was ground is read anew, and now and then one cracks.
type year struct {
	t     *testing.T
	rand  *rand.Rand
	path  string
	day   time.Time
	count int // of records

	was     *Crib
	model   map[string]*kept
	retired map[string]bool
	gone    map[string]bool // thrown away
}

// kept is what this test itself knows of a drill, in mm.
type kept struct {
	flute, web, stock float64
	thinned           bool
	records           int
}

// idle are the drills that nobody touches.
var idle = map[string]bool{"N7-1": true, "I64-1": true, "M300-1": true}

func beginYear(t *testing.T, path string, seed uint64) *year {
	c := theSample(t)
	y := &year{t: t, rand: rand.New(rand.NewPCG(seed, 1)), path: path, day: time.Date(2026, 1, 5, 0, 0, 0, 0, time.UTC), was: c, model: map[string]*kept{}, retired: map[string]bool{}, gone: map[string]bool{}}
	for i := range c.Drills {
		d := &c.Drills[i]
		y.model[d.ID] = &kept{flute: d.Readings.Value(drill.Flute), web: d.Readings.Value(drill.Web), thinned: d.thinned()}
	}
	return y
}

func (y *year) between(low, high float64) float64 { return low + (high-low)*y.rand.Float64() }

func millimetres(v float64) string { return fmt.Sprintf("%.3fmm", v) }

func (y *year) record(id string, ch Change) {
	ch.Date = y.day.Format(time.DateOnly)
	if _, err := Record(y.path, id, ch, nil); err != nil {
		y.t.Fatalf("%s, %s of %s: %v", id, ch.What, ch.Date, err)
	}
	y.count++
	y.model[id].records++
}

// point reads a point anew, which the wheel has mostly made as it should be.
func (y *year) point(d float64) map[drill.Reading]string {
	slip := 1.0
	if y.rand.IntN(12) == 0 {
		slip = 6 // by hand and in a hurry
	}
	return map[drill.Reading]string{
		drill.LipAngle:    fmt.Sprintf("%.1f,%.1f", 59+slip*y.between(-0.2, 0.2), 59+slip*y.between(-0.2, 0.2)),
		drill.LipHeight:   millimetres(slip * y.between(0, 0.001) * d),
		drill.Clearance:   fmt.Sprintf("%.0f", y.between(11, 14)),
		drill.ChiselAngle: fmt.Sprintf("%.0f", y.between(123, 127)),
	}
}

// wear notes how dull a drill has become at work; few crack.
func (y *year) wear(d *Drill) {
	readings := map[drill.Reading]string{drill.FlankWear: millimetres(y.between(0.01, 0.06) * d.Size())}
	switch y.rand.IntN(40) {
	case 0:
		readings[drill.Cracked] = "yes"
	case 1, 2:
		readings[drill.MarginWear] = millimetres(y.between(0, 1.2) * d.Size())
	}
	y.record(d.ID, Change{What: Readings, Readings: readings})
}

// grind does what the plan says; where the point was thinned, the web is read.
func (y *year) grind(t *Task) {
	m := y.model[t.ID]
	stock := math.Ceil(t.Plan.Stock.Total*100)/100 + 0.05
	ch := Change{What: Grind, Stock: fmt.Sprintf("%.2fmm", stock), Readings: y.point(t.Size())}
	m.web += 0.016 * stock // as the sample's drills have it
	if m.thinned {
		m.web = math.Round(0.16*t.Size()*1000) / 1000
		ch.Readings[drill.Web] = millimetres(m.web)
	}
	m.flute, m.stock, m.thinned = m.flute-stock, m.stock+stock, false
	y.record(t.ID, ch)
}

func (y *year) thin(t *Task) {
	m := y.model[t.ID]
	m.web, m.thinned = math.Floor(0.8*m.web*1000)/1000, true
	y.record(t.ID, Change{What: Thinning, Readings: map[drill.Reading]string{drill.Web: millimetres(m.web)}})
}

// week wears some drills, does the plan, and looks whether all retired drills
// still are; those are read again at times, and never ground.
func (y *year) week() {
	y.day = y.day.AddDate(0, 0, 7)
	c := read(y.t, contents(y.t, y.path))
	for _, j := range c.Judge() {
		switch dead := j.Word() == "retire"; {
		case y.gone[j.ID]:
			y.t.Fatalf("%s was thrown away, and is called %s", j.ID, j.Word())
		case y.retired[j.ID] && !dead:
			y.t.Fatalf("%s is out of retirement: %s", j.ID, j.Word())
		case idle[j.ID]:
		case dead:
			y.retired[j.ID] = true
			switch y.rand.IntN(8) {
			case 0, 1:
				y.record(j.ID, Change{What: Readings, Note: "looked at again", Readings: map[drill.Reading]string{drill.Clearance: "12"}})
			case 2:
				y.record(j.ID, Change{What: Retired})
				y.gone[j.ID] = true
			}
		case y.rand.IntN(8) == 0:
			y.wear(j.Drill)
		}
	}
	c = read(y.t, contents(y.t, y.path))
	day := c.Day()
	if len(day.Tasks) != len(c.Drills)-len(y.gone) {
		y.t.Fatalf("%d tasks for %d drills, of which %d were thrown away", len(day.Tasks), len(c.Drills), len(y.gone))
	}
	for i := range day.Tasks {
		switch t := &day.Tasks[i]; {
		case y.gone[t.ID]:
			y.t.Fatalf("%s was thrown away, and is to %s", t.ID, t.Do)
		case idle[t.ID] || !t.Plan.Made:
		case t.Do == ToGrind:
			y.grind(t)
		case t.Do == ToThin:
			y.thin(t)
		}
	}
}

// agrees holds the file against what this test knows, and against itself: the
// history, undone from its end, leads back to the readings there were.
func (y *year) agrees() {
	text := contents(y.t, y.path)
	c := read(y.t, text)
	for i := range y.was.Drills {
		was := &y.was.Drills[i]
		is, m := find(y.t, c, was.ID), y.model[was.ID]
		slack := 0.0006 * float64(m.records+1)
		for r, want := range map[drill.Reading]float64{drill.Flute: m.flute, drill.Web: m.web} {
			if got := is.Readings.Value(r); math.Abs(got-want) > slack {
				y.t.Errorf("%s: %s is %v, not %v", was.ID, r, got, want)
			}
		}
		added := is.History[len(was.History):]
		stock := 0.0
		for _, e := range added {
			if e.What == Grind {
				stock += e.Stock
			}
		}
		if lost := was.Readings.Value(drill.Flute) - is.Readings.Value(drill.Flute); math.Abs(stock-m.stock) > 1e-9 || math.Abs(lost-stock) > slack {
			y.t.Errorf("%s: %v mm came off in grinds, %v mm is gone", was.ID, stock, lost)
		}
		if len(added) != m.records {
			y.t.Errorf("%s: %d entries for %d records", was.ID, len(added), m.records)
		}
		undone := map[drill.Reading]string{}
		for _, r := range drill.All() {
			undone[r] = is.Readings.Written(r)
		}
		for k := len(added) - 1; k >= 0; k-- {
			for _, b := range added[k].Before {
				undone[b.Reading] = b.Text
			}
		}
		for _, r := range drill.All() {
			if before := was.Readings.Written(r); before != "" && squeezed(undone[r]) != squeezed(before) {
				y.t.Errorf("%s: undone, %s is %q and was %q", was.ID, r, undone[r], before)
			}
		}
	}
	y.keepsBytes(text)
}

// keepsBytes holds what nobody touched, and every remark on a line of its own, to
// the bytes there were.
func (y *year) keepsBytes(text string) {
	now := map[string]string{}
	for _, block := range strings.Split(text, "  - id: ") {
		id, _, _ := strings.Cut(block, "\n")
		now[id] = block
	}
	var remarks []string
	for _, block := range strings.Split(string(sample), "  - id: ") {
		id, _, _ := strings.Cut(block, "\n")
		if idle[id] && now[id] != block {
			y.t.Errorf("%s was touched:\n%s", id, now[id])
		}
		for _, line := range strings.Split(block, "\n") {
			if strings.HasPrefix(strings.TrimSpace(line), "#") {
				remarks = append(remarks, line)
			}
		}
	}
	at := 0
	for _, line := range strings.Split(text, "\n") {
		if at < len(remarks) && line == remarks[at] {
			at++
		}
	}
	if at != len(remarks) {
		y.t.Errorf("the remark is gone: %s", remarks[at])
	}
	if head, _, _ := strings.Cut(string(sample), "drills:"); !strings.HasPrefix(text, head) {
		y.t.Error("the head of the file was touched")
	}
}

// Some years of the sample crib, a hundred records each: what the file says at the
// end follows from what was recorded, and undone it is the sample again.
func liveYears(t *testing.T, years int) {
	var sum sync.Mutex
	records, retired, gone := 0, 0, 0
	t.Run("all", func(t *testing.T) {
		for seed := range years {
			t.Run(fmt.Sprint(seed), func(t *testing.T) {
				t.Parallel()
				y := beginYear(t, inFile(t, string(sample)), uint64(seed))
				for y.count < 100 {
					y.week()
				}
				y.agrees()
				sum.Lock()
				defer sum.Unlock()
				records, retired, gone = records+y.count, retired+len(y.retired), gone+len(y.gone)
			})
		}
	})
	if records < 100*years || retired < 2*years || gone < years {
		t.Errorf("%d records, %d drills retired, %d thrown away", records, retired, gone)
	}
	t.Logf("%d records in %d years, %d drills retired, %d of them thrown away", records, years, retired, gone)
}

func TestYears(t *testing.T) { liveYears(t, 2) }
