package plan

import (
	"math"

	"evenlip/internal/cutting"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
)

// Body is what of a drill a grind changes, and what ends its life. Millimetres
// and radians; NaN for what is not known, which then ends nothing.
type Body struct {
	D           float64
	Web         float64         // at the point now, or behind it where it is thinned
	Thinned     float64         // web at the point now where it is thinned; else not above zero, or NaN
	Taper       float64         // growth of the web toward the shank, mm per mm
	Chisel      float64         // chisel-edge angle to the lip now
	ChiselAfter float64         // the same as every grind leaves it
	Feed        float64         // mm per revolution, for the thrust
	System      quantity.System // picks the equations of the thrust
	Flute       float64         // usable flute now
	Length      float64         // overall
	BackTaper   float64         // fall of the diameter toward the shank, mm per mm

	LeastFlute    float64
	MostWeb       float64 // w/D that thinning can still answer
	MostChisel    float64 // c/D over which the web is thinned
	Give          float64 // of the chisel edge, mm, that a bench gauge cannot tell from that
	NewChisel     float64 // c/D that it is thinned to
	LeastDiameter float64
}

// State is a drill when a length has been ground off since it was measured.
type State struct {
	Removed  float64 // at the corners
	Length   float64
	Flute    float64
	Diameter float64 // at the corners
	Body     float64 // the web behind the point: the measured one and its growth
	Web      float64 // at the point, after thinning
	Chisel   float64 // chisel-edge length
	Ratio    float64 // c/D, on the size
	Thinned  bool
}

// now returns the drill as it was measured.
func (b *Body) now() State { return b.at(Loss{}, b.Chisel) }

// After returns the drill with lost ground off in all, its web thinned where that
// pays:
//
//	flute - corner, not under 0    w' = w + taper inner    c' = w'/sin psi
//
// w being the web behind a thinned point, which a grind takes the thinning off,
// and, once c'/D is over MostChisel, the web that makes it NewChisel, unless w' is past
// all thinning. Every figure that depends on an unknown one is NaN.
// Domain: nothing of lost under 0. Derived from the point's geometry.
func (b *Body) After(lost Loss) State {
	s := b.Ground(lost)
	if s.Ratio > b.MostChisel*(1+slack)+b.Give/b.D && s.Ratio > b.NewChisel && !(s.Web/b.D > b.MostWeb*(1+slack)) {
		s.Thinned = true
		b.setWeb(&s, point.WebOfChisel(b.NewChisel*b.D, b.ChiselAfter), b.ChiselAfter)
	}
	return s
}

// Ground returns the same before any thinning.
func (b *Body) Ground(lost Loss) State { return b.at(lost, b.ChiselAfter) }

func (b *Body) at(lost Loss, angle float64) State {
	s := State{
		Removed: lost.Corner, Length: math.Max(0, b.Length-lost.Tip), Flute: math.Max(0, b.Flute-lost.Corner),
		Diameter: b.D - b.BackTaper*lost.Corner, Body: point.WebAfter(b.Web, b.Taper, lost.Inner),
	}
	web := s.Body
	if lost == (Loss{}) && b.Thinned > 0 {
		web = b.Thinned
	}
	b.setWeb(&s, web, angle)
	return s
}

func (b *Body) setWeb(s *State, web, angle float64) {
	s.Web, s.Chisel = web, point.ChiselLength(web, angle)
	s.Ratio = s.Chisel / b.D
}

// ThrustRatio returns the thrust of a drill in the state s over that of the drill as
// it was measured, at the same feed: [cutting.ThrustRatio].
func (b *Body) ThrustRatio(s *State) float64 {
	now := b.now()
	return cutting.ThrustRatio(b.System, b.D, b.Feed, s.Ratio, now.Ratio)
}

// End says what ends a drill's life.
type End uint8

// The ends.
const (
	NotKnown    End = iota // the flute is not known
	FluteShort             // the flute no longer outreaches the job
	WebSpent               // the web is past what thinning can answer
	DiameterLow            // back taper has made the drill too small
	NotCounted             // more grinds than are counted
)

// String returns the end's name, as scripts read it.
func (e End) String() string {
	return [...]string{"", "flute-short", "web-spent", "diameter-low", "not-counted"}[e]
}

// slack forgives rounding, nothing that a gauge could show.
const slack = 1e-9

// MostGrinds is how far grinds are counted, and Hair the part of a usual grind by
// which one may miss an end and still count: no gauge shows it.
const (
	MostGrinds = 10_000
	Hair       = 1e-4
)

// Left counts the grinds that still leave the drill fit for the job, the first of
// which takes first and every other one every, and says what forbids one more:
//
//	n = floor((spare - first) / every + Hair) + 1, not under 0
//
// the least over the ends, spare being what can be ground off until that end comes,
// first what the first grind takes there: at the inner ends for the web, at the corners
// for the rest. NaN and NotKnown where flute or least flute are not known.
// Domain: nothing of first under 0 and not all of it 0, every > 0, finite; NaN and NotKnown outside.
func (b *Body) Left(first Loss, every float64) (n float64, end End) {
	spare := b.spare()
	if math.IsNaN(spare[FluteShort]) || !(first.Corner >= 0 && first.Inner >= 0 && first.Corner+first.Inner > 0 && every > 0) || math.IsInf(first.Corner+first.Inner+every, 0) {
		return math.NaN(), NotKnown
	}
	n, end = MostGrinds, NotCounted
	for e := FluteShort; e < NotCounted; e++ {
		if left := math.Max(0, math.Floor((spare[e]-first.at(e))/every+Hair)+1); left < n {
			n, end = left, e
		}
	}
	return n, end
}

// at is what of the loss bears on an end of the drill's life.
func (l Loss) at(e End) float64 {
	if e == WebSpent {
		return l.Inner
	}
	return l.Corner
}

// spare returns the length, mm, that can be ground off until each end comes.
func (b *Body) spare() (spare [NotCounted]float64) {
	spare[FluteShort] = b.Flute - b.LeastFlute
	spare[WebSpent] = lasts(b.MostWeb*b.D-b.Web, b.Taper)
	spare[DiameterLow] = lasts(b.D-b.LeastDiameter, b.BackTaper)
	return spare
}

// lasts returns the length after which what there is has been used up at a rate.
func lasts(there, rate float64) float64 {
	if there >= 0 && rate <= 0 {
		return math.Inf(1)
	}
	return there / math.Abs(rate)
}

// Schedule returns the drill after each of n grinds, the first of which takes first
// and every other one every.
func (b *Body) Schedule(n float64, first Loss, every float64) []State {
	if !(n > 0) {
		return nil
	}
	states := make([]State, int(n))
	for i := range states {
		states[i] = b.After(first.plus(float64(i) * every))
	}
	return states
}
