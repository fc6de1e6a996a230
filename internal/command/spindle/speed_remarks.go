package spindle

import (
	"strconv"
	"strings"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

func (r *running) rest(s *sheet.Sheet) {
	s.Cautions = cautions
	s.Grids = append(s.Grids, r.pecks())
	switch {
	case r.edge.from != asNew:
		r.edgeAssumption(s, true)
		r.loadAssumptions(s)
	case sheet.Known(r.force.Thrust):
		s.Find("chisel-assumed", sheet.Note, "for the shank's load a new drill's chisel edge of {} is taken: the torque hangs little on it", quantity.MM(r.edge.length))
	}
	r.assumptions(s)
	r.driveUnused(s)
	r.Found.Clearance.LesserTaken(s)
	r.Found.Clearance.Contradiction(s)
	r.Found.Point.WantedUnused(s)
	m := r.Found.Drill.Material
	if m != nil && !m.HasSpeed() && !r.rpmRead {
		s.Find("no-speed", sheet.Warn, "no cutting speed is published for {}: give rpm", quantity.Say(m.Title))
	}
	r.depthRemarks(s)
	if r.rubs() {
		s.Find("flank-rubs", sheet.Stop, "at {} the flank rubs behind the lip: feed less or grind more clearance", r.feed())
	}
	r.settingRemarks(s)
	r.shankRemarks(s)
	r.fluteRemarks(s)
	judge.Hardens(s, m)
	judge.Burns(s, m)
	s.Find("break-through", sheet.Note, "ease the feed where the drill breaks through")
}

// diameters prints a depth in diameters, to a tenth.
func diameters(v float64) quantity.Arg { return quantity.Say(strconv.FormatFloat(v, 'f', 1, 64)) }

// turns is the spindle speed: as read, or to set.
func (r *running) turns() quantity.Arg {
	a := quantity.Of(quantity.Rpm, r.load.Rpm)
	if !r.rpmRead {
		a.Gauge = quantity.Setting
	}
	return a
}

func (r *running) feed() quantity.Arg { return quantity.Of(quantity.Feed, r.load.Feed) }

// depthRemarks says what the depth takes off speed and feed, and how far pecks serve.
func (r *running) depthRemarks(s *sheet.Sheet) {
	if !sheet.Known(r.depthRatio) {
		return
	}
	s.Extra = append(s.Extra, handbook.PeckFirstSource, handbook.PeckNextSource, handbook.PeckShrinkSource, handbook.DeepFromSource)
	depth, speed, feed := diameters(r.depthRatio), quantity.Of(quantity.Share, r.cut.Speed), quantity.Of(quantity.Share, r.cut.Feed)
	switch {
	case r.is(depthLimit):
		s.Find("hole-very-deep", sheet.Warn, "a hole of {} diameters is past the {} that pecks usually serve: deep-hole tooling is made for it; a long-series drill does it by the strokes given and with care, started in a hole that a short drill made and cleared of chips after each",
			depth, diameters(handbook.DeepestPecked))
	case r.is(deepLimit):
		s.Find("hole-deep", sheet.Note, "a hole of {} diameters is deep: the published speed is cut by {}, the feed by {}, and the drill is withdrawn to clear the chips", depth, speed, feed)
	case r.cut.Speed > 0:
		s.Find("speed-cut", sheet.Note, "at {} diameters the published speed is cut by {} and the feed by {}, as published from {} diameters on", depth, speed, feed, diameters(handbook.PeckFirst))
	}
}

// settingRemarks says what a speed or a feed outside the published ones does.
func (r *running) settingRemarks(s *sheet.Sheet) {
	if r.tooFast() {
		deep := ""
		if r.cut.Speed > 0 {
			deep = " in a hole so deep"
		}
		s.Find("speed-high", sheet.Warn, "{} is over the {} {} for this work{}: the outer corners wear fast", quantity.Of(quantity.Cutting, r.speed),
			quantity.Say(strings.TrimPrefix(r.published.Source.Whose(), "the ")), quantity.Of(quantity.Cutting, r.top), quantity.Say(deep))
	}
	low, high := quantity.Of(quantity.Feed, r.row.Low), quantity.Of(quantity.Feed, r.row.High)
	switch {
	case r.state(feedLimit) == sheet.Over:
		s.Find("feed-heavy", sheet.Warn, "{} is far over the published {} for this diameter: lips chip and the web may split", r.feed(), high)
	case r.state(publishedFeedLimit) == sheet.Over:
		s.Find("feed-above-published", sheet.Note, "{} is above the published {} for this diameter, by less than half of that", r.feed(), high)
	case r.state(feedLimit) == sheet.Under:
		s.Find("feed-light", sheet.Warn, "{} is under the published {} for this diameter: the lips rub more than they cut", r.feed(), low)
	}
}

// shankShare is the part of what the shank carries that the torque takes.
func (r *running) shankShare() quantity.Arg {
	return quantity.Of(quantity.Share, r.held[shankLimit].Value/handbook.ShankStress)
}

// shankRemarks says how the drill is held.
func (r *running) shankRemarks(s *sheet.Sheet) {
	d, shank := r.load.D, quantity.MM(r.shank)
	if r.is(shankLimit) {
		s.Find("shank-overloaded", sheet.Stop, "the shank of {} is twisted to {} of what it carries: a lighter feed, a pilot hole, or a shank of {} or more",
			shank, r.shankShare(), quantity.MM(r.leastShank()))
	}
	most := handbook.ParallelShankMetric
	if r.inch() {
		most = handbook.ParallelShankInch
	}
	if !(d > most*(1+1e-9)) {
		return
	}
	s.Extra = append(s.Extra, handbook.ParallelShankSource)
	number, source, ok := handbook.MorseOf(d, r.inch())
	const reduced = "a shank reduced to {} lets a drill chuck hold this drill, but it carries only the torque of its own section"
	switch {
	case r.shank < d && r.state(shankLimit) == sheet.Within:
		s.Find("shank-reduced", sheet.Note, reduced+": this feed takes {} of that", shank, r.shankShare())
	case r.shank < d:
		s.Find("shank-reduced", sheet.Note, reduced, shank)
	case ok:
		s.Find("morse-taper", sheet.Note, "over {} a drill is usually held by a Morse taper, here No. {}", quantity.MM(most), quantity.Say(strconv.Itoa(number)))
		s.Extra = append(s.Extra, source)
	}
}

// fluteRemarks says which flutes serve.
func (r *running) fluteRemarks(s *sheet.Sheet) {
	m := r.Found.Drill.Material
	s.Extra = append(s.Extra, handbook.FluteSource)
	_, high, ok := handbook.Helix(r.load.D)
	from, to := quantity.Rad(high.Low), quantity.Rad(high.High)
	switch deep := r.is(deepLimit); {
	case m != nil && m.StraightFlutes:
		if !(r.helix <= straightEnough) {
			r.Found.DigsIn(s)
		}
	case deep && ok:
		s.Find("high-helix", sheet.Note, "a hole this deep clears its chips best with a high helix, {} to {} at this diameter", from, to)
		s.Extra = append(s.Extra, high.Source)
	case m != nil && m.PowderyChips && !deep:
		s.Find("powdery-chips", sheet.Note, "the chips of {} are powdery: where they pack, a high helix, {} to {} at this diameter, carries them out", quantity.Say(m.Title), from, to)
		s.Extra = append(s.Extra, high.Source)
	}
	if flute := &r.Found.Held[judge.FluteLimit]; flute.Outside() {
		s.Findings = append(s.Findings, r.Found.Finding(judge.FluteShort))
		s.Extra = append(s.Extra, flute.Source)
	}
}
