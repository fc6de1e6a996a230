package spindle

import (
	"math"
	"strconv"

	"evenlip/internal/cutting"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

const torsion = "torsion of a round bar"

// shankFigures holds the torque against what the shank carries.
func (r *running) shankFigures(s *sheet.Sheet) {
	torque, d := r.torque(), r.d.Value(drill.ShankDiameter)
	wants := r.work.wants()
	if wants == "" {
		wants = sheet.Wanted(sheet.Need{Reading: "shank-diameter", Value: d})
	}
	allowed := handbook.Band{Low: 0, High: handbook.ShankStress, Source: handbook.ShankStressSource()}
	s.Add(sheet.Figure{Key: "shank_stress_mpa", Label: "stress in the shank", Value: cutting.ShankStress(torque, d), Kind: quantity.Stress, Limit: &allowed, Wants: wants})
	s.Work(torsion, "16000 M / (pi d^3), M in N m and d in mm, times 1 MPa", "16000 * {} / (pi * {}^3) * {}", num(torque), num(d), quantity.Of(quantity.Stress, 1))
	s.Add(sheet.Figure{Key: "least_shank_mm", Label: "least shank diameter", Value: cutting.LeastShank(torque, handbook.ShankStress), Kind: quantity.Length, Gauge: quantity.Caliper, Wants: r.work.wants()})
	unit := quantity.MM(1)
	s.Work(torsion+"; "+handbook.ShankStressSource().String(), "d = (16000 M / (pi stress))^(1/3), M in N m and stress in MPa, times 1 mm", "(16000 * {} / (pi * {}))^(1/3) * {}",
		num(torque), num(handbook.ShankStress), unit)
}

// shankFindings says how the drill is held.
func (r *running) shankFindings(s *sheet.Sheet) {
	d := r.Drill.D
	if !sheet.Known(d) {
		return
	}
	most, morseOf := handbook.ParallelShankMetric, handbook.MorseOfMetric
	if r.load.System == quantity.Inch {
		most, morseOf = handbook.ParallelShankInch, handbook.MorseOfInch
	}
	shank := r.d.Value(drill.ShankDiameter)
	if out, twisted := r.twisted(); twisted {
		s.Find("shank-overloaded", sheet.Stop, "the shank of {} is twisted to {} of what it carries: a lighter feed, a pilot hole, or a shank of {} or more",
			quantity.MM(shank), quantity.Of(quantity.Share, out.Share), quantity.MM(out.Least))
	}
	if d <= most*(1+1e-9) {
		return
	}
	s.Extra = append(s.Extra, handbook.ParallelShankSource())
	number, source, ok := morseOf(d)
	switch {
	case shank < d:
		said := "a shank reduced to {} lets a drill chuck hold this drill, but it carries only the torque of its own section"
		args := []quantity.Arg{quantity.MM(shank)}
		if out, twisted := r.twisted(); !twisted && out.Share > 0 {
			said += ": this feed takes {} of that"
			args = append(args, quantity.Of(quantity.Share, out.Share))
		}
		s.Find("shank-reduced", sheet.Note, said, args...)
	case ok:
		s.Find("morse-taper", sheet.Note, "over {} a drill is usually held by a Morse taper, here No. {}", quantity.MM(most), quantity.Say(strconv.Itoa(number)))
		s.Extra = append(s.Extra, source)
	}
}

// twisted reports whether the torque is more than the shank read carries, and how
// much it is.
func (r *running) twisted() (cutting.ShankResult, bool) {
	out, err := (cutting.Shank{Drill: r.Drill.D, Diameter: r.d.Value(drill.ShankDiameter), Torque: r.torque(), Allowed: handbook.ShankStress}).Result()
	return out, err == nil && !out.Holds
}

// fluteType is the drill type whose helix a kind of flute has.
func fluteType(f handbook.Flute) handbook.DrillType {
	if f == handbook.HighHelix {
		return handbook.TypeW
	}
	return handbook.TypeN
}

// flute is the kind of flute that work and depth want.
func (r *running) flute() (handbook.Flute, *handbook.Source) {
	return handbook.FluteFor(r.Drill.Material, r.isDeep())
}

// helixFigure holds the helix read against the material's.
func (r *running) helixFigure(s *sheet.Sheet) {
	f := sheet.Figure{Key: "helix_deg", Label: "helix angle", Value: r.d.Value(drill.Helix), Kind: quantity.Angle, Gauge: quantity.Protractor, Wants: "helix"}
	if m := r.Drill.Material; m != nil && m.Helix.Source != nil {
		f.Limit = &m.Helix
	}
	s.Add(f)
	s.Work("as read", "H as read", "{}", quantity.Rad(f.Value))
}

func (r *running) fluteFindings(s *sheet.Sheet) {
	kind, source := r.flute()
	s.Extra = append(s.Extra, source)
	band, ok := handbook.Helix(r.Drill.D, fluteType(kind))
	switch {
	case kind == handbook.StraightFlutes && !(r.d.Value(drill.Helix) <= straightEnough):
		s.Find("straight-flutes", sheet.Note, "{} is best drilled with straight flutes, or the lips flattened: a helix digs in", quantity.Say(r.Drill.Material.Title))
	case kind == handbook.HighHelix && ok:
		s.Find("high-helix", sheet.Note, "a hole this deep clears its chips best with a high helix, {} to {} at this diameter", quantity.Rad(band.Low), quantity.Rad(band.High))
		s.Extra = append(s.Extra, band.Source)
	}
	if powdery, source := handbook.Powdery(r.Drill.Material); powdery && kind == handbook.OrdinaryHelix {
		band, _ := handbook.Helix(r.Drill.D, fluteType(handbook.HighHelix))
		s.Find("powdery-chips", sheet.Note, "the chips of {} are powdery: where they pack, a high helix, {} to {} at this diameter, carries them out", quantity.Say(r.Drill.Material.Title), quantity.Rad(band.Low), quantity.Rad(band.High))
		s.Extra = append(s.Extra, source, band.Source)
	}
	if flute, short := r.fluteShort(); short {
		s.Find("flute-short", sheet.Stop, "{} of flute is too short for a hole {} deep: with chip room it takes {}", quantity.MM(r.d.Value(drill.Flute)), quantity.MM(r.depth), quantity.MM(flute.Low))
		s.Extra = append(s.Extra, flute.Source)
	}
}

// fluteShort reports whether the flute read is too short for the hole, and what it
// takes.
func (r *running) fluteShort() (handbook.Band, bool) {
	flute := r.Drill.Book.FluteNeeded(r.Drill.D, r.depth)
	return flute, r.d.Value(drill.Flute) < flute.Low
}

// straightEnough is the helix, radians, under which flutes count as straight.
const straightEnough = 5 * math.Pi / 180
