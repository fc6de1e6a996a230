package spindle

import (
	"evenlip/internal/drill"
	"evenlip/internal/fault"
	"evenlip/internal/quantity"
)

// cannot returns everything about the readings of a drill at work that cannot be,
// beyond what the catalogue finds: a web that at the angle taken for it makes a chisel
// edge longer than the drill is wide; two targets of thinning at once; a thrust that no
// thinning reaches.
func cannot(d *drill.Drill) fault.List {
	var found fault.List
	w := workOf(d)
	if e := &w.edge; e.from == angleAssumed && e.length >= w.load.D {
		found = append(found, d.Refuse(drill.Web, "is it in the unit that was meant?", "{} cannot be: the chisel edge would be {} long on a {} drill",
			quantity.MM(e.web), quantity.MM(e.length), quantity.Of(quantity.Size, w.load.D)))
	}
	var targets []drill.Reading
	for _, r := range [...]drill.Reading{drill.ToChiselRatio, drill.ToWeb, drill.ToThrust} {
		if d.Has(r) {
			targets = append(targets, r)
		}
	}
	if len(targets) > 1 {
		found = append(found, d.Refuse(targets[1], "give one of chisel-ratio, to-web, thrust", "{} is given too: one target at a time", quantity.Say("--"+targets[0].String())))
	}
	if len(found) > 0 || w.edge.from == asNew || !d.Has(drill.ToThrust) {
		return found
	}
	if least, now := w.thick().LeastThrust(), w.madeThrust(); d.Value(drill.ToThrust)/now <= least {
		found = append(found, d.Refuse(drill.ToThrust, "feed less, or pilot the hole", "thinning cannot reach it: the lips alone take {}", quantity.Of(quantity.Force, least*now)))
	}
	return found
}
