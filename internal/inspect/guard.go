package inspect

import (
	"slices"

	"evenlip/internal/figure"
)

// Guard takes back what the gauges cannot bear out, once every figure of s has
// its uncertainty: a reason counts only where a figure behind it is outside its
// limit over its whole spread, and fit only where every figure is within over
// its whole spread (guard bands in the way of ISO 14253-1). What cannot be told
// is said, with the reading to take better.
func Guard(s *figure.Sheet) {
	s.Each(func(f *figure.Figure) {
		if f.State() == figure.Unsure {
			s.Find("cannot-tell", figure.Warn, "{}: {} is too near its limit for this gauge to tell; take {} better",
				figure.Say(f.Label), figure.Arg{Kind: f.Kind, Gauge: f.Gauge, Value: f.Value},
				figure.Say(f.Mostly))
		}
	})
	if s.Verdict == nil {
		return
	}
	word, doubt := Undecided, false
	var sure, doubted []string
	for i := range rules {
		rule := &rules[i]
		if unsure(s, rule.figures) {
			doubt = true
		}
		if !slices.Contains(s.Verdict.Reasons, rule.code) {
			continue
		}
		if len(rule.figures) > 0 && !Reason(i).borneOut(s) {
			doubted = append(doubted, rule.code)
			continue
		}
		sure = append(sure, rule.code)
		word = max(word, rule.verdict)
	}
	if word == Undecided && s.Verdict.Word == Fit.String() && !doubt {
		word = Fit
	}
	s.Verdict.Word, s.Verdict.Reasons = word.String(), sure
	s.Findings = slices.DeleteFunc(s.Findings, func(f figure.Finding) bool { return slices.Contains(doubted, f.Code) })
	if word == Undecided && doubt {
		s.Verdict.Missing = append(s.Verdict.Missing, "finer readings, see the remarks")
	}
}

func unsure(s *figure.Sheet, keys []string) bool {
	return slices.ContainsFunc(keys, func(k string) bool {
		f := s.Lookup(k)
		return f != nil && f.State() == figure.Unsure
	})
}

func (x Reason) borneOut(s *figure.Sheet) bool {
	return slices.ContainsFunc(rules[x].figures, func(k string) bool {
		f := s.Lookup(k)
		return f != nil && x.told(f.State())
	})
}

// told reports whether a figure in that state bears the reason out. Both
// reasons about clearance look at the same two figures, each at its own side.
func (x Reason) told(state figure.State) bool {
	switch x {
	case ClearanceLow:
		return state == figure.Under
	case ClearanceHigh:
		return state == figure.Over
	}
	return state.Outside()
}
