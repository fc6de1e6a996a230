// Package cone turns the readings of one drill into the setting of a swing
// fixture that grinds the point wanted, or a setting into the point it grinds,
// and says what each of the setting's knobs does. The geometry is point's.
package cone

import (
	"errors"
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/sheet"
)

// basis says what the point and its setting are worked out from.
type basis uint8

const (
	fromChisel  basis = iota // point, chisel and semi-angle: the setting is wanted
	fromVertex               // point, semi-angle and vertex: the rest is wanted
	fromSetting              // the whole setting: the point is wanted
)

// grind is a cone-ground point and the setting that grinds it.
type grind struct {
	judge.Result
	basis   basis
	d       float64
	web     float64
	wish    point.Wanted  // fromChisel, fromVertex
	chisel  float64       // acute, wanted
	vertex  float64       // wanted
	setting point.Setting // given, or the one found
	cone    point.Cone
	taken   taken
	made    bool   // there is a cone
	wants   string // what is still missing
	err     error  // why there is no cone
}

// taken says what was not read and is therefore assumed.
type taken struct{ web, pointAngle, clearance, semiAngle bool }

func grindOf(d *drill.Drill) *grind {
	g := &grind{Result: judge.Compute(d), basis: basisOf(d)}
	g.d, g.web = g.Drill.D, g.Chisel.Web
	if math.IsNaN(g.web) {
		g.web, g.taken.web = handbook.NewWeb(g.d), true
	}
	g.wish = g.wishOf(d)
	g.chisel, g.vertex = g.Chisel.Acute, d.Value(drill.Vertex)
	g.setting = point.Setting{SemiAngle: g.wish.SemiAngle, AxisAngle: d.Value(drill.AxisAngle), Offset: d.Value(drill.AxisOffset), Vertex: g.vertex}
	g.wants = g.missing()
	if g.wants != "" {
		return g
	}
	g.cone, g.err = g.make()
	if g.made = g.err == nil; g.made {
		g.setting = g.cone.Setting()
	}
	return g
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

// wishOf returns the point wanted; what was not read is what the work and the
// size usually want.
func (g *grind) wishOf(d *drill.Drill) point.Wanted {
	w := point.Wanted{D: g.d, Web: g.web, HalfAngle: g.Point.Wanted / 2, Clearance: g.Clearance.Corner(), SemiAngle: d.Value(drill.SemiAngle)}
	if g.basis == fromSetting {
		return w
	}
	g.taken.pointAngle = !g.Point.Asked
	if math.IsNaN(w.Clearance) {
		w.Clearance, g.taken.clearance = g.Clearance.Aim, true
	}
	if math.IsNaN(w.SemiAngle) {
		w.SemiAngle, g.taken.semiAngle = usualSemiAngle(w.HalfAngle), true
	}
	return w
}

// usualSemiAngle is the middle of what is possible: from nothing to about the
// half angle.
func usualSemiAngle(halfAngle float64) float64 { return halfAngle / 2 }

// missing names the readings without which nothing can be worked out.
func (g *grind) missing() string {
	needs := []sheet.Need{{Reading: "size", Value: g.d}}
	switch g.basis {
	case fromChisel:
		needs = append(needs, sheet.Need{Reading: "chisel-angle or vertex", Value: g.chisel})
	case fromSetting:
		needs = append(needs, sheet.Need{Reading: "semi-angle", Value: g.wish.SemiAngle}, sheet.Need{Reading: "axis-angle", Value: g.setting.AxisAngle},
			sheet.Need{Reading: "axis-offset", Value: g.setting.Offset}, sheet.Need{Reading: "vertex", Value: g.vertex})
	}
	return sheet.Wanted(needs...)
}

func (g *grind) make() (point.Cone, error) {
	switch g.basis {
	case fromChisel:
		return g.wish.WithChisel(g.chisel)
	case fromVertex:
		return g.wish.WithVertex(g.vertex)
	}
	return g.setting.Point(g.d, g.web)
}

// blamed returns the reading that an error of package point is about.
func blamed(err error, from basis) drill.Reading {
	var domain *point.DomainError
	var reach *point.UnreachableError
	name := ""
	if errors.As(err, &domain) {
		name = domain.Quantity
	} else if errors.As(err, &reach) {
		name = reach.Wish
	}
	switch name {
	case "cone semi-angle":
		return drill.SemiAngle
	case "axis angle":
		return drill.AxisAngle
	case "axis offset":
		return drill.AxisOffset
	case "vertex distance":
		return drill.Vertex
	case "chisel-edge angle":
		return drill.ChiselAngle
	case "web thickness":
		return drill.Web
	case "half point angle":
		if from != fromSetting {
			return drill.PointAngle
		}
		return drill.AxisAngle
	case "lip clearance":
		if from != fromSetting {
			return drill.Clearance
		}
		return drill.AxisOffset
	}
	return drill.Size
}

// why returns what stands against the wish, without its number.
func why(err error) string {
	var domain *point.DomainError
	var reach *point.UnreachableError
	if errors.As(err, &domain) {
		return domain.Why
	}
	if errors.As(err, &reach) {
		return reach.Why
	}
	return err.Error()
}
