package plan

import (
	"slices"
	"strings"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/uncertainty"
)

// Finer says what to read again, and how, before it is sure what is to be done with d,
// whose plan is p; "" where it is sure.
func (p *Plan) Finer(d *drill.Drill, g quantity.Gauges) string {
	draws := uncertainty.Draws(d, g)
	var tally uncertainty.Tally
	for moved := range uncertainty.Each(d, draws) {
		same := 0.0
		if other := Of(moved); other.Do == p.Do {
			same = 1
		}
		tally.Add([]float64{same}, nil)
	}
	if tally.Mean(0) >= uncertainty.Tells {
		return ""
	}
	return tally.Finer(0, draws)
}

// Settle says where the gauges cannot tell what is to be done, once
// [uncertainty.Tell] was over s: nobody takes metal off, or throws a drill away, for
// a reading that a finer gauge may put on the other side of a limit.
func Settle(s *sheet.Sheet) {
	do := s.Lookup("plan")
	if do == nil || do.Doubt == nil || !do.Doubt.Unsure {
		return
	}
	s.Unfit = true
	s.Findings = slices.DeleteFunc(s.Findings, func(f sheet.Finding) bool { return f.Severity == sheet.Stop })
	s.Find("plan-in-doubt", sheet.Warn, "these gauges cannot tell whether to {} it: read {} before metal comes off",
		quantity.Say(strings.Join(do.Doubt.Words, " or to ")), quantity.Say(do.Doubt.Finer))
	s.InShort("these gauges cannot tell whether to {} it: read {}",
		quantity.Say(strings.Join(do.Doubt.Words, " or to ")), quantity.Say(do.Doubt.Finer))
}
