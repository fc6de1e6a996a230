// Package spindle is the commands on a drill at the spindle: thrust, torque and power;
// thinning, and what it does to them; the pilot; speed and feed for a hole.
package spindle

import (
	"math"

	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// work is a drill at work: its point, the chisel edge that is reckoned with, the
// load and what it comes to. A number that the readings do not give is NaN.
type work struct {
	Found judge.Result
	edge  edge
	load  cutting.Load
	force cutting.Result
	held  [limits]sheet.Held

	wearTaken  bool    // no wear factor was read, nor a land that gives one
	land       float64 // the worn land that gives the wear factors; NaN where none does
	factorRead bool    // a wear factor was read
	second     float64 // the thrust by the second published way, N
	edgeWanted bool    // forces are told only if the chisel edge was measured
	drive      string  // a drive that an efficiency read takes the place of
}

// The limits that a drill at work is held against; each command holds its own.
const (
	_ sheet.Limit = iota
	chiselLimit
	ratioAfterLimit
	splitLimit // under it the chisel edge is a split point's
	coreLimit
	spentLimit // past thinning
	pilotLimit
	rpmLimit
	feedLimit
	publishedFeedLimit
	depthLimit
	deepLimit // beyond it a hole is called deep
	shankLimit
	helixLimit
	limits
)

// hold holds a value against a band.
func (w *work) hold(l sheet.Limit, v float64, band handbook.Band) {
	w.held[l] = sheet.Held{Value: v, Band: band}
}

// edge is a chisel edge, measured or taken for want of a reading.
type edge struct {
	web, acute, length float64
	from               edgeFrom
}

type edgeFrom uint8

const (
	measured     edgeFrom = iota
	angleAssumed          // web or length was read, the angle taken
	asNew                 // neither was read
)

func workOf(d *drill.Drill) work {
	w := work{Found: judge.Compute(d)}
	w.edge = edgeOf(&w.Found)
	w.load = cutting.Load{
		D: w.Found.Drill.D, Feed: w.Found.Drill.Feed, Chisel: w.edge.length, Rpm: d.Value(drill.Rpm),
		KdThrust: math.NaN(), KdTorque: math.NaN(),
		Wear: d.Value(drill.WearFactor), Efficiency: d.Value(drill.Efficiency), System: d.System(),
	}
	if m := w.Found.Drill.Material; m != nil {
		w.load.KdThrust, w.load.KdTorque = m.KdThrust, m.KdTorque
	}
	w.land, w.factorRead = math.NaN(), d.Has(drill.WearFactor)
	if math.IsNaN(w.load.Wear) {
		w.load.Wear, w.wearTaken = handbook.NormalWear.Mid(), true
		if thrust, torque := cutting.WearFactors(w.load.D, w.load.Feed, w.Found.Wear.Flank); sheet.Known(thrust, torque) {
			w.load.Wear, w.load.WearTorque, w.wearTaken, w.land = thrust, torque, false, w.Found.Wear.Flank
		}
	}
	w.second = cutting.ThrustByConstant(handbook.ForceConstant(w.Found.Drill.Material), w.load.D, w.load.Feed) * w.load.Wear
	if f, ok := handbook.DriveFactor(d.Written(drill.Drive)); ok && d.Has(drill.Efficiency) {
		w.drive = f.Name
	} else if ok {
		w.load.Efficiency = f.Mid()
	}
	w.force = w.at(w.ratio())
	w.hold(chiselLimit, w.ratio(), *w.Found.Limit(judge.ChiselRatioLimit))
	return w
}

func edgeOf(r *judge.Result) edge {
	c := &r.Chisel
	e := edge{web: c.Web, acute: c.Acute, length: c.Length}
	switch {
	case sheet.Known(e.web, e.acute, e.length):
	case c.WebRead:
		e.from, e.acute = angleAssumed, handbook.HandbookChiselAngle
		e.length = point.ChiselLength(e.web, e.acute)
	case c.LengthRead:
		e.from, e.acute = angleAssumed, handbook.HandbookChiselAngle
		e.web = point.WebOfChisel(e.length, e.acute)
	default:
		d := r.Drill.D
		e = edge{from: asNew, web: handbook.NewWeb(d), length: handbook.NewChiselRatio(d) * d}
		e.acute = point.ChiselAngle(e.web, e.length)
	}
	return e
}

// ratio is c/D of the edge reckoned with.
func (w *work) ratio() float64 { return w.edge.length / w.load.D }

// newRatio is c/D of a new drill.
func (w *work) newRatio() float64 { return handbook.NewChiselRatio(w.load.D) }

// at is what the load comes to with a chisel edge of that c/D.
func (w *work) at(ratio float64) cutting.Result { return w.load.With(cutting.FactorsOf(ratio)) }

// inch reports whether the handbook's inch equations are used.
func (w *work) inch() bool { return w.load.System == quantity.Inch }

// told is a force, unless it depends on a chisel edge that was to be measured.
func (w *work) told(force float64) float64 {
	if w.edgeWanted {
		return math.NaN()
	}
	return force
}

// assumptions says what was taken for want of a reading.
func (w *work) assumptions(s *sheet.Sheet) {
	b := &w.Found.Drill
	if m := b.Material; m != nil {
		if !b.Given {
			s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(m.Name))
		}
		if !m.HasForce() {
			s.Find("no-force-factor", sheet.Warn, "no force factor is published for {}: thrust, torque and power cannot be given", quantity.Say(m.Title))
		}
	}
	b.FeedAssumption(s)
}

// driveUnused says that of two efficiencies the one read counts.
func (w *work) driveUnused(s *sheet.Sheet) {
	if w.drive != "" {
		s.Find("drive-unused", sheet.Note, "an efficiency was given: that of the drive, {}, is not used", quantity.Say(w.drive))
	}
}

// edgeAssumption says which chisel edge is reckoned with. Where its length alone
// counts and was read, the angle taken is not told.
func (w *work) edgeAssumption(s *sheet.Sheet, lengthCounts bool) {
	switch from := w.edge.from; {
	case from == angleAssumed && lengthCounts && w.Found.Chisel.LengthRead:
		return
	case from == angleAssumed:
		s.Find("chisel-angle-assumed", sheet.Note, "no chisel-edge angle was read: {} is taken, as the handbook's table does", quantity.Rad(math.Pi-w.edge.acute))
		s.Extra = append(s.Extra, handbook.HandbookChiselSource)
	case from == asNew && sheet.Known(w.load.D):
		s.Find("chisel-assumed", sheet.Note, "neither web nor chisel length was read: a new drill's edge of {} is taken", quantity.MM(w.edge.length))
		s.Extra = append(s.Extra, handbook.StandardChiselSource, handbook.NewWebSource)
	}
	w.Found.Chisel.Contradiction(s)
}

// wearAssumption says which wear factor is taken, and what for.
func (w *work) wearAssumption(s *sheet.Sheet, where string) {
	if sheet.Known(w.land) {
		s.Find("wear-of-land", sheet.Note, "the worn land of {} makes the thrust {} times a sharp drill's and the torque {} times, as measured in cast iron"+where,
			quantity.MM(w.land), quantity.Num(w.load.Wear), quantity.Num(w.load.WearTorque))
		s.Extra = append(s.Extra, handbook.WornLandSource)
		if w.land > handbook.WornLandEnd*(1+1e-9) {
			s.Find("land-past-measured", sheet.Warn, "a worn land of {} is wider than any that was measured, {}: the forces are only carried on; grind it", quantity.MM(w.land), quantity.MM(handbook.WornLandEnd))
		}
	}
	if w.factorRead && sheet.Known(w.Found.Wear.Flank) {
		s.Find("land-unused", sheet.Note, "a wear factor was given: the worn land of {} is not reckoned with", quantity.MM(w.Found.Wear.Flank))
	}
	if w.wearTaken {
		s.Find("wear-assumed", sheet.Note, "no wear factor was given: {}, a drill in normal use, is taken"+where, quantity.Num(w.load.Wear))
	}
}

// comparisonAssumptions says how two thrusts were reckoned that are compared.
func (w *work) comparisonAssumptions(s *sheet.Sheet) {
	if sheet.Known(w.load.KdThrust) {
		w.forceSources(s)
		w.wearAssumption(s, " on both sides of the comparison")
	}
}

// loadAssumptions says how the load was reckoned.
func (w *work) loadAssumptions(s *sheet.Sheet) {
	w.wearAssumption(s, "")
	if !sheet.Known(w.load.KdThrust) {
		return
	}
	w.forceSources(s)
	system, other := "metric", "inch"
	if w.inch() {
		system, other = other, system
	}
	s.Find("equations", sheet.Note, "worked with the handbook's {} equations; its {} ones differ by up to 1 %", quantity.Say(system), quantity.Say(other))
}

func (w *work) forceSources(s *sheet.Sheet) {
	m := w.Found.Drill.Material
	s.Extra = append(s.Extra, handbook.ForceSource, m.KdThrustSource, m.KdTorqueSource)
}

// cautions are what anyone at a drilling machine is to keep in mind.
var cautions = []string{
	"clamp the work; wear eye protection",
	"no gloves, no loose clothing, no loose hair near a turning spindle",
	"stop the spindle to clear chips, with a brush and not by hand",
	"computed forces are estimates: start lightly",
	"work to the shop's own rules and the local code; ask a qualified person when unsure",
}
