package crib

import (
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/judge"
)

// How far two honest readings of one thing may lie apart. The figures are this
// program's own: a rule's step for lengths, a tenth for a web between the jaws.
const (
	lengthSlack   = 1.0  // mm
	webSlack      = 0.1  // part of the web
	leastWebSlack = 0.02 // mm
	// steepest is the most that a web grows by for each millimetre ground off.
	steepest = 0.1
)

// ifWrong is what to do where the file and not the new reading is at fault.
const ifWrong = "measure again; if what the file has is wrong, add --correction"

// slips refuses readings that do not follow from the drill as it stands: a typing
// error would spoil the history. A correction says that the file was wrong.
func (m *mover) slips() error {
	if m.ch.What == Correction {
		return nil
	}
	was, is := m.d.Readings, m.out.New
	for _, r := range [...]drill.Reading{drill.Flute, drill.Length} {
		if is.Value(r) > was.Value(r)+lengthSlack {
			return fault.New(ifWrong, "--%s: %s cannot be: it was %s, and no drill grows longer", r, is.Written(r), was.Written(r))
		}
	}
	if was.Has(drill.Cracked) && !is.Has(drill.Cracked) {
		return fault.New("if it never was cracked, add --correction", "--cracked: no crack heals")
	}
	before, now := judge.Compute(was).Chisel, judge.Compute(is).Chisel
	if m.ch.What == Thinning {
		return m.slipOfThinning(&before, &now)
	}
	return m.slipOfWeb(before.Web, now.Web)
}

func (m *mover) slipOfThinning(before, now *judge.Chisel) error {
	for _, x := range [...]struct {
		r       drill.Reading
		was, is float64
	}{{drill.Web, before.Web, now.Web}, {drill.ChiselLength, before.Length, now.Length}} {
		if text, given := m.ch.Readings[x.r]; given && x.is >= x.was {
			return fault.New(ifWrong, "--%s: %s cannot be: it was %s before, and thinning leaves less", x.r, text, m.written(x.r, x.was))
		}
	}
	return nil
}

// slipOfWeb refuses a web that has grown thinner, or thicker than its taper can
// make it over what was ground off. What is under a thinning nobody knows.
func (m *mover) slipOfWeb(was, is float64) error {
	text, given := m.ch.Readings[drill.Web]
	if !given || m.ch.What == Grind && m.d.thinned() {
		return nil
	}
	slack := max(leastWebSlack, webSlack*was)
	switch grown := steepest * m.lost(); {
	case is < was-slack:
		return fault.New("measure again; if it was thinned, record that with --thinning; if what the file has is wrong, add --correction",
			"--web: %s cannot be: it was %s, and no web grows thinner", text, m.written(drill.Web, was))
	case is > was+slack+grown:
		return fault.New("measure again; if it was ground, record that too; if what the file has is wrong, add --correction",
			"--web: %s cannot be: it was %s, and a web grows by little with each grind", text, m.written(drill.Web, was))
	}
	return nil
}

// lost returns what has come off the end, mm, as far as the change says so.
func (m *mover) lost() float64 {
	if m.ch.What == Grind {
		return m.stock
	}
	if lost := m.d.Readings.Value(drill.Flute) - m.out.New.Value(drill.Flute); lost > 0 {
		return lost
	}
	return 0
}

// day refuses a day that cannot be: the history goes forward, and ends today.
func (m *mover) day() error {
	day, err := ParseDate(m.ch.Date)
	if err != nil {
		return fault.New("", "--date: cannot read %q: takes year-month-day, such as 2026-03-02", m.ch.Date)
	}
	if last := m.d.last(); m.ch.Date < last {
		return fault.New("what was forgotten goes into the file by hand; so does a wrong date there",
			"--date: %s is before the last entry of %q, %s", m.ch.Date, m.d.ID, last)
	}
	if !m.ch.Today.IsZero() && day.After(m.ch.Today.AddDate(0, 0, 1)) {
		return fault.New("record what was done, not what is planned", "--date: %s is still to come", m.ch.Date)
	}
	return nil
}

// muchStock is the part of the diameter that is seldom ground off in one go.
const muchStock = 0.25

// muchOff reports whether the stock is one to look at twice.
func (o *Outcome) muchOff() bool {
	return o.Event.Stock > muchStock*o.New.Value(drill.Size)
}
