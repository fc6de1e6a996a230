package spindle

import (
	"cmp"
	"math"
	"slices"

	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// piloted is a drill and the pilot hole in front of it.
type piloted struct {
	*work
	band   handbook.Band // of the pilot's diameter
	bore   float64       // the pilot given, else the one to use
	given  bool
	sizes  []quantity.SizeName
	result cutting.Result
}

// Pilot is the sheet of the pilot hole for a following drill.
func Pilot(d *drill.Drill, explain bool) *sheet.Sheet {
	p := pilotedOf(workOf(d))
	s := sheet.New("pilot", explain)
	s.Cautions = drillingCautions
	judge.Plausible(d, s)
	s.Open("Pilot hole")
	p.bandFigures(s)
	s.Open("Thrust and torque")
	p.forces(s)
	s.Grids = append(s.Grids, p.grid())
	p.assumptions(s)
	p.edgeAssumption(s)
	p.ratioAssumptions(s)
	p.warn(s)
	p.answer(s)
	return s
}

func pilotedOf(w *work) *piloted {
	nan := math.NaN()
	sources := handbook.PilotSources()
	p := &piloted{work: w, band: handbook.Band{Low: nan, High: nan, Source: sources[0]}, given: w.d.Has(drill.Pilot)}
	if low, high, err := cutting.PilotBand(w.edge.web, w.edge.length); err == nil {
		p.band.Low, p.band.High = low, high
		p.sizes = slices.DeleteFunc(sizesIn(low, high), func(n quantity.SizeName) bool { return p.holdsNothing(n.MM) })
	}
	p.bore = w.d.Value(drill.Pilot)
	if !p.given {
		p.bore = p.band.Low
		if len(p.sizes) > 0 {
			p.bore = p.sizes[p.byChoice()[0]].MM
		}
	}
	p.result = p.over()
	return p
}

// over is the load over the pilot; one too small for the chisel edge takes
// nothing off it.
func (p *piloted) over() cutting.Result {
	if p.narrow() {
		return p.work.result()
	}
	res, err := p.load.OverPilot(p.bore)
	if err != nil {
		return unknown(cutting.FactorsOverPilot(math.NaN()))
	}
	return res
}

func (p *piloted) bandFigures(s *sheet.Sheet) {
	size := sheet.Wanted(sheet.Need{Reading: "size", Value: p.band.Low})
	add := func(key, label string, v float64) {
		s.Add(sheet.Figure{Key: key, Label: label, Value: v, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: size})
	}
	source := p.band.Source.String()
	add("pilot_low_mm", "at least the web", p.band.Low)
	if p.Chisel.WebRead || p.edge.from == asNew {
		s.Work(source, "w", "{}", quantity.MM(p.band.Low))
	} else {
		s.Work(source, "w = c sin(psi)", "{} * sin({})", quantity.MM(p.edge.length), quantity.Rad(p.edge.acute))
	}
	add("pilot_high_mm", "under the chisel edge", p.band.High)
	if p.Chisel.LengthRead || p.edge.from == asNew {
		s.Work(source, "c", "{}", quantity.MM(p.band.High))
	} else {
		s.Work(source, "c = w / sin(psi)", "{} / sin({})", quantity.MM(p.edge.web), quantity.Rad(p.edge.acute))
	}
	f := sheet.Figure{Key: "pilot_mm", Label: "pilot to use", Value: p.bore, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: size}
	switch {
	case p.given && sheet.Known(p.band.Low):
		limit := p.band
		limit.High *= 1 - justUnder
		f.Label, f.Limit = "pilot as read", &limit
	case p.small():
		f.Label = "pilot, if there is one"
	}
	s.Add(f)
	if p.given {
		s.Work("as read", "pilot as read", "{}", quantity.MM(p.bore))
	} else {
		s.Work(handbook.PilotPickSource().String(), "the ordinary size between web and chisel edge that is marked below, else the web", "{}", quantity.MM(p.bore))
	}
}

func (p *piloted) forces(s *sheet.Sheet) {
	without := p.work.result()
	wants := p.work.wants()
	for _, f := range [...]struct {
		key, label string
		res        cutting.Result
	}{{"thrust_n", "thrust without a pilot", without}, {"thrust_with_pilot_n", "thrust over the pilot", p.result}} {
		s.Add(sheet.Figure{Key: f.key, Label: f.label, Value: f.res.Thrust, Kind: quantity.Force, Wants: wants})
		workThrust(s, &p.load, f.res.Factors)
	}
	s.Add(sheet.Figure{Key: "thrust_ratio", Label: "thrust, with / without", Value: p.result.Thrust / without.Thrust, Kind: quantity.Number, Wants: wants})
	s.Work(handbook.ForceSource().String(), "T' / T", "{} / {}", quantity.Of(quantity.Force, p.result.Thrust), quantity.Of(quantity.Force, without.Thrust))
	for _, f := range [...]struct {
		key, label string
		res        cutting.Result
	}{{"torque_nm", "torque without a pilot", without}, {"torque_with_pilot_nm", "torque over the pilot", p.result}} {
		s.Add(sheet.Figure{Key: f.key, Label: f.label, Value: f.res.Torque, Kind: quantity.Torque, Wants: wants})
		workTorque(s, &p.load, f.res.Factors)
	}
}

// warn says what the pilot means for the drill, and the hole for the pilot.
func (p *piloted) warn(s *sheet.Sheet) {
	if !sheet.Known(p.band.Low) {
		return
	}
	sources := handbook.PilotSources()
	s.Extra = append(s.Extra, sources[0], handbook.PilotPickSource())
	if p.given {
		p.wideFindings(s)
	}
	switch {
	case p.narrow():
		s.Find("pilot-narrower-than-web", sheet.Warn, "a pilot of {} is narrower than the web, {}: the chisel edge still cuts metal; it is reckoned as without a pilot", quantity.MM(p.bore), quantity.MM(p.edge.web))
	case !p.given && len(p.sizes) == 0:
		down, _ := quantity.NextDown(p.band.Low)
		up, _ := quantity.NextUp(p.band.High)
		s.Find("no-pilot-size", sheet.Note, "no ordinary size lies between the web and the chisel edge; the next ones are {} and {}", quantity.Say(cmp.Or(down.Name, "none")), quantity.Say(cmp.Or(up.Name, "none")))
	}
	switch {
	case p.small():
		s.Find("small-needs-none", sheet.Note, "a drill of up to {} is drilled without a pilot: spot the hole and start", quantity.Say(quantity.Names(p.smallest())[0].Name))
		s.Extra = append(s.Extra, handbook.PilotFromSource())
	case !p.narrow():
		p.depthFindings(s)
	}
	if p.split() && !p.small() {
		s.Find("split-needs-none", sheet.Note, "a split point starts itself: a sharp one often needs no pilot")
	}
}

// wideFindings warns of a pilot wider than the chisel edge, and of one that leaves
// the corners alone at work: the second is the first as well.
func (p *piloted) wideFindings(s *sheet.Sheet) {
	if p.wide() {
		s.Find("pilot-wider-than-chisel", sheet.Warn, "a pilot of {} is as wide as the chisel edge, {}, or wider: nothing holds the drill back, it pulls itself in and chatters; feed it by power or hold it back",
			quantity.MM(p.bore), quantity.MM(p.edge.length))
	}
	if p.bore > handbook.PilotTop*p.Drill.D {
		s.Find("pilot-over-wide", sheet.Warn, "a pilot of {} is over {} of the diameter: only the corners cut, and they wear and chip", quantity.MM(p.bore), quantity.Of(quantity.Share, handbook.PilotTop))
		s.Extra = append(s.Extra, handbook.PilotSources()[1])
	}
}

// depthFindings says how deep the pilot has to be, and warns where that is a deep
// hole of its own.
func (p *piloted) depthFindings(s *sheet.Sheet) {
	s.Extra = append(s.Extra, handbook.PilotDepthSource())
	ratio := p.d.Value(drill.Depth) / p.bore
	if !(ratio > handbook.DeepestPecked*(1+1e-9)) {
		s.Find("pilot-depth", sheet.Note, "the chisel edge is relieved only as deep as the pilot goes: drill it as deep as the hole; a diameter or two deep it only locates the point")
		return
	}
	s.Find("pilot-deep", sheet.Warn, "the chisel edge is relieved only as deep as the pilot goes: as deep as the hole that is {} of the pilot's own diameters, so peck it as a deep hole; a diameter or two deep it only locates the point", diameters(ratio))
	s.Extra = append(s.Extra, handbook.DeepestSource())
}
