package cli_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenlip/internal/crib"
	"evenlip/internal/drill"
)

// shelf is one crib's file that is lived with for a year, by the program and now and
// then by a hand: drills get dull at work, the plan of the day is done and recorded,
// what is spent is thrown away, and what is missing is bought. Every Monday
// what was thrown away is cut out of the file: with all of it there, two thousand
// records take minutes.
type shelf struct {
	t       *testing.T
	rand    *rand.Rand
	file    string
	day     time.Time
	records int
	bought  int
	gone    int
	drills  map[string]*shelved // that are in the file
}

// shelved is what this test itself knows of a drill, in mm.
type shelved struct {
	size, bought, stock float64 // bought: its flute then
	grinds, entries     int
	thinned             bool
	retired             string
}

// newShelf is a crib of no drills, and of five sizes that are to be there.
func newShelf(t *testing.T) *shelf {
	s := &shelf{t: t, rand: rand.New(rand.NewPCG(7, 2)), file: filepath.Join(t.TempDir(), "crib.yaml"), day: time.Date(2024, 1, 1, 0, 0, 0, 0, time.UTC), drills: map[string]*shelved{}}
	head, _, _ := strings.Cut(string(crib.SampleText()), "  # ---- number drills\n")
	if err := os.WriteFile(s.file, []byte(head), 0o644); err != nil {
		t.Fatal(err)
	}
	return s
}

func (s *shelf) read() *crib.Crib {
	s.t.Helper()
	data, err := os.ReadFile(s.file)
	if err != nil {
		s.t.Fatal(err)
	}
	c, errs := crib.Read(s.file, data, nil)
	if len(errs) > 0 {
		s.t.Fatalf("%v", errs)
	}
	return c
}

func (s *shelf) between(low, high float64) float64 { return low + (high-low)*s.rand.Float64() }

func inMM(v float64) string { return fmt.Sprintf("%.3fmm", v) }

// record runs the program, and counts what it has recorded.
func (s *shelf) record(id string, flags ...string) {
	s.t.Helper()
	a := run("", append([]string{"crib", "record", id, "--file", s.file, "--date", s.day.Format(time.DateOnly), "--format", "json"}, flags...)...)
	if a.status != 0 {
		s.t.Fatalf("record %s %v: status %d\n%s", id, flags, a.status, a.err)
	}
	s.records++
	s.drills[id].entries++
}

func (s *shelf) plan() []map[string]any {
	a := run("", "crib", "plan", "--file", s.file, "--format", "json")
	var d cribDocument
	if err := json.Unmarshal([]byte(a.out), &d); a.status != 0 || err != nil {
		s.t.Fatalf("plan: status %d, %v\n%s", a.status, err, a.err)
	}
	return d.Results.Rows
}

// wear takes a few drills to work.
func (s *shelf) wear(rows []map[string]any) {
	for range 5 {
		row := rows[s.rand.IntN(len(rows))]
		if row["do"] == "buy" || row["do"] == "retire" {
			continue
		}
		id, size := row["id"].(string), row["size_mm"].(float64)
		switch s.rand.IntN(12) {
		case 0:
			s.record(id, "--cracked")
		case 1:
			s.record(id, "--margin-wear", inMM(s.between(0.1, 1)*size))
		default:
			s.record(id, "--flank-wear", inMM(s.between(0.01, 0.05)*size))
		}
	}
}

// do does what the plan says, and reads anew what the wheel has touched.
func (s *shelf) do(row map[string]any) {
	if row["do"] == "buy" {
		s.buy(row)
		return
	}
	id, d := row["id"].(string), s.drills[row["id"].(string)]
	switch row["do"] {
	case "grind":
		stock := math.Ceil(row["stock_mm"].(float64)*100)/100 + 0.05
		flags := []string{"--grind", fmt.Sprintf("%.2fmm", stock), "--lip-height", inMM(s.between(0, 0.001) * d.size), "--clearance", "12", "--chisel-angle", "125"}
		if wanted, ok := row["lip_angle_deg"].(float64); ok {
			flags = append(flags, "--lip-angle", fmt.Sprintf("%.1f,%.1f", wanted, wanted))
		}
		if d.thinned {
			flags = append(flags, "--web", inMM(0.2*d.size))
		}
		s.record(id, flags...)
		d.stock, d.grinds, d.thinned = d.stock+stock, d.grinds+1, false
	case "thin":
		s.record(id, "--thinning", "--web", inMM(row["web_target_mm"].(float64)))
		d.thinned = true
	case "retire":
		s.record(id, "--retired", "--note", "in the scrap bin")
		d.retired = s.day.Format(time.DateOnly)
	}
}

// buy writes new drills into the file by hand.
func (s *shelf) buy(row map[string]any) {
	f, err := os.OpenFile(s.file, os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		s.t.Fatal(err)
	}
	defer f.Close()
	size := row["size_mm"].(float64)
	for range int(row["count"].(float64)) {
		s.bought++
		id := fmt.Sprintf("new-%d", s.bought)
		s.drills[id] = &shelved{size: size, bought: 2 * size}
		fmt.Fprintf(f, "  - id: %s   # bought on %s\n    size: %q\n    web: %s\n    chisel-angle: 125\n    flute: %s\n    lip-angle: 59,59\n    lip-height: 0.01mm\n    clearance: 12\n",
			id, s.day.Format(time.DateOnly), row["size"], inMM(0.16*size), inMM(2*size))
	}
}

// clear holds the file to what was recorded, and cuts out what was thrown away.
func (s *shelf) clear() {
	s.agrees()
	text, err := os.ReadFile(s.file)
	if err != nil {
		s.t.Fatal(err)
	}
	blocks := strings.SplitAfter(string(text), "\n")
	var kept strings.Builder
	out := false
	for _, line := range blocks {
		if rest, ok := strings.CutPrefix(line, "  - id: "); ok {
			id := strings.Fields(rest)[0]
			if out = s.drills[id].retired != ""; out {
				s.gone++
				delete(s.drills, id)
			}
		}
		if !out {
			kept.WriteString(line)
		}
	}
	if err := os.WriteFile(s.file, []byte(kept.String()), 0o644); err != nil {
		s.t.Fatal(err)
	}
}

// agrees holds the file to what was recorded.
func (s *shelf) agrees() {
	c := s.read()
	if len(c.Drills) != len(s.drills) {
		s.t.Errorf("%d drills in the file, not %d", len(c.Drills), len(s.drills))
	}
	for i := range c.Drills {
		d := &c.Drills[i]
		want := s.drills[d.ID]
		stock, first := 0.0, d.Readings.Written(drill.Flute)
		for k := len(d.History) - 1; k >= 0; k-- {
			e := &d.History[k]
			if e.What == crib.Grind {
				stock += e.Stock
			}
			for _, was := range e.Before {
				if was.Reading == drill.Flute {
					first = was.Text
				}
			}
		}
		var back drill.Read
		back.Resolve([]drill.Given{drill.Flag(drill.Flute, first)}, drill.Options{Units: d.Readings.System()})
		grinds, _ := d.Grinds()
		rounding := 0.0006 * float64(grinds+1)
		if len(d.History) != want.entries || grinds != want.grinds || d.Retired() != want.retired {
			s.t.Errorf("%s: %d entries, %d grinds, retired %q; recorded: %+v", d.ID, len(d.History), grinds, d.Retired(), want)
		}
		if math.Abs(stock-want.stock) > 1e-9 || math.Abs(back.Value(drill.Flute)-want.bought) > rounding || math.Abs(want.bought-stock-d.Readings.Value(drill.Flute)) > rounding {
			s.t.Errorf("%s: %v mm came off, and its flute went from %v to %v; recorded: %+v", d.ID, stock, first, d.Readings.Written(drill.Flute), want)
		}
		if want.retired != "" {
			a := run("", "crib", "record", d.ID, "--file", s.file, "--web", "2mm", "--date", s.day.Format(time.DateOnly), "--dry-run")
			if a.status != 5 || !strings.Contains(a.err, "was retired on "+want.retired) {
				s.t.Errorf("%s was thrown away, and takes a record: %d %s", d.ID, a.status, a.err)
			}
		}
	}
	for _, f := range computeCrib(s.t, "audit", "--file", s.file).Findings {
		if f.Code == "history-odd" {
			s.t.Error(f.Text)
		}
	}
}

// The beginning of a year, one record after the other by the program, on the one
// file: at its end history, readings and what was recorded agree.
func TestYearOfOneCrib(t *testing.T) {
	t.Parallel()
	yearOfRecords(t, 100)
}

func yearOfRecords(t *testing.T, most int) {
	s := newShelf(t)
	for s.records < most {
		rows := s.plan()
		s.wear(rows)
		for _, row := range s.plan() {
			s.do(row)
		}
		if s.day = s.day.AddDate(0, 0, 1); s.day.Weekday() == time.Monday {
			s.clear()
		}
	}
	s.clear()
	if days := int(s.day.Sub(time.Date(2024, 1, 1, 0, 0, 0, 0, time.UTC)).Hours() / 24); days > 366 || s.gone*40 < most || s.bought*40 < most {
		t.Errorf("%d days, %d drills thrown away, %d bought", days, s.gone, s.bought)
	}
	t.Logf("%d records to %s, %d drills thrown away, %d bought, %d there", s.records, s.day.Format(time.DateOnly), s.gone, s.bought, len(s.drills))
}
