package judge

import (
	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
	"evenlip/internal/uncertainty"
)

// JudgementOn returns the verdict on d that its gauges bear out. It must be the drill
// that r was computed of.
func (r *Result) JudgementOn(d *drill.Drill, g quantity.Gauges) *sheet.Verdict {
	if g == (quantity.Gauges{}) {
		return r.Judgement()
	}
	gauged := *d
	gauged.Gauged = true
	strictly := Compute(&gauged)
	v := strictly.Judgement()
	draws := uncertainty.Draws(d, g)
	verdicts := uncertainty.NewVerdicts(v)
	var drawn sheet.Verdict
	for moved := range uncertainty.Each(d, draws) {
		r := Compute(moved)
		r.drawn(&drawn)
		verdicts.Add(&drawn)
	}
	verdicts.Settle(draws)
	return v
}

// drawn makes v the verdict on a draw: with all the reasons that hold, those too that
// a heavier one stands before.
func (r *Result) drawn(v *sheet.Verdict) {
	v.Word, v.Reasons = r.Verdict.Word.String(), v.Reasons[:0]
	for i := range rules {
		if holds, _ := rules[i].holds(&r.Held); holds {
			v.Reasons = append(v.Reasons, rules[i].code)
		}
	}
}
