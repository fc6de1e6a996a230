package drill

import (
	"math"
	"strconv"
	"strings"

	"evenlip/internal/fault"
	"evenlip/internal/handbook"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
)

// Possible returns everything about the readings that cannot be, by themselves or
// beside one another. Nothing is taken for granted in the place of a reading that
// was not taken, or not understood.
func (d *Drill) Possible() fault.List {
	var found fault.List
	for r := range readings {
		if d.count[r] > 0 {
			found = append(found, d.possible(r)...)
		}
	}
	return found
}

func (d *Drill) possible(r Reading) (found fault.List) {
	s := &specs[r]
	if s.Kind != quantity.Word {
		for _, v := range d.Values(r) {
			if why, hint := d.within(s, v); why.Format != "" {
				found = append(found, d.Fault(r, why, hint))
			}
		}
	}
	if len(found) == 0 {
		if f := d.tooFarApart(r); f != nil {
			found = append(found, f)
		}
	}
	if s.Cannot != nil && len(found) == 0 {
		if why, hint := s.Cannot(d); why.Format != "" {
			found = append(found, d.Fault(r, why, hint))
		}
	}
	return found
}

// possible is the text of a reading that can be.
var possible quantity.Text

// otherUnit is the hint of a length that does not go with the drill.
const otherUnit = "is it in the unit that was meant?"

// within says why one value cannot be.
func (d *Drill) within(s *Spec, v float64) (why quantity.Text, hint string) {
	switch in := &s.Domain; {
	case in.Low < in.High && !(in.Low < v && v < in.High):
		return quantity.Sayf("{} cannot be: "+in.Why, quantity.Arg{Kind: s.Kind, Gauge: s.Gauge, Value: v}), in.Hint
	case s.AboveZero && v <= 0:
		return quantity.Sayf("it cannot be zero"), "leave it out if it was not read"
	case s.UnderSize && math.Abs(v) >= d.Value(Size):
		return quantity.Sayf("{} cannot be: the drill itself is {}", quantity.MM(v), quantity.MM(d.Value(Size))), otherUnit
	}
	return possible, ""
}

// Fault makes the fault of a reading that cannot be, in the drill's units and at the
// place where it was given.
func (d *Drill) Fault(r Reading, why quantity.Text, hint string) *fault.Fault {
	if comma := d.DecimalComma(r); comma != "" {
		hint = "a comma parts the two lips: if " + comma + " was meant, write it with a point"
	} else if size := d.AsRead(Size); hint == otherUnit && len(size) > 0 && size[0].Assumed && size[0].System == quantity.Metric && d.InInches() {
		hint = "the size was read as " + size[0].Echo() + ": if inches were meant, write " + size[0].Text + "in"
	}
	return fault.New(hint, "%s", why.In(quantity.Format{System: d.System()})).In(d.At(r), r.String())
}

// InInches reports whether what was read beside the size, where a unit was written, was
// read in inches.
func (d *Drill) InInches() bool {
	found := false
	for i := range d.taken {
		t := &d.taken[i]
		for _, v := range d.AsRead(t.Reading) {
			switch {
			case t.Reading == Size:
			case v.System == quantity.Inch && d.System() != quantity.Inch:
				found = true
			case v.System == quantity.Metric && !v.Assumed:
				return false
			}
		}
	}
	return found
}

// Refuse is Fault of a text with its numbers.
func (d *Drill) Refuse(r Reading, hint, format string, args ...quantity.Arg) *fault.Fault {
	return d.Fault(r, quantity.Sayf(format, args...), hint)
}

// DecimalComma returns what may have been meant by two readings that look like one
// number with a decimal comma, such as 0,2mm for 0.2mm; "" where they do not. Whole
// millimetres or inches are read off no lip. Whole degrees are, but not on one lip
// less than half of what they are on the other.
func (d *Drill) DecimalComma(r Reading) string {
	written := d.AsRead(r)
	if len(written) != 2 || !written[0].Assumed || !isWhole(written[0].Text) {
		return ""
	}
	whole, part := written[0].Text, written[1].Text
	number := strings.TrimRight(part, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ°\" ")
	unit := strings.TrimSpace(part[len(number):])
	switch {
	case !isWhole(number) || strings.HasPrefix(number, "-") || len(number) > mostDecimals(written[1].Unit):
		return ""
	case specs[r].Kind == quantity.Angle && written[1].V >= written[0].V/2:
		return ""
	case specs[r].Kind == quantity.Length && written[1].Unit != "mm" && written[1].Unit != "in":
		return ""
	}
	return whole + "." + number + unit
}

// farApart is more than two lips differ by that anyone has ground, as a part of the
// diameter (own rule). It holds only where the two readings look like one number: whoever
// means both gives both their units.
const farApart = 0.1

// tooFarApart refuses two lengths that look like one number with a decimal comma, where no
// lips are so.
func (d *Drill) tooFarApart(r Reading) *fault.Fault {
	size, sized := d.Get(Size)
	a, b, _ := d.Pair(r)
	if !sized || specs[r].Kind != quantity.Length || math.Abs(a-b) < farApart*size {
		return nil
	}
	meant := d.DecimalComma(r)
	if meant == "" {
		return nil
	}
	f := d.Refuse(r, "", "{} between the two lips cannot be on a {} drill", quantity.MM(math.Abs(a-b)), quantity.Of(quantity.Size, size))
	written := d.AsRead(r)
	both := written[0].Text + written[1].Unit + "," + strings.TrimSuffix(written[1].Text, written[1].Unit) + written[1].Unit
	f.Hint = "a decimal is a point: " + meant + "; if both were read so, write " + both
	return f
}

// mostDecimals is how many digits are read off a gauge behind the point.
func mostDecimals(unit string) int {
	if unit == "in" {
		return 4
	}
	return 2
}

// isWhole reports whether a number was written without a decimal point or a stroke.
func isWhole(text string) bool {
	digits := strings.TrimPrefix(text, "-")
	for i := range len(digits) {
		if digits[i] < '0' || digits[i] > '9' {
			return false
		}
	}
	return digits != ""
}

func noMaterial(d *Drill) (quantity.Text, string) {
	name := d.Written(Material)
	if _, ok := d.Book.Material(name); ok {
		return possible, ""
	}
	return quantity.Sayf("no material is called {}", quantity.Say(strconv.Quote(name))), handbook.MaterialHint(name)
}

func noDrive(d *Drill) (quantity.Text, string) {
	name := d.Written(Drive)
	if _, ok := handbook.DriveFactor(name); ok {
		return possible, ""
	}
	var names []string
	for _, f := range handbook.DriveFactors {
		names = append(names, f.Name)
	}
	return quantity.Sayf("no drive is called {}", quantity.Say(`"`+name+`"`)), "takes " + strings.Join(names, ", ")
}

// overHalf is the text where a reading is more than half the diameter.
func overHalf(d *Drill, r Reading, format string) quantity.Text {
	if v, half := d.Value(r), d.Value(Size)/2; v > half {
		return quantity.Sayf(format, quantity.MM(v), quantity.MM(half))
	}
	return possible
}

func lipsTooFarApart(d *Drill) (quantity.Text, string) {
	apart, second, n := d.Pair(LipHeight)
	if n == 2 {
		apart -= second
	}
	size := d.Value(Size)
	if math.Abs(apart) >= size {
		return quantity.Sayf("{} cannot be between the lips: the drill itself is {}", quantity.MM(apart), quantity.MM(size)), otherUnit
	}
	k1, k2, _ := d.Pair(LipAngle)
	if long := size / 2 / math.Tan(min(k1, k2)); d.Has(LipAngle) && min(k1, k2) > 0 && max(k1, k2) < math.Pi/2 && math.Abs(apart) >= long {
		return quantity.Sayf("{} cannot be between the lips: the point itself is {} long", quantity.MM(apart), quantity.MM(long)), otherUnit
	}
	return possible, ""
}

// How far off two readings of a lip may be: its ends are hard to find with a caliper,
// and a protractor on a short edge turns. Both are the program's own rule.
const (
	lipLengthOff = 0.1                 // mm
	lipAngleOff  = 0.5 * math.Pi / 180 // radians
)

// lipsTooLong refuses lips that reach farther across, seen from the end, than the drill
// has room for: from corner to corner, less what the chisel edge takes between them. A
// point that stands off the axis lengthens one lip by what it takes from the other, so
// their sum is held.
func lipsTooLong(d *Drill) (quantity.Text, string) {
	p1, p2, n := d.Pair(LipLength)
	k1, k2, read := d.Pair(LipAngle)
	room := d.acrossLips()
	if read == 0 || min(k1, k2) <= 0 || max(k1, k2) >= math.Pi/2 || n == 0 || min(p1, p2) <= 0 {
		return possible, ""
	}
	reach := p1*math.Sin(k1) + p2*math.Sin(k2)
	off := lipLengthOff*(math.Sin(k1)+math.Sin(k2)) + lipAngleOff*(p1*math.Cos(k1)+p2*math.Cos(k2))
	if reach-off > room {
		return quantity.Sayf("lips this long reach {} across, and the drill has room for {}", quantity.MM(reach), quantity.MM(room)),
			"a lip is measured along its edge, from the end of the chisel edge to the outer corner; measure the angles again, too"
	}
	return possible, ""
}

// acrossLips returns how far both lips together reach at most, seen from the end:
// 2 sqrt(R^2 - w^2/4) - c cos psi. What was not read is taken as nothing, and so is the
// web of a thinned point, whose chisel edge is shorter than it.
func (d *Drill) acrossLips() float64 {
	size := d.Value(Size)
	web, chisel, angle := d.Value(Web), d.Value(ChiselLength), d.Value(ChiselAngle)
	if !(web > 0 && web < size) || chisel < web {
		return size
	}
	between := 0.0
	switch {
	case chisel >= web:
		between = math.Sqrt(chisel*chisel - web*web)
	case d.Has(ChiselAngle):
		between = web / math.Tan(point.Acute(angle))
	}
	return 2*point.AlongLip(size/2, web) - between
}

func chiselTooLong(d *Drill) (quantity.Text, string) {
	size, web, angle := d.Value(Size), d.Value(Web), d.Value(ChiselAngle)
	if made := point.ChiselLength(web, angle); made >= size && web < size {
		return quantity.Sayf("{} cannot be: with a web of {} the chisel edge would be {}, longer than the drill is wide", quantity.Rad(angle), quantity.MM(web), quantity.MM(made)), "measure web and angle again"
	}
	return possible, ""
}

func noSuchFlute(d *Drill) (quantity.Text, string) {
	if remove, flute := d.Value(Remove), d.Value(Flute); remove > flute {
		return quantity.Sayf("{} cannot come off: only {} of flute is left", quantity.MM(remove), quantity.MM(flute)), ""
	}
	return possible, ""
}

// More than these is a reading of another kind: many times the back taper that drills
// are made with; faster, in m/s, than any grinding wheel may run; more diameters than
// any twist drill is long.
const (
	mostBackTaper = 0.01
	mostMarked    = 200
	deepest       = 200
)
