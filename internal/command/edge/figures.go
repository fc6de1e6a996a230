package edge

import (
	"math"

	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

type (
	def   = sheet.Def[Result]
	group = sheet.Group[Result]
)

// letters are what the formulas start from, read or taken. Seen from the end, x
// runs out along the lip, y the way it moves and z out of the point.
var letters = group{Figures: []def{
	{Letter: "D", Label: "diameter", Kind: quantity.Size, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return r.Drill.D }},
	{Letter: "w", Label: "web at the point", Kind: quantity.Length, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return r.web }},
	{Letter: "k", Label: "half the point angle", Kind: quantity.Angle, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.k }},
	{Letter: "Cl", Label: "lip clearance at the outer corner", Kind: quantity.Angle, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return r.clearance }},
	{Letter: "H", Label: "lean of the face at the periphery: the helix, or none on a flattened lip", Kind: quantity.Angle, Work: sheet.AsRead, Of: "helix", Value: func(r *Result) float64 { return r.lean }},
	{Letter: "psi", Label: "chisel-edge angle, acute", Kind: quantity.Angle, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.chisel }},
	{Letter: "f", Label: "feed", Kind: quantity.Feed, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return r.Drill.Feed }},
	{Letter: "n", Label: "spindle speed", Kind: quantity.Rpm, Work: sheet.AsRead, Of: "rpm", Value: func(r *Result) float64 { return r.rpm }},
	{Letter: "p", Label: "the place, as a part of the outer radius", Kind: quantity.Number, Work: sheet.AsRead, Value: func(r *Result) float64 { return r.place }},
	{Letter: "r", Label: "radius of the place", Kind: quantity.Length, Work: "p * D / 2", Value: func(r *Result) float64 { return r.radius() }},
	{Letter: "b", Label: "web angle there", Kind: quantity.Angle, Work: "asin(min(1, w / (2 * r)))", Value: func(r *Result) float64 { return point.WebAngle(r.web, r.radius()) }},
	{Letter: "bo", Label: "web angle at the outer corner", Kind: quantity.Angle, Work: "asin(w / D)", Value: func(r *Result) float64 { return point.WebAngle(r.web, r.outer) }},
	{Letter: "dm", Label: "diameter there, mm", Kind: quantity.Number, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return 2 * r.radius() }},
	{Letter: "cm", Label: "length of the chisel edge, mm", Kind: quantity.Number, Work: sheet.AsRead, Of: "size", Value: func(r *Result) float64 { return 2 * r.inner }},
	{Letter: "V", Label: "1 m/min", Kind: quantity.Cutting, Work: sheet.AsRead, Value: func(*Result) float64 { return 1 }},
}}

const speedSource = "common practice: cutting speed is circumference times speed of turning"

// placeFigures are the angles at one place: the outer corner, which is the first
// row again, or where the working is asked for.
var placeFigures = group{Title: "At the outer corner", Quiet: true, Figures: []def{
	{Key: "corner_inclination_deg", Label: "inclination, outer corner", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.edge.Inclination(r.radius()) }, Work: "asin(sin(k) * sin(b))"},
	{Key: "corner_normal_rake_deg", Letter: "rn", Label: "normal rake, outer corner", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.edge.NormalRake(r.radius()) },
		Work:  "atan(p * tan(H) * (1 - sin(k)^2 * sin(b)^2) / (sin(k) * cos(b)) - cos(k) * tan(b))"},
	{Key: "corner_working_rake_deg", Label: "rake at feed, outer corner", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.edge.WorkingRake(r.radius(), r.Drill.Feed) },
		Work:  "-asin((hv' - uh * uv') / sqrt((hx^2 + hy^2 + 1 - uh^2) * (1 + tan(e)^2 - uv'^2)))"},
	{Letter: "uv'", Label: "lip . cutting direction with the feed", Kind: quantity.Number, Work: "uv + uz * tan(e)",
		Value: func(r *Result) float64 { v := r.vectors(); return v.Lip.Dot(v.Cutting) + v.Lip.Z*r.feedSlope() }},
	{Letter: "hv'", Label: "helix . cutting direction with the feed", Kind: quantity.Number, Work: "hv - tan(e)",
		Value: func(r *Result) float64 { v := r.vectors(); return v.Helix.Dot(v.Cutting) - r.feedSlope() }},
	{Key: "corner_normal_clearance_deg", Letter: "cn", Label: "normal clearance, outer corner", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.edge.NormalClearance(r.radius()) }, Work: "atan(g * sin(k)) + atan(cos(k) * tan(b))"},
	{Key: "corner_wedge_angle_deg", Label: "wedge angle, outer corner", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.wedge(r.radius()) }, Work: "90 - rn - cn"},
	{Key: "corner_lip_clearance_deg", Letter: "Clr", Label: "lip clearance, outer corner", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.flank.Clearance(r.radius()) }, Work: "atan(g * cos(b) + sin(b) / tan(k))",
		Shop: func(r *Result) bool { return r.clearanceTaken && r.Clearance.Recommended.Source.OfShop() }},
	{Key: "corner_feed_angle_deg", Letter: "e", Label: "feed angle, outer corner", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return point.FeedAngle(r.Drill.Feed, r.radius()) }, Work: "atan(f / (2 * pi * r))"},
	{Key: "corner_working_clearance_deg", Label: "working clearance, outer corner", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return r.flank.Working(r.radius(), r.Drill.Feed) }, Work: "Clr - e"},
	{Key: "corner_cutting_speed_m_min", Label: "cutting speed, outer corner", Kind: quantity.Cutting,
		Value: func(r *Result) float64 { return r.speed(r.radius()) }, Work: "pi * dm * n / 1000 * V", Source: speedSource,
		Shop: func(r *Result) bool { return r.rpmTaken && r.speedSource().OfShop() }},
}}

// vectorFigures are rake and clearance at the place once more, from the
// directions of lip u, helix h and cutting v: dot and cross products that a class
// can redo.
var vectorFigures = group{Title: "The corner by vectors", Quiet: true, Figures: []def{
	{Letter: "ux", Label: "lip, u = (ux, 0, uz)", Kind: quantity.Number, Work: "sin(k)", Value: func(r *Result) float64 { return r.vectors().Lip.X }},
	{Letter: "uz", Label: "lip, out of the point", Kind: quantity.Number, Work: "-cos(k)", Value: func(r *Result) float64 { return r.vectors().Lip.Z }},
	{Letter: "vx", Label: "cutting direction, v = (vx, vy, 0)", Kind: quantity.Number, Work: "-sin(b)", Value: func(r *Result) float64 { return r.vectors().Cutting.X }},
	{Letter: "vy", Label: "cutting direction, ahead", Kind: quantity.Number, Work: "cos(b)", Value: func(r *Result) float64 { return r.vectors().Cutting.Y }},
	{Letter: "hx", Label: "helix, h = (hx, hy, -1)", Kind: quantity.Number, Work: "p * tan(H) * sin(b)", Value: func(r *Result) float64 { return r.vectors().Helix.X }},
	{Letter: "hy", Label: "helix, ahead", Kind: quantity.Number, Work: "-p * tan(H) * cos(b)", Value: func(r *Result) float64 { return r.vectors().Helix.Y }},
	{Key: "vector_u_v", Letter: "uv", Label: "lip . cutting direction", Kind: quantity.Number, Work: "ux * vx", Source: sheet.Geometry + "; it is -sin of the inclination",
		Value: func(r *Result) float64 { v := r.vectors(); return v.Lip.Dot(v.Cutting) }},
	{Key: "vector_u_h", Letter: "uh", Label: "lip . helix", Kind: quantity.Number, Work: "ux * hx - uz",
		Value: func(r *Result) float64 { v := r.vectors(); return v.Lip.Dot(v.Helix) }},
	{Key: "vector_h_v", Letter: "hv", Label: "helix . cutting direction", Kind: quantity.Number, Work: "hx * vx + hy * vy",
		Value: func(r *Result) float64 { v := r.vectors(); return v.Helix.Dot(v.Cutting) }},
	{Key: "vector_m_v", Letter: "mv", Label: "rake face's normal . cutting", Kind: quantity.Number, Work: "-uz * hy * vx + (uz * hx + ux) * vy",
		Value: (*Result).rakeFace, Source: sheet.Geometry + ": m . v, m = u x h the normal of the rake face"},
	{Key: "vector_rake_deg", Label: "normal rake by vectors", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: "atan((uh * uv - hv) / mv)",
		Value: func(r *Result) float64 {
			v := r.vectors()
			return math.Atan((v.Lip.Dot(v.Helix)*v.Lip.Dot(v.Cutting) - v.Helix.Dot(v.Cutting)) / r.rakeFace())
		}, Source: sheet.Geometry + ": u . (m x v) / (m . v)"},
	{Key: "vector_g", Letter: "g", Label: "flank's rise along y, g", Kind: quantity.Number, Work: "(tan(Cl) - sin(bo) / tan(k)) / cos(bo)",
		Value: func(r *Result) float64 { return r.flank.Slope() }, Source: sheet.Geometry + "; the same all along a straight lip"},
	{Key: "vector_n_v", Letter: "nv", Label: "flank's normal . cutting", Kind: quantity.Number, Work: "-uz * vx - ux * g * vy",
		Value: func(r *Result) float64 { n, v := r.flankNormal(); return n.Dot(v) }, Source: sheet.Geometry + ": n . v, n = u x q the normal of the flank, q = (0, 1, g) across it"},
	{Key: "vector_clearance_deg", Label: "lip clearance by vectors", Kind: quantity.Angle, Gauge: quantity.Protractor, Work: "atan(-nv / ux)",
		Value: func(r *Result) float64 { n, v := r.flankNormal(); return math.Atan(-n.Dot(v) / n.Z) }},
}}

var alongFigures = group{Title: "Along the lip", Figures: []def{
	{Letter: "T", Label: "the helix at the web", Kind: quantity.Number, Work: "w / D * tan(H)", Value: func(r *Result) float64 { return r.web / r.Drill.D * math.Tan(r.lean) }},
	{Key: "rake_zero_ratio", Label: "rake is zero at r/R", Kind: quantity.Number, Work: "w / D * sqrt((sin(k) * cos(k) + T * sin(k)^2) / T)",
		Value: func(r *Result) float64 { return r.rakeZero() / r.outer }},
	{Letter: "rl", Label: "radius where the least is left", Kind: quantity.Length, Work: sheet.AsRead, Source: "found along the lip", Of: "size", Value: func(r *Result) float64 { return r.leastAt }},
	{Letter: "bl", Label: "web angle at that radius", Kind: quantity.Angle, Work: "asin(w / (2 * rl))", Value: func(r *Result) float64 { return point.WebAngle(r.web, r.leastAt) }},
	{Key: "least_working_clearance_deg", Label: "least working clearance", Kind: quantity.Angle, Gauge: quantity.Protractor, Limit: leastLimit,
		Value: func(r *Result) float64 { return r.least }, Work: "atan(g * cos(bl) + sin(bl) / tan(k)) - atan(f / (2 * pi * rl))"},
	{Key: "least_working_at_ratio", Label: "least at r/R", Kind: quantity.Number, Value: func(r *Result) float64 { return r.leastAt / r.outer }, Work: "rl / (D / 2)"},
	{Key: "lip_bow_mm", Label: "lip bows by", Kind: quantity.Length, Gauge: quantity.Caliper, Value: (*Result).bow, Of: "size",
		Work: sheet.AsRead, Source: "found along the lip, seen from the end: the flute's face, which gives a straight lip at the angle it was made for, cut by the flank"},
}}

var chiselFigures = group{Title: "Chisel edge", Figures: []def{
	{Key: "chisel_corner_ratio", Label: "chisel's corner at r/R", Kind: quantity.Number, Value: func(r *Result) float64 { return r.inner / r.outer }, Work: "w / sin(psi) / D"},
	{Key: "chisel_rake_deg", Label: "rake, flat flanks", Kind: quantity.Angle, Gauge: quantity.Protractor,
		Value: func(r *Result) float64 { return point.ChiselRake(r.k, r.chisel) }, Work: "-atan(tan(k) * sin(psi))"},
	{Key: "indentation_radius_mm", Label: "only pushes within", Kind: quantity.Length, Gauge: quantity.Caliper, Value: (*Result).pushed, Work: "f / (2 * pi) * tan(k) * sin(psi)"},
	{Key: "chisel_corner_speed_m_min", Label: "cutting speed, its corner", Kind: quantity.Cutting,
		Value: func(r *Result) float64 { return r.speed(r.inner) }, Work: "pi * cm * n / 1000 * V", Source: speedSource},
}}

// radius is that of the place whose working is shown.
func (r *Result) radius() float64 { return r.place * r.outer }

func (r *Result) vectors() point.EdgeVectors { return r.edge.Vectors(r.radius()) }

// feedSlope is how steep the place goes down into the metal.
func (r *Result) feedSlope() float64 { return math.Tan(point.FeedAngle(r.Drill.Feed, r.radius())) }

// rakeFace is the part of the rake face's normal that lies in the cutting direction.
func (r *Result) rakeFace() float64 {
	v := r.vectors()
	return v.Lip.Cross(v.Helix).Dot(v.Cutting)
}

// flankNormal is the normal of the flank, and the cutting direction.
func (r *Result) flankNormal() (n, v point.Vec) {
	of := r.vectors()
	return of.Lip.Cross(of.Across), of.Cutting
}

// rakeZero is the radius at which the rake is zero, NaN where the lip has no such
// place.
func (r *Result) rakeZero() float64 {
	if zero := r.edge.RakeZero(); zero >= r.inner {
		return zero
	}
	return math.NaN()
}

// pushed is the radius within which the chisel edge cuts no chip.
func (r *Result) pushed() float64 { return point.IndentationRadius(r.Drill.Feed, r.k, r.chisel) }
