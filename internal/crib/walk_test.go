package crib

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/plan"
)

// walk takes one drill of the sample from dull to retired, as its plans say: what
// they take off is ground, the point is read anew, the web thinned where that
// pays, and the drill worn again.
type walk struct {
	t        *testing.T
	id, text string // the crib that holds this drill alone
	now      *Drill // as it stands in there; nil while it was not looked up
	day      time.Time
	body     float64 // the web behind the point, as it truly is
	thinned  bool
	grinds   int
}

func setOut(t *testing.T, id string) *walk {
	_, block, _ := strings.Cut(string(sample), "  - id: "+id+"\n")
	block, _, _ = strings.Cut(block, "  - id: ")
	w := &walk{t: t, id: id, text: "version: 1\ndrills:\n  - id: " + id + "\n" + block, day: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)}
	w.body = w.drill().Readings.Value(drill.Web)
	return w
}

func (w *walk) drill() *Drill {
	if w.now == nil {
		w.now = find(w.t, read(w.t, w.text), w.id)
	}
	return w.now
}

func (w *walk) plan() plan.Plan { return plan.Of(w.drill().Readings) }

func (w *walk) record(ch Change) {
	w.t.Helper()
	w.day = w.day.AddDate(0, 0, 1)
	ch.Date = w.day.Format(time.DateOnly)
	_, text, err := Rewrite("crib.yaml", []byte(w.text), w.id, ch, nil)
	if err != nil {
		w.t.Fatalf("grind %d, %s: %v", w.grinds, ch.What, err)
	}
	w.text, w.now = string(text), nil
}

// near holds a length in the file to the one foretold, less what a record may lose
// in writing it down.
func (w *walk) near(r drill.Reading, want float64) {
	w.t.Helper()
	slack := 0.0005 * float64(w.grinds+1)
	if r == drill.Web {
		slack /= 10
	}
	if got := w.drill().Readings.Value(r); math.Abs(got-want) > slack {
		w.t.Errorf("grind %d: %s is %.4f, foretold %.4f", w.grinds, r, got, want)
	}
}

// grind does what the plan says, and holds the drill to what it foretold.
func (w *walk) grind(p *plan.Plan) {
	w.t.Helper()
	stock := p.Stock.Total
	aim := p.Found.Clearance.Aim * 180 / math.Pi
	k := p.Lips.Target * 180 / math.Pi
	readings := map[drill.Reading]string{drill.LipAngle: fmt.Sprintf("%.1f,%.1f", k, k), drill.LipHeight: "0",
		drill.Clearance: fmt.Sprintf("%.1f", aim), drill.ChiselAngle: fmt.Sprintf("%.1f", 180-p.Body.ChiselAfter*180/math.Pi)}
	w.body += handbook.WebTaper * p.Loss.Inner
	if w.thinned || p.Loss.Inner != stock { // the record takes the stock for alike at all ends
		readings[drill.Web] = fmt.Sprintf("%.4fmm", w.body)
	}
	w.record(Change{What: Grind, Stock: fmt.Sprintf("%.6fmm", stock), Readings: readings})
	w.grinds++
	w.near(drill.Flute, p.Ground.Flute)
	w.near(drill.Web, p.Ground.Web)
	after := w.plan()
	if p.Done.Thinned != (after.Do == plan.Thin) {
		w.t.Fatalf("grind %d: thin foretold %v, and the ground drill is to %v", w.grinds, p.Done.Thinned, after.Do)
	}
	w.thinned = p.Done.Thinned
	if w.thinned {
		w.record(Change{What: Thinning, Readings: map[drill.Reading]string{drill.Web: fmt.Sprintf("%.6fmm", p.Done.Web)}})
		w.near(drill.Web, p.Done.Web)
		after = w.plan()
	}
	if after.Do != plan.Leave {
		w.t.Fatalf("grind %d: done, and the drill is to %v", w.grinds, after.Do)
	}
}

func (w *walk) wear(readings map[drill.Reading]string) {
	w.record(Change{What: Readings, Readings: readings})
}

// Where every grind takes the usual stock, what happens from dull to retired is the
// schedule that stood in the first plan: as many grinds, flute and web after each,
// thinned at the same ones, and ended by the same cause.
func TestFromDullToRetiredAsForetold(t *testing.T) { asForetold(t, "N30-1") }

func asForetold(t *testing.T, ids ...string) {
	for _, id := range ids {
		t.Run(id, func(t *testing.T) {
			t.Parallel()
			w := setOut(t, id)
			first := w.plan()
			foretold := first.Schedule()
			margin := fmt.Sprintf("%.6fmm", first.Usual-handbook.CleanUp)
			for p := first; p.Do == plan.Regrind; p = w.plan() {
				if w.grinds == len(foretold) {
					t.Fatalf("%d grinds were foretold, and the next is to be made", w.grinds)
				}
				w.grind(&p)
				s := &foretold[w.grinds-1]
				w.near(drill.Flute, s.Flute)
				w.near(drill.Web, s.Web)
				if w.thinned != s.Thinned {
					t.Errorf("grind %d: thinned is %v, foretold %v", w.grinds, w.thinned, s.Thinned)
				}
				w.wear(map[drill.Reading]string{drill.MarginWear: margin})
			}
			if last := w.plan(); w.grinds != len(foretold) || last.Do != plan.Retire || last.Reason != first.Reason {
				t.Errorf("%d grinds of %d, then %v for %s; foretold for %s", w.grinds, len(foretold), last.Do, last.Reason, first.Reason)
			}
			if !w.thinned {
				t.Error("it never came to be thinned")
			}
		})
	}
}

// Worn as in a shop, with a chip or a burnt margin at every fifth grind, each plan
// foretells the drill that its grind leaves, thinning goes on once it has begun, and
// the end comes with less flute to spare than one more grind takes.
func TestFromDullToRetiredWithMishaps(t *testing.T) { withMishaps(t, "N30-1") }

func withMishaps(t *testing.T, ids ...string) {
	for _, id := range ids {
		scale := map[string]float64{"M120-1": 1, "N30-1": 0.6, "M250-1": 2}[id]
		t.Run(id, func(t *testing.T) {
			t.Parallel()
			w := setOut(t, id)
			begun := false
			for p := w.plan(); p.Do == plan.Regrind; p = w.plan() {
				w.grind(&p)
				if begun && !w.thinned {
					t.Fatalf("grind %d: it was thinned before, and is not now", w.grinds)
				}
				begun = w.thinned
				worn := map[drill.Reading]string{drill.FlankWear: millimetres(0.3 * scale), drill.CornerWear: millimetres(0.5 * scale)}
				switch w.grinds % 10 {
				case 5:
					worn[drill.LipChip] = millimetres(1.5 * scale)
				case 0:
					worn[drill.MarginWear] = millimetres(1.2 * scale)
				}
				w.wear(worn)
			}
			last := w.plan()
			if last.Do != plan.Retire || last.Reason != plan.FluteShort.String() || w.grinds < 15 || !begun {
				t.Errorf("%d grinds, then %v for %s; thinned: %v", w.grinds, last.Do, last.Reason, begun)
			}
			if spare := w.drill().Readings.Value(drill.Flute) - last.Body.LeastFlute; spare < 0 || spare > last.Stock.Total {
				t.Errorf("%.3f mm of flute to spare, %.3f mm a grind", spare, last.Stock.Total)
			}
			if of := len(slices.DeleteFunc(slices.Clone(w.drill().History), func(e Event) bool { return e.What != Grind })); of < w.grinds {
				t.Errorf("%d grinds in the history of %d", of, w.grinds)
			}
		})
	}
}
