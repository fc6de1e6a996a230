// Package cone turns the readings of one drill into the setting of a swing
// fixture that grinds the point wanted, or a setting into the point it grinds,
// and says what each of the setting's knobs does. The geometry is point's.
package cone

import (
	"math"

	"evenlip/internal/command"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Command is evenlip cone.
var Command = command.Of[Result]{Info: command.Info{
	Name: "cone", Safety: &command.AtWheel, Group: "grinder", Short: "setting of a swing fixture for a point, or the point it grinds",
	Long: `A fixture that swings the drill about an axis grinds each flank to a cone. Any
of three sets of readings will do, beside size and web:
  point-angle, clearance, chisel-angle, semi-angle   gives the setting
  point-angle, clearance, semi-angle, vertex         gives the rest of both
  semi-angle, axis-angle, axis-offset, vertex        gives the point
A heel-drop over its heel-turn does for the clearance, a chisel-length for the
web or the chisel-angle.
It also tells how the flank stands at the heel (over --heel-turn), how a hand
on a pedestal grinder swings the drill to the same point and what its faults
do, what a change of each does, what a thicker web makes of it, and what flat
facets would give instead. A wish out of reach of the others is refused, with
what to give up and by how much.`,
	Examples: `  evenlip cone --size 10mm --web 1.5mm --point-angle 118 --clearance 12 --chisel-angle 126.5 --semi-angle 30
  evenlip cone --size 10mm --web 1.5mm --point-angle 118 --clearance 12 --semi-angle 30 --vertex 4.808mm
  evenlip cone --size 10mm --web 1.5mm --semi-angle 30 --axis-angle 29.28 --axis-offset 1.264mm --vertex 4.808mm`,
	Readings: []drill.Reading{drill.Size, drill.Material, drill.Web, drill.PointAngle, drill.Clearance, drill.HeelDrop, drill.HeelTurn,
		drill.ChiselAngle, drill.ChiselLength, drill.SemiAngle, drill.Vertex, drill.AxisAngle, drill.AxisOffset},
}, Cannot: Check, Compute: Compute, Figures: Figures, Rest: Rest, Declares: declares, Screen: (*Result).screen}

const degree = math.Pi / 180

// basis says what the point and its setting are worked out from.
type basis uint8

const (
	fromChisel  basis = iota // point, chisel and semi-angle: the setting is wanted
	fromVertex               // point, semi-angle and vertex: the rest is wanted
	fromSetting              // the whole setting: the point is wanted
)

// Result is a cone-ground point and the setting that grinds it.
type Result struct {
	judge.Result
	Held [limits]sheet.Held

	basis   basis
	wish    point.Wanted  // of the setting alone: size, web and semi-angle
	setting point.Setting // given
	cone    point.Cone
	made    bool  // there is a cone
	err     error // why there is none, where everything was read

	// What was not read and is taken.
	webTaken, pointTaken, clearanceTaken, semiTaken bool
}

// The limits that the point is held against.
const (
	_ sheet.Limit = iota
	clearanceLimit
	chiselLimit
	ratioLimit
	limits
)

// Compute works out the point and the setting from whichever of the two the
// readings of d give.
func Compute(d *drill.Drill) Result {
	r := Result{Result: judge.Compute(d), basis: basisOf(d)}
	r.wish = point.Wanted{D: r.Drill.D, Web: r.Chisel.Web, HalfAngle: r.Point.Wanted / 2, Clearance: r.Clearance.Corner(), SemiAngle: d.Value(drill.SemiAngle)}
	r.setting = point.Setting{SemiAngle: r.wish.SemiAngle, AxisAngle: d.Value(drill.AxisAngle), Offset: d.Value(drill.AxisOffset), Vertex: d.Value(drill.Vertex)}
	r.wish.Web, r.webTaken = judge.OrUsual(r.wish.Web, handbook.NewWeb(r.Drill.D))
	if r.basis != fromSetting {
		r.pointTaken = !r.Point.Asked
		r.wish.Clearance, r.clearanceTaken = judge.OrUsual(r.wish.Clearance, r.Clearance.Aim)
		r.wish.SemiAngle, r.semiTaken = judge.OrUsual(r.wish.SemiAngle, usualSemiAngle(r.wish.HalfAngle))
	}
	if wanted(&r) == "" {
		r.cone, r.err = r.grind()
		r.made = r.err == nil
	}
	r.hold()
	return r
}

func basisOf(d *drill.Drill) basis {
	switch {
	case d.Has(drill.AxisAngle) || d.Has(drill.AxisOffset):
		return fromSetting
	case d.Has(drill.Vertex):
		return fromVertex
	}
	return fromChisel
}

// usualSemiAngle is the middle of what is possible: from nothing to about the
// half angle.
func usualSemiAngle(halfAngle float64) float64 { return halfAngle / 2 }

// wanted names the readings without which there is no cone.
func wanted(r *Result) string {
	size := sheet.Need{Reading: "size", Value: r.Drill.D}
	switch r.basis {
	case fromChisel:
		return sheet.Wanted(size, sheet.Need{Reading: "chisel-angle or vertex", Value: r.Chisel.Acute})
	case fromVertex:
		return sheet.Wanted(size)
	}
	return sheet.Wanted(size, sheet.Need{Reading: "semi-angle", Value: r.setting.SemiAngle}, sheet.Need{Reading: "axis-angle", Value: r.setting.AxisAngle},
		sheet.Need{Reading: "axis-offset", Value: r.setting.Offset}, sheet.Need{Reading: "vertex", Value: r.setting.Vertex})
}

// grind makes the cone.
func (r *Result) grind() (point.Cone, error) {
	w := r.wish
	if r.semiTaken {
		w.SemiAngle = usualSemiAngle(w.HalfAngle)
	}
	switch r.basis {
	case fromChisel:
		return w.WithChisel(r.Chisel.Acute)
	case fromVertex:
		return w.WithVertex(r.setting.Vertex)
	}
	return r.setting.Point(w.D, w.Web)
}

// hold decides every limit. Without a cone nothing is held against any.
func (r *Result) hold() {
	unknown := handbook.Band{Low: math.NaN(), High: math.NaN()}
	put := func(l sheet.Limit, v float64, band *handbook.Band) {
		if !r.made {
			band = &unknown
		}
		r.Held[l] = sheet.Held{Value: v, Band: *band}
	}
	put(clearanceLimit, r.of(clearance), &r.Clearance.Recommended)
	put(chiselLimit, point.Obtuse(r.of(point.Cone.Chisel)), r.Limit(judge.ChiselAngleLimit))
	put(ratioLimit, r.of(point.Cone.ChiselLength)/r.Drill.D, r.Limit(judge.ChiselRatioLimit))
}

// of is a number of the cone, NaN where there is none.
func (r *Result) of(number func(point.Cone) float64) float64 {
	if !r.made {
		return math.NaN()
	}
	return number(r.cone)
}

// Figures puts the figures of r into s.
func Figures(r *Result, s *sheet.Sheet) {
	sheet.Put(s, r, r.Held[:], &letters, &settingFigures, &axisFigures, &pointFigures, &heelFigures, &handFigures, &facetFigures)
}

// Rest adds the lists and the remarks.
func Rest(r *Result, s *sheet.Sheet) {
	if r.made {
		s.Grids = append(s.Grids, r.knobs(), r.thickerWebs(), r.byHand())
		r.remarks(s)
	}
	if sheet.Known(r.Drill.D) {
		r.assumptions(s)
	}
}

// remarks tells what is to be known of the cone.
func (r *Result) remarks(s *sheet.Sheet) {
	if turn := heelTurn(r); !sheet.Known(heelDrop(r)) {
		s.Find("heel-gone", sheet.Note, "{} behind the corner this cone leaves no metal: the heel is ground away before; --heel-turn looks nearer the lip", quantity.Rad(turn))
	}
	if least, flat := r.Limit(judge.ChiselAngleLimit).Low, point.Obtuse(r.of(facetChisel)); flat < least {
		s.Find("second-facet", sheet.Note, "one flat facet of this clearance leaves the chisel at {}, under {}: a flat-ground point needs the second facet",
			quantity.Rad(flat), quantity.Rad(least))
	}
	if chord, tangent := r.cone.Chisel(), r.cone.ChiselTangent(); math.Abs(tangent-chord) > degree {
		s.Find("chisel-curved", sheet.Note, "a cone leaves the chisel slightly curved: {} corner to corner, which a protractor reads, and {} at the axis",
			quantity.Rad(point.Obtuse(chord)), quantity.Rad(math.Pi-tangent))
	}
}

// assumptions says what was taken for want of a reading.
func (r *Result) assumptions(s *sheet.Sheet) {
	if r.webTaken {
		s.Find("web-assumed", sheet.Note, "no web was read: {} is taken, as on a new drill", quantity.MM(r.wish.Web))
		s.Extra = append(s.Extra, handbook.NewWebSource)
	}
	if r.basis == fromSetting {
		return
	}
	if r.pointTaken {
		s.Find("point-angle-assumed", sheet.Note, "no point angle was asked for: {} is taken, {}", quantity.Rad(2*r.wish.HalfAngle), quantity.Say(r.Drill.PointSource().How("as the work wants")))
	}
	if r.clearanceTaken {
		s.Find("clearance-assumed", sheet.Note, "no clearance was asked for: {} is taken, {}", quantity.Rad(r.wish.Clearance), quantity.Say(r.Clearance.Recommended.Source.How("as recommended for the size")))
	}
	r.Clearance.LesserTaken(s)
	r.Clearance.Contradiction(s)
	r.Chisel.Contradiction(s)
	if r.semiTaken {
		s.Find("semi-angle-assumed", sheet.Note, "no semi-angle was given: {} is taken; it is the one free choice, so use the fixture's own", quantity.Rad(r.wish.SemiAngle))
	}
}
