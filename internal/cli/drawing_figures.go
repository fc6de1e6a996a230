package cli

import (
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// figures names what the picture shows, and how its geometry is got.
func (w *drawing) figures() {
	title := "As drawn"
	if w.before != nil {
		title += ", " + w.after()
	}
	w.s.Open(title)
	w.lipFigures()
	w.middleFigures()
	w.s.Sections = append(w.s.Sections, sheet.Section{Title: "How it is laid out", Quiet: true})
	w.endFigures()
	w.fluteFigures()
}

func (w *drawing) add(key, label string, kind quantity.Kind, gauge quantity.Gauge, v float64) {
	w.s.Add(sheet.Figure{Key: key, Label: label, Value: v, Kind: kind, Gauge: gauge})
}

func (w *drawing) angle(key, label string, v float64) {
	w.add(key, label, quantity.Angle, quantity.Protractor, v)
}

func (w *drawing) length(key, label string, v float64) {
	w.add(key, label, quantity.Length, quantity.Caliper, v)
}

const asRead = "as read"

func (w *drawing) lipFigures() {
	d, s := &w.now, w.s
	k1, k2 := d.Lips[0].HalfAngle, d.Lips[1].HalfAngle
	w.angle("point_angle_deg", "point angle", k1+k2)
	s.Work(judge.Geometry, "2k = k1 + k2", "{} + {}", quantity.Rad(k1), quantity.Rad(k2))
	for i, key := range [...]string{"lip_angle_1_deg", "lip_angle_2_deg"} {
		w.angle(key, "lip "+string(rune('1'+i))+" to the axis", d.Lips[i].HalfAngle)
		if k := quantity.Rad(d.Lips[i].HalfAngle); w.trued {
			s.Work("what the lips are trued to: evenlip lips", "k after the grind", "{}", k)
		} else {
			s.Work(asRead, "k as read", "{}", k)
		}
	}
	w.heightFigures()
	for i, key := range [...]string{"lip_clearance_1_deg", "lip_clearance_2_deg"} {
		w.angle(key, "clearance, lip "+string(rune('1'+i)), d.Lips[i].Clearance)
		if cl := quantity.Rad(d.Lips[i].Clearance); w.clearanceUsual {
			s.Work(w.r.Limit(judge.Clearance1Limit).Source.String(), "Cl aimed at, by size and work", "{}", cl)
		} else {
			s.Work("as read, or from the heel drop", "Cl", "{}", cl)
		}
	}
}

// heightFigures tell how the corners stand, and where the lips meet.
func (w *drawing) heightFigures() {
	d, s := &w.now, w.s
	h1, h2 := d.Lips[0].Corner, d.Lips[1].Corner
	w.add("lip_height_difference_mm", "lip 1 higher by", quantity.Length, w.heightGauge(), h1-h2)
	s.Work(judge.Geometry, "height of lip 1's corner less that of lip 2's, lip 2's as measured being zero", "{} - {}", quantity.MM(h1), quantity.MM(h2))
	w.add("point_offset_mm", "point off toward lip 1 by", quantity.Length, w.heightGauge(), d.Offset)
	judge.WorkOffset(s, h1-h2, d.Measures().Outer, d.Lips[0].HalfAngle, d.Lips[1].HalfAngle)
}

// heightGauge is what the lips' height difference was read with.
func (w *drawing) heightGauge() quantity.Gauge {
	if w.r.Lips.From == judge.LipsFromLengths {
		return quantity.Caliper
	}
	return quantity.Indicator
}

func (w *drawing) middleFigures() {
	d, s := &w.now, w.s
	w.length("web_mm", "web at the point", d.Web)
	switch {
	case w.before != nil:
		s.Work(judge.Geometry, "w' = w + taper * removed", "{} + {} * {}", quantity.MM(w.webGrowsFrom()),
			quantity.Of(quantity.Taper, w.r.Web.Taper), quantity.MM(w.d.Value(drill.Remove)))
	case w.webUsual:
		s.Work(handbook.NewWebSource().String(), "w from the table, by size", "{}", quantity.MM(d.Web))
	default:
		s.Work("as read, or from chisel length and angle", "w", "{}", quantity.MM(d.Web))
	}
	w.angle("chisel_angle_deg", "chisel-edge angle, obtuse", point.Obtuse(d.Chisel))
	s.Work(judge.Geometry, "psi' = 180 - psi", "180 - {}", quantity.Rad(d.Chisel))
	w.length("chisel_length_mm", "chisel-edge length", point.ChiselLength(d.Web, d.Chisel))
	s.Work(judge.Geometry, "c = w / sin(psi)", "{} / sin({})", quantity.MM(d.Web), quantity.Rad(d.Chisel))
	w.angle("helix_deg", "helix", d.Helix)
	if band, _ := usualHelix(d.D); w.helixUsual {
		s.Work(band.Source.String(), "H = middle of the band for the size", "({} + {}) / 2", quantity.Rad(band.Low), quantity.Rad(band.High))
	} else {
		s.Work(asRead, "H as read", "{}", quantity.Rad(d.Helix))
	}
}

// endFigures are the ends of the lips. With x along lip 1, y ahead of it and z
// out of the point, lip 1 runs at y = w/2 from its corner to the chisel edge.
func (w *drawing) endFigures() {
	d, s := &w.now, w.s
	m := d.Measures()
	w.length("lip_outer_mm", "lips' outer ends, x1", m.Outer)
	s.Work(judge.Geometry, "corner = (x1, w / 2, 0), on the cylinder: x1 = (D^2 - w^2)^0.5 / 2", "({}^2 - {}^2)^0.5 / 2", quantity.MM(d.D), quantity.MM(d.Web))
	for i, key := range [...]string{"lip_inner_1_mm", "lip_inner_2_mm"} {
		n, sign := string(rune('1'+i)), [...]string{"+", "-"}[i]
		w.length(key, "lip "+n+"'s inner end, x0", m.Inner[i])
		s.Work(judge.Geometry, "x0 = (w / 2) / tan(psi) "+sign+" u, u the point off the axis", "({} / 2) / tan({}) "+sign+" {}",
			quantity.MM(d.Web), quantity.Rad(d.Chisel), quantity.MM(d.Offset))
	}
	for i, key := range [...]string{"lip_rise_1_mm", "lip_rise_2_mm"} {
		w.length(key, "lip "+string(rune('1'+i))+" rises to the chisel by", m.Rise[i])
		s.Work(judge.Geometry, "lip as a vector, corner to chisel = (x0 - x1, 0, (x1 - x0) / tan(k)); its last part", "({} - {}) / tan({})",
			quantity.MM(m.Outer), quantity.MM(m.Inner[i]), quantity.Rad(d.Lips[i].HalfAngle))
	}
}

// fluteFigures are the flute's section: the helix carries each place of the lip
// down to the plane of the corner and turns it on the way.
func (w *drawing) fluteFigures() {
	d, s := &w.now, w.s
	m := d.Measures()
	k, helix, radius := quantity.Rad(d.Lips[0].HalfAngle), quantity.Rad(d.Helix), quantity.MM(d.D/2)
	w.angle("flute_turn_deg", "helix turns over the lip by", m.Turn)
	s.Work(judge.Geometry, "turn = z tan(H) / R in radians, z = x1 / tan(k1)", "{} / tan({}) * tan({}) / {} * 180 / pi", quantity.MM(m.Outer), k, helix, radius)
	w.angle("flute_bottom_deg", "flute touches the web at", m.Bottom)
	s.Work(judge.Geometry, "90 - turn, from lip 1's direction", "90 - {}", quantity.Rad(m.Turn))
	w.length("flute_mid_radius_mm", "flute under mid lip, radius", m.FaceR)
	s.Work(judge.Geometry, "r = (x^2 + w^2 / 4)^0.5, x = x1 / 2", "(({} / 2)^2 + {}^2 / 4)^0.5", quantity.MM(m.Outer), quantity.MM(d.Web))
	w.angle("flute_mid_angle_deg", "flute under mid lip, at", m.Face)
	s.Work(judge.Geometry, "theta = atan(w / (2 x)) - z tan(H) / R in degrees, z = (x1 - x) / tan(k1), x = x1 / 2",
		"atan({} / {}) - {} / 2 / tan({}) * tan({}) / {} * 180 / pi", quantity.MM(d.Web), quantity.MM(m.Outer), quantity.MM(m.Outer), k, helix, radius)
}
