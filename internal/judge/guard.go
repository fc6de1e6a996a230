package judge

import (
	"slices"

	"evenlip/internal/drill"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Guard takes back what the gauges cannot bear out, once every figure of s has
// its uncertainty: a reason counts only where a figure behind it is outside its
// limit over its whole spread, and fit only where every figure is within over
// its whole spread (guard bands in the way of ISO 14253-1). Where a heavier reason
// is in doubt, the lighter one that it stood before counts. What cannot be told is
// said, with the reading to take better.
func Guard(s *sheet.Sheet) {
	s.EachWorked(func(f *sheet.Figure, aside bool) {
		if f.State() == sheet.Unsure && (!aside || f.Turns && f.Label != "") {
			s.Find("cannot-tell", sheet.Warn, "{}: {} is too near its limit for this gauge to tell; read {} on a finer gauge",
				quantity.Say(f.Label), quantity.Arg{Kind: f.Kind, Gauge: f.Gauge, Value: f.Value},
				quantity.Say(f.Finer()))
		}
	})
	if s.Verdict == nil {
		return
	}
	word, doubt := Undecided, false
	var sure, doubted []string
	for i := range rules {
		x := Reason(i)
		doubt = doubt || unsure(s, x.figures())
		if !slices.Contains(s.Verdict.Reasons, x.Code()) {
			continue
		}
		if !x.borneOut(s) {
			doubted = append(doubted, x.Code())
			lighter, ok := x.reveals(s)
			if !ok {
				continue
			}
			x = lighter
		}
		sure = append(sure, x.Code())
		word = max(word, x.Verdict())
	}
	if word == Undecided && s.Verdict.Word == Fit.String() && !doubt {
		word = Fit
	}
	if word.String() != s.Verdict.Word {
		s.Verdict.Finer = finer(s)
	}
	s.Verdict.Word, s.Verdict.Reasons = word.String(), sure
	s.Findings = slices.DeleteFunc(s.Findings, func(f sheet.Finding) bool { return slices.Contains(doubted, f.Code) })
	if word != Fit {
		s.Findings = slices.DeleteFunc(s.Findings, func(f sheet.Finding) bool { return f.Code == notRead })
	}
	if word == Undecided && doubt {
		s.Verdict.Missing = append(s.Verdict.Missing, finer(s)...)
	}
}

// Hinges adds to s, aside, what the verdict on d looks at, for an answer that turns
// on the verdict and has no such figures of its own.
func Hinges(d *drill.Drill, s *sheet.Sheet) {
	point := Sheet(d, false)
	s.OpenAside("What the verdict looks at")
	var met []string
	for i := range rules {
		for _, key := range Reason(i).figures() {
			if f := point.Lookup(key); f != nil && f.Limit != nil && !slices.Contains(met, key) {
				met = append(met, key)
				s.Add(*f)
			}
		}
	}
}

// finer names, once each, the readings that the verdict waits for a finer gauge to
// take.
func finer(s *sheet.Sheet) []string {
	var out []string
	for i := range rules {
		for _, key := range Reason(i).figures() {
			if f := s.Lookup(key); f != nil && f.State() == sheet.Unsure {
				if want := f.Finer() + " on a finer gauge"; !slices.Contains(out, want) {
					out = append(out, want)
				}
			}
		}
	}
	return out
}

func unsure(s *sheet.Sheet, keys []string) bool {
	return slices.ContainsFunc(keys, func(k string) bool {
		f := s.Lookup(k)
		return f != nil && f.State() == sheet.Unsure
	})
}

// borneOut reports whether one of the figures that x looks at is surely outside
// its limit; a reason that looks at none is as sure as the eye that saw it.
func (x Reason) borneOut(s *sheet.Sheet) bool {
	return len(x.figures()) == 0 || slices.ContainsFunc(x.figures(), func(k string) bool {
		f := s.Lookup(k)
		return f != nil && x.told(f.State())
	})
}

// reveals tells the lighter reason that x, which is in doubt, stood before, if
// the gauges bear that one out.
func (x Reason) reveals(s *sheet.Sheet) (lighter Reason, ok bool) {
	f, hidden := s.Verdict.Hidden[x.Code()]
	if !hidden {
		return 0, false
	}
	for lighter = range reasons {
		if lighter.Code() == f.Code && lighter.borneOut(s) {
			s.Findings = append(s.Findings, f)
			return lighter, true
		}
	}
	return 0, false
}

// told reports whether a figure in that state bears the reason out. Both
// reasons about clearance look at the same two figures, each at its own side.
func (x Reason) told(state sheet.State) bool {
	switch x {
	case ClearanceLow:
		return state == sheet.Under
	case ClearanceHigh:
		return state == sheet.Over
	}
	return state.Outside()
}

// figures are the keys of what a reason looks at.
func (x Reason) figures() []string {
	var keys []string
	for _, l := range rules[x].looks {
		for _, g := range []*sheet.Group[Result]{&PointFigures, &CornerClearance, &WorkingClearance, &ChiselEdge, &LipFigures, &WearFigures} {
			for i := range g.Figures {
				if g.Figures[i].Limit == l.at && l.at != sheet.NoLimit && l.at != CornerLimit && l.at != MarginLimit && l.at != ChipLimit {
					keys = append(keys, g.Figures[i].Key)
				}
			}
		}
	}
	return keys
}
