package spindle

import (
	"math"

	"evenlip/internal/command"
	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/sheet"
)

// Speed is evenlip speed.
var Speed = command.Of[running]{Info: command.Info{
	Name: "speed", Safety: &command.AtSpindle, Short: "rpm, feed and pecks for a hole, and the load on the spindle",
	Long: `Spindle speed and feed from the published ones for diameter and work, cut back
for a deep hole; the strokes to drill it in, and the time; thrust, torque and
power at that feed; the clearance it leaves; what the shank carries, and which
flutes serve. A speed or a feed that is set already is looked at instead.`,
	Examples: `  evenlip speed --size 12mm --material steel-200 --depth 60mm
  evenlip speed --size 1/2 --material cast-iron-150 --depth 1.5in --web 0.075 --chisel-angle 125 --clearance 12 --lip-angle 59
  evenlip speed --size 25mm --shank-diameter 13mm --web 4mm --rpm 240 --feed 0.3mm`,
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.ChiselAngle, drill.ChiselLength,
		drill.LipAngle, drill.PointAngle, drill.Clearance, drill.HeelDrop, drill.HeelTurn, drill.Helix, drill.Flute,
		drill.Feed, drill.Rpm, drill.Depth, drill.FlankWear, drill.WearFactor, drill.Efficiency, drill.Drive, drill.ShankDiameter},
}, Cannot: cannot, Compute: runningOf, Figures: (*running).figures, Rest: (*running).rest, Declares: speedDeclares, Screen: (*running).screen}

// running is a drill in a hole: how fast, how much a turn, how deep.
type running struct {
	work
	rpmRead, feedRead bool
	published         handbook.Band // cutting speeds for the work, m/min
	top               float64       // the highest in a hole of this depth, m/min
	speed             float64       // m/min
	row               handbook.FeedRow
	depth, depthRatio float64
	cut               handbook.DeepCut // NaN where the depth is not known
	pointLength       float64
	shank, helix      float64
}

func runningOf(d *drill.Drill) running {
	r := running{work: workOf(d), rpmRead: d.Has(drill.Rpm), feedRead: d.Has(drill.Feed),
		depth: d.Value(drill.Depth), shank: d.Value(drill.ShankDiameter), helix: d.Value(drill.Helix)}
	size := r.load.D
	r.depthRatio = r.depth / size
	r.cut = handbook.Deep(r.depthRatio)
	if r.cut.Feed > 0 && !r.feedRead {
		slower := *d
		slower.Put(drill.Feed, cutting.Reduced(r.load.Feed, r.cut.Feed))
		r.work = workOf(&slower)
	}
	r.Found.Drill.FeedAssumed = false // the feed is a figure here
	r.row = handbook.FeedOf(size)
	r.setSpeed()
	r.edgeWanted = r.edge.from == asNew
	if r.pointLength = r.Found.Point.Length; !sheet.Known(r.pointLength) {
		r.pointLength = point.Height(size, r.Found.Point.Wanted)
	}
	r.holdLimits()
	return r
}

// setSpeed takes the speed read, else the middle of the published ones.
func (r *running) setSpeed() {
	r.published = handbook.Band{Low: math.NaN(), High: math.NaN()}
	if m := r.Found.Drill.Material; m != nil && m.HasSpeed() {
		r.published = m.Speed
	}
	r.top = r.atDepth(r.published.High)
	if r.rpmRead {
		r.speed = cutting.CuttingSpeed(r.load.Rpm, r.load.D)
		return
	}
	pick, _ := handbook.SpeedPick(r.published)
	r.speed = r.atDepth(pick)
	r.load.Rpm = cutting.Rpm(r.speed, r.load.D)
	r.force = r.at(r.ratio())
}

// atDepth is a cutting speed less what the depth takes off it.
func (r *running) atDepth(speed float64) float64 {
	if r.cut.Speed > 0 {
		return cutting.Reduced(speed, r.cut.Speed)
	}
	return speed
}

func (r *running) holdLimits() {
	feed, helix := math.NaN(), handbook.Band{Low: math.NaN(), High: math.NaN()}
	if r.feedRead {
		feed = r.load.Feed
	}
	if m := r.Found.Drill.Material; m != nil && m.Helix.Source != nil {
		helix = m.Helix
	}
	r.hold(rpmLimit, r.load.Rpm, handbook.Band{High: cutting.Rpm(r.top, r.load.D), Source: r.published.Source})
	r.hold(feedLimit, feed, handbook.FeedServes(r.load.D))
	r.hold(publishedFeedLimit, feed, r.row.Band)
	r.hold(depthLimit, r.depthRatio, deepest())
	r.hold(deepLimit, r.depthRatio, handbook.Band{High: handbook.DeepFrom, Source: handbook.DeepFromSource})
	r.hold(shankLimit, cutting.ShankStress(r.force.Torque, r.shank), handbook.Band{High: handbook.ShankStress, Source: handbook.ShankStressSource})
	r.hold(helixLimit, r.helix, helix)
}

// deepest is how deep a hole may be, in diameters, that pecks serve.
func deepest() handbook.Band {
	return handbook.Band{High: handbook.DeepestPecked, Source: handbook.DeepestSource}
}

// is reports whether the drill in the hole breaks a limit.
func (r *running) is(l sheet.Limit) bool { return r.held[l].Outside() }

// state is how it stands to a limit.
func (r *running) state(l sheet.Limit) sheet.State { return r.held[l].State() }

// tooFast reports whether the speed read is over what is published.
func (r *running) tooFast() bool { return r.rpmRead && r.is(rpmLimit) }

// rubs reports whether the feed leaves no clearance somewhere along the lip.
func (r *running) rubs() bool {
	return r.Found.Clearance.Working <= 0 || r.Found.Clearance.Least <= 0
}

func speedDeclares(s *sheet.Sheet) { s.Grids = append(s.Grids, pecksList()) }

// pecksList is the list of the strokes, without its rows.
func pecksList() sheet.Grid {
	return sheet.Grid{Key: "pecks", Title: "Pecks, the chips cleared after each", Columns: []sheet.Column{
		sheet.Lengths("depth_mm", "to"), sheet.Lengths("stroke_mm", "peck"),
	}}
}

// pecks is the grid of the strokes.
func (r *running) pecks() sheet.Grid {
	g := pecksList()
	rule := cutting.PeckRule{First: handbook.PeckFirst, Next: handbook.PeckNext, Shrink: handbook.PeckShrink, Least: handbook.PeckLeast}
	from := 0.0
	for _, to := range cutting.Pecks(r.depth, r.load.D, rule) {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.V(to), sheet.V(to - from)})
		from = to
	}
	return g
}
