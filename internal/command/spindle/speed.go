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

// running is a drill in a hole: how fast, how much a turn, how deep.
type running struct {
	*work
	depth, depthRatio float64
	deep              handbook.DeepCut
	speed             float64 // m/min
	rpm               float64
	topRpm, topSpeed  handbook.Band // what may not be passed; the speed in a shallow hole
	topHere           float64       // m/min, in a hole of this depth
	feed              float64
	feedBand          handbook.Band // as published
	feedServes        handbook.Band // what is not warned of
	pointLength       float64
	rpmRead, feedRead bool
}

// Speed is the sheet of speed, feed and pecks for a hole.
func Speed(d *drill.Drill, explain bool) *sheet.Sheet {
	r := runningOf(d)
	s := sheet.New("speed", explain)
	s.Cautions = drillingCautions
	judge.Plausible(d, s)
	s.Open("Speed")
	r.speedFigures(s)
	s.Open("Feed")
	r.feedFigures(s)
	s.Open("The hole")
	r.holeFigures(s)
	s.Open("Load on the spindle")
	r.forceFigures(s)
	sheet.Put(s, &r.Result, r.Held[:], &judge.WorkingClearance)
	sheet.Letters(s, &r.Result, &judge.Letters, &judge.CornerClearance, &judge.FlankSlopes, &judge.ChiselEdge)
	s.Open("Shank and flutes")
	r.shankFigures(s)
	r.helixFigure(s)
	s.Grids = append(s.Grids, r.pecks())
	r.assumptions(s)
	r.driveUnused(s)
	r.Clearance.LesserTaken(s)
	r.Clearance.Contradiction(s)
	r.Point.WantedUnused(s)
	r.warn(s)
	r.answer(s)
	return s
}

func runningOf(d *drill.Drill) *running {
	r := &running{work: workOf(d), depth: d.Value(drill.Depth), rpmRead: d.Has(drill.Rpm), feedRead: d.Has(drill.Feed)}
	diameter := r.Drill.D
	r.depthRatio = r.depth / diameter
	if sheet.Known(r.depthRatio) {
		r.deep = handbook.Deep(r.depthRatio)
	}
	r.setFeed(d)
	r.setSpeed(d)
	wanted := r.Point.Length
	if !sheet.Known(wanted) {
		wanted = point.Height(diameter, r.Point.Wanted)
	}
	r.pointLength = wanted
	return r
}

// setFeed takes the feed read, else the published one for size and work, and
// computes the point again at it.
func (r *running) setFeed(d *drill.Drill) {
	r.feedBand, r.feedServes = handbook.FeedBand(r.Drill.D), handbook.FeedServes(r.Drill.D)
	r.feed = r.Drill.Feed
	if !r.feedRead {
		r.feed = cutting.Reduced(judge.UsualFeed(r.Drill.D, r.Drill.Material), r.deep.Feed)
		at := *d
		if sheet.Known(r.feed) {
			at.Put(drill.Feed, r.feed)
		}
		r.work = workOf(&at)
		r.Drill.FeedAssumed = false
	}
}

// setSpeed takes the speed read, else the middle of the published ones.
func (r *running) setSpeed(d *drill.Drill) {
	r.topSpeed = handbook.Band{Low: math.NaN(), High: math.NaN()}
	if m := r.Drill.Material; m != nil && m.HasSpeed() {
		r.topSpeed = m.Speed
	}
	if r.rpmRead {
		r.rpm = d.Value(drill.Rpm)
		r.speed = cutting.CuttingSpeed(r.rpm, r.Drill.D)
	} else {
		pick, _ := handbook.SpeedPick(r.topSpeed)
		r.speed = cutting.Reduced(pick, r.deep.Speed)
		r.rpm = cutting.Rpm(r.speed, r.Drill.D)
	}
	r.topHere = cutting.Reduced(r.topSpeed.High, r.deep.Speed)
	r.topRpm = handbook.Band{Low: 0, High: cutting.Rpm(r.topHere, r.Drill.D), Source: r.topSpeed.Source}
	r.load.Rpm, r.load.Feed = r.rpm, r.feed
}

func (r *running) sizeOr(other string, v float64) string {
	return sheet.Wanted(sheet.Need{Reading: "size", Value: r.Drill.D}, sheet.Need{Reading: other, Value: v})
}

const noSpeed = "a material whose speed is published, or rpm"

func (r *running) speedFigures(s *sheet.Sheet) {
	band := r.topSpeed
	for _, f := range [...]struct {
		key, label string
		value      float64
	}{{"cutting_speed_low_m_min", r.topSpeed.Source.Whose() + ", from", band.Low}, {"cutting_speed_high_m_min", r.topSpeed.Source.Whose() + ", to", band.High}} {
		s.Add(sheet.Figure{Key: f.key, Label: f.label, Value: f.value, Kind: quantity.Cutting, Shop: band.Source.OfShop(),
			Wants: sheet.Wanted(sheet.Need{Reading: "a material whose speed is published", Value: f.value})})
		if band.Source != nil {
			s.Work(band.Source.String(), band.Source.How("as published"), "{}", quantity.Of(quantity.Cutting, f.value))
		}
	}
	r.cutFigure(s, "speed_cut", "taken off for the depth", r.deep.Speed)
	s.Add(sheet.Figure{Key: "cutting_speed_m_min", Label: "cutting speed", Value: r.speed, Kind: quantity.Cutting, Shop: !r.rpmRead && band.Source.OfShop(), Wants: r.sizeOr(noSpeed, r.speed)})
	_, pick := handbook.SpeedPick(band)
	if r.rpmRead {
		s.Work(practice, "v = pi D N, D in metres (feet)", "pi * {} * {}", quantity.Of(quantity.Cutting, r.Drill.D/1000), num(r.rpm))
	} else {
		s.Work(pick.String(), "v = (low + high) / 2 * (1 - cut)", "({} + {}) / 2 * (1 - {})", quantity.Of(quantity.Cutting, band.Low), quantity.Of(quantity.Cutting, band.High), num(r.deep.Speed))
	}
	f := sheet.Figure{Key: "rpm", Label: "spindle speed", Value: r.rpm, Kind: quantity.Rpm, Wants: r.sizeOr(noSpeed, r.rpm)}
	if sheet.Known(r.topRpm.High) {
		f.Limit = &r.topRpm
	}
	if !r.rpmRead {
		f.Gauge = quantity.Setting
	}
	s.Add(f)
	if r.rpmRead {
		s.Work("as read", "N as read", "{}", num(r.rpm))
	} else {
		s.Work(practice, "N = v / (pi D), v in mm (inches) a minute", "{} / (pi * {})", quantity.MM(1000*r.speed), quantity.MM(r.Drill.D))
	}
}

const practice = "common practice"

// cutFigure adds what a deep hole takes off a speed or a feed.
func (r *running) cutFigure(s *sheet.Sheet, key, label string, cut float64) {
	wants := ""
	if !sheet.Known(r.depthRatio) {
		cut, wants = math.NaN(), r.sizeOr("depth", r.depth)
	}
	s.Add(sheet.Figure{Key: key, Label: label, Value: cut, Kind: quantity.Share, Wants: wants})
	if sheet.Known(cut) {
		s.Work(r.deep.Source.String(), "as published for this depth", "100 * {}", num(cut))
	}
}

func (r *running) feedFigures(s *sheet.Sheet) {
	size := sheet.Wanted(sheet.Need{Reading: "size", Value: r.Drill.D})
	for _, f := range [...]struct {
		key, label string
		value      float64
	}{{"feed_low_mm", "published, from", r.feedBand.Low}, {"feed_high_mm", "published, to", r.feedBand.High}} {
		s.Add(sheet.Figure{Key: f.key, Label: f.label, Value: f.value, Kind: quantity.Feed, Wants: size})
		if r.feedBand.Source != nil {
			s.Work(r.feedBand.Source.String(), "as published for this diameter", "{}", quantity.Of(quantity.Feed, f.value))
		}
	}
	r.cutFigure(s, "feed_cut", "taken off for the depth", r.deep.Feed)
	f := sheet.Figure{Key: "feed_mm", Label: "feed per turn", Value: r.feed, Kind: quantity.Feed, Wants: size}
	if r.feedRead && r.feedServes.Source != nil {
		f.Limit = &r.feedServes
	}
	s.Add(f)
	if r.feedRead {
		s.Work("as read", "f as read", "{}", quantity.Of(quantity.Feed, r.feed))
	} else {
		judge.WorkFeed(s, r.Drill.D, r.Drill.Material, r.deep.Feed)
	}
	advance := cutting.Penetration(r.feed, r.rpm)
	s.Add(sheet.Figure{Key: "penetration_mm_min", Label: "feed per minute", Value: advance, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: r.sizeOr(noSpeed, r.rpm)})
	s.Work(practice, "advance = f N", "{} * {}", quantity.Of(quantity.Feed, r.feed), num(r.rpm))
}

func (r *running) holeFigures(s *sheet.Sheet) {
	depth := r.sizeOr("depth", r.depth)
	limit := handbook.Band{Low: 0, High: handbook.DeepestPecked, Source: handbook.DeepestSource()}
	s.Add(sheet.Figure{Key: "depth_ratio", Label: "depth, in diameters", Value: r.depthRatio, Kind: quantity.Number, Limit: &limit, Wants: depth})
	s.Work(judge.Geometry, "depth / D", "{} / {}", quantity.MM(r.depth), quantity.MM(r.Drill.D))
	time := cutting.HoleTime(r.depth, r.pointLength, r.feed, r.rpm)
	s.Add(sheet.Figure{Key: "hole_time_s", Label: "time in the cut", Value: time, Kind: quantity.Duration, Wants: sheet.Wanted(
		sheet.Need{Reading: "size", Value: r.Drill.D}, sheet.Need{Reading: "depth", Value: r.depth}, sheet.Need{Reading: noSpeed, Value: r.rpm})})
	s.Work(judge.Geometry+"; withdrawals are not in it", "t = 60 (depth + point length) / (f N)", "60 * ({} + {}) / ({} * {})",
		quantity.MM(r.depth), quantity.MM(r.pointLength), quantity.Of(quantity.Feed, r.feed), num(r.rpm))
	r.oversizeFigures(s)
}

// oversizeFigures adds how much larger than the drill the hole usually comes out.
func (r *running) oversizeFigures(s *sheet.Sheet) {
	usual := handbook.UsualOversize(r.Drill.D)
	for _, f := range [...]struct {
		key, label string
		value      float64
	}{{"usual_oversize_low_mm", "oversize usually, from", usual.Low}, {"usual_oversize_mean_mm", "oversize usually, mean", usual.Mean}, {"usual_oversize_high_mm", "oversize usually, to", usual.High}} {
		s.Add(sheet.Figure{Key: f.key, Label: f.label, Value: f.value, Kind: quantity.Length, Gauge: quantity.Indicator,
			Wants: sheet.Wanted(sheet.Need{Reading: "a size from 1/16 to 1 in", Value: f.value})})
		s.Work(handbook.OversizeSource().String(), "as published for this diameter, between two sizes in a straight line", "{}", quantity.MM(f.value))
	}
}

// forceFigures adds the load where the chisel edge was measured.
func (r *running) forceFigures(s *sheet.Sheet) {
	l, wants := r.load, r.work.wants()
	if r.edge.from == asNew {
		l.Chisel = math.NaN()
		if wants == "" {
			wants = "web or chisel-length"
		}
	}
	res := resultOf(l, cutting.FactorsOf(l.Chisel/l.D))
	forceFigures(s, &l, res, wants)
	switch {
	case r.edge.from != asNew:
		r.lengthAssumption(s)
		r.loadAssumptions(s)
	case r.work.wants() == "":
		s.Find("chisel-assumed", sheet.Note, "for the shank's load a new drill's chisel edge of {} is taken: the torque hangs little on it", quantity.MM(r.edge.length))
	}
}

// torque is that of the load, with a new drill's edge where none was read.
func (r *running) torque() float64 { return r.result().Torque }

// pecks is the grid of the strokes.
func (r *running) pecks() sheet.Grid {
	g := sheet.Grid{Key: "pecks", Title: "Strokes, the drill withdrawn after each", Columns: []sheet.Column{
		sheet.Lengths("depth_mm", "to"), sheet.Lengths("stroke_mm", "stroke"),
	}}
	rule := cutting.PeckRule{First: handbook.PeckFirst, Next: handbook.PeckNext, Shrink: handbook.PeckShrink, Least: handbook.PeckLeast}
	depths, err := cutting.Pecks(r.depth, r.Drill.D, rule)
	if err != nil { // no depth or no size: nothing to divide
		return g
	}
	from := 0.0
	for _, to := range depths {
		g.Rows = append(g.Rows, []sheet.Cell{sheet.V(to), sheet.V(to - from)})
		from = to
	}
	return g
}
