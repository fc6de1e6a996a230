package spindle

import (
	"cmp"
	"math"
	"slices"

	"evenlip/internal/command"
	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Pilot is evenlip pilot.
var Pilot = command.Of[piloted]{Info: command.Info{
	Name: "pilot", Safety: &command.AtSpindle, Short: "the pilot hole for a following drill",
	Long: `The pilot that takes the chisel edge out of the cut: at least as wide as the
web, no wider than the chisel edge; the ordinary sizes between, and the one to
use; and thrust and torque with and without it. A pilot that there is already
can be looked at, and a depth tells whether it must be pecked.`,
	Examples: `  evenlip pilot --size 20mm --web 3mm --chisel-angle 125
  evenlip pilot --size 3/4 --web 0.1 --chisel-length 0.125 --pilot 7/64 --material steel-200
  evenlip pilot --size 25mm --web 3.7mm --chisel-angle 125 --depth 80mm`,
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.ChiselAngle, drill.ChiselLength,
		drill.Feed, drill.Depth, drill.FlankWear, drill.WearFactor, drill.Pilot},
}, Cannot: cannot, Compute: pilotedOf, Figures: (*piloted).figures, Rest: (*piloted).rest, Declares: pilotDeclares, Screen: (*piloted).screen}

// piloted is a drill and the pilot hole in front of it.
type piloted struct {
	work
	low, high float64 // the pilot's diameter: at least the web, under the chisel edge
	bore      float64 // the pilot read, else the one to use
	given     bool
	depth     float64 // of the hole
	sizes     []quantity.SizeName
	use       quantity.SizeName // the one to use
	over      cutting.Result
}

// justUnder is the part of the chisel edge by which a pilot has to be narrower, so
// that something of the edge still holds the feed back: more than rounding.
const justUnder = 1e-6

func pilotedOf(d *drill.Drill) piloted {
	p := piloted{work: workOf(d), low: math.NaN(), high: math.NaN(), depth: d.Value(drill.Depth)}
	if e := &p.edge; e.length >= e.web {
		p.low, p.high = e.web, e.length
		p.sizes = sizesIn(p.low, p.widest())
		if len(p.sizes) > 0 {
			p.use = slices.MinFunc(p.sizes, p.byChoice)
		}
	}
	read := d.Value(drill.Pilot)
	p.hold(pilotLimit, read, handbook.Band{Low: p.low, High: p.widest(), Source: handbook.PilotSource})
	switch {
	case d.Has(drill.Pilot):
		p.bore, p.given = read, true
	case len(p.sizes) > 0:
		p.bore = p.use.MM
	default:
		p.bore = p.low
	}
	p.over = p.force // of a pilot too small for the chisel edge, which takes nothing off it
	if !p.narrow() {
		p.over = p.load.OverPilot(p.bore)
	}
	return p
}

// widest is the widest pilot that leaves something of the chisel edge.
func (p *piloted) widest() float64 { return p.high * (1 - justUnder) }

// free is the part of the diameter that the pilot takes out of the cut.
func (p *piloted) free() float64 { return math.Max(p.bore, p.edge.length) / p.load.D }

// narrow reports whether the pilot read is narrower than the web, so that the
// chisel edge still cuts.
func (p *piloted) narrow() bool { return p.held[pilotLimit].State() == sheet.Under }

// wide reports whether the pilot read leaves nothing of the chisel edge to hold the
// feed back.
func (p *piloted) wide() bool { return p.held[pilotLimit].State() == sheet.Over }

// split reports whether the chisel edge is a split point's.
func (p *piloted) split() bool { return p.ratio() <= handbook.LeastChiselRatio }

// small reports whether a drill of that size wants no pilot.
func (p *piloted) small() bool { return p.load.D <= p.smallest()*(1+1e-9) }

// smallest is the diameter, mm, up to which no pilot is wanted.
func (p *piloted) smallest() float64 {
	if p.inch() {
		return handbook.PilotFromInch
	}
	return handbook.PilotFromMetric
}

func (p *piloted) figures(s *sheet.Sheet) {
	p.letters(s, &factors)
	sheet.Put(s, p, p.held[:], &pilotFigures, &pilotForces)
}

type pilotDef = sheet.Def[piloted]

var pilotFigures = sheet.Group[piloted]{Title: "Pilot hole", Figures: []pilotDef{
	{Key: "pilot_low_mm", Label: "at least the web", Kind: quantity.Length, Gauge: quantity.Caliper, Value: func(p *piloted) float64 { return p.low },
		Works: func(*piloted) (work, source string) { return "w", handbook.PilotSource.String() }},
	{Key: "pilot_high_mm", Label: "under the chisel edge", Kind: quantity.Length, Gauge: quantity.Caliper, Value: func(p *piloted) float64 { return p.high },
		Works: func(*piloted) (work, source string) { return "c", handbook.PilotSource.String() }},
	{Key: "pilot_mm", Letter: "p", Label: "pilot to use", Kind: quantity.Length, Gauge: quantity.Caliper, Of: "size", Limit: pilotLimit,
		Value: func(p *piloted) float64 { return p.bore },
		LabelOf: func(p *piloted) string {
			switch {
			case p.given && sheet.Known(p.low):
				return "pilot as read"
			case p.small():
				return "pilot, if there is one"
			}
			return "pilot to use"
		},
		Works: func(p *piloted) (work, source string) {
			if p.given {
				return sheet.AsRead, sheet.AsRead
			}
			return sheet.AsRead, handbook.PilotPickSource.String()
		}},
}}

var pilotForces = sheet.Group[piloted]{Title: "Thrust and torque", Figures: []pilotDef{
	{Letter: "qp", Label: "part of the diameter that the pilot takes out of the cut", Kind: quantity.Number, Value: (*piloted).free, Work: "max(p, c) / D"},
	{Key: "thrust_n", Letter: "T", Label: "thrust without a pilot", Kind: quantity.Force, Value: func(p *piloted) float64 { return p.force.Thrust },
		Work: thrustWork, Source: judge.ForceSource},
	{Key: "thrust_with_pilot_n", Letter: "T'", Label: "thrust over the pilot", Kind: quantity.Force, Value: func(p *piloted) float64 { return p.over.Thrust },
		Works: func(p *piloted) (work, source string) {
			if p.narrow() {
				return "T", ""
			}
			return "TB * (1 - qp) / (1 + qp)^0.2", judge.ForceSource
		}},
	{Key: "thrust_with_pilot_ratio", Label: "thrust, with / without", Kind: quantity.Number, Value: func(p *piloted) float64 { return p.over.Thrust / p.force.Thrust },
		Work: "T' / T", Source: judge.ForceSource},
	{Key: "torque_nm", Letter: "M", Label: "torque without a pilot", Kind: quantity.Torque, Value: func(p *piloted) float64 { return p.force.Torque },
		Work: torqueWork, Source: judge.ForceSource},
	{Key: "torque_with_pilot_nm", Label: "torque over the pilot", Kind: quantity.Torque, Value: func(p *piloted) float64 { return p.over.Torque },
		Works: func(p *piloted) (work, source string) {
			if p.narrow() {
				return "M", ""
			}
			return "MA * (1 - qp^2) / (1 + qp)^0.2", judge.ForceSource
		}},
}}

func (p *piloted) rest(s *sheet.Sheet) {
	s.Cautions = cautions
	s.Grids = append(s.Grids, p.grid())
	p.assumptions(s)
	p.edgeAssumption(s, false)
	p.comparisonAssumptions(s)
	if sheet.Known(p.low) {
		p.remarks(s)
	}
}

// remarks says what the pilot means for the drill, and the hole for the pilot.
func (p *piloted) remarks(s *sheet.Sheet) {
	s.Extra = append(s.Extra, handbook.PilotSource, handbook.PilotPickSource)
	bore := quantity.MM(p.bore)
	if p.wide() {
		s.Find("pilot-wider-than-chisel", sheet.Warn, "a pilot of {} is as wide as the chisel edge, {}, or wider: nothing holds the drill back, it pulls itself in and chatters; feed it by power or hold it back",
			bore, quantity.MM(p.high))
	}
	if p.given && p.bore > handbook.PilotTop*p.load.D {
		s.Find("pilot-over-wide", sheet.Warn, "a pilot of {} is over {} of the diameter: only the corners cut, and they wear and chip", bore, quantity.Of(quantity.Share, handbook.PilotTop))
		s.Extra = append(s.Extra, handbook.PilotTopSource)
	}
	switch {
	case p.narrow():
		s.Find("pilot-narrower-than-web", sheet.Warn, "a pilot of {} is narrower than the web, {}: the chisel edge still cuts metal; it is reckoned as without a pilot", bore, quantity.MM(p.low))
	case !p.given && len(p.sizes) == 0:
		down := quantity.NextDown(p.low)
		up := quantity.NextUp(p.high)
		s.Find("no-pilot-size", sheet.Note, "no ordinary size lies between the web and the chisel edge; the next ones are {} and {}", quantity.Say(cmp.Or(down.Name, "none")), quantity.Say(cmp.Or(up.Name, "none")))
	}
	switch {
	case p.small():
		s.Find("small-needs-none", sheet.Note, "a drill of up to {} is drilled without a pilot: spot the hole and start", p.smallestSize())
		s.Extra = append(s.Extra, handbook.PilotFromSource)
		return
	case p.narrow():
	default:
		p.depthRemark(s)
	}
	if p.split() {
		s.Find("split-needs-none", sheet.Note, "a split point starts itself: a sharp one often needs no pilot")
	}
}

func (p *piloted) smallestSize() quantity.Arg {
	return quantity.Say(quantity.Names(p.smallest())[0].Name)
}

// depthRemark says how deep the pilot has to be, and warns where that is a deep hole
// of its own.
func (p *piloted) depthRemark(s *sheet.Sheet) {
	s.Extra = append(s.Extra, handbook.PilotDepthSource)
	deep := sheet.Held{Value: p.depth / p.bore, Band: deepest()}
	if !deep.Outside() {
		s.Find("pilot-depth", sheet.Note, "the chisel edge is relieved only as deep as the pilot goes: drill it as deep as the hole; a diameter or two deep it only locates the point")
		return
	}
	s.Find("pilot-deep", sheet.Warn, "the chisel edge is relieved only as deep as the pilot goes: as deep as the hole that is {} of the pilot's own diameters, so peck it as a deep hole; a diameter or two deep it only locates the point", diameters(deep.Value))
	s.Extra = append(s.Extra, deep.Source)
}
