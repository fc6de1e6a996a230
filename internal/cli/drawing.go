package cli

import (
	"math"
	"strings"

	"evenlip/internal/draw"
	"evenlip/internal/drill"
	"evenlip/internal/handbook"
	"evenlip/internal/judge"
	"evenlip/internal/point"
	"evenlip/internal/quantity"
	"evenlip/internal/sheet"
)

// drawing is a drill on its way from readings to a picture.
type drawing struct {
	d      *drill.Drill
	r      judge.Result
	s      *sheet.Sheet
	f      quantity.Format
	now    draw.Drill
	before *draw.Drill // nil where nothing comes off
	// What was not read and is drawn as usual.
	webUsual, chiselUsual, clearanceUsual, helixUsual, heightUsual bool
	trued                                                          bool // the grind made both lips one line
}

// newDrawing makes the drawing of d, whose size and lip angles must have been
// read.
func newDrawing(d *drill.Drill, f quantity.Format, explain bool) (*drawing, error) {
	w := &drawing{d: d, r: judge.Compute(d), s: &sheet.Sheet{Command: "draw", Explaining: explain}, f: f}
	judge.Plausible(d, w.s)
	w.asRead()
	if err := w.now.Check(); err != nil {
		return nil, err
	}
	if remove, ok := d.Get(drill.Remove); ok && remove > 0 {
		if err := w.regrind(remove); err != nil {
			return nil, &leavesNoDrill{err}
		}
	}
	w.remarks()
	return w, nil
}

// leavesNoDrill says that a drill can be drawn before the grind but not after.
type leavesNoDrill struct{ error }

func (e *leavesNoDrill) Unwrap() error { return e.error }

// unreadable says what a drawing still wants, "" for nothing.
func unreadable(d *drill.Drill) (wants, hint string) {
	var missing []string
	if !d.Has(drill.Size) {
		missing = append(missing, "--"+drill.Size.String())
	}
	for _, v := range d.Values(drill.LipAngle) {
		if v.V >= math.Pi/2 {
			half := quantity.Format{}.Number(quantity.Angle, quantity.Protractor, v.V/2)
			return "each lip's angle to the axis", "if " + v.Text + " is the whole point angle, write --lip-angle " + half
		}
	}
	if !d.Has(drill.LipAngle) {
		missing = append(missing, "--"+drill.LipAngle.String())
	}
	return strings.Join(missing, " and "), "size and lip-angle give the outline; what else was not read is drawn as usual. --sample shows one"
}

// asRead fills the drill from the readings and, where there is none, with what
// is usual.
func (w *drawing) asRead() {
	r, d := &w.r, &w.now
	d.D = r.Drill.D
	d.Web, w.webUsual = orUsual(r.Chisel.Web, handbook.NewWeb(d.D))
	angles := r.Limit(judge.ChiselAngleLimit)
	d.Chisel, w.chiselUsual = orUsual(r.Chisel.Acute, math.Pi-(angles.Low+angles.High)/2)
	band, _ := usualHelix(d.D)
	d.Helix, w.helixUsual = orUsual(w.d.Value(drill.Helix), (band.Low+band.High)/2)
	d.Lips = [2]draw.Lip{{HalfAngle: r.Point.K1}, {HalfAngle: r.Point.K2}}
	d.Lips[0].Corner, w.heightUsual = orUsual(r.Lips.Height, 0)
	d.Offset = offAxis(d)
	d.Lips[0].Clearance, w.clearanceUsual = orUsual(r.Clearance.Lip1, r.Clearance.Aim)
	d.Lips[1].Clearance, _ = orUsual(r.Clearance.Lip2, r.Clearance.Aim)
	d.Land = draw.Land{Margin: handbook.MarginPart * d.D, Body: handbook.BodyPart, Flute: handbook.FluteAngle}
}

// offAxis returns how far from the axis the lips of d meet, toward lip 1: where
// they stand decides it, read or taken as usual.
func offAxis(d *draw.Drill) float64 {
	lips := &d.Lips
	return point.OffsetOfCorners(lips[0].Corner-lips[1].Corner, point.AlongLip(d.D/2, d.Web), lips[0].HalfAngle, lips[1].HalfAngle)
}

func orUsual(read, usual float64) (v float64, assumed bool) {
	if sheet.Known(read) {
		return read, false
	}
	return usual, true
}

// usualHelix is the published helix for general work; that of the table's
// nearest end where it does not reach the size.
func usualHelix(d float64) (handbook.Band, bool) {
	return handbook.Helix(math.Max(1, math.Min(50, d)), handbook.TypeN)
}

// regrind makes the drill after remove has come off what the one before was.
// Both lips become one line at the angle wanted, if remove reaches that far;
// if not, both are lowered as they are.
func (w *drawing) regrind(remove float64) error {
	before, r := w.now, &w.r
	w.before = &before
	w.now.Web = point.WebAfter(w.webGrowsFrom(), r.Web.Taper, remove)
	outer := point.AlongLip(before.D/2, before.Web)
	inner := math.Max(0, point.ChiselCorner(before.Web, before.Chisel))
	var lips [2]point.Lip
	for i, l := range before.Lips {
		lips[i] = point.LipThrough(outer, l.Corner, l.HalfAngle)
		w.now.Lips[i].Corner -= remove
	}
	plan, err := point.Truing(lips[0], lips[1], inner, outer, r.Target())
	if err != nil {
		return err
	}
	const rounding = 1e-9
	if most := plan.Most(); most > remove+rounding {
		w.tooLittle(most, remove)
		w.now.Offset = offAxis(&w.now)
		return w.now.Check()
	}
	w.now.Offset, w.trued = 0, true
	for i := range w.now.Lips {
		w.now.Lips[i].HalfAngle = r.Target()
		w.now.Lips[i].Corner = plan.Line.At(outer) - (remove - plan.Most())
	}
	return w.now.Check()
}

// webGrowsFrom is the web that a grind brings forth: behind a point that was
// thinned the thicker one.
func (w *drawing) webGrowsFrom() float64 {
	if from := w.r.Web.From; sheet.Known(from) {
		return from
	}
	return w.before.Web
}

// remarks tells what is drawn without having been measured.
func (w *drawing) remarks() {
	d, s := &w.now, w.s
	w.asElsewhere()
	if w.webUsual {
		s.Find("web-usual", sheet.Note, "no web was read: {} is drawn, a new drill's", quantity.MM(w.first().Web))
		s.Extra = append(s.Extra, handbook.NewWebSource())
	}
	if w.chiselUsual {
		s.Find("chisel-usual", sheet.Note, "no chisel-edge angle was read: {} is drawn, the middle of {}", quantity.Rad(math.Pi-d.Chisel), quantity.Say(whoseLimits(w.r.Limit(judge.ChiselAngleLimit).Source)))
	}
	if w.clearanceUsual {
		why := "what is aimed at for this size in"
		if w.r.Clearance.Recommended.Source.OfShop() {
			why = "as the shop has set it for"
		}
		s.Find("clearance-usual", sheet.Note, "no clearance was read: {} is drawn, {} {}", quantity.Rad(d.Lips[0].Clearance), quantity.Say(why), quantity.Say(w.r.Drill.Material.Name))
	}
	if w.helixUsual {
		s.Find("helix-usual", sheet.Note, "no helix was read: {} is drawn, the middle for this size", quantity.Rad(d.Helix))
	}
	if w.heightUsual {
		w.lipsTakenEven()
	}
	if !w.r.Point.Both {
		s.Find("one-lip-angle", sheet.Note, "one lip angle was read: both lips are drawn at it")
	}
	w.groundTo()
	w.idle()
	s.Extra = append(s.Extra, handbook.MarginSource(), handbook.BodySource())
}

func whoseLimits(source *handbook.Source) string {
	if source.OfShop() {
		return "the shop's limits"
	}
	return "the limits"
}

// first is the drill as it was measured.
func (w *drawing) first() *draw.Drill {
	if w.before != nil {
		return w.before
	}
	return &w.now
}

// after says what the drill drawn is: not the one that was measured, where
// something comes off.
func (w *drawing) after() string {
	return "after " + w.f.Text(quantity.Length, quantity.Caliper, w.d.Value(drill.Remove)) + " has come off"
}

// labels are the dimensions on paper; one that was not measured stands in
// brackets.
func (w *drawing) labels() draw.Labels {
	d := &w.now
	length := func(g quantity.Gauge, v float64) string { return w.f.Number(quantity.Length, g, v) }
	degrees := func(v float64) string { return w.f.Text(quantity.Angle, quantity.Protractor, v) }
	l := draw.Labels{
		Diameter:     "Ø" + plainDigits(w.f.Number(quantity.Size, quantity.NoGauge, d.D)),
		Web:          bracketed(length(quantity.Caliper, d.Web), w.webUsual),
		ChiselLength: bracketed("chisel edge "+length(quantity.Caliper, point.ChiselLength(d.Web, d.Chisel)), w.webUsual || w.chiselUsual),
		ChiselAngle:  bracketed(degrees(point.Obtuse(d.Chisel)), w.chiselUsual),
		PointAngle:   degrees(d.Lips[0].HalfAngle + d.Lips[1].HalfAngle),
	}
	if !w.clearanceUsual {
		l.ClearanceAngle = [2]string{degrees(d.Lips[0].Clearance), degrees(d.Lips[1].Clearance)}
		l.Clearance[0] = "clearance " + l.ClearanceAngle[0]
	}
	if d.Lips[0].Clearance != d.Lips[1].Clearance {
		l.Clearance = [2]string{"lip 1 " + l.Clearance[0], "lip 2 clearance " + l.ClearanceAngle[1]}
	}
	if w.r.Point.Both {
		for i := range l.Lips {
			l.Lips[i] = "lip " + string(rune('1'+i)) + ": " + degrees(d.Lips[i].HalfAngle)
		}
	}
	switch h := d.Lips[0].Corner - d.Lips[1].Corner; {
	case h > leastHeight:
		l.Height = "lip 1 higher " + length(w.heightGauge(), h)
	case h < -leastHeight:
		l.Height = "lip 2 higher " + length(w.heightGauge(), -h)
	}
	if math.Abs(d.Offset) > leastHeight {
		l.Offset = bracketed(length(w.heightGauge(), math.Abs(d.Offset)), w.heightUsual)
	}
	if b := w.before; b != nil {
		l.Remove = length(quantity.Caliper, w.d.Value(drill.Remove))
		web := func(when string, d *draw.Drill) string {
			return bracketed(when+length(quantity.Caliper, d.Web), w.webUsual)
		}
		chisel := func(when string, d *draw.Drill) string {
			return bracketed(when+length(quantity.Caliper, point.ChiselLength(d.Web, d.Chisel)), w.webUsual || w.chiselUsual)
		}
		l.WebBefore, l.WebAfter = web("before ", b), web("after ", d)
		l.ChiselBefore, l.ChiselAfter = chisel("before ", b), chisel("after ", d)
	}
	return l
}

// leastHeight is the lip-height difference, mm, under which none is dimensioned.
const leastHeight = 0.0005

func bracketed(label string, usual bool) string {
	if usual {
		return "(" + label + ")"
	}
	return label
}

// plainDigits drops the zeros at the end of a nominal size.
func plainDigits(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// job is the drawing for paper.
func (w *drawing) job() draw.Job {
	j := draw.Job{Drill: w.now, Before: w.before, Labels: w.labels(), Units: "millimetres"}
	if w.f.System == quantity.Inch {
		j.Units = "inches"
	}
	j.Title = w.d.Values(drill.Size)[0].Echo() + " drill"
	if w.before != nil {
		j.Title += ", before and after regrinding"
	}
	if w.d.Name != "" {
		j.Notes = append(j.Notes, w.d.Name)
	}
	if w.before != nil {
		j.Notes = append(j.Notes, "Dashed: as measured. Full lines: "+w.after()+", lip laid on lip.")
	}
	usual := "Not measured, drawn at usual values: margin, back of the flute, heel"
	if w.clearanceUsual {
		usual += ", clearance " + w.f.Text(quantity.Angle, quantity.Protractor, w.now.Lips[0].Clearance)
	}
	if w.helixUsual {
		usual += ", helix " + w.f.Text(quantity.Angle, quantity.Protractor, w.now.Helix)
	}
	if w.heightUsual {
		usual += ", lips at one height"
	}
	if w.webUsual || w.chiselUsual || w.heightUsual && math.Abs(w.now.Offset) > leastHeight {
		usual += ", what is in ( )"
	}
	j.Notes = append(j.Notes, usual+".")
	return j
}
