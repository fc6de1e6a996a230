package crib

import (
	"fmt"
	"slices"

	"evenlip/internal/drill"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/strict"
)

// mostStock is more than a grind takes off, in diameters: the program's own rule.
const mostStock = 25

// history reads what was done to a drill; sure says that the units of its bare
// numbers are known.
func (rd *reader) history(n strict.Node, d *drill.Drill, sure bool) []Event {
	if n.IsNull() {
		return nil
	}
	if !n.IsList() {
		rd.Fault(n, "history: takes a list", "such as - {date: 2026-03-02, what: grind, stock: 0.5mm}")
		return nil
	}
	var out []Event
	for _, item := range n.Items() {
		e := rd.event(item, d.System())
		rd.follows(item, out, &e)
		if sure && e.Stock > mostStock*d.Value(drill.Size) {
			at, _ := item.Lookup("stock")
			rd.Fault(at.Value, quantity.Sayf("stock: {} cannot be: it is over {} diameters", quantity.MM(e.Stock), quantity.Of(quantity.Count, mostStock)).In(quantity.Format{System: d.System()}),
				"is it in the unit that was meant? of a drill that broke, leave the stock out and say so in a note")
		}
		out = append(out, e)
	}
	return out
}

// follows refuses an entry that cannot come after those above it.
func (rd *reader) follows(n strict.Node, above []Event, e *Event) {
	for i := range above {
		if above[i].What == Retired {
			rd.Fault(n, "nothing is done to a drill that was retired on "+above[i].Date, "if it is still there, take that entry out; if not, this one")
			return
		}
	}
	if len(above) == 0 || e.Date == "" {
		return
	}
	if last := above[len(above)-1].Date; e.Date < last {
		at, _ := n.Lookup("date")
		rd.Fault(at.Value, fmt.Sprintf("date: %s stands below %s", e.Date, last), "put the entries in the order of their days, the oldest first")
	}
}

// doubts are what the history says and cannot all be so, if none of it breaks a
// rule: someone has measured another thing, or changed the file by hand.
func (d *Drill) doubts() []quantity.Text {
	var out []quantity.Text
	units := d.Readings.System()
	for _, r := range [...]drill.Reading{drill.Flute, drill.Length, drill.Web, drill.ChiselLength} {
		after := d.Readings.Value(r)
		for i := len(d.History) - 1; i >= 0; i-- {
			e := &d.History[i]
			before := e.lengthBefore(r, units)
			if before == 0 {
				continue
			}
			if e.contradicts(r, before, after) {
				out = append(out, quantity.Sayf("{}: {} was {} before the {} of {}, and {} after it", quantity.Say(d.ID), quantity.Say(r.String()),
					quantity.MM(before), quantity.Say(string(e.What)), quantity.Say(e.Date), quantity.MM(after)))
			}
			after = before
		}
	}
	return out
}

// contradicts reports whether a reading cannot have gone from one value to the
// other by what was done.
func (e *Event) contradicts(r drill.Reading, before, after float64) bool {
	switch {
	case e.What == Correction:
		return false
	case r == drill.Web || r == drill.ChiselLength:
		return e.What == Thinning && after >= before
	case e.What == Grind && e.Stock > 0:
		return after > before-e.Stock+lengthSlack || after < before-e.Stock-lengthSlack
	}
	return after > before+lengthSlack
}

// mostDoubts bounds how many are told at once.
const mostDoubts = 20

// oddReadings are those that can be but are hardly what was meant, and that no
// verdict shows.
func (d *Drill) oddReadings() []quantity.Text {
	var out []quantity.Text
	tell := func(text quantity.Text) {
		out = append(out, quantity.Text{Format: "{}: " + text.Format, Args: slices.Insert(text.Args, 0, quantity.Say(d.ID))})
	}
	if text, odd := judge.SizeOdd(d.Readings.Value(drill.Size)); odd {
		tell(text)
	}
	if text, odd := judge.FluteOdd(d.Readings); odd && d.Series != "long" {
		tell(text)
	}
	return out
}

// tellDoubts adds what the histories of the drills leave in doubt, and the readings.
func tellDoubts(s *sheet.Sheet, drills []*Drill) {
	tell(s, "history-odd", "histories", drills, (*Drill).doubts)
	tell(s, "reading-odd", "readings", drills, (*Drill).oddReadings)
}

func tell(s *sheet.Sheet, code, about string, drills []*Drill, doubts func(*Drill) []quantity.Text) {
	told, more := 0, 0
	for _, d := range drills {
		for _, doubt := range doubts(d) {
			if told == mostDoubts {
				more++
				continue
			}
			told++
			s.Find(code, sheet.Warn, doubt.Format, doubt.Args...)
		}
	}
	if more > 0 {
		s.Find(code, sheet.Warn, "{} more such doubts about {}", quantity.Of(quantity.Count, float64(more)), quantity.Say(about))
	}
}
