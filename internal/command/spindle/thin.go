package spindle

import (
	"math"

	"evenlip/internal/command"
	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Thin is evenlip thin.
var Thin = command.Of[thinning]{Info: command.Info{
	Name: "thin", Safety: &command.AtWheel, Short: "thinning a thick web back: how deep a notch, and what it saves",
	Long: `The notch to grind along each lip so that a chisel edge grown long comes back to
a new drill's (as regrind plans it), to a web or a chisel ratio asked for, or to
a wanted thrust; the chisel edge and the thrust after, and the point form of DIN
1412 that it is nearest to. --to-web new leaves a new drill's web.`,
	Examples: `  evenlip thin --size 12mm --web 2.6mm --chisel-angle 126
  evenlip thin --size 1/2 --web 0.11 --chisel-angle 125 --chisel-ratio 0.1
  evenlip thin --size 25mm --web 5mm --chisel-angle 125 --to-web new
  evenlip thin --size 20mm --web 4mm --chisel-angle 125 --material steel-200 --feed 0.25mm --thrust 6kN`,
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.ChiselAngle, drill.ChiselLength,
		drill.Feed, drill.FlankWear, drill.WearFactor, drill.ToWeb, drill.ToChiselRatio, drill.ToThrust},
}, Cannot: cannot, Compute: thinningOf, Figures: (*thinning).figures, Rest: (*thinning).rest, Screen: (*thinning).screen}

// thinning is a thick web on its way to a target.
type thinning struct {
	work
	cutting.Thinning
	known  bool
	target target
}

// target is what a web is thinned to.
type target uint8

const (
	toNewEdge target = iota
	toRatio
	toWeb
	toNewWeb
	toThrust
)

func targetOf(d *drill.Drill) target {
	switch {
	case d.Has(drill.ToChiselRatio):
		return toRatio
	case d.AsNew(drill.ToWeb):
		return toNewWeb
	case d.Has(drill.ToWeb):
		return toWeb
	case d.Has(drill.ToThrust):
		return toThrust
	}
	return toNewEdge
}

func thinningOf(d *drill.Drill) thinning {
	t := thinning{work: workOf(d), target: targetOf(d)}
	t.Thinning = t.thinTo(d)
	t.known = sheet.Known(t.WebTarget)
	short := *t.Found.Limit(judge.ChiselRatioLimit)
	core := handbook.Band{Low: handbook.LeastWebRatio, High: math.Inf(1), Source: handbook.LeastWebSource}
	split := handbook.Band{Low: handbook.LeastChiselRatio, High: math.Inf(1), Source: handbook.LeastChiselSource}
	if !t.known {
		short.Low, short.High, core.Low, core.High = math.NaN(), math.NaN(), math.NaN(), math.NaN()
	}
	t.hold(chiselLimit, t.RatioBefore, short)
	t.hold(ratioAfterLimit, t.RatioAfter, short)
	t.hold(coreLimit, t.WebRatio, core)
	t.hold(splitLimit, t.RatioAfter, split)
	t.hold(spentLimit, t.edge.web/t.load.D, *t.Found.Limit(judge.WebSpentLimit))
	return t
}

// thinTo thins to the target that was asked for, else to a new drill's chisel
// edge, as the plan of a regrind does.
func (t *thinning) thinTo(d *drill.Drill) cutting.Thinning {
	thick := t.thick()
	if t.edge.from == asNew { // there is nothing to thin
		thick.Web = math.NaN()
	}
	switch t.target {
	case toRatio:
		return thick.ToRatio(d.Value(drill.ToChiselRatio))
	case toWeb, toNewWeb:
		return thick.ToWeb(d.Value(drill.ToWeb))
	case toThrust:
		return thick.ToThrust(min(d.Value(drill.ToThrust)/t.madeThrust(), 1))
	}
	return thick.ToRatio(t.newRatio())
}

// thick is the point in cutting's words.
func (w *work) thick() cutting.Thick {
	return cutting.Thick{D: w.load.D, Web: w.edge.web, ChiselAngle: w.edge.acute, Feed: w.load.Feed, System: w.load.System}
}

// madeThrust is the thrust of the point as its web and angle make it.
func (w *work) madeThrust() float64 {
	return w.at(point.ChiselLength(w.edge.web, w.edge.acute) / w.load.D).Thrust
}

type thinDef = sheet.Def[thinning]

// missing names what the thinning still wants.
func (t *thinning) missing() string {
	web := math.NaN()
	if t.edge.from != asNew {
		web = t.edge.web
	}
	out := sheet.Wanted(sheet.Need{Reading: "size", Value: t.load.D}, sheet.Need{Reading: "web or chisel-length", Value: web})
	if out == "" && t.target == toThrust && !t.known {
		return noForce
	}
	return out
}

func (t *thinning) figures(s *sheet.Sheet) {
	t.letters(s, &factors)
	sheet.Put(s, t, t.held[:], &pointNow, &thinned)
}

var pointNow = sheet.Group[thinning]{Title: "The point now", Figures: []thinDef{
	{Key: "web_mm", Label: "web", Kind: quantity.Length, Gauge: quantity.Caliper, OfWays: (*thinning).missing, Work: "w",
		Read: func(t *thinning) bool { return t.Found.Chisel.WebRead },
		Value: func(t *thinning) float64 {
			if !t.known {
				return math.NaN()
			}
			return t.edge.web
		}},
	{Key: "chisel_length_mm", Letter: "cb", Label: "chisel-edge length", Kind: quantity.Length, Gauge: quantity.Caliper, OfWays: (*thinning).missing,
		Value: func(t *thinning) float64 { return t.ChiselBefore }, Work: "w / sin(psi)"},
	{Key: "chisel_ratio", Letter: "qb", Label: "chisel-edge length / D", Kind: quantity.Number, OfWays: (*thinning).missing,
		Value: func(t *thinning) float64 { return t.RatioBefore }, Work: "cb / D"},
	{Key: "new_web_mm", Label: "a new drill's web", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(t *thinning) float64 { return handbook.NewWeb(t.load.D) }, Work: "w0"},
}}

var thinned = sheet.Group[thinning]{Title: "Thinned", Figures: []thinDef{
	{Letter: "qt", Label: "chisel edge / D to leave", Kind: quantity.Number, Value: func(t *thinning) float64 { return t.RatioAfter },
		Works: func(t *thinning) (work, source string) {
			switch t.target {
			case toRatio:
				return sheet.AsRead, "as asked for"
			case toThrust:
				return sheet.AsRead, "by halving, until the thrust is the one wanted"
			}
			return "q0", ""
		}},
	{Key: "web_target_mm", Letter: "wt", Label: "web to leave", Kind: quantity.Length, Gauge: quantity.Caliper, OfWays: (*thinning).missing,
		Value: func(t *thinning) float64 { return t.WebTarget },
		Works: func(t *thinning) (work, source string) {
			switch {
			case !t.Needed:
				return "w", "it meets the target"
			case t.target == toNewWeb:
				return "w0", handbook.NewWebSource.String()
			case t.target == toWeb:
				return sheet.AsRead, "as asked for"
			}
			return "qt * D * sin(psi)", ""
		}},
	{Key: "notch_depth_mm", Label: "notch depth along each lip", Kind: quantity.Length, Gauge: quantity.Caliper, OfWays: (*thinning).missing,
		Value: func(t *thinning) float64 { return t.NotchDepth }, Work: "(w - wt) / 2", Source: judge.Geometry + ": square to the lip, seen from the end"},
	{Key: "chisel_length_after_mm", Letter: "ca", Label: "chisel-edge length", Kind: quantity.Length, Gauge: quantity.Caliper, OfWays: (*thinning).missing,
		Value: func(t *thinning) float64 { return t.ChiselAfter }, Work: "wt / sin(psi)"},
	{Key: "chisel_ratio_after", Letter: "qa", Label: "chisel-edge length / D", Kind: quantity.Number, Limit: ratioAfterLimit, OfWays: (*thinning).missing,
		Value: func(t *thinning) float64 { return t.RatioAfter }, Work: "ca / D"},
	{Key: "web_ratio_after", Label: "web / D", Kind: quantity.Number, Limit: coreLimit, OfWays: (*thinning).missing,
		Value: func(t *thinning) float64 { return t.WebRatio }, Work: "wt / D"},
	{Key: "point_form", Label: "form of DIN 1412, nearest", Kind: quantity.Word, OfWays: (*thinning).missing,
		Word: func(t *thinning) string {
			form, _, _ := handbook.FormOfChisel(t.RatioAfter, t.Needed)
			return form.Letter
		}},
	{Letter: "Bb", Label: "factor B before", Kind: quantity.Number, Work: "(1 - qb) / (1 + qb)^0.2 + 2.2 * qb^0.8", Source: judge.ForceSource,
		Value: func(t *thinning) float64 { return cutting.FactorsOf(t.RatioBefore).B }},
	{Letter: "Ba", Label: "factor B after", Kind: quantity.Number, Work: "(1 - qa) / (1 + qa)^0.2 + 2.2 * qa^0.8", Source: judge.ForceSource,
		Value: func(t *thinning) float64 { return cutting.FactorsOf(t.RatioAfter).B }},
	{Key: "thrust_ratio", Label: "thrust, after / before", Kind: quantity.Number, OfWays: (*thinning).missing,
		Value: func(t *thinning) float64 { return t.ThrustRatio },
		Work:  "(uB * Ba + uJ * qa^2) / (uB * Bb + uJ * qb^2)", Source: judge.ForceSource},
	{Key: "thrust_before_n", Label: "thrust before", Kind: quantity.Force, OfWays: (*thinning).missing,
		Value: func(t *thinning) float64 { return t.at(t.RatioBefore).Thrust }, Work: "TB * Bb + TJ * qb^2", Source: judge.ForceSource},
	{Key: "thrust_after_n", Label: "thrust after", Kind: quantity.Force, OfWays: (*thinning).missing,
		Value: func(t *thinning) float64 { return t.at(t.RatioAfter).Thrust }, Work: "TB * Ba + TJ * qa^2", Source: judge.ForceSource},
}}

// is reports whether the thinning breaks a limit.
func (t *thinning) is(l sheet.Limit) bool { return t.held[l].Outside() }

func (t *thinning) rest(s *sheet.Sheet) {
	if form, source, ok := handbook.FormOfChisel(t.RatioAfter, t.Needed); ok {
		s.Extra = append(s.Extra, source, form.Chisel.Source)
		s.Find("point-form", sheet.Note, "by its chisel edge this is nearest to form {} of DIN 1412: {}", quantity.Say(form.Letter), quantity.Say(form.Title))
	}
	t.assumptions(s)
	if !t.known {
		return
	}
	t.edgeAssumption(s, false)
	t.comparisonAssumptions(s)
	t.remarks(s)
}

// remarks says what the target means for the point.
func (t *thinning) remarks(s *sheet.Sheet) {
	if a := &t.Found.Held[judge.ChiselAngleLimit]; a.Outside() {
		s.Find("chisel-angle-first", sheet.Warn, "the chisel edge lies at {}, outside {} to {}, and its length depends on that: grind the point right first, and measure again before thinning",
			quantity.Rad(a.Value), quantity.Rad(a.Low), quantity.Rad(a.High))
	}
	switch {
	case !t.Needed:
		s.Find("thin-enough", sheet.Note, "the web, {}, is no thicker than what was asked for would leave: nothing comes off", quantity.MM(t.edge.web))
	case t.is(coreLimit):
		s.Find("core-weak", sheet.Stop, "a web of {} is {} of the diameter: too weak a core, the point splits", quantity.MM(t.WebTarget), quantity.Num(t.WebRatio))
	case t.is(splitLimit):
		s.Find("chisel-short", sheet.Warn, "a chisel edge of {} of the diameter is a split point's: for a machine to grind, not for the hand", quantity.Num(t.RatioAfter))
		s.Extra = append(s.Extra, t.held[splitLimit].Source)
	case !t.is(spentLimit):
		s.Find("both-sides", sheet.Note, "take the same off both sides, and no more of the lip than the notch: uneven thinning walks and cuts oversize")
	}
	if now := &t.held[chiselLimit]; t.Needed && now.State() == sheet.Within {
		s.Find("thinning-can-wait", sheet.Note, "as it is the chisel edge is within its limit, {} of the diameter: thinning can wait", quantity.Num(now.High))
	}
	if spent := &t.held[spentLimit]; spent.Outside() {
		s.Find("web-spent", sheet.Warn, "the web is {} of the diameter: more than thinning can answer", quantity.Num(spent.Value))
	}
}
