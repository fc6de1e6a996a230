package spindle

import (
	"strconv"
	"strings"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// diameters prints a depth in diameters, to a tenth.
func diameters(v float64) quantity.Arg { return quantity.Say(strconv.FormatFloat(v, 'f', 1, 64)) }

func (r *running) warn(s *sheet.Sheet) {
	if sheet.Known(r.depthRatio) {
		peck := handbook.PeckSources()
		s.Extra = append(append(s.Extra, peck[:]...), handbook.DeepFromSource())
	}
	m := r.Drill.Material
	if m != nil && !m.HasSpeed() && !r.rpmRead {
		s.Find("no-speed", sheet.Warn, "no cutting speed is published for {}: give rpm", quantity.Say(m.Title))
	}
	if r.pastPecks() {
		s.Find("hole-very-deep", sheet.Warn, "a hole of {} diameters is past the {} that pecks usually serve: deep-hole tooling is made for it; a long-series drill does it by the strokes given and with care, started in a hole that a short drill made and cleared of chips after each",
			diameters(r.depthRatio), diameters(handbook.DeepestPecked))
	} else if r.isDeep() {
		s.Find("hole-deep", sheet.Note, "a hole of {} diameters is deep: the published speed is cut by {}, the feed by {}, and the drill is withdrawn to clear the chips",
			diameters(r.depthRatio), quantity.Of(quantity.Share, r.deep.Speed), quantity.Of(quantity.Share, r.deep.Feed))
	} else if r.deep.Speed > 0 {
		s.Find("speed-cut", sheet.Note, "at {} diameters the published speed is cut by {} and the feed by {}, as published from {} diameters on",
			diameters(r.depthRatio), quantity.Of(quantity.Share, r.deep.Speed), quantity.Of(quantity.Share, r.deep.Feed), diameters(handbook.PeckFirst))
	}
	if r.rubs() {
		s.Find("flank-rubs", sheet.Stop, "at {} the flank rubs behind the lip: feed less or grind more clearance", quantity.Of(quantity.Feed, r.feed))
	}
	r.settingFindings(s)
	r.shankFindings(s)
	r.fluteFindings(s)
	judge.Hardens(s, m)
	if m != nil {
		if burns, source := handbook.Burns(m); burns {
			s.Find("fire", sheet.Warn, "chips and grinding dust of this metal burn: keep them swept up and dry, no water on a fire; ask for the shop's own rules before you start")
			s.Extra = append(s.Extra, source)
		}
	}
	s.Find("break-through", sheet.Note, "ease the feed where the drill breaks through")
}

// settingFindings says what a speed or a feed outside the published ones does.
func (r *running) settingFindings(s *sheet.Sheet) {
	if r.tooFast() {
		s.Find("speed-high", sheet.Warn, "{} is over the {} {} for this work{}: the outer corners wear fast", quantity.Of(quantity.Cutting, r.speed), quantity.Say(strings.TrimPrefix(r.topSpeed.Source.Whose(), "the ")), quantity.Of(quantity.Cutting, r.topHere), quantity.Say(r.atDepth()))
	}
	switch {
	case r.feedHeavy():
		s.Find("feed-heavy", sheet.Warn, "{} is far over the published {} for this diameter: lips chip and the web may split", quantity.Of(quantity.Feed, r.feed), quantity.Of(quantity.Feed, r.feedBand.High))
	case r.feedRead && r.feed > r.feedBand.High*(1+1e-9):
		s.Find("feed-above-published", sheet.Note, "{} is above the published {} for this diameter, by less than half of that", quantity.Of(quantity.Feed, r.feed), quantity.Of(quantity.Feed, r.feedBand.High))
	case r.feedLight():
		s.Find("feed-light", sheet.Warn, "{} is under the published {} for this diameter: the lips rub more than they cut", quantity.Of(quantity.Feed, r.feed), quantity.Of(quantity.Feed, r.feedBand.Low))
	}
}

// atDepth says that a speed is the one for a hole so deep.
func (r *running) atDepth() string {
	if r.deep.Speed > 0 {
		return " in a hole so deep"
	}
	return ""
}

// isDeep reports whether the hole is one for a high helix.
func (r *running) isDeep() bool { return r.depthRatio > handbook.DeepFrom*(1+1e-9) }

// pastPecks reports whether the hole is deeper than pecks usually serve.
func (r *running) pastPecks() bool { return r.depthRatio > handbook.DeepestPecked*(1+1e-9) }

// rubs reports whether the feed leaves no clearance somewhere along the lip.
func (r *running) rubs() bool { return r.Clearance.Working <= 0 || r.Clearance.Least <= 0 }

// tooFast, feedHeavy and feedLight report what is wrong with a setting read.
func (r *running) tooFast() bool   { return r.rpmRead && r.rpm > r.topRpm.High*(1+1e-9) }
func (r *running) feedHeavy() bool { return r.feedRead && r.feed > r.feedServes.High*(1+1e-9) }
func (r *running) feedLight() bool { return r.feedRead && r.feed < r.feedBand.Low*(1-1e-9) }
