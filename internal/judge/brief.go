package judge

import (
	"math"
	"slices"

	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Brief tells a verdict in a few words, for a list: what is wrong with the drill, each
// with what is allowed in brackets and what decides the verdict first, or what is still
// to be read. Of a drill that is retired the other reasons are only counted.
func (r *Result) Brief(v *sheet.Verdict) []quantity.Text {
	if v.Word == "" {
		return r.unsaid(v)
	}
	deciding, others := ruled(v)
	if v.Word != Retire.String() {
		return r.allowing(append(deciding, others...))
	}
	out := r.allowing(deciding)
	switch n := len(others); {
	case n == 1:
		out = append(out, quantity.Sayf("and 1 more reason"))
	case n > 1:
		out = append(out, quantity.Sayf("and {} more reasons", quantity.Of(quantity.Count, float64(n))))
	}
	return out
}

// Deciding is what Brief tells of the reasons that decide the verdict.
func (r *Result) Deciding(v *sheet.Verdict) []quantity.Text {
	deciding, _ := ruled(v)
	return r.allowing(deciding)
}

// unsaid is what is to be read before there can be a verdict.
func (r *Result) unsaid(v *sheet.Verdict) []quantity.Text {
	var out []quantity.Text
	if v.Finer != "" {
		out = append(out, quantity.Sayf("read {}", quantity.Say(v.Finer)))
	}
	for _, x := range r.Verdict.Missing.unread() {
		out = append(out, quantity.Sayf(x.name))
	}
	return out
}

// allowing is what is wrong, with the limits that it breaks in brackets. The unit of
// lengths stands once.
func (r *Result) allowing(rules []*rule) []quantity.Text {
	var out []quantity.Text
	told := false
	for _, u := range rules {
		text := u.fault(r)
		text.Args = slices.Clone(text.Args)
		for i := range text.Args {
			if a := &text.Args[i]; a.Kind == quantity.Length {
				a.Bare, told = told, true
			}
		}
		if end, ok := r.broken(u); ok {
			text.Format += " ({})"
			text.Args = append(text.Args, end)
		}
		out = append(out, text)
	}
	return out
}

// broken is the end of the limit that a rule's figure is past, as end tells it.
func (r *Result) broken(u *rule) (end quantity.Arg, ok bool) {
	for _, l := range u.looks {
		if state := r.Held[l.at].State(); l.at != sheet.NoLimit && (state.On(l.side) || state.Near(l.side)) {
			return r.end(l.at, state)
		}
	}
	return end, false
}

// end is the end of a limit that a state is past, in what its figure is measured in;
// not ok where none at all is allowed.
func (r *Result) end(l sheet.Limit, state sheet.State) (end quantity.Arg, ok bool) {
	band := r.Limit(l)
	v := band.High
	if state == sheet.Under || state == sheet.NearLow {
		v = band.Low
	}
	v = math.Abs(v)
	switch l {
	case PointAngleLimit, AngleDifferenceLimit, ClearanceDifferenceLimit, Clearance1Limit, Clearance2Limit, ChiselAngleLimit:
		end = quantity.Rad(v)
	case ChiselRatioLimit, WebLimit, WebSpentLimit:
		end = quantity.MM(v * r.Drill.D)
	case WorkingLimit, LeastWorkingLimit: // more than nothing
		return end, false
	default:
		end = quantity.MM(v)
	}
	end.Bare = true
	return end, v > 0 && !math.IsInf(v, 1)
}
