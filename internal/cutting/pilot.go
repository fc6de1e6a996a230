package cutting

import "cmp"

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
