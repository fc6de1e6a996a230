package edge

import (
	"math"

	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// vectorFigures are rake and clearance at the outer corner once more, from the
// directions of lip, helix and cutting: dot and cross products that a class can
// redo. A table shows them only as working.
func (l *lip) vectorFigures(s *sheet.Sheet) {
	s.Sections = append(s.Sections, sheet.Section{Title: "The corner by vectors", Quiet: true})
	v := l.edge.Vectors(l.Drill.D / 2)
	u, h, c, q := v.Lip, v.Helix, v.Cutting, v.Across
	m, n := u.Cross(h), u.Cross(q)
	number := func(key, label string, value float64, wants string) {
		s.Add(sheet.Figure{Key: key, Label: label, Value: value, Kind: quantity.Number, Wants: wants})
	}
	num := quantity.Num
	number("vector_u_v", "lip . cutting direction", u.Dot(c), l.wants())
	s.Work(judge.Geometry, "u . v, lip u = (sin(k), 0, -cos(k)), cutting direction v = (-sin(b), cos(b), 0), x out along the lip seen from the end, y the way it moves, z out of the point; it is -sin(lam)",
		"{} * {} + 0 * {} + {} * 0", num(u.X), num(c.X), num(c.Y), num(u.Z))
	number("vector_u_h", "lip . helix", u.Dot(h), l.wantsHelix())
	s.Work(judge.Geometry, "u . h, helix h = (tan(H) sin(b), -tan(H) cos(b), -1)", "{} * {} + 0 * {} + {} * {}", num(u.X), num(h.X), num(h.Y), num(u.Z), num(h.Z))
	number("vector_h_v", "helix . cutting direction", h.Dot(c), l.wantsHelix())
	s.Work(judge.Geometry, "h . v", "{} * {} + {} * {} + {} * 0", num(h.X), num(c.X), num(h.Y), num(c.Y), num(h.Z))
	number("vector_m_v", "rake face's normal . cutting", m.Dot(c), l.wantsHelix())
	s.Work(judge.Geometry, "m . v, m = u x h = (uy hz - uz hy, uz hx - ux hz, ux hy - uy hx) the normal of the rake face",
		"(0 * {} - {} * {}) * {} + ({} * {} - {} * {}) * {}", num(h.Z), num(u.Z), num(h.Y), num(c.X), num(u.Z), num(h.X), num(u.X), num(h.Z), num(c.Y))
	rake := math.Atan((u.Dot(h)*u.Dot(c) - h.Dot(c)) / m.Dot(c))
	s.Add(sheet.Figure{Key: "vector_rake_deg", Label: "normal rake by vectors", Value: rake, Kind: quantity.Angle, Gauge: quantity.Protractor, Wants: l.wantsHelix()})
	s.Work(judge.Geometry, "tan(gn) = u . (m x v) / (m . v) = ((u . h) (u . v) - h . v) / (m . v)", "atan(({} * {} - {}) / {})",
		num(u.Dot(h)), num(u.Dot(c)), num(h.Dot(c)), num(m.Dot(c)))
	b, k := quantity.Rad(point.WebAngle(l.web, l.Drill.D/2)), quantity.Rad(l.k)
	number("vector_g", "flank's rise along y, g", q.Z, l.wants())
	s.Work(judge.Geometry, "g = (tan(Cl) - sin(b) / tan(k)) / cos(b), sin(b) = w / D; the same all along a straight lip",
		"(tan({}) - sin({}) / tan({})) / cos({})", quantity.Rad(l.clearance), b, k, b)
	number("vector_n_v", "flank's normal . cutting", n.Dot(c), l.wants())
	s.Work(judge.Geometry, "n . v, n = u x q = (uy qz - uz qy, uz qx - ux qz, ux qy - uy qx) the normal of the flank, q = (0, 1, g) across it",
		"(0 * {} - {} * 1) * {} + ({} * 0 - {} * {}) * {}", num(q.Z), num(u.Z), num(c.X), num(u.Z), num(u.X), num(q.Z), num(c.Y))
	clearance := math.Atan(-n.Dot(c) / n.Z)
	s.Add(sheet.Figure{Key: "vector_clearance_deg", Label: "lip clearance by vectors", Value: clearance, Kind: quantity.Angle, Gauge: quantity.Protractor, Wants: l.wants()})
	s.Work(judge.Geometry, "tan(Cl) = -(n . v) / nz", "atan(-1 * {} / {})", num(n.Dot(c)), num(n.Z))
}
