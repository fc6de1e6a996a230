package crib

import (
	"math"
	"strconv"
	"strings"
	"time"

	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
)

// Change is what was done to a drill.
type Change struct {
	Date     string // year-month-day
	What     What
	Stock    string // of a grind, as written
	Note     string
	Readings map[drill.Reading]string // new ones, as written
	Units    quantity.System          // of bare numbers in the change; Unset goes by the drill
	Today    time.Time                // no date may be after it; zero for no such bound
}

// Move is a reading that a change makes another one.
type Move struct {
	Reading  drill.Reading
	From, To string // as written; "" for none
	Why      string
}

// Outcome is a change worked out.
type Outcome struct {
	ID       string
	Moves    []Move
	Event    Event
	Old, New *drill.Drill

	stock string
}

// mover works out one change of one drill.
type mover struct {
	d     *Drill
	ch    *Change
	stock float64 // mm
	out   Outcome
}

// Apply works out what a change does to the drill of that id. Readings that a
// grind does away with go into the history; flute, length, web and what is left
// of a worn margin or a chip are moved on by the stock. Errors: a [*fault.Fault]
// of what cannot be, or does not follow from the drill as it stands.
func (c *Crib) Apply(id string, ch Change) (*Outcome, error) {
	d, ok := c.Find(id)
	if !ok {
		return nil, fault.Refuse(c.Meant(id), "no drill of this crib is called %q", id)
	}
	if day := d.Retired(); day != "" {
		return nil, fault.Refuse("if it is still there, take that entry out of its history by hand", "%q was retired on %s", id, day)
	}
	m := &mover{d: d, ch: &ch, out: Outcome{ID: id, Old: d.Readings, stock: strings.TrimSpace(ch.Stock)}}
	for _, step := range [...]func() error{m.day, m.readings, m.act, m.check, m.slips} {
		if err := step(); err != nil {
			return nil, err
		}
	}
	m.out.Event = Event{Date: ch.Date, What: ch.What, Stock: m.stock, Note: ch.Note}
	for _, mv := range m.out.Moves {
		if mv.From != "" {
			m.out.Event.Before = append(m.out.Event.Before, Was{mv.Reading, mv.From})
		}
	}
	return &m.out, nil
}

// readings makes the new readings' text stand for itself in the file.
func (m *mover) readings() error {
	if m.ch.Units == quantity.Unset || m.ch.Units == m.d.Readings.System() {
		return nil
	}
	var given []drill.Given
	for r, text := range m.ch.Readings {
		given = append(given, drill.Given{Reading: r, Text: text})
	}
	var in drill.Read
	if faults := in.Resolve(given, drill.Options{Units: m.ch.Units}); len(faults) > 0 {
		return asFlag(faults[0])
	}
	for r := range m.ch.Readings {
		var parts []string
		for _, v := range in.AsRead(r) {
			if v.Text != "" {
				parts = append(parts, v.Echo())
			}
		}
		if len(parts) > 0 {
			m.ch.Readings[r] = strings.Join(parts, ",")
		}
	}
	return nil
}

// asFlag puts a fault about a reading at its flag.
func asFlag(f *fault.Fault) error { return f.In(fault.Place{Flag: f.About}, "") }

// act works out what becomes of each reading.
func (m *mover) act() error {
	m.stock = math.NaN()
	var err error
	switch {
	case m.ch.What == Grind:
		err = m.takeOff()
	case m.ch.What == Thinning && !m.gives(drill.Web) && !m.gives(drill.ChiselLength):
		err = fault.New("give --web or --chisel-length as it is now", "--thinning: what the point was thinned to is missing")
	case m.ch.What != Thinning && m.ch.What != Retired && len(m.ch.Readings) == 0:
		err = fault.New("--grind with what came off, --thinning with the web now, or readings such as --web", "nothing was given to record")
	}
	for _, r := range drill.All() {
		switch {
		case err != nil:
			return err
		case m.gives(r):
			m.take(r)
		case m.ch.What == Grind:
			err = m.ground(r)
		case m.ch.What == Thinning && (r == drill.Web || r == drill.ChiselLength || r == drill.SecondWeb || r == drill.SecondWebAt):
			m.move(r, "", "thinned since") // of web and chisel edge, which hang on each other, the one not read anew
		}
	}
	return err
}

// gives reports whether the change has a new reading.
func (m *mover) gives(r drill.Reading) bool {
	_, given := m.ch.Readings[r]
	return given
}

// take notes a new reading.
func (m *mover) take(r drill.Reading) {
	text, why := m.ch.Readings[r], "as read"
	if m.ch.What == Correction {
		why = "as it should have been"
	}
	if text != m.d.Readings.Written(r) {
		m.move(r, text, why)
	}
}

func (m *mover) move(r drill.Reading, to, why string) {
	from := strings.TrimSpace(m.d.Readings.Written(r))
	if from != to {
		m.out.Moves = append(m.out.Moves, Move{r, from, to, why})
	}
}

// takeOff reads the stock of a grind.
func (m *mover) takeOff() error {
	v, err := quantity.Parse(quantity.Length, m.ch.Stock, m.bare())
	if err != nil {
		return fault.New(err.Hint, "--grind: %s", err)
	}
	if v.V <= 0 {
		return fault.New("", "--grind: %q takes nothing off", m.ch.Stock)
	}
	if v.V > mostStock*m.d.Size() {
		return fault.New("is it in the unit that was meant? of a drill that broke, record the flute that is left", "--grind: %s cannot be: it is over %d diameters", m.ch.Stock, mostStock)
	}
	if m.d.Readings.Has(drill.Cracked) {
		return fault.New("scrap it", "%q is cracked, and a cracked drill is never reground", m.d.ID)
	}
	m.stock = v.V
	if v.Assumed {
		m.out.stock = v.Echo()
	}
	return nil
}

func (m *mover) bare() quantity.System {
	if m.ch.Units != quantity.Unset {
		return m.ch.Units
	}
	return m.d.Readings.System()
}

// ground moves one reading on.
func (m *mover) ground(r drill.Reading) error {
	old := m.d.Readings.Value(r)
	switch r.Spec().Ground {
	case drill.Thickens:
		m.web()
	case drill.KeepsPlace:
		m.secondWeb(r)
	case drill.Shortens:
		if old-m.stock <= 0 {
			return fault.New("", "--grind: %s off leaves no %s: it was %s", m.ch.Stock, r, m.d.Readings.Written(r))
		}
		m.shorten(r, old, "less the stock")
	case drill.WearsOff:
		m.shorten(r, old, "less the stock")
	case drill.WornAway:
		m.move(r, "", "taken as ground away")
	case drill.TakenOff:
		m.move(r, "", "ground away")
	case drill.ReadAnew:
		m.move(r, "", "ground since: read it anew")
	}
	return nil
}

// shorten takes the stock off a reading; nothing of it left, it goes.
func (m *mover) shorten(r drill.Reading, old float64, why string) {
	if old > m.stock {
		m.move(r, m.written(r, old-m.stock), why)
	} else {
		m.move(r, "", "ground away")
	}
}

// web moves the web on by its taper, unless the point was thinned since it was
// last ground: under the thinning is a web that nobody has measured.
func (m *mover) web() {
	if m.d.thinned() {
		m.move(drill.Web, "", "the thinning is ground away: read it anew")
		return
	}
	r := judge.Compute(m.d.Readings)
	if after := point.WebAfter(r.Chisel.Web, r.Web.Taper, m.stock); !math.IsNaN(after) {
		m.move(drill.Web, m.written(drill.Web, after), "grows by the web's taper")
	}
}

// secondWeb keeps the place of the second web, which the stock brings nearer.
func (m *mover) secondWeb(r drill.Reading) {
	at := m.d.Readings.Value(drill.SecondWebAt)
	switch {
	case m.gives(drill.Web) || m.d.thinned() || at <= m.stock:
		m.move(r, "", "no longer where it was measured")
	case r == drill.SecondWebAt && at > m.stock:
		m.move(r, m.written(r, at-m.stock), "less the stock")
	}
}

// thinned reports whether the point was thinned since it was last ground.
func (d *Drill) thinned() bool {
	for i := len(d.History) - 1; i >= 0; i-- {
		switch d.History[i].What {
		case Thinning:
			return true
		case Grind:
			return false
		}
	}
	return false
}

// written writes a length as the reading it takes the place of was written. A web
// grows by so little that a coarser last digit would add up, grind after grind.
func (m *mover) written(r drill.Reading, mm float64) string {
	system, bare := m.d.Readings.System(), false
	if values := m.d.Readings.AsRead(r); len(values) == 1 {
		bare = values[0].Assumed && values[0].System == system && !strings.Contains(values[0].Text, "/")
		system = values[0].System
	}
	v, decimals, unit := mm, 3, "mm"
	if system == quantity.Inch {
		v, decimals, unit = mm/25.4, 5, "in"
	}
	if r == drill.Web {
		decimals++
	}
	text := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(v, 'f', decimals, 64), "0"), ".")
	if bare {
		return text
	}
	return text + unit
}

// check resolves the drill as the change leaves it, and refuses what cannot be.
func (m *mover) check() error {
	was := m.d.Readings
	texts := map[drill.Reading]string{}
	for _, g := range was.Given() {
		texts[g.Reading] = g.Text
	}
	for _, mv := range m.out.Moves {
		texts[mv.Reading] = mv.To
	}
	var given []drill.Given
	for r, text := range texts {
		given = append(given, drill.Given{Reading: r, Text: text})
	}
	var next drill.Read
	faults := next.Resolve(given, drill.Options{Units: was.Units, Book: was.Book})
	if len(faults) > 0 {
		return asFlag(faults[0])
	}
	next.Past = was.Past
	if m.ch.What == Grind {
		next.Past.Body = 0
	}
	found := next.Possible()
	if len(found) == 0 {
		found = judge.Cannot(&next.Drill)
	}
	if len(found) > 0 {
		return found[0]
	}
	m.out.New = &next.Drill
	return nil
}
