package plan

import (
	"slices"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Finer names the readings to take on a finer gauge before it is sure what is to be
// done, once [Guard] was over s; none where it is.
func Finer(s *sheet.Sheet) []string {
	do := s.Lookup("plan")
	if do == nil || !do.Either {
		return nil
	}
	var out []string
	s.EachWorked(func(f *sheet.Figure, _ bool) {
		if !f.Turns || f.Label == "" {
			return
		}
		if want := f.Finer() + " on a finer gauge"; !slices.Contains(out, want) {
			out = append(out, want)
		}
	})
	return out
}

// Guard says where the gauges cannot tell what is to be done, once every figure of s
// has its uncertainty: nobody takes metal off, or throws a drill away, for a reading
// that a finer gauge may put on the other side of a limit.
func Guard(s *sheet.Sheet) {
	do := s.Lookup("plan")
	if do == nil || !do.Either {
		return
	}
	s.Find("plan-in-doubt", sheet.Warn, "these gauges cannot tell whether to {} it: read again before metal comes off", quantity.Say(do.Word))
	s.InDoubt = len(s.Doubted) > 0
	s.Findings = slices.DeleteFunc(s.Findings, func(f sheet.Finding) bool {
		return slices.ContainsFunc(s.Doubted, func(doubted sheet.Finding) bool { return doubted.Code == f.Code })
	})
}
