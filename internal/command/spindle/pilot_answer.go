package spindle

import (
	"evenlip/internal/cutting"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// answer says in one sentence what the pilot does for the drill, or why there is
// to be none, or none like that.
func (p *piloted) answer(s *sheet.Sheet) {
	switch {
	case !sheet.Known(p.band.Low):
	case p.narrow():
		s.InShort("a pilot of {} relieves nothing: it is narrower than the web, {}", quantity.MM(p.bore), quantity.MM(p.edge.web))
	case p.given && p.wide():
		s.InShort("a pilot of {} is too wide: over the chisel edge, {}, the drill pulls itself in", quantity.MM(p.bore), quantity.MM(p.edge.length))
	case p.small():
		s.InShort("no pilot: spot the hole and start, as with any drill of up to {}", quantity.Say(quantity.Names(p.smallest())[0].Name))
	default:
		p.relief(s)
	}
}

// relief says what the pilot takes off the thrust.
func (p *piloted) relief(s *sheet.Sheet) {
	over, without := p.result.Thrust, p.work.result().Thrust
	if !sheet.Known(over, without) {
		return
	}
	said := "a pilot of {} brings the thrust from {} to {}, as deep as the pilot goes"
	switch {
	case p.split():
		said = "often none, as a sharp split point starts itself; " + said
	case !p.given && len(p.sizes) == 0:
		said = "no ordinary size serves; " + said
	}
	s.InShort(said, quantity.MM(p.bore), quantity.Of(quantity.Force, without), quantity.Of(quantity.Force, over))
}

// narrow reports whether the pilot read is narrower than the web, so that the
// chisel edge still cuts.
func (p *piloted) narrow() bool { return p.given && p.bore < p.band.Low*(1-1e-9) }

// wide reports whether the pilot is wider than the chisel edge.
func (p *piloted) wide() bool { return p.holdsNothing(p.bore) }

// justUnder is the part of the chisel edge by which a pilot has to be narrower, so
// that something of the edge still holds the feed back: more than rounding.
const justUnder = 1e-6

// holdsNothing reports whether a pilot leaves nothing of the chisel edge to hold the
// feed back.
func (p *piloted) holdsNothing(bore float64) bool {
	return cutting.PullsIn(bore, p.edge.length*(1-justUnder))
}

// split reports whether the chisel edge is a split point's.
func (p *piloted) split() bool { return p.ratio() <= handbook.LeastChiselRatio }

// small reports whether a drill of that size wants no pilot.
func (p *piloted) small() bool { return p.Drill.D <= p.smallest()*(1+1e-9) }

// smallest is the diameter, mm, up to which no pilot is wanted.
func (p *piloted) smallest() float64 {
	if p.load.System == quantity.Inch {
		return handbook.PilotFromInch
	}
	return handbook.PilotFromMetric
}
