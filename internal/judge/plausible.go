package judge

import (
	"math"

	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// Plausible adds a warning to s for every reading that can be but is hardly
// what was meant, and says what it may be.
func Plausible(d *drill.Drill, s *sheet.Sheet) {
	sizeSlip(d, s)
	webSlip(d, s)
	commaSlip(d, s)
	lipAngleSlip(d, s)
	clearanceSlip(d, s)
	taperSlip(d, s)
	lipLengthSlip(d, s)
	chiselSlip(d, s)
	landSlip(d, s)
	if text, odd := FluteOdd(d); odd {
		s.Find("flute-long", sheet.Warn, text.Format, text.Args...)
	}
}

// sizeSlip finds a bare number that reads better in the other system.
func sizeSlip(d *drill.Drill, s *sheet.Sheet) {
	written := d.AsRead(drill.Size)
	if len(written) == 0 {
		return
	}
	v := written[0]
	SizePlausible(v, s)
	if !bareMM(v) || mayBeInches(v) || !d.InInches() {
		return
	}
	if inches := quantity.Names(v.V * handbook.InchMM); len(inches) > 0 {
		s.Find("size-may-be-inches", sheet.Warn, "size {} was read as {}, and what else has a unit is in inches; if {} was meant, write {}in",
			quantity.Say(v.Text), quantity.Of(quantity.Size, v.V), quantity.Say(inches[0].Name), quantity.Say(v.Text))
	}
}

// SizePlausible adds a warning to s where a size by itself is hardly what was meant:
// a number that reads better in the other system, or as a drill's number, and more
// than any list of drills has.
func SizePlausible(v quantity.Value, s *sheet.Sheet) {
	if text, odd := SizeOdd(v.V); odd {
		s.Find("size-large", sheet.Warn, text.Format, text.Args...)
	}
	number, isNumber := quantity.AsNumber(v)
	if isNumber {
		s.Find("size-may-be-number", sheet.Warn, "size {} was read as {}; {} is written {}",
			quantity.Say(v.Text), quantity.Of(quantity.Size, v.V), quantity.Say(number.Name), quantity.Say("'"+number.Name+"'"))
	}
	switch {
	case v.Assumed && v.System == quantity.Inch && v.V > handbook.LargestOften(true):
		s.Find("size-may-be-mm", sheet.Warn, "size {} was read as {}; if millimetres were meant, write {}mm",
			quantity.Say(v.Text), quantity.Of(quantity.Size, v.V), quantity.Say(v.Text))
	case mayBeInches(v):
		s.Find("size-may-be-inches", sheet.Warn, "size {} was read as {}; if inches were meant ({}), write {}in",
			quantity.Say(v.Text), quantity.Of(quantity.Size, v.V), quantity.Say(quantity.Names(v.V * handbook.InchMM)[0].Name), quantity.Say(v.Text))
	}
}

// SizeOdd asks about a size, mm, past the largest drill that a list has.
func SizeOdd(mm float64) (quantity.Text, bool) {
	if !(mm > handbook.LargestListed()) {
		return quantity.Text{}, false
	}
	return quantity.Sayf("{} is larger than any drill that is listed: is it in the unit that was meant?", quantity.Of(quantity.Size, mm)), true
}

// bareMM reports whether a number without a unit was taken for millimetres.
func bareMM(v quantity.Value) bool { return v.Assumed && v.System == quantity.Metric }

// mayBeInches reports whether a bare number is more often an inch size than one in
// millimetres.
func mayBeInches(v quantity.Value) bool {
	return bareMM(v) && v.V >= 0.2 && v.V < 2 && len(quantity.Names(v.V*handbook.InchMM)) > 0
}

func webSlip(d *drill.Drill, s *sheet.Sheet) {
	size, sized := d.Get(drill.Size)
	web, read := d.Get(drill.Web)
	if !sized || !read {
		return
	}
	switch ratio := web / size; {
	case ratio > 0.5:
		s.Find("web-over-half", sheet.Warn, "web {} is over half the diameter: is it the lip length, or another unit?", quantity.MM(web))
	case ratio < 0.05:
		s.Find("web-very-thin", sheet.Warn, "web {} is under a twentieth of the diameter: if inches were meant, write them", quantity.MM(web))
	}
}

// commaSlip finds one number with a decimal comma where two lips were read.
func commaSlip(d *drill.Drill, s *sheet.Sheet) {
	for _, t := range d.Taken() {
		if number := d.DecimalComma(t.Reading); number != "" {
			s.Find(t.Reading.String()+"-comma", sheet.Warn, "a comma parts the two lips: {} was read for lip 2; if {} was meant, write it with a point",
				quantity.Arg{Kind: t.Spec().Kind, Gauge: t.Spec().Gauge, Value: t.Values[1].V}, quantity.Say(number))
		}
	}
}

func lipAngleSlip(d *drill.Drill, s *sheet.Sheet) {
	if d.DecimalComma(drill.LipAngle) != "" {
		return
	}
	for _, v := range d.Values(drill.LipAngle) {
		if v >= math.Pi/2 {
			s.Find("lip-angle-whole", sheet.Warn, "lip angle {} looks like the whole point angle, and is not used; each lip to the axis is half of it: {}?",
				quantity.Rad(v), quantity.Rad(v/2))
			return
		}
		if v < 25*math.Pi/180 || v > 80*math.Pi/180 {
			s.Find("lip-angle-odd", sheet.Warn, "lip angle {} is unusual: 59° each makes a 118° point", quantity.Rad(v))
		}
	}
}

func clearanceSlip(d *drill.Drill, s *sheet.Sheet) {
	for _, v := range d.Values(drill.Clearance) {
		if v > 35*math.Pi/180 {
			s.Find("clearance-odd", sheet.Warn, "clearance {} is unusual: is it measured from the axis and not from a square plane?", quantity.Rad(v))
			return
		}
	}
}

// mostTaper is many times what webs are made with, mm per mm.
const mostTaper = 0.1

func taperSlip(d *drill.Drill, s *sheet.Sheet) {
	if t, ok := d.Get(drill.WebTaper); ok && t > mostTaper {
		s.Find("web-taper-odd", sheet.Warn, "web taper {} is unusual: it is mm per mm, about 0.016", quantity.Of(quantity.Taper, t))
	}
	web, a := d.Get(drill.Web)
	second, b := d.Get(drill.SecondWeb)
	if at, c := d.Get(drill.SecondWebAt); a && b && c && (second-web)/at > mostTaper {
		s.Find("web-taper-odd", sheet.Warn, "the two webs make a taper of {}: webs grow by about 0.016; is second-web-at the distance up from the point?", quantity.Of(quantity.Taper, (second-web)/at))
	}
	if a && b && second < web {
		s.Find("web-thins", sheet.Warn, "the web is read thinner further up ({} after {}): webs thicken toward the shank; measure again", quantity.MM(second), quantity.MM(web))
	}
	if d.Has(drill.SecondWeb) != d.Has(drill.SecondWebAt) {
		s.Find("second-web-alone", sheet.Warn, "second-web and second-web-at go together; the usual web taper is used")
	}
	if d.Has(drill.HeelDrop) && !d.Has(drill.HeelTurn) {
		s.Find("heel-turn-missing", sheet.Warn, "heel-drop wants heel-turn: the turn over which it was read")
	}
}

func lipLengthSlip(d *drill.Drill, s *sheet.Sheet) {
	size, sized := d.Get(drill.Size)
	for _, v := range d.Values(drill.LipLength) {
		if sized && (v < 0.25*size || v > 0.75*size) {
			s.Find("lip-length-odd", sheet.Warn, "lip length {} is unusual on a {} drill: a lip is about half the diameter", quantity.MM(v), quantity.Of(quantity.Size, size))
			return
		}
	}
}

// chiselSlip finds an angle that no grinding leaves.
func chiselSlip(d *drill.Drill, s *sheet.Sheet) {
	const least = 25 * math.Pi / 180
	if v, ok := d.Get(drill.ChiselAngle); ok && point.Acute(v) < least {
		s.Find("chisel-angle-odd", sheet.Warn, "chisel-edge angle {} is unusual: it is 120 to 135° to the lip, or 45 to 60° read the acute way", quantity.Rad(v))
	}
}

// landSlip finds a land that is wider than a drill goes on cutting with.
func landSlip(d *drill.Drill, s *sheet.Sheet) {
	size, sized := d.Get(drill.Size)
	if v, ok := d.Get(drill.FlankWear); ok && sized && v > size/10 {
		s.Find("flank-wear-odd", sheet.Warn, "a worn land of {} is unusual on a {} drill: it is the narrow bright strip right behind the lip", quantity.MM(v), quantity.Of(quantity.Size, size))
	}
}

// longestFlute is a flute in diameters that only drills of extra length pass: jobber
// drills have 8 to 14 (from memory), so a longer one is asked about (own rule).
const longestFlute = 15

// FluteOdd asks about a flute that is longer than drills of its size have.
func FluteOdd(d *drill.Drill) (quantity.Text, bool) {
	size, sized := d.Get(drill.Size)
	flute, read := d.Get(drill.Flute)
	if !sized || !read || flute <= longestFlute*size*(1+1e-9) {
		return quantity.Text{}, false
	}
	return quantity.Sayf("{} of flute is over 15 diameters of a {} drill: is it in the unit that was meant?", quantity.MM(flute), quantity.Of(quantity.Size, size)), true
}
