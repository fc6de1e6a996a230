// Package crib keeps the drills of a tool crib in one YAML file, which people
// and scripts edit alike: it reads the file strictly, audits it, plans the day
// at the grinder, and records what was done without touching another byte.
package crib

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/near"
	"evenlip/internal/quantity"
	"evenlip/internal/strict"
)

// Crib is the drills of one file.
type Crib struct {
	File   string // as it is shown
	Name   string
	Sample bool
	Units  quantity.System // of bare numbers; Unset goes by each drill's size
	Keep   []Keep
	Drills []Drill
	Gauges quantity.Gauges // what the gauges resolve, of those that are named

	root strict.Node
}

// Keep says how many usable drills of a size are to be there.
type Keep struct {
	Size  quantity.Value
	Count int
}

// Drill is one drill of a crib.
type Drill struct {
	ID     string
	Series string // jobber, stub or long; "" where it is not said
	Shank  string // parallel, taper or reduced; "" where it is not said
	Note   string
	// Readings are the readings as they stand now, resolved.
	Readings *drill.Drill
	History  []Event

	node strict.Node
}

// The words that a drill's series and shank may be.
var (
	serieses = []string{"jobber", "stub", "long"}
	shanks   = []string{"parallel", "taper", "reduced"}
)

// Kept returns the readings that a crib keeps of a drill.
func Kept() []drill.Reading { return drill.Of(drill.Point, drill.Plan) }

// useless reports whether a reading is none of those.
func useless(r drill.Reading) bool {
	return r != drill.Name && r != drill.Units && r.Spec().Group != drill.Point && r.Spec().Group != drill.Plan
}

// Size returns the diameter in millimetres.
func (d *Drill) Size() float64 { return d.Readings.Value(drill.Size) }

// What is the kind of an event in a drill's history.
type What string

// The kinds.
const (
	Grind      What = "grind"
	Thinning   What = "thinning"
	Readings   What = "readings"
	Correction What = "correction"
	Retired    What = "retired"
)

var whats = []string{string(Grind), string(Thinning), string(Readings), string(Correction), string(Retired)}

// Event is one entry of a drill's history.
type Event struct {
	Date   string // year-month-day
	What   What
	Stock  float64 // mm that came off in a grind; NaN for none
	Note   string
	Before []Was
}

// Was is a reading that an event did away with, as it had been written.
type Was struct {
	Reading drill.Reading
	Text    string
}

// Find returns the drill of that id.
func (c *Crib) Find(id string) (*Drill, bool) {
	for i := range c.Drills {
		if c.Drills[i].ID == id {
			return &c.Drills[i], true
		}
	}
	return nil, false
}

// Meant says, as a hint, which id may have been meant.
func (c *Crib) Meant(id string) string {
	ids := make([]string, len(c.Drills))
	for i := range ids {
		ids[i] = c.Drills[i].ID
	}
	return near.Hint(id, "evenlip crib list shows them", ids...)
}

// Grinds returns how often the drill was ground and the usual stock of those
// grinds whose stock was noted, mm: their mean, NaN where there is none.
func (d *Drill) Grinds() (count int, usual float64) {
	noted, sum := 0, 0.0
	for _, e := range d.History {
		if e.What != Grind {
			continue
		}
		count++
		if !math.IsNaN(e.Stock) {
			noted++
			sum += e.Stock
		}
	}
	if noted == 0 {
		return count, math.NaN()
	}
	return count, sum / float64(noted)
}

// past returns what the history tells that no reading does.
func (d *Drill) past() (p drill.Past) {
	if _, usual := d.Grinds(); usual > 0 {
		p.Usual = usual
	}
	for i := len(d.History) - 1; i >= 0 && d.History[i].What != Grind; i-- {
		if d.History[i].What == Thinning {
			p.Body = max(p.Body, d.History[i].lengthBefore(drill.Web, d.Readings.System()))
		}
	}
	return p
}

// lengthBefore returns a length that the event did away with, 0 for none.
func (e *Event) lengthBefore(r drill.Reading, units quantity.System) float64 {
	for _, was := range e.Before {
		if was.Reading == r {
			v, _ := quantity.Parse(quantity.Length, was.Text, units) // it was read once already
			return v.V
		}
	}
	return 0
}

// Retired returns the day on which the drill was thrown away, "" for one that is
// still there.
func (d *Drill) Retired() string {
	for i := range d.History {
		if d.History[i].What == Retired {
			return d.History[i].Date
		}
	}
	return ""
}

// gone returns how many drills were thrown away.
func (c *Crib) gone() int { return len(c.Drills) - len(c.there()) }

// there returns the drills that were not thrown away.
func (c *Crib) there() []*Drill {
	var out []*Drill
	for i := range c.Drills {
		if c.Drills[i].Retired() == "" {
			out = append(out, &c.Drills[i])
		}
	}
	return out
}

// last returns the date of the last event, "" for none.
func (d *Drill) last() string {
	date := ""
	for _, e := range d.History {
		date = max(date, e.Date)
	}
	return date
}
