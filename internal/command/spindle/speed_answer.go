package spindle

import (
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// answer gives speed and feed in one sentence; where they will not do, or the
// drill will not, the gravest reason stands in their place.
func (r *running) answer(s *sheet.Sheet) {
	shank, twisted := r.twisted()
	flute, short := r.fluteShort()
	wrong := r.wrongSettings()
	switch {
	case twisted:
		s.InShort("the shank is overloaded: twisted to {} of what it carries", quantity.Of(quantity.Share, shank.Share))
	case r.rubs():
		s.InShort("the flank rubs at {}: feed less or grind more clearance", quantity.Of(quantity.Feed, r.feed))
	case short:
		s.InShort("{} of flute is too short for this hole: it takes {}", quantity.MM(r.d.Value(drill.Flute)), quantity.MM(flute.Low))
	case wrong.Format != "":
		s.InShort(wrong.Format, wrong.Args...)
	case !sheet.Known(r.rpm, r.feed):
	case r.pastPecks():
		s.InShort("{}, {}; at {} diameters with a long-series drill, the strokes given and care",
			r.turns(), quantity.Of(quantity.Feed, r.feed), diameters(r.depthRatio))
	default:
		s.InShort("{}, {}", r.turns(), quantity.Of(quantity.Feed, r.feed))
	}
}

// turns is the spindle speed: as read, or to set.
func (r *running) turns() quantity.Arg {
	a := quantity.Of(quantity.Rpm, r.rpm)
	if !r.rpmRead {
		a.Gauge = quantity.Setting
	}
	return a
}

// wrongSettings says which of speed and feed as read to change, and to what.
func (r *running) wrongSettings() quantity.Text {
	var formats []string
	var args []quantity.Arg
	say := func(format string, is, may quantity.Arg) {
		formats, args = append(formats, format), append(args, is, may)
	}
	if r.tooFast() {
		say("{} is too fast: {} at most", quantity.Of(quantity.Rpm, r.rpm), quantity.Of(quantity.Rpm, r.topRpm.High))
	}
	switch {
	case r.feedHeavy():
		say("{} is far too heavy a feed: up to {} is published", quantity.Of(quantity.Feed, r.feed), quantity.Of(quantity.Feed, r.feedBand.High))
	case r.feedLight():
		say("{} is too light a feed: {} and more is published", quantity.Of(quantity.Feed, r.feed), quantity.Of(quantity.Feed, r.feedBand.Low))
	}
	return quantity.Sayf(strings.Join(formats, "; "), args...)
}
