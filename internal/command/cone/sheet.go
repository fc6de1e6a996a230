package cone

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Sheet is the setting of a swing fixture, the point it grinds, what each knob
// does to it, and what flat facets would give instead.
func Sheet(d *drill.Drill, explain bool) *sheet.Sheet {
	g := grindOf(d)
	s := sheet.New("cone", explain)
	judge.Plausible(d, s)
	v := g.view()
	v.settingFigures(s)
	v.pointFigures(s)
	v.heelFigures(s)
	v.handFigures(s)
	v.facetFigures(s)
	if g.made {
		s.Grids = append(s.Grids, g.knobs(), g.thickerWebs(), g.byHand())
	}
	g.assumptions(s)
	v.inShort(s)
	return s
}

// inShort is the setting, or the point that a setting given grinds.
func (v *view) inShort(s *sheet.Sheet) {
	switch {
	case !v.made:
	case v.basis == fromSetting:
		s.InShort("it grinds a point of {} with {} of clearance, the chisel edge at {}", deg(2*v.ground.HalfAngle), deg(v.ground.Clearance), deg(math.Pi-v.chord))
	default:
		s.InShort("axis angle {}, axis offset {}, vertex {}, semi-angle {}", deg(v.setting.AxisAngle), quantity.MM(v.setting.Offset), quantity.MM(v.setting.Vertex), deg(v.ground.SemiAngle))
	}
}

// view is the cone in numbers, NaN where there is none.
type view struct {
	*grind
	ground           point.Wanted
	slope, n         float64 // g and N of the geometry
	chord, tangent   float64 // chisel-edge angle, acute
	length, rake     float64
	slopeX, slopeY   float64 // of the flank on the axis
	facet, low, high float64 // chisel of one facet; second facets
	facetAngle       float64
}

func (g *grind) view() *view {
	nan := math.NaN()
	v := &view{grind: g, ground: point.Wanted{D: nan, Web: nan, HalfAngle: nan, Clearance: nan, SemiAngle: nan}, slope: nan, n: nan,
		chord: nan, tangent: nan, length: nan, rake: nan, slopeX: nan, slopeY: nan, facet: nan, low: nan, high: nan, facetAngle: nan}
	if !g.made {
		g.setting = point.Setting{SemiAngle: nan, AxisAngle: nan, Offset: nan, Vertex: nan}
		return v
	}
	c := g.cone
	v.ground, v.slope = c.Point(), c.Flank().Slope()
	sin := math.Sin(v.ground.HalfAngle)
	v.n = math.Sqrt(1/(sin*sin) + v.slope*v.slope)
	v.chord, v.tangent, v.length, v.rake = c.Chisel(), c.ChiselTangent(), c.ChiselLength(), c.ChiselRake()
	v.slopeX, v.slopeY = c.Slope(0, 0)
	v.facets()
	return v
}

func (v *view) add(s *sheet.Sheet, key, label string, value float64, kind quantity.Kind, limit *handbook.Band) *sheet.Figure {
	gauge := quantity.Caliper
	if kind == quantity.Angle {
		gauge = quantity.Protractor
	}
	return s.Add(sheet.Figure{Key: key, Label: label, Value: value, Kind: kind, Gauge: gauge, Limit: limit, Wants: v.wants})
}

func deg(a float64) quantity.Arg { return quantity.Rad(a) }
func num(x float64) quantity.Arg { return quantity.Num(x) }

const given = "as read"

func (v *view) settingFigures(s *sheet.Sheet) {
	s.Open("Setting of the fixture")
	w, k, th := &v.ground, v.ground.HalfAngle, v.ground.SemiAngle
	v.add(s, "cone_semi_angle_deg", "cone semi-angle", th, quantity.Angle, nil)
	if v.taken.semiAngle {
		s.Work("own rule: the middle of what is possible", "th = k / 2", "{} / 2", deg(k))
	} else {
		s.Work(given, "th as read", "{}", deg(th))
	}
	v.add(s, "axis_angle_deg", "swing axis to drill axis", v.setting.AxisAngle, quantity.Angle, nil)
	if v.basis == fromSetting {
		s.Work(given, "phi as read", "{}", deg(v.setting.AxisAngle))
	} else {
		s.Work(judge.Geometry, "cos(phi) = cos(th) cos(k) + sin(th) / N, N = (1 / sin^2 k + g^2)^0.5, g = (tan Cl - sin b / tan k) / cos b",
			"acos(cos({}) * cos({}) + sin({}) / (1 / sin({})^2 + {}^2)^0.5)", deg(th), deg(k), deg(th), deg(k), num(v.slope))
	}
	v.add(s, "axis_offset_mm", "offset of the two axes", v.setting.Offset, quantity.Length, nil)
	if v.basis == fromSetting {
		s.Work(given, "S as read", "{}", quantity.MM(v.setting.Offset))
	} else {
		s.Work(judge.Geometry, "S = (d g sin(th) / N + (w / 2) (sin(k) cos(th) - sin(th) / (N tan(k)))) / sin(phi)",
			"({} * {} * sin({}) / {} + ({} / 2) * (sin({}) * cos({}) - sin({}) / ({} * tan({})))) / sin({})",
			quantity.MM(v.setting.Vertex), num(v.slope), deg(th), num(v.n), quantity.MM(w.Web), deg(k), deg(th), deg(th), num(v.n), deg(k), deg(v.setting.AxisAngle))
	}
	v.add(s, "vertex_distance_mm", "vertex beyond drill axis", v.setting.Vertex, quantity.Length, nil)
	v.workVertex(s)
	v.axisFigures(s)
}

// axisFigures are the swing axis as a vector, for who wants to see where the
// setting comes from; x runs along the lip, y ahead of it, z out of the point.
func (v *view) axisFigures(s *sheet.Sheet) {
	if !v.made {
		return
	}
	s.Sections = append(s.Sections, sheet.Section{Title: "Swing axis as a vector", Quiet: true})
	k, th, a, n := deg(v.ground.HalfAngle), deg(v.ground.SemiAngle), v.cone.Axis(), num(v.n)
	add := func(key, label string, value float64) {
		s.Add(sheet.Figure{Key: key, Label: label, Value: value, Kind: quantity.Number})
	}
	const sum = "a = u cos(th) - n sin(th), lip u = (sin(k), 0, -cos(k)), flank's normal n = (1 / tan(k), -g, 1) / N"
	add("axis_x", "swing axis, along the lip", a.X)
	s.Work(judge.Geometry, sum, "sin({}) * cos({}) - 1 / tan({}) / {} * sin({})", k, th, k, n, th)
	add("axis_y", "swing axis, ahead of it", a.Y)
	s.Work(judge.Geometry, sum, "0 * cos({}) + {} / {} * sin({})", th, num(v.slope), n, th)
	add("axis_z", "swing axis, out of the point", a.Z)
	s.Work(judge.Geometry, sum+"; phi = acos(-az), S = (d ay + (w / 2) ax) / (ax^2 + ay^2)^0.5", "-cos({}) * cos({}) - 1 / {} * sin({})", k, th, n, th)
}

// workVertex shows the vertex distance: with the corner of the chisel at x on
// the other lip, both it and the lip lie on the cone, which leaves d in the
// first power only.
func (v *view) workVertex(s *sheet.Sheet) {
	if v.basis != fromChisel {
		s.Work(given, "d as read", "{}", quantity.MM(v.setting.Vertex))
		return
	}
	k, th, w := v.ground.HalfAngle, v.ground.SemiAngle, v.ground.Web
	m, x := 1/math.Tan(k), point.ChiselCorner(w, v.chord)
	a := v.cone.Axis()
	b := -(x*a.X + w*a.Y + m*x*a.Z)
	s.Work(judge.Geometry, "d = (cos^2 th (x^2 / sin^2 k + w^2) - B^2) / (2 (B cos th / sin k + x cos^2 th (1 - m^2))), x = (w / 2) / tan(psi), m = 1 / tan(k), B = -(x ax + w ay + m x az), (ax, ay, az) the swing axis",
		"(cos({})^2 * ({}^2 / sin({})^2 + {}^2) - {}^2) / (2 * ({} * cos({}) / sin({}) + {} * cos({})^2 * (1 - {}^2)))",
		deg(th), fine(x), deg(k), fine(w), fine(b), fine(b), deg(th), deg(k), fine(x), deg(th), quantity.Fine(num(m)))
}

// fine is a length with digits to spare: the vertex lies where two lines all but
// cancel.
func fine(v float64) quantity.Arg { return quantity.Fine(quantity.MM(v)) }

func (v *view) pointFigures(s *sheet.Sheet) {
	s.Open("Point it grinds")
	f := v.add(s, "point_angle_deg", "point angle", 2*v.ground.HalfAngle, quantity.Angle, nil)
	f.Shop = v.taken.pointAngle && v.Drill.PointSource().OfShop()
	v.workPointAngle(s)
	var relief *handbook.Band
	if v.made {
		relief = &v.Clearance.Recommended
	}
	f = v.add(s, "lip_clearance_deg", "lip clearance, corner", v.ground.Clearance, quantity.Angle, relief)
	f.Shop = v.taken.clearance && v.Clearance.Recommended.Source.OfShop()
	v.workClearance(s)
	v.chiselFigures(s)
}

func (v *view) workPointAngle(s *sheet.Sheet) {
	switch {
	case v.taken.pointAngle:
		s.Work("what the work wants", v.Drill.PointSource().How("2k from the table"), "{}", deg(2*v.ground.HalfAngle))
	case v.basis != fromSetting:
		s.Work(given, "2k as read", "{}", deg(2*v.ground.HalfAngle))
	default:
		a, tilt := v.lean()
		s.Work(judge.Geometry, "2k = 2 (atan(tan(phi) cos(a)) + atan(tilt / cos(th))), a = asin(S / (d^2 + w^2 / 4)^0.5) - atan(w / (2 d)), tilt = (sin^2 th - sin^2 phi sin^2 a)^0.5",
			"2 * (atan(tan({}) * cos({})) + atan({} / cos({})))", deg(v.setting.AxisAngle), deg(a), num(tilt), deg(v.setting.SemiAngle))
	}
}

// lean returns the angle of the swing axis to the lip in the end view, and the
// part of the cone's opening that is left in the plane of the lip.
func (v *view) lean() (a, tilt float64) {
	st := v.setting
	a = math.Asin(st.Offset/math.Hypot(st.Vertex, v.web/2)) - math.Atan2(v.web/2, st.Vertex)
	tilt = math.Sqrt(math.Pow(math.Sin(st.SemiAngle), 2) - math.Pow(math.Sin(st.AxisAngle)*math.Sin(a), 2))
	return a, tilt
}

func (v *view) workClearance(s *sheet.Sheet) {
	switch {
	case v.taken.clearance:
		s.Work(v.Clearance.Recommended.Source.String(), v.Clearance.Recommended.Source.How("Cl from the table, by size and work"), "{}", deg(v.ground.Clearance))
	case v.basis != fromSetting && v.Clearance.FromDrop:
		v.Clearance.WorkDrop(s, math.Min(v.Clearance.Drop1, v.Clearance.Drop2), v.d)
	case v.basis != fromSetting:
		s.Work(given, "Cl as read", "{}", deg(v.ground.Clearance))
	default:
		a, tilt := v.lean()
		b, k := point.WebAngle(v.web, v.d/2), v.ground.HalfAngle
		s.Work(judge.Geometry, "tan(Cl) = g cos(b) + sin(b) / tan(k), g = sin(phi) sin(a) / (tilt sin(k)), sin(b) = w / D",
			"atan(sin({}) * sin({}) / ({} * sin({})) * cos({}) + sin({}) / tan({}))", deg(v.setting.AxisAngle), deg(a), num(tilt), deg(k), deg(b), deg(b), deg(k))
	}
}

func (v *view) chiselFigures(s *sheet.Sheet) {
	var angle, ratio *handbook.Band
	if v.made {
		angle, ratio = v.Limit(judge.ChiselAngleLimit), v.Limit(judge.ChiselRatioLimit)
	}
	w := v.ground.Web
	v.add(s, "chisel_angle_deg", "chisel-edge angle, chord", point.Obtuse(v.chord), quantity.Angle, angle)
	s.Work(judge.Geometry, "psi' = 180 - psi", "180 - {}", deg(v.chord))
	v.add(s, "chisel_angle_acute_deg", "chisel-edge angle, acute", v.chord, quantity.Angle, nil)
	if v.basis == fromChisel {
		v.Chisel.WorkAcute(s)
	} else {
		s.Work(judge.Geometry, "tan(psi) = (w / 2) / x, x the place along the lip where the other flank is as high as the lip",
			"atan(({} / 2) / {})", quantity.MM(w), quantity.MM(point.ChiselCorner(w, v.chord)))
	}
	v.add(s, "chisel_angle_axis_deg", "chisel-edge angle at axis", math.Pi-v.tangent, quantity.Angle, nil)
	s.Work(judge.Geometry, "psi' = 180 - atan(-hx / hy): the chisel runs along n1 x n2 = (-2 hy, 2 hx, 0), n1 = (-hx, -hy, 1) and n2 = (hx, hy, 1) the flanks' normals on the axis", "180 - atan({} / {})", num(-v.slopeX), num(v.slopeY))
	v.bowFigure(s)
	v.add(s, "chisel_length_mm", "chisel-edge length", v.length, quantity.Length, nil)
	s.Work(judge.Geometry, "c = w / sin(psi)", "{} / sin({})", quantity.MM(w), deg(v.chord))
	v.add(s, "chisel_ratio", "chisel-edge length / D", v.length/v.d, quantity.Number, ratio)
	s.Work(judge.Geometry, "q = c / D", "{} / {}", quantity.MM(v.length), quantity.MM(v.d))
	v.add(s, "chisel_rake_deg", "rake on the chisel at axis", v.rake, quantity.Angle, nil)
	s.Work(judge.Geometry, "gc = -atan(1 / (hx^2 + hy^2)^0.5)", "-atan(1 / ({}^2 + {}^2)^0.5)", num(v.slopeX), num(v.slopeY))
}
