// Package spindle turns the readings of a drill, of a machine and of a grinder
// into what the drill asks of its spindle: thrust, torque and power, what
// thinning does to them, the pilot, speed, feed and pecks, and how fast the
// wheel may turn. The state of the point comes from inspect, the formulas from
// cutting, the figures that go in from reference.
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

// work is a drill at work: its point, the chisel edge that is reckoned with,
// and the load.
type work struct {
	judge.Result
	d    *drill.Drill
	edge edge
	load cutting.Load
	// wearAssumed says that no wear factor was read.
	wearAssumed bool
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

func workOf(d *drill.Drill) *work {
	w := &work{Result: judge.Compute(d), d: d}
	w.edge = edgeOf(&w.Result)
	w.load = w.loadOf()
	return w
}

func edgeOf(r *judge.Result) edge {
	e := edge{web: r.Chisel.Web, acute: r.Chisel.Acute, length: r.Chisel.Length}
	if sheet.Known(e.web, e.acute, e.length) {
		return e
	}
	if r.Chisel.WebRead || r.Chisel.LengthRead {
		e.from, e.acute = angleAssumed, handbook.HandbookChiselAngle
		if r.Chisel.WebRead {
			e.length = point.ChiselLength(e.web, e.acute)
		} else {
			e.web = point.WebOfChisel(e.length, e.acute)
		}
		return e
	}
	return newEdge(r.Drill.D)
}

// newEdge is the chisel edge of a new drill of diameter d mm.
func newEdge(d float64) edge {
	e := edge{from: asNew, web: handbook.NewWeb(d), length: handbook.NewChiselRatio(d) * d}
	e.acute = point.ChiselAngle(e.web, e.length)
	return e
}

// newChiselSource is where the chisel edge of a new drill comes from.
func newChiselSource() string {
	return handbook.StandardChiselSource().String() + "; " + handbook.NewWebSource().String()
}

func (w *work) loadOf() cutting.Load {
	l := cutting.Load{
		D: w.Drill.D, Feed: w.Drill.Feed, Chisel: w.edge.length, Rpm: w.d.Value(drill.Rpm),
		KdThrust: math.NaN(), KdTorque: math.NaN(),
		Wear: w.d.Value(drill.WearFactor), Efficiency: efficiency(w.d), System: w.d.System(),
	}
	if m := w.Drill.Material; m != nil {
		l.KdThrust, l.KdTorque = m.KdThrust, m.KdTorque
	}
	if math.IsNaN(l.Wear) {
		normal, _ := handbook.WearFactor("normal")
		l.Wear, w.wearAssumed = normal.Mid(), true
	}
	return l
}

// efficiency is the one read, else the drive's.
func efficiency(d *drill.Drill) float64 {
	if f, ok := handbook.DriveFactor(d.Word(drill.Drive)); ok && !d.Has(drill.Efficiency) {
		return f.Mid()
	}
	return d.Value(drill.Efficiency)
}

// ratio is c/D of the edge reckoned with.
func (w *work) ratio() float64 { return w.edge.length / w.Drill.D }

// wants names what a force still wants.
func (w *work) wants() string {
	return sheet.Wanted(sheet.Need{Reading: "size", Value: w.Drill.D}, sheet.Need{Reading: "a material whose force factor is published", Value: w.load.KdThrust})
}

// result is the load's, all NaN while something is wanted.
func (w *work) result() cutting.Result { return w.with(cutting.FactorsOf(w.ratio())) }

// with is result with chisel-edge factors from elsewhere.
func (w *work) with(f cutting.Factors) cutting.Result {
	return resultOf(w.load, f)
}

func resultOf(l cutting.Load, f cutting.Factors) cutting.Result {
	res, err := l.With(f)
	if err != nil {
		return unknown(f)
	}
	return res
}

// unknown is the result of a load of which a reading is missing: every reading
// that cannot be was refused before.
func unknown(f cutting.Factors) cutting.Result {
	nan := math.NaN()
	return cutting.Result{Factors: f, Thrust: nan, Torque: nan, PowerCutter: nan, PowerMotor: nan, ChiselShare: nan}
}

// driveUnused says that of two efficiencies the one read counts.
func (w *work) driveUnused(s *sheet.Sheet) {
	if name := w.d.Word(drill.Drive); name != "" && w.d.Has(drill.Efficiency) {
		s.Find("drive-unused", sheet.Note, "an efficiency was given: that of the drive, {}, is not used", quantity.Say(name))
	}
}

// assumptions says what was taken for want of a reading.
func (w *work) assumptions(s *sheet.Sheet) {
	b := &w.Drill
	if b.Material != nil && !b.Given {
		s.Find("material-assumed", sheet.Note, "no material was given: {} is taken", quantity.Say(b.Material.Name))
	}
	if b.Material != nil && !b.Material.HasForce() {
		s.Find("no-force-factor", sheet.Warn, "no force factor is published for {}: thrust, torque and power cannot be given", quantity.Say(b.Material.Title))
	}
	b.FeedAssumption(s)
}

// lengthAssumption is edgeAssumption where only the edge's length counts.
func (w *work) lengthAssumption(s *sheet.Sheet) {
	if w.edge.from != angleAssumed || !w.Chisel.LengthRead {
		w.edgeAssumption(s)
	}
}

// edgeAssumption says which chisel edge is reckoned with.
func (w *work) edgeAssumption(s *sheet.Sheet) {
	w.Chisel.Contradiction(s)
	switch w.edge.from {
	case angleAssumed:
		s.Find("chisel-angle-assumed", sheet.Note, "no chisel-edge angle was read: {} is taken, as the handbook's table does", quantity.Rad(math.Pi-w.edge.acute))
		s.Extra = append(s.Extra, handbook.HandbookChiselSource())
	case asNew:
		if sheet.Known(w.Drill.D) {
			s.Find("chisel-assumed", sheet.Note, "neither web nor chisel length was read: a new drill's edge of {} is taken", quantity.MM(w.edge.length))
			s.Extra = append(s.Extra, handbook.StandardChiselSource(), handbook.NewWebSource())
		}
	}
}

// ratioAssumptions is loadAssumptions in one line, where the thrusts are there to
// be compared.
func (w *work) ratioAssumptions(s *sheet.Sheet) {
	if math.IsNaN(w.load.KdThrust) {
		return
	}
	s.Extra = append(s.Extra, handbook.ForceSource(), w.Drill.Material.KdThrustSource, w.Drill.Material.KdTorqueSource)
	if w.wearAssumed {
		s.Find("wear-assumed", sheet.Note, "no wear factor was given: {}, a drill in normal use, is taken on both sides of the comparison", quantity.Num(w.load.Wear))
	}
}

// loadAssumptions says how the load was reckoned.
func (w *work) loadAssumptions(s *sheet.Sheet) {
	if w.wearAssumed {
		s.Find("wear-assumed", sheet.Note, "no wear factor was given: {}, a drill in normal use, is taken", quantity.Num(w.load.Wear))
	}
	if math.IsNaN(w.load.KdThrust) {
		return
	}
	s.Extra = append(s.Extra, handbook.ForceSource(), w.Drill.Material.KdThrustSource, w.Drill.Material.KdTorqueSource)
	system, other := "metric", "inch"
	if w.load.System == quantity.Inch {
		system, other = other, system
	}
	s.Find("equations", sheet.Note, "worked with the handbook's {} equations; its {} ones differ by up to 1 %", quantity.Say(system), quantity.Say(other))
}
