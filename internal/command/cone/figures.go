package cone

import (
	"math"

	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

type (
	def   = sheet.Def[Result]
	group = sheet.Group[Result]
)

// letters are the readings that the formulas start from, and steps that several of
// them take. Seen from the end, x runs along the lip, y ahead of it and z out of
// the point; the swing axis lies along (ax, ay, az).
var letters = group{Figures: []def{
	{Letter: "D", Label: "diameter", Kind: quantity.Size, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return r.Drill.D }},
	{Letter: "w", Label: "web at the point", Kind: quantity.Length, Gauge: quantity.Caliper, Fine: true, Of: "size",
		Value: func(r *Result) float64 { return r.wish.Web }, Works: func(r *Result) (work, source string) {
			switch {
			case r.webTaken:
				return sheet.AsRead, handbook.NewWebSource.String()
			case r.Chisel.WebRead:
				return sheet.AsRead, sheet.AsRead
			}
			return "c * sin(psi)", ""
		}},
	{Letter: "drop", Label: "heel drop as read", Kind: quantity.Length, Gauge: quantity.Indicator, Work: sheet.AsRead, Of: "heel-drop",
		Value: func(r *Result) float64 { return math.Min(r.Clearance.Drop1, r.Clearance.Drop2) }},
	{Letter: "k", Label: "half the point angle", Kind: quantity.Angle, Work: "A / 2", Value: func(r *Result) float64 { return r.of(halfAngle) }},
	{Letter: "b", Label: "web angle at the corner", Kind: quantity.Angle, Work: "asin(w / D)", Value: func(r *Result) float64 { return point.WebAngle(r.wish.Web, r.Drill.D/2) }},
	{Letter: "g", Label: "slope of the flank across the lip", Kind: quantity.Number, Value: func(r *Result) float64 { return r.of(slope) },
		Works: func(r *Result) (work, source string) {
			return r.settingOr("sin(phi) * sin(a) / (tilt * sin(k))", "(tan(Cl) - sin(b) / tan(k)) / cos(b)")
		}},
	{Letter: "a", Label: "swing axis to the lip, seen from the end", Kind: quantity.Angle, Work: "asin(S / sqrt(d^2 + w^2 / 4)) - atan(w / (2 * d))", Value: axisToLip},
	{Letter: "tilt", Label: "part of the cone's opening left along the lip", Kind: quantity.Number, Work: "sqrt(sin(th)^2 - sin(phi)^2 * sin(a)^2)",
		Value: func(r *Result) float64 {
			return math.Sqrt(math.Pow(math.Sin(r.setting.SemiAngle), 2) - math.Pow(math.Sin(r.setting.AxisAngle)*math.Sin(axisToLip(r)), 2))
		}},
	{Letter: "N", Label: "length of the flank's normal (1 / tan k, -g, 1)", Kind: quantity.Number, Work: "sqrt(1 / sin(k)^2 + g^2)",
		Value: func(r *Result) float64 { return math.Hypot(1/math.Sin(r.of(halfAngle)), r.of(slope)) }},
	{Letter: "x", Label: "the chisel's corner along the other lip", Kind: quantity.Length, Fine: true, Work: "w / 2 / tan(psi)",
		Value: func(r *Result) float64 { return r.of(chiselCorner) }, Read: func(r *Result) bool { return r.basis != fromChisel }},
	{Letter: "B", Label: "from the chisel's corner to the other lip's flank, along the swing axis", Kind: quantity.Length, Fine: true,
		Work: "-(x * ax + w * ay + x * az / tan(k))", Value: func(r *Result) float64 {
			return r.of(func(c point.Cone) float64 {
				x, a := chiselCorner(c), c.Axis()
				return -(x*a.X + c.Point().Web*a.Y + x*a.Z/math.Tan(halfAngle(c)))
			})
		}},
	{Letter: "hx", Label: "slope of the flank on the axis, along the lip", Kind: quantity.Number, Work: sheet.AsRead, Source: "found on the cone",
		Value: func(r *Result) float64 { return r.of(func(c point.Cone) float64 { hx, _ := c.Slope(0, 0); return hx }) }},
	{Letter: "hy", Label: "slope of the flank on the axis, ahead of the lip", Kind: quantity.Number, Work: sheet.AsRead, Source: "found on the cone",
		Value: func(r *Result) float64 { return r.of(func(c point.Cone) float64 { _, hy := c.Slope(0, 0); return hy }) }},
}}

var settingFigures = group{Title: "Setting of the fixture", Figures: []def{
	{Key: "cone_semi_angle_deg", Letter: "th", Label: "cone semi-angle", Kind: quantity.Angle, Gauge: quantity.Protractor, OfWays: wanted,
		Value: func(r *Result) float64 { return r.of(semiAngle) }, Work: "k / 2", Source: "own rule: the middle of what is possible",
		Read: func(r *Result) bool { return !r.semiTaken }},
	{Key: "axis_angle_deg", Letter: "phi", Label: "swing axis to drill axis", Kind: quantity.Angle, Gauge: quantity.Protractor, OfWays: wanted,
		Value: func(r *Result) float64 { return r.of(axisAngle) }, Work: "acos(cos(th) * cos(k) + sin(th) / N)", Read: asSet},
	{Key: "axis_offset_mm", Letter: "S", Label: "offset of the two axes", Kind: quantity.Length, Gauge: quantity.Caliper, OfWays: wanted,
		Value: func(r *Result) float64 { return r.of(func(c point.Cone) float64 { return c.Setting().Offset }) },
		Work:  "(d * g * sin(th) / N + w / 2 * (sin(k) * cos(th) - sin(th) / (N * tan(k)))) / sin(phi)", Read: asSet},
	// Lip and chisel corner lie on one cone: d comes in the first power only.
	{Key: "vertex_distance_mm", Letter: "d", Label: "vertex beyond drill axis", Kind: quantity.Length, Gauge: quantity.Caliper, OfWays: wanted,
		Value: func(r *Result) float64 { return r.of(vertex) }, Read: func(r *Result) bool { return r.basis != fromChisel },
		Work: "(cos(th)^2 * (x^2 / sin(k)^2 + w^2) - B^2) / (2 * (B * cos(th) / sin(k) + x * cos(th)^2 * (1 - 1 / tan(k)^2)))"},
}}

var axisFigures = group{Title: "Swing axis as a vector", Quiet: true, Figures: []def{
	{Key: "axis_x", Letter: "ax", Label: "swing axis, along the lip", Kind: quantity.Number, Work: "sin(k) * cos(th) - 1 / tan(k) / N * sin(th)", Source: axisSource,
		Value: func(r *Result) float64 { return r.of(func(c point.Cone) float64 { return c.Axis().X }) }},
	{Key: "axis_y", Letter: "ay", Label: "swing axis, ahead of it", Kind: quantity.Number, Work: "g / N * sin(th)", Source: axisSource,
		Value: func(r *Result) float64 { return r.of(func(c point.Cone) float64 { return c.Axis().Y }) }},
	{Key: "axis_z", Letter: "az", Label: "swing axis, out of the point", Kind: quantity.Number, Work: "-cos(k) * cos(th) - 1 / N * sin(th)", Source: axisSource,
		Value: func(r *Result) float64 { return r.of(func(c point.Cone) float64 { return c.Axis().Z }) }},
}}

const axisSource = sheet.Geometry + ": u cos(th) - n sin(th), lip u = (sin k, 0, -cos k), flank's normal n = (1 / tan k, -g, 1) / N"

var pointFigures = group{Title: "Point it grinds", Figures: []def{
	{Key: "point_angle_deg", Letter: "A", Label: "point angle", Kind: quantity.Angle, Gauge: quantity.Protractor, OfWays: wanted,
		Value: func(r *Result) float64 { return 2 * r.of(halfAngle) },
		Shop:  func(r *Result) bool { return r.pointTaken && r.Drill.PointSource().OfShop() },
		Works: func(r *Result) (work, source string) {
			if r.pointTaken {
				return sheet.AsRead, r.Drill.PointSource().String()
			}
			return r.settingOr("2 * (atan(tan(phi) * cos(a)) + atan(tilt / cos(th)))", sheet.AsRead)
		}},
	{Key: "lip_clearance_deg", Letter: "Cl", Label: "lip clearance, corner", Kind: quantity.Angle, Gauge: quantity.Protractor, OfWays: wanted,
		Value: func(r *Result) float64 { return r.of(clearance) }, Limit: clearanceLimit,
		Shop: func(r *Result) bool { return r.clearanceTaken && r.Clearance.Recommended.Source.OfShop() },
		Works: func(r *Result) (work, source string) {
			switch {
			case r.clearanceTaken:
				return sheet.AsRead, r.Clearance.Recommended.Source.String()
			case r.Clearance.FromDrop && r.basis != fromSetting:
				return "atan(drop * 360 / (pi * D * turn))", ""
			}
			return r.settingOr("atan(g * cos(b) + sin(b) / tan(k))", sheet.AsRead)
		}},
	{Key: "chisel_angle_deg", Letter: "psi'", Label: "chisel-edge angle, chord", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.Held[chiselLimit].Value }, Limit: chiselLimit, Work: "180 - psi",
		Read: func(r *Result) bool { return r.basis == fromChisel && r.Chisel.AngleRead && !r.Chisel.AcuteRead }},
	{Key: "chisel_angle_acute_deg", Letter: "psi", Label: "chisel-edge angle, acute", Kind: quantity.Angle, Gauge: quantity.Protractor, OfWays: wanted,
		Value: func(r *Result) float64 { return r.of(point.Cone.Chisel) }, Works: func(r *Result) (work, source string) {
			switch c := &r.Chisel; {
			case r.basis != fromChisel:
				return "atan(w / 2 / x)", ""
			case c.AcuteRead:
				return sheet.AsRead, sheet.AsRead
			case c.AngleRead:
				return "180 - psi'", ""
			}
			return "asin(w / c)", ""
		}},
	{Key: "chisel_angle_axis_deg", Label: "chisel-edge angle at axis", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return math.Pi - r.of(point.Cone.ChiselTangent) }, Work: "180 - atan(-hx / hy)",
		Source: sheet.Geometry + ": along n1 x n2, n1 = (-hx, -hy, 1) and n2 = (hx, hy, 1) the flanks' normals on the axis"},
	{Key: "chisel_bow_mm", Label: "chisel edge off straight", Kind: quantity.Length, Gauge: quantity.Caliper, Work: "rb * sin(abs(ab - psi))",
		Value: func(r *Result) float64 {
			return r.of(func(c point.Cone) float64 { bow, _, _ := c.ChiselBow(); return bow })
		}},
	{Letter: "rb", Label: "where it is most off straight, from the axis", Kind: quantity.Length, Work: sheet.AsRead, Source: "found along the edge",
		Value: func(r *Result) float64 {
			return r.of(func(c point.Cone) float64 { _, radius, _ := c.ChiselBow(); return radius })
		}},
	{Letter: "ab", Label: "that place's angle to the lip", Kind: quantity.Angle, Fine: true, Work: sheet.AsRead, Source: "found along the edge",
		Value: func(r *Result) float64 {
			return r.of(func(c point.Cone) float64 { _, _, angle := c.ChiselBow(); return angle })
		}},
	{Key: "chisel_length_mm", Letter: "c", Label: "chisel-edge length", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.of(point.Cone.ChiselLength) }, Work: "w / sin(psi)",
		Read: func(r *Result) bool {
			return r.basis == fromChisel && r.Chisel.LengthRead && !(r.Chisel.WebRead && r.Chisel.AngleRead)
		}},
	{Key: "chisel_ratio", Label: "chisel-edge length / D", Kind: quantity.Number,
		Value: func(r *Result) float64 { return r.Held[ratioLimit].Value }, Limit: ratioLimit, Work: "c / D"},
	{Key: "chisel_rake_deg", Label: "rake on the chisel at axis", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.of(point.Cone.ChiselRake) }, Work: "-atan(1 / sqrt(hx^2 + hy^2))"},
}}

var heelFigures = group{Title: "At the heel", Figures: []def{
	{Key: "heel_turn_deg", Letter: "turn", Label: "heel behind the corner by", Kind: quantity.Angle, Gauge: quantity.Protractor, Value: heelTurn,
		Works: func(r *Result) (work, source string) {
			if sheet.Known(r.Clearance.Turn) {
				return sheet.AsRead, sheet.AsRead
			}
			return "180 - flute", handbook.BodySource.String()
		}},
	{Letter: "flute", Label: "angle that a flute takes up", Kind: quantity.Angle, Work: sheet.AsRead, Value: func(*Result) float64 { return handbook.FluteAngle }},
	{Letter: "zh", Label: "height of the flank over the heel", Kind: quantity.Length, Work: sheet.AsRead, Source: "found on the cone",
		Value: func(r *Result) float64 {
			return -point.AlongLip(r.Drill.D/2, r.wish.Web)/math.Tan(r.of(halfAngle)) - heelDrop(r)
		}},
	{Key: "heel_drop_mm", Letter: "drop'", Label: "flank dropped there by", Kind: quantity.Length, Gauge: quantity.Caliper, Value: heelDrop,
		Work: "-sqrt(D^2 - w^2) / 2 / tan(k) - zh"},
	{Key: "heel_clearance_deg", Label: "clearance over that turn", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 {
			return r.of(func(c point.Cone) float64 { return c.HeelClearance(r.Drill.D/2, heelTurn(r)) })
		}, Work: "atan(drop' * 360 / (pi * D * turn))"},
}}

var handFigures = group{Title: "By hand on a pedestal", Figures: []def{
	{Key: "hand_face_angle_deg", Label: "to wheel face, from above", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.of(func(c point.Cone) float64 { return c.Hand().Plan }) }, Work: "atan(1 / (N * cos(k)))"},
	{Key: "hand_shank_low_deg", Label: "shank low, lip on wheel", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value:  func(r *Result) float64 { return r.of(func(c point.Cone) float64 { return c.Hand().ShankLow }) },
		Work:   "asin(g * sin(k) / N)",
		Source: sheet.Geometry + ": the part of the drill axis along the upright in the wheel's face"},
	{Key: "hand_drop_per_roll", Label: "drop, per degree of roll", Kind: quantity.Number,
		Value: func(r *Result) float64 { return r.of(func(c point.Cone) float64 { return c.Hand().Drop }) }, Work: "tan(phi)"},
	{Key: "hand_pivot_mm", Label: "pivot behind the point", Kind: quantity.Length, Gauge: quantity.Caliper,
		Value: func(r *Result) float64 { return r.of(func(c point.Cone) float64 { return c.Hand().Pivot }) },
		Work:  "-(d / tan(k) + az * (d * ax - w / 2 * ay) / (ax^2 + ay^2))"},
}}

var facetFigures = group{Title: "With flat facets instead", Figures: []def{
	{Key: "facet_angle_deg", Label: "facet across the lip", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return math.Atan(r.of(slope)) }, Work: "atan(g)"},
	{Key: "facet_chisel_angle_deg", Label: "chisel angle, one facet", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return point.Obtuse(r.of(facetChisel)) }, Work: "180 - atan(1 / (g * tan(k)))",
		Source: sheet.Geometry + ": along n1 x n2, n1 = (1 / tan k, -g, 1) and n2 = (-1 / tan k, g, 1) the facets' normals"},
	{Letter: "least", Label: "least chisel-edge angle", Kind: quantity.Angle, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.Limit(judge.ChiselAngleLimit).Low }},
	{Letter: "most", Label: "largest chisel-edge angle", Kind: quantity.Angle, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.Limit(judge.ChiselAngleLimit).High }},
	{Key: "second_facet_low_deg", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: "atan(2 / (tan(180 - least) * tan(k)) - g)",
		LabelOf: func(r *Result) string { return secondFor(r.Limit(judge.ChiselAngleLimit).Low) },
		Value:   func(r *Result) float64 { return r.secondFacet(r.Limit(judge.ChiselAngleLimit).Low) }},
	{Key: "second_facet_high_deg", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: "atan(2 / (tan(180 - most) * tan(k)) - g)",
		LabelOf: func(r *Result) string { return secondFor(r.Limit(judge.ChiselAngleLimit).High) },
		Value:   func(r *Result) float64 { return r.secondFacet(r.Limit(judge.ChiselAngleLimit).High) }},
}}

// settingOr is the working of what follows from a setting, and else by another
// formula or as read.
func (r *Result) settingOr(formula, otherwise string) (work, source string) {
	switch {
	case r.basis == fromSetting:
		return formula, ""
	case otherwise == sheet.AsRead:
		return sheet.AsRead, sheet.AsRead
	}
	return otherwise, ""
}

// asSet reports whether the setting is given.
func asSet(r *Result) bool { return r.basis == fromSetting }

// Numbers of a cone.

func halfAngle(c point.Cone) float64    { return c.Point().HalfAngle }
func clearance(c point.Cone) float64    { return c.Point().Clearance }
func semiAngle(c point.Cone) float64    { return c.Point().SemiAngle }
func axisAngle(c point.Cone) float64    { return c.Setting().AxisAngle }
func vertex(c point.Cone) float64       { return c.Setting().Vertex }
func slope(c point.Cone) float64        { return c.Flank().Slope() }
func chiselCorner(c point.Cone) float64 { return point.ChiselCorner(c.Point().Web, c.Chisel()) }
func facetChisel(c point.Cone) float64  { return point.FacetChisel(slope(c), halfAngle(c)) }

// axisToLip is the angle of the swing axis of a setting to the lip in the end view.
func axisToLip(r *Result) float64 {
	st, half := r.setting, r.wish.Web/2
	return math.Asin(st.Offset/math.Hypot(st.Vertex, half)) - math.Atan2(half, st.Vertex)
}

// heelTurn is how far behind the corner the heel is looked at: as asked, or at
// the end of a usual land.
func heelTurn(r *Result) float64 {
	if turn := r.Clearance.Turn; sheet.Known(turn) {
		return turn
	}
	return math.Pi - handbook.FluteAngle
}

func heelDrop(r *Result) float64 {
	return r.of(func(c point.Cone) float64 { return c.Drop(r.Drill.D/2, heelTurn(r)) })
}

// secondFacet is the angle of the second facet for a chisel-edge angle; NaN where
// one facet gives as much already.
func (r *Result) secondFacet(chisel float64) float64 {
	return r.of(func(c point.Cone) float64 {
		return math.Atan(point.SecondFacet(slope(c), halfAngle(c), chisel))
	})
}

func secondFor(chisel float64) string {
	return "second facet for " + quantity.Format{}.Number(quantity.Angle, quantity.Protractor, chisel) + "°"
}
