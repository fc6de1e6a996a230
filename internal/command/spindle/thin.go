package spindle

import (
	"math"

	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// thinning is a thick web on its way to a target.
type thinning struct {
	*work
	cutting.Thinning
	known    bool
	leastWeb handbook.Band
	ratio    handbook.Band
}

// Thin is the sheet of thinning a thick web back to a target.
func Thin(d *drill.Drill, explain bool) *sheet.Sheet {
	t := thinningOf(workOf(d))
	s := sheet.New("thin", explain)
	judge.Plausible(d, s)
	s.Open("The point now")
	t.before(s)
	s.Open("Thinned")
	t.target(s)
	t.after(s)
	t.thrusts(s)
	t.assumptions(s)
	if t.known {
		t.edgeAssumption(s)
		t.ratioAssumptions(s)
		t.warn(s)
		t.answer(s)
	}
	return s
}

// answer says what to leave, unless a warning says not to.
func (t *thinning) answer(s *sheet.Sheet) {
	web, notch := quantity.MM(t.WebTarget), quantity.MM(t.NotchDepth)
	switch {
	case t.spent():
		s.InShort("retire the drill: a web of {} of the diameter is more than thinning can answer", num(t.edge.web/t.Drill.D))
	case !t.Needed:
		s.InShort("take nothing off: the web is thin enough for that")
	case t.CoreWeak(handbook.LeastWebRatio):
		s.InShort("do not thin so far: a web of {} is too weak a core", web)
	case t.short():
		s.InShort("leave {} of web, a notch {} deep along each lip, and that by machine", web, notch)
	default:
		s.InShort("leave {} of web, a notch {} deep along each lip", web, notch)
	}
}

// spent reports whether the web is thicker than thinning can answer.
func (t *thinning) spent() bool {
	return t.edge.web/t.Drill.D > t.Drill.Book.WebLimit().High*(1+1e-9)
}

// short reports whether the chisel edge would be a split point's.
func (t *thinning) short() bool { return t.RatioAfter < handbook.LeastChiselRatio*(1-1e-9) }

func thinningOf(w *work) *thinning {
	nan := math.NaN()
	sources := handbook.ThinningSources()
	t := &thinning{work: w, Thinning: cutting.Thinning{WebTarget: nan, NotchDepth: nan, ChiselBefore: nan, ChiselAfter: nan,
		RatioBefore: nan, RatioAfter: nan, WebRatio: nan, ThrustRatio: nan},
		leastWeb: handbook.Band{Low: handbook.LeastWebRatio, High: math.Inf(1), Source: sources[0]}, ratio: *w.Limit(judge.ChiselRatioLimit)}
	if w.edge.from == asNew || !sheet.Known(w.Drill.D) {
		return t
	}
	if out, err := w.thin(); err == nil {
		t.Thinning, t.known = out, true
	}
	return t
}

// thick is the point in cutting's words.
func (w *work) thick() cutting.Thick {
	return cutting.Thick{D: w.Drill.D, Web: w.edge.web, ChiselAngle: w.edge.acute, Feed: w.Drill.Feed}
}

// thin thins to the target that was asked for, else to a new drill's chisel
// edge, as the plan of a regrind does.
func (w *work) thin() (cutting.Thinning, error) {
	t := w.thick()
	switch {
	case w.d.Has(drill.ToChiselRatio):
		return t.ToRatio(w.d.Value(drill.ToChiselRatio))
	case w.d.Has(drill.ToWeb):
		return t.ToWeb(w.d.Value(drill.ToWeb))
	case w.d.Has(drill.ToThrust):
		return t.ToThrust(min(w.thrustShare(), 1))
	}
	return t.ToRatio(handbook.NewChiselRatio(w.Drill.D))
}

// thrustShare is the thrust wanted over the present one.
func (w *work) thrustShare() float64 { return w.d.Value(drill.ToThrust) / w.thrustNow() }

// thrustNow is the thrust of the point as its web and angle make it.
func (w *work) thrustNow() float64 {
	return w.with(cutting.FactorsOf(point.ChiselLength(w.edge.web, w.edge.acute) / w.Drill.D)).Thrust
}

// wants names what the thinning still wants.
func (t *thinning) wants() string {
	web := math.NaN()
	if t.edge.from != asNew {
		web = t.edge.web
	}
	out := sheet.Wanted(sheet.Need{Reading: "size", Value: t.Drill.D}, sheet.Need{Reading: "web or chisel-length", Value: web})
	if out == "" && t.d.Has(drill.ToThrust) && !t.known {
		return t.work.wants()
	}
	return out
}

func (t *thinning) length(s *sheet.Sheet, key, label string, v float64) {
	s.Add(sheet.Figure{Key: key, Label: label, Value: v, Kind: quantity.Length, Gauge: quantity.Caliper, Wants: t.wants()})
}

func (t *thinning) before(s *sheet.Sheet) {
	e := &t.edge
	web := e.web
	if !t.known {
		web = math.NaN()
	}
	t.length(s, "web_mm", "web", web)
	if t.Chisel.WebRead {
		s.Work("as read", "w as read", "{}", quantity.MM(web))
	} else {
		s.Work(judge.Geometry, "w = c sin(psi)", "{} * sin({})", quantity.MM(e.length), quantity.Rad(e.acute))
	}
	t.length(s, "chisel_length_mm", "chisel-edge length", t.ChiselBefore)
	s.Work(judge.Geometry, "c = w / sin(psi)", "{} / sin({})", quantity.MM(web), quantity.Rad(e.acute))
	s.Add(sheet.Figure{Key: "chisel_ratio", Label: "chisel-edge length / D", Value: t.RatioBefore, Kind: quantity.Number, Wants: t.wants()})
	s.Work(judge.Geometry, "q = c / D", "{} / {}", quantity.MM(t.ChiselBefore), quantity.MM(t.Drill.D))
	d := t.Drill.D
	s.Add(sheet.Figure{Key: "new_web_mm", Label: "a new drill's web", Value: handbook.NewWeb(d), Kind: quantity.Length, Gauge: quantity.Caliper,
		Wants: sheet.Wanted(sheet.Need{Reading: "size", Value: d})})
	t.workNewWeb(s)
}

// workNewWeb leaves the working of a new drill's web.
func (t *thinning) workNewWeb(s *sheet.Sheet) {
	d := t.Drill.D
	s.Work(handbook.NewWebSource().String(), "w0 = 0.12 D x^(-0.245), x = D in inches, from 1/8 to 1", "0.12 * {} * {}^(-0.245)",
		quantity.MM(d), num(math.Min(math.Max(d/handbook.InchMM, 0.125), 1)))
}

func (t *thinning) target(s *sheet.Sheet) {
	d := t.Drill.D
	t.length(s, "web_target_mm", "web to leave", t.WebTarget)
	switch {
	case !t.known:
	case !t.Needed:
		s.Work(judge.Geometry, "w as it is: it meets the target", "{}", quantity.MM(t.WebTarget))
	case t.d.AsNew(drill.ToWeb):
		t.workNewWeb(s)
	case t.d.Has(drill.ToWeb):
		s.Work("as asked for", "w' as asked for", "{}", quantity.MM(t.WebTarget))
	case t.d.Has(drill.ToChiselRatio):
		s.Work(judge.Geometry, "w' = q' D sin(psi), q' as asked for", "{} * {} * sin({})", num(t.d.Value(drill.ToChiselRatio)), quantity.MM(d), quantity.Rad(t.edge.acute))
	case t.d.Has(drill.ToThrust):
		s.Work(judge.Geometry+"; q' by halving until the thrust ratio is the one wanted", "w' = q' D sin(psi)", "{} * {} * sin({})",
			num(t.RatioAfter), quantity.MM(d), quantity.Rad(t.edge.acute))
	default:
		s.Work(newChiselSource()+"; "+judge.Geometry, "w' = q' D sin(psi), q' = max(0.18, w0 / D / sin(60)), w0 a new drill's web", "max({}, {} / {} / sin(60)) * {} * sin({})",
			num(handbook.StandardChiselRatio), quantity.MM(handbook.NewWeb(d)), quantity.MM(d), quantity.MM(d), quantity.Rad(t.edge.acute))
	}
	t.length(s, "notch_depth_mm", "notch depth along each lip", t.NotchDepth)
	s.Work(judge.Geometry, "notch = (w - w') / 2, square to the lip seen from the end", "({} - {}) / 2", quantity.MM(t.edge.web), quantity.MM(t.WebTarget))
}

func (t *thinning) after(s *sheet.Sheet) {
	d := t.Drill.D
	t.length(s, "chisel_length_after_mm", "chisel-edge length", t.ChiselAfter)
	s.Work(judge.Geometry, "c' = w' / sin(psi)", "{} / sin({})", quantity.MM(t.WebTarget), quantity.Rad(t.edge.acute))
	f := sheet.Figure{Key: "chisel_ratio_after", Label: "chisel-edge length / D", Value: t.RatioAfter, Kind: quantity.Number, Wants: t.wants()}
	g := sheet.Figure{Key: "web_ratio_after", Label: "web / D", Value: t.WebRatio, Kind: quantity.Number, Wants: t.wants()}
	if t.known {
		f.Limit, g.Limit = &t.ratio, &t.leastWeb
	}
	s.Add(f)
	s.Work(judge.Geometry, "q' = c' / D", "{} / {}", quantity.MM(t.ChiselAfter), quantity.MM(d))
	s.Add(g)
	s.Work(judge.Geometry, "w' / D", "{} / {}", quantity.MM(t.WebTarget), quantity.MM(d))
	form, source, ok := handbook.FormOfChisel(t.RatioAfter, t.Needed)
	word := ""
	if ok {
		word = form.Letter
		s.Extra = append(s.Extra, source, form.Chisel.Source)
		s.Find("point-form", sheet.Note, "by its chisel edge this is nearest to form {} of DIN 1412: {}", quantity.Say(form.Letter), quantity.Say(form.Title))
	}
	s.Add(sheet.Figure{Key: "point_form", Label: "form of DIN 1412, nearest", Word: word, Value: math.NaN(), Kind: quantity.Word, Wants: t.wants()})
}

func (t *thinning) thrusts(s *sheet.Sheet) {
	s.Add(sheet.Figure{Key: "thrust_ratio", Label: "thrust, after / before", Value: t.ThrustRatio, Kind: quantity.Number, Wants: t.wants()})
	judge.WorkThrustRatio(s, t.Drill.D, t.Drill.Feed, t.RatioAfter, t.RatioBefore)
	wants := t.wants()
	if wants == "" {
		wants = t.work.wants()
	}
	for _, f := range [...]struct {
		key, label string
		ratio      float64
	}{{"thrust_before_n", "thrust before", t.RatioBefore}, {"thrust_after_n", "thrust after", t.RatioAfter}} {
		factors := cutting.FactorsOf(f.ratio)
		s.Add(sheet.Figure{Key: f.key, Label: f.label, Value: t.with(factors).Thrust, Kind: quantity.Force, Wants: wants})
		workThrust(s, &t.load, factors)
	}
}

// warn says what the target means for the point.
func (t *thinning) warn(s *sheet.Sheet) {
	if a, limit := t.Chisel.Angle, t.Limit(judge.ChiselAngleLimit); a < limit.Low-1e-9 || a > limit.High+1e-9 {
		s.Find("chisel-angle-first", sheet.Warn, "the chisel edge lies at {}, outside {} to {}, and its length hangs on that: grind the point right first, and measure again before thinning",
			quantity.Rad(a), quantity.Rad(limit.Low), quantity.Rad(limit.High))
	}
	shortest := handbook.ThinningSources()[1]
	switch {
	case !t.Needed:
		s.Find("thin-enough", sheet.Note, "the web, {}, is no thicker than what was asked for would leave: nothing comes off", quantity.MM(t.edge.web))
	case t.CoreWeak(handbook.LeastWebRatio):
		s.Find("core-weak", sheet.Stop, "a web of {} is {} of the diameter: too weak a core, the point splits", quantity.MM(t.WebTarget), num(t.WebRatio))
	case t.short():
		s.Find("chisel-short", sheet.Warn, "a chisel edge of {} of the diameter is a split point's: for a machine to grind, not for the hand", num(t.RatioAfter))
		s.Extra = append(s.Extra, shortest)
	case !t.spent():
		s.Find("both-sides", sheet.Note, "take the same off both sides, and no more of the lip than the notch: uneven thinning walks and cuts oversize")
	}
	if limit := t.Limit(judge.ChiselRatioLimit); t.Needed && limit.Holds(t.RatioBefore) {
		s.Find("thinning-can-wait", sheet.Note, "as it is the chisel edge is within its limit, {} of the diameter: thinning can wait", num(limit.High))
	}
	if t.spent() {
		s.Find("web-spent", sheet.Warn, "the web is {} of the diameter: more than thinning can answer", num(t.edge.web/t.Drill.D))
	}
}
