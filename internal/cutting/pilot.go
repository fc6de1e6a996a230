package cutting

import "cmp"

// PilotBand returns the pilot for a following drill, mm: at least its web, so
// that the chisel edge meets no metal, and no more than its chisel-edge length.
// A wider one leaves the lips alone at work and lets the drill pull itself in.
// A *point.DomainError is returned unless 0 < web <= chisel. Source: common
// practice (equal to the web or slightly above).
func PilotBand(web, chisel float64) (low, high float64, err error) {
	if err := cmp.Or(
		wantsPositive("web thickness", web),
		wants(chisel >= web && finite(chisel), "chisel-edge length", chisel, "cannot be less than the web thickness"),
	); err != nil {
		return 0, 0, err
	}
	return web, chisel, nil
}

// PullsIn reports whether a pilot, mm, is wider than the chisel edge, so that
// nothing holds the drill back.
func PullsIn(pilot, chisel float64) bool { return pilot > chisel }

// OverPilot is [Load.Result] over a pilot hole at least as wide as the web, mm:
// the chisel edge's part is gone, and a pilot wider than the chisel edge takes
// that much of the lips out of the cut as well. Compare its thrust with that of
// [Load.Result]. A *point.DomainError names an impossible input; the pilot must
// be above zero and less than the diameter. The lips' terms are those of
// [FactorsOverPilot]; that the chisel edge then removes nothing is common
// practice.
func (l Load) OverPilot(pilot float64) (Result, error) {
	if err := cmp.Or(
		l.chiselError(),
		wants(pilot > 0 && pilot < l.D, "pilot diameter", pilot, "must be above 0 and less than the drill's"),
	); err != nil {
		return Result{}, err
	}
	return l.With(FactorsOverPilot(max(pilot, l.Chisel) / l.D))
}
