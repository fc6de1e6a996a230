package wheel

import (
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// screen says whether the wheel is within its marking: never that it is safe, for no
// figure sees a crack.
func (r *Result) screen(s *sheet.Sheet) *sheet.Screen {
	scr := &sheet.Screen{About: s.Drill, Told: "rest-gap-wide tongue-gap-wide wheel-too-fast wheel-over-common marking-not-read"}
	if r.worn {
		scr.About += " worn to " + quantity.Format{System: system(r), Screen: true}.Text(quantity.Length, quantity.Caliper, r.Now)
	}
	fast := r.Held[rpmLimit].Outside()
	rest, tongue := &r.Held[restLimit], &r.Held[tongueLimit]
	allowed := quantity.Of(quantity.Rpm, r.AllowedRpm)
	switch {
	case fast && r.marked, rest.Outside(), tongue.Outside():
		scr.Verdict = "DO NOT START"
	case !r.marked:
		scr.Verdict = "DO NOT START"
	case !sheet.Known(r.Rpm, r.AllowedRpm):
		scr.Head = quantity.Sayf("NO SPEED TO JUDGE")
	default:
		scr.Head = quantity.Sayf("WITHIN ITS MARKING")
	}
	switch {
	case !r.marked && fast:
		scr.Item(quantity.Sayf("marking not read"), quantity.Sayf("common wheels allow {}, it turns at {}: read it", allowed, quantity.Of(quantity.Rpm, r.Rpm)))
	case !r.marked:
		scr.Item(quantity.Sayf("marking not read"), quantity.Sayf("read it: a wheel without a marking is not run"))
	case fast:
		scr.Item(quantity.Sayf("too fast for its marking"), quantity.Sayf("fit one marked {} or more", quantity.Of(quantity.Rpm, r.Rpm)))
	}
	restMost, tongueMost := "3 mm", "6 mm"
	if system(r) == quantity.Inch {
		restMost, tongueMost = "1/8 in", "1/4 in"
	}
	gap(scr, "rest", rest, restMost)
	gap(scr, "tongue", tongue, tongueMost)
	if scr.Verdict == "" {
		scr.Say("Figures do not see a crack: go through these first.")
		scr.Say("[ ] rang clear before mounting    [ ] flanges alike, a third across")
		scr.Say("[ ] guard on, eyes protected      [ ] nothing loose, nobody in its plane")
	}
	scr.Show(s.Row("rim speed now", "surface_speed_mps"))
	scr.Show(s.Row("spindle", "wheel_rpm"))
	scr.Show(s.Row("rest to wheel", "rest_gap_mm"))
	scr.Show(s.Row("tongue to wheel", "tongue_gap_mm"))
	if r.worn && r.Kept < 1 {
		scr.Note("note", "a worn wheel is not sped up; rest and tongue follow it down")
	}
	return scr
}

// gap says what is wrong with a gap, or that it was not read.
func gap(scr *sheet.Screen, what string, held *sheet.Held, most string) {
	switch {
	case held.Outside():
		scr.Item(quantity.Sayf(what+" {} off the wheel", quantity.MM(held.Value)), quantity.Sayf("set it within "+most+", wheel stopped, clamped"))
	case !sheet.Known(held.Value):
		scr.Item(quantity.Sayf(what+" not measured"), quantity.Sayf("within "+most+" of the wheel"))
	}
}

// system is the units that the wheel was read in.
func system(r *Result) quantity.System {
	for _, v := range r.asRead {
		return v.System
	}
	return quantity.Metric
}
